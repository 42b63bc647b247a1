package io.github.roundstar.motion.posterior;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Nights drawn from the priors: where the truth ranks among the draws is even. The long version is
 * {@link CalibrationTable}.
 */
@Tag("identity")
@Tag("slow")
class CalibrationTest {
  private static final int NIGHTS = 60;
  private static final int FRAMES = 200;

  /** Kolmogorov's distance times root n: exceeded by one sample in 2000 (Kolmogorov 1933). */
  private static final double FARTHEST = 2.03;

  /** Of 60, if 95 % are to be held: fewer by chance in one of 2000 (binomial, exact). */
  private static final int FEWEST = 50;

  @Test
  void ranksOfTheTruthAreEvenForAnAxisWithAWorm() {
    judge(CalibrationTable.ranks(true, NIGHTS, 70001, FRAMES, 1));
  }

  @Test
  void ranksOfTheTruthAreEvenForAnAxisWithPlay() {
    judge(CalibrationTable.ranks(false, NIGHTS, 80001, FRAMES, 1));
  }

  /**
   * The published spread of ranks is what {@link CalibrationTable} makes of ranks that are even,
   * and of those of a posterior that is too narrow.
   */
  private static void judge(Map<String, CalibrationTable.Ranks> ranks) {
    Map<String, String> off = new LinkedHashMap<>();
    ranks.forEach(
        (name, of) -> {
          if (of.distance() > FARTHEST || of.held < FEWEST) {
            off.put(name, "held " + of.held + ", distance " + of.distance());
          }
        });
    assertThat(off).isEmpty();
  }
}
