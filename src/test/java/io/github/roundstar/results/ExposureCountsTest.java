package io.github.roundstar.results;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Test;

/** The counts of a night's exposures as a line for people. */
class ExposureCountsTest {
  @Test
  void everyKindIsCountedInWords() {
    ExposureCounts counts =
        new ExposureCounts(20, 9, 2, 1, Map.of("periodic-error", 5, "optics", 3));

    assertThat(counts.words())
        .isEqualTo(
            "9 of 20 exposures round, 8 trailed (5 periodic error, 3 optics), 2 borderline, 1 not"
                + " covered");
  }

  @Test
  void kindsOfWhichThereAreNoneAreLeftOut() {
    assertThat(new ExposureCounts(4, 4, 0, 0, Map.of()).words())
        .isEqualTo("4 of 4 exposures round");
  }
}
