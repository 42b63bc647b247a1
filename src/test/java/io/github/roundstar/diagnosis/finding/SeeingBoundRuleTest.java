package io.github.roundstar.diagnosis.finding;

import static io.github.roundstar.diagnosis.finding.MadeUpNight.sound;
import static io.github.roundstar.results.Level.FINE;
import static io.github.roundstar.results.Level.WATCH;
import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.motion.Axis;
import io.github.roundstar.results.Finding;
import org.junit.jupiter.api.Test;

/** The air is the limit when noise surely makes the larger half of what is logged. */
class SeeingBoundRuleTest {
  private static final SeeingBoundRule RULE = new SeeingBoundRule();

  private static MadeUpNight noise(double ra, double dec) {
    return sound().noise(Axis.RA, ra, 0.005).noise(Axis.DEC, dec, 0.005);
  }

  /** By hand: logged 0.32 arcsec^2, half is 0.16, so 0.283 arcsec in each axis. */
  @Test
  void largerHalfAtTheLowerBound() {
    assertThat(noise(0.290, 0.290).levelBy(RULE)).isEqualTo(WATCH);
    assertThat(noise(0.286, 0.286).levelBy(RULE)).isEqualTo(FINE);
  }

  @Test
  void noiseInOneAxisAloneIsNotTheAir() {
    Finding rough = noise(0.45, 0.2).judgedBy(RULE);

    assertThat(rough.level()).isEqualTo(FINE);
    assertThat(rough.evidence()).contains("laid to the drive");
    assertThat(noise(0.32, 0.27).judgedBy(RULE).evidence()).doesNotContain("drive");
  }

  @Test
  void cannotTellWithoutNoiseFloor() {
    assertThat(
            sound()
                .withoutNoise()
                .because("/runs/*/noiseFloorArcsec/ra", "too many jolts")
                .judgedBy(RULE)
                .evidence())
        .isEqualTo("Too many jolts.");
  }
}
