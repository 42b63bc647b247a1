package io.github.roundstar.ingest.layout.choice;

import io.github.roundstar.ingest.layout.Decision;
import io.github.roundstar.ingest.layout.Meaning;
import io.github.roundstar.ingest.layout.evidence.Column;
import io.github.roundstar.ingest.layout.evidence.LogSentences;
import io.github.roundstar.ingest.layout.evidence.RowTimes;
import io.github.roundstar.ingest.layout.text.Numbers;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Columns beside offsets and pulses: the star's light, events, runs, and shifts of the set point.
 */
final class SideColumns {
  private final List<Column> columns;
  private final LogSentences text;
  private final ShownRows rows;
  private final Map<Meaning, Column> found;
  private final List<Decision> decisions;

  SideColumns(
      List<Column> columns,
      LogSentences text,
      ShownRows rows,
      Map<Meaning, Column> found,
      List<Decision> decisions) {
    this.columns = columns;
    this.text = text;
    this.rows = rows;
    this.found = found;
    this.decisions = decisions;
  }

  /** Adds them to what was found. */
  void find() {
    for (Column column : columns) {
      if (!found.containsValue(column)) {
        Meaning meaning = meaning(column);
        if (meaning != Meaning.NOTHING && !found.containsKey(meaning)) {
          found.put(meaning, column);
          decisions.add(Decision.certain(column.called(), meaning.word(), "its name and values"));
        }
      }
    }
    settlingBehindDithers();
    if (!found.containsKey(Meaning.RA_DITHER) || !found.containsKey(Meaning.DEC_DITHER)) {
      found.remove(Meaning.RA_DITHER);
      found.remove(Meaning.DEC_DITHER);
    }
  }

  /** A flag of unknown name that is set for a while right behind each dither tells of settling. */
  private void settlingBehindDithers() {
    Column dithers = found.get(Meaning.DITHER_FLAG);
    for (Column column : columns) {
      boolean open = dithers != null && !found.containsKey(Meaning.SETTLING_FLAG);
      if (open && !found.containsValue(column) && EventColumns.isBinary(column)) {
        int stretches = 0;
        int behind = 0;
        for (int i = 1; i < column.cells.size(); i++) {
          boolean begins =
              !Numbers.isNo(column.cells.get(i)) && Numbers.isNo(column.cells.get(i - 1));
          stretches += begins ? 1 : 0;
          boolean dither =
              !Numbers.isNo(dithers.cells.get(i - 1)) || !Numbers.isNo(dithers.cells.get(i));
          behind += begins && dither ? 1 : 0;
        }
        if (stretches > 0 && behind >= 0.8 * stretches) {
          found.put(Meaning.SETTLING_FLAG, column);
          decisions.add(
              Decision.certain(
                  column.called(), Meaning.SETTLING_FLAG.word(), "set right behind each dither"));
        }
      }
    }
  }

  /** Whole numbers that go up by one where the time makes a leap or begins anew. */
  private boolean isRunNumber(Column column) {
    Column time = found.get(Meaning.TIME);
    boolean counts =
        column.isWhole()
            && column.largest() < 200
            && !column.isConstant()
            && time != null
            && !column.hasAny("snr", "flux", "offset", "pulse", "event", "statistic");
    RowTimes times = counts ? new RowTimes(time) : null;
    int ups = 0;
    int leaps = 0;
    for (int i = 1; counts && i < column.numbers.length; i++) {
      double step = column.numbers[i] - column.numbers[i - 1];
      if (step != 0 && !Double.isNaN(step)) {
        ups++;
        double gap = times.gapBefore(i);
        leaps += step == 1 && (gap < 0 || gap > 5 * times.step()) ? 1 : 0;
      }
    }
    return ups > 0 && ups < 50 && leaps == ups;
  }

  private Meaning meaning(Column column) {
    Optional<Meaning> flag = EventColumns.flag(column, rows);
    if (flag.isPresent()) {
      return flag.get();
    }
    if (EventColumns.tellsEvents(column, text) || EventColumns.isShown(column, rows)) {
      return Meaning.EVENT;
    }
    if (!column.isNumeric()) {
      return Meaning.NOTHING;
    }
    char axis = column.axis(text.eastIsO());
    if (column.has("dither") && !ColumnChoice.isShift(column) && (axis == 'r' || axis == 'd')) {
      boolean sure = Meaning.RA_DITHER.units().contains(column.unit());
      boolean named = column.direction(text.eastIsO()).isPresent();
      return !sure || !named
          ? Meaning.NOTHING
          : axis == 'r' ? Meaning.RA_DITHER : Meaning.DEC_DITHER;
    }
    if (isRunNumber(column)) {
      return Meaning.RUN;
    }
    if (axis != ' ' && !column.nameHas("snr")) {
      return Meaning.NOTHING;
    }
    if (column.nameHas("snr") && column.largest() <= 1e5) {
      return Meaning.SNR;
    }
    if (column.nameHas("flux") && !column.nameHas("statistic")) {
      return Meaning.FLUX;
    }
    boolean steps = column.isWhole() && column.largest() < 1000 && column.rising() < 0.2;
    return column.nameHas("run") && steps ? Meaning.RUN : Meaning.NOTHING;
  }
}
