package io.github.roundstar.motion;

import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.Frames;
import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * The law that a loop followed, found from what it answered.
 *
 * @param law the law
 * @param explainedShare share of the pulses' variance that the law explains, at most 1
 * @param lag1Autocorrelation of the used offsets about their mean
 * @param limitSeen whether pulses met a limit that cut them off
 * @param shortestMillis shortest pulse that was sent [ms]
 */
public record LoopFit(
    Controller law,
    double explainedShare,
    double lag1Autocorrelation,
    boolean limitSeen,
    double shortestMillis) {
  /** A law that explains less than this does not describe the loop. */
  public static final double FEWEST_EXPLAINED = 0.9;

  /** With fewer pulses that no limit cuts off, no law is looked for. */
  private static final int FEWEST_PULSES = 20;

  /** As many pulses at the very same length are a limit, not chance. */
  private static final int PULSES_AT_LIMIT = 3;

  /** Pulses within this of the longest have its length: programs round to whole ms [ms]. */
  private static final double SAME_MILLIS = 1;

  private static final int MOST_DELAY = 5;
  private static final double[] MEMORIES = {0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9};

  /** What a law without memory may leave before one with memory is looked for. */
  private static final double GOOD = 1e-3;

  private static final int REFINEMENTS = 20;

  /** Deadbands tried, evenly up to the largest offset that no pulse answered. */
  private static final int THRESHOLDS = 4000;

  /** A threshold that stops pulses shorter than this is rounding, not a deadband [ms]. */
  private static final double ROUNDING_MILLIS = 1;

  /** Whether the law describes the loop. */
  public boolean describes() {
    return explainedShare >= FEWEST_EXPLAINED;
  }

  /**
   * Finds the law of one axis.
   *
   * @param declaredDeadband deadband that the log declares [arcsec]: where larger offsets are left
   *     alone too, it is a shortest pulse that does so
   */
  public static Answer<LoopFit> of(Frames frames, Axis axis, OptionalDouble declaredDeadband) {
    if (!frames.hasPulses()) {
      return Answer.none("the log has no pulses: log ra_pulse and dec_pulse");
    }
    double[] pulses = new double[frames.size()];
    double[] offsets = new double[frames.size()];
    for (int i = 0; i < pulses.length; i++) {
      pulses[i] = axis.pulseMillis(frames, i);
      offsets[i] = frames.measured(i) ? axis.offsetArcsec(frames, i) : Double.NaN;
    }
    if (Arrays.stream(pulses).allMatch(p -> p == 0)) {
      return Answer.none("no pulse was sent in this axis");
    }
    return new Search(frames, offsets, pulses, declaredDeadband, Listening.of(frames))
        .fit(lag1(frames, axis));
  }

  /** Lag-1 autocorrelation of the used offsets, of neighbours in the log only; 0 without any. */
  private static double lag1(Frames frames, Axis axis) {
    int[] used =
        IntStream.range(0, frames.size()).filter(i -> frames.state(i) == FrameState.USED).toArray();
    double mean =
        Arrays.stream(used).mapToDouble(i -> axis.offsetArcsec(frames, i)).average().orElse(0);
    double square = 0;
    double product = 0;
    int pairs = 0;
    for (int u = 0; u < used.length; u++) {
      double here = axis.offsetArcsec(frames, used[u]) - mean;
      square += here * here;
      if (u > 0 && used[u] == used[u - 1] + 1) {
        product += here * (axis.offsetArcsec(frames, used[u - 1]) - mean);
        pairs++;
      }
    }
    return square == 0 || pairs == 0 ? 0 : product / pairs / (square / used.length);
  }

  /** A law's proportional part: slope and what it leaves of the pulses' mean square. */
  private record Slope(double millisPerArcsec, double leftShare) {}

  private record Filter(double memory, int delay, Slope slope) {
    Filter better(Filter other) {
      return other.slope.leftShare < slope.leftShare ? other : this;
    }
  }

  private record Search(
      Frames frames,
      double[] offsets,
      double[] pulses,
      OptionalDouble declaredDeadband,
      boolean[] listening) {
    Answer<LoopFit> fit(double lag1) {
      double highest = limit(1);
      double lowest = -limit(-1);
      double[] uncut = uncut(lowest, highest);
      if (Arrays.stream(uncut).filter(p -> p != 0).count() < FEWEST_PULSES) {
        return Answer.none(
            Double.isInfinite(highest) && Double.isInfinite(lowest)
                ? "too few pulses were sent to tell how the loop answers: record for longer"
                : "nearly all pulses are as long as the loop allows, which hides its gain: allow"
                    + " longer pulses, or guide more often");
      }
      Filter filter = filter(uncut);
      if (!(filter.slope.millisPerArcsec > 0)) {
        return Answer.none("the pulses do not answer the offsets: check the signs of the pulses");
      }
      Controller law =
          new Controller(
              filter.slope.millisPerArcsec,
              0,
              filter.memory,
              filter.delay,
              oneWay(-1) ? 0 : lowest,
              oneWay(1) ? 0 : highest);
      Controller left = law.with(law.millisPerArcsec(), deadband(law));
      Controller whole =
          declaredDeadband.isPresent() ? left.withDeadband(declaredDeadband.getAsDouble()) : left;
      return Answer.of(
          new LoopFit(
              whole,
              explained(whole),
              lag1,
              Double.isFinite(highest) || Double.isFinite(lowest),
              Arrays.stream(pulses).map(Math::abs).filter(p -> p != 0).min().orElseThrow()));
    }

    /** Longest pulse of a sign where several have that length; infinite where none does. */
    private double limit(int sign) {
      double longest = Arrays.stream(pulses).map(p -> sign * p).max().orElseThrow();
      long there =
          Arrays.stream(pulses).filter(p -> sign * p >= longest - SAME_MILLIS && p != 0).count();
      return longest > 0 && there >= PULSES_AT_LIMIT ? longest : Double.POSITIVE_INFINITY;
    }

    /** Whether no pulse of a sign was ever sent. */
    private boolean oneWay(int sign) {
      return Arrays.stream(pulses).noneMatch(p -> sign * p > 0);
    }

    /** The pulses that no limit cut off; zero where it did, or where the loop was not at work. */
    private double[] uncut(double lowest, double highest) {
      double[] uncut = pulses.clone();
      for (int i = 0; i < uncut.length; i++) {
        boolean cut = uncut[i] >= highest - SAME_MILLIS || uncut[i] <= lowest + SAME_MILLIS;
        if (cut || !listening[i]) {
          uncut[i] = 0;
        }
      }
      return uncut;
    }

    private Filter filter(double[] uncut) {
      Filter best = new Filter(0, 0, slope(0, 0, uncut));
      for (int delay = 1; delay <= MOST_DELAY; delay++) {
        best = best.better(new Filter(0, delay, slope(0, delay, uncut)));
      }
      if (best.slope.leftShare < GOOD) {
        return best;
      }
      for (double memory : MEMORIES) {
        for (int delay = 0; delay <= MOST_DELAY; delay++) {
          best = best.better(new Filter(memory, delay, slope(memory, delay, uncut)));
        }
      }
      double step = 0.05;
      for (int i = 0; i < REFINEMENTS; i++, step /= 1.5) {
        for (double memory : new double[] {best.memory - step, best.memory + step}) {
          if (memory >= 0 && memory < 0.99) {
            best = best.better(new Filter(memory, best.delay, slope(memory, best.delay, uncut)));
          }
        }
      }
      return best;
    }

    /** Least squares through the origin over the frames with an uncut pulse. */
    private Slope slope(double memory, int delay, double[] uncut) {
      Controller.Course course = new Controller(1, 0, memory, delay, -1, 1).begin();
      double square = 0;
      double product = 0;
      double total = 0;
      for (int i = 0; i < uncut.length; i++) {
        double answered = course.answered(offsets[i]);
        if (uncut[i] != 0) {
          total += uncut[i] * uncut[i];
          if (!Double.isNaN(answered)) {
            square += answered * answered;
            product += answered * uncut[i];
          }
        }
      }
      return square == 0
          ? new Slope(0, 1)
          : new Slope(product / square, 1 - product * product / (square * total));
    }

    /** The threshold below which sending nothing describes the pulses better than the law does. */
    private double deadband(Controller law) {
      double[] answered = law.answered(offsets);
      double widest = 0;
      for (int i = 0; i < answered.length; i++) {
        if (listening[i] && pulses[i] == 0 && Math.abs(answered[i]) > widest) {
          widest = Math.abs(answered[i]);
        }
      }
      double[] gained = new double[THRESHOLDS];
      for (int i = 0; i < answered.length; i++) {
        if (listening[i] && Math.abs(answered[i]) <= widest && widest > 0) {
          double left = pulses[i] - law.answer(answered[i]);
          int bin = (int) Math.min(THRESHOLDS - 1, Math.abs(answered[i]) / widest * THRESHOLDS);
          gained[bin] += left * left - pulses[i] * pulses[i];
        }
      }
      double sum = 0;
      double most = 0;
      double threshold = 0;
      for (int bin = 0; bin < THRESHOLDS; bin++) {
        sum += gained[bin];
        if (sum > most) {
          most = sum;
          threshold = widest * (bin + 1) / THRESHOLDS;
        }
      }
      return threshold * law.millisPerArcsec() < ROUNDING_MILLIS ? 0 : threshold;
    }

    private double explained(Controller law) {
      double[] answered = law.answered(offsets);
      double sum = 0;
      double squares = 0;
      double left = 0;
      int n = 0;
      for (int i = 0; i < answered.length; i++) {
        if (listening[i]) {
          n++;
          sum += pulses[i];
          squares += pulses[i] * pulses[i];
          double error = pulses[i] - law.answer(answered[i]);
          left += error * error;
        }
      }
      double variance = squares - sum * sum / n;
      return variance > 0 ? 1 - left / variance : 0;
    }
  }
}
