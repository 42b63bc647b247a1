package io.github.roundstar.motion;

import io.github.roundstar.model.Frames;

/** When each frame of a run was exposed; immutable. */
final class ExposureTimes {
  private final double[] beginSeconds;
  private final double[] lengthSeconds;
  private final double[] endSeconds;

  /**
   * Of a run, whose times are those of the middle of each exposure.
   *
   * @param exposureSeconds guide exposure; 0 when unknown: an instant
   */
  ExposureTimes(Frames frames, double exposureSeconds) {
    beginSeconds = new double[frames.size()];
    lengthSeconds = new double[frames.size()];
    endSeconds = new double[frames.size()];
    double before = Double.NEGATIVE_INFINITY;
    for (int k = 0; k < beginSeconds.length; k++) {
      double middle = frames.timeSeconds(k);
      // No longer than the cadence that a log may have changed to.
      double exposure = Math.min(exposureSeconds, middle - before);
      beginSeconds[k] = middle - exposure / 2;
      lengthSeconds[k] = exposure;
      endSeconds[k] = middle + exposure / 2;
      before = middle;
    }
  }

  int size() {
    return beginSeconds.length;
  }

  double beginSeconds(int k) {
    return beginSeconds[k];
  }

  double lengthSeconds(int k) {
    return lengthSeconds[k];
  }

  double endSeconds(int k) {
    return endSeconds[k];
  }
}
