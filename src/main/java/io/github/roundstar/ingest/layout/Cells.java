package io.github.roundstar.ingest.layout;

import java.util.ArrayList;
import java.util.List;

/** Takes lines apart into fields, stripped of blanks and of a pair of double quotes. */
public final class Cells {
  private static final int MOST = 1000;

  private Cells() {}

  /** The fields of a line; more than a thousand are not told apart. */
  public static List<String> of(String line, Delimiter delimiter, List<Integer> widths) {
    return switch (delimiter) {
      case FIXED -> fixed(line, widths);
      case BLANKS -> blanks(line);
      default -> separated(line, delimiter.sign());
    };
  }

  private static List<String> fixed(String line, List<Integer> widths) {
    List<String> cells = new ArrayList<>();
    int from = 0;
    for (int width : widths) {
      int to = Math.min(line.length(), from + width);
      if (from >= to) {
        break;
      }
      cells.add(line.substring(from, to).strip());
      from = to;
    }
    if (from < line.length() && !line.substring(from).isBlank()) {
      cells.add(line.substring(from).strip());
    }
    return cells;
  }

  private static List<String> blanks(String line) {
    List<String> cells = new ArrayList<>();
    int at = 0;
    while (cells.size() < MOST) {
      while (at < line.length() && isBlank(line.charAt(at))) {
        at++;
      }
      if (at == line.length()) {
        return cells;
      }
      int end = at;
      boolean quoted = line.charAt(at) == '"' && line.indexOf('"', at + 1) > 0;
      if (quoted) {
        end = line.indexOf('"', at + 1) + 1;
      }
      while (end < line.length() && !isBlank(line.charAt(end))) {
        end++;
      }
      cells.add(unquoted(line.substring(at, end)));
      at = end;
    }
    return cells;
  }

  private static boolean isBlank(char c) {
    return c == ' ' || c == '\t';
  }

  private static List<String> separated(String line, char sign) {
    List<String> cells = new ArrayList<>();
    int from = 0;
    boolean quoted = false;
    for (int i = 0; i < line.length() && cells.size() < MOST; i++) {
      char c = line.charAt(i);
      if (c == '"') {
        quoted = !quoted;
      } else if (c == sign && !quoted) {
        cells.add(unquoted(line.substring(from, i)));
        from = i + 1;
      }
    }
    cells.add(unquoted(line.substring(from)));
    return cells;
  }

  private static String unquoted(String cell) {
    String text = cell.strip();
    boolean pair = text.length() >= 2 && text.startsWith("\"") && text.endsWith("\"");
    return pair ? text.substring(1, text.length() - 1).replace("\"\"", "\"").strip() : text;
  }
}
