package io.github.roundstar.ingest;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.model.GuideLog;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.model.Night;
import io.github.roundstar.model.SourceFile;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Sorts logs into nights; the order in which they are given does not matter.
 *
 * <ul>
 *   <li>A run belongs to the night of its first frame, so a file may have a part in several nights;
 *       each of them then lists the whole file as a source, rows of all parts together.
 *   <li>Files are taken in order of their first instant; of equals the one with more rows, then the
 *       smaller hash. A frame that an earlier file has at the same instant with the same values is
 *       a duplicate of the later file, dropped and counted there. A run of which nothing is left
 *       gives its counts to the next run of its file or, without one, to the run that has its
 *       frames, so that the counts of all runs sum to the rows of all files.
 *   <li>A file that, less its duplicates, still overlaps another becomes a night of its own, with a
 *       warning.
 *   <li>The same bytes given twice are read once: the second file is no source, has no rows to
 *       account for, and only gives a warning.
 *   <li>A log without absolute time is always a night of its own.
 * </ul>
 */
public final class NightGrouping {
  private final Map<String, List<PlacedRun>> nights = new HashMap<>();
  private final Map<String, List<Source>> sources = new HashMap<>();
  private final List<PlacedRun> everywhere = new ArrayList<>();
  private final List<String> warnings = new ArrayList<>();

  private NightGrouping() {}

  private static final class Source {
    private final GuideLog log;
    private int used;

    Source(GuideLog log) {
      this.log = log;
      this.used = log.source().used();
    }

    SourceFile file() {
      SourceFile file = log.source();
      return new SourceFile(
          file.name(),
          file.sha256(),
          file.bytes(),
          file.layout(),
          file.rows(),
          used,
          file.unusableByReason(),
          file.firstUnusable());
    }
  }

  /**
   * Sorts logs into nights.
   *
   * @param longitudeDegrees longitude of the site, east positive
   * @param utcOffset offset of the logs' clocks, in place of the one that the logs give
   */
  public static Nights group(
      List<GuideLog> logs, OptionalDouble longitudeDegrees, Optional<ZoneOffset> utcOffset) {
    NightGrouping grouping = new NightGrouping();
    List<GuideLog> distinct = grouping.distinct(logs);
    List<GuideLog> dated = distinct.stream().filter(NightGrouping::isDated).sorted(ORDER).toList();
    NightNames names = new NightNames(dated, longitudeDegrees, utcOffset);
    for (GuideLog log : dated) {
      grouping.add(log, names);
    }
    List<Night> result = grouping.dated(utcOffset);
    distinct.stream()
        .filter(log -> !isDated(log))
        .map(
            log ->
                new Night(NightNames.withHash("undated", log), log.runs(), List.of(log.source())))
        .sorted(Comparator.comparing(Night::name))
        .forEach(result::add);
    return new Nights(result, grouping.warnings);
  }

  private static final Comparator<GuideLog> ORDER =
      Comparator.comparing(NightGrouping::firstInstant)
          .thenComparing(log -> -log.source().rows())
          .thenComparing(log -> log.source().sha256());

  private static boolean isDated(GuideLog log) {
    return log.runs().stream().allMatch(run -> run.start().isPresent());
  }

  private static Instant firstInstant(GuideLog log) {
    return log.runs().stream()
        .map(run -> RunSpan.of(run).first())
        .min(Comparator.naturalOrder())
        .orElseThrow();
  }

  private List<GuideLog> distinct(List<GuideLog> logs) {
    Map<String, GuideLog> byHash = new HashMap<>();
    List<GuideLog> byName =
        logs.stream().sorted(Comparator.comparing((GuideLog log) -> log.source().name())).toList();
    List<GuideLog> distinct = new ArrayList<>();
    for (GuideLog log : byName) {
      GuideLog same = byHash.putIfAbsent(log.source().sha256(), log);
      if (same == null) {
        distinct.add(log);
      } else {
        warn(log, "the same bytes as " + same.source().name() + ", read once", "give it once");
      }
    }
    return distinct;
  }

  private void warn(GuideLog log, String what, String remedy) {
    warnings.add(FormatException.located(log.source().name(), 0, what, remedy));
  }

  private void add(GuideLog log, NightNames names) {
    Source source = new Source(log);
    Map<String, List<GuideRun>> parts = new LinkedHashMap<>();
    for (GuideRun run : log.runs()) {
      parts.computeIfAbsent(names.of(run), any -> new ArrayList<>()).add(run);
    }
    List<PlacedRun> earlier = List.copyOf(everywhere);
    parts.forEach((night, runs) -> addPart(source, night, runs, earlier));
  }

  private void addPart(Source source, String night, List<GuideRun> runs, List<PlacedRun> earlier) {
    DuplicateRows rows = new DuplicateRows(earlier);
    List<GuideRun> rest = rows.drop(runs);
    source.used -= rows.droppedUsed();
    if (rest.isEmpty()) {
      listSource(rows.giveCountsToHolder().night(), source);
      return;
    }
    String name = night;
    if (overlaps(rest, nights.getOrDefault(night, List.of()))) {
      name = NightNames.withHash(night, source.log);
      warn(
          source.log,
          "overlaps another file of the night " + night + ", so it becomes the night " + name,
          "give the logs of one mount only, or correct the start in the header");
    }
    for (GuideRun run : rest) {
      PlacedRun placed = new PlacedRun(name, run);
      everywhere.add(placed);
      nights.computeIfAbsent(name, any -> new ArrayList<>()).add(placed);
    }
    listSource(name, source);
  }

  private void listSource(String night, Source source) {
    List<Source> listed = sources.computeIfAbsent(night, any -> new ArrayList<>());
    if (!listed.contains(source)) {
      listed.add(source);
    }
  }

  private static boolean overlaps(List<GuideRun> runs, List<PlacedRun> others) {
    return runs.stream()
        .map(RunSpan::of)
        .anyMatch(span -> others.stream().anyMatch(other -> other.span().overlaps(span)));
  }

  private List<Night> dated(Optional<ZoneOffset> utcOffset) {
    List<Night> result = new ArrayList<>();
    for (String name : nights.keySet().stream().sorted().toList()) {
      List<GuideRun> runs = new ArrayList<>();
      nights.get(name).stream()
          .sorted(Comparator.comparing(placed -> placed.span().first()))
          .forEach(placed -> runs.add(placed.run().withId(runs.size() + 1)));
      Optional<ZoneOffset> logged =
          sources.get(name).stream().flatMap(source -> source.log.utcOffset().stream()).findFirst();
      result.add(
          new Night(
              name,
              runs,
              sources.get(name).stream().map(Source::file).toList(),
              utcOffset.or(() -> logged)));
    }
    return result;
  }
}
