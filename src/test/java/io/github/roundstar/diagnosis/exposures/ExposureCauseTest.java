package io.github.roundstar.diagnosis.exposures;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.ingest.UnusableInputException;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.results.Exposure;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What trailed the exposures of simulated nights with one fault is found. */
class ExposureCauseTest {
  @TempDir private Path temporary;

  @Tag("identity")
  @ParameterizedTest
  @EnumSource
  void causeOfANightWithOneFaultIsFound(SingleFault fault)
      throws FormatException, IOException, UnusableInputException {
    FaultNight.Tally tally = FaultNight.tally(fault, 1, temporary);
    assertThat(tally.all()).isGreaterThanOrEqualTo(3);
    assertThat(tally.right()).isGreaterThanOrEqualTo((int) Math.ceil(0.8 * tally.all()));
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
      right += FaultNight.tally(fault, seed, temporary).mostRight() ? 1 : 0;
    }
    assertThat(right).isGreaterThanOrEqualTo((int) Math.ceil(0.95 * nights));
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
