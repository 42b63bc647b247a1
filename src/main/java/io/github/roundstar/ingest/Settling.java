package io.github.roundstar.ingest;

import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.FramesBuilder;
import io.github.roundstar.signal.Quantile;
import io.github.roundstar.signal.RobustScale;
import java.util.Arrays;
import java.util.function.IntToDoubleFunction;

/**
 * Marks settling where the log does not: from the frame after a dither up to, not including, the
 * first of three frames in a row whose radial offset is at most three times the run's robust
 * scatter, and no longer than 60 s.
 *
 * <p>Scatter and offset are taken about the medians of the run, so that a steady offset does not
 * count as unrest. The scatter is that of the radius: the root of the summed squares of both axes'
 * median absolute deviations, each times 1.4826 (the deviation of a normal distribution). A frame
 * that was not measured breaks the row of three.
 */
final class Settling {
  private static final double LONGEST_SECONDS = 60;
  private static final double CALM_SCATTERS = 3;
  private static final int CALM_FRAMES = 3;

  private final FramesBuilder frames;
  private final double raMedian;
  private final double decMedian;
  private final double calmSquared;

  private Settling(FramesBuilder frames) {
    this.frames = frames;
    double[] ra = measured(frames::raArcsec);
    double[] dec = measured(frames::decArcsec);
    raMedian = ra.length == 0 ? 0 : Quantile.median(ra);
    decMedian = dec.length == 0 ? 0 : Quantile.median(dec);
    calmSquared =
        ra.length == 0
            ? 0
            : square(CALM_SCATTERS) * (square(RobustScale.of(ra)) + square(RobustScale.of(dec)));
  }

  /** Marks the frames of a run. */
  static void mark(FramesBuilder frames) {
    Settling settling = null;
    for (int i = 0; i < frames.size(); i++) {
      if (frames.ditherStart(i)) {
        settling = settling == null ? new Settling(frames) : settling;
        settling.markAfter(i);
      }
    }
  }

  private void markAfter(int dither) {
    double end = frames.timeSeconds(dither) + LONGEST_SECONDS;
    for (int i = dither + 1; i < frames.size() && frames.timeSeconds(i) <= end; i++) {
      if (frames.ditherStart(i) || restsFrom(i)) {
        return;
      }
      if (frames.state(i) == FrameState.USED) {
        frames.state(i, FrameState.SETTLING);
      }
    }
  }

  private boolean restsFrom(int first) {
    if (first + CALM_FRAMES > frames.size()) {
      return false;
    }
    for (int i = first; i < first + CALM_FRAMES; i++) {
      double squared =
          square(frames.raArcsec(i) - raMedian) + square(frames.decArcsec(i) - decMedian);
      if (frames.state(i) != FrameState.USED || squared > calmSquared) {
        return false;
      }
    }
    return true;
  }

  private double[] measured(IntToDoubleFunction column) {
    double[] values = new double[frames.size()];
    int count = 0;
    for (int i = 0; i < values.length; i++) {
      if (frames.state(i) == FrameState.USED) {
        values[count++] = column.applyAsDouble(i);
      }
    }
    return Arrays.copyOf(values, count);
  }

  private static double square(double value) {
    return value * value;
  }
}
