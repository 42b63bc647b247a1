package io.github.roundstar.compare;

import static io.github.roundstar.compare.KnownNight.cure;
import static io.github.roundstar.compare.KnownNight.raGain;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.PromiseKept;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Whether steps were done and brought what they promised, by numbers worked out by hand. Shares of
 * round exposures carry, as variances, p (1 - p) / n of chance and 0.01 times 4 p (1 - p) of
 * nights, p = (k + 1) / (n + 2) of k round ones of n; an RMS carries 0.02 arcsec and 8 % of itself.
 */
@Tag("identity")
class PromiseJudgeTest {
  private static final String BEFORE = "2026-10-01";
  private static final String AFTER = "2026-10-04";

  private static KnownNight before() {
    return new KnownNight(BEFORE).round(12, 24).radialRms(1.00);
  }

  private static KnownNight after() {
    return new KnownNight(AFTER).gain(0.8, 0.8).radialRms(0.62);
  }

  private static PromiseKept judged(KnownNight before, KnownNight... after) {
    List<NightResult> nights = List.of(after).stream().map(KnownNight::night).toList();
    return PromiseJudge.of(before.night(), nights).orElseThrow();
  }

  private static PromiseKept.Figure figure(PromiseKept kept, String key) {
    return kept.figures().stream().filter(f -> f.key().equals(key)).findFirst().orElseThrow();
  }

  /**
   * From, to, and the interval of where it stands, as shares of the way gone: 0.40 to 0.80 makes (x
   * - 0.4) / 0.4, 12 to 1 makes (12 - x) / 11.
   */
  @ParameterizedTest(name = "{0} to {1}, now {2} .. {3}: {5}")
  @CsvSource(
      textBlock =
          """
          # from, to, least, most, setting, done
          0.40, 0.80, 0.80, 0.80, true, done
          0.40, 0.80, 0.75, 0.75, true, done
          # half of the way
          0.40, 0.80, 0.60, 0.60, true, partly
          0.40, 0.80, 0.40, 0.40, true, not-done
          # the other way
          0.40, 0.80, 0.20, 0.20, true, not-done
          # 1.75 of the way is another setting, but a fault may well be smaller than was hoped
          0.40, 0.80, 1.10, 1.10, true, partly
          0.40, 0.80, 1.10, 1.10, false, done
          # -0.1 to 1.1 of the way
          0.40, 0.80, 0.36, 0.84, true, cannot-tell
          # 0.86 to 1.05
          12, 1, 0.5, 2.5, false, done
          # -0.09 to 0.27
          12, 1, 9, 13, false, not-done
          # 0.36 to 0.73
          12, 1, 4, 8, false, partly
          # -0.18 to 0.91
          12, 1, 2, 14, false, cannot-tell
          # -0.09 to 0.64 is neither no move nor one
          12, 1, 5, 13, false, cannot-tell
          """)
  void howMuchOfTheWayWasGoneIsTheWord(
      double from, double to, double least, double most, boolean setting, String done) {
    Estimate now = new Estimate((least + most) / 2, least, most);
    assertThat(StepDone.done(from, to, now, setting)).isEqualTo(done);
  }

  /**
   * 12 of 24: p = 13/26, variance 0.25/24 + 0.01 = 0.020417. 24 of 24: p = 25/26, p(1-p) =
   * 0.036982, variance 0.0015409 + 0.0014793 = 0.0030202. 22 of 24: p = 23/26, p(1-p) = 0.102071,
   * variance 0.0042530 + 0.0040828 = 0.0083358. Won 41.67 give or take 196.00 sqrt(0.028752) =
   * 33.23; missing 8.33 give or take 196.00 sqrt(0.011356) = 20.89.
   */
  @Test
  void sharesOfRoundExposuresCarryChanceAndNights() {
    PromiseKept kept = judged(before().promises(24, 0.99, raGain(0.4, 0.8)), after().round(22, 24));
    PromiseKept.Figure share = figure(kept, "round-share");
    assertThat(share.won().value()).isCloseTo(41.667, within(1e-3));
    assertThat(share.won().hi95() - share.won().value()).isCloseTo(33.234, within(1e-2));
    assertThat(share.missing().value()).isCloseTo(8.333, within(1e-3));
    assertThat(share.missing().hi95() - share.missing().value()).isCloseTo(20.887, within(1e-2));
    assertThat(kept.word()).isEqualTo(PromiseKept.KEPT);
    assertThat(kept.text())
        .startsWith("The step of 2026-10-01: as promised.")
        .contains("22 of 24 exposures round, 24 of 24 promised, 12 of 24 before");
  }

