package io.github.roundstar.simulate;

/**
 * A small arc on the sky.
 *
 * @param ra east [arcsec]
 * @param dec north [arcsec]
 */
record Offset(double ra, double dec) {
  static final Offset ZERO = new Offset(0, 0);

  Offset plus(Offset other) {
    return new Offset(ra + other.ra, dec + other.dec);
  }

  Offset minus(Offset other) {
    return new Offset(ra - other.ra, dec - other.dec);
  }

  /** As a camera sees it whose north points at this position angle. */
  Offset inCamera(double angleDegrees) {
    double cosine = StrictMath.cos(angleDegrees * (Math.PI / 180));
    double sine = StrictMath.sin(angleDegrees * (Math.PI / 180));
    return new Offset(ra * cosine - dec * sine, dec * cosine + ra * sine);
  }

  double radius() {
    return StrictMath.sqrt(ra * ra + dec * dec);
  }
}
