package io.github.roundstar.ingest.layout;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What stands around the rows of a sample: names, units, and other lines.
 *
 * @param nameLine index of the line of names; negative if there is none
 * @param nameCells the names; empty ones where nothing tells them
 * @param unitCells units in the line below the names; empty if there is none
 * @param byName whether the layout can find columns by these names
 * @param others lines that are no rows, no names and no units
 * @param between those of them after the first row
 * @param names pattern of the line of names
 * @param remark pattern of lines that begin with a sign as rows never do
 * @param runs where runs begin and end
 */
record TableHead(
    int nameLine,
    List<String> nameCells,
    List<String> unitCells,
    boolean byName,
    List<String> others,
    List<String> between,
    Optional<LinePattern> names,
    Optional<LinePattern> remark,
    RunMarks runs) {
  private static final String SIGNS = "#!%*;>=/'";
  private static final int LINES_ABOVE = 12;
  private static final Pattern NUMBERED =
      Pattern.compile(
          "^[^\\p{L}0-9]*(?:\\p{L}{1,12}[.:]? ?)?([0-9]{1,3})(?: ?[:=.)-]+ ?| +)(\\p{L}.*)$");

  static TableHead of(List<String> lines, RowShape shape) {
    int first = shape.rows().get(0);
    Found found = shape.delimiter().isKeyed() ? Found.keyed(shape) : Found.above(lines, shape);
    String nameLine = found.nameAt < 0 ? null : lines.get(found.nameAt);
    String unitLine = found.unitAt < 0 ? null : lines.get(found.unitAt);
    Set<Integer> rows = new HashSet<>(shape.rows());
    List<String> others = new ArrayList<>();
    List<String> between = new ArrayList<>();
    for (int i = 0; i < lines.size(); i++) {
      String line = lines.get(i);
      if (!rows.contains(i)
          && !line.isBlank()
          && !line.equals(nameLine)
          && !line.equals(unitLine)) {
        others.add(line);
        if (i > first) {
          between.add(line);
        }
      }
    }
    return new TableHead(
        found.nameAt,
        found.names,
        found.units,
        found.byName,
        others,
        between,
        Optional.ofNullable(found.byName ? nameLine : null)
            .map(any -> namesPattern(lines, shape, found)),
        remark(between, lines, shape),
        RunLines.of(lines, rows, nameLine));
  }

  /**
   * Whether two lines name the same columns, in whatever order; a log may change the order where it
   * begins anew.
   */
  static boolean areSameNames(List<String> one, List<String> other) {
    return one.size() == other.size()
        && one.stream().sorted().toList().equals(other.stream().sorted().toList());
  }

  /** The rows that stand under names in the order of the first ones. */
  List<Integer> rowsInOrder(List<String> lines, RowShape shape) {
    if (!byName || shape.delimiter().isKeyed() || nameLine < 0) {
      return shape.rows();
    }
    List<Integer> kept = new ArrayList<>();
    Set<Integer> rows = new HashSet<>(shape.rows());
    boolean inOrder = true;
    for (int i = 0; i < lines.size(); i++) {
      if (rows.contains(i)) {
        if (inOrder) {
          kept.add(i);
        }
      } else if (lines.get(i).length() < 4000 && isNames(lines, i, shape, nameCells)) {
        inOrder = Found.names(lines, i, shape).equals(nameCells);
      }
    }
    return kept;
  }

  /** The lines with those that name the columns, in whatever order, left blank. */
  List<String> withoutNames(List<String> lines, RowShape shape) {
    List<String> all = new ArrayList<>(lines);
    for (int i = 0; i < lines.size() && nameLine >= 0; i++) {
      boolean like = mayName(lines.get(i)) && !shape.delimiter().isKeyed();
      if (like && isSameWords(lines.get(i), lines.get(nameLine))) {
        all.set(i, "");
      }
    }
    return all;
  }

  /** Whether a line read by the places of its fields names them in another order later on. */
  OptionalInt reordered(List<String> lines, RowShape shape) {
    for (int i = nameLine + 1; i < lines.size() && nameLine >= 0 && !byName; i++) {
      boolean like = mayName(lines.get(i)) && !shape.delimiter().isKeyed();
      boolean same = like && isSameWords(lines.get(i), lines.get(nameLine));
      if (same && !Words.tokens(lines.get(i)).equals(Words.tokens(lines.get(nameLine)))) {
        return OptionalInt.of(i);
      }
    }
    return OptionalInt.empty();
  }

  /** The line of names, later on, whose line of units gives a column another one than the first. */
  OptionalInt otherUnits(List<String> lines, RowShape shape) {
    for (int i = nameLine + 2; i + 1 < lines.size() && byName && !unitCells.isEmpty(); i++) {
      boolean like = lines.get(i).length() < 4000 && isNames(lines, i, shape, nameCells);
      List<String> names = like ? Found.names(lines, i, shape) : List.of();
      List<String> units = like ? Found.names(lines, i + 1, shape) : List.of();
      for (int c = 0; c < names.size() && units.size() == names.size() && areUnits(units); c++) {
        int first = nameCells.indexOf(names.get(c));
        if (!names.get(c).isEmpty() && !units.get(c).equals(unitCells.get(first))) {
          return OptionalInt.of(i);
        }
      }
    }
    return OptionalInt.empty();
  }

  /** Names are more letters than digits. */
  private static boolean mayName(String line) {
    int letters = 0;
    for (int i = 0; i < line.length() && i < 4000; i++) {
      char c = line.charAt(i);
      letters += c >= '0' && c <= '9' ? -1 : Character.isLetter(c) ? 1 : 0;
    }
    return letters > 0 && line.length() < 4000;
  }

  private static boolean isSameWords(String one, String other) {
    return Math.abs(one.strip().length() - other.strip().length()) <= 40
        && Words.tokens(one).stream()
            .sorted()
            .toList()
            .equals(Words.tokens(other).stream().sorted().toList());
  }

  private static boolean isNames(List<String> lines, int line, RowShape shape, List<String> names) {
    return areSameNames(Found.names(lines, line, shape), names);
  }

  /** The pattern of all lines that name the columns. */
  private static LinePattern namesPattern(List<String> lines, RowShape shape, Found found) {
    Set<String> all = new LinkedHashSet<>();
    all.add(lines.get(found.nameAt));
    String begin = lines.get(found.nameAt).substring(0, 1);
    for (int i = 0; i < lines.size() && !shape.delimiter().isKeyed(); i++) {
      String line = lines.get(i);
      boolean like = line.length() < 4000 && (line.startsWith(begin) || isRemark(line));
      if (like && all.size() < 6 && isNames(lines, i, shape, found.names)) {
        all.add(line);
      }
    }
    if (all.size() == 1 && shape.lead().isPresent()) {
      String line = lines.get(found.nameAt);
      int from = shape.lead().get().find(line).map(Matcher::end).orElse(0);
      return LinePattern.of(beginningOf(line.substring(from)).expression().substring(4));
    }
    if (all.size() == 1) {
      return beginningOf(lines.get(found.nameAt));
    }
    List<String> each =
        all.stream().map(line -> beginningOf(line).expression().substring(4)).toList();
    return LinePattern.of("^\\s*(?:" + String.join("|", each) + ")");
  }

  /** Names and units, and where they were found. */
  private static final class Found {
    private int nameAt = -1;
    private int unitAt = -1;
    private List<String> names = List.of();
    private List<String> units = List.of();
    private boolean byName;

    static Found keyed(RowShape shape) {
      Found found = new Found();
      found.names = shape.keys().stream().map(key -> key.startsWith("#") ? "" : key).toList();
      found.byName = true;
      return found;
    }

    static Found above(List<String> lines, RowShape shape) {
      Found found = new Found();
      int first = shape.rows().get(0);
      for (int i = first - 1; i >= Math.max(0, first - LINES_ABOVE) && found.nameAt < 0; i--) {
        found.look(lines, i, shape);
      }
      if (found.nameAt < 0) {
        found.numbered(lines, shape);
      }
      return found;
    }

    private void look(List<String> lines, int i, RowShape shape) {
      String line = lines.get(i);
      if (line.isBlank() || line.length() > 4000) {
        return;
      }
      if (line.strip().matches("[-=_+| ]+")) {
        return; // a rule between names and rows
      }
      List<String> exact =
          shape.delimiter() == Delimiter.FIXED ? List.of() : names(lines, i, shape);
      boolean asUnits = exact.size() == shape.size() && areUnits(exact);
      boolean same = asUnits || exact.size() == shape.size() && isWords(exact);
      List<String> cells = same ? exact : otherwise(lines, i, shape);
      if (cells.size() == shape.size() && unitAt < 0 && areUnits(cells)) {
        unitAt = i;
        units = cells;
        return;
      }
      boolean parted = same && ",;|\t".indexOf(shape.delimiter().sign()) >= 0;
      boolean allNamed = parted && exact.stream().allMatch(c -> c.matches(".{2,40}"));
      boolean next =
          allNamed
              || same
                  && lines.subList(i + 1, shape.rows().get(0)).stream().allMatch(String::isBlank);
      if (cells.size() != shape.size()
          || !isWords(cells)
          || !speak(cells, next && !isRemark(line))) {
        return;
      }
      nameAt = i;
      names = cells;
      long named = cells.stream().filter(cell -> !cell.isEmpty()).count();
      long distinct = cells.stream().filter(cell -> !cell.isEmpty()).distinct().count();
      boolean marked = cells.stream().anyMatch(TableHead::isMark); // where a field would be
      byName = same && named == distinct && named > 1 && !marked;
      aboveNames(lines, shape);
    }

    /** The fields of a line as names, without what marks or leads it. */
    static List<String> names(List<String> lines, int line, RowShape shape) {
      List<String> cells = withoutMark(shape.cells(lines.get(line)), shape.size());
      List<String> bare = new ArrayList<>(withoutLead(cells, lines, shape));
      for (int i = 0; i < bare.size(); i++) {
        if (!bare.get(i).isEmpty()) {
          bare.set(i, TableHead.withoutMark(bare.get(i))); // a mark behind what leads the line
          break;
        }
      }
      return bare;
    }

    /** Whether most of the words are those of columns, and not of a sentence. */
    private static boolean speak(List<String> cells, boolean next) {
      long known =
          cells.stream()
              .map(Words::of)
              .filter(
                  w ->
                      w.hasAny(
                          "ra",
                          "dec",
                          "x",
                          "y",
                          "offset",
                          "pulse",
                          "time",
                          "elapsed",
                          "date",
                          "snr",
                          "flux",
                          "frame",
                          "event",
                          "statistic",
                          "place",
                          "east",
                          "west",
                          "north",
                          "south",
                          "other",
                          "run"))
              .count();
      long filled = cells.stream().filter(cell -> !cell.isEmpty()).count();
      boolean brief = cells.stream().noneMatch(cell -> Words.tokens(cell).size() > 6);
      return next
          ? known >= 2 || brief && filled == cells.size()
          : known * 2 > filled && known >= 3 && brief;
    }

    /** Names that stand twice are told apart by the line above them. */
    private void aboveNames(List<String> lines, RowShape shape) {
      long filled = names.stream().filter(n -> !n.isEmpty()).count();
      long distinct = names.stream().filter(n -> !n.isEmpty()).distinct().count();
      if (byName || nameAt == 0 || filled == distinct || lines.get(nameAt - 1).endsWith(".")) {
        return;
      }
      List<String> told = withoutMark(shape.cells(lines.get(nameAt - 1)), shape.size());
      List<String> above = withoutLead(told, lines, shape);
      boolean words =
          above.size() == shape.size()
              && above.stream().filter(c -> !c.isEmpty()).count() >= 2
              && above.stream().noneMatch(RowShape::startsAsNumber);
      if (words) {
        List<String> whole = new ArrayList<>();
        for (int i = 0; i < names.size(); i++) {
          whole.add((above.get(i) + " " + names.get(i)).strip());
        }
        names = whole;
      }
    }

    /** Words in front of all lines name no column. */
    private static List<String> withoutLead(
        List<String> cells, List<String> lines, RowShape shape) {
      if (cells.size() != shape.size()) {
        return cells;
      }
      List<String> bare = new ArrayList<>(cells);
      List<String> row = shape.cells(lines.get(shape.rows().get(0)));
      for (int i = 0; i < 4 && i < bare.size(); i++) {
        boolean leads =
            i < 3 && RowShape.look(bare.get(i)) == RowShape.Look.CLOCK
                || !bare.get(i).isEmpty() && bare.get(i).equals(row.get(i));
        if (leads) {
          bare.set(i, "");
        }
      }
      return bare;
    }

    /** Names parted by another sign than the fields, or standing above them. */
    private static List<String> otherwise(List<String> lines, int i, RowShape shape) {
      boolean columns =
          shape.delimiter() == Delimiter.BLANKS || shape.delimiter() == Delimiter.FIXED;
      String unled = TableHead.withoutLead(lines.get(i)).strip();
      List<List<String>> ways =
          List.of(Cells.of(unled, Delimiter.BLANKS, List.of()), List.of(unled.split(" {2,}|\\t+")));
      for (List<String> bare : columns ? ways : List.<List<String>>of()) {
        int less = shape.size() - bare.size();
        if (less > 0 && less <= 2 && isWords(bare) && leads(lines, shape, less)) {
          List<String> cells = new ArrayList<>(Collections.nCopies(less, ""));
          cells.addAll(bare);
          return cells;
        }
      }
      String line = TableHead.withoutMark(lines.get(i));
      List<String> texts = new ArrayList<>(List.of(line));
      int colon = line.indexOf(':');
      if (colon > 0 && colon < 30) {
        texts.add(line.substring(colon + 1));
      }
      for (String text : texts) {
        for (Delimiter other :
            List.of(
                Delimiter.SEMICOLON,
                Delimiter.TAB,
                Delimiter.PIPE,
                Delimiter.COMMA,
                Delimiter.BLANKS,
                Delimiter.ANY)) {
          List<String> cells = Cells.of(text, other, List.of());
          if (cells.size() == shape.size() && isWords(cells)) {
            return cells;
          }
        }
        List<String> wide = List.of(text.strip().split(" {2,}|\\t+"));
        if (wide.size() == shape.size() && isWords(wide)) {
          return wide;
        }
      }
      return columns ? aligned(lines, i, shape) : List.of();
    }

    /** Words that stand above the fields of most rows. */
    private static List<String> aligned(List<String> lines, int i, RowShape shape) {
      String line = lines.get(i);
      if (line.isEmpty() || line.endsWith(".")) {
        return List.of();
      }
      BitSet ink = new BitSet();
      int looked = Math.min(50, shape.rows().size());
      for (int r = 0; r < looked; r++) {
        String row = lines.get(shape.rows().get(r));
        for (int c = 0; c < row.length(); c++) {
          ink.set(c, ink.get(c) || row.charAt(c) != ' ');
        }
      }
      List<int[]> fields = new ArrayList<>();
      for (int from = ink.nextSetBit(0); from >= 0; ) {
        int to = ink.nextClearBit(from);
        fields.add(new int[] {from, to});
        from = ink.nextSetBit(to);
      }
      if (shape.delimiter() == Delimiter.FIXED) {
        fields.clear();
        int from = 0;
        for (int width : shape.widths()) {
          fields.add(new int[] {from, from + width});
          from += width;
        }
      }
      if (fields.size() != shape.size()
          || SIGNS.indexOf(line.charAt(0)) >= 0 && line.length() < 3) {
        return List.of();
      }
      List<StringBuilder> names = new ArrayList<>();
      fields.forEach(field -> names.add(new StringBuilder()));
      Matcher word = Pattern.compile("\\S+").matcher(line);
      while (word.find()) {
        if (isMark(word.group()) && names.stream().allMatch(name -> name.length() < 2)) {
          continue;
        }
        int best = 0;
        double least = Double.MAX_VALUE;
        for (int f = 0; f < fields.size(); f++) {
          int[] field = fields.get(f);
          int shared = Math.min(field[1], word.end()) - Math.max(field[0], word.start());
          double away = -shared + 0.01 * Math.abs(field[0] + field[1] - word.start() - word.end());
          if (away < least) {
            least = away;
            best = f;
          }
        }
        names.get(best).append(names.get(best).length() == 0 ? "" : " ").append(word.group());
      }
      return names.stream().map(StringBuilder::toString).toList();
    }

    /** A legend that gives each column by its number. */
    private void numbered(List<String> lines, RowShape shape) {
      int size = shape.size();
      TreeMap<Integer, String> told = new TreeMap<>();
      for (String line : lines.subList(0, Math.min(200, lines.size()))) {
        for (String part : TableHead.withoutLead(line).split("[;|]|,(?=\\s)")) {
          Matcher entry = NUMBERED.matcher(part);
          int number = entry.matches() ? Integer.parseInt(entry.group(1)) : -1;
          boolean begins = number == 0 || number == 1 && !told.containsKey(0);
          if (begins && told.size() < size - 2) {
            told.clear();
          }
          if (begins || !told.isEmpty() && number == told.lastKey() + 1) {
            told.putIfAbsent(number, entry.group(2).strip()); // others count something else
          }
        }
      }
      int first = told.isEmpty() ? 1 : told.firstKey();
      int nameless = size - told.size();
      boolean all = first <= 1 && !told.isEmpty() && told.lastKey() == first + told.size() - 1;
      if (all
          && (nameless == 0 || nameless > 0 && nameless <= 2 && leads(lines, shape, nameless))) {
        List<String> row = shape.cells(lines.get(shape.rows().get(0)));
        boolean behind = row.subList(size - nameless, size).stream().allMatch(String::isEmpty);
        names = new ArrayList<>(Collections.nCopies(behind ? 0 : nameless, ""));
        names.addAll(told.values());
        names.addAll(Collections.nCopies(behind ? nameless : 0, ""));
      }
    }

    /**
     * Whether the first fields are a time or the same word in all rows, which a legend leaves out.
     */
    private static boolean leads(List<String> lines, RowShape shape, int count) {
      List<String> one = shape.cells(lines.get(shape.rows().get(0)));
      List<String> other = shape.cells(lines.get(shape.rows().get(1)));
      boolean bracket = lines.get(shape.rows().get(0)).stripLeading().startsWith("[");
      for (int i = 0; i < count; i++) {
        boolean word =
            one.get(i).equals(other.get(i)) && RowShape.look(one.get(i)) == RowShape.Look.WORD;
        if (!word && !bracket && RowShape.look(one.get(i)) != RowShape.Look.CLOCK) {
          return false;
        }
      }
      return true;
    }

    private static List<String> withoutMark(List<String> cells, int size) {
      if (cells.isEmpty()) {
        return cells;
      }
      List<String> bare = new ArrayList<>(cells);
      bare.set(0, TableHead.withoutMark(bare.get(0)));
      for (int i = 0; i < 2 && bare.size() > size; i++) {
        if (isMark(cells.get(i))) {
          bare.remove(i);
        }
      }
      return bare;
    }
  }

  static LinePattern beginningOf(String line) {
    String text = line.stripLeading();
    return LinePattern.of(
        "^\\s*"
            + LinePattern.quoted(text.substring(0, Math.min(60, text.length())))
                .replace("\t", "\\t"));
  }

  /** Whether a field is nothing but the sign of a remark. */
  static boolean isMark(String cell) {
    return !cell.isEmpty() && withoutMark(cell).isEmpty();
  }

  /** A text without the sign of a remark in front. */
  static String withoutMark(String text) {
    int at = 0;
    while (text.startsWith("--") && at < text.length() && text.charAt(at) == '-') {
      at++;
    }
    while (at < text.length() && (SIGNS.indexOf(text.charAt(at)) >= 0 || text.charAt(at) == ' ')) {
      at++;
    }
    return text.substring(at);
  }

  private static final Pattern LEAD =
      Pattern.compile(
          "^(?:\\[[^\\]]{1,40}\\]|\\([0-9][^)]{1,40}\\)|[0-9]{4}-?[0-9]{2}-?[0-9]{2}[T ][0-9:.,]{6,15}Z?|\\p{Lu}{3,8}:?(?= {2,}|\\t)"
              + "|\\p{Lu}(?=[ ,;|\\t]))[ ,;|\\t]+");

  /** A line of JSON that holds one text. */
  private static final Pattern JSON_REMARK =
      Pattern.compile("\\s*\\{\\s*\"[^\"]*\"\\s*:\\s*\"(.*)\"\\s*\\}\\s*");

  /** A sentence without what leads every line, such as a time in brackets or a level. */
  static String withoutLead(String line) {
    Matcher remark = JSON_REMARK.matcher(line);
    String rest = remark.matches() ? remark.group(1) : withoutMark(line);
    for (int i = 0; i < 3; i++) {
      Matcher lead = LEAD.matcher(rest);
      if (!lead.find()) {
        break;
      }
      rest = withoutMark(rest.substring(lead.end()));
    }
    return rest;
  }

  static boolean isWords(List<String> cells) {
    List<String> filled = cells.stream().filter(c -> !c.isEmpty()).toList();
    List<String> words = filled.stream().filter(c -> Numbers.of(c, true).isEmpty()).toList();
    long distinct = words.stream().distinct().count();
    boolean most = distinct * 3 >= cells.size() * 2L;
    boolean all = words.equals(filled) && filled.size() * 2 >= cells.size();
    return (most || all)
        && distinct >= 2
        && cells.stream().noneMatch(RowShape::startsAsNumber)
        && cells.stream().allMatch(c -> c.length() <= 80)
        && cells.stream().filter(c -> c.chars().anyMatch(Character::isLetter)).count() * 3
            >= cells.size();
  }

  static boolean areUnits(List<String> cells) {
    long units = cells.stream().filter(cell -> Words.unit(cell).isPresent()).count();
    return units * 2 >= cells.stream().filter(c -> c.length() > 1).count() && units >= 2;
  }

  /** Whether a line begins as rows never do. */
  static boolean isRemark(String line) {
    return !line.isEmpty() && SIGNS.indexOf(line.charAt(0)) >= 0;
  }

  private static Optional<LinePattern> remark(
      List<String> between, List<String> lines, RowShape shape) {
    Set<Character> signs = new TreeSet<>();
    for (String line : between) {
      if (isRemark(line)) {
        signs.add(line.charAt(0));
      }
    }
    for (int row : shape.rows()) {
      if (!lines.get(row).isEmpty()) {
        signs.remove(lines.get(row).charAt(0));
      }
    }
    if (signs.isEmpty()) {
      return Optional.empty();
    }
    StringBuilder all = new StringBuilder();
    signs.forEach(all::append);
    return Optional.of(LinePattern.of("^[" + all + "]"));
  }

  /** The lines before the first row. */
  List<String> header() {
    return others.subList(0, others.size() - between.size());
  }

  /** Words of columns in rows that stand under names in another order. */
  private void takeWordsElsewhere(List<String> lines, RowShape shape, List<Column> columns) {
    List<String> order = nameCells;
    Set<Integer> own = new HashSet<>(shape.rows());
    for (int i = shape.rows().get(0); byName && nameLine >= 0 && i < lines.size(); i++) {
      String line = lines.get(i);
      if (own.contains(i) || line.length() > 4000 || shape.delimiter().isKeyed()) {
        continue;
      }
      if (isNames(lines, i, shape, nameCells)) {
        order = Found.names(lines, i, shape);
      } else if (!order.equals(nameCells)) {
        List<String> cells = shape.cells(line);
        for (int c = 0; c < cells.size() && cells.size() == order.size(); c++) {
          int at = nameCells.indexOf(order.get(c));
          if (at >= 0 && !order.get(c).isEmpty()) {
            columns.get(at).holdsElsewhere(cells.get(c));
          }
        }
      }
    }
  }

  /** The columns with their values. */
  List<Column> columns(List<String> lines, RowShape shape) {
    int size = shape.size();
    List<List<String>> cells = new ArrayList<>();
    for (int c = 0; c < size; c++) {
      cells.add(new ArrayList<>(shape.rows().size()));
    }
    for (int row : shape.rows()) {
      List<String> fields = shape.cells(lines.get(row));
      for (int c = 0; c < size; c++) {
        cells.get(c).add(fields.get(c));
      }
    }
    List<Column> columns = new ArrayList<>();
    int nameless = 0;
    String before = "";
    for (int c = 0; c < size; c++) {
      String name = c < nameCells.size() ? nameCells.get(c) : "";
      String unit = c < unitCells.size() ? Words.unit(unitCells.get(c)).orElse("") : "";
      boolean keyless = shape.delimiter().isKeyed() && shape.keys().get(c).startsWith("#");
      nameless = keyless ? Integer.parseInt(shape.keys().get(c).substring(1)) : nameless;
      Column column =
          new Column(
              keyless ? nameless : c + 1,
              name,
              byName && !name.isEmpty(),
              unit,
              cells.get(c),
              shape.decimalComma());
      String word = column.onlyWord();
      if (name.isEmpty() && !columns.isEmpty()) {
        columns.get(columns.size() - 1).unitBehind(column.unitWord());
      }
      boolean words = !word.isEmpty() && Words.unit(word).isEmpty();
      if (nameCells.isEmpty() && !before.isEmpty() && !words) {
        column.describe(before);
      }
      before = words ? (before + " " + word).strip() : column.numeric > 0 ? "" : before;
      columns.add(column);
    }
    columns.forEach(column -> column.pairWith(columns));
    takeWordsElsewhere(lines, shape, columns);
    return columns;
  }
}
