package io.github.roundstar.formats;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.dataformat.toml.TomlMapper;
import java.io.IOException;
import java.util.Map;

/** Writes values as TOML 1.0, one line per top-level value or dotted key. */
public final class TomlWriter {
  private static final TomlMapper MAPPER = new TomlMapper();

  private TomlWriter() {}

  /**
   * Writes a table.
   *
   * @param out where to; stays open
   * @param table keys in order; values are text, booleans, whole numbers, {@code BigDecimal}, lists
   *     and maps of these
   */
  public static void write(Appendable out, Map<String, Object> table) throws IOException {
    try {
      out.append(MAPPER.writeValueAsString(table));
    } catch (JsonProcessingException e) {
      throw new IllegalArgumentException("a value that TOML cannot hold", e);
    }
  }
}
