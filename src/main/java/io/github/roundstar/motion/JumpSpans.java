package io.github.roundstar.motion;

import io.github.roundstar.signal.RobustScale;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/** Where the motion jumps farther than wander and noise do: gusts, knocks, a slipping cable. */
final class JumpSpans {
  /** White steps beyond this many robust standard deviations are jumps; noise hardly makes one. */
  private static final double JUMP = 5;

  /** Jumps with no more frames than this between them are one. */
  private static final int APART = 3;

  private JumpSpans() {}

  /** The spans of the run that a fit is of, with a frame on either side; in order of time. */
  static List<FrameSpan> of(SharedFit fit, int[] frames) {
    RunBackground background = fit.model().backgrounds().get(0);
    double[] white = background.fit().residuals();
    double limit = JUMP * RobustScale.of(white);
    int[] jumps =
        IntStream.range(0, white.length)
            .filter(step -> Math.abs(white[step]) > limit)
            .map(background.whitening()::sample)
            .toArray();
    List<FrameSpan> spans = new ArrayList<>();
    int begin = 0;
    for (int j = 1; j <= jumps.length; j++) {
      if (j == jumps.length || jumps[j] - jumps[j - 1] > APART) {
        int last = Math.min(frames.length - 1, jumps[j - 1] + 1);
        spans.add(new FrameSpan(frames[Math.max(0, jumps[begin] - 1)], frames[last] + 1));
        begin = j;
      }
    }
    return spans;
  }
}
