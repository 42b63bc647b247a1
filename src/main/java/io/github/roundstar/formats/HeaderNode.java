package io.github.roundstar.formats;

import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * A piece of a table's header: a text, a list or a map in its order. Numbers, dates and words all
 * stay the text they were written as.
 *
 * @param line line in the file, from 1
 * @param kind which of the other parts counts
 * @param text the text; else empty
 * @param items the list; else empty
 * @param entries the map; else empty
 */
public record HeaderNode(
    long line, Kind kind, String text, List<HeaderNode> items, Map<String, HeaderNode> entries) {
  /** What a node is. */
  public enum Kind {
    TEXT,
    LIST,
    MAP
  }

  /** Copies. */
  public HeaderNode {
    items = List.copyOf(items);
    entries = Collections.unmodifiableMap(new LinkedHashMap<>(entries));
  }

  static HeaderNode text(long line, String text) {
    return new HeaderNode(line, Kind.TEXT, text, List.of(), Map.of());
  }

  static HeaderNode list(long line, List<HeaderNode> items) {
    return new HeaderNode(line, Kind.LIST, "", items, Map.of());
  }

  static HeaderNode map(long line, Map<String, HeaderNode> entries) {
    return new HeaderNode(line, Kind.MAP, "", List.of(), entries);
  }

  /** Whether the value is left out: nothing, {@code null} or {@code ~}. */
  public boolean isNull() {
    return kind == Kind.TEXT && (text.isEmpty() || text.equals("null") || text.equals("~"));
  }

  /** The text as a finite decimal number with a point; empty if it is anything else. */
  public OptionalDouble number() {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    double value = bytes.length == 0 ? Double.NaN : DecimalText.parse(bytes, 0, bytes.length);
    return Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty();
  }
}
