package io.github.roundstar.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion.VersionFlag;
import io.github.roundstar.results.NightResult;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Before and after from the command line: logs and JSON results alike. Schema check: networknt
 * json-schema-validator, JSON Schema 2020-12.
 */
class CompareCommandTest {
  private static final String BEFORE = "reports/2026-10-20.json";
  private static final String AFTER = "reports/2026-10-24.json";
  private static final String STEM = "compare-2026-10-20-2026-10-24";

  @TempDir static Path folder;
  private static Path logs;

  @BeforeAll
  static void compareLogs() {
    logs = folder.resolve("logs");
    Ran.of(
            "compare",
            "--equipment",
            "sample-logs/equipment.toml",
            "--before",
            "sample-logs/before-worm-adjustment.ecsv",
            "--after",
            "sample-logs/after-worm-adjustment.ecsv",
            "--out",
            logs)
        .endsWith(0);
  }

  static void assertKeepsTo(String schema, Path json) throws IOException {
    try (InputStream in = NightResult.class.getResourceAsStream("/schema/" + schema)) {
      assertThat(
              JsonSchemaFactory.getInstance(VersionFlag.V202012)
                  .getSchema(in)
                  .validate(new ObjectMapper().readTree(json.toFile())))
          .isEmpty();
    }
  }

  private static JsonNode figure(Path json, String key) throws IOException {
    for (JsonNode figure : new ObjectMapper().readTree(json.toFile()).get("figures")) {
      if (figure.get("key").asText().equals(key)) {
        return figure;
      }
    }
    throw new AssertionError(key);
  }

  /** Truth: worm 5.8 and 1.4, second harmonic 2.4 and 0.5 arcsec at the axis. */
  @Test
  void theAdjustedWormIsFoundBetter() throws IOException {
    Path json = logs.resolve(STEM + ".json");
    assertKeepsTo("roundstar.compare-1.schema.json", json);
    JsonNode worm = figure(json, "periodic-worm");
    assertThat(worm.get("verdict").asText()).isEqualTo("better");
    assertThat(worm.at("/before/value").asDouble()).isBetween(5.5, 6.1);
    assertThat(worm.at("/after/value").asDouble()).isBetween(1.25, 1.55);
    assertThat(figure(json, "backlash-dec").get("verdict").asText()).isEqualTo("cannot tell");
    assertThat(Files.readString(logs.resolve(STEM + ".html")))
        .contains("The mount is better", "id=\"spectra", "id=\"turns", "id=\"distances")
        .doesNotContain("NaN", "null");
  }

  @Test
  void resultsCompareAsTheirLogsAndSayWhatCannotBeDrawn() throws IOException {
    Path out = folder.resolve("results");
    Ran ran = Ran.of("compare", "--before", BEFORE, "--after", AFTER, "--out", out).endsWith(0);
    assertThat(ran.out()).contains("better", "cannot tell", "The mount is better");
    Path json = out.resolve(STEM + ".json");
    assertKeepsTo("roundstar.compare-1.schema.json", json);
    assertThat(figure(json, "periodic-worm").get("change"))
        .isEqualTo(figure(logs.resolve(STEM + ".json"), "periodic-worm").get("change"));
    assertThat(Files.readString(out.resolve(STEM + ".html")))
        .contains("Charts left out", "Spectra: it needs the frames")
        .contains("id=\"turns");
  }

  @Test
  void theSameNightOnBothSidesIsNamedAndNothingIsLeft() {
    Ran ran =
        Ran.of("compare", "--before", BEFORE, "--after", BEFORE, "--out", folder.resolve("same"));
    ran.endsWith(3);
    assertThat(ran.err())
        .contains("2026-10-20.json: the night is on both sides: it was left out of both")
        .contains("--before: no night is left to compare");
    assertThat(folder.resolve("same")).doesNotExist();
  }

  @Test
  void aResultOfANewerLayoutIsNamedAndLeftOut() throws IOException {
    Path newer = folder.resolve("newer.json");
    Files.writeString(newer, Files.readString(Path.of(AFTER)).replace("night/1", "night/2"));
    Ran ran =
        Ran.of(
            "compare", "--before", BEFORE, "--after", newer, AFTER, "--out", folder.resolve("new"));
    ran.endsWith(3);
    assertThat(ran.err())
        .contains("newer.json: written by a newer version of roundstar (roundstar.night/2)");
    assertThat(folder.resolve("new/" + STEM + ".json")).exists();
  }

  @Test
  void aResultOfANewerVersionIsUsedAndSaid() throws IOException {
    Path newer = folder.resolve("later.json");
    Files.writeString(
        newer,
        Files.readString(Path.of(AFTER))
            .replaceFirst("\"version\": \"[^\"]*\"", "\"version\": \"99.1\", \"moon\": 3"));
    Ran ran =
        Ran.of("compare", "--before", BEFORE, "--after", newer, "--out", folder.resolve("later"));
    ran.endsWith(0);
    assertThat(ran.err()).contains("later.json was written by roundstar 99.1, which is newer");
  }

  @Test
  void whatIsNoResultIsNamed() throws IOException {
    Path broken = Files.write(folder.resolve("broken.json"), "{\"schema\": 3".getBytes(UTF_8));
    Ran ran =
        Ran.of(
            "compare",
            "--before",
            BEFORE,
            broken,
            folder.resolve("missing.json"),
            "--after",
            AFTER,
            "--out",
            folder.resolve("broken"));
    ran.endsWith(3);
    assertThat(ran.err())
        .contains("broken.json: not a night's result that can be read: analyse the log again")
        .contains("missing.json: no such file: check the path");
  }

  /** A result that somebody changed is refused as none; no file is named after what it says. */
  @ParameterizedTest
  @CsvSource({
    "/night, date, ../../escaped",
    "/night, date, /etc/escaped",
    "/night/guided, ra,",
    "/night/periodic/components/0, periodSeconds,",
    "/notComputed/0, figure,",
    "/night, guidedHours, NaN"
  })
  void aChangedResultIsRefused(String parent, String key, String value) throws IOException {
    JsonNode document = new ObjectMapper().readTree(Path.of(BEFORE).toFile());
    ((ObjectNode) document.at(parent)).put(key, value);
    Path changed = folder.resolve("one/changed.json");
    Files.createDirectories(changed.getParent());
    new ObjectMapper().writeValue(changed.toFile(), document);
    Path out = folder.resolve("one/two/three");

    Ran ran = Ran.of("compare", "--before", changed, "--after", AFTER, "--out", out).endsWith(3);

    assertThat(ran.errLines().get(0)).startsWith("changed.json: not a night's result that can be");
    assertThat(out).doesNotExist();
    assertThat(folder.resolve("one/escaped.html")).doesNotExist();
  }
}
