package io.github.roundstar.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.results.Exposure;
import io.github.roundstar.results.NightJson;
import io.github.roundstar.results.NightResult;
import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/**
 * Names that are written to break out of page, JSON, table or folder stay names. Checks: the XML
 * parser of the JDK reads the page, Commons CSV the table.
 */
class HostileTextTest {
  private static final String MARKUP = "</script><script>alert(\"1\")</script>'><img src=x>";
  private static final String FORMULA = "=HYPERLINK(\"http://x.invalid\";\"a\")";
  private static final List<String> NAMES =
      List.of(MARKUP, FORMULA, "+1+1", "-1+1", "@SUM(A1)", "../../../escaped", "/etc/escaped");

  @TempDir static Path folder;
  private static Path out;
  private static String page;

  @BeforeAll
  static void analyse() throws IOException {
    out = folder.resolve("one/two/out");
    Path log =
        GuideTables.write(
            folder,
            "=<b>'&\".ecsv",
            GuideTables.header("start: '2026-10-08T20:00:00Z', declination: 20")
                + GuideTables.rows(1, 0, 400));
    Path equipment =
        GuideTables.write(
            folder,
            "own.toml",
            "[mount]\nname = '''"
                + MARKUP
                + "'''\n[[mount.gear]]\nname = '''"
                + MARKUP
                + "'''\nperiod_s = 100\n[imaging]\nfocal_length_mm = 750\npixel_um = 3.8\n");
    StringBuilder list = new StringBuilder("file,start,seconds,pattern\n");
    for (int i = 0; i < NAMES.size(); i++) {
      list.append('"').append(NAMES.get(i).replace("\"", "\"\"")).append("\",");
      list.append("2026-10-08T20:0").append(i).append(":10Z,30,\"=<i>1\"\n");
    }
    Path exposures = GuideTables.write(folder, "<u>list.csv", list.toString());

    Ran.of("analyze", log, "--equipment", equipment, "--exposures", exposures, "--out", out)
        .endsWith(0);
    page = Files.readString(out.resolve("2026-10-08.html"));
  }

  private static NightResult result() throws IOException {
    return NightJson.read(Files.readAllBytes(out.resolve("2026-10-08.json")));
  }

  @Test
  void thePageHoldsThemAsTextOnly() throws Exception {
    assertThat(page).containsOnlyOnce("<script").doesNotContain("<img", "<b>'", "<u>list", "<i>1");
    String markup = page.replaceAll("(?s)<script>.*?</script>", "");
    Element root =
        DocumentBuilderFactory.newInstance()
            .newDocumentBuilder()
            .parse(new InputSource(new StringReader(markup)))
            .getDocumentElement();
    assertThat(root.getTextContent()).contains(MARKUP, "=<b>'&\".ecsv", FORMULA);
    NodeList all = root.getElementsByTagName("*");
    for (int i = 0; i < all.getLength(); i++) {
      for (int a = 0; a < all.item(i).getAttributes().getLength(); a++) {
        assertThat(all.item(i).getAttributes().item(a).getNodeName()).doesNotStartWith("on");
      }
    }
  }

  @Test
  void theJsonGivesThemBackAsTheyAre() throws IOException {
    assertThat(result().exposures()).extracting(Exposure::file).containsExactlyElementsOf(NAMES);
    assertThat(result().inputs().get(0).file()).isEqualTo("=<b>'&\".ecsv");
  }

  @Test
  void noCellOfTheTableBeginsAFormula() throws IOException {
    Path table = out.resolve("2026-10-08.exposures.csv");
    try (var rows = CSVFormat.RFC4180.parse(Files.newBufferedReader(table, UTF_8))) {
      List<CSVRecord> records = rows.getRecords();
      assertThat(records).hasSize(NAMES.size() + 1);
      for (CSVRecord record : records) {
        assertThat(record)
            .allSatisfy(
                cell -> assertThat(cell).matches("(?s)|[^=+@\\t\\r-].*|-?[0-9.]+([eE]-?[0-9]+)?"));
      }
      assertThat(records.get(2).get(0)).isEqualTo("'" + FORMULA);
    }
  }

  @Test
  void noFileIsNamedAfterThem() throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      assertThat(
              files
                  .filter(Files::isRegularFile)
                  .map(file -> folder.relativize(file).toString())
                  .filter(file -> file.contains("/")))
          .containsExactlyInAnyOrder(
              "one/two/out/2026-10-08.html",
              "one/two/out/2026-10-08.json",
              "one/two/out/2026-10-08.exposures.csv");
    }
    assertThat(Path.of("/etc/escaped")).doesNotExist();
  }
}
