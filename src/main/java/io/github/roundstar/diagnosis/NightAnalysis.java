package io.github.roundstar.diagnosis;

import io.github.roundstar.diagnosis.exposures.ExposureReport;
import io.github.roundstar.diagnosis.exposures.FieldTurn;
import io.github.roundstar.diagnosis.exposures.GuidedRun;
import io.github.roundstar.diagnosis.exposures.JudgedExposure;
import io.github.roundstar.diagnosis.exposures.MainCamera;
import io.github.roundstar.diagnosis.finding.Diagnosis;
import io.github.roundstar.diagnosis.ladder.Ladder;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Night;
import io.github.roundstar.model.SourceFile;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.Gears;
import io.github.roundstar.motion.PeriodicError;
import io.github.roundstar.results.Faults;
import io.github.roundstar.results.Input;
import io.github.roundstar.results.Method;
import io.github.roundstar.results.NightEvidence;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.NightSummary;
import io.github.roundstar.results.Planning;
import io.github.roundstar.results.PolarAxis;
import io.github.roundstar.results.Promise;
import io.github.roundstar.results.Replay;
import io.github.roundstar.results.RunResult;
import io.github.roundstar.results.Rung;
import io.github.roundstar.results.Seeing;
import io.github.roundstar.results.Unusable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import java.util.concurrent.ForkJoinTask;
import java.util.function.IntFunction;
import java.util.function.Supplier;
import java.util.stream.IntStream;

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
    return of(night, equipment, version, siteShown, Optional.empty(), new Faults());
  }

  /**
   * Works out a night.
   *
   * @param logged the runs as logged; ten minutes without a pulse become a run of their own
   * @param equipment what the user says of site, mount and optics
   * @param version version of the tool, for the result
   * @param siteShown whether what gives the site away may stand in the result
   * @param camera exposures of the main camera, where any were named
   * @param faults hears of every figure that a fault of the tool took; the others are worked out
   *     all the same
   */
  public static NightAnalysis of(
      Night logged,
      Equipment equipment,
      String version,
      boolean siteShown,
      Optional<MainCamera> camera,
      Faults faults) {
    Night night = MixedRuns.split(logged);
    List<RunStudy> studies = RunStudy.of(night.runs(), equipment, faults);
    // What takes long and needs nothing of the rest.
    ForkJoinTask<Answer<AxisSearch.Found>> axisBeside =
        fork(() -> answer(faults, "/polarAxis search", () -> AxisSearch.of(studies, equipment)));
    ForkJoinTask<List<LoopStudy>> decBeside =
        fork(
            () ->
                loops(
                    studies,
                    i ->
                        faults.withinOrElse(
                            "/runs/" + i + " loop in declination",
                            () -> LoopStudy.dec(studies.get(i), equipment),
                            () -> LoopStudy.lost(studies.get(i).run().loop().dec()))));
    OptionalDouble imaging = equipment.imaging().arcsecPerPixel();
    Gears gears = Gears.of(equipment);
    Reasons reasons = new Reasons(studies.size(), faults);
    List<RunResult> runs = new ArrayList<>();
    List<LoopStudy> ra =
        loops(
            studies,
            i ->
                faults.withinOrElse(
                    "/runs/" + i + " loop in right ascension",
                    () -> LoopStudy.ra(studies.get(i), equipment),
                    () -> LoopStudy.lost(studies.get(i).run().loop().ra())));
    List<LoopStudy> dec = decBeside.join();
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
    Answer<PeriodicError> periodic = periodic(studies);
    NightSummary summary =
        NightFigures.of(
            night,
            studies,
            runs,
            periodic,
            imaging,
            gears,
            equipment,
            reasons
                .below("/night/comparison")
                .part(
                    "",
                    () ->
                        ComparisonFigures.of(
                            night,
                            studies,
                            equipment,
                            siteShown,
                            reasons.below("/night/comparison")),
                    null),
            siteShown,
            reasons.below("/night"));
    AxisFigures axis = new AxisFigures(axisBeside.join(), equipment, siteShown);
    Optional<SitelessAxisFigures> siteless =
        faults.within(
            "/polarAxis search without a latitude",
            () -> SitelessAxisFigures.wanted(studies, equipment, siteShown),
            Optional.<SitelessAxisFigures>empty());
    Reasons.Scope ofAxis = reasons.below("/polarAxis");
    PolarAxis polarAxis =
        ofAxis.part(
            "", () -> siteless.isPresent() ? siteless.get().of(ofAxis) : axis.of(ofAxis), null);
    Reasons.Scope ofSeeing = reasons.below("/seeing");
    Seeing seeing =
        ofSeeing.part("", () -> SeeingFigures.of(studies, equipment, siteShown, ofSeeing), null);
    List<GuidedRun> guided =
        faults.within(
            "runs as exposures see them",
            () -> ExposureFigures.runs(studies, runs, summary.periodic(), equipment),
            List.<GuidedRun>of());
    Optional<FieldTurn> mayTurn =
        axis.found()
            .map(found -> ExposureTurn.of(found, axis.whole().isPresent()))
            .or(() -> siteless.flatMap(SitelessAxisFigures::turn))
            .or(
                () ->
                    Optional.ofNullable(summary.driftArcsecPerMinuteSky())
                        .flatMap(drift -> Optional.ofNullable(drift.dec()))
                        .map(ExposureTurn::of));
    Optional<FieldTurn> turn = mayTurn.filter(FieldTurn::known);
    Answer<ExposureReport> exposures =
        camera
            .map(
                main ->
                    answer(
                        faults,
                        "/exposures",
                        () -> Answer.of(ExposureFigures.of(main, guided, equipment, turn, faults))))
            .orElseGet(() -> Answer.none(ExposureFigures.NONE_NAMED));
    Answer<LadderFigures> again =
        answer(
            faults,
            "what is played again",
            () ->
                guided.size() < studies.size()
                    ? Answer.<LadderFigures>none(Faults.BECAUSE)
                    : Answer.of(
                        LadderFigures.of(
                            guided,
                            ra,
                            dec,
                            exposures.value(),
                            equipment,
                            mayTurn,
                            settlingSeconds(summary))));
    List<Replay> replay =
        reasons
            .below("")
            .orNull(
                "/replay", answer(faults, "/replay", () -> again.then(a -> a.replay(equipment))));
    LadderFigures.missing(replay, ra, dec)
        .ifPresent(because -> reasons.below("").note("/replay/*", because));
    List<Method> methods = new ArrayList<>(Methods.ALL);
    exposures
        .value()
        .ifPresent(
            report -> {
              methods.addAll(ExposureFigures.methods(report));
              reasons.ofItems(
                  "/exposures", report.exposures().stream().map(JudgedExposure::missing).toList());
            });
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
                        report ->
                            report.exposures().stream().map(JudgedExposure::result).toList())),
            replay,
            null,
            null,
            reasons.all(),
            methods,
            List.of());
    NightEvidence evidence =
        Evidence.of(
            night,
            studies,
            periodic,
            equipment,
            siteShown,
            () -> siteless.map(SitelessAxisFigures::trace).orElseGet(axis::trace),
            faults);
    Answer<List<Rung>> ladder =
        answer(faults, "/ladder", () -> again.then(a -> a.ladder(result, equipment, mayTurn)));
    NightResult played =
        result.withLadder(Ladder.need(equipment), ladder.value().orElse(null), ladder.because());
    NightResult decided = Diagnosis.of(played, equipment, faults).addedTo(played);
    NightResult judged =
        decided.withPromise(
            faults.within(
                "what the steps promise",
                () -> again.value().map(a -> a.promise(decided, equipment, mayTurn)).orElse(null),
                (Promise) null));
    Answer<Planning> planning =
        answer(faults, "/planning", () -> again.then(a -> a.planning(judged, equipment, mayTurn)));
    NightResult planned =
        judged.withPlanning(
            planning.value().orElse(null),
            PlanningReasons.of(planning.value().orElse(null), planning.because()));
    return new NightAnalysis(
        planned.withFaults(faults.told()),
        exposures
            .value()
            .map(
                report ->
                    evidence.withExposures(
                        ExposureFigures.evidence(
                            report, NightClock.of(night.runs()), equipment.limits().elongation())))
            .orElse(evidence));
  }

  private static double settlingSeconds(NightSummary summary) {
    return summary.settling() == null || summary.settling().p90Seconds() == null
        ? 0
        : summary.settling().p90Seconds();
  }

  private static <T> ForkJoinTask<T> fork(Callable<T> work) {
    return ForkJoinTask.adapt(work).fork();
  }

  private static <T> Answer<T> answer(Faults faults, String part, Supplier<Answer<T>> work) {
    return faults.withinOrElse(part, work, () -> Answer.none(Faults.BECAUSE));
  }

  private static List<LoopStudy> loops(List<RunStudy> studies, IntFunction<LoopStudy> study) {
    return IntStream.range(0, studies.size()).parallel().mapToObj(study).toList();
  }

  /** Over all runs, where the axis of any of them can be had. */
  private static Answer<PeriodicError> periodic(List<RunStudy> studies) {
    return studies.stream()
        .map(RunStudy::periodicAtAxis)
        .filter(answer -> answer.value().isPresent())
        .findFirst()
        .orElseGet(
            () ->
                studies.isEmpty()
                    ? Answer.none("there is no run")
                    : studies.get(0).periodicAtAxis());
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
