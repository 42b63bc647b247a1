package io.github.roundstar.motion;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.Frames;
import io.github.roundstar.signal.LineTrend;
import io.github.roundstar.signal.Series;
import java.util.Arrays;
import java.util.Optional;
import java.util.stream.IntStream;

/** Slope of the offsets while guided: what the guiding let through. */
public final class GuidedDrift {
  private GuidedDrift() {}

  /**
   * Ordinary least-squares slope of the used offsets [arcsec/min]; nothing for too few independent
   * frames.
   */
  public static Optional<Estimate> arcsecPerMinute(Frames frames, Axis axis) {
    int[] used =
        IntStream.range(0, frames.size()).filter(i -> frames.state(i) == FrameState.USED).toArray();
    double[] seconds = Arrays.stream(used).mapToDouble(frames::timeSeconds).toArray();
    double[] arcsec = Arrays.stream(used).mapToDouble(i -> axis.offsetArcsec(frames, i)).toArray();
    return LineTrend.of(Series.of(seconds, arcsec)).map(trend -> trend.slope().times(60));
  }
}
