package io.github.roundstar.motion;

import java.util.Arrays;

/**
 * The used frames of a run cut into exposures of the main camera: one after the other, a new one
 * after every move of the set point. When the exposures really began is not known here.
 */
final class Exposures {
  /** Exposure that each measured frame belongs to; -1 for frames that are not used. */
  private final int[] exposure;

  private final int count;
  private final int frames;

  private Exposures(int[] exposure, int count) {
    this.exposure = exposure;
    this.count = count;
    this.frames = (int) Arrays.stream(exposure).filter(e -> e >= 0).count();
  }

  static Exposures of(GuidedFrames frames, double seconds) {
    int[] exposure = new int[frames.size()];
    int count = 0;
    double begin = Double.NEGATIVE_INFINITY;
    boolean moved = true;
    for (int i = 0; i < exposure.length; i++) {
      moved |= frames.moved[i];
      if (!frames.used[i]) {
        exposure[i] = -1;
        continue;
      }
      if (moved || frames.seconds[i] >= begin + seconds) {
        begin = frames.seconds[i];
        count++;
        moved = false;
      }
      exposure[i] = count - 1;
    }
    return new Exposures(exposure, count);
  }

  /** Number of used frames. */
  int frames() {
    return frames;
  }

  /** Mean over the used frames. */
  double mean(double[] values) {
    double sum = 0;
    for (int i = 0; i < exposure.length; i++) {
      sum += exposure[i] < 0 ? 0 : values[i];
    }
    return sum / frames;
  }

  /** Mean product over the used frames. */
  double product(double[] one, double[] other) {
    double sum = 0;
    for (int i = 0; i < exposure.length; i++) {
      sum += exposure[i] < 0 ? 0 : one[i] * other[i];
    }
    return sum / frames;
  }

  /** The same with the mean of every exposure taken out of both. */
  double trailing(double[] one, double[] other) {
    double[] size = new double[count];
    double[] sumOne = new double[count];
    double[] sumOther = new double[count];
    for (int i = 0; i < exposure.length; i++) {
      if (exposure[i] >= 0) {
        size[exposure[i]]++;
        sumOne[exposure[i]] += one[i];
        sumOther[exposure[i]] += other[i];
      }
    }
    double sum = product(one, other) * frames;
    for (int e = 0; e < count; e++) {
      sum -= sumOne[e] * sumOther[e] / size[e];
    }
    return sum / frames;
  }
}
