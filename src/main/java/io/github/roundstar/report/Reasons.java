package io.github.roundstar.report;

import io.github.roundstar.model.Sentences;
import io.github.roundstar.results.NotComputed;
import java.util.List;

/** Why figures are missing, looked up by JSON Pointer; {@code *} stands for any index. */
final class Reasons {
  private static final String UNKNOWN = "the result gives no reason";

  private final List<NotComputed> all;

  Reasons(List<NotComputed> all) {
    this.all = all;
  }

  /**
   * The reason for one figure: the entry for itself, for something it is part of, or for a part of
   * it, in this order; else the first that any of the other pointers gives.
   */
  String why(String... pointers) {
    for (String pointer : pointers) {
      String[] wanted = pointer.split("/");
      for (int missing = 0; missing <= 2; missing++) {
        for (NotComputed entry : all) {
          String[] given = entry.figure().split("/");
          if (related(given, wanted, missing)) {
            return entry.because();
          }
        }
      }
    }
    return UNKNOWN;
  }

  /** The reason as a sentence of its own. */
  String sentence(String... pointers) {
    return Sentences.whole(why(pointers));
  }

  private static boolean related(String[] given, String[] wanted, int how) {
    boolean lengths =
        switch (how) {
          case 0 -> given.length == wanted.length;
          case 1 -> given.length > 2 && given.length < wanted.length;
          default -> given.length > wanted.length;
        };
    if (!lengths) {
      return false;
    }
    for (int i = 0; i < Math.min(given.length, wanted.length); i++) {
      boolean same = given[i].equals(wanted[i]) || given[i].equals("*") || wanted[i].equals("*");
      if (!same) {
        return false;
      }
    }
    return true;
  }
}
