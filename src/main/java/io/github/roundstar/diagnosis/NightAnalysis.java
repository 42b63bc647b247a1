package io.github.roundstar.diagnosis;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Night;
import io.github.roundstar.model.SourceFile;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.AxisRun;
import io.github.roundstar.motion.Gears;
import io.github.roundstar.motion.PeriodicError;
import io.github.roundstar.results.Input;
import io.github.roundstar.results.NightEvidence;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.NightSummary;
import io.github.roundstar.results.PolarAxis;
import io.github.roundstar.results.RunResult;
import io.github.roundstar.results.Seeing;
import io.github.roundstar.results.Unusable;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * A night analysed.
 *
 * @param result the figures
 * @param evidence what the charts show
 */
public record NightAnalysis(NightResult result, NightEvidence evidence) {
  /**
   * Works out a night.
   *
   * @param night the runs
   * @param equipment what the user says of site, mount and optics
   * @param version version of the tool, for the result
   * @param siteShown whether what gives the site away may stand in the result
   */
  public static NightAnalysis of(
      Night night, Equipment equipment, String version, boolean siteShown) {
    List<RunStudy> studies = night.runs().stream().map(run -> RunStudy.of(run, equipment)).toList();
    Answer<PeriodicError> periodic = periodic(studies, equipment);
    OptionalDouble imaging = equipment.imaging().arcsecPerPixel();
    Gears gears = Gears.of(equipment);
    Reasons reasons = new Reasons(studies.size());
    NightSummary summary =
        NightFigures.of(night, studies, periodic, imaging, gears, reasons.below("/night"));
    List<RunResult> runs = new ArrayList<>();
    for (int i = 0; i < studies.size(); i++) {
      runs.add(
          RunFigures.of(studies.get(i), imaging, gears, equipment, siteShown, reasons.ofRun(i)));
    }
    AxisFigures axis = new AxisFigures(AxisSearch.of(studies, equipment), equipment, siteShown);
    PolarAxis polarAxis = axis.of(reasons.below("/polarAxis"));
    Seeing seeing = SeeingFigures.of(studies, equipment, siteShown, reasons.below("/seeing"));
    reasons.below("").notYet("/exposures", "/replay", "/findings", "/verdict");
    NightResult result =
        new NightResult(
            NightResult.SCHEMA,
            version,
            night.sources().stream().map(NightAnalysis::input).toList(),
            summary,
            runs,
            polarAxis,
            seeing,
            null,
            null,
            null,
            null,
            reasons.all(),
            Methods.ALL);
    return new NightAnalysis(
        result, Evidence.of(night, studies, periodic, equipment, axis.trace()));
  }

  /** One period and amplitude over all runs; the run's own fit where there is only one. */
  private static Answer<PeriodicError> periodic(List<RunStudy> studies, Equipment equipment) {
    if (studies.size() == 1) {
      return studies.get(0).periodicAtAxis();
    }
    List<AxisRun> runs =
        studies.stream().flatMap(study -> study.raAtAxis().value().stream()).toList();
    if (runs.isEmpty()) {
      return studies.isEmpty() ? Answer.none("there is no run") : studies.get(0).periodicAtAxis();
    }
    return PeriodicError.of(runs, Gears.of(equipment));
  }

  private static Input input(SourceFile file) {
    return new Input(
        file.name(),
        file.sha256(),
        file.bytes(),
        file.layout(),
        file.rows(),
        file.used(),
        new Unusable(file.unusable(), file.unusableByReason(), file.firstUnusable()));
  }
}
