package io.github.roundstar.report.chart;

import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.report.words.Times;
import io.github.roundstar.results.NightEvidence;
import io.github.roundstar.results.NightResult;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;

/** The horizontal axis of a night: time of day where it is known, else minutes. */
final class TimeScale {
  private static final int TICKS = 10;

  private final Instant start;
  private final double low;
  private final double high;

  private TimeScale(Instant start, double low, double high) {
    this.start = start;
    this.low = low;
    this.high = high;
  }

  static TimeScale of(NightResult result, NightEvidence evidence) {
    Extent extent = new Extent();
    evidence.timeline().forEach(run -> extent.add(run.startSeconds()).add(run.endSeconds()));
    Extent wide = extent.padded(0.004, 60);
    String startUtc = result.night().startUtc();
    return new TimeScale(
        startUtc == null ? null : Instant.parse(startUtc), wide.low(), wide.high());
  }

  ListedAxis axis(ChartStyle style) {
    return start == null
        ? style.horizontal(
            new ListedAxis(low, high, Ticks.minutes(low, high, TICKS)),
            "minutes since the first frame")
        : style.horizontal(
            new ListedAxis(low, high, Ticks.clock(start, low, high, TICKS)), "time of day, UTC");
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
    }
    return data;
  }

  /** Pixels, about, that a stretch of time takes on a wide chart. */
  double pixels(double seconds) {
    return seconds / (high - low) * (Sheet.WIDE - 90);
  }
}
