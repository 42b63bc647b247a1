package io.github.roundstar.diagnosis.finding;

import static io.github.roundstar.diagnosis.finding.MadeUpNight.about;
import static io.github.roundstar.diagnosis.finding.MadeUpNight.sound;
import static io.github.roundstar.results.Level.CANNOT_TELL;
import static io.github.roundstar.results.Level.FINE;
import static io.github.roundstar.results.Level.FIX_FIRST;
import static io.github.roundstar.results.Level.WATCH;
import static io.github.roundstar.results.Level.WORTH_FIXING;
import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** The sine of the angle is what goes astray. */
class CameraAngleRuleTest {
  private static final CameraAngleRule RULE = new CameraAngleRule();

  /** By hand: sine 0.25 at 14.48 degrees, 0.10 at 5.74 degrees. */
  @Test
  void sineOfTheNearerBoundDecides() {
    assertThat(sound().crossAxis(about(-15.6, 1)).levelBy(RULE)).isEqualTo(FIX_FIRST);
    assertThat(sound().crossAxis(about(15.4, 1)).levelBy(RULE)).isEqualTo(WORTH_FIXING);
    assertThat(sound().crossAxis(about(6.8, 1)).levelBy(RULE)).isEqualTo(WORTH_FIXING);
    assertThat(sound().crossAxis(about(6.6, 1)).levelBy(RULE)).isEqualTo(WATCH);
    assertThat(sound().crossAxis(about(4.6, 1)).levelBy(RULE)).isEqualTo(FINE);
  }

  @Test
  void turnedCameraIsNoWeakPulse() {
    MadeUpNight turned = sound().crossAxis(about(40, 1));

    assertThat(turned.levelBy(new PulseStrengthRule())).isEqualTo(CANNOT_TELL);
    assertThat(turned.levelBy(new PixelScaleRule())).isEqualTo(CANNOT_TELL);
  }

  @Test
  void cannotTellWithoutAngleOrWithAWideOne() {
    assertThat(sound().crossAxis(null).levelBy(RULE)).isEqualTo(CANNOT_TELL);
    assertThat(sound().crossAxis(about(2, 10)).levelBy(RULE)).isEqualTo(CANNOT_TELL);
  }
}
