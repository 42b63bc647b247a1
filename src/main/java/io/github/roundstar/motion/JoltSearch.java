package io.github.roundstar.motion;

import io.github.roundstar.signal.RobustScale;
import io.github.roundstar.signal.ShiftScores;
import io.github.roundstar.signal.WanderNoise;
import io.github.roundstar.signal.Whitening;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Finds jolts: shifts that stand out of what wander and noise leave white. Each sample is tried as
 * the begin of a lasting shift, sudden or drawn out, and of a passing one, each of several lengths.
 * What stands out is taken out of the series, wander and noise are fitted anew, and the search goes
 * on until nothing stands out: so large jolts cannot hide small ones.
 */
final class JoltSearch {
  /**
   * A shift counts when its score is so many robust standard deviations of that score. Ten quiet
   * hours hold some 2 x 14,000 frames, each tried in some four ways that are independent: noise
   * alone reaches this once in four such nights.
   */
  static final double STANDS_OUT = 4.8;

  /** So many standard deviations, in squares, make a longer pattern worth it. */
  private static final double CLEARLY = 3;

  /** Shifts of so many limits have flanks that matter. */
  private static final double LARGE = 2;

  private static final int[] PASSING = {1, 2, 3, 4, 6, 8, 12};
  private static final int[] LASTING = {1, 2, 4, 8};

  /**
   * Samples on either side of a jolt that are not searched again in the same round, beside those
   * that its score reaches.
   */
  private static final int APART = 15;

  private static final int MOST_ROUNDS = 8;

  /**
   * Least wander over noise per sample that is listened with. A motion without wander would be
   * remembered for ever, and one knock be seen in the scores of all samples; with this, for some
   * ten samples.
   */
  private static final double LEAST_RATIO = 0.01;

  /** Enough scores to know their scale to 3 %. */
  private static final int SCALE_SAMPLES = 2000;

  private final MotionSeries motion;
  private final double[][] columns;
  private final List<Jolt> jolts = new ArrayList<>();

  /** A pattern at a sample, by how far it stands out of the noise, so that patterns compare. */
  private record Candidate(Jolt jolt, double strength) {
    /**
     * Whether a weaker one nearby may be no more than what this one leaves there.
     *
     * @param fading how fast that fades, in powers of e per sample
     */
    boolean covers(Candidate other, double fading) {
      return jolt.near(
          other.jolt, APART + (int) Math.ceil(Math.log(Math.max(1, strength)) / fading));
    }
  }

  private JoltSearch(MotionSeries motion, double[][] columns) {
    this.motion = motion;
    this.columns = columns;
  }

  /**
   * Searches.
   *
   * @param columns regressors of the motion
   * @param start wander and noise, jolts and all
   */
  static JoltFree of(MotionSeries motion, double[][] columns, WanderNoise start) {
    return new JoltSearch(motion, columns).search(start);
  }

  /**
   * Searches twice: jolts count as wander at first, beside which a gust looks like two lasting
   * shifts. The second search begins with the wander and noise of the quiet time, and keeps to the
   * strength of pulses that was told there.
   */
  private JoltFree search(WanderNoise start) {
    JoltFree all = JoltFree.all(motion, columns, start);
    if (sparse()) {
      return all;
    }
    JoltFree first = rounds(all, Optional.empty());
    if (first.jolts().isEmpty()) {
      return first;
    }
    jolts.clear();
    JoltFree kept = rounds(JoltFree.all(motion, columns, first.wanderNoise()), Optional.of(first));
    return kept.withJolts(JoltSizes.of(motion, columns, kept));
  }

  /**
   * Whether most frames are farther apart than a level is trusted for: a jolt is over in seconds,
   * and what a star does between two such frames may be anything.
   */
  private boolean sparse() {
    int far = 0;
    for (int i = 1; i < motion.size(); i++) {
      far += motion.seconds(i) - motion.seconds(i - 1) > Pieces.LONGEST_GAP_SECONDS ? 1 : 0;
    }
    return 2 * far > motion.size();
  }

  /**
   * @param quiet what tells the columns; else each round tells them beside the jolts that it has
   *     yet to find. So many pulses follow those that they would seem to push the wrong way, and
   *     the pulses after a dither would stand out as one more jolt
   */
  private JoltFree rounds(JoltFree start, Optional<JoltFree> quiet) {
    JoltFree kept = start;
    for (int round = 0; round < MOST_ROUNDS; round++) {
      List<Jolt> found = standingOut(kept, quiet.orElse(kept));
      if (found.isEmpty()) {
        break;
      }
      jolts.addAll(found);
      JoltFree next = JoltFree.without(motion, columns, jolts, kept.wanderNoise());
      if (next.motion().size() - next.motion().pieces()
          < RunBackground.FEWEST_STEPS + columns.length) {
        break;
      }
      kept = next;
    }
    return kept;
  }

