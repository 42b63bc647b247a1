package io.github.roundstar.diagnosis;

import io.github.roundstar.model.AxisLoop;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.motion.AxisMotion;
import io.github.roundstar.motion.Cadence;
import io.github.roundstar.motion.DisturbanceSearch;
import io.github.roundstar.motion.ErrorBudget;
import io.github.roundstar.motion.FrameSpan;
import io.github.roundstar.motion.GuideRate;
import io.github.roundstar.motion.LoopFit;
import io.github.roundstar.motion.MotionSplit;
import io.github.roundstar.motion.PlayedAxis;
import io.github.roundstar.results.Faults;
import java.util.List;
import java.util.function.BiFunction;

/**
 * What is found out about the guiding of one axis of a run.
 *
 * @param declared what the log says of the loop
 * @param law the law that the loop followed
 * @param gain what its pulses really take away
 * @param budget the mean square by cause
 * @param played the run, ready to be guided again, what moved it drawn from the posterior
 */
record LoopStudy(
    AxisLoop declared,
    Answer<LoopFit> law,
    Answer<Estimate> gain,
    Answer<ErrorBudget> budget,
    Answer<PlayedAxis> played) {
  /** Exposures of the main camera where nobody says how long they are [s]. */
  private static final double USUAL_EXPOSURE_SECONDS = 300;

  /** How long the main camera exposes [s]. */
  static double exposureSeconds(Equipment equipment) {
    return equipment.imaging().exposureSeconds().orElse(USUAL_EXPOSURE_SECONDS);
  }

  /** Nothing, for a fault of the tool. */
  static LoopStudy lost(AxisLoop declared) {
    return new LoopStudy(
        declared,
        Answer.none(Faults.BECAUSE),
        Answer.none(Faults.BECAUSE),
        Answer.none(Faults.BECAUSE),
        Answer.none(Faults.BECAUSE));
  }

  /** Right ascension. */
  static LoopStudy ra(RunStudy study, Equipment equipment) {
    return of(
        study,
        Axis.RA,
        study.run().loop().ra(),
        study.ra(),
        (motion, jolts) ->
            study
                .periodic()
                .then(periodic -> MotionSplit.ra(study.run(), motion, periodic, equipment, jolts)),
        equipment);
  }

  /** Declination. */
  static LoopStudy dec(RunStudy study, Equipment equipment) {
    return of(
        study,
        Axis.DEC,
        study.run().loop().dec(),
        study.dec(),
        (motion, jolts) ->
            study
                .decDriftFit()
                .then(drift -> MotionSplit.dec(study.run(), motion, drift, equipment, jolts)),
        equipment);
  }

  private static LoopStudy of(
      RunStudy study,
      Axis axis,
      AxisLoop declared,
      Answer<AxisMotion> motion,
      BiFunction<AxisMotion, List<FrameSpan>, Answer<MotionSplit>> splitting,
      Equipment equipment) {
    Answer<LoopFit> law = LoopFit.of(study.run().frames(), axis, declared.deadbandArcsec());
    Answer<MotionSplit> split =
        motion.then(m -> splitting.apply(m, DisturbanceSearch.spans(study.run(), m)));
    double exposure = exposureSeconds(equipment);
    double cadence = Cadence.medianSeconds(study.run().frames()).orElse(0);
    return new LoopStudy(
        declared,
        law,
        law.then(fit -> motion.then(m -> gain(fit, m, study.run(), axis, equipment))),
        split.then(s -> ErrorBudget.of(s, law.value(), exposure)),
        split.then(s -> motion.map(m -> PlayedAxis.of(s, law, m, cadence))));
  }

  /**
   * Share of a lasting offset that one pulse takes away, by what a second of pulse moves. The law
   * itself adds nothing to the interval: it is read off the pulses.
   */
  private static Answer<Estimate> gain(
      LoopFit fit, AxisMotion motion, GuideRun run, Axis axis, Equipment equipment) {
    return GuideRate.unitSky(run, axis, equipment)
        .map(
            rate ->
                motion
                    .known()
                    .strength()
                    .estimate()
                    .times(fit.law().millisPerArcsec() / 1000 * rate));
  }
}
