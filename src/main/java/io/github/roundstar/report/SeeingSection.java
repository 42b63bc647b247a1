package io.github.roundstar.report;

import io.github.roundstar.report.Page.Block;
import io.github.roundstar.report.Page.Cell;
import io.github.roundstar.report.Page.Column;
import io.github.roundstar.report.Page.Section;
import io.github.roundstar.report.Page.Table;
import io.github.roundstar.report.chart.AirChart;
import io.github.roundstar.report.words.Clock;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.NightEvidence;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.RunResult;
import io.github.roundstar.results.Seeing;
import io.github.roundstar.results.SeeingRun;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The air: what the guide star's noise allows, run by run, both sides of the pier together. */
final class SeeingSection {
  private static List<Column> columns(Clock clock) {
    return List.of(
        Column.numbers("run", ""),
        Column.numbers("start", clock.name()),
        Column.words("pier side"),
        Column.numbers("airmass", ""),
        Column.numbers("noise floor, RA", "arcsec"),
        Column.numbers("noise floor, Dec", "arcsec"),
        Column.numbers("RMS, RA", "arcsec"),
        Column.numbers("RMS, Dec", "arcsec"),
        Column.numbers("least FWHM", "arcsec"));
  }

  /** A range of a wider ratio tells nobody anything. */
  private static final double MOST_WORTH_SAYING = 3;

  private SeeingSection() {}

  /** The section; nothing when the night says nothing of the air. */
  static Optional<Section> of(NightResult result, NightEvidence evidence, Charts charts) {
    Seeing seeing = result.seeing();
    if (seeing == null) {
      return Optional.empty();
    }
    Clock clock = new Clock(evidence.localTime());
    List<String> sentences = new ArrayList<>();
    sentences.add(
        "A star that is measured so unsteadily would be at least "
            + Numbers.coarse(seeing.leastFwhmArcsec())
            + " arcsec wide in a long exposure"
            + (seeing.mostFwhmArcsec() < MOST_WORTH_SAYING * seeing.leastFwhmArcsec()
                ? ", and at most " + Numbers.coarse(seeing.mostFwhmArcsec()) + "."
                : "; how much wider, exposures of seconds do not tell."));
    sentences.add("Noise of the camera that the star's photons do not explain counts as air here.");
    if (seeing.usualFwhmArcsec() != null) {
      sentences.add("Usual at this place: " + Numbers.plain(seeing.usualFwhmArcsec()) + " arcsec.");
    }
    Table table =
        new Table(
            "Air and scatter, run by run",
            columns(clock),
            result.runs().stream().map(run -> row(run, seeing, clock)).toList());
    List<Block> blocks = new ArrayList<>();
    blocks.add(
        Block.text(sentences.toArray(String[]::new))
            .with(charts.of("the air by time", () -> AirChart.byTime(result, evidence)))
            .with(table.withoutEmptyColumns()));
    return Optional.of(
        new Section(
            "seeing",
            "The air widened stars to "
                + Numbers.coarse(seeing.leastFwhmArcsec())
                + " arcsec or more",
            blocks));
  }

  private static List<Cell> row(RunResult run, Seeing seeing, Clock clock) {
    Optional<SeeingRun> air =
        seeing.runs().stream().filter(each -> each.run() == run.id()).findFirst();
    boolean guided = run.guided() != null;
    boolean floor = run.noiseFloorArcsec() != null;
    return List.of(
        Cell.count(run.id()),
        run.startUtc() == null ? Cell.NOT_KNOWN : Cell.of(Instant.parse(run.startUtc()), clock),
        run.pierSide() == null
            ? Cell.NOT_KNOWN
            : Cell.of(run.pierSide().name().toLowerCase(java.util.Locale.ROOT)),
        air.map(SeeingRun::airmass).map(x -> Cell.of(Numbers.fixed(x, 1))).orElse(Cell.NOT_KNOWN),
        floor ? Cell.of(run.noiseFloorArcsec().ra()) : Cell.NOT_KNOWN,
        floor ? Cell.of(run.noiseFloorArcsec().dec()) : Cell.NOT_KNOWN,
        guided ? Cell.of(run.guided().ra().rmsArcsec()) : Cell.NOT_KNOWN,
        guided ? Cell.of(run.guided().dec().rmsArcsec()) : Cell.NOT_KNOWN,
        air.map(x -> Cell.of(Numbers.coarse(x.leastFwhmArcsec()))).orElse(Cell.NOT_KNOWN));
  }
}
