package io.github.roundstar.motion;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.signal.Covariance;
import io.github.roundstar.signal.LeastSquares;
import io.github.roundstar.signal.LinearFit;
import io.github.roundstar.signal.WanderNoise;
import io.github.roundstar.signal.WanderPath;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** One axis of a {@link SmoothedStar}: offset and its variance in every frame, on the sky. */
final class AxisPath {
  private final double[] arcsec;
  private final double[] variance;
  private final WanderPath wander;
  private final double skyPerUnit;

  private AxisPath(double[] arcsec, double[] variance, WanderPath wander, double skyPerUnit) {
    this.arcsec = arcsec;
    this.variance = variance;
    this.wander = wander;
    this.skyPerUnit = skyPerUnit;
  }

  static Answer<AxisPath> of(GuideRun run, Axis axis, Equipment equipment, AxisMotion motion) {
    return Reconstruction.of(run, axis, equipment)
        .then(made -> of(made.everyFrame(motion.effect()), motion));
  }

  private static Answer<AxisPath> of(Reconstruction.EveryFrame frames, AxisMotion known) {
    AxisRun every = known.run().with(frames.motion().times(1 / known.run().cosine()));
    boolean[] starts = withJolts(every.motion(), known.jolts().jolts());
    double[][] columns = ToneColumns.withPulses(every, known.known().families());
    WanderNoise noise = known.jolts().wanderNoise();
    return fit(every, starts, columns, noise)
        .map(fit -> Answer.of(path(every, frames, starts, columns, fit, noise)))
        .orElseGet(() -> Answer.none("too few measured frames: record at least a few minutes"));
  }

  /** A new piece at every sample that a jolt touched, and after it. */
  private static boolean[] withJolts(MotionSeries motion, List<Jolt> jolts) {
    int[] measured = measured(motion);
    boolean[] starts = motion.startsPiece();
    for (Jolt jolt : jolts) {
      for (int m = jolt.first(); m <= jolt.last(); m++) {
        starts[measured[m]] = true;
      }
      if (jolt.shape() == Jolt.Shape.PASSING && jolt.last() + 1 < measured.length) {
        starts[measured[jolt.last() + 1]] = true;
      }
    }
    return starts;
  }

  private static int[] measured(MotionSeries motion) {
    return IntStream.range(0, motion.size()).filter(i -> !Double.isNaN(motion.arcsec(i))).toArray();
  }

  private static Optional<LinearFit> fit(
      AxisRun every, boolean[] starts, double[][] columns, WanderNoise model) {
    int[] measured = measured(every.motion());
    MotionSeries motion = every.motion().at(measured, starts);
    double[][] ofMeasured = new double[columns.length][];
    for (int j = 0; j < columns.length; j++) {
      double[] column = columns[j];
      ofMeasured[j] = IntStream.of(measured).mapToDouble(i -> column[i]).toArray();
    }
    var whitening = motion.whitening(model);
    return LeastSquares.on(whitening.apply(ofMeasured))
        .map(design -> design.fit(motion.white(whitening)));
  }

  private static AxisPath path(
      AxisRun every,
      Reconstruction.EveryFrame frames,
      boolean[] starts,
      double[][] columns,
      LinearFit fit,
      WanderNoise model) {
    double[] seconds = every.motion().seconds();
    double[] left = every.motion().arcsec();
    double[] fitted = new double[left.length];
    for (int j = 0; j < columns.length; j++) {
      for (int i = 0; i < fitted.length; i++) {
        fitted[i] += fit.coefficient(j) * columns[j][i];
      }
    }
    for (int i = 0; i < left.length; i++) {
      left[i] -= fitted[i];
    }
    WanderPath wander = WanderPath.of(seconds, starts, left, model);
    double[] variance = ofCoefficients(seconds, starts, left, columns, fit.covariance(), model);
    double cosine = every.cosine();
    for (int i = 0; i < left.length; i++) {
      fitted[i] = cosine * (fitted[i] + wander.level(i)) - frames.takenOutArcsec()[i];
      variance[i] = cosine * cosine * (variance[i] + wander.variance(i));
    }
    return new AxisPath(fitted, variance, wander, cosine);
  }

  /** What the coefficients' errors add: each column less its own smoothed path. */
  private static double[] ofCoefficients(
      double[] seconds,
      boolean[] starts,
      double[] left,
      double[][] columns,
      Covariance covariance,
      WanderNoise model) {
    double[][] rough = new double[columns.length][left.length];
    for (int j = 0; j < columns.length; j++) {
      double[] seen = columns[j].clone();
      for (int i = 0; i < left.length; i++) {
        seen[i] = Double.isNaN(left[i]) ? Double.NaN : seen[i];
      }
      WanderPath path = WanderPath.of(seconds, starts, seen, model);
      for (int i = 0; i < left.length; i++) {
        rough[j][i] = columns[j][i] - path.level(i);
      }
    }
    double[] variance = new double[left.length];
    for (int j = 0; j < columns.length; j++) {
      for (int k = 0; k < columns.length; k++) {
        for (int i = 0; i < left.length; i++) {
          variance[i] += covariance.at(j, k) * rough[j][i] * rough[k][i];
        }
      }
    }
    return variance;
  }

  int size() {
    return arcsec.length;
  }

  double arcsec(int i) {
    return arcsec[i];
  }

  double variance(int i) {
    return variance[i];
  }

  double mean(int from, int to) {
    double sum = 0;
    for (int i = from; i < to; i++) {
      sum += arcsec[i];
    }
    return sum / (to - from);
  }

  /**
   * Mean square about the mean: that of the path, the variances, less the variance of the mean.
   * Neighbouring errors go together.
   */
  double meanSquare(int from, int to) {
    int n = to - from;
    double mean = mean(from, to);
    double squares = 0;
    double variances = 0;
    double ofSum = 0;
    double later = 0;
    for (int i = to - 1; i >= from; i--) {
      squares += (arcsec[i] - mean) * (arcsec[i] - mean);
      variances += wander.variance(i);
      later = i == to - 1 ? 0 : wander.carry(i) * (wander.variance(i + 1) + later);
      ofSum += wander.variance(i) + 2 * later;
    }
    return squares / n + skyPerUnit * skyPerUnit * (variances - ofSum / n) / n;
  }
}
