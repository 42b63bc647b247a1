package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.results.Guided;
import io.github.roundstar.sky.GuideTolerance;
import java.util.Locale;
import java.util.Optional;

/**
 * What guiding RMS the user can bear.
 *
 * @param arcsec the limit [arcsec]
 * @param of what is held against it
 */
record UserLimit(double arcsec, Of of) {
  /** What a limit is for. */
  enum Of {
    /** Both axes together, as the user wishes. */
    RADIAL,
    /** The worse axis, as a round star of the seeing's size demands. */
    WORSE_AXIS
  }

  /** Frames that count as one independent one where the offsets' correlation is not known. */
  private static final double FRAMES_PER_INDEPENDENT = 10;

  /** The user's wish, else what elongation limit and seeing allow; empty without either. */
  static Optional<UserLimit> of(Equipment equipment) {
    if (equipment.limits().rmsArcsec().isPresent()) {
      return Optional.of(new UserLimit(equipment.limits().rmsArcsec().getAsDouble(), Of.RADIAL));
    }
    if (equipment.seeingFwhmArcsec().isEmpty()) {
      return Optional.empty();
    }
    double fwhm = equipment.seeingFwhmArcsec().getAsDouble();
    return Optional.of(
        new UserLimit(
            GuideTolerance.axisRmsArcsec(fwhm, equipment.limits().elongation()), Of.WORSE_AXIS));
  }

  /**
   * Whether the logged RMS keeps within the limit at the upper end of its 95 % interval. The log
   * holds the error of measuring too, so the star itself moved less.
   */
  boolean metBy(Guided guided, int frames) {
    double independent = Math.max(1, frames / FRAMES_PER_INDEPENDENT);
    return rms(guided) * (1 + Estimate.SIGMAS_95 / Math.sqrt(2 * independent)) <= arcsec;
  }

  /** The RMS that is held against the limit [arcsec]. */
  double rms(Guided guided) {
    return of == Of.RADIAL
        ? guided.rmsRadialArcsec()
        : Math.max(guided.ra().rmsArcsec(), guided.dec().rmsArcsec());
  }

  /** {@code 0.60 arcsec RMS in either axis}. */
  String words() {
    return String.format(
        Locale.ROOT, "%.2f arcsec RMS%s", arcsec, of == Of.RADIAL ? "" : " in either axis");
  }
}
