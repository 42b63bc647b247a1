package io.github.roundstar.formats;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** No cell runs as a formula, and numbers stay numbers. */
class CsvWriterTest {
  @Test
  void formulasAreDefused() throws IOException {
    StringBuilder text = new StringBuilder();
    CsvWriter table = new CsvWriter(text, List.of("file", "x"));
    table.row(Arrays.asList("=cmd|'/c calc'!A1", -1.5));
    table.row(Arrays.asList("@sum(a)", 3));
    table.row(Arrays.asList("+1", "-1"));
    table.row(Arrays.asList("\t=1", "a-1"));
    table.row(Arrays.asList("a,b \"c\"", null));
    assertThat(text.toString())
        .isEqualTo(
            "file,x\n"
                + "'=cmd|'/c calc'!A1,-1.5\n"
                + "'@sum(a),3\n"
                + "'+1,'-1\n"
                + "'\t=1,a-1\n"
                + "\"a,b \"\"c\"\"\",\n");
  }
}
