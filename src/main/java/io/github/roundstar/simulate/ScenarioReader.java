package io.github.roundstar.simulate;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.formats.TomlTable;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;

/**
 * Reads scenarios from TOML. Every key may be left out; what is left out is perfect or absent, so
 * that a scenario names only what is wrong with the night.
 */
public final class ScenarioReader {
  private ScenarioReader() {}

  /**
   * Reads a scenario file.
   *
   * @throws FormatException naming file and key of the first fault, or why it cannot be read
   */
  public static Scenario read(Path path) throws FormatException {
    try {
      return scenario(TomlTable.read(path));
    } catch (IOException e) {
      throw FormatException.unreadable(path, e);
    }
  }

  /**
   * Reads a scenario from text.
   *
   * @param name for messages
   * @throws FormatException naming the key of the first fault
   */
  public static Scenario parse(String name, String toml) throws FormatException {
    return scenario(TomlTable.read(name, toml.getBytes(StandardCharsets.UTF_8)));
  }

  private static Scenario scenario(TomlTable root) throws FormatException {
    Scenario.Evening evening = evening(root.table("night"));
    Optional<Scenario.Air> air =
        root.has("air") ? Optional.of(air(root.table("air"))) : Optional.empty();
    TomlTable axis = root.table("polar_axis");
    Scenario.PolarError polar =
        new Scenario.PolarError(
            axis.number("azimuth_arcmin", -600, 600).orElse(0),
            axis.number("altitude_arcmin", -600, 600).orElse(0));
    try {
      Scenario scenario =
          new Scenario(
              evening,
              air,
              polar,
              MountKeys.read(root.table("mount")),
              SkyKeys.read(root),
              LoopKeys.loop(root.table("loop"), evening),
              root.has("dither")
                  ? Optional.of(LoopKeys.dither(root.table("dither")))
                  : Optional.empty(),
              RunKeys.read(root, evening),
              ExposureKeys.read(root));
      root.finish();
      return scenario;
    } catch (IllegalArgumentException e) {
      throw new FormatException(root.file(), 0, e.getMessage(), "correct the scenario");
    }
  }

  private static Scenario.Evening evening(TomlTable night) throws FormatException {
    double cadence = night.number("cadence_s", 0.01, 600).orElse(3);
    double exposure = night.number("guide_exposure_s", 0.001, 600).orElse(cadence * 2 / 3);
    if (exposure > cadence) {
      throw night.fault(
          "guide_exposure_s", "longer than the cadence", "give at most cadence_s, " + cadence);
    }
    return new Scenario.Evening(
        night.integer("seed", 0, Integer.MAX_VALUE).orElse(1),
        night.instant("start").orElse(Instant.parse("2026-01-01T20:00:00Z")),
        night.number("latitude_deg", -90, 90).orElse(45),
        night.number("longitude_deg", -180, 180).orElse(0),
        cadence,
        exposure,
        night.number("guide_scale", 0.01, 100).orElse(2),
        night.choice("offset_unit", "arcsec", "pix").orElse("arcsec").equals("pix"));
  }

  private static Scenario.Air air(TomlTable air) throws FormatException {
    return new Scenario.Air(
        air.number("pressure_hpa", 300, 1100).orElse(1010),
        air.number("temperature_c", -60, 60).orElse(10));
  }
}
