package io.github.roundstar.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.Usual;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is usual for a user, by numbers that can be worked out in the head. */
@Tag("identity")
class OwnNightsTest {
  /** Distances from the pole of 2, 4, 6, 8, 10 arcmin: median 6, quartiles 4 and 8. */
  private static List<NightResult> five() {
    List<NightResult> nights = new ArrayList<>();
    for (int i = 1; i <= 5; i++) {
      nights.add(new KnownNight("2026-10-0" + i).polar(2 * i, 0.5).round(20, 24).night());
    }
    return nights;
  }

  private static Usual.Figure polar(double arcmin, double half, List<NightResult> earlier) {
    return OwnNights.of(new KnownNight("2026-10-09").polar(arcmin, half).night(), earlier)
        .orElseThrow()
        .figures()
        .stream()
        .filter(figure -> figure.key().equals("polar-total"))
        .findFirst()
        .orElseThrow();
  }

  /**
   * Beyond the quartiles with the whole interval; beyond 8 + 1.5 x 4 = 14 it is far off. A night of
   * 8.2 lies beyond a quartile, its interval does not.
   */
  @ParameterizedTest(name = "{0} give or take {1}: {2}")
  @CsvSource({
    "6, 0.5, usual, 0, false",
    "9, 0.5, worse, 4, false",
    "8.2, 0.5, usual, 0, false",
    "12, 1, worse, 5, false",
    "12, 5, usual, 0, false",
    "15, 0.5, worse, 5, true",
    "15, 1.5, worse, 5, false",
    "3, 0.5, better, 4, false",
    "1, 0.5, better, 5, false"
  })
  void aNightIsUnusualOnlyWithItsWholeInterval(
      double arcmin, double half, String word, int beyond, boolean farOff) {
    Usual.Figure figure = polar(arcmin, half, five());
    assertThat(figure.median()).isEqualTo(6);
    assertThat(figure.lowerQuartile()).isEqualTo(4);
    assertThat(figure.upperQuartile()).isEqualTo(8);
    assertThat(figure.word()).isEqualTo(word);
    assertThat(figure.beyond()).isEqualTo(beyond);
    assertThat(figure.farOff()).isEqualTo(farOff);
  }

  @Test
  void theCountIsToldInWords() {
    assertThat(polar(9, 0.5, five()).text()).isEqualTo("worse than 4 of your 5 nights");
    assertThat(polar(12, 0.5, five()).text()).isEqualTo("worse than all of your 5 nights");
    assertThat(polar(6, 0.5, five()).text()).isEqualTo("usual for you");
  }

  /** All at 2.0: half an arcmin is no change in practice, however even the nights are. */
  @Test
  void whatMakesNoDifferenceIsUsual() {
    List<NightResult> even = new ArrayList<>();
    for (int i = 1; i <= 6; i++) {
      even.add(new KnownNight("2026-10-0" + i).polar(2, 0.1).night());
    }
    assertThat(polar(2.4, 0.05, even).word()).isEqualTo(Usual.USUAL);
    assertThat(polar(2.7, 0.05, even).word()).isEqualTo(Usual.WORSE);
  }

  /** 20 of 24 on every night; 6 of 24 is 25 % give or take some 17. */
  @Test
  void roundExposuresAreBetterTheMoreThereAre() {
    Usual usual =
        OwnNights.of(new KnownNight("2026-10-09").round(6, 24).night(), five()).orElseThrow();
    Usual.Figure figure = usual.figures().get(0);
    assertThat(figure.key()).isEqualTo("round-share");
    assertThat(figure.median()).isCloseTo(83.33, within(0.01));
    assertThat(figure.word()).isEqualTo(Usual.WORSE);
    assertThat(figure.farOff()).isTrue();
    assertThat(figure.value().covers(25)).isTrue();
    assertThat(
            OwnNights.of(new KnownNight("2026-10-09").unitSeconds(60).round(6, 24).night(), five())
                .map(Usual::figures)
                .orElse(List.of()))
        .as("of another length they mean another thing")
        .noneMatch(other -> other.key().equals("round-share"));
    assertThat(
            OwnNights.of(new KnownNight("2026-10-09").listed().round(6, 24).night(), five())
                .map(Usual::figures)
                .orElse(List.of()))
        .as("so do images beside windows")
        .noneMatch(other -> other.key().equals("round-share"));
  }

  @Test
  void twoNightsAreTooFew() {
    assertThat(OwnNights.of(new KnownNight("2026-10-09").night(), five().subList(0, 2))).isEmpty();
    assertThat(OwnNights.of(new KnownNight("2026-10-09").night(), five().subList(0, 3)))
        .isPresent();
    assertThat(OwnNights.band(new double[] {1, 2})).isEmpty();
    assertThat(OwnNights.band(new double[] {1, 2, 4})).contains(new Estimate(2, 1.5, 3));
  }
}
