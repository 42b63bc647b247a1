package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.signal.WanderNoise;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** A knock and a gust are found where they are, and nothing else. */
class JumpSpansTest {
  private static final int FRAMES = 2000;

  private static List<FrameSpan> spans(double knock, double gust) {
    Random random = new Random(11);
    double[] seconds = new double[FRAMES];
    double[] arcsec = new double[FRAMES];
    for (int i = 0; i < FRAMES; i++) {
      seconds[i] = 3 * i;
      arcsec[i] = 0.3 * random.nextGaussian() + (i >= 700 ? knock : 0);
    }
    arcsec[1500] += gust / 2;
    arcsec[1501] += gust;
    arcsec[1502] += gust / 2;
    return JumpSpans.of(
        seconds,
        new boolean[FRAMES],
        new WanderNoise(0.09, 1e-3),
        arcsec,
        IntStream.range(0, FRAMES).toArray());
  }

  @Test
  void knockAndGustAreFound() {
    List<FrameSpan> spans = spans(5, 4);

    assertThat(spans).hasSize(2);
    assertThat(spans.get(0).from()).isBetween(695, 700);
    assertThat(spans.get(1).from()).isBetween(1495, 1500);
    assertThat(spans.get(1).to()).isBetween(1503, 1512);
  }

  @Test
  void noiseIsNoJump() {
    assertThat(spans(0, 0)).isEmpty();
  }
}
