package io.github.roundstar.report;

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
import java.util.ArrayList;
import java.util.List;

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
    blocks.add(Block.text(summary(result, periodic)));
    chart(
        blocks,
        Block.text(
                "This is what the mount did in RA by itself: the corrections are taken out again.")
            .with(charts.of(() -> MotionChart.ra(result, evidence))));
    chart(
        blocks,
        Block.text(
                "A gear that turns unevenly shows as a peak at the time of its turn. Peaks below the"
                    + " dashed line may be chance.")
            .with(charts.of(() -> SpectrumChart.draw(evidence))));
    chart(
        blocks,
        Block.text(
                "All turns of the worm laid over one another. Where single turns keep to the mean,"
                    + " the error repeats and can be trained out; where they spread, it cannot.")
            .with(charts.of(() -> WormChart.draw(evidence))));
    if (periodic != null && !periodic.components().isEmpty()) {
      blocks.add(Block.text().with(table(periodic.components())));
    }
    String swing = Headline.swing(periodic);
    String heading =
        swing == null
            ? "Periodic error"
            : Character.toUpperCase(swing.charAt(0)) + swing.substring(1);
    return new Section("periodic", heading, blocks);
  }

  private static void chart(List<Block> blocks, Block block) {
    if (block.chart() != null) {
      blocks.add(block);
    }
  }

  private static String summary(NightResult result, Periodic periodic) {
    if (periodic == null) {
      return "Not known: "
          + new Reasons(result.notComputed()).stop("/night/periodic", "/runs/*/periodic");
    }
    if (periodic.components().isEmpty()) {
      return "No period stands out from wander and noise.";
    }
    StringBuilder text = new StringBuilder();
    if (periodic.peakToPeakArcsecAxis() != null) {
      text.append("Peak to peak it is ")
          .append(Numbers.both(periodic.peakToPeakArcsecAxis()))
          .append(" arcsec at the axis, from ");
    } else {
      text.append("The data hold ");
    }
    text.append(Numbers.fixed(periodic.cycles(), 1)).append(" turns.");
    if (periodic.maxRateArcsecPerSecondAxis() != null) {
      text.append(" At its steepest the mount runs off by ")
          .append(Numbers.plain(periodic.maxRateArcsecPerSecondAxis()))
          .append(" arcsec a second.");
    }
    if (periodic.repeatability() != null) {
      text.append(' ')
          .append(Numbers.percent(periodic.repeatability()))
          .append(" of it comes back every turn.");
    }
    return text.toString();
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
        Cell.of(component.amplitudeArcsecAxis()),
        Cell.of(Numbers.plain(component.falseAlarm())));
  }
}
