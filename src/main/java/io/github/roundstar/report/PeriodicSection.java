package io.github.roundstar.report;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.report.Page.Block;
import io.github.roundstar.report.Page.Cell;
import io.github.roundstar.report.Page.Column;
import io.github.roundstar.report.Page.Section;
import io.github.roundstar.report.Page.Table;
import io.github.roundstar.report.chart.MotionChart;
import io.github.roundstar.report.chart.SpectrumChart;
import io.github.roundstar.report.chart.WormChart;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.report.words.Sources;
import io.github.roundstar.report.words.Times;
import io.github.roundstar.results.Component;
import io.github.roundstar.results.NightEvidence;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.Periodic;
import io.github.roundstar.results.Polyline;
import io.github.roundstar.results.Range;
import io.github.roundstar.results.Rung;
import io.github.roundstar.results.SpectrumTrace;
import io.github.roundstar.results.WormTrace;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Periodic error: motion in RA, its spectrum, the folded worm curve and the components. */
final class PeriodicSection {
  private static final List<Column> COLUMNS =
      List.of(
          Column.words("source"),
          Column.numbers("period", ""),
          Column.numbers("period", "s"),
          Column.numbers("amplitude at the axis", "arcsec"),
          Column.numbers("false alarm", ""));

  private PeriodicSection() {}

  static Section of(NightResult result, NightEvidence evidence, Charts charts) {
    Periodic periodic = result.night().periodic();
    List<Block> blocks = new ArrayList<>();
    blocks.add(Block.text(PeriodicWords.summary(result).toArray(String[]::new)));
    chart(
        blocks,
        Block.text(
                Guiding.leftAlone(result)
                    ? "This is what the mount did in RA; nothing was corrected."
                    : "This is what the mount did in RA by itself: the corrections are taken out"
                        + " again.")
            .with(charts.of("motion in right ascension", () -> MotionChart.ra(result, evidence))));
    chart(
        blocks,
        new Block(spectrum(result, evidence), null, null, null, null)
            .with(charts.of("the spectrum", () -> SpectrumChart.draw(evidence))));
    boolean trained = result.rung(Rung.TRAINING).filter(Rung::offered).isPresent();
    chart(
        blocks,
        Block.text(
                "All turns laid over one another. Where single turns keep to the mean,"
                    + " the error repeats and can be trained out; where they spread, it cannot.",
                "The curve stands beside this page as a table, under the page's name with .worm.ecsv in"
                    + " place of .html.")
            .and(trained ? evidence.worm().flatMap(PeriodicSection::training) : Optional.empty())
            .with(charts.of("a turn of the worm", () -> WormChart.draw(evidence, trained))));
    if (periodic != null && !periodic.components().isEmpty()) {
      blocks.add(Block.text().with(table(periodic.components())));
    }
    return new Section("periodic", PeriodicWords.heading(result), blocks);
  }

  private static Optional<String> training(WormTrace worm) {
    return worm.trained()
        .map(
            trained ->
                "A single turn swings by "
                    + range(trained.before())
                    + " arcsec peak to peak; with the mean of the other turns taken off, as training"
                    + " does, by "
                    + range(trained.after())
                    + ", the noise of measuring in both.");
  }

  private static String range(Range swing) {
    return Numbers.both(new Estimate(swing.value(), swing.low(), swing.high()));
  }

  private static List<String> spectrum(NightResult result, NightEvidence evidence) {
    List<String> sentences = new ArrayList<>();
    sentences.add(
        "A gear that turns unevenly shows as a peak at the time of its turn. Peaks below the dashed"
            + " line may be chance.");
    if (result.runs().size() > 1) {
      sentences.add(
          "The curve is that of the longest run; the named periods are those of all runs together.");
    }
    if (evidence.spectrum().map(PeriodicSection::namesLowPeak).orElse(false)) {
      sentences.add(
          "A peak that is named below the line was found with jolts left out, which the curve and"
              + " the line hold; the table says how likely chance makes it.");
    }
    return sentences;
  }

  private static boolean namesLowPeak(SpectrumTrace spectrum) {
    return spectrum.components().stream()
        .anyMatch(
            c -> c.amplitudeArcsecAxis().value() < limit(spectrum, c.periodSeconds().value()));
  }

  /** The line at the nearest longer period. */
  private static double limit(SpectrumTrace spectrum, double periodSeconds) {
    Polyline line = spectrum.onePercent();
    int i = 0;
    while (i < line.size() - 1 && line.x(i) < periodSeconds) {
      i++;
    }
    return line.size() == 0 ? 0 : line.y(i);
  }

  private static void chart(List<Block> blocks, Block block) {
    if (block.chart() != null) {
      blocks.add(block);
    }
  }

  private static Table table(List<Component> components) {
    return new Table(
        "Periods found, strongest first", COLUMNS, components.stream().map(c -> row(c)).toList());
  }

  private static List<Cell> row(Component component) {
    double period = component.periodSeconds().value();
    return List.of(
        new Cell(Sources.of(component.source()), component.mayBeAlias() ? "may be an alias" : ""),
        Cell.of(Times.shortPeriod(period)),
        Cell.of(component.periodSeconds()),
        Cell.of(component.amplitudeArcsecAxis().ofSize()),
        Cell.of(Numbers.chance(component.falseAlarm())));
  }
}
