package io.github.roundstar.stars;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.model.Estimate;
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
    FieldPattern found = pattern((x, y) -> turned(x - 300, y - 250, 0.008));
    assertThat(found.kind()).isEqualTo(Kind.ROTATION);
    assertThat(found.pivot().orElseThrow().x()).isCloseTo(301, within(40.0));
    assertThat(found.pivot().orElseThrow().y()).isCloseTo(251, within(40.0));
  }

  /** The worst corner lies 500 by 350 px from the pivot: its variance along the circle tells. */
  @Test
  void elongationInTheWorstCornerIsThatOfATurn() {
    FieldPattern found = pattern((x, y) -> turned(x - 300, y - 250, 0.012));
    double along = (500.0 * 500 + 350 * 350) * 0.012 * 0.012 / 12;
    double expected = Math.sqrt((SEEING + along) / SEEING);
    Estimate corner = found.cornerElongation().orElseThrow();
    assertThat(corner.value()).isCloseTo(expected, within(0.05));
    assertThat(corner.lo95()).isGreaterThan(1.15);
  }

  /** A guide star two fields away: mostly one direction, which no tilt may be taken for. */
  @Test
  void turnAboutAPointFarOutsideIsATurn() {
    FieldPattern found = pattern((x, y) -> turned(x - 1900, y + 500, 0.003));
    assertThat(found.kind()).isEqualTo(Kind.ROTATION);
  }

  private static double[] turned(double dx, double dy, double radians) {
    double variance = radians * radians / 12;
    return new double[] {
      SEEING + dy * dy * variance, SEEING + dx * dx * variance, -dx * dy * variance
    };
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
    assertThat(found.cornerDifference()).isZero();
    assertThat(found.cornerElongation().orElseThrow().value())
        .isCloseTo(Math.sqrt(1.3), within(0.02));
  }

  @Test
  void roundStarsHaveNoPattern() {
    assertThat(pattern((x, y) -> new double[] {SEEING, SEEING, 0}).kind()).isEqualTo(Kind.NONE);
  }
}
