package io.github.roundstar.motion;

import io.github.roundstar.signal.RobustScale;
import io.github.roundstar.signal.WanderNoise;
import io.github.roundstar.signal.Whitening;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/** Where a motion jumps farther than wander and noise do: gusts, knocks, a slipping cable. */
final class JumpSpans {
  /** White steps beyond this many robust standard deviations are jumps; noise hardly makes one. */
  private static final double JUMP = 4.5;

  /** Jumps with no more samples than this between them are one. */
  private static final int APART = 8;

  /** Samples on either side that belong to a jump: it begins and ends slowly. */
  private static final int MARGIN = 2;

  private JumpSpans() {}

  /**
   * The spans, in order of time.
   *
   * @param arcsec what drift and sinusoids leave
   * @param frames index of each sample among the run's frames
   */
  static List<FrameSpan> of(
      double[] seconds,
      boolean[] startsPiece,
      WanderNoise wanderNoise,
      double[] arcsec,
      int[] frames) {
    Whitening whitening = wanderNoise.whitening(seconds, startsPiece);
    double[] white = whitening.apply(arcsec);
    double limit = white.length == 0 ? 0 : JUMP * RobustScale.of(white);
    if (limit == 0) {
      return List.of();
    }
    int[] jumps =
        IntStream.range(0, white.length)
            .filter(step -> Math.abs(white[step]) > limit)
            .map(whitening::sample)
            .toArray();
    List<FrameSpan> spans = new ArrayList<>();
    int begin = 0;
    for (int j = 1; j <= jumps.length; j++) {
      if (j == jumps.length || jumps[j] - jumps[j - 1] > APART) {
        int first = Math.max(0, jumps[begin] - MARGIN);
        int last = Math.min(frames.length - 1, jumps[j - 1] + MARGIN);
        spans.add(new FrameSpan(frames[first], frames[last] + 1));
        begin = j;
      }
    }
    return spans;
  }
}
