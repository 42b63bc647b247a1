package io.github.roundstar.report;

import io.github.roundstar.model.Sentences;
import io.github.roundstar.report.Page.Block;
import io.github.roundstar.report.Page.Cell;
import io.github.roundstar.report.Page.Column;
import io.github.roundstar.report.Page.Section;
import io.github.roundstar.report.Page.Table;
import io.github.roundstar.report.chart.JoltChart;
import io.github.roundstar.report.words.Clock;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.Event;
import io.github.roundstar.results.NightEvidence;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.RunResult;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What befell the star: gusts, knocks, shifts, other stars, clouds, a star that never moves. */
final class JoltSection {
  private static final int MOST_ROWS = 12;

  private static final Map<String, String> MEANING =
      Map.of(
          "gust", "The star went away and came back by itself, as wind makes it",
          "knock", "It stood elsewhere from one frame to the next",
          "lasting-shift", "It moved over several frames and stayed, as when a cable pulls",
          "star-switch", "It jumped and has another brightness since: another star",
          "cloud", "It lost much of its light for a while",
          "stuck-star", "No pulse moved it: a fault of the camera's chip, not a star");

  /** An event with the run it belongs to. */
  private record Placed(RunResult run, Event event) {
    double seconds() {
      return event.endTime() - event.time();
    }
  }

  private JoltSection() {}

  /** The section; nothing for a night in which nothing befell the star. */
  static Optional<Section> of(NightResult result, NightEvidence evidence, Charts charts) {
    List<Placed> events = new ArrayList<>();
    for (RunResult run : result.runs()) {
      run.events().stream()
          .filter(event -> MEANING.containsKey(event.kind()))
          .forEach(event -> events.add(new Placed(run, event)));
    }
    if (events.isEmpty()) {
      return Optional.empty();
    }
    Block block =
        new Block(
            sentences(events),
            charts.of(
                "gusts and knocks",
                () ->
                    JoltChart.draw(result, evidence)
                        .map(chart -> events.size() > MOST_ROWS ? chart : chart.withoutNumbers())),
            table(events, new Clock(evidence.localTime())),
            null,
            null);
    return Optional.of(new Section("jolts", heading(events), List.of(block)));
  }

  private static String heading(List<Placed> events) {
    if (events.stream().anyMatch(placed -> placed.event().kind().equals("stuck-star"))) {
      return "The camera followed a fault of its chip, not a star";
    }
    return "What befell the star: " + Sentences.list(counts(events));
  }

  private static List<String> counts(List<Placed> events) {
    List<String> counts = new ArrayList<>();
    events.stream()
        .map(placed -> placed.event().kind())
        .distinct()
        .sorted()
        .forEach(
            kind -> {
              long count =
                  events.stream().filter(placed -> placed.event().kind().equals(kind)).count();
              String word = kind.replace('-', ' ');
              counts.add(
                  Numbers.counted(
                      count, word, kind.equals("star-switch") ? "star switches" : word + "s"));
            });
    return counts;
  }

  private static List<String> sentences(List<Placed> events) {
    List<String> sentences = new ArrayList<>();
    sentences.add(
        "These stand out of wander and noise by so much that noise alone makes less than one in ten"
            + " hours. Response and noise are taken from the time between them; RMS holds them.");
    events.stream()
        .map(placed -> placed.event().kind())
        .distinct()
        .sorted()
        .forEach(
            kind ->
                sentences.add(
                    Sentences.capital(kind.replace('-', ' ')) + ": " + MEANING.get(kind) + "."));
    return sentences;
  }

  private static Table table(List<Placed> events, Clock clock) {
    boolean oneRun = events.stream().mapToInt(placed -> placed.run().id()).distinct().count() == 1;
    List<Placed> largest =
        events.stream()
            .sorted(Comparator.comparingDouble(JoltSection::weight).reversed())
            .limit(MOST_ROWS)
            .toList();
    return new Table(
            events.size() > MOST_ROWS ? "The " + MOST_ROWS + " largest, in order of size" : "",
            List.of(
                Column.numbers("run", ""),
                Column.numbers(
                    "time", events.get(0).run().startUtc() == null ? "min" : clock.name()),
                Column.words("kind"),
                Column.numbers("size", "arcsec"),
                Column.numbers("light lost", "%"),
                Column.numbers("lasting", "s")),
            largest.stream().map(placed -> row(placed, clock, oneRun)).toList())
        .withoutEmptyColumns();
  }

  /** A cloud counts by the light it took, so that both kinds come near the top. */
  private static double weight(Placed placed) {
    Event event = placed.event();
    if (event.sizeArcsec() != null) {
      return event.sizeArcsec();
    }
    return event.lightLost() == null ? Double.MAX_VALUE : 10 * event.lightLost();
  }

  private static List<Cell> row(Placed placed, Clock clock, boolean oneRun) {
    Event event = placed.event();
    String start = placed.run().startUtc();
    return List.of(
        oneRun ? Cell.NONE : Cell.count(placed.run().id()),
        start == null
            ? Cell.of(Numbers.fixed(event.time() / 60, 1))
            : Cell.of(Instant.parse(start).plusMillis(Math.round(event.time() * 1000)), clock),
        Cell.of(event.kind().replace('-', ' ')),
        event.sizeArcsec() == null ? Cell.NONE : Cell.of(Numbers.fixed(event.sizeArcsec(), 1)),
        event.lightLost() == null ? Cell.NONE : Cell.of(Numbers.fixed(100 * event.lightLost(), 0)),
        Cell.of(Numbers.fixed(placed.seconds(), 0)));
  }
}
