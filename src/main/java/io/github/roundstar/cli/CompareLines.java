package io.github.roundstar.cli;

import io.github.roundstar.results.CompareResult;
import io.github.roundstar.results.ComparedFigure;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Stream;

/** A comparison in a few lines for the terminal. */
final class CompareLines {
  private CompareLines() {}

  static List<String> of(CompareResult result) {
    List<String> lines = new ArrayList<>();
    lines.add(result.summary());
    if (result.air() != null) {
      lines.add(result.air());
    }
    if (result.promise() != null) {
      lines.add(result.promise().text());
    }
    for (ComparedFigure figure : result.figures()) {
      lines.add(
          String.format(
              Locale.ROOT,
              "  %-14s  %s: %s, change %s",
              figure.verdict(),
              figure.name(),
              figure.fromTo(),
              figure.changed()));
    }
    Stream.of(result.need(), result.next()).filter(Objects::nonNull).forEach(lines::add);
    return lines;
  }
}
