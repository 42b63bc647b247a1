package io.github.roundstar.model;

import java.util.List;

/** Parts of sentences put together: the one way for pages, results and the terminal. */
public final class Sentences {
  private Sentences() {}

  /** With a capital at its head. */
  public static String capital(String text) {
    return text.isEmpty() ? text : Character.toUpperCase(text.charAt(0)) + text.substring(1);
  }

  /** With a capital at its head and one full stop at its end. */
  public static String whole(String text) {
    return capital(text.endsWith(".") ? text : text + ".");
  }

  /** {@code a, b and c}. */
  public static String list(List<String> items) {
    int last = items.size() - 1;
    return last < 1
        ? String.join("", items)
        : String.join(", ", items.subList(0, last)) + " and " + items.get(last);
  }
}
