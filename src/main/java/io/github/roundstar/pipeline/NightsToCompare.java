package io.github.roundstar.pipeline;

import io.github.roundstar.compare.NightInput;
import io.github.roundstar.diagnosis.NightAnalysis;
import io.github.roundstar.ingest.NightGrouping;
import io.github.roundstar.ingest.Nights;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.GuideLog;
import io.github.roundstar.model.Night;
import io.github.roundstar.model.SourceFile;
import io.github.roundstar.results.Faults;
import io.github.roundstar.results.NightJson;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** Gathers the nights of one side: results are read back, logs analysed first. */
final class NightsToCompare {
  private final CompareJob job;
  private final Equipment equipment;
  private final Layouts layouts;
  private final List<String> unusable = new ArrayList<>();
  private final List<String> noticed = new ArrayList<>();
  private final Faults faults;
  private final List<String> lost = new ArrayList<>();

  /**
   * Gathers for a comparison.
   *
   * @param faults hears of nights, and of parts of nights, that a fault of the tool took
   */
  NightsToCompare(CompareJob job, Equipment equipment, Layouts layouts, Faults faults) {
    this.faults = faults;
    this.job = job;
    this.equipment = equipment;
    this.layouts = layouts;
  }

  /** The nights in order of time. */
  List<NightInput> of(List<String> names) {
    LogFiles named = LogFiles.withResults(names);
    unusable.addAll(named.missing());
    List<NightInput> nights = new ArrayList<>();
    List<Path> logs = new ArrayList<>();
    for (Path file : named.files()) {
      if (file.toString().toLowerCase(Locale.ROOT).endsWith(".json")) {
        ResultReader.read(file, job.version(), unusable, noticed).ifPresent(nights::add);
      } else {
        logs.add(file);
      }
    }
    nights.addAll(analysed(Analysis.read(logs, layouts, unusable)));
    nights.sort(
        Comparator.comparing(
            (NightInput night) ->
                Optional.ofNullable(night.result().night().startUtc()).orElse("")));
    return nights;
  }

  private List<NightInput> analysed(List<GuideLog> logs) {
    Nights grouped =
        NightGrouping.group(logs, equipment.site().longitudeDegrees(), job.utcOffset());
    logs.forEach(log -> noticed.addAll(log.warnings()));
    noticed.addAll(grouped.warnings());
    List<NightInput> nights = new ArrayList<>();
    for (Night night : grouped.nights()) {
      Faults ofNight = new Faults();
      try {
        NightAnalysis analysis =
            NightAnalysis.of(night, equipment, job.version(), true, Optional.empty(), ofNight);
        nights.add(
            new NightInput(
                NightJson.asWritten(analysis.result()),
                files(night),
                Optional.of(analysis.evidence())));
        faults.addAll("night " + night.name(), ofNight);
      } catch (RuntimeException | StackOverflowError e) {
        faults.add("night " + night.name() + ": all of it", e);
        lost.add(night.name());
        noticed.add(
            "Night "
                + night.name()
                + " is left out by a fault of roundstar, so that it counts on"
                + " neither side.");
      }
    }
    return nights;
  }

  private static String files(Night night) {
    return night.sources().stream().map(SourceFile::name).collect(Collectors.joining(", "));
  }

  List<String> unusable() {
    return unusable;
  }

  /** Names of nights that a fault of the tool took. */
  List<String> lost() {
    return lost;
  }

  List<String> noticed() {
    return noticed;
  }
}
