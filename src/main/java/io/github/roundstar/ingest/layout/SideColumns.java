package io.github.roundstar.ingest.layout;

import java.util.List;
import java.util.Map;

/**
 * Columns beside offsets and pulses: the star's light, events, runs, and shifts of the set point.
 */
final class SideColumns {
  private final List<Column> columns;
  private final LogSentences text;
  private final Map<Meaning, Column> found;
  private final List<Decision> decisions;

  SideColumns(
      List<Column> columns,
      LogSentences text,
      Map<Meaning, Column> found,
      List<Decision> decisions) {
    this.columns = columns;
    this.text = text;
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
    if (!found.containsKey(Meaning.RA_DITHER) || !found.containsKey(Meaning.DEC_DITHER)) {
      found.remove(Meaning.RA_DITHER);
      found.remove(Meaning.DEC_DITHER);
    }
  }

  private Meaning meaning(Column column) {
    if (EventLines.tellsEvents(column, text)) {
      return Meaning.EVENT;
    }
    if (!column.isNumeric()) {
      return Meaning.NOTHING;
    }
    char axis = column.axis(text.eastIsO());
    if (column.has("dither") && (axis == 'r' || axis == 'd')) {
      boolean sure = column.unit().equals("arcsec") || column.unit().equals("px");
      boolean named = column.direction(text.eastIsO()).isPresent();
      return !sure || !named
          ? Meaning.NOTHING
          : axis == 'r' ? Meaning.RA_DITHER : Meaning.DEC_DITHER;
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
    return column.nameHas("run") && steps && !column.isConstant() ? Meaning.RUN : Meaning.NOTHING;
  }
}
