package io.github.roundstar.diagnosis;

import io.github.roundstar.diagnosis.exposures.ExposureReport;
import io.github.roundstar.diagnosis.exposures.FieldTurn;
import io.github.roundstar.diagnosis.exposures.GuidedRun;
import io.github.roundstar.diagnosis.exposures.RoundWidth;
import io.github.roundstar.diagnosis.exposures.Units;
import io.github.roundstar.diagnosis.ladder.Ladder;
import io.github.roundstar.diagnosis.ladder.PlayedRun;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.Rung;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The ladder of a night out of what was found out about its runs. */
final class LadderFigures {
  private static final String NOTHING_TO_JUDGE =
      "no stretch of guiding is as long as one exposure: record longer, or give exposure_s in the"
          + " equipment file";

  private LadderFigures() {}

  /**
   * The rungs.
   *
   * @param night the night's figures
   * @param guided the runs, for exposures
   * @param report the exposures, where any were named
   */
  static Answer<List<Rung>> of(
      NightResult night,
      List<GuidedRun> guided,
      List<LoopStudy> ra,
      List<LoopStudy> dec,
      Optional<ExposureReport> report,
      Equipment equipment,
      Optional<FieldTurn> turn) {
    List<PlayedRun> runs = new ArrayList<>();
    for (int i = 0; i < guided.size(); i++) {
      runs.add(new PlayedRun(ra.get(i).played().value(), dec.get(i).played().value()));
    }
    Units units =
        report
            .map(exposures -> Units.listed(exposures, guided, equipment, turn))
            .filter(listed -> listed.size() > 0)
            .orElseGet(
                () -> Units.windows(guided, LoopStudy.exposureSeconds(equipment), equipment, turn));
    Estimate width =
        report
            .map(ExposureReport::roundFwhmArcsec)
            .orElseGet(() -> RoundWidth.of(List.of(), equipment.seeingFwhmArcsec()).fwhmArcsec());
    List<Rung> rungs = Ladder.of(night, runs, units, width, equipment, turn);
    return rungs.isEmpty() ? Answer.none(NOTHING_TO_JUDGE) : Answer.of(rungs);
  }
}
