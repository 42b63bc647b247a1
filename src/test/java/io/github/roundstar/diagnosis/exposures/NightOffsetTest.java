package io.github.roundstar.diagnosis.exposures;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.model.ExposureFrame;
import io.github.roundstar.model.GuideRun;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Over several nights a clock that is off by a day is found out, or it is said that it is not. */
class NightOffsetTest {
  private static final double DAY = 86_400;

  /** Three nights of three hours; the dithers of each come later than those of the night before. */
  private static List<GuideRun> nights(boolean dithers) {
    return IntStream.range(0, 3)
        .mapToObj(night -> CameraClockTest.run(night * DAY, dithers ? 40 * night : -1))
        .toList();
  }

  private static List<ExposureFrame> exposures(double aheadSeconds, int... nights) {
    return IntStream.of(nights)
        .boxed()
        .flatMap(n -> CameraClockTest.exposures(aheadSeconds + n * DAY + 120 * n).stream())
        .toList();
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, DAY, -DAY, 2 * DAY, DAY + 3600, -5400})
  void wholeDaysAreFoundWhereEveryNightHasItsExposures(double ahead) {
    NightOffset offset = NightOffset.of(exposures(ahead, 0, 1, 2), nights(true));
    assertThat(offset.aheadSeconds()).isEqualTo(ahead);
    assertThat(offset.certain()).isTrue();
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, DAY, -DAY})
  void dithersTellOneNightFromTheOthers(double ahead) {
    NightOffset offset = NightOffset.of(exposures(ahead, 1), nights(true));
    assertThat(offset.aheadSeconds()).isEqualTo(ahead);
    assertThat(offset.certain()).isTrue();
  }

  @Test
  void withoutDithersTheExposuresOfOneNightFitAllOthers() {
    NightOffset offset = NightOffset.of(exposures(0, 1), nights(false));
    assertThat(offset.aheadSeconds()).isZero();
    assertThat(offset.certain()).isFalse();
  }

  @Test
  void exposuresOfAnotherWeekGoNowhere() {
    NightOffset offset = NightOffset.of(exposures(7 * DAY, 0, 1, 2), nights(true));
    assertThat(offset).isEqualTo(new NightOffset(0, true));
  }

  @Test
  void nothingToCompareIsNoDoubt() {
    assertThat(NightOffset.of(List.of(), nights(true))).isEqualTo(new NightOffset(0, true));
    assertThat(NightOffset.of(exposures(0, 0), List.of())).isEqualTo(new NightOffset(0, true));
  }
}
