package io.github.roundstar.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.model.Night;
import io.github.roundstar.model.PierSide;
import io.github.roundstar.results.AirmassGrowth;
import io.github.roundstar.results.Flip;
import io.github.roundstar.results.Flip.Change;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.Pointings;
import io.github.roundstar.results.Target;
import io.github.roundstar.simulate.ScenarioReader;
import io.github.roundstar.simulate.Simulation;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Fields, flips and airmass on invented nights whose truth is known. */
@Tag("identity")
@Tag("slow")
class PointingsTruthTest {
  private static final double LATITUDE = 47.2;

  /** What differs from run to run. */
  private record Part(
      double startMinutes,
      double minutes,
      double declination,
      double hourAngle,
      String side,
      double noise,
      double responseEast,
      String more) {}

  @Test
  void aFlipThatChangesNothingIsNotSaidToHaveChangedAnything() throws Exception {
    int sure = 0;
    int told = 0;
    for (int seed = 1; seed <= 8; seed++) {
      Flip flip = flip(seed, 0.4, 1, "");
      assertThat(flip.to()).isEqualTo(PierSide.EAST);
      assertThat(flip.sameTarget()).isTrue();
      for (Change change : changes(flip)) {
        told++;
        sure += change.sure() ? 1 : 0;
      }
    }
    assertThat(told).isEqualTo(64);
    // Eight figures of a flip together miss in 5 of 100 flips.
    assertThat(sure).as("false changes").isLessThanOrEqualTo(1);
  }

  @Test
  void pulsesThatPushLessAfterTheFlipAreFoundAndTheirShareIsCovered() throws Exception {
    int found = 0;
    int covered = 0;
    int others = 0;
    for (int seed = 1; seed <= 6; seed++) {
      Flip flip = flip(seed, 0.4, 0.6, "");
      Change response = flip.raResponseArcsecPerSecondAxis();
      found += response.sure() && !response.grew() ? 1 : 0;
      covered += response.change().covers(0.6) ? 1 : 0;
      others += flip.decResponseArcsecPerSecondAxis().sure() ? 1 : 0;
    }
    assertThat(found).as("found").isGreaterThanOrEqualTo(5);
    assertThat(covered).as("covered").isGreaterThanOrEqualTo(5);
    assertThat(others).as("declination").isLessThanOrEqualTo(1);
  }

  @Test
  void aStarThatGetsTwiceAsUnsteadyAtTheFlipIsFound() throws Exception {
    int found = 0;
    for (int seed = 1; seed <= 6; seed++) {
      Flip flip = flip(seed, 0.8, 1, "");
      found += flip.raRmsArcsec().grew() && flip.decNoiseArcsec().grew() ? 1 : 0;
      assertThat(flip.decNoiseArcsec().change().covers(2)).as("seed %d", seed).isTrue();
    }
    assertThat(found).isGreaterThanOrEqualTo(5);
  }

  @Test
  void noiseThatGrowsWithTheRootOfTheAirmassShowsAndIsCovered() throws Exception {
    int shows = 0;
    int covered = 0;
    for (int seed = 1; seed <= 4; seed++) {
      AirmassGrowth growth = rising(seed, 1);
      shows += growth.shows() ? 1 : 0;
      covered += growth.noisePerDoubling().covers(Math.sqrt(2)) ? 1 : 0;
    }
    assertThat(shows).as("shows").isGreaterThanOrEqualTo(3);
    assertThat(covered).as("covered").isGreaterThanOrEqualTo(3);
  }

  @Test
  void noiseThatDoesNotFollowTheAirmassGivesNoAdvice() throws Exception {
    int shows = 0;
    for (int seed = 1; seed <= 4; seed++) {
      shows += rising(seed, 0).shows() ? 1 : 0;
    }
    assertThat(shows).isLessThanOrEqualTo(1);
  }

  @Test
  void twoFieldsAreToldApartAndTheFirstIsKnownAgain() throws Exception {
    List<Part> parts =
        List.of(
            new Part(0, 40, 20, -1.5, "west", 0.3, 1, ""),
            new Part(45, 40, 55, -2, "west", 0.6, 1, ""),
            new Part(90, 40, 20, 0.004, "west", 0.3, 1, ""));
    Pointings pointings = night(3, parts).night().pointings();

    assertThat(pointings.targets())
        .extracting(Target::runs)
        .containsExactly(List.of(1, 3), List.of(2));
    assertThat(pointings.flips()).isEmpty();
    Target first = pointings.targets().get(0);
    // On the meridian a star of declination 20 stands at 90 - 47.2 + 20 degrees.
    assertThat(first.mostAltitudeDeg()).isBetween(62.7, 62.8);
    assertThat(first.raRmsArcsec().hi95())
        .isLessThan(pointings.targets().get(1).raRmsArcsec().lo95());
  }

