package io.github.roundstar.ingest.layout;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.formats.NearestName;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Where in a row each column of a layout stands; told anew by each line of names. */
final class ColumnPlaces {
  private final String file;
  private final Layout layout;
  private final int[] places = new int[Meaning.values().length];
  private final ColumnRule[] rules = new ColumnRule[places.length];
  private int named;
  private int furthest;

  ColumnPlaces(String file, Layout layout) {
    this.file = file;
    this.layout = layout;
    Arrays.fill(places, -1);
    for (ColumnRule rule : layout.columns()) {
      if (rule.at().isPresent()) {
        place(rule, rule.at().getAsInt() - 1);
      }
    }
  }

  /** Takes the places of named columns from a line of names. */
  void take(List<String> names, long line) throws FormatException {
    named = names.size();
    for (ColumnRule rule : layout.columns()) {
      if (rule.name().isPresent()) {
        int at = names.indexOf(rule.name().get());
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

  private void place(ColumnRule rule, int at) {
    if (rule.means() != Meaning.NOTHING) {
      places[rule.means().ordinal()] = at;
      rules[rule.means().ordinal()] = rule;
      furthest = Math.max(furthest, at);
    }
  }

  /** Whether the field of the time begins as a time does. */
  boolean looksLikeRow(List<String> cells) {
    int at = places[Meaning.TIME.ordinal()];
    if (at < 0 || at >= cells.size() || cells.get(at).isEmpty()) {
      return false;
    }
    char first = cells.get(at).charAt(0);
    return first >= '0' && first <= '9' || first == '-' || first == '.' || first == '+';
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
    boolean missing = text.isEmpty() || rules[meaning.ordinal()].missing().contains(text);
    return missing ? Optional.empty() : Optional.of(text);
  }
}
