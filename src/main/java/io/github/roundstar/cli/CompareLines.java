package io.github.roundstar.cli;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.results.CompareResult;
import io.github.roundstar.results.ComparedFigure;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** A comparison in a few lines for the terminal. */
final class CompareLines {
  private CompareLines() {}

  static List<String> of(CompareResult result) {
    List<String> lines = new ArrayList<>();
    lines.add(result.summary());
    if (result.air() != null) {
      lines.add(result.air());
    }
    for (ComparedFigure figure : result.figures()) {
      lines.add(
          String.format(
              Locale.ROOT,
              "  %-14s  %s: %s to %s %s, change %s",
              figure.verdict(),
              figure.name(),
              number(figure.before().value()),
              number(figure.after().value()),
              figure.unit(),
              interval(figure.change())));
    }
    return lines;
  }

  private static String interval(Estimate estimate) {
    return number(estimate.value())
        + " ("
        + number(estimate.lo95())
        + " .. "
        + number(estimate.hi95())
        + ")";
  }

  private static String number(double value) {
    double shown = Math.abs(value) < 0.0005 ? 0 : value;
    return String.format(Locale.ROOT, Math.abs(shown) < 0.1 ? "%.3f" : "%.2f", shown);
  }
}
