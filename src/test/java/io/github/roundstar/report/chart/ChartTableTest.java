package io.github.roundstar.report.chart;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.Polyline;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** A chart's numbers keep least and greatest values, and every text is shown as text. */
class ChartTableTest {
  @Test
  void extremesOfEverySpanAreKept() {
    double[] x = IntStream.range(0, 2400).mapToDouble(i -> i).toArray();
    double[] y = IntStream.range(0, 2400).mapToDouble(i -> i == 1234 ? -7 : i % 2).toArray();

    ChartTable table =
        new ChartTable.Spans("s", Numbers::plain, Numbers::plain)
            .line("arcsec", Polyline.of(x, y))
            .table();

    assertThat(table.columns()).containsExactly("s, from", "arcsec");
    assertThat(table.rows()).hasSize(24);
    assertThat(table.rows().get(12).get(1)).isEqualTo("\u22127.00 .. 1.00");
    assertThat(table.rows().get(0).get(1)).isEqualTo("0 .. 1.00");
  }

  @Test
  void gapsAreLeftOut() {
    ChartTable table =
        new ChartTable.Spans("s", Numbers::plain, Numbers::plain)
            .line("arcsec", Polyline.of(new double[] {0, 1, 240}, new double[] {1, Double.NaN, 2}))
            .table();

    assertThat(table.rows()).extracting(row -> row.get(1)).containsExactly("1.00", "2.00");
  }

  @Test
  void oneSingleValueMakesOneRow() {
    ChartTable table =
        new ChartTable.Spans("s", Numbers::plain, Numbers::plain)
            .line("arcsec", Polyline.of(new double[] {5}, new double[] {1}))
            .table();

    assertThat(table.rows()).hasSize(1);
  }

  @Test
  void textIsEscaped() {
    String markup =
        ChartTable.rows("a<b", List.of("<i>"), List.of(List.of("x&y"))).markup("say \"<b>\"");

    assertThat(markup)
        .contains("<caption>a&lt;b</caption>", "&lt;i&gt;", "x&amp;y", "&quot;&lt;b&gt;&quot;")
        .doesNotContain("<i>", "<b>");
  }
}
