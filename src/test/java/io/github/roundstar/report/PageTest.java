package io.github.roundstar.report;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.report.Page.Block;
import io.github.roundstar.report.Page.Cell;
import io.github.roundstar.report.Page.Column;
import io.github.roundstar.report.Page.Section;
import io.github.roundstar.report.Page.Table;
import io.github.roundstar.report.chart.BudgetChart;
import io.github.roundstar.report.chart.ChartsUnavailable;
import io.github.roundstar.report.chart.Svg;
import io.github.roundstar.results.Budget;
import io.github.roundstar.results.BudgetPart;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** How the parts of a page find their places. */
class PageTest {
  private static final Table NONE = new Table("", List.of(), List.of());

  @Test
  void sentencesBeforeAChartStandAtItsSide() throws ChartsUnavailable {
    Section section =
        new Section(
            "id",
            "Heading",
            List.of(
                Block.text("One."),
                Block.text("Two."),
                Block.text("Three.").with(chart()),
                Block.text("Four.")));

    assertThat(section.blocks()).hasSize(2);
    assertThat(section.blocks().get(0).sentences()).containsExactly("One.", "Two.", "Three.");
    assertThat(section.blocks().get(0).layout()).isEqualTo("block beside half");
    assertThat(section.blocks().get(1).sentences()).containsExactly("Four.");
  }

  @Test
  void sentencesOfATableStayWithIt() throws ChartsUnavailable {
    Section section =
        new Section(
            "id", "Heading", List.of(Block.text("One.").with(NONE), Block.text().with(chart())));

    assertThat(section.blocks()).hasSize(2);
    assertThat(section.blocks().get(1).sentences()).isEmpty();
  }

  @Test
  void oneRowOfManyFiguresIsAListOfPairs() {
    assertThat(table(1, 5, Cell.of("1")).pairs()).isTrue();
    assertThat(table(2, 5, Cell.of("1")).pairs()).isFalse();
    assertThat(table(1, 5, Cell.link("night", "night.html")).pairs()).isFalse();
  }

  @Test
  void rowsOfMoreIntervalsThanAPageIsWideAreListsOfPairs() {
    assertThat(table(3, 9, new Cell("1.5", "(1.2 .. 1.8)")).pairs()).isTrue();
    assertThat(table(3, 9, Cell.of("1.5")).pairs()).isFalse();
  }

  @Test
  void onlyANarrowTableStandsAtTheSideOfAChart() throws ChartsUnavailable {
    Block block = Block.text("One.").with(chart());

    assertThat(block.with(table(2, 5, Cell.of("1"))).tableFitsBeside()).isTrue();
    assertThat(block.with(table(2, 6, Cell.of("1"))).tableFitsBeside()).isFalse();
    assertThat(block.with(table(2, 3, new Cell("1", "(0 .. 2)"))).tableFitsBeside()).isFalse();
  }

  private static Table table(int rows, int columns, Cell cell) {
    return new Table(
        "",
        IntStream.range(0, columns).mapToObj(i -> Column.numbers("c" + i, "")).toList(),
        Stream.generate(() -> Collections.nCopies(columns, cell)).limit(rows).toList());
  }

  private static Svg chart() throws ChartsUnavailable {
    return BudgetChart.draw(new Budget(List.of(new BudgetPart("noise", 0.2, 1)), null, null, null))
        .orElseThrow();
  }
}
