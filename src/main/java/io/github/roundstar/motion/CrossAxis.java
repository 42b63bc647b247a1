package io.github.roundstar.motion;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.Frames;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.signal.Covariance;
import io.github.roundstar.signal.LeastSquares;
import io.github.roundstar.signal.LinearFit;
import io.github.roundstar.signal.NeweyWest;
import io.github.roundstar.signal.Pooled;
import io.github.roundstar.signal.Whitening;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * How far the camera is turned against the axes of the mount: a pulse in one axis then moves the
 * star in the other too. Each axis' motion is fitted once more with the other axis' pulses as one
 * more regressor; the periodic error of right ascension, which leaks the same way, stands beside
 * it.
 */
public final class CrossAxis {
  /** A wider interval tells nothing of use [deg]. */
  private static final double WIDEST_DEGREES = 10;

  private CrossAxis() {}

  /**
   * Position angle of the direction that the camera takes for north, north through east [deg].
   *
   * @return nothing when no axis was pushed, or the pulses tell too little
   */
  public static Answer<Estimate> degrees(GuideRun run, AxisMotion ra, AxisMotion dec) {
    boolean[] dithers = dithers(run.frames());
    List<Estimate> angles =
        Stream.concat(
                fromRaPulses(ra, dec, dithers).stream(), fromDecPulses(ra, dec, dithers).stream())
            .filter(angle -> angle.hi95() - angle.value() <= WIDEST_DEGREES)
            .toList();
    return angles.isEmpty()
        ? Answer.none(
            "the pulses of one axis are too few to show what they do in the other: record longer,"
                + " or with larger dithers")
        : Answer.of(Pooled.ofOneTruth(angles));
  }

  /**
   * For each measured frame, whether the set point moved before it. A turned camera measures the
   * move turned: how far each axis went is then not what the log says.
   */
  private static boolean[] dithers(Frames frames) {
    int[] measured = IntStream.range(0, frames.size()).filter(frames::measured).toArray();
    boolean[] dithers = new boolean[measured.length];
    int next = 0;
    for (int m = 0; m < measured.length; m++) {
      for (; next <= measured[m]; next++) {
        dithers[m] |= frames.ditherStart(next);
      }
    }
    return dithers;
  }

  private static Optional<Estimate> fromRaPulses(AxisMotion ra, AxisMotion dec, boolean[] dithers) {
    List<double[]> more = new ArrayList<>();
    more.add(net(ra.run().motion(), -ra.run().cosine()));
    more.addAll(List.of(ToneColumns.free(ra.run(), ra.known().families())));
    return angle(dec.jolts(), dithers, more);
  }

  private static Optional<Estimate> fromDecPulses(
      AxisMotion ra, AxisMotion dec, boolean[] dithers) {
    return angle(ra.jolts(), dithers, List.of(net(dec.run().motion(), 1 / ra.run().cosine())));
  }

  /** Pulses one way less pulses the other way, times a factor. */
  private static double[] net(MotionSeries motion, double factor) {
    double[] net = motion.pushedOneWayArcsec();
    double[] other = motion.pushedOtherWayArcsec();
    for (int i = 0; i < net.length; i++) {
      net[i] = factor * (net[i] - other[i]);
    }
    return net;
  }

  /** The angle by the first of the further columns; nothing where it says nothing. */
  private static Optional<Estimate> angle(JoltFree quiet, boolean[] dithers, List<double[]> more) {
    MotionSeries motion = quiet.motion();
    List<double[]> columns = new ArrayList<>(List.of(quiet.columns()));
    int first = columns.size();
    for (double[] column : more) {
      columns.add(quiet.kept(column));
    }
    boolean pushes = false;
    for (double pushed : columns.get(first)) {
      pushes |= pushed != 0;
    }
    Whitening whitening =
        quiet.wanderNoise().whitening(motion.seconds(), quiet.startsWith(dithers));
    if (!pushes || whitening.size() < RunBackground.FEWEST_STEPS + columns.size()) {
      return Optional.empty();
    }
    return LeastSquares.on(whitening.apply(columns.toArray(double[][]::new)))
        .map(design -> degrees(design, motion.white(whitening), first));
  }

  private static Estimate degrees(LeastSquares design, double[] white, int column) {
    LinearFit fit = design.fit(white);
    double[] residuals = fit.residuals();
    Covariance covariance =
        NeweyWest.covarianceCorrected(design, residuals, NeweyWest.plugInLag(residuals));
    double half = Estimate.SIGMAS_95 * covariance.standardError(column);
    return new Estimate(
        degrees(fit.coefficient(column)),
        degrees(fit.coefficient(column) - half),
        degrees(fit.coefficient(column) + half));
  }

  private static double degrees(double sine) {
    return Math.toDegrees(Math.asin(Math.max(-1, Math.min(1, sine))));
  }
}
