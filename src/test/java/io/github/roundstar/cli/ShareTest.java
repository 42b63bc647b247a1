package io.github.roundstar.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * With {@code --share} nothing that gives the site away leaves, neither in JSON nor on the page.
 */
class ShareTest {
  private static final Path LOG = Path.of("sample-logs/polar-drift.ecsv");
  private static final Path EQUIPMENT = Path.of("sample-logs/equipment.toml");
  @TempDir static Path folder;

  private static Path sited;
  private static JsonNode open;
  private static JsonNode shared;
  private static String sharedFiles;

  @BeforeAll
  static void analyse() throws Exception {
    // Digits that no other figure comes to by chance.
    sited = folder.resolve("sited.toml");
    Files.writeString(
        sited,
        Files.readString(EQUIPMENT).replace("longitude_deg = 11.6", "longitude_deg = 11.6437"));
    open = result("open", sited, LOG);
    shared = result("shared", sited, LOG, "--share");
    sharedFiles = text("shared", ".json") + text("shared", ".html");
  }

  private static JsonNode result(String out, Path equipment, Path log, String... more)
      throws IOException {
    List<Object> call = new ArrayList<>(List.of("analyze", "--quiet"));
    call.addAll(List.of(more));
    call.addAll(List.of("--equipment", equipment, "--out", folder.resolve(out), log));
    Ran.of(call.toArray()).endsWith(0);
    return new ObjectMapper().readTree(text(out, ".json"));
  }

  private static String text(String out, String ending) throws IOException {
    return Files.readString(folder.resolve(out).resolve("2026-10-15" + ending));
  }

  @Test
  void hourAnglesAirmassAndHemisphereStayAway() {
    assertThat(open.at("/runs/0/hourAngleHours").isNumber()).isTrue();
    shared.at("/runs").forEach(run -> assertThat(run.at("/hourAngleHours").isNull()).isTrue());
    shared.at("/seeing/runs").forEach(run -> assertThat(run.at("/airmass").isNull()).isTrue());
    assertThat(shared.at("/night/comparison/hemisphere").isNull()).isTrue();
    assertThat(shared.at("/polarAxis/altitudeFromRefractedPoleArcmin").isNull()).isTrue();
  }

  /**
   * Neither latitude nor longitude of the equipment file stands anywhere, nor as rounded degrees.
   */
  @Test
  void coordinatesStandNowhere() throws IOException {
    // Pixels of charts come to any number.
    String told =
        sharedFiles.replaceAll(" (d|points|transform|[xyr]|[xy][12]|c[xy])=\"[^\"]*\"", "");
    assertThat(told)
        .contains("<text")
        .doesNotContainPattern("(?<![0-9.])11\\.6[0-9]* ?(deg|\u00b0)");
    for (String line : Files.readAllLines(sited)) {
      if (line.startsWith("latitude_deg") || line.startsWith("longitude_deg")) {
        String degrees = line.replaceAll("[^=]*= *([-0-9.]+).*", "$1");
        assertThat(told)
            .doesNotContainPattern("(?<![0-9.])" + degrees.replace(".", "\\.") + "(?![0-9])");
      }
    }
  }

  /**
   * Azimuth about the vertical and both parts on the sky together would tell the latitude: they are
   * rounded to a tenth of an arcminute, the total to half of one, intervals outward.
   */
  @ParameterizedTest(name = "{0} in steps of {1}")
  @CsvSource({"azimuthArcmin, 0.1", "altitudeArcmin, 0.1", "totalArcmin, 0.5"})
  void axisIsRounded(String figure, double step) {
    JsonNode exact = open.at("/polarAxis/" + figure);
    JsonNode round = shared.at("/polarAxis/" + figure);
    for (String part : new String[] {"value", "lo95", "hi95"}) {
      double steps = round.get(part).asDouble() / step;
      assertThat(steps).isCloseTo(Math.rint(steps), within(1e-6));
    }
    assertThat(round.get("value").asDouble())
        .isCloseTo(exact.get("value").asDouble(), within(step / 2 + 1e-9));
    assertThat(round.get("lo95").asDouble()).isLessThanOrEqualTo(exact.get("lo95").asDouble());
    assertThat(round.get("hi95").asDouble()).isGreaterThanOrEqualTo(exact.get("hi95").asDouble());
  }

  /** The air's charts: time always, airmass only where the site may be told. */
  @Test
  void airmassStaysAway() throws IOException {
    assertThat(text("open", ".html"))
        .contains("Noise floor and scatter against time")
        .contains("data-of=\"airmass\"")
        .contains("Run 2, tube east: RMS");
    assertThat(text("shared", ".html"))
        .contains("Noise floor and scatter against time")
        .doesNotContain("Noise floor and scatter against airmass", "data-of=\"airmass\"");
  }

  /** Where nobody told the latitude, the latitudes that the stars allow are kept back too. */
  @Test
  void assumedLatitudesStayAway() throws IOException {
    Path log = folder.resolve("unsited.ecsv");
    Files.writeString(log, Files.readString(LOG).replaceAll("(?m)^#   site_latitude.*\\R", ""));
    Path equipment = folder.resolve("unsited.toml");
    Files.writeString(
        equipment, Files.readString(EQUIPMENT).replaceAll("(?m)^latitude_deg.*\\R", ""));

    JsonNode told = result("unsited", equipment, log).at("/polarAxis/assumed");
    JsonNode kept = result("kept", equipment, log, "--share").at("/polarAxis/assumed");

    assertThat(told.get("latitudeFromDeg").asDouble()).isLessThan(47.2);
    assertThat(told.get("latitudeToDeg").asDouble()).isGreaterThan(47.2);
    assertThat(kept.get("latitudeFromDeg").isNull()).isTrue();
    assertThat(kept.get("latitudeToDeg").isNull()).isTrue();
    assertThat(text("unsited", ".html"))
        .contains("from latitude \u221219 to 65 degrees")
        .contains("Refraction cannot be taken out without the latitude")
        .contains("Add site_latitude");
    assertThat(text("kept", ".html")).doesNotContain("from latitude");
  }
}
