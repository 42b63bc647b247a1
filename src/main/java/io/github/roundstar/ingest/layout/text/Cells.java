package io.github.roundstar.ingest.layout.text;

import io.github.roundstar.formats.JsonFields;
import io.github.roundstar.ingest.layout.Delimiter;
import io.github.roundstar.ingest.layout.LinePattern;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;

/**
 * Takes lines apart into fields, stripped of blanks and of the quotes or brackets around them. A
 * quote opens a field only at its start, so that it may be the sign for arcseconds elsewhere.
 */
public final class Cells {
  /** More fields than these are not told apart. */
  static final int MOST = 1000;

  private Cells() {}

  /** The fields of a line. */
  public static List<String> of(String line, Delimiter delimiter, List<Integer> widths) {
    return switch (delimiter) {
      case FIXED -> fixed(line, widths);
      case COMMA_BLANK -> commaBlank(line);
      case BLANKS -> words(line, false);
      case ANY -> words(line, true);
      case KEY_VALUE, JSON -> List.copyOf(keyed(line, delimiter).values());
      case PIPE -> isFramed(line) ? framed(separated(line, '|')) : separated(line, '|');
      default -> separated(line, delimiter.sign());
    };
  }

  /** The fields of a line behind a lead, whose words are fields as well. */
  static List<String> of(
      String line, Delimiter delimiter, List<Integer> widths, Optional<LinePattern> lead) {
    Optional<Matcher> found = lead.flatMap(pattern -> pattern.find(line));
    if (found.isEmpty()) {
      return of(line, delimiter, widths);
    }
    List<String> cells = new ArrayList<>(words(found.get().group(), false));
    cells.addAll(of(line.substring(found.get().end()), delimiter, widths));
    return cells;
  }

  /**
   * The fields of a line by key. A field without a key has its place among those as key: {@code
   * #1}, {@code #2}.
   */
  public static Map<String, String> keyed(String line, Delimiter delimiter) {
    if (delimiter == Delimiter.JSON) {
      return JsonFields.of(line, MOST);
    }
    return new KeyedLine(line).fields;
  }

  /** Whether a blank stands where each fixed field but the first begins. */
  static boolean keepWidths(String line, List<Integer> widths) {
    int at = 0;
    for (int i = 0; i + 1 < widths.size(); i++) {
      at += widths.get(i);
      if (at < line.length() && line.charAt(at) != ' ') {
        return false;
      }
    }
    return true;
  }

  private static List<String> fixed(String line, List<Integer> widths) {
    List<String> cells = new ArrayList<>();
    int from = 0;
    for (int width : widths) {
      int to = Math.min(line.length(), from + width);
      if (from >= to) {
        break;
      }
      cells.add(bare(line.substring(from, to)));
      from = to;
    }
    if (from < line.length() && !line.substring(from).isBlank()) {
      cells.add(line.substring(from).strip());
    }
    while (from >= line.length() && cells.size() < widths.size() && !cells.isEmpty()) {
      cells.add(""); // blanks at the end of a line are often cut off
    }
    return cells;
  }

  private static boolean isGap(String line, int at, boolean any) {
    char c = line.charAt(at);
    boolean sign = c == ';' || c == '|' || c == ',' && !isBetweenDigits(line, at);
    return c == ' ' || c == '\t' || any && sign;
  }

  private static boolean isBetweenDigits(String line, int at) {
    return at > 0
        && at + 1 < line.length()
        && Character.isDigit(line.charAt(at - 1))
        && Character.isDigit(line.charAt(at + 1));
  }

  private static List<String> words(String line, boolean any) {
    List<String> cells = new ArrayList<>();
    int at = 0;
    while (cells.size() < MOST) {
      while (at < line.length() && isGap(line, at, any)) {
        at++;
      }
      if (at == line.length()) {
        return cells;
      }
      int end = closing(line, at);
      while (end < line.length() && !isGap(line, end, any)) {
        end++;
      }
      cells.add(bare(any ? unpunctuated(line, at, end) : line.substring(at, end)));
      at = end;
    }
    return cells;
  }

  private static String unpunctuated(String line, int from, int end) {
    int to = end;
    while (to > from + 1 && ":.;".indexOf(line.charAt(to - 1)) >= 0) {
      to--;
    }
    return line.substring(from, to);
  }

