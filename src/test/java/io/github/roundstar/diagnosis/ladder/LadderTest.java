package io.github.roundstar.diagnosis.ladder;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.pipeline.Analysis;
import io.github.roundstar.pipeline.AnalysisJob;
import io.github.roundstar.results.Cure;
import io.github.roundstar.results.Need;
import io.github.roundstar.results.NightJson;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.Rung;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The ladder of the invented night with a worm that swings by twelve arcsec. */
@Tag("identity")
class LadderTest {
  @TempDir static Path folder;
  private static NightResult night;

  @BeforeAll
  static void analyse() throws Exception {
    night = analysed("sample-logs/equipment.toml", folder.resolve("first"));
  }

  private static NightResult analysed(String equipment, Path out) throws Exception {
    return Analysis.run(
            new AnalysisJob(
                List.of("sample-logs/strong-periodic-error.ecsv"),
                Optional.of(Path.of(equipment)),
                Optional.empty(),
                out,
                Optional.empty(),
                true,
                "test"))
        .nights()
        .get(0)
        .result();
  }

  private static Rung rung(String name) {
    return night.rung(name).orElseThrow();
  }

  @Test
  void rungsStandFromCheapToDear() {
    assertThat(night.ladder())
        .extracting(Rung::rung)
        .containsExactly(
            "as-it-was",
            "settings",
            "alignment-balance",
            "shorter-exposures",
            "training",
            "mechanics",
            "loop-limit",
            "air-limit");
  }

  /** The star's own motion: what is logged, less the noise that the posterior has. */
  @Test
  void nightAsItWasMovesByWhatIsLoggedLessTheNoise() {
    double logged = night.night().guided().rmsRadialArcsec();
    double noise =
        Math.hypot(
            night.night().noiseFloorArcsec().ra().value(),
            night.night().noiseFloorArcsec().dec().value());

    assertThat(rung(Rung.AS_IT_WAS).loggedRadialRmsArcsec().value())
        .isBetween(0.999 * logged, 1.001 * logged);
    assertThat(rung(Rung.AS_IT_WAS).radialRmsArcsec().value())
        .isBetween(
            0.93 * Math.sqrt(logged * logged - noise * noise),
            1.07 * Math.sqrt(logged * logged - noise * noise));
  }

  /**
   * A first-order loop leaves of a slow sinusoid 1 / gain of its step: with the gain doubled, half;
   * by hand with the swing of the log, 0.57 arcsec of RMS in right ascension.
   */
  @Test
  void higherGainLeavesLessOfTheWorm() {
    Cure gain = rung(Rung.SETTINGS).cures().get(0);

    assertThat(gain.cure()).isEqualTo("ra-gain");
    assertThat(gain.numbers().get("toGain")).isGreaterThan(1.5 * gain.numbers().get("fromGain"));
    assertThat(rung(Rung.SETTINGS).radialRmsArcsec().high())
        .isLessThan(rung(Rung.AS_IT_WAS).radialRmsArcsec().low());
    assertThat(rung(Rung.SETTINGS).round().low()).isGreaterThan(rung(Rung.AS_IT_WAS).round().low());
  }

  @Test
  void nothingBeatsTheLoopsLimitButAPerfectMount() {
    for (Rung each : night.ladder()) {
      boolean perfect = each.rung().equals(Rung.AIR_LIMIT);
      double limit = rung(Rung.LOOP_LIMIT).radialRmsArcsec().value();
      assertThat(each.radialRmsArcsec().value())
          .as(each.rung())
          .isGreaterThanOrEqualTo(perfect ? 0 : limit);
    }
    assertThat(rung(Rung.AIR_LIMIT).round().value()).isEqualTo(rung(Rung.AIR_LIMIT).units());
  }

  @Test
  void sameNightGivesTheSameLadder() throws Exception {
    NightResult again = analysed("sample-logs/equipment.toml", folder.resolve("again"));

    assertThat(NightJson.write(again)).isEqualTo(NightJson.write(night));
  }

  /** A radial limit of the user's is held against the logged radial RMS and nothing else. */
  @Test
  void usersLimitIsHeldAgainstTheRadialRmsOfTheLog() throws Exception {
    Path file = folder.resolve("limits.toml");
    String text = Files.readString(Path.of("sample-logs/equipment.toml"));
    double between =
        (rung(Rung.AS_IT_WAS).loggedRadialRmsArcsec().value()
                + rung(Rung.SETTINGS).loggedRadialRmsArcsec().value())
            / 2;
    Files.writeString(file, text + "\n[limits]\nrms_arcsec = " + between + "\n");
    NightResult limited = analysed(file.toString(), folder.resolve("limited"));

    assertThat(limited.need()).isEqualTo(new Need("radial-rms", between, "user", 1));
    assertThat(limited.verdict().rung()).isEqualTo(Rung.SETTINGS);
    assertThat(limited.verdict().summary()).contains("arcsec RMS instead of");
  }

  @Test
  void needIsTheToolsUnlessTheUserSetsOne() {
    Equipment unknown = Equipment.UNKNOWN;
    Equipment set =
        new Equipment(
            unknown.site(),
            unknown.mount(),
            unknown.guide(),
            unknown.imaging(),
            unknown.seeingFwhmArcsec(),
            new Equipment.Limits(1.15, OptionalDouble.empty(), true));

    assertThat(Ladder.need(unknown)).isEqualTo(new Need("elongation", 1.15, "tool", 0.9));
    assertThat(Ladder.need(set)).isEqualTo(new Need("elongation", 1.15, "user", 0.9));
    assertThat(Map.of(9, 9, 10, 9, 20, 18, 24, 22))
        .allSatisfy((units, asked) -> assertThat(Ladder.need(set).round(units)).isEqualTo(asked));
  }
}
