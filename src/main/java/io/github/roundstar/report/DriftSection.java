package io.github.roundstar.report;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.Sentences;
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
import io.github.roundstar.results.NightSummary;
import io.github.roundstar.results.RunResult;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Drift of the mount. */
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

  static Section of(NightResult result, NightEvidence evidence, Charts charts, SiteDetail site) {
    List<Block> blocks = new ArrayList<>();
    blocks.add(
        new Block(
            summary(result),
            charts.of("motion in declination", () -> MotionChart.dec(result, evidence)),
            null,
            null,
            null));
    if (result.runs().stream().anyMatch(DriftSection::known)) {
      blocks.add(
          Block.text()
              .with(
                  new Table(
                          "Drift of the mount on the sky, without what guiding did",
                          COLUMNS,
                          result.runs().stream().map(run -> row(run, site)).toList())
                      .withoutEmptyColumns()));
    }
    return new Section("drift", heading(result.night()), blocks);
  }

  private static boolean known(RunResult run) {
    AxisDrift drift = run.driftArcsecPerMinuteSky();
    return drift != null && (drift.ra() != null || drift.dec() != null);
  }

  private static String heading(NightSummary night) {
    AxisDrift drift = night.driftArcsecPerMinuteSky();
    String way = Headline.drift(night);
    if (way != null) {
      return Sentences.capital(way);
    }
    return drift == null || (drift.ra() == null && drift.dec() == null)
        ? "Drift cannot be told from this log"
        : night.runs() < 2
            ? "The mount may not drift at all"
            : "On average the mount may not drift at all";
  }

  private static List<String> summary(NightResult result) {
    AxisDrift drift = result.night().driftArcsecPerMinuteSky();
    Reasons reasons = new Reasons(result.notComputed());
    if (drift == null || (drift.ra() == null && drift.dec() == null)) {
      return List.of(
          reasons.sentence("/night/driftArcsecPerMinuteSky", "/runs/*/driftArcsecPerMinuteSky"));
    }
    List<String> sentences = new ArrayList<>();
    sentences.add(axis("Dec", "north", drift.dec(), reasons));
    if (!Guiding.leftAlone(result) && drift.dec() != null && drift.dec().covers(0)) {
      sentences.add(
          "A slope in the chart is no proof of drift: pulses that act a little more one way than"
              + " the other leave such a slope too, and the interval allows for that.");
    }
    sentences.add(axis("RA", "east", drift.ra(), reasons));
    return sentences;
  }

  private static String axis(String name, String positive, Estimate drift, Reasons reasons) {
    if (drift == null) {
      return name
          + ": not known. "
          + reasons.sentence(
              "/night/driftArcsecPerMinuteSky/" + name.toLowerCase(Locale.ROOT),
              "/runs/*/driftArcsecPerMinuteSky");
    }
    String rate = name + ": " + Numbers.both(drift) + " arcsec a minute, " + positive + " positive";
    return drift.covers(0) ? rate + "; the interval holds zero, so it may be nothing." : rate + ".";
  }

  private static List<Cell> row(RunResult run, SiteDetail site) {
    AxisDrift drift = run.driftArcsecPerMinuteSky();
    return List.of(
        Cell.count(run.id()),
        rounded(run.declinationDeg(), SiteDetail.ROUNDED),
        rounded(run.hourAngleHours(), site),
        run.pierSide() == null
            ? Cell.NOT_KNOWN
            : Cell.of(run.pierSide().name().toLowerCase(Locale.ROOT)),
        Cell.of(drift == null ? null : drift.dec()),
        Cell.of(drift == null ? null : drift.ra()));
  }

  /** An hour angle with more than one decimal would tell where the telescope stands. */
  private static Cell rounded(Double value, SiteDetail site) {
    return value == null ? Cell.NOT_KNOWN : Cell.of(Numbers.fixed(value, site.decimals()));
  }
}
