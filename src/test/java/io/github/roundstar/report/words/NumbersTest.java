package io.github.roundstar.report.words;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.model.Estimate;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Numbers show the digits that their interval supports, in the same characters everywhere. */
class NumbersTest {
  /** Particle Data Group's rule of rounding: 0.135 keeps two digits, 0.43 one. */
  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          1.8437,  1.7102,  1.9811,  1.84 (1.71 .. 1.98)
          11.83,   11.39,   12.24,   11.8 (11.4 .. 12.2)
          479.12,  478.53,  479.71,  479.1 (478.5 .. 479.7)
          0.3,     -8.1,    8.7,     0.3 (\u22128.1 .. 8.7)
          0.3,     -12,     12.6,    0.3 (\u221212.0 .. 12.6)
          8,       -4,      20,      8 (\u22124 .. 20)
          -0.1132, -0.271,  0.0513,  \u22120.11 (\u22120.27 .. 0.05)
          4812,    4390,    5230,    4812 (4390 .. 5230)
          2.5,     2.5,     2.5,     2.500 (2.500 .. 2.500)
          0,       0,       0,       0 (0 .. 0)
          """)
  @Tag("published")
  void digitsFollowTheInterval(double value, double low, double high, String shown) {
    assertThat(Numbers.both(new Estimate(value, low, high))).isEqualTo(shown);
  }

  @ParameterizedTest
  @CsvSource({
    "0.6234, 0.62",
    "11.834, 11.8",
    "124.4, 124",
    "0.08123, 0.081",
    "0.00313, 0.0031",
    "0, 0",
    "1e-9, below 0.0005",
    "-3.14159, \u22123.14"
  })
  void figuresWithoutIntervalKeepThreeDigits(double value, String shown) {
    assertThat(Numbers.plain(value)).isEqualTo(shown);
  }

  @Test
  void roundingNeverLeavesANegativeZero() {
    assertThat(Numbers.fixed(-0.004, 2)).isEqualTo("0.00");
  }

  @Test
  void chanceIsNeverZero() {
    assertThat(Numbers.chance(0)).isEqualTo("below 0.0005");
    assertThat(Numbers.chance(0.0069)).isEqualTo("0.0069");
  }

  @Test
  void coarseFiguresKeepTwoDigits() {
    assertThat(Numbers.coarse(4.02)).isEqualTo("4.0");
    assertThat(Numbers.coarse(0.256)).isEqualTo("0.26");
    assertThat(Numbers.coarse(123.4)).isEqualTo("123");
  }

  @Test
  void missingFiguresAreNotKnown() {
    assertThat(Numbers.plain((Double) null)).isEqualTo("not known");
    assertThat(Numbers.both(null)).isEqualTo("not known");
    assertThat(Numbers.interval(null)).isEmpty();
  }

  @Test
  void thousandsAreSetApartFromTenThousandOn() {
    assertThat(Numbers.count(9_999)).isEqualTo("9999");
    assertThat(Numbers.count(18_000)).isEqualTo("18\u202f000");
    assertThat(Numbers.count(-1_234_567)).isEqualTo("\u22121\u202f234\u202f567");
    assertThat(Numbers.counted(1, "row", "rows")).isEqualTo("1 row");
  }
}
