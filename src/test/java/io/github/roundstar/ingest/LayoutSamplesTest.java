package io.github.roundstar.ingest;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.ingest.layout.Decision;
import io.github.roundstar.ingest.layout.InventedLog;
import io.github.roundstar.ingest.layout.InventedNight;
import io.github.roundstar.model.GuideLog;
import io.github.roundstar.simulate.SimulatedNight;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The worked examples in sample-logs/layouts are what the tests' invented logs write. */
class LayoutSamplesTest {
  private static final Path FOLDER = Path.of("sample-logs", "layouts");

  @ParameterizedTest
  @EnumSource(names = {"CRANE", "BARGE", "LOFT"})
  void exampleIsTheInventedLogAndReads(InventedLog invented) throws Exception {
    SimulatedNight night = InventedNight.play(3, 5);
    String name = invented.name().toLowerCase(Locale.ROOT);
    Path log = FOLDER.resolve(name + ".log");
    Path layout = FOLDER.resolve(name + ".layout.toml");

    assertThat(Files.readAllBytes(log)).isEqualTo(invented.bytes(night));
    assertThat(Files.readString(layout)).isEqualTo(invented.layout());

    GuideLog read = LogReader.read(log, Optional.of(LayoutReader.layout(layout)));

    assertThat(read.runs()).hasSize(2);
    assertThat(read.source().unusable()).isZero();
  }

  @Test
  void exampleThatDoesNotTellItsUnitsIsAskedAbout() throws Exception {
    assertThat(InferredLog.infer(FOLDER.resolve("loft.log")).open())
        .extracting(Decision::ask)
        .anyMatch(ask -> ask.contains("at = 2") && ask.contains("unit = \"arcsec\"   # or \"px\""));
  }

  @ParameterizedTest
  @EnumSource(names = {"CRANE", "BARGE"})
  void exampleThatTellsAllNeedsNoLayout(InventedLog invented) throws Exception {
    Path log = FOLDER.resolve(invented.name().toLowerCase(Locale.ROOT) + ".log");

    GuideLog read = LogReader.read(log, Optional.empty());

    assertThat(read.source().layout()).isEqualTo("layout/inferred");
    assertThat(read.source().unusable()).isZero();
  }
}
