package io.github.roundstar.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.diagnosis.NightAnalysis;
import io.github.roundstar.diagnosis.exposures.MainCamera;
import io.github.roundstar.ingest.EquipmentReader;
import io.github.roundstar.ingest.ExposureReader;
import io.github.roundstar.ingest.LogReader;
import io.github.roundstar.ingest.NightGrouping;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Night;
import io.github.roundstar.report.SiteDetail;
import io.github.roundstar.results.Fault;
import io.github.roundstar.results.Faults;
import io.github.roundstar.results.FiniteNumbers;
import io.github.roundstar.results.NightJson;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.NotComputed;
import io.github.roundstar.simulate.ExposureTableWriter;
import io.github.roundstar.simulate.Exposures;
import io.github.roundstar.simulate.GuideTableWriter;
import io.github.roundstar.simulate.ScenarioReader;
import io.github.roundstar.simulate.SimulatedNight;
import io.github.roundstar.simulate.Simulation;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.ConcurrentSkipListSet;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * A fault of the tool in any one figure, chart, section, finding or exposure costs that one: page
 * and JSON file are written, and both name it. Every part is broken on purpose, one at a time.
 */
class FaultsTest {
  private static final String SCENARIO =
      """
      [night]
      seed = 5
      start = "2026-09-12T19:00:00Z"
      latitude_deg = 47
      cadence_s = 7
      [polar_axis]
      azimuth_arcmin = 12
      altitude_arcmin = -7
      [mount]
      worm_period_s = 300
      dec_backlash_arcsec = 3
      ra_wander_arcsec_per_root_s = 0.02
      [[mount.harmonic]]
      amplitude_arcsec = 8
      [noise]
      white_arcsec = 0.4
      [gusts]
      per_hour = 6
      [dither]
      every_min = 4
      [exposures]
      seconds = 240
      stars = 5
      [[run]]
      duration_min = 17
      hour_angle_h = -2
      [[run]]
      duration_min = 17
      hour_angle_h = 2
      """;

  @TempDir static Path folder;
  private static Night night;
  private static Equipment equipment;
  private static MainCamera camera;

  @BeforeAll
  static void play() throws Exception {
    SimulatedNight simulated = Simulation.run(ScenarioReader.parse("night", SCENARIO));
    StringBuilder log = new StringBuilder();
    GuideTableWriter.write(simulated, log);
    Path file = Files.writeString(folder.resolve("night.ecsv"), log);
    night =
        NightGrouping.group(
                List.of(LogReader.read(file, Optional.empty())),
                OptionalDouble.of(11),
                Optional.empty())
            .nights()
            .get(0);
    equipment = EquipmentReader.read(Path.of("sample-logs/equipment.toml"));
    StringBuilder list = new StringBuilder();
    ExposureTableWriter.write(simulated, Exposures.of(simulated), list);
    Path exposures = Files.writeString(folder.resolve("exposures.ecsv"), list);
    camera = new MainCamera(ExposureReader.read(exposures).frames(), Map.of(), List.of());
  }

  private static NightAnalysis analysis(Faults faults) {
    return NightAnalysis.of(night, equipment, "test", true, Optional.of(camera), faults);
  }

  private static FinishedNight finish(NightAnalysis analysis, Faults faults, String name)
      throws Exception {
    return Analysis.finish(
        night.name(),
        analysis,
        List.of(),
        SiteDetail.ROUNDED,
        UnaryOperator.identity(),
        new ResultFiles(folder.resolve(name)),
        faults);
  }

  @TestFactory
  Stream<DynamicTest> aFaultInAnyPartCostsThatPart() throws Exception {
    Set<String> figures = new ConcurrentSkipListSet<>();
    Faults none = new Faults(figures::add);
    NightAnalysis sound = analysis(none);
    Set<String> shown = new ConcurrentSkipListSet<>();
    finish(sound, new Faults(shown::add), "sound");
    shown.removeAll(figures);
    assertThat(none.all()).isEmpty();
    assertThat(figures.size() + shown.size()).isGreaterThan(80);
    return Stream.concat(
        figures.stream()
            .map(
                part ->
                    DynamicTest.dynamicTest(
                        part,
                        () -> {
                          Faults faults = breaking(part);
                          broken(part, analysis(faults), faults);
                        })),
        // What only shows the figures need not work them out again.
        shown.stream()
            .map(part -> DynamicTest.dynamicTest(part, () -> broken(part, sound, breaking(part)))));
  }

  private static Faults breaking(String part) {
    return new Faults(
        begun -> {
          if (begun.equals(part)) {
            throw new IllegalStateException("broken on purpose");
          }
        });
  }

  private static void broken(String part, NightAnalysis analysis, Faults faults) throws Exception {
    FinishedNight finished = finish(analysis, faults, "broken");

    assertThat(faults.all()).extracting(Faults.Caught::part).containsExactly(part);
    Soundness.check(finished.report(), finished.json(), "night");
    NightResult read = NightJson.read(Files.readAllBytes(finished.json()));
    assertThat(read.faults()).extracting(Fault::part).containsExactly(part);
    assertThat(read.faults().get(0).what()).contains("IllegalStateException", "broken on purpose");
    assertThat(Soundness.page(finished.report()).getDocumentElement().getTextContent())
        .contains("Missing by a fault of roundstar itself: ", "--verbose")
        .doesNotContain("fault of roundstar itself: /");
    assertThat(read.runs()).hasSize(2);
    assertThat(read.verdict()).isNotNull();
    assertThat(read.night().frames())
        .isEqualTo(night.runs().stream().mapToInt(r -> r.frames().size()).sum());
    if (part.startsWith("/") && !part.contains(" ")) {
      String anyRun = part.replaceAll("^/runs/\\d", "/runs/*");
      assertThat(read.notComputed())
          .filteredOn(gap -> gap.because().equals(Faults.BECAUSE))
          .extracting(NotComputed::figure)
          .containsAnyOf(part, anyRun);
    }
  }

  @Test
  void aNumberThatJsonDoesNotHaveCostsItsRecord() throws Exception {
    Faults faults = new Faults();
    NightResult sound = analysis(new Faults()).result();
    NightResult wrong =
        new NightResult(
            sound.schema(),
            sound.version(),
            sound.inputs(),
            sound.night(),
            sound.runs(),
            sound.polarAxis(),
            sound.seeing(),
            sound.exposures(),
            Stream.concat(
                    sound.replay().stream().limit(1),
                    sound.replay().stream()
                        .skip(1)
                        .limit(1)
                        .map(
                            row ->
                                new io.github.roundstar.results.Replay(
                                    row.axis(),
                                    row.gain(),
                                    row.deadbandArcsec(),
                                    row.cadenceSeconds(),
                                    Double.NaN,
                                    row.predictedMotionRmsArcsec(),
                                    row.trained(),
                                    row.current(),
                                    row.best(),
                                    row.lessMotionArcsec())))
                .toList(),
            sound.findings(),
            sound.verdict(),
            sound.notComputed(),
            sound.methods(),
            List.of());
    NightResult finite = FiniteNumbers.of(wrong, faults);
    NightJson.write(finite);
    assertThat(finite.replay().get(0)).isEqualTo(sound.replay().get(0));
    assertThat(faults.all())
        .extracting(Faults.Caught::part)
        .containsExactly("/replay/1/predictedLoggedRmsArcsec");
  }
}
