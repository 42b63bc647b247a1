package io.github.roundstar.ingest.layout;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.formats.LineFault;
import io.github.roundstar.formats.TextSource;
import java.io.Closeable;
import java.io.IOException;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.stream.Stream;

/**
 * The rows of a text log one by one, and what the lines between them said. A line is a row if no
 * pattern of the layout claims it; so that nothing is lost, a line that is no row and says nothing
 * known, once rows have begun, still counts as one.
 */
public final class LayoutLines implements Closeable {
  private final TextSource source;
  private final Layout layout;
  private final ColumnPlaces places;
  private final Map<Setting, String> told = new EnumMap<>(Setting.class);
  private List<String> cells = List.of();
  private Optional<RunMarks.Block> leftOut = Optional.empty();
  private EventRule.Kind lasting = EventRule.Kind.GUIDING;
  private EventRule.Kind once;
  private Matcher onceLine;
  private String lostTime;
  private String note;
  private int run;
  private boolean inRun;
  private boolean rowsSeen;
  private boolean namesSeen;
  private boolean rowPending;

  /** Reads a log, which is closed with this. */
  public LayoutLines(TextSource source, Layout layout) {
    this.source = source;
    this.layout = layout;
    this.places = new ColumnPlaces(source.file(), layout);
    this.inRun = layout.runs().begins().isEmpty();
    this.namesSeen = layout.text().names().isEmpty();
    this.run = inRun ? 1 : 0;
  }

  /** The log. */
  public TextSource source() {
    return source;
  }

  /** Goes to the next row; false at the end. */
  public boolean next() throws IOException, FormatException {
    if (rowTaken()) {
      once = null;
      onceLine = null;
      lostTime = null;
      note = null;
    }
    while (source.next()) {
      boolean faulty = source.fault().isPresent();
      if (faulty ? inRun && rowsSeen : isRow(source.line())) {
        cells = faulty ? List.of() : cells;
        rowsSeen = true;
        rowPending = true;
        return true;
      }
      if (lostTime != null) {
        cells = List.of();
        rowsSeen = true;
        rowPending = true;
        return true;
      }
    }
    return false;
  }

  private boolean rowTaken() {
    boolean taken = rowPending;
    rowPending = false;
    return taken;
  }

  private boolean isRow(String line) throws FormatException {
    try {
      return sort(line);
    } catch (PatternTooSlowException e) {
      throw new FormatException(
          source.file(), source.lineNumber(), e.getMessage(), "mend the layout");
    }
  }

  private boolean sort(String line) throws FormatException {
    if (inBlock(line) || line.isBlank() || beginsRun(line) || endsRun(line)) {
      return false;
    }
    if (layout.text().names().flatMap(names -> names.find(line)).isPresent()) {
      takeNames(line);
      return false;
    }
    if (layout.text().remark().flatMap(remark -> remark.find(line)).isPresent()) {
      takeSettings(line);
      takeEvent(line);
      return false;
    }
    if (takeEvent(line)) {
      takeSettings(line);
      return false;
    }
    if (!inRun || !namesSeen) {
      takeSettings(line);
      return false;
    }
    cells = Cells.of(line, layout.text().delimiter(), layout.text().widths());
    boolean rowLike = places.looksLikeRow(cells);
    if (rowLike && places.sizeWanted(cells).isEmpty()) {
      return true;
    }
    return !takeSettings(line) && (rowLike || rowsSeen);
  }

  private boolean inBlock(String line) {
    if (leftOut.isPresent() && leftOut.get().to().isEmpty() && isOfOtherKind(line)) {
      leftOut = Optional.empty(); // and the line is a line like others
    }
    if (leftOut.isEmpty()) {
      leftOut =
          layout.runs().leftOut().stream()
              .filter(block -> block.from().find(line).isPresent())
              .findFirst();
      return leftOut.isPresent();
    }
    if (leftOut.get().to().flatMap(to -> to.find(line)).isPresent()) {
      leftOut = Optional.empty();
    }
    return true;
  }

  private boolean isOfOtherKind(String line) {
    return line.isBlank()
        || Stream.of(layout.text().remark(), layout.text().names(), layout.runs().begins())
            .anyMatch(pattern -> pattern.flatMap(p -> p.find(line)).isPresent());
  }

