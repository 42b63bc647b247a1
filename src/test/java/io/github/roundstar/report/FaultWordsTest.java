package io.github.roundstar.report;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.results.Fault;
import io.github.roundstar.results.Faults;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What a page says of parts that a fault took: in words, once each, and how to report it. */
class FaultWordsTest {
  private static String words(String... parts) {
    List<Fault> told = List.of(parts).stream().map(part -> new Fault(part, "X: y")).toList();
    return FaultWords.of(told, new Faults()).orElseThrow();
  }

  @Test
  void aSoundNightSaysNothing() {
    assertThat(FaultWords.of(List.of(), new Faults())).isEmpty();
  }

  @Test
  void partsAreNamedInWords() {
    assertThat(words("/runs/1/periodic", "/runs/0 motion in declination", "night n: /polarAxis"))
        .contains(
            "periodic error of run 2; motion in declination of run 1; night n: polar axis. ",
            "--verbose");
  }

  @Test
  void whatBothResultAndPageMetIsSaidOnce() {
    Faults met = new Faults();
    met.add("chart of the night", new ArithmeticException("no"));

    assertThat(FaultWords.of(met.told(), met).orElseThrow()).containsOnlyOnce("chart of the night");
  }

  @Test
  void afterTheThirdTheyAreCounted() {
    assertThat(words("a", "b", "c", "d", "e")).contains("a; b; c; and 2 more, all named in");
  }
}