  /**
   * Promised 24 of 24, variance 0.00302. From 2 of 24 (variance 0.00834) to 14 (p = 15/26, variance
   * 0.01993): won 0.50 +- 0.33, missing 0.42 +- 0.30. From 12 (0.02042) to 12: won 0, missing 0.50
   * +- 0.30. To 18 (p = 19/26, variance 0.01607): won 0.25 +- 0.37, missing 0.25 +- 0.27. To 20
   * from 8 (p = 9/26, variance 0.01848; of 20 p = 21/26, variance 0.01268): won 0.50 +- 0.35,
   * missing 0.17 +- 0.25.
   */
  @ParameterizedTest(name = "{0} before, {1} after: {2}")
  @CsvSource({"2, 14, partly", "12, 12, not-kept", "12, 18, cannot-tell", "8, 20, kept"})
  void theWordFollowsFromBothIntervals(int was, int came, String word) {
    PromiseKept kept =
        judged(
            before().round(was, 24).promises(24, 0.99, raGain(0.4, 0.8)), after().round(came, 24));
    assertThat(figure(kept, "round-share").word()).isEqualTo(word);
    assertThat(kept.word()).isEqualTo(word);
  }

  /**
   * 1.00 before, 0.60 promised, 0.62 came. Errors sqrt(0.02^2 + (0.08 x)^2): 0.08246, 0.05200,
   * 0.05348. Won 0.38 +- 1.96 x 0.09828 = 0.1926; missing 0.02 +- 1.96 x 0.07459 = 0.1462.
   */
  @Test
  void theRmsCarriesHowFarNightsDiffer() {
    PromiseKept kept =
        judged(
            before().asksForRms(0.7).promises(12, 0.60, raGain(0.4, 0.8)), after().round(12, 24));
    PromiseKept.Figure rms = figure(kept, "rms-radial");
    assertThat(rms.won().value()).isCloseTo(0.38, within(1e-9));
    assertThat(rms.won().hi95() - rms.won().value()).isCloseTo(0.1926, within(1e-4));
    assertThat(rms.missing().hi95() - rms.missing().value()).isCloseTo(0.1462, within(1e-4));
    assertThat(kept.word()).isEqualTo(PromiseKept.KEPT);
    assertThat(kept.notCompared()).extracting(n -> n.figure()).contains("round exposures");
  }

  /**
   * A noise floor of 0.40 for 0.30 arcsec an axis. With a gain of 0.4 noise counts 2 / (2 - 0.4) =
   * 1.25 times, so the night's 0.62 shows as sqrt(0.62^2 + 2 x 1.25 x (0.16 - 0.09)) = 0.74793.
   */
  @Test
  void anotherAirIsTakenOutBeforeTheRmsIsJudged() {
    PromiseKept kept =
        judged(
            before().asksForRms(0.7).promises(12, 0.60, raGain(0.4, 0.8)),
            after().gain(0.8, 0.4).floor(0.4).radialRms(0.74793));
    assertThat(figure(kept, "rms-radial").came().value()).isCloseTo(0.62, within(1e-5));
    assertThat(kept.word()).isEqualTo(PromiseKept.KEPT);
  }

