package io.github.roundstar.ingest.layout.text;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.formats.LineFault;
import io.github.roundstar.formats.TextSource;
import io.github.roundstar.ingest.layout.Delimiter;
import io.github.roundstar.ingest.layout.EventRule;
import io.github.roundstar.ingest.layout.Layout;
import io.github.roundstar.ingest.layout.LinePattern;
import io.github.roundstar.ingest.layout.Meaning;
import io.github.roundstar.ingest.layout.RunMarks;
import io.github.roundstar.ingest.layout.Setting;
import io.github.roundstar.ingest.layout.SettingRule;
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
  private final LeftOut leftOut;
  private final Happenings happenings;
  private long lineNumber;
  private int run;
  private int pages;
  private boolean inRun;
  private boolean rowsSeen;
  private boolean namesSeen;
  private boolean rowPending;

  /** Lines that continue one row, at most. */
  private static final int MOST_JOINED = 8;

  /** Reads a log, which is closed with this. */
  public LayoutLines(TextSource source, Layout layout) {
    this.source = source;
    this.layout = layout;
    this.leftOut = new LeftOut(layout);
    this.happenings = new Happenings(layout.events());
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
      happenings.rowTaken();
    }
    while (source.next()) {
      lineNumber = source.lineNumber();
      boolean faulty = source.fault().isPresent();
      if (faulty ? inRun && rowsSeen : isRow(source.line())) {
        cells = faulty ? List.of() : joined();
        rowsSeen = true;
        rowPending = true;
        return true;
      }
      if (lostTime().isPresent()) {
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

  private boolean isRow(String line) throws IOException, FormatException {
    try {
      return sort(line);
    } catch (LinePattern.TooSlowException e) {
      throw new FormatException(
          source.file(), source.lineNumber(), e.getMessage(), "mend the layout");
    }
  }

  private boolean sort(String line) throws IOException, FormatException {
    if (leftOut.holds(line) || line.isBlank() || beginsRun(line) || endsRun(line)) {
      return false;
    }
    if (layout.text().joins().flatMap(joins -> joins.find(line)).isPresent()) {
      return false; // the second line of a row that could not be read
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
    boolean marked =
        layout.text().rows().isEmpty() || layout.text().rows().get().find(line).isPresent();
    boolean rowLike = false;
    boolean led =
        layout.text().lead().isEmpty() || layout.text().lead().get().find(line).isPresent();
    boolean fits = Cells.keepWidths(line, layout.text().widths());
    if (marked && led && fits && inRun && namesSeen) {
      cells = cells(line);
      rowLike = places.looksLikeRow(cells);
      if (rowLike && places.sizeWanted(cells).isEmpty()) {
        return true;
      }
    }
    boolean event = takeEvent(line);
    boolean setting = takeSettings(line);
    return !event && !setting && rowLike;
  }

  private List<String> cells(String line) {
    Delimiter delimiter = layout.text().delimiter();
    return delimiter.isKeyed()
        ? places.take(Cells.keyed(line, delimiter))
        : Cells.of(line, delimiter, layout.text().widths(), layout.text().lead());
  }

  /** The fields of the row together with those of the lines that continue it. */
  private List<String> joined() throws IOException, FormatException {
    if (layout.text().joins().isEmpty()) {
      return cells;
    }
    StringBuilder whole = new StringBuilder(source.line());
    int more = 0;
    while (source.next()) {
      boolean joins =
          source.fault().isEmpty()
              && layout.text().joins().get().find(source.line()).isPresent()
              && more < MOST_JOINED;
      if (!joins) {
        source.unread();
        break;
      }
      whole.append(layout.text().delimiter().joint()).append(source.line());
      more++;
    }
    return cells(whole.toString());
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
    happenings.newRun();
  }

  private List<String> namesOf(String line) throws IOException, FormatException {
    cells = cells(line);
    return joined();
  }

  private void takeNames(String line) throws IOException, FormatException {
    if (rowsSeen && layout.runs().begins().isEmpty()) {
      newRun();
      pages++;
    }
    namesSeen = true;
    places.take(namesOf(line), source.lineNumber());
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
    Optional<EventRule> told = happenings.take(line);
    if (told.isPresent() && told.get().means() == EventRule.Kind.FLIP && rowsSeen) {
      newRun();
      happenings.take(line);
    }
    return told.isPresent();
  }

  /** Whether the row is a line without fields that tells of a lost star; its time, if so. */
  public Optional<String> lostTime() {
    return happenings.lostTime();
  }

  /** What the lines before the row said of it. */
  public EventRule.Kind event() {
    return happenings.event();
  }

  /** A remark before the row. */
  public Optional<String> note() {
    return happenings.note();
  }

  /** A named group of the line that told of a dither. */
  public Optional<String> ditherGroup(String name) {
    return happenings.ditherGroup(name);
  }

  /** Line of the row, of the first one where it has several. */
  public long lineNumber() {
    return lineNumber;
  }

  /**
   * How many runs were begun by nothing but a line of names, which may as well head another page.
   */
  public int pages() {
    return pages;
  }

  /** The line of names before the row heads another page of the same run. */
  public void samePage() {
    happenings.samePage();
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

  /** Follows which lines belong to a block that the layout leaves out. */
  private static final class LeftOut {
    private final Layout layout;
    private Optional<RunMarks.Block> open = Optional.empty();

    LeftOut(Layout layout) {
      this.layout = layout;
    }

    /** Whether the next line of the log is left out. */
    boolean holds(String line) {
      if (open.isPresent() && open.get().to().isEmpty() && isOfOtherKind(line)) {
        open = Optional.empty(); // and the line is a line like others
      }
      if (open.isEmpty()) {
        open =
            layout.runs().leftOut().stream()
                .filter(block -> block.from().find(line).isPresent())
                .findFirst();
        return open.isPresent();
      }
      if (open.get().to().flatMap(to -> to.find(line)).isPresent()) {
        open = Optional.empty();
      }
      return true;
    }

    private boolean isOfOtherKind(String line) {
      return line.isBlank()
          || Stream.of(layout.text().remark(), layout.text().names(), layout.runs().begins())
              .anyMatch(pattern -> pattern.flatMap(p -> p.find(line)).isPresent());
    }
  }
}
