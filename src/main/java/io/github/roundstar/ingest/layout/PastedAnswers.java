package io.github.roundstar.ingest.layout;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Answers that were pasted into a layout file, wherever it was convenient: a table that stands
 * twice is one, and what stands further down wins. A file with questions waits for a table more of
 * each kind that was asked for.
 */
final class PastedAnswers {
  /** Key of what a file with questions waits for. */
  static final String WAITS_FOR = "waits_for";

  private static final int MOST_BLOCKS = 500;

  private static final Pattern HEAD = Pattern.compile("\\s*\\[\\[?([a-z_]+)\\]\\]?\\s*(?:#.*)?");
  private static final Pattern KEY = Pattern.compile("\\s*([a-z_]+)\\s*=\\s*(.*)");
  private static final Pattern QUOTED = Pattern.compile("[\"'](.*?)[\"'].*");

  private final List<String> top = new ArrayList<>();
  private final List<Block> blocks = new ArrayList<>();

  /** A table: its head, and its keys with the lines that hold them. */
  private static final class Block {
    private final String head;
    private final String kind;
    private final Map<String, List<String>> keys = new LinkedHashMap<>();

    Block(String head, String kind) {
      this.head = head;
      this.kind = kind;
    }

    boolean isOne() {
      return !head.strip().startsWith("[[");
    }

    Optional<String> value(String key) {
      return Optional.ofNullable(keys.get(key))
          .map(lines -> KEY.matcher(lines.get(0)))
          .filter(Matcher::matches)
          .map(found -> found.group(2).strip());
    }

    String means() {
      Matcher text = QUOTED.matcher(value("means").orElse(""));
      return text.matches() ? text.group(1) : "";
    }

    /** What it is one of: such as {@code setting scale}. */
    String target() {
      return (kind + " " + means()).strip();
    }

    boolean isSameColumn(Block other) {
      return value("name").equals(other.value("name"))
          && value("at")
              .map(PastedAnswers::number)
              .equals(other.value("at").map(PastedAnswers::number));
    }
  }

  private static String number(String text) {
    return text.replaceFirst("\\s*#.*", "").strip();
  }

  private PastedAnswers(String text) {
    String key = "";
    for (String line : text.split("\r\n|\r|\n", -1)) {
      Matcher head = HEAD.matcher(line);
      Matcher pair = KEY.matcher(line);
      if (head.matches()) {
        blocks.add(new Block(line, head.group(1)));
        key = "";
      } else if (blocks.isEmpty()) {
        top.add(line);
      } else {
        key = pair.matches() ? pair.group(1) : key;
        blocks.get(blocks.size() - 1).keys.computeIfAbsent(key, any -> new ArrayList<>()).add(line);
      }
    }
  }

  /**
   * The file as it is to be read; the same bytes where nothing was asked, since a table that stands
   * twice is then a mistake.
   */
  static byte[] merged(byte[] bytes) {
    String text = new String(bytes, StandardCharsets.UTF_8);
    PastedAnswers file = new PastedAnswers(text);
    int before = file.blocks.size();
    Optional<String> waits =
        file.top.stream()
            .map(KEY::matcher)
            .filter(found -> found.matches() && found.group(1).equals(WAITS_FOR))
            .map(found -> QUOTED.matcher(found.group(2)))
            .filter(Matcher::matches)
            .map(found -> found.group(1))
            .findFirst();
    boolean asks = waits.isPresent() && before <= MOST_BLOCKS;
    boolean answered = asks && file.isAnswered(waits.get());
    if (asks) {
      file.merge();
    }
    if (file.blocks.size() == before && !answered) {
      return bytes;
    }
    if (answered) {
      file.top.removeIf(
          line -> line.matches("\\s*(?:" + LayoutText.UNANSWERED + "|" + WAITS_FOR + ")\\s*=.*"));
    }
    StringBuilder out = new StringBuilder();
    file.top.forEach(line -> out.append(line).append('\n'));
    for (Block block : file.blocks) {
      out.append(block.head).append('\n');
      block.keys.values().forEach(lines -> lines.forEach(l -> out.append(l).append('\n')));
    }
    return out.toString().getBytes(StandardCharsets.UTF_8);
  }

  /** What a file waits for: a table more than it has of each kind that was asked for. */
  static String waitsFor(String written, List<Decision> open) {
    Map<String, Integer> counts = new PastedAnswers(written).counts();
    Map<String, Integer> waits = new LinkedHashMap<>();
    for (Decision decision : open) {
      PastedAnswers ask = new PastedAnswers(decision.ask());
      if (!ask.blocks.isEmpty()) {
        String target = ask.blocks.get(0).target();
        waits.put(target, counts.getOrDefault(target, 0));
      } else {
        waits.put("edit", 0); // nothing that can be pasted
      }
    }
    List<String> all = new ArrayList<>();
    waits.forEach((target, count) -> all.add(target + " " + count));
    return String.join("; ", all);
  }

  private Map<String, Integer> counts() {
    Map<String, Integer> counts = new HashMap<>();
    blocks.forEach(block -> counts.merge(block.target(), 1, Integer::sum));
    return counts;
  }

  private boolean isAnswered(String waits) {
    Map<String, Integer> counts = counts();
    for (String wait : waits.split("; ")) {
      int blank = wait.lastIndexOf(' ');
      String count = wait.substring(blank + 1);
      boolean more =
          blank > 0
              && count.matches("[0-9]{1,4}")
              && counts.getOrDefault(wait.substring(0, blank), 0) > Integer.parseInt(count);
      if (!more) {
        return false;
      }
    }
    return true;
  }

  private void merge() {
    for (int later = 1; later < blocks.size(); later++) {
      Block own = blocks.get(later);
      for (int i = later - 1; i >= 0; i--) {
        Block other = blocks.get(i);
        boolean same = own.kind.equals(other.kind);
        boolean column = same && own.kind.equals("column");
        boolean setting = same && own.kind.equals("setting") && own.keys.containsKey("value");
        boolean one = same && own.isOne();
        boolean means = own.means().equals(other.means());
        boolean replaces =
            one
                || column && (means && !own.means().equals("nothing") || own.isSameColumn(other))
                || setting && means;
        if (replaces) {
          if (one || column && means && own.isSameColumn(other)) {
            other.keys.forEach(own.keys::putIfAbsent);
          }
          blocks.remove(i);
          later--;
        }
      }
    }
  }
}
