package io.github.roundstar.ingest;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.ingest.layout.Layout;
import io.github.roundstar.ingest.layout.Meaning;
import io.github.roundstar.ingest.layout.Setting;
import io.github.roundstar.ingest.layout.TimeForm;
import io.github.roundstar.ingest.layout.text.ClockText;
import io.github.roundstar.ingest.layout.text.LayoutLines;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Optional;

/**
 * Reads the times of a log's rows. A clock without a date takes the date that the log tells, and
 * goes on to the next day where it steps back by more than half a day.
 */
final class LayoutTimes {
  private static final double UNIX_EPOCH_JD = 2_440_587.5;
  private static final double UNIX_EPOCH_MJD = 40_587;
  private static final double DAY_SECONDS = 86_400;
  private static final double NANOS = 1e9;

  private final String file;
  private final Layout layout;
  private final TimeForm form;
  private final boolean absolute;
  private Optional<ZoneOffset> offset;
  private static final double PAGE_GAP_STEPS = 5;

  private double step;
  private double last = Double.NaN;
  private double now = Double.NaN;
  private long day;

  LayoutTimes(String file, Layout layout) {
    this.file = file;
    this.layout = layout;
    this.form = layout.time();
    this.offset = form.utcOffset();
    this.absolute =
        switch (form.kind()) {
          case DATE_TIME, JD, MJD, UNIX_S, UNIX_MS -> true;
          case CLOCK ->
              layout.has(Meaning.DATE)
                  || layout.settings().stream()
                      .anyMatch(s -> s.means() == Setting.DATE || s.means() == Setting.START);
          default -> false;
        };
  }

  /** Whether rows have absolute times of their own. */
  boolean absolute() {
    return absolute;
  }

  /** Whether the row read last is earlier than the one before it. */
  boolean stepsBack() {
    return now < last;
  }

  /** Whether the row read last follows the one before it as rows of a run do. */
  boolean goesOn() {
    return now > last && now - last <= PAGE_GAP_STEPS * step;
  }

  /** The offset from UTC that the log's clock is known to have. */
  Optional<ZoneOffset> offset() {
    return form.kind() == TimeForm.Kind.CLOCK || form.kind() == TimeForm.Kind.DATE_TIME
        ? offset
        : Optional.empty();
  }

  /** Reads the time of the current row. */
  void read(LayoutLines lines, TableRow row, LayoutSettings settings)
      throws FormatException, CellFault {
    String text =
        lines
            .lostTime()
            .or(() -> lines.cell(Meaning.TIME))
            .orElseThrow(() -> new CellFault(RowProblem.NO_TIME, "the row has no time"));
    step = now > last ? now - last : step;
    last = now;
    now =
        switch (form.kind()) {
          case CLOCK, DATE_TIME -> clock(text, lines, settings);
          case JD -> (number(text) - UNIX_EPOCH_JD) * DAY_SECONDS;
          case MJD -> (number(text) - UNIX_EPOCH_MJD) * DAY_SECONDS;
          case UNIX_S -> number(text);
          case UNIX_MS -> number(text) / 1000;
          case ELAPSED_HMS ->
              ClockText.elapsedSeconds(text)
                  .orElseThrow(
                      () ->
                          new CellFault(
                              RowProblem.TEXT_IN_TIME,
                              "found '" + CellFault.shortened(text) + "', expected h:m:s"));
          case FRAMES -> number(text) * form.stepSeconds().orElse(1);
          default -> number(text) * form.kind().seconds();
        };
    if (!absolute) {
      row.timeSeconds = now;
    } else if (Double.isFinite(now) && Math.abs(now) < 8e9) {
      row.timeSeconds = 0;
      row.epochNanos =
          (long) Math.floor(now) * 1_000_000_000L + Math.round((now - Math.floor(now)) * NANOS);
    } else {
      row.timeSeconds = Double.NaN;
    }
  }

  private double number(String text) throws CellFault {
    return CellFault.number(text, layout.text().decimalComma());
  }

  private double clock(String text, LayoutLines lines, LayoutSettings settings)
      throws FormatException, CellFault {
    String clock = lines.cell(Meaning.DAY_HALF).map(half -> text + " " + half).orElse(text);
    String whole = lines.cell(Meaning.DATE).map(date -> date + " " + clock).orElse(clock);
    ClockText read = ClockText.of(whole, form.order());
    LocalTime time =
        read.time()
            .orElseThrow(
                () ->
                    new CellFault(
                        RowProblem.TEXT_IN_TIME,
                        "found '" + CellFault.shortened(whole) + "', expected a time"));
    if (read.offset().isPresent()) {
      offset = read.offset();
    }
    double seconds = time.toNanoOfDay() / NANOS;
    if (read.date().isPresent()) {
      return local(read.date().get(), seconds);
    }
    if (form.kind() == TimeForm.Kind.DATE_TIME) {
      throw new CellFault(
          RowProblem.TEXT_IN_TIME,
          "found '" + CellFault.shortened(whole) + "', expected a date and a time");
    }
    return absolute ? dated(seconds, lines, settings) : rolled(seconds);
  }

  private double local(LocalDate date, double seconds) {
    int shift = offset.orElse(ZoneOffset.UTC).getTotalSeconds();
    return date.toEpochDay() * DAY_SECONDS + seconds - shift;
  }

  private double dated(double seconds, LayoutLines lines, LayoutSettings settings)
      throws FormatException {
    Optional<LocalDate> date =
        settings.date(Double.isNaN(last) || lines.hasTold() ? lines.peekTold() : null, seconds);
    if (date.isPresent()) {
      day = date.get().toEpochDay();
    } else if (Double.isNaN(last)) {
      throw new FormatException(
          file,
          lines.source().lineNumber(),
          "a row comes before any line that tells the date",
          "correct the pattern of the date in the layout");
    }
    double at = local(LocalDate.ofEpochDay(day), seconds);
    if (at < last - DAY_SECONDS / 2) {
      day++;
      at += DAY_SECONDS;
    }
    return at;
  }

  private double rolled(double seconds) {
    double at = day * DAY_SECONDS + seconds;
    if (at < last - DAY_SECONDS / 2) {
      day++;
      at += DAY_SECONDS;
    }
    return at;
  }

  /** An instant that a line of the log tells, such as the beginning of a run. */
  Optional<OffsetDateTime> instant(String text, Optional<String> dateText) {
    ClockText read = ClockText.of(text, form.order());
    Optional<LocalDate> date =
        read.date().or(() -> dateText.flatMap(t -> ClockText.of(t, form.order()).date()));
    ZoneOffset at = read.offset().or(form::utcOffset).orElse(ZoneOffset.UTC);
    return date.flatMap(d -> read.time().map(t -> OffsetDateTime.of(d, t, at)));
  }
}
