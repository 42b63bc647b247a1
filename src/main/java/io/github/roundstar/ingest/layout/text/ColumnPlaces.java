package io.github.roundstar.ingest.layout.text;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.formats.NearestName;
import io.github.roundstar.ingest.layout.ColumnRule;
import io.github.roundstar.ingest.layout.Delimiter;
import io.github.roundstar.ingest.layout.Layout;
import io.github.roundstar.ingest.layout.Meaning;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Where in a row each column of a layout stands; told anew by each line of names. */
final class ColumnPlaces {
  private final String file;
  private final Layout layout;
  private final int[] places = new int[Meaning.values().length];
  private final ColumnRule[] rules = new ColumnRule[places.length];
  private final boolean keyed;
  private int named;
  private int furthest;

  ColumnPlaces(String file, Layout layout) {
    this.file = file;
    this.layout = layout;
    this.keyed = layout.text().delimiter().isKeyed();
    Arrays.fill(places, -1);
    for (ColumnRule rule : layout.columns()) {
      if (rule.at().isPresent()) {
        place(rule, rule.at().getAsInt() - 1);
      }
    }
  }

  /** Takes the places of named columns from a line of names. */
  void take(List<String> told, long line) throws FormatException {
    List<String> names = new ArrayList<>(told);
    for (int i = Math.min(1, names.size() - 1); i >= 0; i--) {
      if (TableHead.isMark(names.get(i))) {
        names.remove(i);
      }
    }
    named = names.size();
    for (ColumnRule rule : layout.columns()) {
      if (rule.name().isPresent()) {
        int at = place(rule.name().get(), names);
        if (at < 0) {
          throw new FormatException(
              file,
              line,
              "no column is called '"
                  + rule.name().get()
                  + "'"
                  + NearestName.of(rule.name().get(), names)
                      .map(name -> ", the nearest is '" + name + "'")
                      .orElse(""),
              "correct the name in the layout");
        }
        place(rule, at);
      }
    }
  }

  /** A line of names may begin with the sign of a remark. */
  private static int place(String name, List<String> names) {
    int at = names.indexOf(name);
    for (int i = 0; i < names.size() && at < 0; i++) {
      at = TableHead.withoutMark(names.get(i)).equals(name) ? i : -1;
    }
    boolean markIsField =
        at < 0 && !names.isEmpty() && TableHead.withoutMark(names.get(0)).isEmpty();
    return markIsField ? names.subList(1, names.size()).indexOf(name) : at;
  }

  /** The fields of a keyed row in the order of the layout's columns. */
  List<String> take(Map<String, String> fields) {
    List<String> cells = new ArrayList<>();
    for (ColumnRule rule : layout.columns()) {
      String key = rule.name().orElse("#" + rule.at().orElse(0));
      rules[rule.means().ordinal()] = rule;
      places[rule.means().ordinal()] = cells.size();
      cells.add(fields.getOrDefault(key, ""));
    }
    return cells;
  }

  private void place(ColumnRule rule, int at) {
    if (rule.means() != Meaning.NOTHING) {
      places[rule.means().ordinal()] = at;
      rules[rule.means().ordinal()] = rule;
      furthest = Math.max(furthest, at);
    }
  }

  /**
   * Whether a line is a row, be it torn or garbled: the field of the time begins as a time does,
   * and of the fields that hold numbers as many are numbers as a row would have.
   */
  boolean looksLikeRow(List<String> cells) {
    int date = places[Meaning.DATE.ordinal()];
    if (!beginsAsNumber(cells, places[Meaning.TIME.ordinal()])
        || date >= 0 && !beginsAsNumber(cells, date)) {
      return false;
    }
    int numbers = 0;
    int real = 0;
    int texts = 0;
    int there = 0;
    for (int m = 0; m < places.length; m++) {
      Meaning meaning = Meaning.values()[m];
      if (rules[m] == null || meaning.units().isEmpty() || places[m] >= cells.size()) {
        continue;
      }
      String cell = cells.get(places[m]);
      boolean none = Numbers.isNoValue(cell) || rules[m].missing().contains(cell);
      boolean number = none || beginsOrEndsAsNumber(cell);
      there += cell.isEmpty() ? 0 : 1;
      numbers += number ? 1 : 0;
      real += number && !none ? 1 : 0;
      texts += number ? 0 : 1;
    }
    numbers = texts > 0 ? real : numbers; // a line of words between strokes is no row
    boolean whole = sizeWanted(cells).isEmpty();
    boolean fixed = layout.text().delimiter() == Delimiter.FIXED;
    String time = cells.get(places[Meaning.TIME.ordinal()]);
    if (fixed && real == 0 && time.chars().filter(Character::isDigit).count() < 5) {
      return false; // words cut into fields
    }
    if (keyed) {
      boolean pairs = layout.text().joins().isPresent(); // the first of its lines may hold no more
      return (there > 0 || pairs) && numbers >= texts;
    }
    return whole ? numbers >= texts : numbers > 0 && texts == 0 || numbers > 2 * texts;
  }

  private static boolean beginsOrEndsAsNumber(String cell) {
    char last = cell.charAt(cell.length() - 1);
    return cell.length() <= 24
        && (Look.startsAsNumber(cell) || last >= '0' && last <= '9' && cell.indexOf(' ') < 0);
  }

  private static boolean beginsAsNumber(List<String> cells, int at) {
    if (at < 0 || at >= cells.size() || cells.get(at).isEmpty()) {
      return false;
    }
    char first = cells.get(at).charAt(0);
    return first >= '0' && first <= '9'
        || "-.+".indexOf(first) >= 0
        || Words.month(cells.get(at).split("[^\\p{L}]", 2)[0]) > 0;
  }

  /** How many fields the row should have, if it has too few or too many. */
  Optional<Integer> sizeWanted(List<String> cells) {
    if (cells.size() <= furthest) {
      return Optional.of(Math.max(named, furthest + 1));
    }
    for (int i = Math.max(named, 1); named > 0 && i < cells.size(); i++) {
      if (!cells.get(i).isEmpty()) {
        return Optional.of(named);
      }
    }
    return Optional.empty();
  }

  Optional<String> cell(List<String> cells, Meaning meaning) {
    int at = places[meaning.ordinal()];
    if (at < 0 || at >= cells.size()) {
      return Optional.empty();
    }
    String text = cells.get(at);
    ColumnRule rule = rules[meaning.ordinal()];
    boolean code = meaning.isLetter() || meaning == Meaning.EVENT || meaning.isFlag();
    boolean missing =
        text.isEmpty() || rule.missing().contains(text) || !code && Numbers.isNoValue(text);
    return missing ? Optional.empty() : Optional.of(text);
  }
}
