package io.github.roundstar.motion;

import io.github.roundstar.model.GuideRun;

/** The cosine of the declination, where it can be used to go from the sky to the axis. */
public final class CosDec {
  /**
   * Beyond this the division by the cosine is refused: a small error of the declination ruins it
   * [deg].
   */
  public static final double REFUSED_DEGREES = 85;

  private CosDec() {}

  /** Cosine of the run's declination. */
  public static Answer<Double> of(GuideRun run) {
    if (run.pointing().declinationDegrees().isEmpty()) {
      return Answer.none("the declination is not known: add declination to the log's header");
    }
    double degrees = run.pointing().declinationDegrees().getAsDouble();
    return Math.abs(degrees) > REFUSED_DEGREES
        ? Answer.none(
            "the star is within 5 degrees of the pole, where right ascension at the axis cannot"
                + " be had from the sky: record a star nearer the equator")
        : Answer.of(Math.cos(Math.toRadians(degrees)));
  }
}
