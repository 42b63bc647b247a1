package io.github.roundstar.report;

import io.github.roundstar.report.chart.ChartsUnavailable;
import io.github.roundstar.report.chart.Svg;
import java.util.Optional;

/** Draws charts as long as the machine can; remembers why it could not. */
final class Charts {
  /** One chart, or nothing for want of data. */
  interface Drawing {
    Optional<Svg> draw() throws ChartsUnavailable;
  }

  private String failure;

  /** The chart; null without data or on a machine that cannot draw. */
  Svg of(Drawing drawing) {
    if (failure != null) {
      return null;
    }
    try {
      return drawing.draw().orElse(null);
    } catch (ChartsUnavailable e) {
      failure = e.getMessage();
      return null;
    }
  }

  /** Why charts are missing, and what to install. */
  Optional<String> failure() {
    return Optional.ofNullable(failure);
  }
}