  /** Behind the quote or bracket that closes the one that opens here; else here. */
  private static int closing(String line, int at) {
    char open = line.charAt(at);
    char close = open == '"' ? '"' : open == '[' ? ']' : open == '(' ? ')' : '\0';
    int end = close == '\0' ? -1 : line.indexOf(close, at + 1);
    return end > at + 1 ? end + 1 : at;
  }

  private static List<String> separated(String line, char sign) {
    List<String> cells = new ArrayList<>();
    int from = 0;
    while (cells.size() < MOST) {
      int to = fieldEnd(line, sign, from);
      if (to < 0) {
        break;
      }
      cells.add(bare(line.substring(from, to)));
      from = to + 1;
    }
    cells.add(bare(line.substring(from)));
    return cells;
  }

  /** Where the field ends that begins here; negative if it is the last. */
  static int fieldEnd(String line, char sign, int from) {
    int at = blanksEnd(line, from);
    if (from == 0 && at < line.length() && line.charAt(at) == '[') {
      at = blanksEnd(line, closing(line, at)); // a bracket that leads the line
    }
    boolean opens =
        at + 1 < line.length()
            && line.charAt(at) == '"'
            && line.charAt(at + 1) != sign; // else a unit
    int end = opens ? quoteEnd(line, at) : at;
    return line.indexOf(sign, end < 0 ? from : end);
  }

  private static int blanksEnd(String line, int from) {
    int at = from;
    while (at < line.length() && line.charAt(at) == ' ') {
      at++;
    }
    return at;
  }

  private static List<String> commaBlank(String line) {
    List<String> cells = new ArrayList<>();
    int from = 0;
    for (int to = line.indexOf(", ");
        to >= 0 && cells.size() < MOST;
        to = line.indexOf(", ", from)) {
      cells.add(bare(line.substring(from, to)));
      from = to + 2;
    }
    String last = line.substring(from);
    cells.add(bare(last.endsWith(",") ? last.substring(0, last.length() - 1) : last));
    if (last.endsWith(",")) {
      cells.add("");
    }
    return cells;
  }

  /** The quote that closes a field, doubled ones passed over; negative if none does. */
  private static int quoteEnd(String line, int open) {
    int at = open + 1;
    while (at < line.length()) {
      if (line.charAt(at) == '"') {
        if (at + 1 >= line.length() || line.charAt(at + 1) != '"') {
          return at;
        }
        at++;
      }
      at++;
    }
    return -1;
  }

  /** Whether bars stand around the row, each beside a field and not beside another bar. */
  private static boolean isFramed(String line) {
    String text = line.strip();
    return text.startsWith("|")
        && text.endsWith("|")
        && !text.startsWith("||")
        && !text.endsWith("||");
  }

  /** Without the empty fields outside of a frame of bars. */
  private static List<String> framed(List<String> cells) {
    int last = cells.size() - 1;
    boolean frame = last >= 2 && cells.get(0).isEmpty() && cells.get(last).isEmpty();
    return frame ? cells.subList(1, last) : cells;
  }

  static String bare(String cell) {
    String text = cell.strip();
    if (text.length() < 2) {
      return text;
    }
    char first = text.charAt(0);
    char last = text.charAt(text.length() - 1);
    if (first == '"' && last == '"') {
      return text.substring(1, text.length() - 1).replace("\"\"", "\"").strip();
    }
    boolean brackets =
        first == '[' && last == ']' && text.indexOf('[', 1) < 0
            || first == '(' && last == ')' && text.indexOf('(', 1) < 0;
    return brackets ? text.substring(1, text.length() - 1).strip() : text;
  }

  /** A line of keys and values: {@code t=3.0, RA error: 0.31 px; state="ok"}. */
  private static final class KeyedLine {
    private final Map<String, String> fields = new LinkedHashMap<>();
    private String line;
    private int nameless;

    KeyedLine(String joined) {
      for (String one : joined.split(Delimiter.KEY_VALUE.joint())) {
        line = one;
        lastKey = "";
        if (isSeparated()) {
          pieces();
        } else {
          byBlanks();
        }
      }
    }

    /** Whether commas, semicolons, tabulators or bars part the fields, and not blanks alone. */
    private boolean isSeparated() {
      int signs = 0;
      int keys = 0;
      for (int i = 0; i < line.length(); i++) {
        signs += separates(i) ? 1 : 0;
        keys += isKeySign(i) ? 1 : 0;
      }
      return signs > 0 && signs + 2 >= keys;
    }

    private boolean separates(int i) {
      char c = line.charAt(i);
      return c == ';' || c == '|' || c == '\t' || c == ',' && !isBetweenDigits(line, i);
    }

