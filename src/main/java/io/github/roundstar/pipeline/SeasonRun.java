package io.github.roundstar.pipeline;

import io.github.roundstar.compare.MountChange;
import io.github.roundstar.compare.Season;
import io.github.roundstar.formats.FormatException;
import io.github.roundstar.ingest.EquipmentReader;
import io.github.roundstar.ingest.NightGrouping;
import io.github.roundstar.ingest.Nights;
import io.github.roundstar.ingest.UnusableInputException;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.GuideLog;
import io.github.roundstar.model.Night;
import io.github.roundstar.report.NightPage;
import io.github.roundstar.report.SeasonPage;
import io.github.roundstar.report.SiteDetail;
import io.github.roundstar.results.Faults;
import io.github.roundstar.results.NightJson;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.SeasonJson;
import io.github.roundstar.results.SeasonNight;
import io.github.roundstar.results.SeasonResult;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * Carries out a season: every night below a folder, those unchanged since the last call read back
 * instead of analysed, on all cores; no more logs in memory than cores work on.
 */
public final class SeasonRun {
  private static final String NAME = "season";

  /** Read where no other file of changes is named. */
  private static final String CHANGES = "changes.toml";

  private final SeasonJob job;
  private final Progress progress;
  private final Equipment equipment;
  private final Layouts layouts;
  private final List<String> unusable = Collections.synchronizedList(new ArrayList<>());
  private final Set<String> warnings = Collections.synchronizedSet(new TreeSet<>());
  private final Faults faults = new Faults();
  private final Set<String> lost = Collections.synchronizedSet(new TreeSet<>());
  private final List<Season.Filed> filed = Collections.synchronizedList(new ArrayList<>());
  private final Map<Path, String> hashes = new HashMap<>();
  private SeasonMemory memory;
  private int kept;

  private SeasonRun(SeasonJob job, Progress progress) throws UnusableInputException {
    this.job = job;
    this.progress = progress;
    this.equipment =
        job.equipment().isPresent()
            ? EquipmentReader.read(job.equipment().get())
            : Equipment.UNKNOWN;
    this.layouts = new Layouts(job.layout());
  }

  /**
   * Works out a season.
   *
   * @throws UnusableInputException when the equipment or layout file cannot be used
   * @throws FormatException when the folder or the file of changes cannot be used
   * @throws UnwritableOutputException when the results cannot be written
   */
  public static SeasonOutcome run(SeasonJob job, Progress progress)
      throws UnusableInputException, FormatException, UnwritableOutputException {
    Optional<Path> file =
        job.changes()
            .or(() -> Optional.of(job.folder().resolve(CHANGES)).filter(Files::isRegularFile));
    List<MountChange> changes = file.isPresent() ? ChangesReader.read(file.get()) : List.of();
    return new SeasonRun(job, progress).run(SeasonFiles.below(job.folder(), job.out()), changes);
  }

  private SeasonOutcome run(List<Path> logs, List<MountChange> changes)
      throws FormatException, UnwritableOutputException {
    if (logs.isEmpty()) {
      throw new FormatException(
          job.folder().toString(),
          0,
          "no log lies below it",
          "name the folder that holds the logs");
    }
    Path json = job.out().resolve(NAME + ".json");
    String settings = settings(logs);
    hash(logs);
    memory = SeasonMemory.of(job.out(), json, job.version(), settings);
    List<List<Path>> changed = new ArrayList<>();
    for (List<Path> group : groups()) {
      if (!readBack(group)) {
        changed.add(group);
      }
    }
    ResultFiles files = new ResultFiles(job.out(), memory.gone(new TreeSet<>(hashes.values())));
    AllCores.each(changed, group -> analyse(group, files), progress);
    SeasonResult result =
        Season.of(
            filed,
            changes,
            settings,
            unusable.stream().distinct().sorted().toList(),
            List.copyOf(warnings),
            job.version(),
            List.copyOf(lost),
            faults);
    return write(result, json);
  }

  private SeasonOutcome write(SeasonResult result, Path json) throws UnwritableOutputException {
    NightPage.Rendered page = SeasonPage.render(result, faults);
    Path index = job.out().resolve(NAME + ".html");
    Map<Path, byte[]> files = new LinkedHashMap<>();
    files.put(index, page.html().getBytes(StandardCharsets.UTF_8));
    files.put(json, SeasonJson.write(result.withFaults(faults.told())));
    FileInPlace.write(files);
    return new SeasonOutcome(
        result, index, json, filed.size() - kept, kept, faults.all(), List.copyOf(lost));
  }

