package io.github.roundstar.formats;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** What is written is TOML 1.0, a line per figure. */
class TomlWriterTest {
  @Test
  void tablesBecomeDottedKeys() throws IOException {
    Map<String, Object> axis = new LinkedHashMap<>();
    axis.put("azimuth_arcmin", new BigDecimal("11.0"));
    axis.put("side", "east");
    Map<String, Object> table = new LinkedHashMap<>();
    table.put("seed", 7L);
    table.put("axis", axis);
    table.put("events", List.of(Map.of("size", new BigDecimal("0.5"))));
    StringBuilder out = new StringBuilder();

    TomlWriter.write(out, table);

    assertThat(out)
        .hasToString(
            """
            seed = 7
            axis.azimuth_arcmin = 11.0
            axis.side = 'east'
            events = [{size = 0.5}]
            """);
  }
}
