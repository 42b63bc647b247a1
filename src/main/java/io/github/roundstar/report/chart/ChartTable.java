package io.github.roundstar.report.chart;

import io.github.roundstar.report.words.Times;
import io.github.roundstar.results.Band;
import io.github.roundstar.results.Polyline;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.DoubleFunction;

/**
 * The numbers of a chart, thinned by a rule that stands above them.
 *
 * @param rule which of the numbers stand here
 * @param columns names with units
 * @param rows a text per column
 */
record ChartTable(String rule, List<String> columns, List<List<String>> rows) {
  private static final String UP_TO = " .. ";

  static ChartTable rows(String rule, List<String> columns, List<List<String>> rows) {
    return new ChartTable(rule, columns, rows);
  }

  /** A folded table; {@code title} is that of its chart. */
  String markup(String title) {
    StringBuilder out = new StringBuilder(64 * (rows.size() + 2));
    out.append("<details class=\"data\"><summary>Numbers of this chart</summary>")
        .append("<p class=\"hint\">Where it is wider than this window, scroll it sideways.</p>")
        .append("<div class=\"scroll\" tabindex=\"0\" role=\"group\" aria-label=\"Numbers: ")
        .append(SvgStep.escaped(title).replace("\"", "&quot;"))
        .append("\"><table><caption>")
        .append(SvgStep.escaped(rule))
        .append("</caption><thead><tr>");
    columns.forEach(name -> cell(out, "th scope=\"col\"", "th", name));
    out.append("</tr></thead><tbody>");
    for (List<String> row : rows) {
      out.append("<tr>");
      row.forEach(text -> cell(out, "td", "td", text));
      out.append("</tr>");
    }
    return out.append("</tbody></table></div></details>").toString();
  }

  private static void cell(StringBuilder out, String open, String close, String text) {
    out.append('<').append(open).append('>');
    out.append(SvgStep.escaped(Times.unbroken(text))).append("</").append(close).append('>');
  }

  /** Least and greatest value of each line in equal spans of the chart's width. */
  static final class Spans {
    private static final int MOST = 24;

    private final String across;
    private final DoubleFunction<String> x;
    private final DoubleFunction<String> y;
    private final Map<String, List<double[]>> lines = new LinkedHashMap<>();

    /**
     * Spans without lines.
     *
     * @param across what the horizontal axis shows
     * @param x a place on it in words
     * @param y a value in words
     */
    Spans(String across, DoubleFunction<String> x, DoubleFunction<String> y) {
      this.across = across;
      this.x = x;
      this.y = y;
    }

    /** Adds a line; one of the same name continues it. */
    Spans line(String name, Polyline line) {
      for (int i = 0; i < line.size(); i++) {
        add(name, line.x(i), line.y(i));
      }
      return this;
    }

    /** Adds both edges of a band under one name. */
    Spans band(String name, Band band) {
      for (int i = 0; i < band.size(); i++) {
        add(name, band.x(i), band.low(i));
        add(name, band.x(i), band.high(i));
      }
      return this;
    }

    private void add(String name, double at, double value) {
      if (!Double.isNaN(value)) {
        lines.computeIfAbsent(name, absent -> new ArrayList<>()).add(new double[] {at, value});
      }
    }

    ChartTable table() {
      Extent width = new Extent();
      lines.values().forEach(points -> points.forEach(point -> width.add(point[0])));
      if (width.isEmpty()) {
        return rows("Nothing is drawn.", List.of(across), List.of());
      }
      double step = (width.high() - width.low()) / MOST;
      Map<Integer, List<Extent>> spans = new TreeMap<>();
      int column = 0;
      for (List<double[]> points : lines.values()) {
        for (double[] point : points) {
          int span = step == 0 ? 0 : (int) Math.min(MOST - 1, (point[0] - width.low()) / step);
          spans.computeIfAbsent(span, absent -> empty()).get(column).add(point[1]);
        }
        column++;
      }
      List<List<String>> rows = new ArrayList<>();
      spans.forEach((span, values) -> rows.add(row(width.low() + span * step, values)));
      List<String> columns = new ArrayList<>(List.of(across + ", from"));
      columns.addAll(lines.keySet());
      return rows(
          "Least and greatest value in each of "
              + MOST
              + " equal spans of the chart's width; spans without values are left out.",
          columns,
          rows);
    }

    private List<Extent> empty() {
      List<Extent> extents = new ArrayList<>();
      lines.keySet().forEach(name -> extents.add(new Extent()));
      return extents;
    }

    private List<String> row(double from, List<Extent> values) {
      List<String> row = new ArrayList<>(List.of(x.apply(from)));
      values.forEach(extent -> row.add(extent.isEmpty() ? "" : text(extent)));
      return row;
    }

    private String text(Extent extent) {
      String low = y.apply(extent.low());
      String high = y.apply(extent.high());
      return low.equals(high) ? low : low + UP_TO + high;
    }
  }
}
