package io.github.roundstar.stars;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.stars.FieldPattern.Kind;
import java.util.function.BiFunction;
import org.junit.jupiter.api.Test;

/** Patterns over the field are told apart. */
class FieldPatternTest {
  private static final double SEEING = 1.6 * 1.6;

  private static FieldPattern pattern(BiFunction<Double, Double, double[]> shape) {
    StarField field = new StarField(800, 600, 20, 9).stars(10, 8, 80, shape);
    return ImageShape.of(field.underSky(500, 0)).pattern();
  }

  @Test
  void turningFieldShowsItsPivot() {
    FieldPattern found =
        pattern(
            (x, y) -> {
              double dx = x - 300;
              double dy = y - 250;
              double turn = 0.008; // rad over the exposure
              double variance = turn * turn / 12;
              return new double[] {
                SEEING + dy * dy * variance, SEEING + dx * dx * variance, -dx * dy * variance
              };
            });
    assertThat(found.kind()).isEqualTo(Kind.ROTATION);
    assertThat(found.pivot().orElseThrow().x()).isCloseTo(301, within(40.0));
    assertThat(found.pivot().orElseThrow().y()).isCloseTo(251, within(40.0));
  }

  @Test
  void outwardStarsAreOptics() {
    FieldPattern found =
        pattern(
            (x, y) -> {
              double dx = (x - 400) / 500;
              double dy = (y - 300) / 500;
              return new double[] {
                SEEING + dx * dx * SEEING, SEEING + dy * dy * SEEING, dx * dy * SEEING
              };
            });
    assertThat(found.kind()).isEqualTo(Kind.RADIAL);
    assertThat(found.pivot()).isEmpty();
  }

  @Test
  void starsThatGrowTowardsOneSideAreTilt() {
    FieldPattern found = pattern((x, y) -> new double[] {SEEING, SEEING * (1 + 0.5 * x / 800), 0});
    assertThat(found.kind()).isEqualTo(Kind.ONE_SIDED);
  }

  @Test
  void sameShapeEverywhereIsUniform() {
    FieldPattern found = pattern((x, y) -> new double[] {SEEING, 1.3 * SEEING, 0});
    assertThat(found.kind()).isEqualTo(Kind.UNIFORM);
    assertThat(found.cornerStretch()).isZero();
  }

  @Test
  void roundStarsHaveNoPattern() {
    assertThat(pattern((x, y) -> new double[] {SEEING, SEEING, 0}).kind()).isEqualTo(Kind.NONE);
  }
}
