package io.github.roundstar.motion;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.GuideRun;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/**
 * What moved one axis of a run, frame by frame on the sky, split by cause: drift, each sinusoid,
 * jolts, wander and measurement noise, whose sum is the motion with all corrections taken out; and
 * what play or sticking kept from the corrections. Measured frames only; immutable.
 *
 * <p>Drift and sinusoids are the fitted ones. What they leave is smoothed: the level is wander, or
 * jolts where the run jumped, and the rest is noise.
 */
public final class MotionSplit {
  /** Cause of what a drift leaves. */
  public static final String DRIFT = "drift-lag";

  /** Begin of the cause of a sinusoid; its source follows. */
  public static final String PERIODIC = "periodic:";

  /** Cause of what random wander leaves. */
  public static final String WANDER = "wander";

  /** Cause of what measurement noise makes. */
  public static final String NOISE = "noise";

  /** Cause of what single jumps leave. */
  public static final String JOLTS = "jolts";

  /** Cause of what play in the gears, or an axis that sticks, keeps from the corrections. */
  public static final String BACKLASH = "backlash";

  final GuidedFrames frames;
  final PulseStrength strength;

  /** What pulses lose, on the sky. */
  final LostMotion lost;

  /** What each cause does to the star at every frame, uncorrected [arcsec]. */
  final Map<String, double[]> causes;

  /** Where the executed corrections have brought the mount [arcsec]. */
  final double[] executedArcsec;

  /** The part of the sinusoids that one gear's curve can take out [arcsec]. */
  final double[] trainableArcsec;

  /** Variance of the noise as it is known here: that of the smoothed level [arcsec^2]. */
  final double[] levelVariance;

  MotionSplit(MotionSplitter made) {
    this.frames = made.frames;
    this.strength = made.strength;
    this.lost = made.lost;
    this.causes = made.causes;
    this.executedArcsec = made.executedArcsec;
    this.trainableArcsec = made.trainableArcsec;
    this.levelVariance = made.levelVariance;
  }

  /**
   * Right ascension.
   *
   * @param periodic the night's periodic error, this run among its runs
   * @param jolts where the run was knocked or blown about
   */
  public static Answer<MotionSplit> ra(
      GuideRun run,
      AxisMotion motion,
      PeriodicError periodic,
      Equipment equipment,
      List<FrameSpan> jolts) {
    OptionalInt at = periodic.index(run.id());
    if (at.isEmpty()) {
      return Answer.none("the run is too short: record at least a few minutes");
    }
    return split(
        run,
        Axis.RA,
        motion,
        periodic.fit(),
        at.getAsInt(),
        periodic.mainFamily(),
        equipment,
        jolts);
  }

  /**
   * Declination, behind the play or the sticking that was found.
   *
   * @param drift drift of that motion without its jolts
   * @param jolts where the run was knocked or blown about
   */
  public static Answer<MotionSplit> dec(
      GuideRun run,
      AxisMotion motion,
      MountDrift drift,
      Equipment equipment,
      List<FrameSpan> jolts) {
    return split(run, Axis.DEC, motion, drift.fit(), 0, OptionalInt.empty(), equipment, jolts);
  }

  private static Answer<MotionSplit> split(
      GuideRun run,
      Axis axis,
      AxisMotion motion,
      SharedFit fit,
      int index,
      OptionalInt trained,
      Equipment equipment,
      List<FrameSpan> jolts) {
    double declared = GuideRate.unitSky(run, axis, equipment).value().orElse(0.0);
    return Reconstruction.of(run, axis, equipment)
        .map(
            made ->
                new MotionSplitter(new GuidedFrames(run, axis), motion, fit, index, declared)
                    .split(made.sky(), trained, jolts));
  }
}
