package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Recovers sinusoids and drift of made-up motions, and keeps silent where there is only wander and
 * noise.
 */
@Tag("identity")
class PeriodicErrorTest {
  private static final Gears UNKNOWN = new Gears(OptionalDouble.empty(), List.of());
  private static final Gears WORM = new Gears(OptionalDouble.of(478.69), List.of());

  @Test
  void measuresAWormAndItsHarmonic() {
    AxisRun run =
        new PlainNights(1)
            .run(
                1,
                2400,
                0.45,
                0.02,
                0.3,
                0,
                new double[] {479, 6, 0.7},
                new double[] {239.5, 1, 2});
    PeriodicError found = PeriodicError.of(List.of(run), WORM).value().orElseThrow();
    System.out.println(found.tones());
    System.out.println(found.driftArcsecPerMinuteAxis(1) + " " + found.peakToPeakArcsecAxis());
    assertThat(found.tones()).extracting(Tone::source).containsExactly("worm", "worm/2");
  }

  @Test
  void time() {
    for (int k = 0; k < 6; k++) {
      AxisRun run =
          new PlainNights(k)
              .run(
                  1,
                  18000,
                  0.45,
                  0.02,
                  0.3,
                  0,
                  new double[] {479, 6, 0.7},
                  new double[] {239.5, 1, 2});
      long t = System.nanoTime();
      PeriodicError.of(List.of(run), WORM).value().orElseThrow();
      System.out.println((System.nanoTime() - t) / 1e6 + " ms");
    }
  }

  @Test
  void nulls() {
    int hits = 0;
    int cover = 0;
    for (int k = 0; k < 200; k++) {
      AxisRun run = new PlainNights(k).run(1, 2400, 0.45, 0.02, 0.3, 0);
      PeriodicError found = PeriodicError.of(List.of(run), UNKNOWN).value().orElseThrow();
      hits += found.tones().isEmpty() ? 0 : 1;
      cover += found.driftArcsecPerMinuteAxis(1).get().covers(0.3) ? 1 : 0;
    }
    System.out.println("false alarms " + hits + " of 200, drift cover " + cover);
  }

  @Test
  void cover() {
    int p = 0, a = 0, d = 0, n = 100, found2 = 0;
    List<Double> err = new ArrayList<>();
    for (int k = 0; k < n; k++) {
      AxisRun run =
          new PlainNights(k)
              .run(
                  1,
                  2400,
                  0.45,
                  0.02,
                  0.3,
                  0,
                  new double[] {479, 6, 0.7},
                  new double[] {239.5, 1, 2});
      PeriodicError found = PeriodicError.of(List.of(run), WORM).value().orElseThrow();
      Tone t = found.tones().get(0);
      found2 += found.tones().size() == 2 ? 1 : 0;
      p += t.periodSeconds().covers(479) ? 1 : 0;
      a += t.amplitudeArcsecAxis().covers(6) ? 1 : 0;
      d += found.driftArcsecPerMinuteAxis(1).get().covers(0.3) ? 1 : 0;
      err.add(t.amplitudeArcsecAxis().value() - 6);
    }
    System.out.println(
        "cover period " + p + " amplitude " + a + " drift " + d + " tones2 " + found2);
  }
}
