package io.github.roundstar.ingest.layout.evidence;

import io.github.roundstar.ingest.layout.text.Words;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The name of a column, taken apart.
 *
 * @param bare the name without its unit, where that stands apart from it
 * @param unit the unit at its end
 */
record ColumnName(String bare, Optional<String> unit) {
  private static final Pattern UNIT_BEHIND =
      Pattern.compile(
          "(?:[\\[({/_,.: -]|\\bin )\\s*([^\\[\\](){}/_,: ]+(?: [^\\[\\](){}/_,: ]+){0,2})\\s*[\\])}]?$");

  /** A bracket at the end that says more than the unit. */
  private static final Pattern IN_BRACKET =
      Pattern.compile("[\\[(]\\s*([^\\s,;\\])]+)[ ,;][^\\])]*[\\])]$");

  /** Takes the unit from the end of a name. */
  static ColumnName of(String name) {
    Matcher behind = UNIT_BEHIND.matcher(name);
    for (int from = 0;
        behind.find(from) && behind.start() < name.length();
        from = behind.start() + 1) {
      Optional<String> found = Words.unit(behind.group(1));
      if (found.isPresent()) {
        return new ColumnName(name.substring(0, behind.start()), found);
      }
    }
    Matcher bracket = IN_BRACKET.matcher(name);
    if (bracket.find()) {
      Optional<String> found = Words.unit(bracket.group(1));
      if (found.isPresent()) {
        return new ColumnName(name.substring(0, bracket.start()), found);
      }
    }
    List<String> tokens = Words.tokens(name);
    for (int count = Math.min(3, tokens.size() - 1); count > 0; count--) {
      String last = String.join(" ", tokens.subList(tokens.size() - count, tokens.size()));
      Optional<String> found = last.length() > 1 ? Words.unit(last) : Optional.empty();
      if (found.isPresent()) {
        return new ColumnName(name, found);
      }
    }
    if (name.matches(".*[a-z]S")) {
      String words = name.substring(0, name.length() - 1);
      return new ColumnName(
          words, Optional.of("s")); // a capital behind small letters begins a word
    }
    Optional<String> whole = Words.unit(name).filter(u -> name.length() > 1);
    return new ColumnName(
        name, whole.or(() -> Words.gluedUnit(name.replaceFirst("^.*[^\\p{L}]", ""))));
  }
}
