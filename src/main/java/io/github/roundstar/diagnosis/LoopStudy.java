package io.github.roundstar.diagnosis;

import io.github.roundstar.model.AxisLoop;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.motion.DecMotion;
import io.github.roundstar.motion.DisturbanceSearch;
import io.github.roundstar.motion.ErrorBudget;
import io.github.roundstar.motion.GuideRate;
import io.github.roundstar.motion.LoopFit;
import io.github.roundstar.motion.LoopGain;
import io.github.roundstar.motion.LoopReplay;
import io.github.roundstar.motion.MotionSplit;
import io.github.roundstar.motion.RaMotion;
import io.github.roundstar.results.Faults;

/**
 * What is found out about the guiding of one axis of a run.
 *
 * @param declared what the log says of the loop
 * @param law the law that the loop followed
 * @param gain what its pulses really take away
 * @param budget the mean square by cause
 * @param replay the run, ready to be guided again
 */
record LoopStudy(
    AxisLoop declared,
    Answer<LoopFit> law,
    Answer<Estimate> gain,
    Answer<ErrorBudget> budget,
    Answer<LoopReplay> replay) {
  /** Exposures of the main camera where nobody says how long they are [s]. */
  private static final double USUAL_EXPOSURE_SECONDS = 300;

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
    Answer<LoopFit> law = LoopFit.of(study.run().frames(), Axis.RA);
    return of(
        study.run().loop().ra(),
        law,
        law.then(
            fit ->
                LoopGain.of(
                    fit,
                    GuideRate.declaredSky(study.run(), Axis.RA, equipment),
                    study.ra().value().flatMap(RaMotion::response))),
        study
            .ra()
            .then(
                motion ->
                    MotionSplit.ra(
                        study.run(),
                        motion,
                        equipment,
                        DisturbanceSearch.spans(study.run(), motion.response()))),
        equipment);
  }

  /** Declination. */
  static LoopStudy dec(RunStudy study, Equipment equipment) {
    Answer<LoopFit> law = LoopFit.of(study.run().frames(), Axis.DEC);
    return of(
        study.run().loop().dec(),
        law,
        law.then(
            fit ->
                LoopGain.of(
                    fit,
                    GuideRate.declaredSky(study.run(), Axis.DEC, equipment),
                    study.dec().value().flatMap(DecMotion::response))),
        study
            .dec()
            .then(
                motion ->
                    study
                        .decDriftFit()
                        .then(
                            drift ->
                                MotionSplit.dec(
                                    study.run(),
                                    motion,
                                    drift,
                                    equipment,
                                    DisturbanceSearch.spans(study.run(), motion.response())))),
        equipment);
  }

  private static LoopStudy of(
      AxisLoop declared,
      Answer<LoopFit> law,
      Answer<Estimate> gain,
      Answer<MotionSplit> split,
      Equipment equipment) {
    double exposure = equipment.imaging().exposureSeconds().orElse(USUAL_EXPOSURE_SECONDS);
    return new LoopStudy(
        declared,
        law,
        gain,
        split.then(s -> ErrorBudget.of(s, law.value(), exposure)),
        law.then(fit -> split.then(s -> LoopReplay.of(s, fit))));
  }
}
