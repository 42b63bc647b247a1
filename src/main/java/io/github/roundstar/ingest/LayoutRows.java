package io.github.roundstar.ingest;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.ingest.layout.EventRule;
import io.github.roundstar.ingest.layout.Layout;
import io.github.roundstar.ingest.layout.Meaning;
import io.github.roundstar.ingest.layout.text.LayoutLines;
import io.github.roundstar.ingest.layout.text.Numbers;
import java.io.IOException;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** The rows of a text log, turned by its layout into the model's units and signs. */
final class LayoutRows implements RowSource {
  private final LayoutLines lines;
  private final Layout layout;
  private final HeaderMeta meta;
  private final Problems problems;
  private final LayoutTimes times;
  private final LayoutSettings settings;
  private LayoutAxes axes;
  private int run = Integer.MIN_VALUE;
  private int shift;
  private int pages;

  LayoutRows(LayoutLines lines, Layout layout, HeaderMeta meta, Problems problems) {
    this.lines = lines;
    this.layout = layout;
    this.meta = meta;
    this.problems = problems;
    this.times = new LayoutTimes(lines.source().file(), layout);
    this.settings = new LayoutSettings(lines.source().file(), layout);
  }

  /** The columns that the rows fill. */
  ColumnTable columns() {
    Set<GuideColumn> columns =
        EnumSet.of(
            times.absolute() ? GuideColumn.UTC : GuideColumn.TIME,
            GuideColumn.RA_OFFSET,
            GuideColumn.DEC_OFFSET,
            GuideColumn.RUN,
            GuideColumn.EVENT);
    if (layout.columns().stream().anyMatch(column -> column.means().isPulse())) {
      columns.add(GuideColumn.RA_PULSE);
      columns.add(GuideColumn.DEC_PULSE);
    }
    if (layout.has(Meaning.SNR) || layout.has(Meaning.FLUX)) {
      columns.add(GuideColumn.SNR);
      columns.add(GuideColumn.FLUX);
    }
    return ColumnTable.filled(columns);
  }

  @Override
  public boolean next() throws IOException, FormatException {
    return lines.next();
  }

  @Override
  public boolean take(TableRow row) throws FormatException {
    row.line = lineNumber();
    if (lines.fault().isPresent()) {
      var fault = lines.fault().get();
      problems.unusable(row.line, RowProblem.of(fault), fault::what);
      return false;
    }
    try {
      if (lines.lostTime().isEmpty()) {
        requireSize();
      }
      times.read(lines, row, settings);
      beginRun(row);
      row.run = Optional.of(run + shift);
      fill(row);
    } catch (CellFault fault) {
      problems.unusable(row.line, fault.problem(), fault::getMessage);
      return false;
    }
    return row.check();
  }

  private void requireSize() throws CellFault {
    Optional<Integer> wanted = lines.sizeWanted();
    if (wanted.isPresent()) {
      boolean few = lines.size() < wanted.get();
      throw new CellFault(
          few ? RowProblem.ROW_CUT_SHORT : RowProblem.TOO_MANY_FIELDS,
          "found " + lines.size() + " fields, expected " + wanted.get());
    }
  }

  private void beginRun(TableRow row) throws FormatException, CellFault {
    int number = (int) number(Meaning.RUN).orElse(lines.run() - pages);
    boolean stepsBack = layout.runs().restart() && times.stepsBack();
    boolean changed = lines.hasTold() && settings.changes(lines.peekTold());
    boolean first = run == Integer.MIN_VALUE;
    if (!first
        && !changed
        && number > run
        && times.goesOn()
        && lines.pages() - pages >= number - run) {
      pages += number - run; // names again, but the clock goes on: another page of the same run
      lines.samePage();
      number = run;
    }
    if (!first && number == run && !stepsBack && !changed) {
      return;
    }
    if (!first && number == run) {
      shift++;
    }
    run = number;
    boolean flip = lines.event() == EventRule.Kind.FLIP;
    HeaderMeta.Values values = settings.begin(lines.told(), flip, times, row);
    axes = new LayoutAxes(lines.source().file(), layout, settings);
    meta.describe(run + shift, values);
  }

