package io.github.roundstar.report;

import io.github.roundstar.report.Page.Block;
import io.github.roundstar.report.Page.Cell;
import io.github.roundstar.report.Page.Column;
import io.github.roundstar.report.Page.Section;
import io.github.roundstar.report.Page.Table;
import io.github.roundstar.report.chart.ScatterChart;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.report.words.Times;
import io.github.roundstar.results.Guided;
import io.github.roundstar.results.NightEvidence;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.RunResult;
import java.time.Instant;
import java.util.List;

/** How the guided star moved: the cloud of offsets and a table of the runs. */
final class MovementSection {
  private static final List<Column> COLUMNS =
      List.of(
          Column.numbers("run", ""),
          Column.numbers("start", "UTC"),
          Column.numbers("length", "min"),
          Column.numbers("frames used", ""),
          Column.numbers("RA RMS", "arcsec"),
          Column.numbers("Dec RMS", "arcsec"),
          Column.numbers("radial RMS", "arcsec"),
          Column.numbers("95 % within", "arcsec"),
          Column.numbers("elongation", ""),
          Column.numbers("angle", "deg"));

  private MovementSection() {}

  static Section of(NightResult result, NightEvidence evidence, Charts charts) {
    Block cloud = Block.text(shape(result)).with(charts.of(() -> ScatterChart.draw(evidence)));
    Table table =
        new Table(
            "Star motion, run by run",
            COLUMNS,
            result.runs().stream().map(run -> row(run)).toList());
    Block runs =
        Block.text("RMS is about each run's own mean; nothing is cut away, so jolts count.")
            .with(table);
    return new Section("star", "How the star moved", List.of(cloud, runs));
  }

  private static String shape(NightResult result) {
    Guided guided = result.night().guided();
    if (guided == null) {
      return "Not known: "
          + new Reasons(result.notComputed()).stop("/night/guided", "/runs/*/guided");
    }
    String cloud =
        "95 % of the frames lie within "
            + Numbers.plain(guided.p95RadiusArcsec())
            + " arcsec of the mean place.";
    if (guided.scatterElongation() == null || guided.positionAngleDeg() == null) {
      return cloud + " The cloud favours no direction that these frames can show.";
    }
    return cloud
        + " The cloud is "
        + Numbers.plain(guided.scatterElongation())
        + " times as long as wide, at position angle "
        + Numbers.fixed(guided.positionAngleDeg(), 0)
        + " degrees (0 is north-south, 90 is east-west).";
  }

  private static List<Cell> row(RunResult run) {
    Guided guided = run.guided();
    return List.of(
        Cell.count(run.id()),
        run.startUtc() == null
            ? Cell.NOT_KNOWN
            : Cell.of(Times.clock(Instant.parse(run.startUtc()))),
        Cell.of(Numbers.fixed(run.durationSeconds() / 60, 0)),
        Cell.count(run.counts().used()),
        Cell.of(guided == null ? null : (Double) guided.ra().rmsArcsec()),
        Cell.of(guided == null ? null : (Double) guided.dec().rmsArcsec()),
        Cell.of(guided == null ? null : (Double) guided.rmsRadialArcsec()),
        Cell.of(guided == null ? null : (Double) guided.p95RadiusArcsec()),
        Cell.of(guided == null ? null : guided.scatterElongation()),
        Cell.of(
            guided == null || guided.positionAngleDeg() == null
                ? "none"
                : Numbers.fixed(guided.positionAngleDeg(), 0)));
  }
}
