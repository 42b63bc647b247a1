package io.github.roundstar.ingest.layout.text;

import io.github.roundstar.ingest.layout.Decision;
import io.github.roundstar.ingest.layout.Delimiter;
import io.github.roundstar.ingest.layout.RunMarks.Block;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Tables in a log that have columns of their own and are no frames, such as trial moves between
 * runs. A few short ones between lines that show where they end are left out, and that is said; all
 * others are asked about.
 */
public final class OtherTables {
  /** More rows than this share of all are no side matter, such as a few trial moves. */
  private static final double MOST_SHARE = 0.2;

  private static final int FEWEST_ROWS = 2;
  private static final int SHORTEST_PAIR = 4;
  private static final Pattern END =
      Pattern.compile("(?i)\\b(?:end|ends|ended|done|over|finished)");

  private final List<String> lines;
  private final RowShape shape;
  private final List<Decision> decisions;
  private final List<Block> blocks = new ArrayList<>();
  private final BitSet leftOut = new BitSet();

  /** A table: its line of names, its rows, and the line behind them. */
  private record Table(int names, int rows, int end) {}

  public OtherTables(List<String> lines, RowShape shape, List<Decision> decisions) {
    this.lines = lines;
    this.shape = shape;
    this.decisions = decisions;
    Map<String, List<Table>> byNames = tables();
    String main = main(byNames);
    int all = byNames.values().stream().mapToInt(OtherTables::rows).sum();
    byNames.forEach(
        (names, tables) -> {
          if (!names.equals(main)) {
            decide(names, tables, main, all);
          }
        });
  }

  /** What is left out. */
  public List<Block> blocks() {
    return blocks;
  }

  /** The lines with what is left out as blank lines, so that each keeps its place. */
  public List<String> linesLeft() {
    List<String> left = new ArrayList<>(lines);
    leftOut.stream().forEach(i -> left.set(i, ""));
    return List.copyOf(left);
  }

  private Map<String, List<Table>> tables() {
    Map<String, List<Table>> byNames = new LinkedHashMap<>();
    for (int i = 0; i < lines.size(); i++) {
      List<String> names = cells(i);
      if (names.size() >= 3 && TableHead.isWords(names) && !TableHead.areUnits(names)) {
        int first = i + 1 < lines.size() && TableHead.areUnits(cells(i + 1)) ? i + 2 : i + 1;
        int end = first;
        while (end < lines.size() && isRow(cells(end), names.size())) {
          end++;
        }
        if (end - first >= FEWEST_ROWS) {
          String key =
              byNames.keySet().stream()
                  .filter(known -> TableHead.areSameNames(shape.cells(known), names))
                  .findFirst()
                  .orElse(lines.get(i));
          byNames
              .computeIfAbsent(key, any -> new ArrayList<>())
              .add(new Table(i, end - first, end));
        }
      }
    }
    return byNames;
  }

  private List<String> cells(int line) {
    return shape.delimiter() == Delimiter.FIXED || shape.delimiter().isKeyed()
        ? List.of()
        : shape.cells(lines.get(line));
  }

  private static boolean isRow(List<String> cells, int size) {
    return cells.size() == size && Look.startsAsNumber(cells.get(0));
  }

  /** The names of the frames: those that speak of time and place, and have the most rows. */
  private String main(Map<String, List<Table>> byNames) {
    String main = "";
    boolean spoken = false;
    int most = 0;
    for (Map.Entry<String, List<Table>> entry : byNames.entrySet()) {
      boolean fits = cells(entry.getValue().get(0).names()).size() == shape.size();
      boolean speaks = mayBeFrames(entry.getValue().get(0));
      boolean more = rows(entry.getValue()) > most;
      if (fits && (speaks == spoken ? more : speaks)) {
        spoken = speaks;
        most = rows(entry.getValue());
        main = entry.getKey();
      }
    }
    return main;
  }

  private static int rows(List<Table> tables) {
    return tables.stream().mapToInt(Table::rows).sum();
  }

