package io.github.roundstar.ingest;

import io.github.roundstar.formats.FitsHeader;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Scale and direction of an image from its world coordinates: CDi_j, or CDELTi with CROTA2.
 *
 * @param arcsecPerPixel root of the area of a pixel [arcsec]
 * @param upPositionAngleDegrees position angle of the direction of later rows [deg, 0..360)
 * @param mirrored whether east is to the right where north is up
 * @see "FITS Standard 4.0, section 8; Calabretta &amp; Greisen 2002, A&amp;A 395, 1077"
 */
record SkyMap(double arcsecPerPixel, double upPositionAngleDegrees, boolean mirrored) {
  static Optional<SkyMap> of(FitsHeader header) {
    if (!header.text("CTYPE1").orElse("").startsWith("RA")) {
      return Optional.empty();
    }
    OptionalDouble one = header.number("CD1_1");
    OptionalDouble four = header.number("CD2_2");
    if (one.isPresent() && four.isPresent()) {
      return of(
          one.getAsDouble(),
          header.number("CD1_2").orElse(0),
          header.number("CD2_1").orElse(0),
          four.getAsDouble());
    }
    OptionalDouble across = header.number("CDELT1");
    OptionalDouble along = header.number("CDELT2");
    if (across.isEmpty() || along.isEmpty()) {
      return Optional.empty();
    }
    double turn = Math.toRadians(header.number("CROTA2").orElse(0));
    double dx = across.getAsDouble();
    double dy = along.getAsDouble();
    return of(dx * Math.cos(turn), -dy * Math.sin(turn), dx * Math.sin(turn), dy * Math.cos(turn));
  }

  /** From the derivatives of (east, north) by (column, row), in degrees per pixel. */
  private static Optional<SkyMap> of(
      double eastByX, double eastByY, double northByX, double northByY) {
    double area = eastByX * northByY - eastByY * northByX;
    if (!(Math.abs(area) > 0)) {
      return Optional.empty();
    }
    double up = Math.toDegrees(Math.atan2(eastByY, northByY));
    return Optional.of(
        new SkyMap(Math.sqrt(Math.abs(area)) * 3600, up < 0 ? up + 360 : up, area > 0));
  }
}
