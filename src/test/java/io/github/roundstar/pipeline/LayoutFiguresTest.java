package io.github.roundstar.pipeline;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.ingest.layout.InventedLog;
import io.github.roundstar.ingest.layout.InventedNight;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.results.AxisScatter;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.NotComputed;
import io.github.roundstar.results.RunResult;
import io.github.roundstar.simulate.SimulatedNight;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * A night gives the same figures in whatever layout it was logged, to the rounding of the log: by
 * its layout file, and without one where the log tells all.
 */
@Tag("identity")
class LayoutFiguresTest {
  private static final double ROUNDING_ARCSEC = 0.003;

  @TempDir static Path folder;
  private static SimulatedNight night;
  private static NightResult table;
  private static NightResult tableWithoutShifts;

  @BeforeAll
  static void analyseTheTable() throws Exception {
    night = InventedNight.play(11, 40);
    String text = InventedNight.table(night);
    table = analyse("table.ecsv", text.getBytes(UTF_8), Optional.empty());
    tableWithoutShifts =
        analyse("sizes.ecsv", InventedNight.withoutShifts(text).getBytes(UTF_8), Optional.empty());
  }

  private static NightResult analyse(String name, byte[] log, Optional<Path> layout)
      throws Exception {
    AnalysisOutcome outcome = run(name, log, layout);
    assertThat(outcome.unusable()).isEmpty();
    return outcome.nights().get(0).result();
  }

  private static AnalysisOutcome run(String name, byte[] log, Optional<Path> layout)
      throws Exception {
    Path file = Files.write(folder.resolve(name), log);
    return Analysis.run(
        new AnalysisJob(
            List.of(file.toString()),
            Optional.empty(),
            layout,
            folder.resolve("out-" + name),
            Optional.empty(),
            true,
            "test"));
  }

  @ParameterizedTest
  @EnumSource
  void everyFigureIsThatOfTheTable(InventedLog invented) throws Exception {
    Path layout = Files.writeString(folder.resolve(invented + ".toml"), invented.layout());

    NightResult result = analyse(invented + ".log", invented.bytes(night), Optional.of(layout));

    assertThat(result.inputs().get(0).layout()).isEqualTo("layout/" + invented + ".toml");
    assertSame(result, invented.tellsShifts() ? table : tableWithoutShifts);
  }

  @ParameterizedTest
  @EnumSource(names = {"CRANE", "BARGE"})
  void logThatTellsAllNeedsNoLayoutFile(InventedLog invented) throws Exception {
    AnalysisOutcome outcome =
        run("inferred-" + invented + ".log", invented.bytes(night), Optional.empty());

    assertThat(outcome.warnings().get(0)).contains("its layout was worked out from the text");
    NightResult result = outcome.nights().get(0).result();
    assertThat(result.inputs().get(0).layout()).isEqualTo("layout/inferred");
    assertSame(result, tableWithoutShifts);
  }

  private static void assertSame(NightResult result, NightResult table) {
    assertThat(result.night().date()).isEqualTo(table.night().date());
    assertThat(result.runs()).hasSameSizeAs(table.runs());
    assertThat(result.night().guided().rmsRadialArcsec())
        .isCloseTo(table.night().guided().rmsRadialArcsec(), within(ROUNDING_ARCSEC));
    assertClose(
        result.night().periodic().peakToPeakArcsecAxis(),
        table.night().periodic().peakToPeakArcsecAxis(),
        0.01);
    for (int i = 0; i < result.runs().size(); i++) {
      RunResult ours = result.runs().get(i);
      RunResult theirs = table.runs().get(i);
      assertThat(ours.counts()).isEqualTo(theirs.counts());
      assertThat(ours.mode()).isEqualTo(theirs.mode());
      assertThat(ours.pierSide()).isEqualTo(theirs.pierSide());
      assertThat(ours.cadenceSeconds()).isCloseTo(theirs.cadenceSeconds(), within(2e-3));
      assertThat(ours.guideScaleArcsecPerPixel() == null ? 2.43 : ours.guideScaleArcsecPerPixel())
          .isBetween(2.4, 2.5);
      assertScatter(ours.guided().ra(), theirs.guided().ra());
      assertScatter(ours.guided().dec(), theirs.guided().dec());
      assertClose(ours.driftArcsecPerMinuteSky().ra(), theirs.driftArcsecPerMinuteSky().ra(), 0.01);
      assertClose(
          ours.driftArcsecPerMinuteSky().dec(), theirs.driftArcsecPerMinuteSky().dec(), 0.01);
    }
  }

  private static void assertScatter(AxisScatter ours, AxisScatter theirs) {
    assertThat(ours.rmsArcsec()).isCloseTo(theirs.rmsArcsec(), within(ROUNDING_ARCSEC));
    assertThat(ours.meanArcsec()).isCloseTo(theirs.meanArcsec(), within(ROUNDING_ARCSEC));
    assertThat(ours.peakArcsec()).isCloseTo(theirs.peakArcsec(), within(ROUNDING_ARCSEC));
    assertThat(ours.p95Arcsec()).isCloseTo(theirs.p95Arcsec(), within(ROUNDING_ARCSEC));
  }

  private static void assertClose(Estimate ours, Estimate theirs, double within) {
    assertThat(ours.value()).isCloseTo(theirs.value(), within(within));
  }

  @Test
  void withoutNamedDirectionsSizesStandAndDirectionsAreMissing() throws Exception {
    String nameless =
        InventedLog.CRANE
            .text(night)
            .replace("Star East", "RA error")
            .replace("Star North", "Dec error")
            .replace("Push East", "RA pulse")
            .replace("Push North", "Dec pulse");

    NightResult result = analyse("nameless.log", nameless.getBytes(UTF_8), Optional.empty());

    RunResult run = result.runs().get(0);
    assertThat(run.guided().ra().rmsArcsec())
        .isCloseTo(table.runs().get(0).guided().ra().rmsArcsec(), within(ROUNDING_ARCSEC));
    assertClose(
        result.night().periodic().peakToPeakArcsecAxis(),
        tableWithoutShifts.night().periodic().peakToPeakArcsecAxis(),
        0.01);
    assertThat(run.driftArcsecPerMinuteSky().ra()).isNull();
    assertThat(run.driftArcsecPerMinuteSky().dec()).isNull();
    assertThat(run.guided().ra().meanArcsec()).isNull();
    assertThat(run.guided().positionAngleDeg()).isNull();
    assertThat(result.notComputed())
        .filteredOn(gap -> gap.figure().endsWith("/driftArcsecPerMinuteSky/ra"))
        .extracting(NotComputed::because)
        .allMatch(because -> because.contains("does not tell east from west"));
  }

  @Test
  void openQuestionStopsOnlyThatLog() throws Exception {
    AnalysisOutcome outcome = run("open.log", InventedLog.QUAY.bytes(night), Optional.empty());

    assertThat(outcome.nights()).isEmpty();
    assertThat(outcome.unusable()).hasSize(1);
    assertThat(outcome.unusable().get(0))
        .startsWith("open.log: its layout cannot be worked out without an answer to")
        .contains("name = \"dra\"", "unit = \"arcsec\"   # or \"px\"");
  }
}