    /** An equals sign, or a colon that is not within a clock time or an address. */
    private boolean isKeySign(int i) {
      char c = line.charAt(i);
      if (c == '=') {
        return i > 0;
      }
      return c == ':'
          && i > 0
          && !Character.isDigit(line.charAt(i - 1))
          && line.charAt(i - 1) != ' ';
    }

    private void pieces() {
      int from = 0;
      boolean quoted = false;
      for (int i = 0; i <= line.length() && fields.size() < MOST; i++) {
        boolean end = i == line.length();
        if (!end && line.charAt(i) == '"') {
          quoted = !quoted && line.indexOf('"', i + 1) > 0 && opens(i);
        }
        if (end || !quoted && separates(i)) {
          piece(from, i);
          from = i + 1;
        }
      }
    }

    /** A quote opens a value only where one begins. */
    private boolean opens(int i) {
      int before = i - 1;
      while (before >= 0 && line.charAt(before) == ' ') {
        before--;
      }
      return before < 0 || isKeySign(before) || separates(before);
    }

    private void piece(int from, int to) {
      for (int i = from; i < to; i++) {
        if (isKeySign(i)) {
          String key = line.substring(from, i).strip();
          if (!key.isEmpty()) {
            put(bareKey(key), line.substring(i + 1, to));
            return;
          }
        }
      }
      nameless(line.substring(from, to).strip());
    }

    /** A key without what leads the line: brackets, a time, a word and a gap. */
    private String bareKey(String key) {
      String rest = key;
      while (true) {
        int end = closing(rest, 0);
        int blank = rest.indexOf(' ', Math.max(end - 1, 0));
        boolean leads =
            blank > 0
                && (end > 0
                    || Look.startsAsNumber(rest)
                    || blank == 1 && Character.isUpperCase(rest.charAt(0))
                    || blank + 1 < rest.length() && rest.charAt(blank + 1) == ' ');
        if (!leads) {
          return rest;
        }
        nameless(bare(rest.substring(0, blank)));
        rest = rest.substring(blank).strip();
      }
    }

    private void nameless(String text) {
      if (!text.isEmpty()) {
        put("#" + ++nameless, text);
      }
    }

    private void put(String key, String value) {
      String free = key;
      for (int again = 2; fields.containsKey(free); again++) {
        free = key + " " + again;
      }
      fields.put(free, bare(value));
    }

    /** Each value is one word, with its unit; what stands before the next sign is a key. */
    private void byBlanks() {
      int at = 0;
      String words = "";
      String key = "";
      while (at < line.length() && fields.size() < MOST) {
        while (at < line.length() && line.charAt(at) == ' ') {
          at++;
        }
        if (at == line.length()) {
          break;
        }
        int end = closing(line, at);
        while (end < line.length()
            && line.charAt(end) != ' '
            && !(isKeySign(end) && key.isEmpty())) {
          end++;
        }
        String word = line.substring(at, end);
        int next = end;
        while (next < line.length() && line.charAt(next) == ' ') {
          next++;
        }
        boolean sign = next < line.length() && key.isEmpty() && isSignAt(next);
        if (word.isEmpty()) {
          at = end + 1; // a sign without a word before it
          continue;
        }
        if (!key.isEmpty()) {
          put(key, word);
          lastKey = key;
          key = "";
        } else if (sign && !word.isEmpty()) {
          key = (words + " " + word).strip();
          words = "";
          end = next + 1;
        } else if (words.isEmpty() && isUnitOfLast(word)) {
          fields.merge(lastKey, word, (number, unit) -> number + " " + unit);
          lastKey = "";
        } else if (Character.isLetter(word.charAt(0))) {
          words = (words + " " + word).strip();
        } else {
          flush(words);
          words = "";
          nameless(bare(word));
        }
        at = Math.max(end, at + 1);
      }
      flush(words);
    }

    private String lastKey = "";

    private boolean isSignAt(int i) {
      char c = line.charAt(i);
      return c == '=' || c == ':' && (i == 0 || !Character.isDigit(line.charAt(i - 1)));
    }

    private boolean isUnitOfLast(String word) {
      String number = fields.getOrDefault(lastKey, "");
      return !number.isEmpty()
          && Character.isDigit(number.charAt(number.length() - 1))
          && Words.unit(word).isPresent();
    }

    private void flush(String words) {
      for (String word : words.split(" ")) {
        nameless(word);
      }
    }
  }
}
