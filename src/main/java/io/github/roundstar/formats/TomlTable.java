package io.github.roundstar.formats;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectReader;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.dataformat.toml.TomlFactory;
import com.fasterxml.jackson.dataformat.toml.TomlMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeMap;

/**
 * One table of a TOML file, read key by key. It remembers which keys were asked for, so that {@link
 * #finish} can refuse a key that nobody knows. An absent key gives an empty result; a value of the
 * wrong kind or out of range is a {@link FormatException} that names file and key.
 */
public final class TomlTable {
  /** Longest file that is read [bytes]. */
  public static final int LARGEST_FILE = 256 * 1024;

  private static final int DEEPEST = 16;
  private static final int LONGEST_QUOTE = 40;
  private static final ObjectReader READER =
      new TomlMapper(
              TomlFactory.builder()
                  .streamReadConstraints(
                      StreamReadConstraints.builder().maxNestingDepth(DEEPEST).build())
                  .build())
          .reader();

  private final String file;
  private final String prefix;
  private final JsonNode node;
  private final Map<String, List<TomlTable>> asked = new TreeMap<>();

  private TomlTable(String file, String prefix, JsonNode node) {
    this.file = file;
    this.prefix = prefix;
    this.node = node;
  }

  /**
   * Reads a file.
   *
   * @throws FormatException if it is over {@link #LARGEST_FILE}, not UTF-8, not TOML or nested too
   *     deeply
   */
  public static TomlTable read(Path path) throws IOException, FormatException {
    try (InputStream in = Files.newInputStream(path)) {
      return read(String.valueOf(path.getFileName()), in.readNBytes(LARGEST_FILE + 1));
    }
  }

  /**
   * Reads the bytes of a file.
   *
   * @param file name for messages, without folders
   * @throws FormatException as {@link #read(Path)}
   */
  public static TomlTable read(String file, byte[] bytes) throws FormatException {
    if (bytes.length > LARGEST_FILE) {
      throw new FormatException(
          file,
          0,
          "larger than " + LARGEST_FILE + " bytes",
          "check that this is the file you meant, and remove what is not needed");
    }
    JsonNode root = parse(file, Utf8.decode(file, bytes));
    if (deeperThan(DEEPEST, root)) {
      throw tooDeep(file);
    }
    return new TomlTable(file, "", root);
  }

  private static JsonNode parse(String file, String text) throws FormatException {
    try {
      return READER.readTree(text);
    } catch (StreamConstraintsException e) {
      throw e.getMessage().contains("nesting") ? tooDeep(file) : syntax(file, 0, "value too long");
    } catch (JsonProcessingException e) {
      int line = e.getLocation() == null ? 0 : e.getLocation().getLineNr();
      // The parser notices a key given twice only after the end of its line.
      boolean late = line > 1 && e.getLocation().getColumnNr() == 1;
      throw syntax(file, late ? line - 1 : line, e.getOriginalMessage());
    } catch (RuntimeException e) {
      // The parser wraps some of its own refusals.
      throw syntax(file, 0, "cannot be read as TOML");
    }
  }

  private static FormatException syntax(String file, int line, String what) {
    return new FormatException(
        file,
        line,
        what.substring(0, 1).toLowerCase(Locale.ROOT) + what.substring(1),
        "write each entry as key = value on a line of its own, text in double quotes, every key once");
  }

  private static FormatException tooDeep(String file) {
    return new FormatException(
        file, 0, "nested more than " + DEEPEST + " deep", "use the tables that the manual shows");
  }

  private static boolean deeperThan(int levels, JsonNode node) {
    if (!node.isContainerNode()) {
      return false;
    }
    if (levels == 0) {
      return true;
    }
    for (JsonNode child : node) {
      if (deeperThan(levels - 1, child)) {
        return true;
      }
    }
    return false;
  }

  /** The file's name, without folders. */
  public String file() {
    return file;
  }

  /** Whether the key is there; does not count as asking for it. */
  public boolean has(String key) {
    return node.has(key);
  }

  /** The table under a key; an empty one where absent. */
  public TomlTable table(String key) throws FormatException {
    JsonNode found = ask(key);
    if (found != null && !found.isObject()) {
      throw wrong(key, found, "a table", "write it as [" + prefix + key + "]");
    }
    return child(key, prefix + key, found);
  }

  /** The tables of an array of tables, in order; none where absent. */
  public List<TomlTable> tables(String key) throws FormatException {
    JsonNode found = ask(key);
    String remedy = "write each one as [[" + prefix + key + "]]";
    if (found == null) {
      return List.of();
    }
    if (!found.isArray()) {
      throw wrong(key, found, "an array of tables", remedy);
    }
    List<TomlTable> tables = new ArrayList<>();
    for (int i = 0; i < found.size(); i++) {
      if (!found.get(i).isObject()) {
        throw wrong(key, found.get(i), "an array of tables", remedy);
      }
      tables.add(child(key, prefix + key + "[" + (i + 1) + "]", found.get(i)));
    }
    return List.copyOf(tables);
  }

  private TomlTable child(String key, String path, JsonNode found) {
    TomlTable table =
        new TomlTable(
            file, path + ".", found == null ? JsonNodeFactory.instance.objectNode() : found);
    asked.get(key).add(table);
    return table;
  }