  @Test
  void muchWorseAirBlamesNoStep() {
    KnownNight promise = before().promises(24, 0.60, raGain(0.4, 0.8));
    assertThat(judged(promise, after().round(4, 24).radialRms(1.4)).word())
        .isEqualTo(PromiseKept.NOT_KEPT);
    // A floor of 0.50 for 0.30 is 1.67 times as much.
    PromiseKept kept = judged(promise, after().round(4, 24).radialRms(1.4).floor(0.5));
    assertThat(kept.word()).isEqualTo(PromiseKept.CANNOT_TELL);
    assertThat(kept.text()).contains("the air was much worse, noise floor 0.71 instead of 0.42");
  }

  @Test
  void aSettingThatDidNotMoveIsNotDoneWhateverTheNightWasLike() {
    KnownNight promise = before().promises(24, 0.60, raGain(0.4, 0.8));
    for (int round : new int[] {4, 12, 24}) {
      PromiseKept kept = judged(promise, after().gain(0.4, 0.4).round(round, 24));
      assertThat(kept.word()).as(kept.text()).isEqualTo(PromiseKept.NOT_DONE);
      assertThat(kept.text()).contains("not done", "RA gain 0.40, not 0.80");
    }
  }

  /** The log after does not declare it: measured 0.60 for 0.30 is twice as much, 0.80. */
  @Test
  void whereOneLogDeclaresNoGainTheMeasuredOnesTell() {
    PromiseKept kept =
        judged(
            before().gain(0.4, 0.3).promises(24, 0.60, raGain(0.4, 0.8)),
            after().gain(null, 0.6).round(24, 24));
    assertThat(kept.steps().get(0).now().value()).isCloseTo(0.8, within(1e-9));
    assertThat(kept.steps().get(0).done()).isEqualTo(PromiseKept.Step.DONE);
  }

  @Test
  void exposuresOfAnotherLengthOrScaleAreNotCounted() {
    KnownNight promise = before().promises(24, 0.60, raGain(0.4, 0.8));
    PromiseKept length = judged(promise, after().unitSeconds(120).round(48, 60));
    assertThat(length.figures()).extracting(f -> f.key()).containsExactly("rms-radial");
    assertThat(length.notCompared().get(0).because())
        .isEqualTo("the promise is for exposures of 300 s, and these are of 120 s");
    PromiseKept scale = judged(promise, after().imagingScale(2.1).round(24, 24));
    assertThat(scale.figures()).extracting(f -> f.key()).containsExactly("rms-radial");
    PromiseKept listed = judged(promise, after().listed().round(24, 24));
    assertThat(listed.notCompared().get(0).because()).contains("named on one side only");
  }

  @Test
  void anotherMountIsNotJudged() {
    PromiseKept kept =
        judged(before().promises(24, 0.60, raGain(0.4, 0.8)), after().mount("Fenwick 90"));
    assertThat(kept.word()).isEqualTo(PromiseKept.CANNOT_TELL);
    assertThat(kept.figures()).isEmpty();
    assertThat(kept.text()).contains("for another mount");
  }

  /** The settings done, the axis not: nothing won is not the tool's doing. */
  @Test
  void whereAStepIsLeftOutNothingWonIsNotHeldAgainstTheRest() {
    KnownNight promise =
        before()
            .polar(12, 1)
            .promises(
                24,
                0.60,
                raGain(0.4, 0.8),
                cure("polar-axis", Map.of("fromArcmin", 12.0, "toArcmin", 1.0)));
    PromiseKept half = judged(promise, after().polar(12, 1).round(12, 24).radialRms(1));
    assertThat(half.word()).isEqualTo(PromiseKept.NOT_DONE);
    assertThat(half.text()).contains("1 of 2 done", "Polar axis off by 12.0, not 1.00 arcmin");
    PromiseKept whole = judged(promise, after().polar(1, 0.8).round(12, 24).radialRms(1));
    assertThat(whole.word()).isEqualTo(PromiseKept.NOT_KEPT);
  }

