package io.github.roundstar.compare;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.results.CompareResult;
import io.github.roundstar.results.ComparedFigure;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What a comparison says of nights whose truth is known. */
class ComparisonTest {
  private static final int PAIRS = 400;

  private static CompareResult compare(List<NightInput> before, List<NightInput> after) {
    return Comparison.of(Sides.of(before, after), List.of(), "0.1.0").result();
  }

  private static ComparedFigure figure(CompareResult result, String key) {
    return result.figures().stream()
        .filter(figure -> figure.key().equals(key))
        .findFirst()
        .orElseThrow();
  }

  private static boolean changed(ComparedFigure figure) {
    return Stream.of(ComparedFigure.BETTER, ComparedFigure.WORSE)
        .anyMatch(figure.verdict()::equals);
  }

  /** 400 pairs of three nights a side; nights scatter by 7 % and by one and a half times that. */
  @Tag("identity")
  @Test
  void nothingIsFoundWhereNothingChanged() {
    for (double scatter : new double[] {0.07, 0.105}) {
      int wrong = 0;
      Map<String, Integer> which = new TreeMap<>();
      for (int pair = 0; pair < PAIRS; pair++) {
        InventedNight nights = new InventedNight(pair).gearScatter(scatter);
        CompareResult result = compare(nights.nights(3), nights.nights(3));
        List<ComparedFigure> changed =
            result.figures().stream().filter(ComparisonTest::changed).toList();
        changed.forEach(figure -> which.merge(figure.key(), 1, Integer::sum));
        wrong += changed.isEmpty() ? 0 : 1;
      }
      System.out.println("WRONG " + scatter + " " + wrong + which);
      assertThat(wrong).as("found at %s: %s", scatter, which).isLessThanOrEqualTo(PAIRS * 7 / 100);
    }
  }

  @Tag("identity")
  @Test
  void aWormCutByThirtyPercentIsFound() {
    int found = 0;
    for (int pair = 0; pair < PAIRS; pair++) {
      InventedNight nights = new InventedNight(1000 + pair);
      CompareResult result = compare(nights.nights(3), nights.worm(0.7 * 5.8).nights(3));
      found += figure(result, "periodic-worm").verdict().equals(ComparedFigure.BETTER) ? 1 : 0;
    }
    System.out.println("FOUND " + found);
    assertThat(found).isGreaterThanOrEqualTo(PAIRS * 95 / 100);
  }

  @Tag("identity")
  @Test
  void worseAirDoesNotMakeTheMountWorse() {
    int blamed = 0;
    int guiding = 0;
    int air = 0;
    for (int pair = 0; pair < PAIRS; pair++) {
      InventedNight nights = new InventedNight(2000 + pair);
      CompareResult result = compare(nights.nights(3), nights.floor(0.36 * 2).nights(3));
      blamed +=
          result.figures().stream()
                  .filter(figure -> figure.group().equals("mount"))
                  .anyMatch(figure -> figure.verdict().equals(ComparedFigure.WORSE))
              ? 1
              : 0;
      guiding +=
          figure(result, "rms-radial-equal-air").verdict().equals(ComparedFigure.WORSE) ? 1 : 0;
      air += result.air().contains("came from worse air") ? 1 : 0;
    }
    System.out.println("AIR " + blamed + " " + guiding + " " + air);
    assertThat(blamed).isLessThanOrEqualTo(PAIRS * 5 / 100);
    assertThat(guiding).isLessThanOrEqualTo(PAIRS * 5 / 100);
    assertThat(air).isGreaterThanOrEqualTo(PAIRS * 95 / 100);
  }
}