  private void decide(String names, List<Table> tables, String main, int all) {
    Optional<Block> block = block(names, tables, main);
    boolean few = rows(tables) < MOST_SHARE * Math.max(all, shape.rows().size());
    boolean unlike = !main.isEmpty() || cells(tables.get(0).names()).size() != shape.size();
    if (unlike && block.isPresent() && few && !mayBeFrames(tables.get(0))) {
      blocks.add(block.get());
      decisions.add(Decision.certain("left out", said(names, tables), "a table of other columns"));
      tables.forEach(table -> leaveOut(table, block.get()));
    } else if (!main.isEmpty()) {
      decisions.add(
          Decision.open(
              "table in line " + (tables.get(0).names() + 1),
              said(names, tables) + ": it may be frames or something else, or its end is not told",
              "[[leave_out]]\nfrom = '"
                  + TableHead.beginningOf(names).expression()
                  + "'\nto = '...'   # pattern of its last line, if it is no frames"));
    }
  }

  private static String said(String names, List<Table> tables) {
    String text = names.strip().replaceAll("\\p{Cntrl}", " ");
    return String.format(
        Locale.ROOT,
        "a table of %d rows and columns \"%s\"%s",
        tables.get(0).rows(),
        text.substring(0, Math.min(80, text.length())),
        tables.size() == 1 ? "" : ", " + tables.size() + " times");
  }

  private boolean mayBeFrames(Table table) {
    List<Words> words = cells(table.names()).stream().map(Words::of).toList();
    return words.stream().anyMatch(w -> w.hasAny("time", "elapsed"))
        && words.stream().anyMatch(w -> w.hasAny("ra", "x", "east", "west"))
        && words.stream().anyMatch(w -> w.hasAny("dec", "y", "north", "south"));
  }

  /** From a pair of lines around the tables, or from their names up to a line of another kind. */
  private Optional<Block> block(String names, List<Table> tables, String main) {
    Optional<Block> pair = pair(tables);
    boolean endsTold = tables.stream().allMatch(table -> endsTold(table, main));
    return pair.isPresent() || !endsTold
        ? pair
        : Optional.of(new Block(TableHead.beginningOf(names), Optional.empty()));
  }

  private boolean endsTold(Table table, String main) {
    if (table.end() >= lines.size()) {
      return true;
    }
    String line = lines.get(table.end());
    return line.isBlank() || line.equals(main) || TableHead.isRemark(line);
  }

  private Optional<Block> pair(List<Table> tables) {
    Map<String, Integer> pairs = new HashMap<>();
    for (Table table : tables) {
      pairs.merge(pairWords(table), 1, Integer::sum);
    }
    String words = pairWords(tables.get(0));
    if (words.isEmpty() || pairs.size() > 1) {
      return Optional.empty();
    }
    Table first = tables.get(0);
    return Optional.of(
        new Block(
            RunLines.mark(RunLines.beginning(lines.get(first.names() - 1))),
            Optional.of(RunLines.mark(RunLines.beginning(lines.get(first.end()))))));
  }

  /**
   * What the lines before and behind a table have in common, if the one behind speaks of an end.
   */
  private String pairWords(Table table) {
    if (table.names() == 0 || table.end() >= lines.size()) {
      return "";
    }
    String before = RunLines.beginning(lines.get(table.names() - 1));
    String behind = RunLines.beginning(lines.get(table.end()));
    int same = 0;
    while (same < Math.min(before.length(), behind.length())
        && before.charAt(same) == behind.charAt(same)) {
      same++;
    }
    boolean speaks = END.matcher(behind).find() && !END.matcher(before).find();
    return speaks && same >= SHORTEST_PAIR ? before + "\n" + behind : "";
  }

  private void leaveOut(Table table, Block block) {
    boolean pair = block.to().isPresent();
    leftOut.set(table.names() - (pair ? 1 : 0), table.end() + (pair ? 1 : 0));
  }
}
