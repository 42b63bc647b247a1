package io.github.roundstar.simulate;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.formats.TomlTable;
import io.github.roundstar.sky.SiderealRate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** The {@code [mount]} table of a scenario. */
final class MountKeys {
  private MountKeys() {}

  static MountPlan read(TomlTable mount) throws FormatException {
    return new MountPlan(
        mount.number("guide_rate", 0.01, 10).orElse(0.5),
        worm(mount),
        new MountPlan.Slack(
            mount.number("ra_backlash_arcsec", 0, 1000).orElse(0),
            mount.number("dec_backlash_arcsec", 0, 1000).orElse(0),
            mount.number("ra_stiction_arcsec", 0, 100).orElse(0),
            mount.number("dec_stiction_arcsec", 0, 100).orElse(0)),
        mount.number("ra_wander_arcsec_per_root_s", 0, 10).orElse(0),
        mount.number("dec_wander_arcsec_per_root_s", 0, 10).orElse(0),
        new MountPlan.Response(
            factor(mount, "response_east"),
            factor(mount, "response_west"),
            factor(mount, "response_north"),
            factor(mount, "response_south")),
        new MountPlan.Creep(
            drift(mount, "rate_error_arcsec_per_min"),
            drift(mount, "ra_flexure_arcsec_per_min"),
            drift(mount, "dec_flexure_arcsec_per_min")),
        mount.number("camera_angle_deg", -45, 45).orElse(0));
  }

  private static MountPlan.Worm worm(TomlTable mount) throws FormatException {
    OptionalDouble period = mount.number("worm_period_s", 1, 100_000);
    OptionalDouble teeth = mount.number("worm_teeth", 1, 10_000);
    if (period.isPresent() && teeth.isPresent()) {
      throw mount.fault("worm_teeth", "given beside worm_period_s", "keep one of the two");
    }
    List<MountPlan.Harmonic> harmonics = new ArrayList<>();
    for (TomlTable harmonic : mount.tables("harmonic")) {
      harmonics.add(
          new MountPlan.Harmonic(
              harmonic.integer("order", 1, 100).orElse(1),
              harmonic.number("amplitude_arcsec", 0, 1000).orElse(1),
              phase(harmonic)));
    }
    List<MountPlan.Gear> gears = new ArrayList<>();
    for (TomlTable gear : mount.tables("gear")) {
      gears.add(
          new MountPlan.Gear(
              gear.number("period_s", 0.1, 100_000).orElse(60),
              gear.number("amplitude_arcsec", 0, 1000).orElse(1),
              phase(gear)));
    }
    return new MountPlan.Worm(
        period.orElse(SiderealRate.wormPeriodSeconds(teeth.orElse(180))),
        harmonics,
        gears,
        mount.number("worm_unsteadiness", 0, 2).orElse(0));
  }

  private static double phase(TomlTable table) throws FormatException {
    return table.number("phase_rad", -10, 10).orElse(0);
  }

  private static double factor(TomlTable mount, String key) throws FormatException {
    return mount.number(key, 0.01, 10).orElse(1);
  }

  private static double drift(TomlTable mount, String key) throws FormatException {
    return mount.number(key, -1000, 1000).orElse(0);
  }
}
