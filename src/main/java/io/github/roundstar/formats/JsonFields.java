package io.github.roundstar.formats;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.Map;

/** The fields of one JSON object as texts, keys of objects within it joined by points. */
public final class JsonFields {
  private static final JsonFactory FACTORY =
      JsonFactory.builder()
          .streamReadConstraints(StreamReadConstraints.builder().maxNestingDepth(16).build())
          .build();

  private JsonFields() {}

  /**
   * Reads a line.
   *
   * @param most fields beyond these are left out
   * @return empty if it is no JSON object; {@code null} is an empty text, items of an array are
   *     numbered from 1
   */
  public static Map<String, String> of(String line, int most) {
    int from = 0;
    while (from < line.length() && line.charAt(from) == ' ') {
      from++;
    }
    if (from == line.length() || line.charAt(from) != '{') {
      return Map.of();
    }
    Map<String, String> fields = new LinkedHashMap<>();
    try (JsonParser parser = FACTORY.createParser(line)) {
      parser.nextToken();
      object(parser, most, fields);
      return parser.nextToken() == null ? fields : Map.of();
    } catch (IOException e) {
      return Map.of();
    }
  }

  private static void object(JsonParser parser, int most, Map<String, String> fields)
      throws IOException {
    Deque<String> path = new ArrayDeque<>();
    Deque<Integer> items = new ArrayDeque<>();
    String key = "";
    int depth = 1;
    while (depth > 0) {
      JsonToken token = parser.nextToken();
      if (token == null) {
        throw new IOException("the object is not closed");
      }
      switch (token) {
        case FIELD_NAME -> key = prefix(path) + parser.currentName();
        case START_OBJECT, START_ARRAY -> {
          path.push(inArray(items) ? key(path, items) : key);
          items.push(token == JsonToken.START_ARRAY ? 0 : -1);
          depth++;
        }
        case END_OBJECT, END_ARRAY -> {
          depth--;
          if (depth > 0) {
            path.pop();
            items.pop();
          }
        }
        default -> {
          String name = inArray(items) ? key(path, items) : key;
          if (fields.size() < most) {
            fields.put(name, token == JsonToken.VALUE_NULL ? "" : parser.getText().strip());
          }
        }
      }
    }
  }

  private static boolean inArray(Deque<Integer> items) {
    return !items.isEmpty() && items.peek() >= 0;
  }

  private static String key(Deque<String> path, Deque<Integer> items) {
    int item = items.pop() + 1;
    items.push(item);
    return prefix(path) + item;
  }

  private static String prefix(Deque<String> path) {
    return path.isEmpty() ? "" : path.peek() + ".";
  }
}
