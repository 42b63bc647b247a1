package io.github.roundstar.simulate;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.formats.TomlTable;
import java.util.Optional;

/** The {@code [exposures]} table of a scenario. */
final class ExposureKeys {
  private static final ExposurePlan PLAIN = ExposurePlan.PLAIN;

  private ExposureKeys() {}

  static Optional<ExposurePlan> read(TomlTable root) throws FormatException {
    if (!root.has("exposures")) {
      return Optional.empty();
    }
    TomlTable table = root.table("exposures");
    return Optional.of(
        new ExposurePlan(
            table.number("seconds", 1, 7200).orElse(PLAIN.seconds()),
            table.number("gap_s", 0, 3600).orElse(PLAIN.gapSeconds()),
            table.number("wait_s", 0, 3600).orElse(PLAIN.waitSeconds()),
            table.number("clock_offset_s", -200_000, 200_000).orElse(0),
            optics(table),
            table.number("flexure_ra_arcsec_per_hour", -1000, 1000).orElse(0),
            table.number("flexure_dec_arcsec_per_hour", -1000, 1000).orElse(0),
            table.number("guide_star_east_arcmin", -600, 600).orElse(0),
            table.number("guide_star_north_arcmin", -600, 600).orElse(0),
            table.number("dispersion_arcsec", 0, 10).orElse(0),
            table.number("defocus_arcsec_per_hour", 0, 100).orElse(0)));
  }

  private static ExposurePlan.Growth growth(TomlTable table) throws FormatException {
    boolean radial = table.flag("radial").orElse(false);
    boolean oneSided = table.flag("one_sided").orElse(false);
    if (radial && oneSided) {
      throw table.fault("one_sided", "beside radial", "keep one of the two");
    }
    return radial
        ? ExposurePlan.Growth.RADIAL
        : oneSided ? ExposurePlan.Growth.ONE_SIDED : ExposurePlan.Growth.EVEN;
  }

  private static ExposurePlan.Optics optics(TomlTable table) throws FormatException {
    return new ExposurePlan.Optics(
        table.number("fwhm_arcsec", 0.3, 20).orElse(PLAIN.optics().fwhmArcsec()),
        table.number("elongation", 1, 10).orElse(PLAIN.optics().elongation()),
        table.number("angle_deg", 0, 180).orElse(0),
        growth(table),
        table.number("scale", 0.05, 20).orElse(PLAIN.optics().arcsecPerPixel()),
        table.integer("width_px", 100, 2000).orElse(PLAIN.optics().widthPixels()),
        table.integer("height_px", 100, 2000).orElse(PLAIN.optics().heightPixels()),
        table.number("position_angle_deg", -360, 360).orElse(0),
        table.integer("stars", 1, 500).orElse(PLAIN.optics().stars()));
  }
}
