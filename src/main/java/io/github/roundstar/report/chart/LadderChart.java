package io.github.roundstar.report.chart;

import io.github.roundstar.results.Need;
import io.github.roundstar.results.Range;
import io.github.roundstar.results.Rung;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleInsets;

/** The ladder of cures: a dot with its interval a rung, the need as a line. */
public final class LadderChart {
  private static final int WIDTH = 590;
  private static final int ROW = 27;
  private static final double RADIUS = 4;
  private static final int CORNERS = 16;

  private LadderChart() {}

  /**
   * Draws it.
   *
   * @param decided name of the rung decided on
   * @throws ChartsUnavailable if Java cannot load a font
   */
  public static Optional<Svg> draw(List<Rung> ladder, Need need, String decided)
      throws ChartsUnavailable {
    if (ladder.isEmpty()) {
      return Optional.empty();
    }
    int units = ladder.get(0).units();
    double asked = need.ofStars() ? need.round(units) : need.limit();
    Extent extent = new Extent().add(0).add(asked);
    ladder.forEach(rung -> extent.add(figure(rung, need, units).high()));
    double high = need.ofStars() ? Math.max(1, units) : extent.high();
    double margin = 0.03 * high;
    ChartStyle style = ChartStyle.load();
    ListedAxis horizontal =
        style.horizontal(
            new ListedAxis(-margin, high + margin, Ticks.linear(0, high, 6)),
            need.ofStars()
                ? "round exposures, of " + units
                : "radial RMS that the log shows, arcsec");
    List<Tick> names = new ArrayList<>();
    for (int r = 0; r < ladder.size(); r++) {
      names.add(new Tick(-r, name(ladder.get(r).rung())));
    }
    ListedAxis vertical = style.vertical(new ListedAxis(0.5 - ladder.size(), 0.6, names));
    XYPlot plot = style.plot(horizontal, vertical);
    plot.setInsets(new RectangleInsets(ChartStyle.HEADROOM, 2, 2, 28));
    style.rules(plot, horizontal, vertical, "", Ink.QUIET);
    plot.addAnnotation(
        DataPath.stroked(
            Paths.segment(asked, vertical.getLowerBound(), asked, vertical.getUpperBound()),
            Ink.INK.color(),
            ChartStyle.THIN_DASHED));
    DataLabels labels = DataLabels.beside(style.font());
    boolean left = asked > 0.5 * high;
    labels.add(
        asked,
        vertical.getUpperBound(),
        0,
        -9,
        left ? DataLabels.Anchor.END : DataLabels.Anchor.START,
        "asked: " + text(asked, need),
        Ink.INK.color());
    for (int r = 0; r < ladder.size(); r++) {
      row(plot, labels, ladder.get(r), need, units, -r, decided, high);
    }
    plot.addAnnotation(labels);
    return Optional.of(
        style
            .draw(
                plot,
                new Sheet(
                    "ladder",
                    WIDTH,
                    ROW * ladder.size() + 80,
                    need.ofStars()
                        ? "What each cure buys, in round exposures"
                        : "What each cure buys, in RMS",
                    words(ladder, need, units, decided)))
            .with(table(ladder, need, units)));
  }

