package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The moments of cosine and sine solve their two equations, and say when these cannot be told. */
class MomentsTest {
  private static Moments of(double cc, double ss, double cs) {
    return new Moments(0.1, -0.2, cc, ss, cs, 0.3, -0.15);
  }

  /** The normal equations a cc + b cs = yc, a cs + b ss = ys, put in again. */
  @Test
  @Tag("identity")
  void coefficientsSolveTheNormalEquations() {
    Moments moments = of(0.4, 0.35, 0.12);
    double a = moments.cosine();
    double b = moments.sine();
    assertThat(a * 0.4 + b * 0.12).isCloseTo(0.3, within(1e-15));
    assertThat(a * 0.12 + b * 0.35).isCloseTo(-0.15, within(1e-15));
    assertThat(moments.determinant()).isCloseTo(0.4 * 0.35 - 0.0144, within(1e-15));
    double explained = a * a * 0.4 + 2 * a * b * 0.12 + b * b * 0.35;
    assertThat(moments.power(2)).isCloseTo(explained / 2, within(1e-15));
    assertThat(moments.power(0.01)).isEqualTo(1);
  }

  /**
   * One less the square of the correlation of cosine and sine against the tolerance, whatever the
   * size of either; a cosine or sine that varies by less than the tolerance does not vary.
   */
  @ParameterizedTest
  @Tag("identity")
  @CsvSource({
    "0.25,  0.25,  0.5e-6, true",
    "0.25,  0.25,  2e-6,   false",
    "0.25,  1e-8,  0.5e-6, true",
    "0.25,  1e-8,  2e-6,   false",
    "1e-8,  0.3,   0.5e-6, true",
    "1e-8,  0.3,   2e-6,   false",
    "2e-12, 0.3,   0.5,    false",
    "1e-12, 0.3,   0.5,    true",
    "0.3,   2e-12, 0.5,    false",
    "0.3,   1e-12, 0.5,    true",
    "0.3,   0,     0.5,    true"
  })
  void whatGoesTogetherCannotBeTold(double cc, double ss, double apart, boolean singular) {
    double cs = Math.sqrt(cc * ss * (1 - apart));
    assertThat(of(cc, ss, cs).isSingular(1e-6)).isEqualTo(singular);
    assertThat(of(cc, ss, -cs).isSingular(1e-6)).isEqualTo(singular);
  }
}
