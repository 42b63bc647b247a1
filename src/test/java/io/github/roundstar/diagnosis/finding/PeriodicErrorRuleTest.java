package io.github.roundstar.diagnosis.finding;

import static io.github.roundstar.diagnosis.finding.MadeUpNight.sound;
import static io.github.roundstar.results.Level.CANNOT_TELL;
import static io.github.roundstar.results.Level.FINE;
import static io.github.roundstar.results.Level.FIX_FIRST;
import static io.github.roundstar.results.Level.WATCH;
import static io.github.roundstar.results.Level.WORTH_FIXING;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.offset;

import io.github.roundstar.motion.Axis;
import io.github.roundstar.results.Finding;
import io.github.roundstar.results.Periodic;
import io.github.roundstar.results.Rung;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The budget decides how much a worm matters; chance peaks and aliases never do. */
class PeriodicErrorRuleTest {
  private static final PeriodicErrorRule RULE = new PeriodicErrorRule();

  private static MadeUpNight worm(double trailingArcsec2) {
    return sound().worm(6, 0).part(Axis.RA, "periodic:worm", trailingArcsec2);
  }

  @Test
  void strongWormComesFirstAndSaysWhatIsLeftWithoutIt() {
    Finding found = worm(1).judgedBy(RULE);

    assertThat(found.level()).isEqualTo(FIX_FIRST);
    assertThat(found.title())
        .isEqualTo("The worm's swing of 12.0 arcsec every 7 min 59 s gets through guiding");
    assertThat(found.shareOfTrailing()).isCloseTo(1 / 1.32, offset(1e-9));
    assertThat(found.expectedRmsRadialArcsec())
        .isCloseTo(Math.sqrt(2 * MadeUpNight.NOISE), offset(1e-9));
    assertThat(found.caution()).contains("unplug", "counterweights", "Sun", "manual");
    assertThat(found.action().get(found.action().size() - 1)).contains("mesh");
  }

  /** By hand: 0.85 v - 0.01 = 0.19 (v + 0.32) at v = 0.1073. */
  @Test
  void tenthOfTheTrailingIsTheLimitAtTheLowerBound() {
    assertThat(worm(0.110).levelBy(RULE)).isEqualTo(WORTH_FIXING);
    assertThat(worm(0.104).levelBy(RULE)).isEqualTo(WATCH);
  }

  /** By hand: 1.15 v + 0.01 = 0.19 (v + 0.32) at v = 0.0529. */
  @Test
  void fineOnceTheUpperBoundExcludesATenth() {
    assertThat(worm(0.052).levelBy(RULE)).isEqualTo(FINE);
    assertThat(worm(0.055).levelBy(RULE)).isEqualTo(WATCH);
  }

  @Test
  void amplitudeThatIsHardlyKnownWeighsLess() {
    assertThat(sound().worm(6, 3).part(Axis.RA, "periodic:worm", 0.2).levelBy(RULE))
        .isEqualTo(WATCH);
  }

  @Test
  void chanceAndAliasesAreNoGears() {
    assertThat(sound().component("worm", 6, 1, 0.02, false).judgedBy(RULE).title())
        .isEqualTo("No gear stands out");
    assertThat(sound().component("worm", 6, 1, 1e-9, true).levelBy(RULE)).isEqualTo(FINE);
  }

  /** By hand: with the better gain 24 of 24 are round, so that no gear is opened. */
  @Test
  void gearsWaitWhileAGainIsEnoughAndTheGainIsNamed() {
    MadeUpNight night =
        worm(1)
            .ladder(
                MadeUpLadder.was(10)
                    .gain("ra", 0.4, 0.8, 24)
                    .cure(Rung.MECHANICS, "gears", Map.of("swingArcsec", 12.0), 24, 24));

    assertThat(night.levelBy(new UnderCorrectionRule())).isEqualTo(FIX_FIRST);
    assertThat(night.levelBy(RULE)).isEqualTo(WATCH);
    assertThat(night.judgedBy(RULE).action().get(0))
        .isEqualTo("Raise the RA gain from 0.40 to 0.80 first.");
  }

  @Test
  void exposuresLostToItCount() {
    assertThat(sound().worm(1, 0).exposures(8, 2, "periodic-error").levelBy(RULE))
        .isEqualTo(FIX_FIRST);
  }

  @Test
  void cannotTellWithoutBudgetOrWithoutTurns() {
    Finding untold = sound().worm(6, 0).withoutBudget("no pulses were logged").judgedBy(RULE);

    assertThat(untold.level()).isEqualTo(CANNOT_TELL);
    assertThat(untold.evidence()).contains("no pulses were logged");
    assertThat(sound().periodic(null).because("/night/periodic", "one turn only").judgedBy(RULE))
        .extracting(Finding::level, Finding::evidence)
        .containsExactly(CANNOT_TELL, "One turn only.");
    Periodic empty = new Periodic(null, null, null, null, List.of(), null);
    assertThat(sound().periodic(empty).levelBy(RULE)).isEqualTo(CANNOT_TELL);
  }
}