  /** Hash of what results depend on besides the logs and the version. */
  private String settings(List<Path> logs) throws FormatException {
    MessageDigest digest = SeasonFiles.digest();
    List<Optional<Path>> files = new ArrayList<>(List.of(job.equipment(), job.layout()));
    logs.stream()
        .map(Layouts::beside)
        .filter(Files::isRegularFile)
        .distinct()
        .sorted()
        .forEach(file -> files.add(Optional.of(file)));
    for (Optional<Path> file : files) {
      digest.update((byte) (file.isPresent() ? 1 : 0));
      if (file.isPresent()) {
        try {
          digest.update(Files.readAllBytes(file.get()));
        } catch (IOException e) {
          throw FormatException.unreadable(file.get(), e);
        }
      }
    }
    digest.update(String.valueOf(job.utcOffset()).getBytes(StandardCharsets.UTF_8));
    return HexFormat.of().formatHex(digest.digest());
  }

  private void hash(List<Path> logs) {
    Set<String> seen = new TreeSet<>();
    for (Path log : logs) {
      try {
        String hash = SeasonFiles.sha256(log);
        if (seen.add(hash)) {
          hashes.put(log, hash);
        } else {
          warnings.add(log + ": the same bytes as another log, read once: keep one of them");
        }
      } catch (IOException e) {
        unusable.add(FormatException.unreadable(log, e).getMessage());
      }
    }
  }

  /** Groups of logs with a night in common; new logs are read once to know their nights. */
  private List<List<Path>> groups() {
    LogGroups groups = new LogGroups();
    Map<Path, List<String>> names = Collections.synchronizedMap(new HashMap<>());
    List<Path> fresh = new ArrayList<>();
    for (Path log : hashes.keySet().stream().sorted().toList()) {
      if (memory.knows(hashes.get(log))) {
        names.put(log, memory.names(hashes.get(log)));
      } else {
        fresh.add(log);
      }
    }
    AllCores.each(
        fresh,
        log ->
            read(log)
                .ifPresent(
                    read ->
                        names.put(
                            log, group(List.of(read)).nights().stream().map(Night::name).toList())),
        Progress.SILENT);
    names.keySet().stream().sorted().forEach(log -> groups.add(log, names.get(log)));
    return groups.all();
  }

  private Optional<GuideLog> read(Path log) {
    try {
      return Optional.of(layouts.read(log));
    } catch (UnusableInputException e) {
      // Of a log whose layout must be asked about, the questions are left to the command layout.
      unusable.add(e.getMessage().lines().findFirst().orElse("").replaceFirst(":$", ""));
    } catch (RuntimeException | StackOverflowError e) {
      faults.add(log.getFileName() + ": reading it", e);
    } catch (OutOfMemoryError e) {
      unusable.add(Memory.exhaustedBy(String.valueOf(log.getFileName())));
    }
    return Optional.empty();
  }

  private Nights group(List<GuideLog> logs) {
    return NightGrouping.group(logs, equipment.site().longitudeDegrees(), job.utcOffset());
  }

  private boolean readBack(List<Path> group) {
    Set<String> wanted = group.stream().map(hashes::get).collect(Collectors.toSet());
    List<Season.Filed> read = new ArrayList<>();
    for (SeasonNight night : memory.madeOf(wanted)) {
      try {
        NightResult result = NightJson.read(Files.readAllBytes(job.out().resolve(night.result())));
        if (!result.faults().isEmpty()) {
          return false; // Another try costs little, and tells what is missing.
        }
        read.add(new Season.Filed(night, Season.slim(result)));
      } catch (IOException e) {
        return false;
      }
    }
    filed.addAll(read);
    kept += read.size();
    return !read.isEmpty();
  }

  private void analyse(List<Path> group, ResultFiles files) {
    List<GuideLog> logs = group.stream().flatMap(log -> read(log).stream()).toList();
    Nights grouped = group(logs);
    logs.forEach(log -> warnings.addAll(log.warnings()));
    warnings.addAll(grouped.warnings());
    for (Night night : grouped.nights()) {
      Faults ofNight = new Faults();
      try {
        FinishedNight finished =
            Analysis.finish(
                night,
                Analysis.warnings(night, logs),
                equipment,
                true,
                job.version(),
                Optional.empty(),
                SiteDetail.ROUNDED,
                result -> result.beside(null, null),
                files,
                ofNight);
        faults.addAll("night " + night.name(), ofNight);
        NightResult asWritten = NightJson.asWritten(finished.result());
        filed.add(new Season.Filed(entry(finished), Season.slim(asWritten)));
      } catch (UnwritableOutputException e) {
        unusable.add(e.getMessage());
      } catch (RuntimeException | StackOverflowError e) {
        faults.add(NightBatch.noReport(night), e);
        lost.add(night.name());
      } catch (OutOfMemoryError e) {
        unusable.add(Memory.exhaustedBy("night " + night.name()));
      }
    }
  }

  private static SeasonNight entry(FinishedNight night) {
    return SeasonNight.of(
        NightJson.asWritten(night.result()),
        String.valueOf(night.json().getFileName()),
        String.valueOf(night.report().getFileName()));
  }
}
