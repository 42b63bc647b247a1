package io.github.roundstar.report.chart;

import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.report.words.Times;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Round places for the ticks of an axis. */
final class Ticks {
  private static final int[] CLOCK_STEPS_SECONDS = {
    10, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200, 14400
  };
  private static final int[] PERIODS_SECONDS = {
    1, 2, 5, 10, 20, 30, 60, 120, 300, 600, 1200, 1800, 3600, 7200, 14400
  };

  /** Room for the label of a period [px]. */
  private static final double PERIOD_LABEL = 50;

  private static final int[] DATE_STEPS_DAYS = {1, 2, 5, 7, 14, 28, 56, 91, 182, 365};

  private Ticks() {}

  /**
   * Steps of 1, 2 or 5 times a power of ten, about {@code wanted} of them; none on an axis without
   * length.
   */
  static List<Tick> linear(double low, double high, int wanted) {
    if (!(high > low)) {
      return List.of();
    }
    double rough = (high - low) / wanted;
    double power = Math.pow(10, Math.floor(Math.log10(rough)));
    double step =
        power * (rough / power > 5 ? 10 : rough / power > 2 ? 5 : rough / power > 1 ? 2 : 1);
    int decimals = Math.max(0, -(int) Math.floor(Math.log10(step) + 1e-9));
    List<Tick> ticks = new ArrayList<>();
    for (long i = (long) Math.ceil(low / step - 1e-9); i * step <= high + step * 1e-9; i++) {
      ticks.add(new Tick(i * step, Numbers.fixed(i * step, decimals)));
    }
    return ticks;
  }

  /** Decades with 2 and 5 between them where there is room, on a scale of the decimal logarithm. */
  static List<Tick> decades(double low, double high, int pixels) {
    boolean fine = pixels / (high - low) > 75;
    List<Tick> ticks = new ArrayList<>();
    for (int power = (int) Math.floor(low); power <= high; power++) {
      for (int digit : fine ? new int[] {1, 2, 5} : new int[] {1}) {
        double at = power + Math.log10(digit);
        if (at >= low && at <= high) {
          String label = Numbers.fixed(digit * Math.pow(10, power), Math.max(0, -power));
          ticks.add(new Tick(at, label));
        }
      }
    }
    return ticks;
  }

  /** Round times of day in UTC; seconds since {@code start}. */
  static List<Tick> clock(Instant start, double low, double high, double wanted) {
    int step = clockStep((high - low) / wanted);
    double ofDay = start.getEpochSecond() % 86400 + start.getNano() * 1e-9;
    List<Tick> ticks = new ArrayList<>();
    // A label with seconds is too long to stand at the end.
    double last = step < 60 ? high - 0.02 * (high - low) : high;
    for (long i = (long) Math.ceil((low + ofDay) / step); i * step - ofDay <= last; i++) {
      double seconds = i * step - ofDay;
      // Half a second guards against 20:59:59.999.
      Instant instant = start.plusMillis(Math.round(seconds * 1000) + 500);
      ticks.add(new Tick(seconds, step < 60 ? clockSeconds(i * step) : Times.clock(instant)));
    }
    return ticks;
  }

  /** Dates some round number of days apart; days since a date's noon. */
  static List<Tick> dates(LocalDate first, double low, double high, int wanted) {
    int step =
        Arrays.stream(DATE_STEPS_DAYS)
            .filter(days -> days >= (high - low) / wanted)
            .findFirst()
            .orElse((int) Math.ceil((high - low) / wanted));
    List<Tick> ticks = new ArrayList<>();
    for (long day = (long) Math.ceil(low / step) * step; day <= high; day += step) {
      ticks.add(new Tick(day, first.plusDays(day).toString()));
    }
    return ticks;
  }

  /** Round minutes; seconds since the start. */
  static List<Tick> minutes(double low, double high, double wanted) {
    int step = (high - low) / wanted <= 6 ? 6 : clockStep(Math.max(30, (high - low) / wanted));
    List<Tick> ticks = new ArrayList<>();
    for (long i = (long) Math.ceil(low / step); i * step <= high; i++) {
      ticks.add(new Tick(i * step, Numbers.fixed(i * step / 60.0, step < 60 ? 1 : 0)));
    }
    return ticks;
  }

  /**
   * Plain periods on a scale of the decimal logarithm of seconds, as far as their labels have room.
   *
   * @param pixels from end to end
   */
  static List<Tick> periods(double lowSeconds, double highSeconds, int pixels) {
    double apart = PERIOD_LABEL * Math.log10(highSeconds / lowSeconds) / pixels;
    List<Tick> ticks = new ArrayList<>();
    for (int seconds : PERIODS_SECONDS) {
      double at = Math.log10(seconds);
      boolean clear = ticks.isEmpty() || at - ticks.get(ticks.size() - 1).value() >= apart;
      if (seconds >= lowSeconds && seconds <= highSeconds && clear) {
        ticks.add(new Tick(at, seconds < 10 ? seconds + " s" : Times.shortPeriod(seconds)));
      }
    }
    return ticks;
  }

  /** Round times from zero to the end of a span: {@code 2 min}. */
  static List<Tick> spans(double seconds) {
    int step = clockStep(seconds / 6);
    List<Tick> ticks = new ArrayList<>();
    for (int at = 0; at <= seconds; at += step) {
      ticks.add(new Tick(at, at == 0 ? "0" : Times.shortPeriod(at)));
    }
    return ticks;
  }

  private static int clockStep(double rough) {
    for (int step : CLOCK_STEPS_SECONDS) {
      if (step >= rough) {
        return step;
      }
    }
    return CLOCK_STEPS_SECONDS[CLOCK_STEPS_SECONDS.length - 1];
  }

  private static String clockSeconds(long ofDay) {
    long seconds = Math.floorMod(ofDay, 86400L);
    return String.format(
        java.util.Locale.ROOT, "%02d:%02d:%02d", seconds / 3600, seconds / 60 % 60, seconds % 60);
  }
}
