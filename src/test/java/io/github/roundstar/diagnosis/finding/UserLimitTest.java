package io.github.roundstar.diagnosis.finding;

import static io.github.roundstar.diagnosis.finding.MadeUpNight.sound;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.offset;

import io.github.roundstar.results.Guided;
import org.junit.jupiter.api.Test;

/** The user's own limit, and whether it is surely kept. */
class UserLimitTest {
  /** By hand: 2.5 / 2.35482 * sqrt(1.15^2 - 1) = 0.6029 arcsec. */
  @Test
  void seeingAndElongationGiveTheLimitOfTheWorseAxis() {
    UserLimit limit = UserLimit.of(sound().equipment()).orElseThrow();

    assertThat(limit.arcsec()).isCloseTo(0.6029, offset(1e-4));
    assertThat(limit.of()).isEqualTo(UserLimit.Of.WORSE_AXIS);
  }

  @Test
  void wishOutranksTheSeeing() {
    UserLimit limit =
        UserLimit.of(
                sound()
                    .equipment("[sky]\nseeing_fwhm_arcsec = 2\n[limits]\nrms_arcsec = 0.8\n")
                    .equipment())
            .orElseThrow();

    assertThat(limit).isEqualTo(new UserLimit(0.8, UserLimit.Of.RADIAL));
  }

  @Test
  void nothingIsKnownWithoutEither() {
    assertThat(UserLimit.of(sound().equipment("").equipment())).isEmpty();
  }

  /** 0.4 arcsec in each axis; 1.96 / sqrt(2 * 230) is 9 % at 2300 frames, 98 % at 20. */
  @Test
  void limitMustSurelyBeKept() {
    Guided guided = sound().result().night().guided();
    UserLimit limit = new UserLimit(0.45, UserLimit.Of.WORSE_AXIS);

    assertThat(limit.metBy(guided, 2300)).isTrue();
    assertThat(limit.metBy(guided, 20)).isFalse();
    assertThat(new UserLimit(0.45, UserLimit.Of.RADIAL).metBy(guided, 2300)).isFalse();
  }
}
