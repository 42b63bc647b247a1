package io.github.roundstar.simulate;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.formats.TomlTable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The tables of a scenario about air, star, wind, clouds and knocks. */
final class SkyKeys {
  private static final double LONGEST_NIGHT_MINUTES = 2000;

  private SkyKeys() {}

  static SkyPlan read(TomlTable root) throws FormatException {
    TomlTable star = root.table("star");
    return new SkyPlan(
        root.table("noise").number("white_arcsec", 0, 100).orElse(0),
        root.has("seeing") ? Optional.of(seeing(root.table("seeing"))) : Optional.empty(),
        new SkyPlan.Star(
            star.number("snr", 1, 10_000).orElse(40),
            star.number("flux_adu", 1, 1e9).orElse(20_000),
            star.number("variation", 0, 1).orElse(0),
            star.number("lost_below_snr", 0, 10_000).orElse(5)),
        root.has("gusts") ? Optional.of(gusts(root.table("gusts"))) : Optional.empty(),
        root.has("clouds") ? Optional.of(cloudRate(root.table("clouds"))) : Optional.empty(),
        clouds(root),
        knocks(root),
        shifts(root),
        switches(root));
  }

  private static SkyPlan.Seeing seeing(TomlTable seeing) throws FormatException {
    double aperture = seeing.number("aperture_mm", 5, 5000).orElse(60);
    double outerScale = seeing.number("outer_scale_m", 6, 10_000).orElse(20);
    if (outerScale * 1000 < 4 * aperture) {
      throw seeing.fault(
          "outer_scale_m", "not well above the aperture", "give at least four apertures");
    }
    return new SkyPlan.Seeing(
        seeing.number("fwhm_arcsec", 0.1, 20).orElse(2.5),
        aperture,
        seeing.number("wind_m_per_s", 0.1, 100).orElse(8),
        outerScale);
  }

  private static SkyPlan.Gusts gusts(TomlTable gusts) throws FormatException {
    return new SkyPlan.Gusts(
        gusts.number("per_hour", 0.001, 120).orElse(6),
        gusts.number("amplitude_arcsec", 0, 1000).orElse(3),
        gusts.number("duration_s", 0.1, 3600).orElse(12),
        gusts.number("ra_share", 0, 1).orElse(0.5));
  }

  private static SkyPlan.CloudRate cloudRate(TomlTable clouds) throws FormatException {
    return new SkyPlan.CloudRate(
        clouds.number("per_hour", 0.001, 120).orElse(2),
        clouds.number("minutes", 0.01, LONGEST_NIGHT_MINUTES).orElse(5),
        clouds.number("depth", 0, 1).orElse(0.9));
  }

  private static List<SkyPlan.Cloud> clouds(TomlTable root) throws FormatException {
    List<SkyPlan.Cloud> clouds = new ArrayList<>();
    for (TomlTable cloud : root.tables("cloud")) {
      clouds.add(
          new SkyPlan.Cloud(
              at(cloud),
              cloud.number("minutes", 0.01, LONGEST_NIGHT_MINUTES).orElse(5),
              cloud.number("depth", 0, 1).orElse(0.9)));
    }
    return clouds;
  }

  private static List<SkyPlan.Knock> knocks(TomlTable root) throws FormatException {
    List<SkyPlan.Knock> knocks = new ArrayList<>();
    for (TomlTable knock : root.tables("knock")) {
      knocks.add(
          new SkyPlan.Knock(
              at(knock),
              knock.number("ra_arcsec", -1000, 1000).orElse(0),
              knock.number("dec_arcsec", -1000, 1000).orElse(0)));
    }
    return knocks;
  }

  private static List<SkyPlan.Shift> shifts(TomlTable root) throws FormatException {
    List<SkyPlan.Shift> shifts = new ArrayList<>();
    for (TomlTable shift : root.tables("shift")) {
      shifts.add(
          new SkyPlan.Shift(
              at(shift),
              shift.number("seconds", 0.1, 3600).orElse(20),
              shift.number("ra_arcsec", -1000, 1000).orElse(0),
              shift.number("dec_arcsec", -1000, 1000).orElse(0)));
    }
    return shifts;
  }

  private static List<SkyPlan.StarSwitch> switches(TomlTable root) throws FormatException {
    List<SkyPlan.StarSwitch> switches = new ArrayList<>();
    for (TomlTable star : root.tables("star_switch")) {
      switches.add(
          new SkyPlan.StarSwitch(
              at(star),
              star.number("ra_arcsec", -1000, 1000).orElse(0),
              star.number("dec_arcsec", -1000, 1000).orElse(0),
              star.number("flux_ratio", 0.01, 100).orElse(0.5)));
    }
    return switches;
  }

  private static double at(TomlTable event) throws FormatException {
    return event.number("at_min", 0, LONGEST_NIGHT_MINUTES).orElse(0);
  }
}
