package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.model.Estimate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Recovers sinusoids and drift of made-up motions with intervals that hold what they promise, and
 * keeps silent where there is only wander and noise.
 */
@Tag("identity")
class PeriodicErrorTest {
  private static final Gears UNKNOWN = new Gears(OptionalDouble.empty(), List.of());
  private static final Gears WORM = new Gears(OptionalDouble.of(478.69), List.of());
  private static final int NIGHTS = 60;

  /** Of 60 intervals of 95 %, 53 to 60 hold the truth: the binomial's 99.5 % and more. */
  private static final int FEWEST_COVERED = 53;

  @Test
  void wormNightsComeOutRightAndInsideTheirIntervals() {
    double peakToPeak = truePeakToPeak();
    int[] covered = new int[4];
    for (long seed = 0; seed < NIGHTS; seed++) {
      PeriodicError found = fit(WORM, PlainNights.WITH_WORM.run(1, seed));
      assertThat(found.tones()).extracting(Tone::source).containsExactly("worm", "worm/2");
      Tone worm = found.tones().get(0);
      assertThat(worm.amplitudeArcsecAxis().value()).isCloseTo(6, within(0.3));
      assertThat(worm.periodSeconds().value()).isCloseTo(479, within(0.003 * 479));
      count(covered, 0, worm.periodSeconds(), 479);
      count(covered, 1, worm.amplitudeArcsecAxis(), 6);
      count(covered, 2, found.tones().get(1).amplitudeArcsecAxis(), 1);
      count(covered, 3, found.peakToPeakArcsecAxis().value().orElseThrow(), peakToPeak);
    }
    for (int count : covered) {
      assertThat(count)
          .as("period, amplitude, harmonic, peak to peak: %s", Arrays.toString(covered))
          .isBetween(FEWEST_COVERED, NIGHTS);
    }
  }

  @Test
  void wanderAloneShowsNoPeriod() {
    int nightsWithATone = 0;
    for (long seed = 1000; seed < 1000 + NIGHTS; seed++) {
      nightsWithATone += fit(UNKNOWN, PlainNights.USUAL.run(1, seed)).tones().isEmpty() ? 0 : 1;
    }
    assertThat(nightsWithATone).isLessThanOrEqualTo(3);
  }

  @Test
  void runsThatLostThePhaseShareOnePeriodAndAmplitude() {
    for (int runs = 2; runs <= 3; runs++) {
      int[] covered = new int[2];
      for (long seed = 0; seed < NIGHTS / 2; seed++) {
        List<AxisRun> night = new ArrayList<>();
        for (int r = 0; r < runs; r++) {
          night.add(
              PlainNights.WITH_WORM
                  .frames(1200 + 400 * r)
                  .noise(0.45 + 0.2 * r)
                  .drift(0.3 - 0.5 * r)
                  .late(137 * r)
                  .run(r + 1, 1000 * r + seed));
        }
        PeriodicError found = PeriodicError.of(night, WORM).value().orElseThrow();
        Tone worm = found.tones().get(0);
        assertThat(worm.source()).isEqualTo("worm");
        assertThat(worm.amplitudeArcsecAxis().value()).isCloseTo(6, within(0.3));
        assertThat(worm.periodSeconds().value()).isCloseTo(479, within(0.003 * 479));
        count(covered, 0, worm.periodSeconds(), 479);
        count(covered, 1, worm.amplitudeArcsecAxis(), 6);
      }
      // Of 30 intervals 25 or more.
      assertThat(covered[0]).as("period").isGreaterThanOrEqualTo(25);
      assertThat(covered[1]).as("amplitude").isGreaterThanOrEqualTo(25);
    }
  }

  @Test
  void exposureAveragingIsTakenOut() {
    PlainNights night = PlainNights.USUAL.noise(0.1).with(14, 1, 0.4).exposure(2.8);
    Tone tone = fit(UNKNOWN, night.run(1, 2)).tones().get(0);
    double averaged = Math.sin(Math.PI * 0.2) / (Math.PI * 0.2);
    assertThat(averaged).isLessThan(0.94);
    assertThat(tone.amplitudeArcsecAxis().value()).isCloseTo(1, within(0.01));
    assertThat(tone.amplitudeArcsecAxis().covers(1)).isTrue();
  }

