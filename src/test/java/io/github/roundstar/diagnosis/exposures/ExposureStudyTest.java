package io.github.roundstar.diagnosis.exposures;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.diagnosis.NightAnalysis;
import io.github.roundstar.formats.FormatException;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.ExposureFrame;
import io.github.roundstar.model.ExposureFrame.ListedShape;
import io.github.roundstar.model.Night;
import io.github.roundstar.results.Exposure;
import io.github.roundstar.results.Faults;
import io.github.roundstar.simulate.ScenarioReader;
import io.github.roundstar.simulate.SimulatedNight;
import io.github.roundstar.simulate.SimulatedRun;
import io.github.roundstar.simulate.Simulation;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Verdicts at their thresholds, and exposures that the log does not cover. */
class ExposureStudyTest {
  private static final Instant START = Instant.parse("2026-01-01T20:00:00Z");

  @Test
  void verdictsHaveTwoThresholds() {
    assertThat(JudgedBy.verdict(new Estimate(1.05, 1, 1.149), 1.15)).isEqualTo("round");
    assertThat(JudgedBy.verdict(new Estimate(1.05, 1, 1.151), 1.15)).isEqualTo("borderline");
    assertThat(JudgedBy.verdict(new Estimate(1.2, 1.149, 1.3), 1.15)).isEqualTo("borderline");
    assertThat(JudgedBy.verdict(new Estimate(1.2, 1.151, 1.3), 1.15)).isEqualTo("trailed");
  }

  private static ExposureFrame frame(String name, double minute) {
    return new ExposureFrame(
        name,
        START.plusMillis(Math.round(minute * 60_000)),
        ExposureFrame.CameraClock.UTC,
        300,
        ExposureFrame.Optics.UNKNOWN,
        Optional.empty(),
        Optional.empty());
  }

  /** An hour with a cloud from minute 20 to 28. */
  private static List<Exposure> judged(ExposureFrame... frames) throws FormatException {
    SimulatedNight night =
        Simulation.run(
            ScenarioReader.parse(
                "scenario",
                """
                [noise]
                white_arcsec = 0.3
                [[cloud]]
                at_min = 20
                minutes = 8
                depth = 1.0
                [[run]]
                duration_min = 60
                """));
    return NightAnalysis.of(
            new Night(
                "2026-01-01", night.runs().stream().map(SimulatedRun::log).toList(), List.of()),
            Equipment.UNKNOWN,
            "0",
            true,
            Optional.of(new MainCamera(List.of(frames), Map.of(), List.of())),
            new Faults())
        .result()
        .exposures();
  }

  @Test
  void exposuresWithoutEnoughOfTheLogAreNotCovered() throws FormatException {
    List<Exposure> exposures =
        judged(frame("before", -20), frame("good", 5), frame("cloud", 21), frame("late", 57));
    assertThat(exposures)
        .extracting(Exposure::verdict)
        .containsExactly("not covered", "round", "not covered", "not covered");
    assertThat(exposures)
        .extracting(Exposure::cause)
        .containsExactly(null, null, "star-lost", null);
    assertThat(exposures.get(0).predictedElongation()).isNull();
    assertThat(exposures.get(1).coverage()).isGreaterThan(0.98);
  }

  private static ExposureFrame longAt(String name, double minute, double degrees) {
    ListedShape shape =
        new ListedShape(
            new Estimate(1.3, 1.28, 1.32),
            OptionalDouble.of(2.5),
            OptionalDouble.of(degrees),
            Optional.empty(),
            Optional.empty(),
            Optional.of("uniform"));
    ExposureFrame bare = frame(name, minute);
    return new ExposureFrame(
        name, bare.start(), bare.clock(), 300, bare.optics(), Optional.of(shape), Optional.empty());
  }

  /** Where no pulse is sent the mount draws the stars out at an angle of its own. */
  @Test
  void exposuresUnderACloudDoNotHideTheOpticsAngle() throws FormatException {
    List<Exposure> exposures =
        judged(
            longAt("first", 2, 20),
            longAt("second", 8, 24),
            longAt("third", 14, 18),
            longAt("cloud", 21, 80),
            longAt("fourth", 40, 22));
    assertThat(exposures)
        .extracting(Exposure::cause)
        .containsExactly("optics", "optics", "optics", "star-lost", "optics");
  }
}
