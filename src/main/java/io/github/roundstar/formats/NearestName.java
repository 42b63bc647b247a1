package io.github.roundstar.formats;

import java.util.Collection;
import java.util.Comparator;
import java.util.Optional;

/** Finds the known name that a mistyped one probably means. */
public final class NearestName {
  private static final int LONGEST = 64;

  private NearestName() {}

  /**
   * The known name with the smallest edit distance; of equals, the first in order of the alphabet.
   *
   * @return empty where nothing is known
   */
  public static Optional<String> of(String name, Collection<String> known) {
    String head = name.substring(0, Math.min(name.length(), LONGEST));
    return known.stream()
        .min(
            Comparator.<String>comparingInt(candidate -> distance(head, candidate))
                .thenComparing(Comparator.naturalOrder()));
  }

  /**
   * Fewest insertions, deletions and replacements that turn one into the other.
   *
   * @see "Wagner &amp; Fischer (1974), J. ACM 21, 168, doi:10.1145/321796.321811"
   */
  static int distance(String one, String other) {
    int[] row = new int[other.length() + 1];
    for (int j = 0; j <= other.length(); j++) {
      row[j] = j;
    }
    for (int i = 1; i <= one.length(); i++) {
      int diagonal = row[0];
      row[0] = i;
      for (int j = 1; j <= other.length(); j++) {
        int replaced = diagonal + (one.charAt(i - 1) == other.charAt(j - 1) ? 0 : 1);
        diagonal = row[j];
        row[j] = Math.min(replaced, 1 + Math.min(row[j], row[j - 1]));
      }
    }
    return row[other.length()];
  }
}