  @Test
  void phaseCountsFromTheOriginOfTheFirstRun() {
    AxisRun run = PlainNights.USUAL.noise(0.01).with(479, 6, 0.7).run(1, 1);
    double phase = 0.7 + 2 * Math.PI * run.originSeconds() / 479;
    assertThat(fit(WORM, run).tones().get(0).phaseRad()).isCloseTo(phase, within(0.05));
  }

  @Test
  void unknownStepsChangeNothing() {
    AxisRun run = PlainNights.WITH_WORM.run(1, 8);
    boolean[] starts = run.motion().startsPiece();
    double[] stepped = run.motion().arcsec();
    for (int i = 0; i < stepped.length; i++) {
      starts[i] = i == 0 || i == 700 || i == 701 || i == 1500;
      stepped[i] += i < 700 ? 0 : i < 701 ? 44 : i < 1500 ? -7.3 : 1.9;
    }
    double[] seconds = run.motion().seconds();
    same(
        fit(WORM, PlainNights.WITH_WORM.run(1, seconds, run.motion().arcsec(), starts)),
        fit(WORM, PlainNights.WITH_WORM.run(1, seconds, stepped, starts)),
        within(1e-6));
  }

  @Test
  void offsetAndOriginOfTimeMoveThePhaseOnly() {
    AxisRun run = PlainNights.WITH_WORM.run(1, 9);
    double[] later = Arrays.stream(run.motion().seconds()).map(t -> t + 5000).toArray();
    double[] higher = Arrays.stream(run.motion().arcsec()).map(y -> y + 123).toArray();
    MotionSeries moved = new MotionSeries(later, higher, run.motion().startsPiece());
    PeriodicError before = fit(WORM, run);
    PeriodicError after =
        fit(WORM, new AxisRun(1, moved, 0, run.cadenceSeconds(), 1, run.originSeconds()));
    same(before, after, within(1e-5));
    double turned = before.tones().get(0).phaseRad() - after.tones().get(0).phaseRad();
    double period = before.tones().get(0).periodSeconds().value();
    // Fitted 10 turns away from the data the phase also carries the period's rounding.
    assertThat(Math.cos(turned - 2 * Math.PI * 5000 / period)).isCloseTo(1, within(1e-6));
  }

  @Test
  void mirrorImageTurnsThePhaseRound() {
    AxisRun run = PlainNights.WITH_WORM.run(1, 10);
    PeriodicError east = fit(WORM, run);
    PeriodicError west = fit(WORM, scaled(run, -1));
    for (int t = 0; t < 2; t++) {
      Tone one = east.tones().get(t);
      Tone other = west.tones().get(t);
      assertThat(other.periodSeconds().value())
          .isCloseTo(one.periodSeconds().value(), within(1e-9));
      assertThat(other.amplitudeArcsecAxis().value())
          .isCloseTo(one.amplitudeArcsecAxis().value(), within(1e-9));
      assertThat(Math.cos(other.phaseRad() - one.phaseRad())).isCloseTo(-1, within(1e-12));
    }
  }

  @Test
  void figuresScaleWithTheMotion() {
    AxisRun run = PlainNights.WITH_WORM.run(1, 11);
    PeriodicError sky = fit(WORM, run);
    PeriodicError axis = fit(WORM, scaled(run, 1 / Math.cos(Math.toRadians(60))));
    Tone onSky = sky.tones().get(0);
    Tone atAxis = axis.tones().get(0);
    near(atAxis.amplitudeArcsecAxis(), onSky.amplitudeArcsecAxis().times(2), within(1e-5));
    near(atAxis.periodSeconds(), onSky.periodSeconds(), within(1e-4));
    assertThat(atAxis.falseAlarm()).isCloseTo(onSky.falseAlarm(), within(1e-12));
  }

  @Test
  void tooFewTurnsSayHowManyMinutesAreMissing() {
    // 400 frames of 3 s are 2.5 turns; three turns are 1436 s, so 240 s or 4 minutes are missing.
    PeriodicError found = fit(WORM, PlainNights.USUAL.frames(400).with(479, 6, 0).run(1, 1));
    assertThat(found.cycles().orElseThrow()).isCloseTo(2.5, within(0.01));
    assertThat(found.tones()).isEmpty();
    assertThat(found.peakToPeakArcsecAxis().value()).isEmpty();
    assertThat(found.peakToPeakArcsecAxis().because())
        .contains("2.5 turns of the worm", "record 4 more minutes");
    assertThat(found.curve().because()).isEqualTo(found.folded().because());
  }

