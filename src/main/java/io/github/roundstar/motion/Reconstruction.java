package io.github.roundstar.motion;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Frames;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.model.GuidingMode;
import java.util.Arrays;
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
  /** Two frames are too few for anything, and told as such. */
  private static final int FEWEST_STILL = 3;

  private final GuideRun run;
  private final Axis axis;
  private final double arcsecPerSecond;
  private final PulseTrain sent;
  private final ExposureTimes exposures;
  private final int[] measured;
  private final double[] seconds;
  private final boolean[] starts;
  private final double[] shifts;

  private Reconstruction(GuideRun run, Axis axis, double arcsecPerSecond, PulseTrain sent) {
    this.run = run;
    this.axis = axis;
    this.arcsecPerSecond = arcsecPerSecond;
    this.sent = sent;
    this.exposures = new ExposureTimes(run.frames(), run.camera().exposureSeconds().orElse(0));
    this.measured =
        IntStream.range(0, run.frames().size()).filter(run.frames()::measured).toArray();
    this.seconds = Arrays.stream(measured).mapToDouble(run.frames()::timeSeconds).toArray();
    this.starts = Pieces.starts(run.frames(), measured);
    this.shifts = knownShifts(run.frames(), axis);
  }

  /**
   * What the motion of an axis is made of; nothing when the corrections' effect cannot be known.
   */
  public static Answer<Reconstruction> of(GuideRun run, Axis axis, Equipment equipment) {
    if (run.mode() == GuidingMode.NO_PULSES) {
      return Answer.none(
          "the log has no pulses, so the mount's own motion stays hidden behind the guiding: log"
              + " ra_pulse and dec_pulse, or record without guiding");
    }
    if (neverMoves(run.frames(), axis)) {
      return Answer.none(
          "the offsets of this axis never change, so they tell nothing of the mount: look whether"
              + " the guider measures and logs it");
    }
    PulseTrain sent = PulseTrain.sent(run.frames(), axis);
    if (!sent.pushes()) {
      return Answer.of(new Reconstruction(run, axis, 0, sent));
    }
    return GuideRate.unitSky(run, axis, equipment)
        .map(rate -> new Reconstruction(run, axis, rate, sent));
  }

  private static boolean neverMoves(Frames frames, Axis axis) {
    double[] offsets =
        IntStream.range(0, frames.size())
            .filter(frames::measured)
            .mapToDouble(i -> axis == Axis.RA ? frames.raArcsec(i) : frames.decArcsec(i))
            .toArray();
    return offsets.length >= FEWEST_STILL
        && Arrays.stream(offsets).allMatch(offset -> offset == offsets[0]);
  }

  /** Motion on the sky, every pulse acting as declared. */
  public MotionSeries sky() {
    return sky(PulseEffect.DECLARED);
  }

  /**
   * What the pulses push, as declared.
   *
   * @param samples which of the measured frames
   * @param partDelay delay of the second column [s]
   * @param kind what the widths asked for are those of
   * @param sense 1, or -1 where the motor turns the other way than the sky's directions
   */
  RunPushes pushes(int[] samples, double partDelay, LostMotion.Kind kind, int sense) {
    int[] frames = IntStream.of(samples).map(m -> measured[m]).toArray();
    return new RunPushes(
        exposures, sense < 0 ? sent.reversed() : sent, arcsecPerSecond, partDelay, kind, frames);
  }

  /** Whether pulses were sent both ways. */
  boolean pushedBothWays() {
    return sent.count(1) > 0 && sent.count(-1) > 0;
  }

  /** Whether any pulse was sent. */
  boolean pushed() {
    return arcsecPerSecond != 0;
  }

  /**
   * Every frame of a run, measured or not.
   *
   * @param motion on the sky; NaN where the star was not measured, a piece beginning where the
   *     level is lost
   * @param takenOutArcsec what was added to the offset to have the motion [arcsec]
   */
  record EveryFrame(MotionSeries motion, double[] takenOutArcsec) {}

  /** Every frame, as in {@link #sky(PulseEffect)}. */
  EveryFrame everyFrame(PulseEffect effect) {
    Frames frames = run.frames();
    double[] oneWay = acted(effect, 1);
    double[] otherWay = acted(effect, -1);
    double[] takenOut = new double[frames.size()];
    double[] seconds = new double[frames.size()];
    double[] arcsec = new double[frames.size()];
    for (int i = 0; i < frames.size(); i++) {
      seconds[i] = frames.timeSeconds(i);
      takenOut[i] = oneWay[i] - otherWay[i] + shifts[i];
      arcsec[i] = frames.measured(i) ? axis.offsetArcsec(frames, i) + takenOut[i] : Double.NaN;
    }
    boolean[] starts = Pieces.everyFrame(frames, measured);
    return new EveryFrame(new MotionSeries(seconds, arcsec, starts, oneWay, otherWay), takenOut);
  }

  /** What pulses of one direction had pushed by each frame [arcsec]. */
  private double[] acted(PulseEffect effect, int direction) {
    LostMotion lost = effect.lost();
    PulseTrain pulses =
        arcsecPerSecond == 0 || lost.arcsec() == 0
            ? sent
            : sent.behind(lost.times(1 / arcsecPerSecond).begin());
    double[] acted = ExecutedPulses.seconds(exposures, pulses, effect.delaySeconds(), direction);
    double strength = arcsecPerSecond * (direction > 0 ? effect.oneWay() : effect.otherWay());
    for (int i = 0; i < acted.length; i++) {
      acted[i] *= strength;
    }
    return acted;
  }

  /** Motion on the sky where pulses do this. */
  MotionSeries sky(PulseEffect effect) {
    Frames frames = run.frames();
    double[] oneWay = acted(effect, 1);
    double[] otherWay = acted(effect, -1);
    double[] arcsec = new double[measured.length];
    double[] pushedOneWay = new double[measured.length];
    double[] pushedOtherWay = new double[measured.length];
    for (int m = 0; m < measured.length; m++) {
      int i = measured[m];
      pushedOneWay[m] = oneWay[i];
      pushedOtherWay[m] = otherWay[i];
      arcsec[m] = axis.offsetArcsec(frames, i) + pushedOneWay[m] - pushedOtherWay[m] + shifts[i];
    }
    return new MotionSeries(seconds, arcsec, starts, pushedOneWay, pushedOtherWay);
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
