package io.github.roundstar.motion;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.GuideRun;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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
   * @param jolts where the run was knocked or blown about
   */
  public static Answer<MotionSplit> ra(
      GuideRun run, RaMotion motion, Equipment equipment, List<FrameSpan> jolts) {
    return motion
        .periodic()
        .then(
            found ->
                Reconstruction.of(run, Axis.RA, equipment)
                    .map(
                        made -> {
                          MotionSplitter splitter =
                              new MotionSplitter(
                                  new GuidedFrames(run, Axis.RA),
                                  motion.run(),
                                  found.fit(),
                                  declared(run, Axis.RA, equipment),
                                  motion.response());
                          return splitter.split(
                              made.sky(),
                              LostMotion.NONE,
                              found.mainFamily(),
                              found.steady(),
                              jolts);
                        }));
  }

  /**
   * Declination, behind the play or the sticking that was found where there surely is some.
   *
   * @param drift drift of that motion without its jolts
   * @param jolts where the run was knocked or blown about
   */
  public static Answer<MotionSplit> dec(
      GuideRun run,
      DecMotion motion,
      MountDrift drift,
      Equipment equipment,
      List<FrameSpan> jolts) {
    boolean behindPlay = motion.run().responseMeasured();
    LostMotion lost = behindPlay || motion.losesMotion() ? motion.lost() : LostMotion.NONE;
    return Reconstruction.of(run, Axis.DEC, equipment)
        .map(
            made ->
                new MotionSplitter(
                        new GuidedFrames(run, Axis.DEC),
                        motion.run(),
                        drift.fit(),
                        declared(run, Axis.DEC, equipment),
                        motion.response())
                    .split(made.sky(), lost, OptionalInt.empty(), Optional.empty(), jolts));
  }

  private static double declared(GuideRun run, Axis axis, Equipment equipment) {
    return GuideRate.declaredSky(run, axis, equipment).value().orElse(0.0);
  }
}
