package io.github.roundstar.motion;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Frames;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.model.GuidingMode;
import java.util.stream.IntStream;

/**
 * Motion of the mount with the corrections taken out: where the star would have gone without
 * guiding.
 *
 * <p>motion = offset + what the pulses took away + shifts of the set point. The pulses' effect is
 * the declared guide rate times the pulse time that had acted by each exposure. All measured frames
 * take part, settling ones too.
 */
public final class Reconstruction {
  private Reconstruction() {}

  /** Motion on the sky. */
  public static Answer<MotionSeries> sky(GuideRun run, Axis axis, Equipment equipment) {
    if (run.mode() == GuidingMode.NO_PULSES) {
      return Answer.none(
          "the log has no pulses, so the mount's own motion stays hidden behind the guiding: log"
              + " ra_pulse and dec_pulse, or record without guiding");
    }
    if (!pushed(run.frames(), axis)) {
      return Answer.of(series(run, axis, 0));
    }
    return GuideRate.declaredSky(run, axis, equipment).map(rate -> series(run, axis, rate));
  }

  private static boolean pushed(Frames frames, Axis axis) {
    return IntStream.range(0, frames.size()).anyMatch(i -> axis.pulseMillis(frames, i) != 0);
  }

  private static MotionSeries series(GuideRun run, Axis axis, double arcsecPerSecond) {
    Frames frames = run.frames();
    int[] measured = IntStream.range(0, frames.size()).filter(frames::measured).toArray();
    double exposure = run.camera().exposureSeconds().orElse(0);
    double[] oneWay = ExecutedPulses.seconds(frames, axis, 1, exposure);
    double[] otherWay = ExecutedPulses.seconds(frames, axis, -1, exposure);
    double[] shifts = knownShifts(frames, axis);
    double[] seconds = new double[measured.length];
    double[] arcsec = new double[measured.length];
    double[] pushedOneWay = new double[measured.length];
    double[] pushedOtherWay = new double[measured.length];
    for (int m = 0; m < measured.length; m++) {
      int i = measured[m];
      seconds[m] = frames.timeSeconds(i);
      pushedOneWay[m] = arcsecPerSecond * oneWay[i];
      pushedOtherWay[m] = arcsecPerSecond * otherWay[i];
      arcsec[m] = axis.offsetArcsec(frames, i) + pushedOneWay[m] - pushedOtherWay[m] + shifts[i];
    }
    return new MotionSeries(
        seconds, arcsec, Pieces.starts(frames, measured), pushedOneWay, pushedOtherWay);
  }

  /** Sum of the set point's known shifts up to each frame. */
  private static double[] knownShifts(Frames frames, Axis axis) {
    double[] shifts = new double[frames.size()];
    double sum = 0;
    for (int i = 0; i < shifts.length; i++) {
      double shift = axis.ditherArcsec(frames, i);
      if (Double.isFinite(shift)) {
        sum += shift;
      }
      shifts[i] = sum;
    }
    return shifts;
  }
}
