package io.github.roundstar.simulate;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.formats.FormatException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The log of a simulated night is a guide table, and always the same bytes. */
class GuideTableWriterTest {
  private static final String NIGHT =
      """
      [night]
      seed = 77
      start = "2026-10-08T20:10:00+02:00"
      guide_scale = 2.5
      [noise]
      white_arcsec = 0.4
      [seeing]
      [dither]
      every_min = 1
      [air]
      [[mount.harmonic]]
      amplitude_arcsec = 5
      [[run]]
      duration_min = 5
      [[run]]
      duration_min = 2
      """;

  /** Any change of this value says that old scenarios now give other nights. */
  @Test
  @Tag("pinned")
  void bytesAreTheSameOnEveryMachine()
      throws FormatException, IOException, NoSuchAlgorithmException {
    byte[] bytes = table(NIGHT).getBytes(StandardCharsets.UTF_8);

    assertThat(HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes)))
        .isEqualTo("4ce51f52fe8cdd159a2f9a0ca3422b2a77e2644e78286dc7c0b5749e371d2042");
  }

  @Test
  void headerSaysWhatTheReaderNeeds() throws FormatException, IOException {
    assertThat(table(NIGHT))
        .startsWith("# %ECSV 1.0\n# ---\n")
        .contains("# - {name: ra_offset, unit: arcsec, datatype: float64}\n")
        .contains("#   start: '2026-10-08T18:10:00Z'\n")
        .contains("#   guide_scale: 2.5\n")
        .contains("- {run: 2, start: '2026-10-08T18:15:00Z', declination: 30.0,")
        .contains(
            "\nrun,time,ra_offset,dec_offset,ra_pulse,dec_pulse,snr,flux,dither_ra,dither_dec,event\n")
        .contains(",dither\n")
        .contains(",settling\n");
  }

  @Test
  void pixelsAreArcsecondsOverTheScale() throws FormatException, IOException {
    List<String> arcsec = rows(table(NIGHT));
    List<String> pixels =
        rows(table(NIGHT.replace("guide_scale", "offset_unit = \"pix\"\nguide_scale")));

    double inArcsec = Double.parseDouble(arcsec.get(30).split(",")[2]);
    double inPixels = Double.parseDouble(pixels.get(30).split(",")[2]);
    assertThat(inPixels * 2.5).isBetween(inArcsec - 0.0018, inArcsec + 0.0018);
  }

  @Test
  void pulsesStandInTheNextRowWhereSaid() throws FormatException, IOException {
    List<String> same = rows(table(NIGHT));
    List<String> next = rows(table(NIGHT + "[loop]\npulse_row = \"next\"\n"));

    for (int i = 1; i < 100; i++) {
      assertThat(next.get(i).split(",")[4]).isEqualTo(same.get(i - 1).split(",")[4]);
    }
    assertThat(next.get(0).split(",")[4]).isEqualTo("0");
  }

  @Test
  void unknownShiftsAreLeftEmpty() throws FormatException, IOException {
    String table = table(NIGHT.replace("every_min = 1", "every_min = 1\nlogs_shift = false"));

    assertThat(rows(table)).filteredOn(row -> row.endsWith(",dither")).isNotEmpty();
    assertThat(rows(table))
        .filteredOn(row -> row.endsWith(",dither"))
        .allMatch(row -> row.endsWith(",,,dither"));
  }

  private static String table(String toml) throws FormatException, IOException {
    StringBuilder out = new StringBuilder();
    GuideTableWriter.write(Simulation.run(ScenarioReader.parse("test.toml", toml)), out);
    return out.toString();
  }

  private static List<String> rows(String table) {
    return table.lines().filter(line -> !line.startsWith("#")).skip(1).toList();
  }
}
