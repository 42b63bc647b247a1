package io.github.roundstar.ingest.layout.evidence;

import io.github.roundstar.ingest.layout.Direction;
import io.github.roundstar.ingest.layout.text.Numbers;
import io.github.roundstar.ingest.layout.text.Words;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * What the codes for directions in a column stand for, such as E and W, or plus and minus.
 *
 * @param axis 'r' or 'd'; a blank where nothing tells
 * @param toward codes for east or north; for one way, where nobody knows
 * @param away codes for the opposite
 * @param known whether they name directions on the sky
 */
public record Codes(char axis, Set<String> toward, Set<String> away, boolean known) {
  public static Optional<Codes> of(Set<String> values, LogSentences text, boolean bare) {
    Set<String> toward = new LinkedHashSet<>();
    Set<String> away = new LinkedHashSet<>();
    Set<String> unknown = new LinkedHashSet<>();
    boolean dec = false;
    boolean ra = false;
    boolean told = false;
    for (String value : values) {
      Optional<Direction> to =
          text.direction(value).or(() -> Words.of(value).direction(text.eastIsO()));
      told |= to.isPresent();
      if (to.isPresent()) {
        dec |= to.get() == Direction.NORTH || to.get() == Direction.SOUTH;
        ra |= to.get() == Direction.EAST || to.get() == Direction.WEST;
        (to.get().sign() > 0 ? toward : away).add(value);
      } else if (!isNone(value) && !value.equals("-")) {
        unknown.add(value);
      }
    }
    if (told) {
      return dec != ra && unknown.isEmpty()
          ? Optional.of(new Codes(dec ? 'd' : 'r', toward, away, true))
          : Optional.empty();
    }
    return bare ? signs(values, unknown) : Optional.empty();
  }

  /** Two codes that name nothing: plus and minus, or any two. */
  private static Optional<Codes> signs(Set<String> values, Set<String> unknown) {
    Set<String> plus = new LinkedHashSet<>();
    Set<String> minus = new LinkedHashSet<>();
    List<String> others = new ArrayList<>();
    for (String value : values) {
      if (value.equals("+") || value.equals("+1") || value.equals("1") || value.equals("1.0")) {
        plus.add(value);
      } else if (value.equals("-")
          || value.equals("\u2212")
          || value.equals("-1")
          || value.equals("\u22121")
          || value.equals("-1.0")) {
        minus.add(value);
      } else if (!isNone(value)) {
        others.add(value);
      }
    }
    if (others.isEmpty() && plus.size() + minus.size() > 0) {
      return Optional.of(new Codes(' ', plus, minus, false));
    }
    return unknown.size() == 2 && others.size() == 2
        ? Optional.of(new Codes(' ', Set.of(others.get(0)), Set.of(others.get(1)), false))
        : Optional.empty();
  }

  private static boolean isNone(String value) {
    return value.equals("0") || !value.equals("-") && Numbers.isNoValue(value) || value.equals(".");
  }

  /**
   * Whether the letter O stands for east beside W (Ost, oost), and not for west beside E (ouest),
   * by the letters and words of a log.
   */
  public static boolean eastIsO(List<Column> columns, List<String> others) {
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
