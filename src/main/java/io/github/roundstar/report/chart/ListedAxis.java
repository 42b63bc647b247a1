package io.github.roundstar.report.chart;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.jfree.chart.axis.AxisState;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTick;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.TextAnchor;

/** An axis whose ticks are given; no number format and so no locale is asked. */
@SuppressWarnings("serial")
final class ListedAxis extends NumberAxis {
  private final List<Tick> ticks;

  ListedAxis(double low, double high, List<Tick> ticks) {
    this.ticks = List.copyOf(ticks);
    setAutoRange(false);
    setRange(low, high);
  }

  List<Tick> ticks() {
    return ticks;
  }

  @Override
  public List<NumberTick> refreshTicks(
      Graphics2D g2, AxisState state, Rectangle2D dataArea, RectangleEdge edge) {
    TextAnchor anchor =
        RectangleEdge.isTopOrBottom(edge) ? TextAnchor.TOP_CENTER : TextAnchor.CENTER_RIGHT;
    return ticks.stream()
        .filter(tick -> getRange().contains(tick.value()))
        .map(tick -> new NumberTick(tick.value(), tick.label(), anchor, TextAnchor.CENTER, 0))
        .toList();
  }
}