  private static void row(
      XYPlot plot,
      DataLabels labels,
      Rung rung,
      Need need,
      int units,
      double y,
      String decided,
      double high) {
    if (!rung.offered()) {
      labels.add(0, y, 6, 4, DataLabels.Anchor.START, "nothing to change", Ink.QUIET.color());
      return;
    }
    Range figure = figure(rung, need, units);
    boolean chosen = rung.rung().equals(decided);
    Ink ink = chosen ? Ink.INK : Ink.QUIET;
    plot.addAnnotation(
        DataPath.stroked(
            Paths.segment(figure.low(), y, figure.high(), y), ink.color(), ChartStyle.LINE));
    plot.addAnnotation(
        new DataMarks(new double[] {figure.value()}, new double[] {y}, dot(), ink.color(), chosen));
    String said =
        text(figure.value(), need)
            + (chosen
                ? (rung.rung().equals(Rung.AIR_LIMIT) ? ": the air" : ": this is enough")
                : "");
    double asked = need.ofStars() ? need.round(units) : need.limit();
    boolean before = figure.high() > 0.55 * high;
    // Words keep clear of the line of what is asked.
    boolean near = before && figure.low() > asked - 0.02 * high && asked > 0.5 * high;
    labels.add(
        near ? Math.min(asked, figure.low()) : before ? figure.low() : figure.high(),
        y,
        before ? (near ? -14 : -9) : 9,
        4,
        before ? DataLabels.Anchor.END : DataLabels.Anchor.START,
        said,
        ink.color());
  }

  private static Path2D dot() {
    Path2D dot = new Path2D.Double();
    for (int i = 0; i < CORNERS; i++) {
      double angle = 2 * Math.PI * i / CORNERS;
      double x = RADIUS * Math.cos(angle);
      double y = RADIUS * Math.sin(angle);
      if (i == 0) {
        dot.moveTo(x, y);
      } else {
        dot.lineTo(x, y);
      }
    }
    dot.closePath();
    return dot;
  }

  /** Of as many units as the night has; another length of exposures has another number of them. */
  private static Range figure(Rung rung, Need need, int units) {
    if (!need.ofStars()) {
      return rung.loggedRadialRmsArcsec();
    }
    double scale = rung.units() == 0 ? 0 : (double) units / rung.units();
    Range round = rung.round();
    return new Range(scale * round.value(), scale * round.low(), scale * round.high());
  }

  private static String text(double value, Need need) {
    return need.ofStars()
        ? String.format(Locale.ROOT, "%.0f", value)
        : String.format(Locale.ROOT, "%.2f", value);
  }

  private static String name(String rung) {
    return switch (rung) {
      case Rung.AS_IT_WAS -> "as it was";
      case Rung.SETTINGS -> "settings";
      case Rung.ALIGNMENT_BALANCE -> "+ axis, balance";
      case Rung.SHORTER_EXPOSURES -> "shorter exposures";
      case Rung.TRAINING -> "+ training";
      case Rung.MECHANICS -> "+ mechanics";
      case Rung.LOOP_LIMIT -> "the loop's limit";
      default -> "the air's limit";
    };
  }

  private static String words(List<Rung> ladder, Need need, int units, String decided) {
    StringBuilder text = new StringBuilder();
    for (Rung rung : ladder) {
      text.append(text.isEmpty() ? "" : " ").append(name(rung.rung())).append(": ");
      if (rung.offered()) {
        Range figure = figure(rung, need, units);
        text.append(text(figure.value(), need))
            .append(" (")
            .append(text(figure.low(), need))
            .append(" .. ")
            .append(text(figure.high(), need))
            .append(")");
      } else {
        text.append("nothing to change");
      }
      text.append(rung.rung().equals(decided) ? ", decided on." : ".");
    }
    return text.toString();
  }

  private static ChartTable table(List<Rung> ladder, Need need, int units) {
    List<List<String>> rows = new ArrayList<>();
    for (Rung rung : ladder) {
      Range figure = figure(rung, need, units);
      rows.add(
          List.of(
              name(rung.rung()),
              rung.offered() ? text(figure.value(), need) : "nothing to change",
              rung.offered() ? text(figure.low(), need) + " .. " + text(figure.high(), need) : "",
              rung.offered() ? String.format(Locale.ROOT, "%.0f %%", 100 * rung.meetsNeed()) : ""));
    }
    return ChartTable.rows(
        "Each rung holds those above it, shorter exposures apart.",
        List.of(
            "rung",
            need.ofStars() ? "round of " + units : "radial RMS, arcsec",
            "95 % interval",
            "meets what is asked"),
        rows);
  }
}
