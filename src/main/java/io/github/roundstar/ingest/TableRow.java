package io.github.roundstar.ingest;

import io.github.roundstar.formats.NearestName;
import io.github.roundstar.formats.Row;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * One row of a guide table in the units of the file's header; offsets and shifts still in logged
 * units. The next row overwrites it.
 */
final class TableRow {
  private final ColumnTable table;
  private final Problems problems;

  long line;
  double timeSeconds;
  long epochNanos;
  Optional<Integer> run = Optional.empty();
  double ra;
  double dec;
  double raPulseMillis;
  double decPulseMillis;
  double snr;
  double flux;
  double ditherRa;
  double ditherDec;
  GuideEvent event = GuideEvent.NONE;
  String eventText = "";

  TableRow(ColumnTable table, Problems problems) {
    this.table = table;
    this.problems = problems;
  }

  /** Takes a row apart; false if it cannot be used, which is then counted. */
  boolean take(Row row) {
    line = row.line();
    if (row.fault().isPresent() || row.size() != table.size()) {
      return refuseShape(row);
    }
    takeTime(row);
    ra = row.number(table.index(GuideColumn.RA_OFFSET));
    dec = row.number(table.index(GuideColumn.DEC_OFFSET));
    raPulseMillis = scaled(row, GuideColumn.RA_PULSE);
    decPulseMillis = scaled(row, GuideColumn.DEC_PULSE);
    snr = scaled(row, GuideColumn.SNR);
    flux = scaled(row, GuideColumn.FLUX);
    ditherRa = row.number(table.index(GuideColumn.DITHER_RA));
    ditherDec = row.number(table.index(GuideColumn.DITHER_DEC));
    double number = row.number(table.index(GuideColumn.RUN));
    int eventAt = table.index(GuideColumn.EVENT);
    eventText = row.isEmpty(eventAt) ? "" : row.text(eventAt);
    event = GuideEvent.of(eventText);
    return !refuseWrong(row)
        && !refuseTime()
        && !refuseNumbers()
        && takeRun(number)
        && !refuseEvent();
  }

  /** Checks what a layout's row has filled in; false if it cannot be used, which is counted. */
  boolean check() {
    return !refuseTime() && !refuseNumbers();
  }

  private void takeTime(Row row) {
    if (table.has(GuideColumn.UTC)) {
      epochNanos = row.epochNanos(table.index(GuideColumn.UTC));
      timeSeconds = epochNanos == Long.MIN_VALUE ? Double.NaN : 0;
    } else {
      timeSeconds = scaled(row, GuideColumn.TIME);
    }
  }

  private double scaled(Row row, GuideColumn column) {
    return row.number(table.index(column)) * table.factor(column);
  }

  private boolean refuseShape(Row row) {
    if (row.fault().isPresent()) {
      problems.unusable(line, RowProblem.of(row.fault().get()), () -> row.fault().get().what());
    } else {
      problems.unusable(
          line,
          row.size() < table.size() ? RowProblem.ROW_CUT_SHORT : RowProblem.TOO_MANY_FIELDS,
          () -> "found " + row.size() + " fields, expected " + table.size());
    }
    return false;
  }

  private boolean refuseWrong(Row row) {
    int wrong = row.wrongField();
    if (wrong < 0) {
      return false;
    }
    boolean time = wrong == table.index(GuideColumn.UTC);
    problems.unusable(
        line,
        time ? RowProblem.TEXT_IN_TIME : RowProblem.TEXT_IN_NUMBER,
        () ->
            table.name(wrong)
                + ": found '"
                + shortened(row.text(wrong))
                + "', expected "
                + (time ? "an instant" : "a number such as 1.84"));
    return true;
  }

  private boolean refuseTime() {
    if (Double.isNaN(timeSeconds)) {
      problems.unusable(line, RowProblem.NO_TIME, () -> "the row has no time");
      return true;
    }
    return refuse(GuideColumn.TIME, timeSeconds);
  }

  private boolean refuseNumbers() {
    return refuse(GuideColumn.RA_PULSE, raPulseMillis)
        || refuse(GuideColumn.DEC_PULSE, decPulseMillis)
        || refuse(GuideColumn.SNR, snr)
        || refuse(GuideColumn.FLUX, flux)
        || refuse(GuideColumn.DITHER_RA, ditherRa)
        || refuse(GuideColumn.DITHER_DEC, ditherDec)
        || (Double.isFinite(ra) && refuse(GuideColumn.RA_OFFSET, ra))
        || (Double.isFinite(dec) && refuse(GuideColumn.DEC_OFFSET, dec));
  }

  private boolean refuse(GuideColumn column, double value) {
    if (Double.isNaN(value) || Math.abs(value) <= column.quantity().largest()) {
      return false;
    }
    RowProblem problem = Double.isInfinite(value) ? RowProblem.NOT_FINITE : RowProblem.OUT_OF_RANGE;
    problems.unusable(
        line,
        problem,
        () ->
            String.format(
                Locale.ROOT,
                "%s: found %s, expected at most %.0f either way",
                column.key(),
                value,
                column.quantity().largest()));
    return true;
  }

  private boolean takeRun(double number) {
    if (Double.isNaN(number)) {
      run = Optional.empty();
      return true;
    }
    if (number != Math.rint(number) || Math.abs(number) > GuideColumn.RUN.quantity().largest()) {
      problems.unusable(line, RowProblem.NO_RUN_NUMBER, () -> "run: found " + number);
      return false;
    }
    if (run.isEmpty() || run.get() != (int) number) {
      run = Optional.of((int) number);
    }
    return true;
  }

  private boolean refuseEvent() {
    if (event != GuideEvent.UNKNOWN) {
      return false;
    }
    problems.unusable(
        line,
        RowProblem.UNKNOWN_EVENT,
        () ->
            "event: found '"
                + shortened(eventText)
                + "', the nearest known one is "
                + NearestName.of(
                        eventText,
                        List.of("settling", "lost", "idle", "dither", "flip", GuideEvent.NOTE_MARK))
                    .orElseThrow());
    return true;
  }

  private static String shortened(String text) {
    return text.length() <= 40 ? text : text.substring(0, 40) + "...";
  }

  /** A number that is the same for rows with the same values, time aside. */
  long valueHash() {
    long hash = mix(eventText.hashCode(), bits(ra));
    hash = mix(hash, bits(dec));
    hash = mix(hash, bits(raPulseMillis));
    hash = mix(hash, bits(decPulseMillis));
    hash = mix(hash, bits(snr));
    hash = mix(hash, bits(flux));
    hash = mix(hash, bits(ditherRa));
    return mix(hash, bits(ditherDec));
  }

  private static long bits(double value) {
    return Double.doubleToLongBits(value + 0.0); // -0 and 0 are the same value
  }

  private static long mix(long hash, long value) {
    long mixed = (hash ^ value) * 0x9E3779B97F4A7C15L;
    return mixed ^ (mixed >>> 29);
  }
}
