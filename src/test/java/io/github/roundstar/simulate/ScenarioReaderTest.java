package io.github.roundstar.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.model.DecDirection;
import io.github.roundstar.model.PierSide;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Scenario files say what is wrong with a night; the rest is perfect. */
class ScenarioReaderTest {
  @Test
  void emptyScenarioIsAPerfectNight() throws FormatException {
    Scenario scenario = ScenarioReader.parse("empty.toml", "");

    assertThat(scenario.air()).isEmpty();
    assertThat(scenario.dither()).isEmpty();
    assertThat(scenario.sky().seeing()).isEmpty();
    assertThat(scenario.mount().worm().harmonics()).isEmpty();
    assertThat(scenario.runs()).hasSize(1);
    assertThat(Simulation.run(scenario).runs().get(0).truth().ra().noiseArcsec()).isZero();
  }

  @Test
  void everyTableIsRead() throws FormatException {
    Scenario scenario =
        ScenarioReader.parse(
            "full.toml",
            """
            [night]
            seed = 9
            start = "2026-10-08T20:10:00+02:00"
            offset_unit = "pix"
            [air]
            pressure_hpa = 900
            [polar_axis]
            azimuth_arcmin = 3
            [mount]
            worm_teeth = 144
            dec_stiction_arcsec = 0.4
            rate_error_arcsec_per_min = 0.2
            camera_angle_deg = -2
            [[mount.harmonic]]
            order = 2
            [[mount.gear]]
            period_s = 36
            [noise]
            white_arcsec = 0.1
            [seeing]
            fwhm_arcsec = 3
            [star]
            variation = 0.1
            [gusts]
            ra_share = 0.9
            [clouds]
            per_hour = 1
            [[cloud]]
            at_min = 5
            [[knock]]
            at_min = 6
            ra_arcsec = 2
            [loop]
            dec_direction = "south"
            pulse_row = "next"
            [loop.dec]
            delay_frames = 1
            [dither]
            logs_shift = false
            [[run]]
            play = 1
            """);

    assertThat(scenario.evening().start()).isEqualTo(Instant.parse("2026-10-08T18:10:00Z"));
    assertThat(scenario.mount().worm().periodSeconds()).isCloseTo(598.361740, within(1e-6));
    assertThat(scenario.loop().decDirection()).isEqualTo(DecDirection.SOUTH);
    assertThat(scenario.loop().loggedInNextRow()).isTrue();
    assertThat(scenario.sky().knocks()).containsExactly(new SkyPlan.Knock(6, 2, 0));
    assertThat(Simulation.run(scenario).runs().get(0).log().frames().size()).isEqualTo(2400);
  }

  @Test
  void runWithoutAStarGoesOnAfterTheFlip() throws FormatException {
    Scenario scenario =
        ScenarioReader.parse(
            "flip.toml",
            """
            [[run]]
            duration_min = 60
            declination_deg = 40
            hour_angle_h = -0.9
            [[run]]
            start_min = 65
            """);
    RunPlan after = scenario.runs().get(1);

    assertThat(scenario.runs().get(0).pierSide()).isEqualTo(PierSide.WEST);
    assertThat(after.pierSide()).isEqualTo(PierSide.EAST);
    assertThat(after.declinationDegrees()).isEqualTo(40);
    assertThat(after.hourAngleHours()).isCloseTo(-0.9 + 65 / 60.0 * 1.0027379, within(1e-6));
  }

  /** Meeus's sidereal time, worked out by hand from GMST 127.912438 at longitude 9.25. */
  @Test
  void rightAscensionGivesTheHourAngle() throws FormatException {
    Scenario scenario =
        ScenarioReader.parse(
            "star.toml",
            """
            night.start = "2024-03-10T21:15:30.5Z"
            night.longitude_deg = 9.25
            [[run]]
            right_ascension_h = 8.5
            """);

    assertThat(scenario.runs().get(0).hourAngleHours() * 15).isCloseTo(9.662438, within(1e-5));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          night.sede = 3                                          | night.sede: unknown key
          mount.worm_teeth = 0                                    | mount.worm_teeth
          night.guide_exposure_s = 5                              | night.guide_exposure_s: longer than the cadence
          mount = { worm_teeth = 180, worm_period_s = 479 }       | mount.worm_teeth: given beside worm_period_s
          run = [{ hour_angle_h = 1.0, right_ascension_h = 2.0 }] | right_ascension_h: given beside
          run = [{}, { start_min = 100 }]                         | run[2].start_min
          air.pressure_hpa = 900\\nrun = [{ hour_angle_h = 5.0, duration_min = 300.0 }] | too low for refraction
          night.cadence_s = 0.02\\nrun = [{ duration_min = 2000.0 }] | more than 2000000 frames
          loop.pulse_limit_ms = 4000                              | loop.pulse_limit_ms
          """)
  void faultNamesItsKey(String toml, String words) {
    assertThatExceptionOfType(FormatException.class)
        .isThrownBy(() -> ScenarioReader.parse("bad.toml", toml.replace("\\n", "\n")))
        .withMessageStartingWith("bad.toml: ")
        .withMessageContaining(words);
  }
}
