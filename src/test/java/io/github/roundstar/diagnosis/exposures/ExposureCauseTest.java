package io.github.roundstar.diagnosis.exposures;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.ingest.UnusableInputException;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.results.Exposure;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** What trailed the exposures of simulated nights with one fault is found. */
class ExposureCauseTest {
  /** Long enough for every cause to show; nights of the long runs are twice as long. */
  private static final int MINUTES = 50;

  @TempDir private Path temporary;

  @Tag("identity")
  @ParameterizedTest
  @EnumSource
  void causeOfANightWithOneFaultIsFound(SingleFault fault)
      throws FormatException, IOException, UnusableInputException {
    // Play spoils few exposures of a night.
    int minutes = fault == SingleFault.DEC_BACKLASH ? 2 * MINUTES : MINUTES;
    FaultNight.Tally tally = FaultNight.tally(fault, fault.scenario(1, minutes), temporary);
    assertThat(tally.all()).isGreaterThanOrEqualTo(3);
    assertThat(tally.right()).isGreaterThanOrEqualTo((int) Math.ceil(0.8 * tally.all()));
  }

  /** The scenario spreads colours by 0.85 arcsec at 45 degrees. */
  @Tag("identity")
  @Test
  void growthWithZenithDistanceIsTheEvidenceForDispersion()
      throws FormatException, IOException, UnusableInputException {
    Exposure first =
        FaultNight.judged(SingleFault.DISPERSION.scenario(7), Equipment.UNKNOWN, temporary).get(0);
    assertThat(first.cause()).isEqualTo("atmospheric-dispersion");
    assertThat(first.evidence()).contains("grows as the tangent of that distance");
    Matcher spread =
        Pattern.compile("spread of [\\d.]+ \\(([\\d.]+) \\.\\. ([\\d.]+)\\)")
            .matcher(first.evidence());
    assertThat(spread.find()).isTrue();
    assertThat(Double.parseDouble(spread.group(1))).isBetween(0.7, 0.85);
    assertThat(Double.parseDouble(spread.group(2))).isBetween(0.85, 1.0);
  }

  @Tag("long")
  @Tag("identity")
  @ParameterizedTest
  @EnumSource
  void causeIsRightOnNinetyFiveOfAHundred(SingleFault fault)
      throws FormatException, IOException, UnusableInputException {
    int right = 0;
    int nights = 20;
    for (long seed = 101; seed <= 100 + nights; seed++) {
      right += FaultNight.tally(fault, fault.scenario(seed), temporary).mostRight() ? 1 : 0;
    }
    assertThat(right).isGreaterThanOrEqualTo((int) Math.ceil(0.95 * nights));
  }

  /**
   * Swings that build up during an exposure, and trails many times as long as the star is wide: the
   * log's image and the one that was taken agree.
   */
  @Tag("identity")
  @ParameterizedTest
  @CsvSource({"OVER_CORRECTION, 304", "PERIODIC_ERROR, 301", "POLAR_AXIS, 302"})
  void longestTrailsAreAsPredicted(SingleFault fault, long seed)
      throws FormatException, IOException, UnusableInputException {
    List<Exposure> exposures =
        FaultNight.judged(fault.scenario(seed, MINUTES), fault.equipment(), temporary);
    assertThat(exposures).hasSizeGreaterThan(3);
    assertThat(exposures)
        .allSatisfy(
            e ->
                assertThat(e.predictedElongation().value() / e.measuredElongation().value())
                    .isCloseTo(1, within(0.06)));
  }

  @Tag("identity")
  @Test
  void exposuresOfAGoodNightAreRound() throws FormatException, IOException, UnusableInputException {
    List<Exposure> exposures =
        FaultNight.judged(
            SingleFault.OPTICS.scenario(3).replace("1.35", "1.0"), Equipment.UNKNOWN, temporary);
    assertThat(exposures).hasSizeGreaterThan(10);
    assertThat(exposures).noneMatch(e -> e.verdict().equals("trailed"));
    assertThat(exposures).filteredOn(e -> e.verdict().equals("round")).hasSizeGreaterThan(9);
    assertThat(exposures).allMatch(e -> e.cause() == null);
  }
}
