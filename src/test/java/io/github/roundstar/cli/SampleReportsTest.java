package io.github.roundstar.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The reports in {@code reports/} are what the code writes today of the nights in {@code
 * sample-logs/}; DEVELOPERS.md has the command that makes them anew.
 */
@Tag("pinned")
class SampleReportsTest {
  private static final Path REPORTS = Path.of("reports");
  private static final int LARGEST_REPORT_BYTES = 450_000;

  /** Where sines and logarithms may round otherwise, figures agree to this. */
  private static final double OTHER_PROCESSOR = 1e-6;

  private static final boolean SAME_PROCESSOR =
      System.getProperty("os.arch").matches("amd64|x86_64");

  @TempDir static Path written;

  @BeforeAll
  static void analyseAll() {
    Ran ran =
        Ran.of(
            "analyze",
            "--equipment",
            "sample-logs/equipment.toml",
            "--out",
            written,
            "sample-logs");
    ran.endsWith(0);
    assertThat(ran.err()).isEmpty();
    for (String night : List.of("bending-guide-scope", "trailed-images")) {
      Path logs = Path.of("sample-logs", night);
      Ran.of(
              "analyze",
              "--equipment",
              "sample-logs/equipment.toml",
              "--exposures",
              logs,
              "--out",
              written,
              logs)
          .endsWith(0);
    }
  }

  private static List<Path> results(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .map(Path::getFileName)
          .filter(name -> name.toString().matches(".*\\.(html|json)"))
          .sorted()
          .toList();
    }
  }

  @Test
  void everySampleNightHasItsReport() throws IOException {
    assertThat(results(written)).hasSize(17).isEqualTo(results(REPORTS));
  }

  @Test
  void jsonIsWhatTheCodeWrites() throws IOException {
    for (Path name : results(written)) {
      if (name.toString().endsWith(".json")) {
        if (SAME_PROCESSOR) {
          assertThat(REPORTS.resolve(name)).hasSameBinaryContentAs(written.resolve(name));
        } else {
          ObjectMapper mapper = new ObjectMapper();
          assertClose(
              name.toString(),
              mapper.readTree(REPORTS.resolve(name).toFile()),
              mapper.readTree(written.resolve(name).toFile()));
        }
      }
    }
  }

  /** A curve's last hundredth of a pixel may round otherwise elsewhere, so only here. */
  @Test
  void pagesAreWhatTheCodeWrites() throws IOException {
    for (Path name : results(written)) {
      assertThat(Files.size(REPORTS.resolve(name))).isLessThan(LARGEST_REPORT_BYTES);
      if (SAME_PROCESSOR) {
        assertThat(REPORTS.resolve(name)).hasSameBinaryContentAs(written.resolve(name));
      }
    }
  }

  private static void assertClose(String place, JsonNode one, JsonNode other) {
    if (one.isNumber() && other.isNumber()) {
      double value = one.doubleValue();
      assertThat(other.doubleValue())
          .as(place)
          .isCloseTo(value, within(OTHER_PROCESSOR * Math.abs(value)));
      return;
    }
    assertThat(other.getNodeType()).as(place).isEqualTo(one.getNodeType());
    assertThat(other.size()).as(place).isEqualTo(one.size());
    if (one.isValueNode()) {
      assertThat(other).as(place).isEqualTo(one);
    }
    for (Iterator<String> names = one.fieldNames(); names.hasNext(); ) {
      String name = names.next();
      assertClose(place + "/" + name, one.get(name), other.path(name));
    }
    for (int i = 0; i < one.size() && one.isArray(); i++) {
      assertClose(place + "/" + i, one.get(i), other.get(i));
    }
  }
}
