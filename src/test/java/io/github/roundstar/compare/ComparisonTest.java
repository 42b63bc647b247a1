package io.github.roundstar.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.results.CompareResult;
import io.github.roundstar.results.ComparedFigure;
import io.github.roundstar.results.Faults;
import io.github.roundstar.results.SeasonNight;
import io.github.roundstar.results.SeasonResult;
import io.github.roundstar.results.Trend;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

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

  private static Map<String, String> verdicts(List<NightInput> before, List<NightInput> after) {
    return new PairTests(Sides.results(before), Sides.results(after)).verdicts();
  }

  /** Verdicts of fixed-seed pairs, three nights a side. */
  private static List<Map<String, String>> pairs(
      long firstSeed, UnaryOperator<InventedNight> before, UnaryOperator<InventedNight> after) {
    return LongStream.range(firstSeed, firstSeed + PAIRS)
        .mapToObj(seed -> before.apply(new InventedNight(seed)))
        .map(nights -> verdicts(nights.nights(3), after.apply(nights).nights(3)))
        .toList();
  }

  /** Nothing changed; gears scatter as stated, and three times as much. */
  @Tag("identity")
  @ParameterizedTest
  @ValueSource(doubles = {0.07, 0.21})
  void nothingIsFoundWhereNothingChanged(double scatter) {
    assertThat(pairs(0, nights -> nights.gearScatter(scatter), nights -> nights))
        .filteredOn(v -> v.containsValue("better") || v.containsValue("worse"))
        .hasSizeLessThanOrEqualTo(PAIRS * 7 / 100);
  }

  @Tag("identity")
  @Test
  void aWormCutByThirtyPercentIsFound() {
    assertThat(pairs(1000, nights -> nights, nights -> nights.worm(0.7 * 5.8)))
        .filteredOn(verdicts -> verdicts.get("periodic-worm").equals("better"))
        .hasSizeGreaterThanOrEqualTo(PAIRS * 95 / 100);
  }

  @Tag("identity")
  /** The word is read off the interval that is shown, and never off another one. */
  @Test
  void wordAndIntervalAgree() {
    for (int seed = 1; seed <= 20; seed++) {
      InventedNight nights = new InventedNight(seed);
      for (int sides : new int[] {1, 2, 5}) {
        CompareResult result =
            compare(nights.nights(sides), nights.worm((0.3 + 0.05 * seed) * 5.8).nights(sides));
        for (ComparedFigure figure : result.figures()) {
          boolean told = List.of("better", "worse").contains(figure.verdict());
          String as = "seed " + seed + ", " + sides + " a side: " + figure.key();
          if (figure.verdict().equals("no real change")) {
            double farthest = Math.max(-figure.change().lo95(), figure.change().hi95());
            assertThat(farthest).as(as).isLessThan(figure.margin());
          } else {
            assertThat(figure.change().covers(0)).as(as).isNotEqualTo(told);
          }
          assertThat(figure.adjustedProbability() < 0.05)
              .as(as)
              .isEqualTo(!figure.change().covers(0));
        }
      }
    }
  }

  /**
   * Holm (1979): the least of n probabilities is held against 0.05 / n, the next against 0.05 / (n
   * - 1), until the first that fails; it and all after it are not told.
   */
  @Test
  @Tag("published")
  void figuresAreTestedAtHolmsLevels() {
    assertThat(Judge.levels(0.04, 0.001, 0.02, 0.4))
        .containsExactly(0.05 / 3, 0.05 / 4, 0.05 / 3, 0.05 / 3);
    assertThat(Judge.levels(0.001, 0.01, 0.02)).containsExactly(0.05 / 3, 0.05 / 2, 0.05);
  }

  @Test
  void worseAirDoesNotMakeTheMountWorse() {
    List<Map<String, String>> pairs = pairs(2000, nights -> nights, nights -> nights.floor(0.72));
    for (String figures : List.of("(periodic|polar|drift|backlash|response).*", ".*equal-air")) {
      assertThat(pairs)
          .filteredOn(
              verdicts ->
                  verdicts.entrySet().stream()
                      .anyMatch(v -> v.getKey().matches(figures) && v.getValue().equals("worse")))
          .as(figures)
          .hasSizeLessThanOrEqualTo(PAIRS * 5 / 100);
    }
  }

  @Test
  void worseRmsUnderWorseAirIsSaidToComeFromTheAir() {
    InventedNight nights = new InventedNight(17);
    CompareResult worse = compare(nights.nights(3), nights.floor(0.72).nights(3));
    assertThat(figure(worse, "rms-radial").verdict()).isEqualTo(ComparedFigure.WORSE);
    assertThat(worse.air()).contains("worse RMS came from worse air", "In equal air");
    InventedNight others = new InventedNight(18).floor(0.72);
    CompareResult better = compare(others.nights(3), others.floor(0.36).nights(3));
    assertThat(better.air()).contains("better RMS came from better air");
  }

  @Test
  void nightsThatAgreeCloselyShowNoRealChange() {
    InventedNight nights = new InventedNight(7).gearScatter(0.01);
    CompareResult result = compare(nights.nights(12), nights.nights(12));
    assertThat(figure(result, "periodic-worm").verdict()).isEqualTo(ComparedFigure.NO_REAL_CHANGE);
  }

  @Test
  void oneNightASideOnlyTellsWhatIsLargerThanNightsDiffer() {
    InventedNight nights = new InventedNight(8);
    CompareResult little = compare(nights.nights(1), nights.worm(0.85 * 5.8).nights(1));
    assertThat(figure(little, "periodic-worm").verdict()).isEqualTo(ComparedFigure.CANNOT_TELL);
    assertThat(figure(little, "periodic-worm").because()).contains("one night a side", "from ");
    assertThat(figure(little, "periodic-worm").moreNights()).isPositive();
    assertThat(little.noticed()).anyMatch(text -> text.startsWith("Only one night on each side"));
    InventedNight others = new InventedNight(9);
    CompareResult much = compare(others.nights(1), others.worm(0.25 * 5.8).nights(1));
    assertThat(figure(much, "periodic-worm").verdict()).isEqualTo(ComparedFigure.BETTER);
  }

  @Test
  void aPartThatIsNotFoundAfterwardsIsSmallerNotMissing() {
    InventedNight nights = new InventedNight(10);
    List<NightInput> before = nights.nights(3);
    CompareResult result = compare(before, nights.withoutComponents().nights(3));
    ComparedFigure worm = figure(result, "periodic-worm");
    assertThat(worm.verdict()).isEqualTo(ComparedFigure.BETTER);
    assertThat(worm.after().value()).isBetween(0.05, 0.15);
  }

  @Test
  void aNightOnBothSidesIsLeftOutOfBoth() {
    InventedNight nights = new InventedNight(11);
    List<NightInput> before = nights.nights(3);
    List<NightInput> after = new ArrayList<>(nights.nights(2));
    after.add(before.get(0));
    after.add(after.get(0));
    Sides sides = Sides.of(before, after);
    assertThat(sides.before()).hasSize(2);
    assertThat(sides.after()).hasSize(2);
    assertThat(sides.noticed())
        .anyMatch(text -> text.contains("on both sides: it was left out of both"))
        .anyMatch(text -> text.contains("given before: it counts once"));
  }

  @Test
  void aFigureThatOneSideLacksIsNamedWithTheReason() {
    InventedNight nights = new InventedNight(12);
    CompareResult result = compare(nights.nights(2), nights.withoutPolarAxis().nights(2));
    assertThat(result.figures()).noneMatch(figure -> figure.key().startsWith("polar"));
    assertThat(result.notCompared())
        .anyMatch(
            gap ->
                gap.figure().startsWith("polar axis")
                    && gap.because().startsWith("no night after has it: "));
  }

  @Test
  void whatDiffersBetweenTheNightsIsSaidAndNotCompared() {
    InventedNight nights = new InventedNight(13);
    List<NightInput> before = nights.nights(2);
    CompareResult hemispheres = compare(before, nights.hemisphere("south").nights(2));
    assertThat(hemispheres.noticed()).anyMatch(t -> t.startsWith("Nights from both hemispheres"));
    assertThat(hemispheres.figures()).noneMatch(f -> f.key().matches("polar.*|drift.*"));
    assertThat(hemispheres.figures()).anyMatch(f -> f.key().equals("periodic-worm"));

    InventedNight others = new InventedNight(14);
    List<NightInput> first = others.nights(2);
    others.mount("Fellgate 9").guideScale(1.2).guideRate(0.9).cadence(5).wormSeconds(400);
    CompareResult mounts = compare(first, others.nights(2));
    assertThat(mounts.figures()).noneMatch(figure -> figure.group().equals("mount"));
    assertThat(mounts.summary()).isEqualTo("No figure of the mount could be compared.");
    for (String start :
        List.of("Different mounts", "Guide scale", "Declared guide rate", "Worm", "Cadence")) {
      assertThat(mounts.noticed()).anyMatch(text -> text.startsWith(start));
    }
  }

  @Test
  void driftIsComparedOnlyWhereTheStarStoodAlike() {
    InventedNight nights = new InventedNight(15);
    List<NightInput> before = nights.nights(2);
    assertThat(compare(before, nights.nights(2)).figures())
        .anyMatch(figure -> figure.key().equals("drift-dec"));
    CompareResult elsewhere = compare(before, nights.hourAngle(2).declination(50).nights(2));
    assertThat(elsewhere.notCompared())
        .anyMatch(gap -> gap.because().contains("it stood elsewhere"));
  }

  /**
   * By hand: the same motion on the sky at cosines 0.5 and 0.866 is a larger one at the axis
   * before.
   */
  @Test
  void guidingInEqualAirIsBroughtToOneDeclination() {
    InventedNight nights = new InventedNight(16).floor(0.05);
    List<NightInput> before = nights.declination(60).nights(4);
    CompareResult result = compare(before, nights.declination(30).nights(4));
    ComparedFigure equal = figure(result, "rms-ra-equal-air");
    assertThat(equal.after().value() / equal.before().value()).isCloseTo(0.5 / 0.866, within(0.06));
    assertThat(equal.adjustment()).contains("cosine of the declination, 0.50 and 0.87");
  }

  private static SeasonResult season(List<NightInput> nights) {
    return Season.of(
        nights.stream()
            .map(
                night ->
                    new Season.Filed(
                        SeasonNight.of(night.result(), "a.json", "a.html"), night.result()))
            .toList(),
        List.of(),
        "0",
        List.of(),
        List.of(),
        "test",
        List.of(),
        new Faults());
  }

  /** Of a hundred seasons without any trend five may show one; 12 is the 99.8 % bound of that. */
  @Tag("identity")
  @Test
  void aSeasonOfChanceHasNoHeadline() {
    long moving = 0;
    for (int seed = 1; seed <= 100; seed++) {
      moving +=
          season(new InventedNight(3000 + seed).nights(12)).summary().contains("move:") ? 1 : 0;
    }
    assertThat(moving).isLessThanOrEqualTo(12);
  }

  @Tag("identity")
  @Test
  void aWormThatGrowsMakesTheHeadline() {
    InventedNight nights = new InventedNight(31);
    List<NightInput> growing = new ArrayList<>();
    for (int i = 0; i < 16; i++) {
      growing.add(nights.worm(5 + 0.4 * i).next());
    }
    assertThat(season(growing).summary()).contains("these move", "periodic error");
  }

  @Test
  void nightsOfAnotherMountOrOpticsAreShownApart() {
    InventedNight nights = new InventedNight(32);
    List<NightInput> both = new ArrayList<>(nights.nights(6));
    both.addAll(nights.mount("Fellgate 9").guideScale(1.2).nights(6));
    SeasonResult season = season(both);

    assertThat(season.trends().stream().map(Trend::telescope).distinct())
        .containsExactly(
            "Larkfell 180, guide camera of 2.43 arcsec per pixel, main camera of 1.05 arcsec per pixel",
            "Fellgate 9, guide camera of 1.20 arcsec per pixel, main camera of 1.05 arcsec per pixel");
    assertThat(season.trends()).allMatch(trend -> trend.points().size() <= 6);
    assertThat(season.noticed()).anyMatch(text -> text.startsWith("Nights of different mounts"));
    assertThat(season(nights.nights(6)).trends()).allMatch(t -> t.telescope().isEmpty());
  }

  @Test
  void nightsLostToAFaultStandInTheSeasonsSentence() {
    Faults faults = new Faults();
    faults.add("night 2026-03-02: its report", new ArithmeticException("by zero"));
    SeasonResult season =
        Season.of(
            List.of(), List.of(), "0", List.of(), List.of(), "test", List.of("2026-03-02"), faults);

    assertThat(season.summary()).contains("Lost to a fault of roundstar: 2026-03-02.");
    assertThat(season.faults())
        .singleElement()
        .satisfies(
            fault -> {
              assertThat(fault.part()).isEqualTo("night 2026-03-02: its report");
              assertThat(fault.what()).contains("ArithmeticException", "by zero");
            });
  }
}
