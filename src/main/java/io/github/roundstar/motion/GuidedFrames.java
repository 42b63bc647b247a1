package io.github.roundstar.motion;

import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.Frames;
import io.github.roundstar.model.GuideRun;
import java.util.EnumSet;
import java.util.Set;
import java.util.stream.IntStream;

/** The measured frames of one axis of a run as columns; nobody writes to them. */
final class GuidedFrames {
  private static final Set<FrameState> SETTLING =
      EnumSet.of(FrameState.SETTLING, FrameState.DITHER);

  /** Index among all frames. */
  final int[] frame;

  final double[] seconds;
  final double[] offsetArcsec;

  /** Offset of the other axis, as logged [arcsec]. */
  final double[] besideArcsec;

  final double[] pulseSeconds;

  /** Whether the frame counts in the RMS. */
  final boolean[] used;

  /** Whether the frame counts in the RMS or would once the star has settled. */
  final boolean[] steady;

  /** Whether the loop was at work. */
  final boolean[] listening;

  /** Whether the set point moved after the measured frame before. */
  final boolean[] moved;

  final double exposureSeconds;

  final SettlingRule settlingRule;

  GuidedFrames(GuideRun run, Axis axis) {
    Frames frames = run.frames();
    frame = IntStream.range(0, frames.size()).filter(frames::measured).toArray();
    int n = frame.length;
    seconds = new double[n];
    offsetArcsec = new double[n];
    besideArcsec = new double[n];
    pulseSeconds = new double[n];
    used = new boolean[n];
    steady = new boolean[n];
    listening = new boolean[n];
    moved = new boolean[n];
    exposureSeconds = run.camera().exposureSeconds().orElse(0);
    settlingRule = SettlingRule.of(frames);
    boolean[] atWork = Listening.of(frames);
    for (int i = 0; i < n; i++) {
      seconds[i] = frames.timeSeconds(frame[i]);
      offsetArcsec[i] = axis.offsetArcsec(frames, frame[i]);
      besideArcsec[i] = axis.other().offsetArcsec(frames, frame[i]);
      pulseSeconds[i] = axis.pulseMillis(frames, frame[i]) / 1000;
      used[i] = frames.state(frame[i]) == FrameState.USED;
      steady[i] = used[i] || SETTLING.contains(frames.state(frame[i]));
      listening[i] = atWork[frame[i]] && frames.hasPulses();
      for (int k = i == 0 ? 0 : frame[i - 1] + 1; k <= frame[i]; k++) {
        moved[i] |= frames.ditherStart(k);
      }
    }
  }

  int size() {
    return frame.length;
  }
}