  private static List<Change> changes(Flip flip) {
    return Stream.<Function<Flip, Change>>of(
            Flip::raRmsArcsec,
            Flip::decRmsArcsec,
            Flip::raNoiseArcsec,
            Flip::decNoiseArcsec,
            Flip::raDriftArcsecPerMinuteSky,
            Flip::decDriftArcsecPerMinuteSky,
            Flip::raResponseArcsecPerSecondAxis,
            Flip::decResponseArcsecPerSecondAxis)
        .map(figure -> figure.apply(flip))
        .filter(Objects::nonNull)
        .toList();
  }

  private static Flip flip(int seed, double noiseAfter, double responseAfter, String more)
      throws FormatException {
    List<Part> parts =
        List.of(
            new Part(0, 75, 30, -1.3, "west", 0.4, 1, more),
            new Part(80, 75, 30, 0.037, "east", noiseAfter, responseAfter, more));
    Pointings pointings = night(seed, parts).night().pointings();
    assertThat(pointings.targets()).hasSize(1);
    assertThat(pointings.flips()).hasSize(1);
    return pointings.flips().get(0);
  }

  /** A star that rises from an altitude of 21 degrees to 63 and sinks again, in twelve parts. */
  private static AirmassGrowth rising(int seed, double power) throws FormatException {
    List<Part> parts = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      double hourAngle = -5 + 10 * i / 12.0;
      double middle = Math.toRadians(15 * (hourAngle + 0.33));
      double latitude = Math.toRadians(LATITUDE);
      double declination = Math.toRadians(20);
      double sine =
          Math.sin(latitude) * Math.sin(declination)
              + Math.cos(latitude) * Math.cos(declination) * Math.cos(middle);
      parts.add(
          new Part(
              i * 49.8635,
              40,
              20,
              hourAngle,
              hourAngle < 0 ? "west" : "east",
              0.35 * Math.pow(1 / sine, power / 2),
              1,
              ""));
    }
    return night(seed, parts).night().pointings().airmass();
  }

  private static NightResult night(int seed, List<Part> parts) throws FormatException {
    List<GuideRun> runs = new ArrayList<>();
    for (Part part : parts) {
      runs.add(
          Simulation.run(ScenarioReader.parse("part", scenario(seed + 100 * runs.size(), part)))
              .runs()
              .get(0)
              .log()
              .withId(runs.size() + 1));
    }
    return NightAnalysis.of(new Night("parts", runs, List.of()), Equipment.UNKNOWN, "test", true)
        .result();
  }

  private static String scenario(int seed, Part part) {
    return String.format(
        Locale.ROOT,
        """
        [night]
        seed = %d
        start = "2026-10-08T20:10:00+02:00"
        latitude_deg = %.1f
        longitude_deg = 11.6
        cadence_s = 4.0
        guide_exposure_s = 2.0
        guide_scale = 2.43
        [mount]
        guide_rate = 0.5
        response_east = %.3f
        response_west = %.3f
        ra_wander_arcsec_per_root_s = 0.02
        dec_wander_arcsec_per_root_s = 0.02
        [noise]
        white_arcsec = %.4f
        [loop]
        pulse_limit_ms = 1000
        [loop.ra]
        gain = 0.5
        deadband_arcsec = 0.05
        [loop.dec]
        gain = 0.5
        deadband_arcsec = 0.05
        [dither]
        every_min = 10
        size_arcsec = 5
        logs_shift = true
        logs_settling = true
        %s
        [[run]]
        start_min = %.4f
        duration_min = %.1f
        declination_deg = %.2f
        hour_angle_h = %.4f
        pier_side = "%s"
        """,
        seed,
        LATITUDE,
        part.responseEast,
        part.responseEast,
        part.noise,
        part.more,
        part.startMinutes,
        part.minutes,
        part.declination,
        part.hourAngle,
        part.side);
  }
}