  private void fill(TableRow row) throws CellFault {
    row.snr = number(Meaning.SNR).orElse(Double.NaN);
    row.flux = number(Meaning.FLUX).orElse(Double.NaN);
    row.raPulseMillis = axes.pulseMillis(lines, false);
    row.decPulseMillis = axes.pulseMillis(lines, true);
    fillEvent(row);
    if (row.event == GuideEvent.DITHER || row.event == GuideEvent.SETTLING) {
      axes.newSetPoint();
    }
    double[] offset = axes.offsetArcsec(lines);
    row.ra = offset[0];
    row.dec = offset[1];
    fillDither(row);
  }

  private void fillDither(TableRow row) throws CellFault {
    row.ditherRa = Double.NaN;
    row.ditherDec = Double.NaN;
    if (layout.has(Meaning.RA_DITHER)) {
      row.ditherRa = axes.along(lines, Meaning.RA_DITHER);
    } else if (lines.ditherGroup("east").isPresent()) {
      row.ditherRa = number(lines.ditherGroup("east").get());
    }
    if (layout.has(Meaning.DEC_DITHER)) {
      row.ditherDec = axes.along(lines, Meaning.DEC_DITHER);
    } else if (lines.ditherGroup("north").isPresent()) {
      row.ditherDec = number(lines.ditherGroup("north").get());
    }
  }

  private void fillEvent(TableRow row) throws CellFault {
    EventRule.Kind kind = flagged().orElse(lines.event());
    Optional<String> word = lines.cell(Meaning.EVENT);
    if (word.isPresent()) {
      EventRule.Kind said = said(word.get());
      kind = said == EventRule.Kind.GUIDING || kind == EventRule.Kind.DITHER ? kind : said;
    }
    row.eventText = "";
    row.event =
        switch (kind) {
          case GUIDING, NOTE -> GuideEvent.NONE;
          case DITHER -> GuideEvent.DITHER;
          case SETTLING -> GuideEvent.SETTLING;
          case LOST -> GuideEvent.LOST;
          case IDLE -> GuideEvent.IDLE;
          case FLIP -> GuideEvent.FLIP;
        };
    if (row.event == GuideEvent.NONE && (kind == EventRule.Kind.NOTE || lines.note().isPresent())) {
      row.event = GuideEvent.NOTE;
      row.eventText = GuideEvent.NOTE_MARK + lines.note().or(() -> word).orElse("");
    }
  }

  /** What columns of flags say, what spoils a frame most first. */
  private Optional<EventRule.Kind> flagged() {
    if (isSet(Meaning.LOST_FLAG)) {
      return Optional.of(EventRule.Kind.LOST);
    }
    if (isSet(Meaning.DITHER_FLAG)) {
      return Optional.of(EventRule.Kind.DITHER);
    }
    return isSet(Meaning.SETTLING_FLAG) ? Optional.of(EventRule.Kind.SETTLING) : Optional.empty();
  }

  private boolean isSet(Meaning flag) {
    return lines.cell(flag).filter(text -> !Numbers.isNo(text)).isPresent();
  }

  private EventRule.Kind said(String word) throws CellFault {
    for (EventRule rule : layout.events()) {
      if (rule.words().contains(word)) {
        return rule.means();
      }
    }
    throw new CellFault(
        RowProblem.UNKNOWN_EVENT,
        "found '" + CellFault.shortened(word) + "', which no [[event]] of the layout has in words");
  }

  private OptionalDouble number(Meaning meaning) throws CellFault {
    Optional<String> cell = lines.cell(meaning);
    return cell.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(number(cell.get()));
  }

  private double number(String text) throws CellFault {
    return CellFault.number(text, layout.text().decimalComma());
  }

  @Override
  public String file() {
    return lines.source().file();
  }

  @Override
  public long lineNumber() {
    return lines.lineNumber();
  }

  @Override
  public Optional<String> damage() throws IOException {
    return lines.source().damage();
  }

  @Override
  public String sha256() throws IOException {
    return lines.source().sha256();
  }

  @Override
  public long bytes() throws IOException {
    return lines.source().bytes();
  }

  @Override
  public String layout() {
    return String.format(Locale.ROOT, "layout/%s", layout.name());
  }
}
