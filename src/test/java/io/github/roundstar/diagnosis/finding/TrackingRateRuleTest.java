package io.github.roundstar.diagnosis.finding;

import static io.github.roundstar.diagnosis.finding.MadeUpNight.about;
import static io.github.roundstar.diagnosis.finding.MadeUpNight.sound;
import static io.github.roundstar.results.Level.CANNOT_TELL;
import static io.github.roundstar.results.Level.FINE;
import static io.github.roundstar.results.Level.FIX_FIRST;
import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.motion.Axis;
import org.junit.jupiter.api.Test;

/** A wrong rate must exceed what refraction and the axis can make. */
class TrackingRateRuleTest {
  private static final TrackingRateRule RULE = new TrackingRateRule();

  private static MadeUpNight drift(double arcsecPerMinute) {
    return sound()
        .raDrift(about(arcsecPerMinute, 0.1))
        .axis(about(4, 1), 0.1, "two-pointings")
        .part(Axis.RA, "drift-lag", 0.8);
  }

  /** By hand: 1.1 + 0.2625 * 5 = 2.41 arcsec/min. */
  @Test
  void driftBeyondAirAndAxisComesFirst() {
    assertThat(drift(2.6).levelBy(RULE)).isEqualTo(FIX_FIRST);
    assertThat(drift(2.6).judgedBy(RULE).title()).contains("too fast");
    assertThat(drift(-2.6).judgedBy(RULE).title()).contains("too slow");
    assertThat(drift(2.4).levelBy(RULE)).isEqualTo(FINE);
  }

  @Test
  void rateThatGuidingFollowsIsFine() {
    assertThat(drift(5).part(Axis.RA, "drift-lag", 0.01).levelBy(RULE)).isEqualTo(FINE);
  }

  @Test
  void driftOfTheAirsSizeIsFineWithoutAnAxis() {
    assertThat(sound().raDrift(about(0.9, 0.1)).levelBy(RULE)).isEqualTo(FINE);
  }

  @Test
  void cannotTellTheRateFromAnUnknownAxis() {
    assertThat(
            sound()
                .raDrift(about(3, 0.1))
                .because("/polarAxis", "no latitude")
                .judgedBy(RULE)
                .evidence())
        .contains("its rate or its polar axis: no latitude");
    assertThat(sound().raDrift(null).levelBy(RULE)).isEqualTo(CANNOT_TELL);
  }
}
