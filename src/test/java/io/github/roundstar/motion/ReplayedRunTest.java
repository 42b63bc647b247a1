package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.model.Estimate;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** RMS about the mean, pooled over runs, and the interval of a difference. */
class ReplayedRunTest {
  private static final int FRAMES = 1200;

  /** Noise of a standard deviation about a mean. */
  private static ReplayedRun noise(Random random, double mean, double deviation) {
    ReplayedRun.Tally tally = new ReplayedRun.Tally(FRAMES);
    for (int i = 0; i < FRAMES; i++) {
      double value = mean + deviation * random.nextGaussian();
      tally.move(i, value, 0);
      tally.log(i, 1, value);
    }
    return tally.run();
  }

  @Test
  void runsArePooledEachAboutItsOwnMean() {
    Random random = new Random(2);
    List<ReplayedRun> runs = List.of(noise(random, 3, 0.3), noise(random, -2, 0.4));

    assertThat(ReplayedRun.motionRmsArcsec(runs))
        .isCloseTo(Math.sqrt((0.09 + 0.16) / 2), within(0.02));
    assertThat(ReplayedRun.loggedRmsArcsec(runs)).isEqualTo(ReplayedRun.motionRmsArcsec(runs));
  }

  /** 0.4 against 0.3 arcsec; a fixed set of 200 pairs. */
  @Tag("identity")
  @Test
  void intervalCoversTheTrueDifference() {
    Random random = new Random(4);
    int covered = 0;
    for (int pair = 0; pair < 200; pair++) {
      Estimate gain =
          ReplayedRun.gainArcsec(List.of(noise(random, 0, 0.3)), List.of(noise(random, 0, 0.4)));
      covered += gain.covers(0.1) ? 1 : 0;
    }
    assertThat(covered).isBetween(176, 198);
  }
}
