package io.github.roundstar.diagnosis;

import io.github.roundstar.diagnosis.exposures.ExposureReport;
import io.github.roundstar.diagnosis.exposures.FieldTurn;
import io.github.roundstar.diagnosis.exposures.GuidedRun;
import io.github.roundstar.diagnosis.exposures.RoundWidth;
import io.github.roundstar.diagnosis.exposures.Units;
import io.github.roundstar.diagnosis.ladder.ExposureLengths;
import io.github.roundstar.diagnosis.ladder.GuideExposures;
import io.github.roundstar.diagnosis.ladder.Ladder;
import io.github.roundstar.diagnosis.ladder.OtherSettings;
import io.github.roundstar.diagnosis.ladder.PlayedNight;
import io.github.roundstar.diagnosis.ladder.PlayedRun;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.PlayedAxis;
import io.github.roundstar.results.Cure;
import io.github.roundstar.results.ExposureHours;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.Planning;
import io.github.roundstar.results.Promise;
import io.github.roundstar.results.Replay;
import io.github.roundstar.results.Rung;
import io.github.roundstar.results.Step;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A night played again: what other settings would have done, and the ladder.
 *
 * @param played its runs, and the exposures or the windows that stand for them
 * @param whyNoLaw why settings cannot be played, where they cannot
 */
record LadderFigures(PlayedNight played, Optional<String> whyNoLaw) {
  private static final String NOTHING_TO_JUDGE =
      "no stretch of guiding is as long as one exposure: record longer, or give exposure_s in the"
          + " equipment file";

  /**
   * What is played.
   *
   * @param guided the runs, for exposures
   * @param report the exposures, where any were named
   * @param settlingSeconds how long the star takes to settle after a dither, 0 where not known [s]
   */
  static LadderFigures of(
      List<GuidedRun> guided,
      List<LoopStudy> ra,
      List<LoopStudy> dec,
      Optional<ExposureReport> report,
      Equipment equipment,
      Optional<FieldTurn> turn,
      double settlingSeconds) {
    List<PlayedRun> runs = new ArrayList<>();
    for (int i = 0; i < guided.size(); i++) {
      runs.add(new PlayedRun(ra.get(i).played().value(), dec.get(i).played().value()));
    }
    Units units =
        report
            .map(exposures -> Units.listed(exposures, guided, equipment, turn, settlingSeconds))
            .filter(listed -> listed.size() > 0)
            .orElseGet(
                () -> Units.windows(guided, LoopStudy.exposureSeconds(equipment), equipment, turn));
    Estimate width =
        report
            .map(ExposureReport::roundFwhmArcsec)
            .orElseGet(() -> RoundWidth.of(List.of(), equipment.seeingFwhmArcsec()).fwhmArcsec());
    return new LadderFigures(
        new PlayedNight(runs, units, width),
        Stream.concat(ra.stream(), dec.stream()).map(LadderFigures::whyNoLaw).findFirst());
  }

  /** The rungs. */
  Answer<List<Rung>> ladder(NightResult night, Equipment equipment, Optional<FieldTurn> turn) {
    List<Rung> rungs = Ladder.of(night, played, equipment, turn);
    return rungs.isEmpty() ? Answer.none(NOTHING_TO_JUDGE) : Answer.of(rungs);
  }

  /**
   * What the recommended steps bring together.
   *
   * @param night judged, with its ladder and its steps; null where it recommends nothing
   */
  Promise promise(NightResult night, Equipment equipment, Optional<FieldTurn> turn) {
    String decided = night.verdict().rung();
    if (night.steps().isEmpty() || night.ladder() == null || decided == null) {
      return null;
    }
    String top = decided.equals(Rung.AIR_LIMIT) ? Rung.MECHANICS : decided;
    List<Cure> cures =
        night.steps().stream().flatMap(step -> cure(night, top, step).stream()).toList();
    return Ladder.promise(night, played, equipment, turn, top, cures);
  }

  /** Numbers of a step, as they stand where the decision was made. */
  private static Optional<Cure> cure(NightResult night, String top, Step step) {
    return Stream.of(step.rung(), top)
        .flatMap(rung -> night.rung(rung).stream())
        .flatMap(rung -> rung.cures().stream())
        .filter(cure -> cure.cure().equals(step.cure()))
        .findFirst();
  }

  /**
   * How to take the next night.
   *
   * @param night judged, with its ladder and its steps
   */
  Answer<Planning> planning(NightResult night, Equipment equipment, Optional<FieldTurn> turn) {
    if (played.units().size() == 0) {
      return Answer.none(NOTHING_TO_JUDGE);
    }
    boolean told = night.verdict() != null && night.verdict().rung() != null;
    Estimate width = played.roundFwhm();
    return Answer.of(
        new Planning(
            told
                ? ExposureLengths.of(
                    night,
                    played,
                    equipment,
                    turn,
                    night.steps() == null ? List.of() : night.steps())
                : null,
            GuideExposures.of(night.replay(), played).orElse(null),
            night.exposures() == null || night.exposures().isEmpty()
                ? null
                : ExposureHours.of(night.exposures()),
            RecordNext.of(
                night,
                played.units().areListed(),
                50 * (width.hi95() - width.lo95()) / width.value())));
  }

  /** What other settings would have done. */
  Answer<List<Replay>> replay(Equipment equipment) {
    List<Replay> rows = OtherSettings.of(played, Ladder.need(equipment));
    return rows.isEmpty() ? Answer.none(whyNoLaw.orElse("there is no run")) : Answer.of(rows);
  }

  /** Why one axis has no such rows while the other has some. */
  static Optional<String> missing(List<Replay> rows, List<LoopStudy> ra, List<LoopStudy> dec) {
    return rows == null
        ? Optional.empty()
        : missing(rows, "ra", "right ascension", ra)
            .or(() -> missing(rows, "dec", "declination", dec));
  }

  private static Optional<String> missing(
      List<Replay> rows, String axis, String name, List<LoopStudy> loops) {
    return rows.stream().anyMatch(row -> row.axis().equals(axis))
        ? Optional.empty()
        : loops.stream().map(loop -> name + " has no rows: " + whyNoLaw(loop)).findFirst();
  }

  private static String whyNoLaw(LoopStudy loop) {
    return loop.law().value().isEmpty()
        ? loop.law().because()
        : loop.played().value().map(PlayedAxis::whyNoLaw).orElseGet(loop.played()::because);
  }
}
