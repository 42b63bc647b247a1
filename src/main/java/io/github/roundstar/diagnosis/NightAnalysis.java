package io.github.roundstar.diagnosis;

import io.github.roundstar.diagnosis.exposures.ExposureReport;
import io.github.roundstar.diagnosis.exposures.JudgedExposure;
import io.github.roundstar.diagnosis.exposures.MainCamera;
import io.github.roundstar.diagnosis.finding.Diagnosis;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Night;
import io.github.roundstar.model.SourceFile;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.AxisRun;
import io.github.roundstar.motion.Gears;
import io.github.roundstar.motion.PeriodicError;
import io.github.roundstar.results.Input;
import io.github.roundstar.results.Method;
import io.github.roundstar.results.NightEvidence;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.NightSummary;
import io.github.roundstar.results.PolarAxis;
import io.github.roundstar.results.Replay;
import io.github.roundstar.results.RunResult;
import io.github.roundstar.results.Seeing;
import io.github.roundstar.results.Unusable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import java.util.concurrent.ForkJoinTask;
import java.util.function.Function;

/**
 * A night analysed.
 *
 * @param result the figures
 * @param evidence what the charts show
 */
public record NightAnalysis(NightResult result, NightEvidence evidence) {
  /** Works out a night without exposures. */
  public static NightAnalysis of(
      Night night, Equipment equipment, String version, boolean siteShown) {
    return of(night, equipment, version, siteShown, Optional.empty());
  }

  /**
   * Works out a night.
   *
   * @param logged the runs as logged; ten minutes without a pulse become a run of their own
   * @param equipment what the user says of site, mount and optics
   * @param version version of the tool, for the result
   * @param siteShown whether what gives the site away may stand in the result
   * @param camera exposures of the main camera, where any were named
   */
  public static NightAnalysis of(
      Night logged,
      Equipment equipment,
      String version,
      boolean siteShown,
      Optional<MainCamera> camera) {
    Night night = MixedRuns.split(logged);
    List<RunStudy> studies =
        night.runs().parallelStream().map(run -> RunStudy.of(run, equipment)).toList();
    // What takes long and needs nothing of the rest.
    ForkJoinTask<Answer<PeriodicError>> periodicBeside = fork(() -> periodic(studies, equipment));
    ForkJoinTask<Answer<AxisSearch.Found>> axisBeside =
        fork(() -> AxisSearch.of(studies, equipment));
    ForkJoinTask<List<LoopStudy>> decBeside =
        fork(() -> loops(studies, study -> LoopStudy.dec(study, equipment)));
    OptionalDouble imaging = equipment.imaging().arcsecPerPixel();
    Gears gears = Gears.of(equipment);
    Reasons reasons = new Reasons(studies.size());
    List<RunResult> runs = new ArrayList<>();
    List<LoopStudy> ra = loops(studies, study -> LoopStudy.ra(study, equipment));
    List<LoopStudy> dec = decBeside.join();
    ForkJoinTask<Answer<List<Replay>>> replayBeside =
        fork(() -> ReplayFigures.of(studies, ra, dec));
    for (int i = 0; i < studies.size(); i++) {
      runs.add(
          RunFigures.of(
              studies.get(i),
              ra.get(i),
              dec.get(i),
              i == 0 ? Optional.empty() : Optional.of(studies.get(i - 1)),
              imaging,
              gears,
              equipment,
              siteShown,
              reasons.ofRun(i)));
    }
    Answer<PeriodicError> periodic = periodicBeside.join();
    NightSummary summary =
        NightFigures.of(
            night,
            studies,
            runs,
            periodic,
            imaging,
            gears,
            ComparisonFigures.of(
                night, studies, equipment, siteShown, reasons.below("/night/comparison")),
            reasons.below("/night"));
    AxisFigures axis = new AxisFigures(axisBeside.join(), equipment, siteShown);
    Optional<SitelessAxisFigures> siteless =
        SitelessAxisFigures.wanted(studies, equipment, siteShown);
    Reasons.Scope ofAxis = reasons.below("/polarAxis");
    PolarAxis polarAxis = siteless.isPresent() ? siteless.get().of(ofAxis) : axis.of(ofAxis);
    Seeing seeing = SeeingFigures.of(studies, equipment, siteShown, reasons.below("/seeing"));
    Optional<ExposureReport> exposures =
        camera.map(
            main ->
                ExposureFigures.of(
                    main,
                    studies,
                    runs,
                    summary.periodic(),
                    equipment,
                    axis.whole().map(ExposureTurn::of)));
    List<Replay> replay = reasons.below("").orNull("/replay", replayBeside.join());
    ReplayFigures.missing(replay, ra, dec)
        .ifPresent(because -> reasons.below("").note("/replay/*", because));
    List<Method> methods = new ArrayList<>(Methods.ALL);
    exposures.ifPresent(report -> methods.addAll(ExposureFigures.methods(report)));
    NightResult result =
        new NightResult(
            NightResult.SCHEMA,
            version,
            night.sources().stream().map(NightAnalysis::input).toList(),
            summary,
            runs,
            polarAxis,
            seeing,
            reasons
                .below("")
                .orNull(
                    "/exposures",
                    exposures.map(
                        report -> report.exposures().stream().map(JudgedExposure::result).toList()),
                    ExposureFigures.NONE_NAMED),
            replay,
            null,
            null,
            reasons.all(),
            methods);
    NightEvidence evidence =
        Evidence.of(
            night,
            studies,
            periodic,
            equipment,
            siteless.map(SitelessAxisFigures::trace).orElseGet(axis::trace));
    return new NightAnalysis(
        Diagnosis.of(result, equipment).addedTo(result),
        exposures
            .map(
                report ->
                    evidence.withExposures(
                        ExposureFigures.evidence(report, NightClock.of(night.runs()))))
            .orElse(evidence));
  }

  private static <T> ForkJoinTask<T> fork(Callable<T> work) {
    return ForkJoinTask.adapt(work).fork();
  }

  private static List<LoopStudy> loops(
      List<RunStudy> studies, Function<RunStudy, LoopStudy> study) {
    return studies.parallelStream().map(study).toList();
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
