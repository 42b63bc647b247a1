package io.github.roundstar.diagnosis.exposures;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.FramesBuilder;
import io.github.roundstar.sky.GuideTolerance;
import java.util.Optional;

/**
 * The longest even trail that leaves a star within a limit of elongation, by the shape that
 * exposures are judged by: the weight that star shapes are measured with follows a flat trail
 * farther out than its second moments tell.
 */
public final class RoundTrail {
  private static final int PLACES = 64;

  /** Twenty halvings leave a millionth. */
  private static final int HALVINGS = 20;

  private static final Optional<Estimate> CERTAIN = Optional.of(new Estimate(0, 0, 0));

  private RoundTrail() {}

  /**
   * Its length [arcsec].
   *
   * @param fwhmArcsec width of the round image [arcsec]
   * @param elongationLimit major over minor axis that still counts as round, above 1
   */
  public static double arcsec(double fwhmArcsec, double elongationLimit) {
    double low = 0;
    double high = 2 * GuideTolerance.trailArcsec(fwhmArcsec, elongationLimit);
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (low + high) / 2;
      boolean round = elongation(middle, fwhmArcsec) <= elongationLimit;
      low = round ? middle : low;
      high = round ? high : middle;
    }
    return low;
  }

  private static double elongation(double trailArcsec, double fwhmArcsec) {
    FramesBuilder frames = new FramesBuilder();
    for (int i = 0; i < PLACES; i++) {
      frames.add(i, trailArcsec * (i + 0.5) / PLACES, 0);
    }
    StarTrack track = StarTrack.measured(frames.build(), CERTAIN, CERTAIN);
    CoreShape core =
        CoreShape.of(
            track, 0, PLACES, i -> true, new double[3], PredictedShape.variance(fwhmArcsec));
    return PredictedShape.stretch(core).elongation();
  }
}
