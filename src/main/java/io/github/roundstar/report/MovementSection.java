package io.github.roundstar.report;

import io.github.roundstar.report.Page.Block;
import io.github.roundstar.report.Page.Cell;
import io.github.roundstar.report.Page.Column;
import io.github.roundstar.report.Page.Section;
import io.github.roundstar.report.Page.Table;
import io.github.roundstar.report.chart.ScatterChart;
import io.github.roundstar.report.words.Clock;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.Guided;
import io.github.roundstar.results.NightEvidence;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.RunResult;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** How the guided star moved: the cloud of offsets and a table of the runs. */
final class MovementSection {
  private MovementSection() {}

  static Section of(NightResult result, NightEvidence evidence, Charts charts) {
    Table table =
        new Table(
                "Star motion, run by run",
                columns(result.night().startUtc(), new Clock(evidence.localTime())),
                result.runs().stream().map(run -> row(run, evidence)).toList())
            .withoutEmptyColumns();
    Block cloud =
        new Block(
            shape(result, evidence),
            charts.of("the offsets", () -> ScatterChart.draw(evidence)),
            table,
            null,
            null);
    return new Section("star", heading(result), List.of(cloud));
  }

  private static List<Column> columns(String startUtc, Clock clock) {
    return List.of(
        Column.numbers("run", ""),
        Column.numbers("start", startUtc == null ? "min" : clock.name()),
        Column.numbers("length", "min"),
        Column.numbers("frames used", ""),
        Column.numbers("RA RMS", "arcsec"),
        Column.numbers("Dec RMS", "arcsec"),
        Column.numbers("radial RMS", "arcsec"),
        Column.numbers("95 % within", "arcsec"),
        Column.numbers("elon\u00adgation", ""),
        Column.numbers("angle", "deg"));
  }

  private static String heading(NightResult result) {
    Guided guided = result.night().guided();
    return guided == null || Guiding.tooFew(result).isPresent()
        ? "How the star moved"
        : "95 % of the frames lie within "
            + Numbers.plain(guided.p95RadiusArcsec())
            + " arcsec of the mean place";
  }

  private static List<String> shape(NightResult result, NightEvidence evidence) {
    Guided guided = result.night().guided();
    if (guided == null) {
      return List.of(new Reasons(result.notComputed()).sentence("/night/guided", "/runs/*/guided"));
    }
    Optional<String> tooFew = Guiding.tooFew(result);
    if (tooFew.isPresent()) {
      return List.of(tooFew.get());
    }
    String rms = "RMS is about each run's own mean; nothing is cut away, so jolts count.";
    if (guided.scatterElongation() != null && !evidence.sense().known()) {
      return List.of(
          "The cloud of offsets is "
              + Numbers.plain(guided.scatterElongation())
              + " times as long as wide; its direction on the sky is not known. "
              + new Reasons(result.notComputed())
                  .sentence("/night/guided/positionAngleDeg", "/runs/*/guided/positionAngleDeg"),
          rms);
    }
    if (guided.scatterElongation() == null || guided.positionAngleDeg() == null) {
      return List.of("The cloud of offsets is as good as round: no direction stands out.", rms);
    }
    return List.of(
        "The cloud of offsets is "
            + Numbers.plain(guided.scatterElongation())
            + " times as long as wide, at position angle "
            + Numbers.fixed(guided.positionAngleDeg(), 0)
            + " degrees (0 is north-south, 90 is east-west).",
        rms);
  }

  private static Cell start(RunResult run, NightEvidence evidence) {
    if (run.startUtc() != null) {
      return Cell.of(Instant.parse(run.startUtc()), new Clock(evidence.localTime()));
    }
    return evidence.timeline().stream()
        .filter(trace -> trace.run() == run.id())
        .map(trace -> Cell.of(Numbers.fixed(trace.startSeconds() / 60, 0)))
        .findFirst()
        .orElse(Cell.NOT_KNOWN);
  }

  private static List<Cell> row(RunResult run, NightEvidence evidence) {
    Guided guided = run.guided();
    return List.of(
        Cell.count(run.id()),
        start(run, evidence),
        Cell.of(Numbers.fixed(run.durationSeconds() / 60, run.durationSeconds() < 600 ? 1 : 0)),
        Cell.count(run.counts().used()),
        Cell.of(guided == null ? null : (Double) guided.ra().rmsArcsec()),
        Cell.of(guided == null ? null : (Double) guided.dec().rmsArcsec()),
        Cell.of(guided == null ? null : (Double) guided.rmsRadialArcsec()),
        Cell.of(guided == null ? null : (Double) guided.p95RadiusArcsec()),
        Cell.of(guided == null ? null : guided.scatterElongation()),
        guided == null || guided.positionAngleDeg() == null
            ? new Cell("", "none")
            : Cell.of(Numbers.fixed(guided.positionAngleDeg(), 0)));
  }
}