  private boolean beginsRun(String line) {
    if (layout.runs().begins().flatMap(begins -> begins.find(line)).isEmpty()) {
      return false;
    }
    newRun();
    inRun = true;
    Matcher found = layout.runs().begins().get().find(line).get();
    for (Setting setting : Setting.values()) {
      LinePattern.group(found, setting.word().replace("-", ""))
          .ifPresent(value -> told.put(setting, value));
    }
    takeSettings(line);
    return true;
  }

  private boolean endsRun(String line) {
    if (!inRun || layout.runs().ends().flatMap(ends -> ends.find(line)).isEmpty()) {
      return false;
    }
    inRun = layout.runs().begins().isEmpty();
    if (inRun && rowsSeen) {
      newRun();
    }
    return true;
  }

  private void newRun() {
    run++;
    rowsSeen = false;
    lasting = EventRule.Kind.GUIDING;
    once = null;
  }

  private void takeNames(String line) throws FormatException {
    if (rowsSeen && layout.runs().begins().isEmpty()) {
      newRun();
    }
    namesSeen = true;
    places.take(
        Cells.of(line, layout.text().delimiter(), layout.text().widths()), source.lineNumber());
  }

  private boolean takeSettings(String line) {
    boolean any = false;
    for (SettingRule rule : layout.settings()) {
      Optional<String> value =
          rule.line().flatMap(p -> p.find(line)).flatMap(m -> LinePattern.group(m, "value"));
      value.ifPresent(text -> told.put(rule.means(), text));
      any |= value.isPresent();
    }
    return any;
  }

  private boolean takeEvent(String line) {
    if (!inRun) {
      return false;
    }
    for (EventRule rule : layout.events()) {
      Optional<Matcher> found = rule.line().flatMap(pattern -> pattern.find(line));
      if (found.isPresent()) {
        happened(rule.means(), found.get(), line);
        return true;
      }
    }
    return false;
  }

  private void happened(EventRule.Kind kind, Matcher found, String line) {
    switch (kind) {
      case SETTLING, IDLE, GUIDING -> lasting = kind;
      case LOST -> {
        lostTime = LinePattern.group(found, "time").orElse(null);
        once = lostTime == null ? once : kind; // the rows themselves show what was not measured
      }
      case NOTE -> note = line.strip();
      case FLIP -> {
        if (rowsSeen) {
          newRun();
        }
        once = kind;
      }
      case DITHER -> {
        lasting = EventRule.Kind.GUIDING;
        once = kind;
        onceLine = found;
      }
    }
  }

  /** Whether the row is a line without fields that tells of a lost star; its time, if so. */
  public Optional<String> lostTime() {
    return Optional.ofNullable(lostTime);
  }

  /** What the lines before the row said of it. */
  public EventRule.Kind event() {
    return once != null ? once : lasting;
  }

  /** A remark before the row. */
  public Optional<String> note() {
    return Optional.ofNullable(note);
  }

  /** A named group of the line that told of a dither. */
  public Optional<String> ditherGroup(String name) {
    return Optional.ofNullable(onceLine).flatMap(found -> LinePattern.group(found, name));
  }

  /** Number of the run that the row belongs to, from 1, where no column tells it. */
  public int run() {
    return run;
  }

  /** Whether lines told settings since they were last asked for. */
  public boolean hasTold() {
    return !told.isEmpty();
  }

  /** What {@link #told} would give, which stays to be asked for. */
  public Map<Setting, String> peekTold() {
    return Collections.unmodifiableMap(told);
  }

  /** What settings the lines told since this was last asked. */
  public Map<Setting, String> told() {
    Map<Setting, String> fresh = new EnumMap<>(Setting.class);
    fresh.putAll(told);
    told.clear();
    return fresh;
  }

  /** What makes the line unreadable. */
  public Optional<LineFault> fault() {
    return source.fault();
  }

  /** Number of fields in the row. */
  public int size() {
    return cells.size();
  }

  /** Whether the row has all fields that mean something, and how many there should be if not. */
  public Optional<Integer> sizeWanted() {
    return places.sizeWanted(cells);
  }

  /** The text of a field; empty where the column or its value is missing. */
  public Optional<String> cell(Meaning meaning) {
    return places.cell(cells, meaning);
  }

  @Override
  public void close() throws IOException {
    source.close();
  }
}
