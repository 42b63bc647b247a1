package io.github.roundstar.report;

import io.github.roundstar.report.chart.ChartsUnavailable;
import io.github.roundstar.report.chart.Svg;
import io.github.roundstar.results.Faults;
import java.util.Optional;

/** Draws charts as long as the machine can; remembers why it could not. */
final class Charts {
  private final Faults faults;

  Charts(Faults faults) {
    this.faults = faults;
  }

  /** One chart, or nothing for want of data. */
  interface Drawing {
    Optional<Svg> draw() throws ChartsUnavailable;
  }

  private String failure;

  /**
   * The chart; null without data, on a machine that cannot draw, or after a fault in it.
   *
   * @param name what it shows, for people
   */
  Svg of(String name, Drawing drawing) {
    return failure != null
        ? null
        : faults.withinOrElse("chart of " + name, () -> drawn(drawing), () -> null);
  }

  private Svg drawn(Drawing drawing) {
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
