package io.github.roundstar.diagnosis.finding;

import java.util.List;

/** What a gain costs that is off only because the pulses are. */
final class PulseGain {
  private static final List<GainFinding.Off> WAYS =
      List.of(
          (facts, change) -> change.stronger() && change.gain().hi95() < Thresholds.LOW_GAIN,
          (facts, change) -> change.weaker() && change.gain().lo95() > Thresholds.HIGH_GAIN);

  private PulseGain() {}

  /** Adds the share to the finding about the pulses. */
  static void takeOver(Draft draft, Facts facts) {
    for (GainFinding.Off way : WAYS) {
      GainFinding.saving(facts, way)
          .value()
          .filter(saving -> GainFinding.explainedByPulses(facts, saving))
          .ifPresent(
              saving ->
                  draft.share(
                      saving.share(),
                      saving.wholeArcsec2(),
                      saving.share().value() * saving.wholeArcsec2()));
    }
  }
}
