package io.github.roundstar.diagnosis.exposures;

import io.github.roundstar.model.ExposureFrame;
import io.github.roundstar.model.Frames;
import io.github.roundstar.model.GuideRun;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * How far the camera's clock is ahead of the guide log's. The clocks are taken as equal when at
 * least half of the exposure time lies inside runs of guiding. Else the offset is sought at which
 * most of it does and fewest dithers fall into exposures; of equally good ones, the one that holds
 * a whole half hour, as a wrong time zone makes, and then the smallest.
 *
 * @param aheadSeconds offset that is taken off the camera's times [s]
 * @param toleranceSeconds how far it could be moved without a worse match [s]
 * @param overlap share of the exposure time that then lies inside runs
 * @param estimated whether it was sought
 */
record CameraClock(
    double aheadSeconds, double toleranceSeconds, double overlap, boolean estimated) {
  private static final double ENOUGH_OVERLAP = 0.5;

  /** A better offset must win this share of the exposures; less is chance or a late start. */
  static final double CLEARLY_BETTER = 0.15;

  private static final double STEP_SECONDS = 5;

  /** A clock wrong by up to two days is sought; more is another night. */
  static final double FARTHEST_SECONDS = 50 * 3600;

  /** A dither inside an exposure counts as so many exposures outside the runs. */
  private static final double DITHER_COST = 0.5;

  /** A dither so close to an exposure's end may well be outside [s]. */
  private static final double MARGIN_SECONDS = 4;

  /** Worse by this share of an exposure is still as good. */
  private static final double AS_GOOD = 0.02;

  static final double HALF_HOUR = 1800;
  static final double DAY = 86_400;

  /** No zone is farther from another. */
  private static final double FARTHEST_ZONE = 26 * 3600;

  /** Compares the clocks; equal ones where there is nothing to compare. */
  static CameraClock of(List<ExposureFrame> frames, List<GuideRun> runs) {
    Night night = Night.of(frames, runs);
    CameraClock equal = new CameraClock(0, 0, night.overlap(0), false);
    return night.empty() ? equal : night.best(equal);
  }

  /** When, in the log's clock, an exposure started. */
  Instant inLog(Instant start) {
    return start.minusNanos(Math.round(aheadSeconds * 1e9));
  }

  /** In words for the reader. */
  String words() {
    String share = String.format(Locale.ROOT, "%.0f %%", 100 * overlap);
    if (!estimated) {
      return "the camera's clock is taken to agree with the guide log's: "
          + share
          + " of the exposure time lies inside runs of guiding";
    }
    return String.format(
        Locale.ROOT,
        "the camera's clock is taken to be %s by %.0f s (within %.0f s)%s: the offset at which most"
            + " exposure time, %s, lies inside runs of guiding and dithers fall between exposures",
        aheadSeconds >= 0 ? "ahead" : "behind",
        Math.abs(aheadSeconds),
        toleranceSeconds,
        fault(),
        share);
  }

  /** What makes such an offset; nothing for an odd one. */
  private String fault() {
    double size = Math.abs(aheadSeconds);
    if (size >= DAY && size % DAY == 0) {
      return size == DAY ? ", a wrong date by one day" : ", a wrong date by two days";
    }
    return size > 0 && size <= FARTHEST_ZONE && size % HALF_HOUR == 0
        ? String.format(Locale.ROOT, ", a time zone or summer time of %.1f h", size / 3600)
        : "";
  }

  /** Starts and ends in seconds since the first run's start. */
  record Night(double[] starts, double[] lengths, double[][] runs, double[] dithers) {
    static Night of(List<ExposureFrame> frames, List<GuideRun> all) {
      List<GuideRun> runs =
          all.stream().filter(r -> r.start().isPresent() && r.frames().size() > 1).toList();
      if (runs.isEmpty()) {
        return new Night(new double[0], new double[0], new double[0][], new double[0]);
      }
      Instant zero = runs.get(0).start().orElseThrow();
      double[][] spans = new double[runs.size()][];
      double[] dithers = new double[0];
      for (int r = 0; r < spans.length; r++) {
        Frames f = runs.get(r).frames();
        double shift = since(zero, runs.get(r).start().orElseThrow());
        spans[r] = new double[] {shift + f.timeSeconds(0), shift + f.timeSeconds(f.size() - 1)};
        double[] more =
            java.util.stream.IntStream.range(0, f.size())
                .filter(f::ditherStart)
                .mapToDouble(i -> shift + f.timeSeconds(i))
                .toArray();
        int n = dithers.length;
        dithers = Arrays.copyOf(dithers, n + more.length);
        System.arraycopy(more, 0, dithers, n, more.length);
      }
      Arrays.sort(dithers);
      return new Night(
          frames.stream().mapToDouble(f -> since(zero, f.start())).toArray(),
          frames.stream().mapToDouble(ExposureFrame::seconds).toArray(),
          spans,
          dithers);
    }

    private static double since(Instant zero, Instant at) {
      java.time.Duration since = java.time.Duration.between(zero, at);
      return since.getSeconds() + since.getNano() * 1e-9;
    }

    boolean empty() {
      return starts.length == 0 || runs.length == 0;
    }

    private double covered(int exposure, double ahead) {
      double from = starts[exposure] - ahead;
      double to = from + lengths[exposure];
      double inside = 0;
      for (double[] run : runs) {
        inside += Math.max(0, Math.min(to, run[1]) - Math.max(from, run[0]));
      }
      return inside / lengths[exposure];
    }

    double overlap(double ahead) {
      double inside = 0;
      double all = 0;
      for (int e = 0; e < starts.length; e++) {
        inside += covered(e, ahead) * lengths[e];
        all += lengths[e];
      }
      return all == 0 ? 0 : inside / all;
    }

    /**
     * How well an offset fits: one for each exposure inside the runs, less what dithers inside
     * exposures cost.
     */
    double score(double ahead) {
      double score = 0;
      for (int e = 0; e < starts.length; e++) {
        double from = starts[e] - ahead + MARGIN_SECONDS;
        double to = starts[e] - ahead + lengths[e] - MARGIN_SECONDS;
        int inside = Math.max(0, below(to) - below(from));
        score += covered(e, ahead) - DITHER_COST * inside;
      }
      return score;
    }

    private int below(double time) {
      int at = Arrays.binarySearch(dithers, time);
      return at < 0 ? -at - 1 : at;
    }

    CameraClock best(CameraClock equal) {
      double first = starts[0] - runs[runs.length - 1][1];
      double last = starts[starts.length - 1] + lengths[lengths.length - 1] - runs[0][0];
      double from = STEP_SECONDS * Math.ceil(Math.max(first, -FARTHEST_SECONDS) / STEP_SECONDS);
      double to = Math.min(last, FARTHEST_SECONDS);
      int steps = (int) Math.max(0, (to - from) / STEP_SECONDS + 1);
      if (steps == 0) {
        return equal;
      }
      double[] scores = new double[steps];
      for (int s = 0; s < steps; s++) {
        scores[s] = score(from + s * STEP_SECONDS);
      }
      double most = Arrays.stream(scores).max().orElseThrow();
      if (most - score(0) < CLEARLY_BETTER * starts.length) {
        return equal;
      }
      double good = most - AS_GOOD * starts.length;
      double bestMiddle = Double.NaN;
      double bestHalf = 0;
      double bestCost = Double.POSITIVE_INFINITY;
      for (int s = 0; s < steps; s++) {
        if (scores[s] < good) {
          continue;
        }
        int end = s;
        while (end + 1 < steps && scores[end + 1] >= good) {
          end++;
        }
        double low = from + s * STEP_SECONDS;
        double high = from + end * STEP_SECONDS;
        double zone = HALF_HOUR * Math.rint((low + high) / 2 / HALF_HOUR);
        boolean zoned = zone >= low && zone <= high;
        double middle = zoned ? zone : (low + high) / 2;
        double cost = Math.abs(middle) + (zoned ? 0 : 2 * FARTHEST_SECONDS);
        if (cost < bestCost) {
          bestCost = cost;
          bestMiddle = middle;
          bestHalf = Math.max(middle - low, high - middle);
        }
        s = end;
      }
      double overlap = overlap(bestMiddle);
      return overlap < ENOUGH_OVERLAP
          ? equal
          : new CameraClock(bestMiddle, Math.max(bestHalf, STEP_SECONDS), overlap, true);
    }
  }
}
