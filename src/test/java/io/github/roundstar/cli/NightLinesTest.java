package io.github.roundstar.cli;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.pipeline.Analysis;
import io.github.roundstar.pipeline.AnalysisJob;
import io.github.roundstar.results.NightResult;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine.Help.Ansi;

/** The summary on the terminal: short, aligned, coloured only where asked. */
class NightLinesTest {
  @TempDir private Path folder;

  @ParameterizedTest
  @ValueSource(strings = {"strong-periodic-error", "polar-drift", "gusts-and-cloud"})
  void summaryIsTenAlignedLinesWithItsPaths(String sample) throws Exception {
    List<String> lines = NightLines.of(result(sample), Ansi.OFF);

    assertThat(lines.size() + 2).isLessThanOrEqualTo(10);
    assertThat(lines).allMatch(line -> line.length() <= 80);
    assertThat(lines.subList(1, lines.size())).allMatch(line -> line.matches(" {2}[a-z ]{9}\\S.*"));
    assertThat(String.join("", lines)).doesNotContain("\u001b");
  }

  @Test
  void coloursAreAddedToTheSameWords() throws Exception {
    NightResult result = result("strong-periodic-error");
    String coloured = String.join("\n", NightLines.of(result, Ansi.ON));

    assertThat(coloured).contains("\u001b[1m\u001b[31mfix first\u001b[", "\u001b[32mfine\u001b[");
    assertThat(coloured.replaceAll("\u001b\\[[0-9;]*m", ""))
        .isEqualTo(String.join("\n", NightLines.of(result, Ansi.OFF)));
  }

  private NightResult result(String sample) throws Exception {
    return Analysis.run(
            new AnalysisJob(
                List.of("sample-logs/" + sample + ".ecsv"),
                Optional.of(Path.of("sample-logs/equipment.toml")),
                Optional.empty(),
                folder,
                Optional.empty(),
                true,
                "test"))
        .nights()
        .get(0)
        .result();
  }
}