  private static List<Jolt> standingOut(JoltFree kept, JoltFree quiet) {
    MotionSeries series = kept.motion();
    double ratio = ratioPerFrame(kept);
    Whitening whitening =
        series.whitening(new WanderNoise(kept.wanderNoise().noiseVariance(), ratio / step(series)));
    double[] left = quiet.left(series, kept.columns());
    ShiftScores scores = ShiftScores.of(whitening, whitening.apply(left));
    Candidate[] best = new Candidate[series.size()];
    for (int length : LASTING) {
      consider(best, kept, scores, Jolt.Shape.LASTING, length);
    }
    for (int length : PASSING) {
      consider(best, kept, scores, Jolt.Shape.PASSING, length);
    }
    List<Candidate> strongest =
        Arrays.stream(best)
            .filter(c -> c != null)
            .sorted(Comparator.comparingDouble(c -> -c.strength()))
            .toList();
    double fading = -Math.log1p(-Math.min(LoopTheory.bestGain(ratio, 1), 1 - 1e-9));
    List<Candidate> apart = new ArrayList<>();
    for (Candidate candidate : strongest) {
      if (apart.stream().noneMatch(taken -> taken.covers(candidate, fading))) {
        apart.add(candidate);
      }
    }
    return apart.stream().map(candidate -> plainest(candidate, strongest).jolt()).toList();
  }

  /** Wander over noise from one sample to the next. */
  private static double ratioPerFrame(JoltFree kept) {
    return Math.max(LEAST_RATIO, kept.wanderNoise().ratioPerSecond() * step(kept.motion()));
  }

  private static double step(MotionSeries series) {
    return series.spanSeconds() / Math.max(1, series.size() - 1);
  }

  /** The shortest of those about the same frames that explain hardly less. */
  private static Candidate plainest(Candidate chosen, List<Candidate> all) {
    return all.stream()
        .filter(other -> other.jolt().shape() == chosen.jolt().shape())
        .filter(other -> other.jolt().near(chosen.jolt(), 0))
        .filter(other -> !clearlyAbove(chosen.strength(), other.strength()))
        .min(
            Comparator.comparingInt((Candidate other) -> other.jolt().samples())
                .thenComparingDouble(other -> -other.strength()))
        .orElse(chosen);
  }

  private static void consider(
      Candidate[] best, JoltFree kept, ShiftScores scores, Jolt.Shape shape, int length) {
    int n = scores.size() - length + 1;
    if (n < 1) {
      return;
    }
    double[] normed = new double[n];
    for (int i = 0; i < n; i++) {
      normed[i] = shift(scores, shape, i, length).normed();
    }
    double limit = STANDS_OUT * scale(normed);
    double ofNoise = STANDS_OUT * Math.sqrt(kept.wanderNoise().noiseVariance());
    for (int i = 0; i < n; i++) {
      double strength = Math.abs(normed[i]) / ofNoise;
      if (Math.abs(normed[i]) > limit
          && (best[i] == null || clearlyAbove(strength, best[i].strength()))) {
        double size = shift(scores, shape, i, length).size();
        // The flanks of a passing shift reach into the frames beside it, and pulses answer them.
        int beside = shape == Jolt.Shape.LASTING ? 0 : strength > LARGE ? 2 : 1;
        Jolt jolt =
            new Jolt(
                shape,
                kept.original(Math.max(0, i - beside)),
                kept.original(Math.min(scores.size(), i + length + beside) - 1),
                size);
        best[i] = new Candidate(jolt, strength);
      }
    }
  }

  /** A longer pattern is taken only where the shorter one explains clearly less. */
  private static boolean clearlyAbove(double strength, double shorter) {
    double clear = CLEARLY / STANDS_OUT;
    return strength * strength > shorter * shorter + clear * clear;
  }

  private static ShiftScores.Shift shift(ShiftScores scores, Jolt.Shape shape, int i, int length) {
    return shape == Jolt.Shape.LASTING ? scores.lasting(i, length) : scores.passing(i, length);
  }

  private static double scale(double[] normed) {
    int count = Math.min(normed.length, SCALE_SAMPLES);
    double[] sampled = new double[count];
    Arrays.setAll(sampled, k -> normed[(int) ((long) k * normed.length / count)]);
    double scale = RobustScale.of(sampled);
    return scale > 0 ? scale : Double.POSITIVE_INFINITY;
  }
}
