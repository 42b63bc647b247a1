package io.github.roundstar.simulate;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.Frames;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The sample logs are what their scenarios give, and show what their names say. */
class SampleLogsTest {
  private static final Path FOLDER = Path.of("sample-logs");

  @Tag("pinned")
  @ParameterizedTest
  @ValueSource(
      strings = {
        "good-night",
        "strong-periodic-error",
        "polar-drift",
        "before-worm-adjustment",
        "after-worm-adjustment",
        "gusts-and-cloud",
        "trailed-images/trailed-images",
        "bending-guide-scope/bending-guide-scope"
      })
  void logAndTruthComeFromTheScenario(String name) throws IOException, FormatException {
    SimulatedNight night = night(name);
    StringBuilder log = new StringBuilder();
    GuideTableWriter.write(night, log);
    StringBuilder truth = new StringBuilder();
    TruthWriter.write(night, truth);

    assertThat(FOLDER.resolve(name + ".ecsv")).hasContent(log.toString());
    assertThat(FOLDER.resolve(name + ".truth.toml")).hasContent(truth.toString());
    assertThat(Files.size(FOLDER.resolve(name + ".ecsv"))).isLessThan(120_000);
    assertThat(night.runs().stream().mapToInt(run -> run.frames().size()).sum()).isEqualTo(2400);
  }

  @Tag("pinned")
  @ParameterizedTest
  @ValueSource(strings = {"trailed-images", "bending-guide-scope"})
  void imagesComeFromTheScenario(String name) throws IOException, FormatException {
    SimulatedNight night = night(name + "/" + name);
    for (SimulatedExposure exposure : Exposures.of(night)) {
      ByteArrayOutputStream image = new ByteArrayOutputStream();
      FrameRenderer.write(night, exposure, image);
      assertThat(FOLDER.resolve(name).resolve(exposure.file()))
          .hasBinaryContent(image.toByteArray());
    }
  }

  @Test
  void everyScenarioTakesExposures() throws IOException, FormatException {
    try (Stream<Path> files = Files.walk(FOLDER)) {
      List<Path> scenarios =
          files.filter(file -> file.toString().endsWith(".scenario.toml")).toList();
      assertThat(scenarios).hasSize(8);
      for (Path scenario : scenarios) {
        assertThat(Exposures.of(Simulation.run(ScenarioReader.read(scenario))))
            .as(scenario.toString())
            .hasSizeGreaterThan(10);
      }
    }
  }

  /** Keys are what the readers ask a table for. */
  @Test
  void everyKeyOfAScenarioIsDocumented() throws IOException {
    String documented = Files.readString(FOLDER.resolve("README.md"));
    Pattern asked =
        Pattern.compile(
            "\\b(?:number|integer|flag|choice|instant|table|tables|factor|drift)\\((?:\\w+,\\s*)?\"([a-z_]+)\"");
    Set<String> keys = new TreeSet<>();
    try (Stream<Path> files = Files.list(Path.of("src/main/java/io/github/roundstar/simulate"))) {
      for (Path file : files.filter(f -> f.toString().matches(".*(Keys|Reader).java")).toList()) {
        asked.matcher(Files.readString(file)).results().forEach(found -> keys.add(found.group(1)));
      }
    }
    assertThat(keys).contains("seed", "response_north", "defocus_arcsec_per_hour", "one_sided");
    assertThat(keys)
        .allSatisfy(key -> assertThat(documented).containsPattern("[`.\\[]" + key + "[`\\]]"));
  }

  @Test
  @Tag("identity")
  void goodNightIsGood() throws IOException, FormatException {
    Frames frames = night("good-night").runs().get(0).log().frames();

    assertThat(rms(frames, true)).isLessThan(0.45);
    assertThat(rms(frames, false)).isLessThan(0.45);
  }

  @Test
  @Tag("identity")
  void strongPeriodicErrorShowsInRightAscensionOnly() throws IOException, FormatException {
    Frames frames = night("strong-periodic-error").runs().get(0).log().frames();

    assertThat(rms(frames, true)).isGreaterThan(1.5 * rms(frames, false));
  }

  private static SimulatedNight night(String name) throws IOException, FormatException {
    return Simulation.run(ScenarioReader.read(FOLDER.resolve(name + ".scenario.toml")));
  }

  private static double rms(Frames frames, boolean ra) {
    int n = 0;
    double sum = 0;
    double squares = 0;
    for (int i = 0; i < frames.size(); i++) {
      if (frames.state(i) == FrameState.USED) {
        double value = ra ? frames.raArcsec(i) : frames.decArcsec(i);
        n++;
        sum += value;
        squares += value * value;
      }
    }
    return Math.sqrt(squares / n - sum / n * (sum / n));
  }
}
