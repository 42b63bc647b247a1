package io.github.roundstar.fuzz;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.assertj.core.api.Assertions.assertThat;

import com.code_intelligence.jazzer.junit.FuzzTest;
import com.code_intelligence.jazzer.mutation.annotation.NotNull;
import io.github.roundstar.ingest.UnusableInputException;
import io.github.roundstar.pipeline.Analysis;
import io.github.roundstar.pipeline.AnalysisJob;
import io.github.roundstar.pipeline.AnalysisOutcome;
import io.github.roundstar.pipeline.FinishedNight;
import io.github.roundstar.pipeline.UnwritableOutputException;
import io.github.roundstar.results.Faults;
import io.github.roundstar.results.NightJson;
import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.junit.jupiter.api.Tag;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/**
 * The whole way from a log, an equipment file and a list of exposures to the rendered page. One
 * input holds all three, parted by lines of {@code =====}; what is empty is not given.
 */
@Tag("fuzz")
class AnalysisFuzzTest {
  private static final int MOST_BYTES = 20_000;

  private static Path folder;

  @FuzzTest(maxDuration = "2m")
  void endsWithAPageOrARefusal(byte @NotNull [] input) throws Exception {
    if (input.length > MOST_BYTES) {
      return;
    }
    if (folder == null) {
      folder = Refusal.folder();
    }
    // Latin-1 keeps every byte.
    String[] parts = new String(input, ISO_8859_1).split("(?m)^=====\\n", -1);
    Path log = Files.write(folder.resolve("night.log"), parts[0].getBytes(ISO_8859_1));
    Path out = folder.resolve("out");
    AnalysisJob job =
        new AnalysisJob(
            List.of(log.toString()),
            written("equipment.toml", parts, 1),
            Optional.empty(),
            out,
            Optional.empty(),
            true,
            true,
            "fuzzed",
            written("exposures.csv", parts, 2));
    try {
      check(Analysis.run(job));
    } catch (UnusableInputException e) {
      assertThat(e.getMessage()).contains(": ");
    } catch (UnwritableOutputException e) {
      throw new AssertionError(e);
    } finally {
      empty(out);
    }
  }

  private static void check(AnalysisOutcome outcome)
      throws IOException, ParserConfigurationException, SAXException {
    for (Faults.Caught fault : outcome.faults()) {
      throw new AssertionError(fault.part(), fault.cause());
    }
    assertThat(outcome.nights().size() + outcome.unusable().size()).isPositive();
    for (FinishedNight night : outcome.nights()) {
      String html = Files.readString(night.report());
      int script = html.indexOf("<script>");
      String markup = html.substring(0, script) + html.substring(html.indexOf("</script>") + 9);
      DocumentBuilderFactory.newInstance()
          .newDocumentBuilder()
          .parse(new InputSource(new StringReader(markup)));
      assertThat(html).doesNotContain("NaN", "Infinity");
      NightJson.read(Files.readAllBytes(night.json()));
    }
  }

  private static Optional<Path> written(String name, String[] parts, int part) throws IOException {
    return parts.length <= part || parts[part].isEmpty()
        ? Optional.empty()
        : Optional.of(Files.write(folder.resolve(name), parts[part].getBytes(ISO_8859_1)));
  }

  private static void empty(Path out) throws IOException {
    if (Files.isDirectory(out)) {
      try (Stream<Path> files = Files.list(out)) {
        for (Path file : files.toList()) {
          Files.delete(file);
        }
      }
    }
  }
}
