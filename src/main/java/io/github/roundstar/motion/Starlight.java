package io.github.roundstar.motion;

import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.Frames;
import io.github.roundstar.signal.Quantile;
import io.github.roundstar.signal.RobustScale;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * How much of its light the guide star shows from frame to frame: flux or, where the log has none,
 * the square of the signal to noise.
 */
final class Starlight {
  /** Fewer frames with a brightness tell nothing. */
  private static final int FEWEST = 30;

  /** A single frame that is dim may be one bad frame. */
  private static final int MEDIAN_OF = 5;

  /** So far to either side a clear sky is looked for [s]. */
  private static final double CLEAR_REACH_SECONDS = 1200;

  /** Level that a clear sky reaches most of the time in the frames around. */
  private static final double CLEAR_SHARE = 0.8;

  /** A star that shows less than this of its light is behind a cloud ... */
  private static final double CLOUDED = 0.7;

  /** ... until it shows this much. */
  private static final double CLEARED = 0.8;

  /** Shorter dimming is a bad frame or two [s]. */
  private static final double SHORTEST_SECONDS = 10;

  /** Frames before and after a shift that tell whether the star changed. */
  private static final int BESIDE = 12;

  /** Another star differs by at least this factor, and by five standard errors. */
  private static final double OTHER_STAR = 1.15;

  private static final int NODES_PER_REACH = 8;

  private final Frames frames;
  private final int[] told;
  private final double[] light;

  private Starlight(Frames frames, int[] told, double[] light) {
    this.frames = frames;
    this.told = told;
    this.light = light;
  }

  static Starlight of(Frames frames) {
    int[] told = IntStream.range(0, frames.size()).filter(i -> light(frames, i) >= 0).toArray();
    double[] light = new double[told.length];
    Arrays.setAll(light, k -> light(frames, told[k]));
    return new Starlight(frames, told, light);
  }

  private static double light(Frames frames, int i) {
    double flux = frames.fluxAdu(i);
    return Double.isNaN(flux) ? frames.snr(i) * frames.snr(i) : flux;
  }

  /** Clouds in order of time; none in a log without brightness. */
  List<Disturbance> clouds() {
    List<Disturbance> clouds = new ArrayList<>();
    if (told.length < FEWEST) {
      return clouds;
    }
    double[] shown = shown();
    int begin = -1;
    double least = 1;
    for (int k = 0; k < shown.length; k++) {
      if (begin < 0 && shown[k] < CLOUDED) {
        begin = k;
        least = shown[k];
      } else if (begin >= 0 && shown[k] >= CLEARED) {
        add(clouds, begin, k - 1, least);
        begin = -1;
      }
      least = Math.min(least, shown[k]);
    }
    if (begin >= 0) {
      add(clouds, begin, shown.length - 1, least);
    }
    return clouds;
  }

  private void add(List<Disturbance> clouds, int from, int to, double least) {
    double start = frames.timeSeconds(told[from]);
    double end = frames.timeSeconds(told[to]);
    if (end - start >= SHORTEST_SECONDS) {
      clouds.add(
          new Disturbance(
              Disturbance.Kind.CLOUD,
              start,
              end,
              OptionalDouble.empty(),
              OptionalDouble.of(1 - least)));
    }
  }

  /** Light over that of a clear sky, each frame the median of those about it. */
  private double[] shown() {
    double[] smooth = new double[light.length];
    int half = MEDIAN_OF / 2;
    for (int k = 0; k < smooth.length; k++) {
      smooth[k] =
          Quantile.median(
              Arrays.copyOfRange(
                  light, Math.max(0, k - half), Math.min(light.length, k + half + 1)));
    }
    double step = CLEAR_REACH_SECONDS / NODES_PER_REACH;
    double nodeTime = frames.timeSeconds(told[0]);
    double clear = clear(smooth, nodeTime);
    double next = clear(smooth, nodeTime + step);
    for (int k = 0; k < smooth.length; k++) {
      double time = frames.timeSeconds(told[k]);
      while (time > nodeTime + step) {
        nodeTime += step;
        clear = next;
        next = clear(smooth, nodeTime + step);
      }
      double level = clear + (next - clear) * (time - nodeTime) / step;
      smooth[k] = level > 0 ? smooth[k] / level : 1;
    }
    return smooth;
  }

  private double clear(double[] smooth, double time) {
    int from = lowerBound(time - CLEAR_REACH_SECONDS);
    int to = lowerBound(time + CLEAR_REACH_SECONDS);
    if (to - from < 1) {
      return 0;
    }
    return Quantile.of(Arrays.copyOfRange(smooth, from, to), CLEAR_SHARE);
  }

  private int lowerBound(double time) {
    int low = 0;
    int high = told.length;
    while (low < high) {
      int middle = (low + high) / 2;
      if (frames.timeSeconds(told[middle]) < time) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /** Whether the star is another one from this frame on. */
  boolean changesAt(int frame) {
    double time = frames.timeSeconds(frame);
    int at = lowerBound(time);
    double[] before = logs(Math.max(0, at - BESIDE), at);
    // The frame itself may still hold some of the light of the star before.
    double[] after = logs(at + 1, Math.min(told.length, at + 1 + BESIDE));
    if (before.length < BESIDE / 2 || after.length < BESIDE / 2) {
      return false;
    }
    double change = Math.abs(Quantile.median(after) - Quantile.median(before));
    double scatter = Math.hypot(RobustScale.of(before), RobustScale.of(after));
    // A median of n values scatters by 1.25 / sqrt(n) of one value.
    double error = 1.2533 * scatter / Math.sqrt(BESIDE);
    return change > Math.log(OTHER_STAR) && change > 5 * error;
  }

  private double[] logs(int from, int to) {
    return IntStream.range(Math.min(from, to), to)
        .filter(k -> light[k] > 0 && frames.state(told[k]) != FrameState.LOST)
        .mapToDouble(k -> Math.log(light[k]))
        .toArray();
  }
}
