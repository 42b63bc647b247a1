package io.github.roundstar.pipeline;

import io.github.roundstar.diagnosis.NightAnalysis;
import io.github.roundstar.diagnosis.exposures.MainCamera;
import io.github.roundstar.ingest.EquipmentReader;
import io.github.roundstar.ingest.NightGrouping;
import io.github.roundstar.ingest.Nights;
import io.github.roundstar.ingest.UnusableInputException;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.GuideLog;
import io.github.roundstar.model.Night;
import io.github.roundstar.model.SourceFile;
import io.github.roundstar.report.NightPage;
import io.github.roundstar.report.SiteDetail;
import io.github.roundstar.results.Faults;
import io.github.roundstar.results.FiniteNumbers;
import io.github.roundstar.results.NightEvidence;
import io.github.roundstar.results.NightJson;
import io.github.roundstar.results.NightResult;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ForkJoinTask;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.UnaryOperator;

/** Carries out a job: logs in, a report and a JSON result per night out. */
public final class Analysis {
  private static final AtomicBoolean WARMED_UP = new AtomicBoolean();

  /** Of a night's small line on the page of all nights. */
  private static final int OUTLINE_STRETCHES = 96;

  private Analysis() {}

  /** Analyses every night of the logs, silently. */
  public static AnalysisOutcome run(AnalysisJob job)
      throws UnusableInputException, UnwritableOutputException {
    return run(job, Progress.SILENT);
  }

  /**
   * Analyses every night of the logs.
   *
   * @param progress hears of each night
   * @throws UnusableInputException when the equipment or layout file cannot be used; a log that
   *     cannot be used only joins the outcome
   * @throws UnwritableOutputException when the results cannot be written
   */
  public static AnalysisOutcome run(AnalysisJob job, Progress progress)
      throws UnusableInputException, UnwritableOutputException {
    warmUpReport();
    Equipment equipment =
        job.equipment().isPresent()
            ? EquipmentReader.read(job.equipment().get())
            : Equipment.UNKNOWN;
    LogFiles named = LogFiles.named(job.logs());
    List<String> unusable = new ArrayList<>(named.missing());
    Layouts layouts = new Layouts(job.layout());
    List<GuideLog> logs = read(named.files(), layouts, unusable);
    Nights grouped =
        NightGrouping.group(logs, equipment.site().longitudeDegrees(), job.utcOffset());
    List<String> warnings = new ArrayList<>();
    logs.forEach(log -> warnings.addAll(log.warnings()));
    warnings.addAll(grouped.warnings());
    ResultFiles files = new ResultFiles(job.out());
    Faults faults = new Faults();
    Optional<NightExposures> exposures = NightExposures.read(job.exposures(), unusable, faults);
    List<Night> nights = grouped.nights();
    Optional<List<MainCamera>> cameras = exposures.map(all -> all.dealt(nights, warnings));
    EarlierNights earlier = new EarlierNights(job.out(), nights);
    NightBatch batch =
        NightBatch.of(
            nights,
            (i, ofNight) -> {
              try {
                return finish(
                    nights.get(i),
                    warnings(nights.get(i), logs),
                    equipment,
                    job.siteShown(),
                    job.version(),
                    cameras.map(dealt -> dealt.get(i)),
                    job.siteInReport() ? SiteDetail.FULL : SiteDetail.ROUNDED,
                    result -> earlier.beside(i, result, ofNight),
                    files,
                    ofNight);
              } finally {
                earlier.over(i);
              }
            },
            progress,
            faults);
    warnings.addAll(earlier.warnings());
    unusable.addAll(batch.tooLong());
    List<FinishedNight> finished = batch.finished();
    Optional<Path> index =
        finished.size() > 1 || (finished.size() == 1 && !batch.lost().isEmpty())
            ? Optional.of(files.index(finished, batch.lost(), faults))
            : Optional.empty();
    return new AnalysisOutcome(finished, index, unusable, faults.all(), batch.lost(), warnings);
  }

