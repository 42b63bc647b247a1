package io.github.roundstar.ingest;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.formats.TomlTable;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Equipment.Arrangement;
import io.github.roundstar.model.Equipment.Drive;
import io.github.roundstar.model.Equipment.Gear;
import io.github.roundstar.model.Equipment.GuideOptics;
import io.github.roundstar.model.Equipment.ImagingOptics;
import io.github.roundstar.model.Equipment.Limits;
import io.github.roundstar.model.Equipment.Mount;
import io.github.roundstar.model.Equipment.Site;
import io.github.roundstar.sky.SiderealRate;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** Reads the equipment file. Every key is optional; an unknown key or a wrong value is an error. */
public final class EquipmentReader {
  private static final double LONGEST_PERIOD_SECONDS = SiderealRate.SIDEREAL_DAY_SECONDS;
  private static final int MOST_TEETH = 10_000;

  private EquipmentReader() {}

  /**
   * Reads a file.
   *
   * @throws UnusableInputException if a key is unknown, a value wrong, or the file no TOML
   */
  public static Equipment read(Path path) throws UnusableInputException {
    try {
      return equipment(TomlTable.read(path));
    } catch (FormatException e) {
      throw new UnusableInputException(e);
    } catch (IOException e) {
      throw new UnusableInputException(path, e);
    }
  }

  private static Equipment equipment(TomlTable file) throws FormatException {
    Equipment equipment =
        new Equipment(
            site(file.table("site")),
            mount(file.table("mount")),
            guide(file.table("guide")),
            imaging(file.table("imaging")),
            file.table("sky").number("seeing_fwhm_arcsec", 0.1, 30),
            limits(file.table("limits")));
    file.finish();
    return equipment;
  }

  private static Site site(TomlTable site) throws FormatException {
    return new Site(
        site.number("latitude_deg", -90, 90),
        site.number("longitude_deg", -180, 180),
        site.number("elevation_m", -500, 9000),
        site.number("pressure_hpa", 300, 1100),
        site.number("temperature_c", -90, 60));
  }

  private static Mount mount(TomlTable mount) throws FormatException {
    OptionalInt teeth = mount.integer("worm_teeth", 1, MOST_TEETH);
    OptionalDouble period = mount.number("worm_period_s", 1, LONGEST_PERIOD_SECONDS);
    if (teeth.isPresent() && period.isPresent()) {
      throw mount.fault(
          "worm_period_s", "found together with worm_teeth", "keep the one that you are sure of");
    }
    if (teeth.isPresent()) {
      period = OptionalDouble.of(SiderealRate.wormPeriodSeconds(teeth.getAsInt()));
    }
    List<Gear> gears = new ArrayList<>();
    for (TomlTable gear : mount.tables("gear")) {
      gears.add(gear(gear, gears.size() + 1));
    }
    Optional<String> drive = mount.choice("drive", words(Drive.values()));
    return new Mount(
        mount.text("name"),
        period,
        mount.number("guide_rate", 0.001, 10),
        drive.map(word -> Drive.valueOf(constant(word))),
        gears,
        mount.number("arcmin_per_turn_azimuth", 0.1, 1000),
        mount.number("arcmin_per_turn_altitude", 0.1, 1000));
  }

  private static Gear gear(TomlTable gear, int number) throws FormatException {
    OptionalDouble period = gear.number("period_s", 0.01, LONGEST_PERIOD_SECONDS);
    if (period.isEmpty()) {
      throw gear.fault("period_s", "missing", "give the seconds of one turn at the sidereal rate");
    }
    return new Gear(gear.text("name").orElse("gear " + number), period.getAsDouble());
  }

  private static GuideOptics guide(TomlTable guide) throws FormatException {
    Optional<String> arrangement = guide.choice("arrangement", words(Arrangement.values()));
    return new GuideOptics(
        guide.number("focal_length_mm", 1, 100_000),
        guide.number("pixel_um", 0.1, 100),
        guide.integer("binning", 1, 64),
        guide.number("aperture_mm", 1, 50_000),
        guide.flag("mirrored").orElse(false),
        guide.number("star_x_arcmin", -600, 600),
        guide.number("star_y_arcmin", -600, 600),
        arrangement.map(word -> Arrangement.valueOf(constant(word))));
  }

  private static ImagingOptics imaging(TomlTable imaging) throws FormatException {
    return new ImagingOptics(
        imaging.number("focal_length_mm", 1, 100_000),
        imaging.number("pixel_um", 0.1, 100),
        imaging.integer("width_px", 1, 1_000_000),
        imaging.integer("height_px", 1, 1_000_000),
        imaging.integer("binning", 1, 64),
        imaging.number("exposure_s", 0.001, 86_400),
        imaging.number("position_angle_deg", -360, 360),
        imaging.flag("mirrored").orElse(false));
  }

  private static Limits limits(TomlTable limits) throws FormatException {
    OptionalDouble elongation = limits.number("elongation", 1.001, 10);
    return new Limits(
        elongation.orElse(Limits.USUAL_ELONGATION),
        limits.number("rms_arcsec", 0.01, 100),
        elongation.isPresent());
  }

  private static String[] words(Enum<?>[] constants) {
    String[] words = new String[constants.length];
    for (int i = 0; i < words.length; i++) {
      words[i] = constants[i].name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
    return words;
  }

  private static String constant(String word) {
    return word.toUpperCase(Locale.ROOT).replace('-', '_');
  }
}
