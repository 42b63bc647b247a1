package io.github.roundstar.ingest.layout;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** The letters of a log's compass: O is east beside W (Ost, oost), and west beside E (ouest). */
final class Compass {
  private Compass() {}

  /** Whether the letter O stands for east, by the letters and words that stand beside it. */
  static boolean eastIsO(List<Column> columns, List<String> others) {
    Set<String> letters = new HashSet<>();
    for (Column column : columns) {
      letters.addAll(column.named().tokens());
      column.letters.keySet().forEach(word -> letters.add(word.toLowerCase(Locale.ROOT)));
      if (column.numeric == 0 && column.words.size() <= 4) {
        column.words.forEach(word -> letters.add(word.toLowerCase(Locale.ROOT)));
      }
    }
    if (letters.contains("o") && (letters.contains("w") || letters.contains("e"))) {
      return letters.contains("w");
    }
    for (String line : others.subList(0, Math.min(200, others.size()))) {
      letters.addAll(Words.tokens(line));
    }
    return letters.contains("ost") || letters.contains("oost") || letters.contains("osten");
  }
}
