package io.github.roundstar.report.chart;

import io.github.roundstar.report.words.Clock;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.report.words.Times;
import io.github.roundstar.results.NightEvidence;
import io.github.roundstar.results.NightResult;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The horizontal axis of a night: time of day where it is known, else minutes. */
final class TimeScale {
  /** Room for a tick's label, without and with the local time beside it [px]. */
  private static final double LABEL = 75;

  private static final double LONG_LABEL = 105;

  /** Names on the left of a chart take so much of its width [px]. */
  private static final int LEFT = 90;

  /** A long label nearer than this share of its width to an end would be cut there. */
  private static final double EDGE = 0.35;

  private final Instant start;
  private final Clock clock;
  private final double low;
  private final double high;
  private final int width;

  private TimeScale(Instant start, Clock clock, double low, double high, int width) {
    this.start = start;
    this.clock = clock;
    this.low = low;
    this.high = high;
    this.width = width;
  }

  /** That of a chart of some width [px]. */
  static TimeScale of(NightResult result, NightEvidence evidence, int width) {
    Extent extent = new Extent();
    evidence.timeline().forEach(run -> extent.add(run.startSeconds()).add(run.endSeconds()));
    Extent wide = extent.padded(0.004, 60);
    String startUtc = result.night().startUtc();
    return new TimeScale(
        startUtc == null ? null : Instant.parse(startUtc),
        new Clock(evidence.localTime()),
        wide.low(),
        wide.high(),
        width);
  }

  ListedAxis axis(ChartStyle style) {
    return start == null
        ? style.horizontal(
            new ListedAxis(low, high, Ticks.minutes(low, high, wanted(LABEL))),
            "minutes since the first frame")
        : style.horizontal(new ListedAxis(low, high, clockTicks()), title());
  }

  private double wanted(double room) {
    return Math.max(2, (width - LEFT) / room);
  }

  /** Ticks at round times in UTC, the local time beside them. */
  private List<Tick> clockTicks() {
    double room = clock.local().isEmpty() ? LABEL : LONG_LABEL;
    double edge = clock.local().isEmpty() ? 0 : EDGE * room * (high - low) / (width - LEFT);
    return Ticks.clock(start, low, high, wanted(room)).stream()
        .filter(tick -> tick.value() >= low + edge && tick.value() <= high - edge)
        .map(
            tick ->
                new Tick(
                    tick.value(),
                    tick.label()
                        + clock.inBrackets(
                            start.plusMillis(Math.round(tick.value() * 1000) + 500))))
        .toList();
  }

  private String title() {
    return clock.local().isEmpty() ? "UTC" : "UTC (" + clock.explained() + ")";
  }

  /** What the axis tells, as the heading of a column. */
  String name() {
    return start == null ? "minutes" : "UTC";
  }

  /** A time as the axis tells it. */
  String text(double seconds) {
    return start == null
        ? Numbers.fixed(seconds / 60, 1)
        : Times.clock(start.plusMillis(Math.round(seconds * 1000)));
  }

  /** What a script needs to tell the time of a place between the two edges [px]. */
  Map<String, String> data(double left, double right) {
    Map<String, String> data = new LinkedHashMap<>();
    data.put("left", SvgStep.decimals(left));
    data.put("right", SvgStep.decimals(right));
    data.put("low", SvgStep.decimals(low));
    data.put("high", SvgStep.decimals(high));
    if (start != null) {
      data.put("start", start.toString());
      clock.local().ifPresent(local -> data.put("local", String.valueOf(local.offsetSeconds())));
    }
    return data;
  }

  /** Pixels, about, that a stretch of time takes on the chart. */
  double pixels(double seconds) {
    return seconds / (high - low) * (width - LEFT);
  }
}
