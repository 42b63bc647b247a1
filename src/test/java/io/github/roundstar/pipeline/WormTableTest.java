package io.github.roundstar.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The worm's curve stands beside the report as a table that other programs read. */
class WormTableTest {
  @TempDir private Path folder;

  private Path analysed(String sample) throws Exception {
    AnalysisOutcome outcome =
        Analysis.run(
            new AnalysisJob(
                List.of("sample-logs/" + sample + ".ecsv"),
                Optional.of(Path.of("sample-logs/equipment.toml")),
                Optional.empty(),
                folder,
                Optional.empty(),
                true,
                "test"));
    String report = outcome.nights().get(0).report().getFileName().toString();
    return folder.resolve(report.replace(".html", ".worm.ecsv"));
  }

  @Test
  void tableHoldsOneTurnWithItsSpread() throws Exception {
    List<String> lines =
        Files.readAllLines(analysed("strong-periodic-error"), StandardCharsets.UTF_8);
    assertThat(lines.get(0)).isEqualTo("# %ECSV 1.0");
    assertThat(lines).contains("phase,ra_axis,spread,fit");
    List<String> rows = lines.subList(lines.indexOf("phase,ra_axis,spread,fit") + 1, lines.size());
    assertThat(rows).hasSize(48).allMatch(row -> row.split(",").length == 4);
    double highest =
        rows.stream().mapToDouble(row -> Double.parseDouble(row.split(",")[3])).max().orElseThrow();
    assertThat(highest).isBetween(4.0, 9.0);
  }
}
