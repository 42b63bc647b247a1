package io.github.roundstar.report.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Axes carry round, plainly written places. */
class TicksTest {
  @Test
  void linearStepsAreRound() {
    assertThat(labels(Ticks.linear(-1.3, 1.3, 6)))
        .containsExactly("\u22121.0", "\u22120.5", "0.0", "0.5", "1.0");
    assertThat(labels(Ticks.linear(0, 3000, 6))).contains("0", "500", "3000");
  }

  @Test
  void clockTicksFallOnRoundTimesOverMidnight() {
    Instant start = Instant.parse("2026-03-14T22:47:10Z");

    List<Tick> ticks = Ticks.clock(start, 0, 3 * 3600, 10);

    assertThat(labels(ticks)).startsWith("23:00", "23:30", "00:00", "00:30");
    assertThat(ticks.get(0).value()).isEqualTo(770);
  }

  @Test
  void minutesCountFromTheStart() {
    assertThat(labels(Ticks.minutes(0, 3600, 6)))
        .containsExactly("0", "10", "20", "30", "40", "50", "60");
  }

  @Test
  void periodsReadAsTimes() {
    assertThat(labels(Ticks.periods(5, 700, 1000)))
        .containsExactly(
            "5 s",
            "10\u00a0s",
            "20\u00a0s",
            "30\u00a0s",
            "1\u00a0min",
            "2\u00a0min",
            "5\u00a0min",
            "10\u00a0min");
  }

  @Test
  void periodsLeaveRoomForTheirLabels() {
    assertThat(labels(Ticks.periods(5, 700, 300)))
        .containsExactly("5 s", "20\u00a0s", "1\u00a0min", "5\u00a0min");
  }

  @Test
  void decadesAreDividedWhereThereIsRoom() {
    assertThat(labels(Ticks.decades(-2.1, 0.4, 300)))
        .containsExactly("0.01", "0.02", "0.05", "0.1", "0.2", "0.5", "1", "2");
    assertThat(labels(Ticks.decades(-2.1, 2.4, 300)))
        .containsExactly("0.01", "0.1", "1", "10", "100");
  }

  private static List<String> labels(List<Tick> ticks) {
    return ticks.stream().map(Tick::label).toList();
  }

  @Test
  void anAxisWithoutLengthHasNone() {
    assertThat(Ticks.linear(0, 0, 5)).isEmpty();
    assertThat(Ticks.linear(0, Double.NaN, 5)).isEmpty();
  }
}
