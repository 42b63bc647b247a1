package io.github.roundstar.ingest.layout.text;

import io.github.roundstar.ingest.layout.Delimiter;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The names and units of columns, and where they were found: above the rows, in one line or two, or
 * in a legend by their numbers.
 */
public final class ColumnNames {
  private static final int LINES_ABOVE = 12;
  private static final Pattern NUMBERED =
      Pattern.compile(
          "^[^\\p{L}0-9]*(?:\\p{L}{1,12}[.:]? *){0,2}([0-9]{1,3})(?: ?[:=.)-]+ ?| +)(\\p{L}.*)$");

  /** A name that has more words is a sentence. */
  private static final int MOST_WORDS = 10;

  int nameAt = -1;
  int unitAt = -1;
  List<String> names = List.of();
  List<String> units = List.of();
  boolean byName;

  static ColumnNames keyed(RowShape shape) {
    ColumnNames found = new ColumnNames();
    found.names = shape.keys().stream().map(key -> key.startsWith("#") ? "" : key).toList();
    found.byName = true;
    return found;
  }

  static ColumnNames above(List<String> lines, RowShape shape) {
    ColumnNames found = new ColumnNames();
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
    List<String> exact = shape.delimiter() == Delimiter.FIXED ? List.of() : names(lines, i, shape);
    boolean asUnits = exact.size() == shape.size() && TableHead.areUnits(exact);
    boolean same = asUnits || exact.size() == shape.size() && TableHead.isWords(exact);
    List<String> cells = same ? exact : otherwise(lines, i, shape);
    if (cells.size() == shape.size() && unitAt < 0 && TableHead.areUnits(cells)) {
      unitAt = i;
      units = cells;
      return;
    }
    boolean parted = same && ",;|\t".indexOf(shape.delimiter().sign()) >= 0;
    boolean allNamed = parted && exact.stream().allMatch(c -> c.matches(".{2,40}"));
    boolean next =
        allNamed
            || same && lines.subList(i + 1, shape.rows().get(0)).stream().allMatch(String::isBlank);
    if (cells.size() != shape.size()
        || !TableHead.isWords(cells)
        || !speak(cells, next && !TableHead.isRemark(line))) {
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
  public static List<String> names(List<String> lines, int line, RowShape shape) {
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
    boolean brief = cells.stream().noneMatch(cell -> Words.tokens(cell).size() > MOST_WORDS);
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
            && above.stream().noneMatch(Look::startsAsNumber);
    if (words) {
      List<String> whole = new ArrayList<>();
      for (int i = 0; i < names.size(); i++) {
        whole.add((above.get(i) + " " + names.get(i)).strip());
      }
      names = whole;
    }
  }

  /** Words in front of all lines name no column. */
  static List<String> withoutLead(List<String> cells, List<String> lines, RowShape shape) {
    if (cells.size() != shape.size()) {
      return cells;
    }
    List<String> bare = new ArrayList<>(cells);
    List<String> row = shape.cells(lines.get(shape.rows().get(0)));
    for (int i = 0; i < 4 && i < bare.size(); i++) {
      boolean leads =
          i < 3 && Look.of(bare.get(i)) == Look.CLOCK
              || !bare.get(i).isEmpty() && bare.get(i).equals(row.get(i));
      if (leads) {
        bare.set(i, "");
      }
    }
    return bare;
  }

  /** Names parted by another sign than the fields, or standing above them. */
  private static List<String> otherwise(List<String> lines, int i, RowShape shape) {
    boolean columns = shape.delimiter() == Delimiter.BLANKS || shape.delimiter() == Delimiter.FIXED;
    String unled = TableHead.withoutLead(lines.get(i)).strip();
    List<List<String>> ways =
        List.of(Cells.of(unled, Delimiter.BLANKS, List.of()), List.of(unled.split(" {2,}|\\t+")));
    for (List<String> bare : columns ? ways : List.<List<String>>of()) {
      int less = shape.size() - bare.size();
      if (less > 0 && less <= 2 && TableHead.isWords(bare) && leads(lines, shape, less)) {
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
        boolean blanks = other == Delimiter.BLANKS || other == Delimiter.ANY;
        boolean sentence = blanks && cells.stream().anyMatch(ColumnNames::joinsWords);
        if (cells.size() == shape.size() && TableHead.isWords(cells) && !sentence) {
          return cells;
        }
      }
      List<String> wide = List.of(text.strip().split(" {2,}|\\t+"));
      if (wide.size() == shape.size() && TableHead.isWords(wide)) {
        return wide;
      }
    }
    return columns ? aligned(lines, i, shape) : List.of();
  }

  /** Whether a word is one of a sentence, such as an article, and names nothing. */
  private static boolean joinsWords(String cell) {
    return cell.length() == 3
        && cell.equals(cell.toLowerCase(Locale.ROOT))
        && Words.of(cell).isJust("of what");
  }

  /** Words that stand above the fields of most rows. */
  private static List<String> aligned(List<String> lines, int i, RowShape shape) {
    String line = lines.get(i);
    boolean moved = // by a mark, so that the words no longer stand above their fields
        TableHead.isRemark(TableHead.withoutLead(line)) || TableHead.isRemark(line.strip());
    if (line.isEmpty()
        || line.endsWith(".")
        || moved && lines.get(shape.rows().get(0)).startsWith(" ")) {
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
        || TableHead.SIGNS.indexOf(line.charAt(0)) >= 0 && line.length() < 3) {
      return List.of();
    }
    List<StringBuilder> names = new ArrayList<>();
    fields.forEach(field -> names.add(new StringBuilder()));
    Matcher word = Pattern.compile("\\S+").matcher(line);
    while (word.find()) {
      if (TableHead.isMark(word.group()) && names.stream().allMatch(name -> name.length() < 2)) {
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
    List<String> told = names.stream().map(StringBuilder::toString).toList();
    boolean unitAlone = told.stream().anyMatch(n -> n.length() > 1 && Words.unit(n).isPresent());
    return unitAlone ? List.of() : told; // the words stand beside their fields
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
    if (all && (nameless == 0 || nameless > 0 && nameless <= 2 && leads(lines, shape, nameless))) {
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
      boolean word = one.get(i).equals(other.get(i)) && Look.of(one.get(i)) == Look.WORD;
      if (!word && !bracket && Look.of(one.get(i)) != Look.CLOCK) {
        return false;
      }
    }
    return true;
  }

  static List<String> withoutMark(List<String> cells, int size) {
    if (cells.isEmpty()) {
      return cells;
    }
    List<String> bare = new ArrayList<>(cells);
    bare.set(0, TableHead.withoutMark(bare.get(0)));
    for (int i = 0; i < 2 && bare.size() > size; i++) {
      if (TableHead.isMark(cells.get(i))) {
        bare.remove(i);
      }
    }
    return bare;
  }
}
