package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import io.github.roundstar.model.Equipment;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Lines are found one by one, each once, and called by the gear that makes them. */
@Tag("identity")
class ToneSearchTest {
  private static final Gears UNKNOWN = new Gears(OptionalDouble.empty(), List.of());

  @Test
  void wormAndNamedGearAreLabelled() {
    Gears gears = new Gears(OptionalDouble.of(478.69), List.of(new Equipment.Gear("transfer", 66)));
    List<Tone> tones =
        tones(PlainNights.WITH_WORM.with(66.1, 0.7, 0).with(37, 0.5, 1).run(1, 3), gears);
    assertThat(tones)
        .extracting(Tone::source)
        .containsExactly("worm", "worm/2", "gear:transfer", "unlabelled");
    assertThat(tones.get(2).periodSeconds().value()).isCloseTo(66.1, within(0.1));
  }

  @Test
  void weakFundamentalJoinsItsStrongerHarmonic() {
    ToneSearch.Found found =
        ToneSearch.of(
                List.of(PlainNights.USUAL.frames(4800).with(240, 4, 0).with(480, 1.5, 1).run(1, 4)),
                UNKNOWN)
            .orElseThrow();
    List<Family> families = found.fit().families();
    assertThat(families).hasSize(1);
    assertThat(families.get(0).harmonics()).containsExactly(1, 2);
    assertThat(families.get(0).periodSeconds()).isCloseTo(480, within(1.5));
  }

  @Test
  void independentGearsAreBothFound() {
    List<Tone> tones =
        tones(PlainNights.USUAL.with(479, 3, 0).with(132, 1.2, 1).run(1, 5), UNKNOWN);
    assertThat(tones).hasSize(2);
    assertThat(tones.get(0).periodSeconds().value()).isCloseTo(479, within(2.0));
    assertThat(tones.get(1).periodSeconds().value()).isCloseTo(132, within(0.4));
    assertThat(tones.get(1).amplitudeArcsecAxis().covers(1.2)).isTrue();
  }

  @Test
  void periodBelowFourCadencesMayBeAnAlias() {
    List<Tone> tones =
        tones(PlainNights.USUAL.with(11.3, 0.5, 0).with(13.1, 0.4, 0).run(1, 6), UNKNOWN);
    assertThat(tones).extracting(Tone::mayBeAlias).containsExactly(true, false);
  }

  /** The phase of the line walks at random by a share of a radian per turn; truth is one line. */
  @ParameterizedTest
  @CsvSource({"24, 0.05", "24, 0.2", "66, 0.02", "66, 0.1", "479, 0.1"})
  void skirtsOfAnUnsteadyLineAreNoLines(double periodSeconds, double radiansPerTurn) {
    List<Tone> tones =
        tones(unsteady(PlainNights.USUAL.frames(4800), periodSeconds, radiansPerTurn), UNKNOWN);
    assertThat(tones).hasSize(1);
    assertThat(tones.get(0).periodSeconds().value()).isCloseTo(periodSeconds, withinPercentage(1));
    assertThat(tones.get(0).amplitudeArcsecAxis().value()).isLessThan(3.1);
  }

  @Test
  void unsteadyGearDoesNotHideAWeakerOne() {
    PlainNights night = PlainNights.USUAL.frames(4800).with(100, 1, 0);
    List<Tone> tones =
        tones(unsteady(night, 24, 0.05), new Gears(OptionalDouble.of(24), List.of()));
    assertThat(tones).extracting(Tone::source).containsExactly("worm", "unlabelled");
    assertThat(tones.get(1).periodSeconds().value()).isCloseTo(100, within(0.2));
  }

  /** Both lines are within a percent of the declared period; the worm can have one of them. */
  @Test
  void secondLineAtTheWormsPeriodDoesNotHideAWeakerGear() {
    PlainNights night = PlainNights.USUAL.frames(4800).with(66.4, 3, 0).with(65.4, 1.5, 0);
    List<Tone> tones =
        tones(night.with(100, 0.5, 0).run(1, 8), new Gears(OptionalDouble.of(66), List.of()));
    assertThat(tones).extracting(Tone::source).containsExactly("worm", "unlabelled");
    assertThat(tones.get(1).periodSeconds().value()).isCloseTo(100, within(0.2));
  }

  @Test
  void falseAlarmIsSmallForWhatIsThereAndNothingElseIsListed() {
    List<Tone> tones = tones(PlainNights.WITH_WORM.run(1, 7), UNKNOWN);
    assertThat(tones).hasSize(2).allMatch(tone -> tone.falseAlarm() < 1e-6);
  }

  private static List<Tone> tones(AxisRun run, Gears gears) {
    return PeriodicError.of(List.of(run), gears).value().orElseThrow().tones();
  }

  private static AxisRun unsteady(PlainNights night, double period, double radiansPerTurn) {
    Random random = new Random(0);
    MotionSeries steady = night.run(1, 0).motion();
    double[] seconds = steady.seconds();
    double[] arcsec = steady.arcsec();
    double phase = 0;
    for (int i = 0; i < seconds.length; i++) {
      phase +=
          radiansPerTurn * Math.sqrt(PlainNights.CADENCE_SECONDS / period) * random.nextGaussian();
      arcsec[i] += 3 * Math.sin(2 * Math.PI * seconds[i] / period + phase);
    }
    return night.run(1, seconds, arcsec, steady.startsPiece());
  }
}
