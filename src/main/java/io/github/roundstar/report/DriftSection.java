package io.github.roundstar.report;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.report.Page.Block;
import io.github.roundstar.report.Page.Cell;
import io.github.roundstar.report.Page.Column;
import io.github.roundstar.report.Page.Section;
import io.github.roundstar.report.Page.Table;
import io.github.roundstar.report.chart.MotionChart;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.AxisDrift;
import io.github.roundstar.results.NightEvidence;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.PolarAxis;
import io.github.roundstar.results.RunResult;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Drift of the mount and, when it is known, where its axis points. */
final class DriftSection {
  private static final List<Column> COLUMNS =
      List.of(
          Column.numbers("run", ""),
          Column.numbers("declination", "deg"),
          Column.numbers("hour angle", "h"),
          Column.words("pier side"),
          Column.numbers("Dec drift", "arcsec/min"),
          Column.numbers("RA drift", "arcsec/min"));

  private DriftSection() {}

  static Section of(NightResult result, NightEvidence evidence, Charts charts) {
    List<Block> blocks = new ArrayList<>();
    blocks.add(
        Block.text(summary(result)).with(charts.of(() -> MotionChart.dec(result, evidence))));
    blocks.add(
        Block.text()
            .with(
                new Table(
                    "Drift of the mount with the corrections taken out, on the sky",
                    COLUMNS,
                    result.runs().stream().map(DriftSection::row).toList())));
    if (result.polarAxis() != null) {
      blocks.add(polarAxis(result.polarAxis()));
    }
    String drift = Headline.drift(result.night().driftArcsecPerMinuteSky());
    String heading =
        drift == null ? "Drift" : Character.toUpperCase(drift.charAt(0)) + drift.substring(1);
    return new Section("drift", heading, blocks);
  }

  private static String summary(NightResult result) {
    AxisDrift drift = result.night().driftArcsecPerMinuteSky();
    if (drift == null || drift.dec() == null) {
      return "Drift over the night is not known: "
          + new Reasons(result.notComputed())
              .stop("/night/driftArcsecPerMinuteSky", "/runs/*/driftArcsecPerMinuteSky");
    }
    Estimate dec = drift.dec();
    return dec.covers(0)
        ? "Over the night the Dec drift is "
            + Numbers.both(dec)
            + " arcsec a minute: it may be nothing."
        : "Without guiding the star would creep by "
            + Numbers.both(dec)
            + " arcsec a minute in Dec, north positive.";
  }

  private static List<Cell> row(RunResult run) {
    AxisDrift drift = run.driftArcsecPerMinuteSky();
    return List.of(
        Cell.count(run.id()),
        coarse(run.declinationDeg()),
        coarse(run.hourAngleHours()),
        run.pierSide() == null
            ? Cell.NOT_KNOWN
            : Cell.of(run.pierSide().name().toLowerCase(Locale.ROOT)),
        Cell.of(drift == null ? null : drift.dec()),
        Cell.of(drift == null ? null : drift.ra()));
  }

  /** One decimal: an hour angle with more would tell where the telescope stands. */
  private static Cell coarse(Double value) {
    return value == null ? Cell.NOT_KNOWN : Cell.of(Numbers.fixed(value, 1));
  }

  private static Block polarAxis(PolarAxis axis) {
    Table table =
        new Table(
            "Where the mount's axis points, from the true pole",
            List.of(
                Column.numbers("azimuth, east positive", "arcmin"),
                Column.numbers("altitude, above positive", "arcmin"),
                Column.numbers("total on the sky", "arcmin"),
                Column.words("basis")),
            List.of(
                List.of(
                    Cell.of(axis.azimuthArcmin()),
                    Cell.of(axis.altitudeArcmin()),
                    Cell.of(axis.totalArcmin()),
                    Cell.of(axis.basis() == null ? "" : axis.basis()))));
    return Block.text().with(table);
  }
}
