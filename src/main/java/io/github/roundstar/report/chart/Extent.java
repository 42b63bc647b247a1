package io.github.roundstar.report.chart;

import io.github.roundstar.results.Band;
import io.github.roundstar.results.Polyline;

/** The least and greatest of what is to be drawn, for the range of an axis. */
final class Extent {
  private double low = Double.POSITIVE_INFINITY;
  private double high = Double.NEGATIVE_INFINITY;

  Extent add(double value) {
    if (Double.isFinite(value)) {
      low = Math.min(low, value);
      high = Math.max(high, value);
    }
    return this;
  }

  Extent addY(Polyline line) {
    for (int i = 0; i < line.size(); i++) {
      add(line.y(i));
    }
    return this;
  }

  Extent addX(Polyline line) {
    for (int i = 0; i < line.size(); i++) {
      add(line.x(i));
    }
    return this;
  }

  Extent addY(Band band) {
    for (int i = 0; i < band.size(); i++) {
      add(band.low(i)).add(band.high(i));
    }
    return this;
  }

  boolean isEmpty() {
    return low > high;
  }

  double low() {
    return low;
  }

  double high() {
    return high;
  }

  /**
   * Wider on both ends by a share of itself, at least {@code least} wide; -least/2 .. least/2 when
   * empty.
   */
  Extent padded(double share, double least) {
    Extent result = new Extent();
    if (isEmpty()) {
      return result.add(-least / 2).add(least / 2);
    }
    double margin = Math.max((high - low) * share, (least - (high - low)) / 2);
    return result.add(low - margin).add(high + margin);
  }

  /** Greatest distance from zero; zero when empty. */
  double reach() {
    return isEmpty() ? 0 : Math.max(Math.abs(low), Math.abs(high));
  }
}
