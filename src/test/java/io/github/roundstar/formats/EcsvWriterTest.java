package io.github.roundstar.formats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.io.IOException;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Tables are ECSV 1.0 (Astropy Proposal for Enhancement 6). */
class EcsvWriterTest {
  private static final List<EcsvWriter.Column> COLUMNS =
      List.of(
          new EcsvWriter.Column("time", "float64", "s"),
          new EcsvWriter.Column("event", "string", ""));

  @Test
  void headerIsYamlInCommentsAndRowsAreCommaSeparated() throws IOException {
    StringBuilder out = new StringBuilder();
    Map<String, Object> meta = new LinkedHashMap<>();
    meta.put("start", "2026-10-08T18:10:00Z");
    meta.put("guide_scale", new BigDecimal("2.43"));
    meta.put("runs", List.of(Map.of("run", 1), Map.of("run", 2)));

    EcsvWriter writer = new EcsvWriter(out, COLUMNS, meta);
    writer.row(List.of("0.000", ""));
    writer.row(List.of("3.000", "note: wind, gusty"));

    assertThat(out)
        .hasToString(
            """
            # %ECSV 1.0
            # ---
            # delimiter: ','
            # datatype:
            # - {name: time, unit: s, datatype: float64}
            # - {name: event, datatype: string}
            # meta:
            #   start: '2026-10-08T18:10:00Z'
            #   guide_scale: 2.43
            #   runs:
            #   - {run: 1}
            #   - {run: 2}
            # schema: astropy-2.0
            time,event
            0.000,
            3.000,"note: wind, gusty"
            """);
  }

  @Test
  void rowOfAnotherWidthIsRefused() throws IOException {
    EcsvWriter writer = new EcsvWriter(new StringBuilder(), COLUMNS, Map.of());

    assertThatIllegalArgumentException()
        .isThrownBy(() -> writer.row(List.of("1")))
        .withMessageContaining("1 values for 2 columns");
  }

  @Test
  void textsAreDefusedAndNumbersStayNumbers() throws IOException {
    StringBuilder out = new StringBuilder();
    EcsvWriter writer =
        new EcsvWriter(
            out,
            List.of(
                new EcsvWriter.Column("x", "float64", ""),
                new EcsvWriter.Column("file", "string", "")),
            Map.of());
    for (String text : List.of("=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1", "a=1")) {
      writer.row(List.of("-1.5", text));
    }

    assertThat(out.substring(out.indexOf("x,file\n")))
        .isEqualTo(
            "x,file\n-1.5,'=1+1\n-1.5,'+1\n-1.5,'-1\n-1.5,'@SUM(A1)\n-1.5,'\t=1\n-1.5,\"'\r=1\"\n"
                + "-1.5,a=1\n");
  }
}
