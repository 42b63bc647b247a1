package io.github.roundstar.motion;

import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.Frames;
import io.github.roundstar.model.GuideRun;
import java.util.ArrayList;
import java.util.List;

/**
 * How long the star took to rest after each dither: from the first frame against the new set point
 * to the first used one.
 */
public final class SettlingTimes {
  private SettlingTimes() {}

  /** One time per dither that was followed by a used frame before the next dither [s]. */
  public static List<Double> seconds(List<GuideRun> runs) {
    List<Double> times = new ArrayList<>();
    runs.forEach(run -> add(run.frames(), times));
    return times;
  }

  private static void add(Frames frames, List<Double> times) {
    double began = Double.NaN;
    for (int i = 0; i < frames.size(); i++) {
      if (frames.ditherStart(i)) {
        began = frames.timeSeconds(i);
      } else if (frames.state(i) == FrameState.USED && !Double.isNaN(began)) {
        times.add(frames.timeSeconds(i) - began);
        began = Double.NaN;
      }
    }
  }
}