  /** A finite number from {@code min} to {@code max}, both included. */
  public OptionalDouble number(String key, double min, double max) throws FormatException {
    JsonNode found = ask(key);
    return found == null ? OptionalDouble.empty() : OptionalDouble.of(number(key, found, min, max));
  }

  private double number(String key, JsonNode found, double min, double max) throws FormatException {
    double value = found.isNumber() ? found.doubleValue() : Double.NaN;
    if (!(value >= min && value <= max)) {
      throw wrong(
          key,
          found,
          "a number such as " + plain(example(min, max)),
          "give a number from "
              + plain(min)
              + " to "
              + plain(max)
              + " without quotes, or remove the key");
    }
    return value;
  }

  /** A whole number from {@code min} to {@code max}, both included. */
  public OptionalInt integer(String key, int min, int max) throws FormatException {
    JsonNode found = ask(key);
    if (found == null) {
      return OptionalInt.empty();
    }
    if (!found.isIntegralNumber()
        || !found.canConvertToInt()
        || found.intValue() < min
        || found.intValue() > max) {
      throw wrong(
          key,
          found,
          "a whole number such as " + Math.max(min, Math.min(max, 100)),
          "give a whole number from " + min + " to " + max + " without quotes, or remove the key");
    }
    return OptionalInt.of(found.intValue());
  }

  /** A list of finite numbers from {@code min} to {@code max}; empty where absent. */
  public List<Double> numbers(String key, double min, double max) throws FormatException {
    JsonNode found = ask(key);
    if (found == null) {
      return List.of();
    }
    if (!found.isArray()) {
      throw wrong(
          key, found, "a list of numbers", "write it as [" + plain(example(min, max)) + "]");
    }
    List<Double> values = new ArrayList<>();
    for (JsonNode element : found) {
      values.add(number(key, element, min, max));
    }
    return List.copyOf(values);
  }

  /** A text. */
  public Optional<String> text(String key) throws FormatException {
    JsonNode found = ask(key);
    if (found != null && !found.isTextual()) {
      throw wrong(key, found, "text", "put it in double quotes");
    }
    return Optional.ofNullable(found).map(JsonNode::textValue);
  }

  /** One of the given words. */
  public Optional<String> choice(String key, String... values) throws FormatException {
    JsonNode found = ask(key);
    if (found == null) {
      return Optional.empty();
    }
    if (!found.isTextual() || !Arrays.asList(values).contains(found.textValue())) {
      String words = "\"" + String.join("\", \"", values) + "\"";
      throw wrong(key, found, "one of " + words, "use one of these words, or remove the key");
    }
    return Optional.of(found.textValue());
  }

  /** {@code true} or {@code false}. */
  public Optional<Boolean> flag(String key) throws FormatException {
    JsonNode found = ask(key);
    if (found != null && !found.isBoolean()) {
      throw wrong(key, found, "true or false", "write one of them without quotes");
    }
    return Optional.ofNullable(found).map(JsonNode::booleanValue);
  }

  /** A date and time with its offset from UTC, with or without quotes. */
  public Optional<Instant> instant(String key) throws FormatException {
    JsonNode found = ask(key);
    if (found == null) {
      return Optional.empty();
    }
    Optional<Instant> instant = IsoTime.withOffset(found.asText()).map(OffsetDateTime::toInstant);
    if (instant.isEmpty()) {
      throw wrong(
          key,
          found,
          "a date and time such as 2026-03-14T20:15:00Z",
          "write date, T, time and the offset from UTC");
    }
    return instant;
  }

  /** A fault of one key that the caller found, for throwing. */
  public FormatException fault(String key, String what, String remedy) {
    return new FormatException(file, 0, prefix + key + ": " + what, remedy);
  }

  /**
   * Refuses what nobody asked for, in this table and all tables taken from it.
   *
   * @throws FormatException naming the first unknown key of the file and the nearest known one
   */
  public void finish() throws FormatException {
    for (Iterator<String> keys = node.fieldNames(); keys.hasNext(); ) {
      String key = keys.next();
      List<TomlTable> children = asked.get(key);
      if (children == null) {
        throw fault(
            quoted(key),
            "unknown key"
                + NearestName.of(key, asked.keySet())
                    .map(name -> ", the nearest known one is " + name)
                    .orElse(""),
            "correct the key or remove it");
      }
      for (TomlTable child : children) {
        child.finish();
      }
    }
  }

  private JsonNode ask(String key) {
    asked.computeIfAbsent(key, any -> new ArrayList<>());
    return node.get(key);
  }

  private FormatException wrong(String key, JsonNode found, String expected, String remedy) {
    return fault(key, "found " + quoted(found.toString()) + ", expected " + expected, remedy);
  }

  private static String quoted(String text) {
    return text.length() <= LONGEST_QUOTE ? text : text.substring(0, LONGEST_QUOTE) + "...";
  }

  private static double example(double min, double max) {
    for (double value : new double[] {0.5, 1, 10, 100, 1000}) {
      if (value >= min && value <= max) {
        return value;
      }
    }
    return min;
  }

  private static String plain(double value) {
    return value == Math.rint(value) && Math.abs(value) < 1e15
        ? Long.toString((long) value)
        : Double.toString(value);
  }
}
