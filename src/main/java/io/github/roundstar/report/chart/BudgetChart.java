package io.github.roundstar.report.chart;

import io.github.roundstar.report.words.Causes;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.Budget;
import io.github.roundstar.results.BudgetPart;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;
import org.jfree.chart.plot.XYPlot;

/**
 * What the mean square is made of: a bar a cause and axis. Its numbers stand in the table of its
 * section.
 */
public final class BudgetChart {
  /** Smaller parts would be drawn as nothing. */
  private static final double LEAST_ARCSEC2 = 0.0005;

  private static final int ROW = 34;
  private static final double HALF = 0.17;
  private static final double APART = 0.21;

  private BudgetChart() {}

  /**
   * Draws it; empty without parts.
   *
   * @throws ChartsUnavailable if Java cannot load a font
   */
  public static Optional<Svg> draw(Budget budget) throws ChartsUnavailable {
    List<String> causes = causes(budget);
    if (causes.isEmpty()) {
      return Optional.empty();
    }
    Extent extent = new Extent().add(0);
    Stream.of(budget.ra(), budget.dec())
        .filter(parts -> parts != null)
        .forEach(parts -> parts.forEach(part -> extent.add(part.meanSquareArcsec2())));
    Extent shown = extent.padded(0.06, 0.01);
    ChartStyle style = ChartStyle.load();
    ListedAxis horizontal =
        style.horizontal(
            new ListedAxis(shown.low(), shown.high(), Ticks.linear(shown.low(), shown.high(), 8)),
            "part of the mean square, arcsec\u00b2");
    List<Tick> names = new ArrayList<>();
    for (int c = 0; c < causes.size(); c++) {
      names.add(new Tick(-c, Causes.of(causes.get(c))));
    }
    ListedAxis vertical = style.vertical(new ListedAxis(0.5 - causes.size(), 0.5, names));
    XYPlot plot = style.plot(horizontal, vertical);
    style.rules(plot, horizontal, vertical, "RA filled, Dec outlined", Ink.INK);
    for (int c = 0; c < causes.size(); c++) {
      bar(plot, -c + APART, part(budget.ra(), causes.get(c)), true);
      bar(plot, -c - APART, part(budget.dec(), causes.get(c)), false);
    }
    plot.addAnnotation(
        DataPath.stroked(
            Paths.segment(0, vertical.getLowerBound(), 0, vertical.getUpperBound()),
            Ink.QUIET.color(),
            ChartStyle.HAIR));
    return Optional.of(
        style.draw(
            plot,
            new Sheet(
                "budget",
                Sheet.HALF,
                ROW * causes.size() + 80,
                "What the scatter is made of",
                words(budget, causes))));
  }

  private static List<String> causes(Budget budget) {
    Set<String> causes = new LinkedHashSet<>();
    Stream.of(budget.ra(), budget.dec())
        .filter(parts -> parts != null)
        .forEach(
            parts ->
                parts.stream()
                    .filter(part -> Math.abs(part.meanSquareArcsec2()) >= LEAST_ARCSEC2)
                    .forEach(part -> causes.add(part.cause())));
    List<String> ordered = new ArrayList<>(causes);
    if (ordered.remove("remainder")) {
      ordered.add("remainder");
    }
    return ordered;
  }

  private static OptionalDouble part(List<BudgetPart> parts, String cause) {
    return parts == null
        ? OptionalDouble.empty()
        : parts.stream()
            .filter(part -> part.cause().equals(cause))
            .mapToDouble(BudgetPart::meanSquareArcsec2)
            .findFirst();
  }

  private static void bar(XYPlot plot, double middle, OptionalDouble value, boolean ra) {
    if (value.isEmpty()) {
      return;
    }
    var box = Paths.box(0, middle - HALF, value.getAsDouble(), middle + HALF);
    Ink ink = ra ? Ink.RA : Ink.DEC;
    plot.addAnnotation(
        ra
            ? DataPath.filled(box, ink.color())
            : DataPath.stroked(box, ink.color(), ChartStyle.LINE));
  }

  private static String words(Budget budget, List<String> causes) {
    StringBuilder text = new StringBuilder("Mean square of the offsets by cause, arcsec squared.");
    for (String cause : causes) {
      text.append(' ').append(Causes.of(cause)).append(':');
      part(budget.ra(), cause)
          .ifPresent(value -> text.append(" RA ").append(Numbers.fixed(value, 3)));
      part(budget.dec(), cause)
          .ifPresent(value -> text.append(" Dec ").append(Numbers.fixed(value, 3)));
      text.append('.');
    }
    return text.toString();
  }
}
