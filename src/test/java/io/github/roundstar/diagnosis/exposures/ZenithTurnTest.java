package io.github.roundstar.diagnosis.exposures;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.diagnosis.exposures.ZenithTurn.Point;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** An axis that follows the zenith is told from one that stays on the sensor. */
class ZenithTurnTest {
  /** Over the end of the half circle: from 170 to 200 degrees, written as 0 to 180. */
  private static List<Point> points(double slope, double scatterDegrees, int n) {
    Random random = new Random(6);
    return IntStream.range(0, n)
        .mapToObj(
            i -> {
              double turned = 30.0 * i / n;
              double axis = 168 + slope * turned + scatterDegrees * random.nextGaussian();
              return new Point((170 + turned) % 180, axis % 180);
            })
        .toList();
  }

  @Test
  void axisThatFollowsTheZenithTurnsWithIt() {
    ZenithTurn turn = ZenithTurn.of(points(1, 3, 15)).orElseThrow();
    assertThat(turn.slope().covers(1)).isTrue();
    assertThat(turn.certain()).isTrue();
  }

  @Test
  void axisThatStaysOnTheSensorDoesNot() {
    ZenithTurn turn = ZenithTurn.of(points(0, 3, 15)).orElseThrow();
    assertThat(turn.slope().covers(0)).isTrue();
    assertThat(turn.certain()).isFalse();
    assertThat(ZenithTurn.of(points(0.4, 0.5, 15)).orElseThrow().certain()).isFalse();
  }

  @Test
  void scatterAsWideAsTheTurnTellsNothing() {
    assertThat(ZenithTurn.of(points(1, 25, 8)).orElseThrow().certain()).isFalse();
  }

  @Test
  void fewExposuresTellNothing() {
    assertThat(ZenithTurn.of(points(1, 1, 4))).isEmpty();
  }
}