  /**
   * Fonts, charts and templates take long to start and little to run: they start while the first
   * logs are read.
   */
  private static void warmUpReport() {
    if (!WARMED_UP.compareAndSet(false, true)) {
      return;
    }
    Thread thread = new Thread(NightPage::warmUp, "report warm-up");
    thread.setDaemon(true);
    thread.start();
  }

  static List<GuideLog> read(List<Path> files, Layouts layouts, List<String> unusable) {
    List<GuideLog> logs = new ArrayList<>();
    for (Path file : files) {
      try {
        logs.add(layouts.read(file));
      } catch (UnusableInputException e) {
        unusable.add(e.getMessage());
      } catch (OutOfMemoryError e) {
        unusable.add(Memory.exhaustedBy(String.valueOf(file.getFileName())));
      }
    }
    return logs;
  }

  /** What is to be known of the logs that went into a night. */
  static List<String> warnings(Night night, List<GuideLog> logs) {
    return night.sources().stream()
        .flatMap(source -> logs.stream().filter(log -> isOf(log, source)).limit(1))
        .flatMap(log -> log.warnings().stream())
        .toList();
  }

  private static boolean isOf(GuideLog log, SourceFile source) {
    return log.source().name().equals(source.name())
        && log.source().sha256().equals(source.sha256());
  }

  /**
   * One night to its two files and what lies beside them.
   *
   * @param besideOthers puts it beside the nights before it
   */
  static FinishedNight finish(
      Night night,
      List<String> warnings,
      Equipment equipment,
      boolean siteShown,
      String version,
      Optional<MainCamera> camera,
      SiteDetail site,
      UnaryOperator<NightResult> besideOthers,
      ResultFiles files,
      Faults faults)
      throws UnwritableOutputException {
    NightAnalysis analysis = NightAnalysis.of(night, equipment, version, siteShown, camera, faults);
    return finish(night.name(), analysis, warnings, site, besideOthers, files, faults);
  }

  /** Page and files of what was worked out. */
  static FinishedNight finish(
      String name,
      NightAnalysis analysis,
      List<String> warnings,
      SiteDetail site,
      UnaryOperator<NightResult> besideOthers,
      ResultFiles files,
      Faults faults)
      throws UnwritableOutputException {
    NightResult told = besideOthers.apply(analysis.result());
    ForkJoinTask<byte[]> json = ForkJoinTask.adapt(() -> NightJson.write(told)).fork();
    NightEvidence evidence = analysis.evidence().withWarnings(warnings);
    double[] outline = evidence.outline(OUTLINE_STRETCHES);
    Map<String, byte[]> beside = beside(told, evidence, faults);
    NightPage.Rendered page = NightPage.render(told, evidence, site, faults);
    byte[] figures = faults.withinOrElse("a number of the JSON file", json::join, () -> null);
    if (faults.all().isEmpty()) {
      return files.write(name, told, figures, page.html(), outline, page.withoutCharts(), beside);
    }
    // Page and files may have met faults of their own, which all three tell.
    NightResult finite = FiniteNumbers.of(told, faults);
    NightPage.Rendered rendered =
        figures == null ? NightPage.render(finite, evidence, site, faults) : page;
    NightResult result = finite.withFaults(faults.told());
    return files.write(
        name,
        result,
        NightJson.write(result),
        rendered.html(),
        outline,
        rendered.withoutCharts(),
        beside);
  }

  /** Tables beside page and figures, by the end of their names. */
  private static Map<String, byte[]> beside(
      NightResult result, NightEvidence evidence, Faults faults) {
    Map<String, byte[]> files = new LinkedHashMap<>();
    evidence
        .worm()
        .ifPresent(
            turn ->
                faults.withinOrElse(
                    "table of the worm's turn",
                    () -> files.put(".worm.ecsv", WormTable.of(turn, result)),
                    () -> null));
    if (result.exposures() != null) {
      faults.withinOrElse(
          "table of the exposures",
          () -> files.put(".exposures.csv", ExposureCsv.of(result.exposures())),
          () -> null);
    }
    return files;
  }
}