  /** The second harmonic alone, with its fundamental beyond reach, is no turn of the worm. */
  @Test
  void harmonicSeenOverTooFewTurnsIsNoTurn() {
    PeriodicError found =
        fit(
            new Gears(OptionalDouble.of(1200), List.of()),
            PlainNights.USUAL.frames(950).with(1200, 4, 0).with(600, 3, 1).run(1, 1));
    assertThat(found.tones()).extracting(Tone::source).contains("worm/2");
    assertThat(found.peakToPeakArcsecAxis().value()).isEmpty();
    assertThat(found.peakToPeakArcsecAxis().because()).contains("turns of the worm");
  }

  @Test
  void nothingFoundIsAReasonToo() {
    PeriodicError found = fit(UNKNOWN, PlainNights.USUAL.run(1, 1));
    assertThat(found.cycles()).isEmpty();
    assertThat(found.peakToPeakArcsecAxis().because()).contains("no period stands out");
  }

  @Test
  void runsTooShortToFitAreLeftOut() {
    AxisRun whole = PlainNights.WITH_WORM.run(1, 3);
    AxisRun single = PlainNights.USUAL.frames(1).run(2, 4);
    AxisRun none = PlainNights.USUAL.frames(0).run(3, 4);
    PeriodicError found = fit(WORM, single, whole, none);
    same(found, fit(WORM, whole), within(1e-12));
    assertThat(found.index(2)).isEmpty();
    assertThat(PeriodicError.of(List.of(single), WORM).because()).contains("too few");
    assertThat(PeriodicError.of(List.of(none), WORM).because()).contains("too few");
    assertThat(PeriodicError.of(List.of(), WORM).because()).contains("too few");
  }

  @Test
  void starThatNeverMovesHasNoFigure() {
    AxisRun run = PlainNights.USUAL.run(1, 3);
    AxisRun still =
        PlainNights.USUAL.run(
            1, run.motion().seconds(), new double[2400], run.motion().startsPiece());
    assertThat(PeriodicError.of(List.of(still), WORM).because()).contains("never change");
  }

  private static PeriodicError fit(Gears gears, AxisRun... runs) {
    return PeriodicError.of(List.of(runs), gears).value().orElseThrow();
  }

  private static AxisRun scaled(AxisRun run, double factor) {
    return new AxisRun(
        run.runId(),
        run.motion().times(factor),
        run.exposureSeconds(),
        run.cadenceSeconds(),
        run.cosine(),
        run.originSeconds());
  }

  private static void count(int[] covered, int figure, Estimate estimate, double truth) {
    covered[figure] += estimate.covers(truth) ? 1 : 0;
  }

  private static double truePeakToPeak() {
    double[] curve =
        IntStream.range(0, 100_000)
            .mapToDouble(i -> 2 * Math.PI * i / 1e5)
            .map(x -> 6 * Math.sin(x + 0.7) + Math.sin(2 * x + 2))
            .toArray();
    return Arrays.stream(curve).max().orElseThrow() - Arrays.stream(curve).min().orElseThrow();
  }

  private static void same(PeriodicError one, PeriodicError other, Offset<Double> by) {
    assertThat(other.tones()).hasSameSizeAs(one.tones());
    for (int t = 0; t < one.tones().size(); t++) {
      near(other.tones().get(t).periodSeconds(), one.tones().get(t).periodSeconds(), by);
      near(
          other.tones().get(t).amplitudeArcsecAxis(), one.tones().get(t).amplitudeArcsecAxis(), by);
    }
    near(
        other.peakToPeakArcsecAxis().value().orElseThrow(),
        one.peakToPeakArcsecAxis().value().orElseThrow(),
        by);
  }

  private static void near(Estimate actual, Estimate expected, Offset<Double> by) {
    assertThat(actual.value()).isCloseTo(expected.value(), by);
    assertThat(actual.lo95()).isCloseTo(expected.lo95(), by);
    assertThat(actual.hi95()).isCloseTo(expected.hi95(), by);
  }
}
