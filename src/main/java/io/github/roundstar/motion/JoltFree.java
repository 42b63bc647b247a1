package io.github.roundstar.motion;

import io.github.roundstar.signal.WanderNoise;
import io.github.roundstar.signal.WhiteRegression;
import io.github.roundstar.signal.Whitening;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * A motion without its jolts: samples of a passing shift are left out, and a lasting one begins a
 * new piece. So wander and noise are those of the quiet time.
 *
 * @param motion the samples that are left
 * @param columns regressors at those samples
 * @param wanderNoise wander and noise of the motion that is left
 * @param jolts what was taken out, in order of time, by samples of the whole motion
 * @param originals which sample of the whole motion each one is
 */
public record JoltFree(
    MotionSeries motion,
    double[][] columns,
    WanderNoise wanderNoise,
    List<Jolt> jolts,
    int[] originals) {
  /**
   * Samples on either side of a passing shift that are left out with it. Its flanks do not stand
   * out by themselves, but pulses answer them: the response would come out too weak by some
   * percent, and sinusoids with it.
   */
  static final int FLANK = 2;

  /** The whole motion. */
  static JoltFree all(MotionSeries motion, double[][] columns, WanderNoise wanderNoise) {
    return new JoltFree(
        motion, columns, wanderNoise, List.of(), IntStream.range(0, motion.size()).toArray());
  }

  /** Takes jolts out; wander and noise are looked for near those known. */
  static JoltFree without(
      MotionSeries whole, double[][] columns, List<Jolt> jolts, WanderNoise near) {
    boolean[] dropped = new boolean[whole.size()];
    boolean[] starts = whole.startsPiece();
    for (Jolt jolt : jolts) {
      boolean lasting = jolt.shape() == Jolt.Shape.LASTING;
      int from = lasting ? jolt.first() : Math.max(0, jolt.first() - FLANK);
      int to = lasting ? jolt.last() : Math.min(dropped.length, jolt.last() + 1 + FLANK);
      Arrays.fill(dropped, from, to, true);
      starts[jolt.last()] |= lasting;
    }
    int[] originals = IntStream.range(0, whole.size()).filter(i -> !dropped[i]).toArray();
    MotionSeries kept = whole.at(originals, starts);
    double[][] keptColumns = new double[columns.length][];
    for (int j = 0; j < columns.length; j++) {
      double[] column = columns[j];
      keptColumns[j] = IntStream.of(originals).mapToDouble(i -> column[i]).toArray();
    }
    WanderNoise fitted = kept.wanderNoise(keptColumns, near).orElse(near);
    List<Jolt> sorted = new ArrayList<>(jolts);
    sorted.sort(Comparator.comparingInt(Jolt::first));
    return new JoltFree(kept, keptColumns, fitted, List.copyOf(sorted), originals);
  }

  /** The same motion beside other wander and noise. */
  JoltFree with(WanderNoise other) {
    return new JoltFree(motion, columns, other, jolts, originals);
  }

  /**
   * Where pieces begin when the level is also lost before some samples of the whole motion.
   *
   * @param lost one flag per sample of the whole motion
   */
  boolean[] startsWith(boolean[] lost) {
    boolean[] starts = motion.startsPiece();
    int next = 0;
    for (int k = 0; k < starts.length; k++) {
      for (; next <= originals[k]; next++) {
        starts[k] |= lost[next];
      }
    }
    return starts;
  }

  /** Another motion of the same run at the samples that are left. */
  MotionSeries kept(MotionSeries whole) {
    boolean[] starts = new boolean[whole.size()];
    for (int k = 0; k < originals.length; k++) {
      starts[originals[k]] = motion.startsPiece(k);
    }
    return whole.at(originals, starts);
  }

  /** The values of a column of the whole motion at the samples that are left. */
  double[] kept(double[] column) {
    return IntStream.of(originals).mapToDouble(i -> column[i]).toArray();
  }

  /** What each column has in the quiet time. */
  double[] coefficients() {
    return coefficients(wanderNoise);
  }

  /** The same beside other wander and noise. */
  double[] coefficients(WanderNoise beside) {
    Whitening whitening = motion.whitening(beside);
    return WhiteRegression.of(motion.white(whitening), whitening.apply(columns)).coefficients();
  }

  /**
   * A motion of the same run less what its columns have in the quiet time.
   *
   * @param ofMotion columns at the samples of that motion
   */
  double[] left(MotionSeries other, double[][] ofMotion) {
    double[] left = other.arcsec();
    double[] coefficients = coefficients();
    for (int j = 0; j < ofMotion.length; j++) {
      for (int i = 0; i < left.length; i++) {
        left[i] -= coefficients[j] * ofMotion[j][i];
      }
    }
    return left;
  }

  JoltFree withJolts(List<Jolt> others) {
    return new JoltFree(motion, columns, wanderNoise, others, originals);
  }

  /** Which sample of the whole motion a sample is. */
  int original(int sample) {
    return originals[sample];
  }
}