  @Test
  void whatTheLogCannotShowIsJudgedByWhatCameOfItAlone() {
    KnownNight promise = before().promises(24, 0.99, cure("flexure", Map.of()));
    assertThat(judged(promise, after().round(24, 24)).word()).isEqualTo(PromiseKept.KEPT);
    PromiseKept kept = judged(promise, after().round(12, 24));
    assertThat(kept.word()).isEqualTo(PromiseKept.CANNOT_TELL);
    assertThat(kept.text()).contains("the log does not tell whether all was done");
  }

  /** Exposures of 60 s are promised; later ones of 300 s are the step not done. */
  @Test
  void shorterExposuresAreDoneWhenTheyAreShorter() {
    KnownNight promise =
        before()
            .listed()
            .promises(
                105,
                110,
                60,
                1.00,
                cure("exposure-length", Map.of("fromSeconds", 300.0, "toSeconds", 60.0)));
    assertThat(judged(promise, after().listed().unitSeconds(60).round(104, 110)).word())
        .isEqualTo(PromiseKept.KEPT);
    assertThat(judged(promise, after().listed().unitSeconds(300).round(12, 24)).word())
        .isEqualTo(PromiseKept.NOT_DONE);
  }

  /**
   * Three knocks an hour, then one in two hours: 0.5 +- 1.96 sqrt(2) / 2 = 1.39, 0.37 of the way.
   */
  @Test
  void joltsAreCountedByTheHour() {
    PromiseKept kept =
        judged(
            before().jolts(6).promises(24, 0.60, cure("jolts", Map.of("jolts", 6.0))),
            after().jolts(1).round(24, 24));
    PromiseKept.Step step = kept.steps().get(0);
    assertThat(step.from()).isEqualTo(3);
    assertThat(step.now().hi95()).isCloseTo(0.5 + 1.386, within(1e-3));
    assertThat(step.done()).isEqualTo(PromiseKept.Step.DONE);
  }

  /**
   * Four nights of 22 of 24: chance and nights count a quarter, so what one cannot tell they can.
   */
  @Test
  void moreNightsTellMore() {
    KnownNight promise = before().round(14, 24).promises(24, 0.99, raGain(0.4, 0.8));
    KnownNight[] four = new KnownNight[4];
    for (int i = 0; i < 4; i++) {
      four[i] = new KnownNight("2026-10-1" + i).gain(0.8, 0.8).round(18, 24).radialRms(0.95);
    }
    assertThat(judged(promise, four[0]).word()).isEqualTo(PromiseKept.CANNOT_TELL);
    PromiseKept all = judged(promise, four);
    assertThat(all.judgedOn()).hasSize(4);
    assertThat(figure(all, "round-share").missing().lo95()).isPositive();
  }

  @Test
  void settingsThatDifferFromNightToNightTellNothing() {
    PromiseKept kept =
        judged(
            before().promises(24, 0.60, raGain(0.4, 0.8)),
            after().round(24, 24),
            new KnownNight("2026-10-05").gain(0.4, 0.4).round(24, 24));
    assertThat(kept.steps().get(0).done()).isEqualTo(PromiseKept.CANNOT_TELL);
  }

  @Test
  void aFaultThatGrewMeanwhileIsNamed() {
    PromiseKept kept =
        judged(
            before().swing(10, 0.3).promises(24, 0.60, raGain(0.4, 0.8)),
            after().swing(40, 0.5).round(2, 24).radialRms(1.5));
    assertThat(kept.word()).isEqualTo(PromiseKept.NOT_KEPT);
    assertThat(kept.text())
        .contains("Meanwhile periodic error, peak to peak went from 10 to 40 arcsec");
  }

  @Test
  void aNightThatPromisedNothingIsNotJudged() {
    assertThat(PromiseJudge.of(before().night(), List.of(after().night()))).isEmpty();
  }
}
