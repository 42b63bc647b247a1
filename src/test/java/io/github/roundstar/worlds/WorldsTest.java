package io.github.roundstar.worlds;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideOutsideOfPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.tngtech.archunit.core.importer.ClassFileImporter;
import io.github.roundstar.ingest.EquipmentReader;
import io.github.roundstar.ingest.GuideTableReader;
import io.github.roundstar.ingest.UnusableInputException;
import io.github.roundstar.model.GuideLog;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.worlds.NightPlan.Dithering;
import io.github.roundstar.worlds.NightPlan.Gear;
import io.github.roundstar.worlds.NightPlan.Pointing;
import io.github.roundstar.worlds.WorldNight.Precision;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.function.IntToDoubleFunction;
import java.util.regex.Pattern;
import org.apache.commons.math3.stat.descriptive.moment.Kurtosis;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** The second simulator agrees with geometry and control theory, and its nights are as it says. */
class WorldsTest {
  private static final double OM = 15.041067;

  @Tag("identity")
  @Test
  void simulatorKnowsNothingOfWhatItJudges() {
    noClasses()
        .that()
        .resideInAPackage("io.github.roundstar.worlds")
        .should()
        .dependOnClassesThat(
            resideInAPackage("io.github.roundstar..")
                .and(resideOutsideOfPackage("io.github.roundstar.worlds")))
        .check(
            new ClassFileImporter()
                .importPackages("io.github.roundstar.worlds")
                .that(describe("are no tests", type -> !type.getName().contains("WorldsTest"))));
  }

  /** Spherical astronomy. */
  @Nested
  class TheSky {
    /**
     * Rotation matrices (Rodrigues) in NumPy 1.24, declination confirmed with 30-digit mpmath;
     * rates are central differences over one second.
     */
    @Tag("published")
    @ParameterizedTest(name = "{index}: latitude {0}, hour angle {1}")
    @CsvSource(
        textBlock =
            """
            # latitude, H, dec, azimuth, altitude ["], dec rate, ra rate ["/min]
            50,   0,   0,   600, 0,    -1.687419, 0.001578
            50,   -90, 0,   0,   300,  1.312580,  0.000955
            50,   90,  0,   0,   300,  -1.312580, 0.000955
            50,   0,   60,  600, 0,    -1.687416, 0.003893
            35,   -45, 20,  -300, 480, 2.245031,  -0.245360
            35,   60,  -10, 240, -180, 0.251500,  -0.198458
            52.2, 30,  70,  900, 300,  -2.743933, 0.083243
            -33,  0,   0,   600, 0,    2.201643,  0.002686
            -33,  -90, 0,   0,   300,  -1.312580, 0.000955
            -33,  -40, -50, 300, -600, 2.527650,  1.005315
            -45,  75,  10,  -420, 240, 0.679071,  0.263927
            10,   -20, 15,  1200, 600, -3.962472, -1.096553
            """)
    void misplacedAxisMakesStarsDriftAsExactRotationSays(
        double latitude,
        double hourAngle,
        double declination,
        double azimuth,
        double altitude,
        double decRate,
        double raRate) {
      SkyPath path = new SkyPath(latitude, azimuth, altitude, 0, 10);
      double[] rate = ratePerMinute(path, hourAngle, declination);
      assertThat(rate[1]).isCloseTo(decRate, within(2e-6));
      assertThat(rate[0]).isCloseTo(raRate, within(2e-5));
    }

    /** Matrices of pyERFA 2.0.0.1, {@code pom00(xp, yp, 0)}, third row as the axis. */
    @Tag("published")
    @ParameterizedTest
    @CsvSource({
      "50, -90, 0, 0, 300, 1.31258025",
      "50, 90, 0, 0, 300, -1.31258025",
      "35, -45, 20, -300, 480, 2.245031"
    })
    void declinationDriftIsThatOfErfasPoleMatrix(
        double latitude,
        double hourAngle,
        double declination,
        double azimuth,
        double altitude,
        double decRate) {
      SkyPath path = new SkyPath(latitude, azimuth, altitude, 0, 10);
      assertThat(ratePerMinute(path, hourAngle, declination)[1]).isCloseTo(decRate, within(1e-6));
    }

    /** NumPy, sixteen digits. */
    @Tag("published")
    @ParameterizedTest
    @CsvSource({
      "50, 600, 0, 0.0018697907264378, 0.6427848901842468, 0.7660444431189780",
      "35, -300, 480, -0.0011894633617393, 0.8178141894890676, 0.5754811349186439",
      "-33, 300, -600, -0.0012220955584883, 0.8402504194678394, -0.5421971404079571"
    })
    void northEndOfTheAxisPointsWhereTheErrorsSay(
        double latitude, double azimuth, double altitude, double east, double north, double up) {
      double[] axis = new SkyPath(latitude, azimuth, altitude, 1010, 10).axis();
      assertThat(axis).containsExactly(new double[] {east, north, up}, within(1e-14));
    }

    /** Astropy 5.2.1, AltAz with a pressure of 1010 hPa, 10 C, dry air. */
    @Tag("published")
    @ParameterizedTest
    @CsvSource({
      "80, 10.2361",
      "60, 33.5019",
      "45, 57.9729",
      "30, 100.1315",
      "20, 157.8286",
      "15, 212.4908"
    })
    void refractionIsThatOfAstropy(double altitude, double arcsec) {
      double refraction =
          new SkyPath(50, 0, 0, 1010, 10).refractionArcsec(Math.toRadians(altitude));
      assertThat(refraction).isCloseTo(arcsec, within(0.005));
    }

    /** Two-term refraction differentiated; the first four confirmed with Astropy to 1e-4 "/min. */
    @Tag("published")
    @ParameterizedTest
    @CsvSource({
      "50, 60, 0, 1.008036, 0.983463",
      "50, -45, -10, -0.855722, 0.863394",
      "35, 60, 30, 0.249902, 0.428502",
      "-33, 45, -20, -0.147824, 0.353249",
      "50, 0, 0, 0.000000, 0.253498",
      "50, 30, 60, 0.070513, 0.164857",
      "-33, -60, 10, 0.949354, 1.580794"
    })
    void refractionMakesStarsDriftForAPerfectAxis(
        double latitude, double hourAngle, double declination, double decRate, double raRate) {
      double[] rate = ratePerMinute(new SkyPath(latitude, 0, 0, 1010, 10), hourAngle, declination);
      assertThat(rate[1]).isCloseTo(decRate, within(5e-4));
      assertThat(rate[0]).isCloseTo(raRate, within(5e-4));
    }

    private double[] ratePerMinute(SkyPath path, double hourAngleDeg, double declinationDeg) {
      double half = Math.toRadians(OM * 0.5 / 3600);
      double[] second =
          path.offset(Math.toRadians(hourAngleDeg) - half, Math.toRadians(declinationDeg), 1);
      return new double[] {second[0] * 60, second[1] * 60};
    }
  }

  /** The guide loop against control theory. */
  @Nested
  class TheLoop {
    /**
     * Noise R and wander q a frame, in a plain loop with whole frames of delay: SciPy 1.10.1,
     * solve_discrete_lyapunov; for no delay also (q + g^2 R) / (g (2 - g)).
     */
    @Tag("published")
    @ParameterizedTest
    @CsvSource({
      "0.2, 0, 1, 0, 0.1111111111",
      "0.5, 0, 1, 0, 0.3333333333",
      "0.7, 0, 1, 0, 0.5384615385",
      "0.3, 0, 1, 1, 0.24223602",
      "0.3, 0, 1, 2, 0.35004822",
      "0.5, 0, 1, 1, 0.60000000",
      "0.5, 0, 1, 2, 1.66666667",
      "0.3, 1, 0, 0, 1.96078431",
      "0.3, 1, 0, 1, 2.69151139",
      "0.3, 1, 0, 2, 3.88942462",
      "0.4, 0.0025, 0.2025, 0, 0.05453125",
      "0.4, 0.0025, 0.2025, 1, 0.08482639",
      "0.4, 0.0025, 0.2025, 2, 0.15367898",
      "0.5, 0.1, 1, 0, 0.4666666667",
      "0.7, 0.04, 0.09, 0, 0.0924175824"
    })
    void varianceOfTheTruePlaceIsThatOfTheClosedForm(
        double gain, double q, double noise, int delay, double expected) {
      NightPlan plan = still(19_000);
      plan.ra.gain = gain;
      plan.dec.gain = gain;
      plan.raWander = Math.sqrt(q);
      plan.decWander = Math.sqrt(q);
      plan.centroidRa = Math.sqrt(noise);
      plan.centroidDec = Math.sqrt(noise);
      plan.delaySeconds = delay;
      StarTruth star = played(plan).star();
      double both = (variance(star, star::eastArcsec) + variance(star, star::northArcsec)) / 2;
      assertThat(both).isCloseTo(expected, within(0.04 * expected));
    }

    /** Closed forms: var(m) = 2 R / (2 - g); correlation -g / 2, then -(g / 2) (1 - g). */
    @Tag("published")
    @ParameterizedTest
    @CsvSource({
      "0.2, 1.1111111111, -0.10, -0.080",
      "0.5, 1.3333333333, -0.25, -0.125",
      "0.7, 1.5384615385, -0.35, -0.105",
      "1.0, 2, -0.50, 0"
    })
    void measuredOffsetsHaveVarianceAndCorrelationOfTheClosedForm(
        double gain, double variance, double lag1, double lag2) {
      NightPlan plan = still(19_000);
      plan.ra.gain = gain;
      plan.centroidRa = 1;
      LogRows rows = played(plan).rows();
      double[] m = Arrays.copyOfRange(rows.raOffset, 100, rows.size);
      double sum = 0;
      double sum1 = 0;
      double sum2 = 0;
      for (int i = 2; i < m.length; i++) {
        sum += m[i] * m[i];
        sum1 += m[i] * m[i - 1];
        sum2 += m[i] * m[i - 2];
      }
      assertThat(sum / (m.length - 2)).isCloseTo(variance, within(0.04 * variance));
      assertThat(sum1 / sum).isCloseTo(lag1, within(0.025));
      assertThat(sum2 / sum).isCloseTo(lag2, within(0.025));
    }

    /** Recursion by hand; the mean offset of a ramp is r / g. */
    @Tag("published")
    @Test
    void rampAndFirstOffsetDieOutAsTheRecursionSays() {
      NightPlan plan = still(200);
      plan.rateErrorArcsecPerMinuteAxis = 6;
      plan.ra.gain = 0.7;
      plan.firstEastArcsec = 1 - 0.1 * (0.3 + plan.exposureSeconds / 2);
      LogRows rows = played(plan).rows();
      double[] expected = {1, 0.4, 0.22, 0.166, 0.1498, 0.14494, 0.143482};
      for (int i = 0; i < expected.length; i++) {
        assertThat(rows.raOffset[i]).isCloseTo(expected[i], within(1e-9));
      }
      assertThat(rows.raOffset[150]).isCloseTo(1 / 7.0, within(1e-9));
    }

    /** |1 - 1/z| / |1 - (1 - g)/z| at z = exp(2 pi i dt / P). */
    @Tag("published")
    @ParameterizedTest
    @CsvSource({
      "0.7, 480, 2, 0.0373910006",
      "0.5, 480, 4, 0.1044219710",
      "0.7, 638.25, 2, 0.0281230524",
      "0.5, 60, 2, 0.4009571627",
      "0.7, 10, 2, 1.2360124262"
    })
    void loopLeavesOfASinusoidWhatItsTransferFunctionSays(
        double gain, double period, double cadence, double ratio) {
      NightPlan plan = still(8000);
      plan.ra.gain = gain;
      plan.cadenceSeconds = cadence;
      plan.gears = List.of(new Gear("worm", period, new double[] {2}, new double[] {0.4}));
      StarTruth star = played(plan).star();
      double[] sums = new double[2];
      int from = 400;
      int turns = (int) ((star.size() - from) * cadence / period);
      int until = from + (int) Math.round(turns * period / cadence);
      for (int i = from; i < until; i++) {
        double angle = 2 * Math.PI * star.exposureStartSeconds(i) / period;
        sums[0] += star.eastArcsec(i) * Math.sin(angle);
        sums[1] += star.eastArcsec(i) * Math.cos(angle);
      }
      double amplitude = Math.hypot(sums[0], sums[1]) * 2 / (until - from);
      assertThat(amplitude / 2).isCloseTo(ratio, within(2e-3 * ratio + 1e-5));
    }
  }

  /** Pulses and rows. */
  @Nested
  class Signs {
    @Tag("identity")
    @ParameterizedTest(name = "tube west: {0}")
    @CsvSource({"true", "false"})
    void positivePulseMakesTheNextOffsetFallAndIsPaidAtTheTrueRate(boolean tubeWest) {
      NightPlan plan = still(300);
      plan.runs = List.of(new Pointing(0, 300, 60, -15, tubeWest));
      plan.eastRate = 0.8;
      plan.westRate = 0.7;
      plan.northRate = 0.6;
      plan.southRate = 0.5;
      plan.ra.gain = 0.4;
      plan.dec.gain = 0.4;
      plan.firstEastArcsec = 3;
      plan.firstNorthArcsec = 2;
      plan.dithering = Dithering.SMALL;
      plan.ditherArcsec = 3;
      plan.ditherEverySeconds = 60;
      LogRows rows = played(plan).rows();
      int west = 0;
      for (int i = 0; i + 1 < rows.size; i++) {
        boolean moved = !Double.isNaN(rows.ditherEast[i + 1]);
        double ra = rows.raOffset[i] - (moved ? rows.ditherEast[i + 1] : 0);
        double dec = rows.decOffset[i] - (moved ? rows.ditherNorth[i + 1] : 0);
        double raRate = OM * Math.cos(Math.toRadians(60)) * (rows.raPulseMs[i] > 0 ? 0.8 : 0.7);
        double decRate = OM * (rows.decPulseMs[i] > 0 ? 0.6 : 0.5);
        assertThat(rows.raOffset[i + 1])
            .isCloseTo(ra - raRate * rows.raPulseMs[i] / 1000, within(1e-9));
        assertThat(rows.decOffset[i + 1])
            .isCloseTo(dec - decRate * rows.decPulseMs[i] / 1000, within(1e-9));
        west += rows.raPulseMs[i] < -50 || rows.decPulseMs[i] < -50 ? 1 : 0;
      }
      assertThat(rows.raPulseMs[0]).isPositive();
      assertThat(rows.decPulseMs[0]).isPositive();
      assertThat(west).isPositive();
    }

    @Tag("identity")
    @Test
    void pulseThatRunsIntoTheNextExposureIsSplitByTime() {
      NightPlan plan = still(100);
      plan.cadenceSeconds = 2;
      plan.exposureSeconds = 1.9;
      plan.latencySeconds = 0.1;
      plan.ra.gain = 0.5;
      plan.firstEastArcsec = 12;
      LogRows rows = played(plan).rows();
      double seconds = rows.raPulseMs[0] / 1000;
      assertThat(seconds).isCloseTo(6 / OM, within(1e-9));
      // It begins with the next exposure: what it moves is missing for half of its own length.
      double seen = 12 - 6 * (1 - seconds / 2 / 1.9);
      assertThat(rows.raOffset[1]).isCloseTo(seen, within(2e-3));
    }

    @Tag("identity")
    @Test
    void loggedDitherIsTheShiftOfTheSetPoint() {
      NightPlan plan = still(400);
      plan.dithering = Dithering.LARGE;
      plan.ditherArcsec = 8;
      plan.ditherEverySeconds = 100;
      plan.ra.direction = Double.NaN;
      plan.dec.direction = Double.NaN;
      LogRows rows = played(plan).rows();
      int dithers = 0;
      for (int i = 1; i < rows.size; i++) {
        boolean marked = rows.event[i].equals("dither");
        double fell = rows.raOffset[i - 1] - rows.raOffset[i];
        assertThat(fell).isCloseTo(marked ? rows.ditherEast[i] : 0, within(1e-9));
        dithers += marked ? 1 : 0;
      }
      assertThat(dithers).isEqualTo(3);
    }
  }

  /** What stands between motor and axis. */
  @Nested
  class TheGear {
    /** Play operator by direct evaluation (Krasnosel'skii and Pokrovskii's definition). */
    @Tag("published")
    @Test
    void playFollowsTheOperatorOfTheTextbook() {
      double[] motor = {0, 1, 2, 3, 4, 3, 2, 1, 0, -1, -2, 0, 2, 5};
      double[] axis = {0, 0, 0.5, 1.5, 2.5, 2.5, 2.5, 2.5, 1.5, 0.5, -0.5, -0.5, 0.5, 3.5};
      DecGear gear = new DecGear(3, 0, 0, 0);
      for (int i = 0; i < motor.length; i++) {
        assertThat(gear.turn(motor[i] - (i == 0 ? 0 : motor[i - 1]))).isEqualTo(axis[i]);
      }
    }

    /** Pulses +0.5 x 6, -0.5 x 12, +0.5 x 8 against a play of 2, engaged for positive moves. */
    @Tag("published")
    @Test
    void playSwallowsItsWidthAtEachReversal() {
      DecGear gear = new DecGear(2, 1, 0, 0);
      assertThat(gear.axis()).isEqualTo(-1);
      List<Double> moved = new ArrayList<>();
      for (int i = 0; i < 26; i++) {
        double before = gear.axis();
        moved.add(gear.turn(i >= 6 && i < 18 ? -0.5 : 0.5) - before);
      }
      List<Double> expected = new ArrayList<>();
      for (int i = 0; i < 26; i++) {
        boolean still = i >= 6 && i < 10 || i >= 18 && i < 22;
        expected.add(still ? 0 : i >= 6 && i < 18 ? -0.5 : 0.5);
      }
      assertThat(moved).isEqualTo(expected);
      assertThat(gear.axis()).isZero();
    }

    /** python-control 0.10.2, friction_backlash_nonlinearity: describing function of width 1. */
    @Tag("published")
    @ParameterizedTest
    @CsvSource({"1, 0.5, -0.31830989", "2, 0.80449889, -0.23873241"})
    void firstHarmonicIsThatOfTheDescribingFunction(double amplitude, double real, double imag) {
      DecGear gear = new DecGear(1, 0, 0, 0);
      int points = 20_000;
      double last = 0;
      double sine = 0;
      double cosine = 0;
      for (int i = 0; i <= 3 * points; i++) {
        double angle = 2 * Math.PI * i / points;
        double motor = amplitude * Math.sin(angle);
        double axis = gear.turn(motor - last);
        last = motor;
        if (i > 2 * points) {
          sine += axis * Math.sin(angle) * 2 / points / amplitude;
          cosine += axis * Math.cos(angle) * 2 / points / amplitude;
        }
      }
      assertThat(sine).isCloseTo(real, within(1e-6));
      assertThat(cosine).isCloseTo(imag, within(1e-6));
    }

    @Tag("identity")
    @Test
    void stickingAxisWaitsAndThenSlips() {
      DecGear gear = new DecGear(0, 0, 1, 0.25);
      double[] expected = {0, 0, 0, 0, 1, 1, 1};
      for (double place : expected) {
        assertThat(gear.turn(0.25)).isEqualTo(place);
      }
    }
  }

  /** Air and camera. */
  @Nested
  class Noise {
    @Tag("identity")
    @ParameterizedTest
    @EnumSource
    void noiseIsAsStrongAsDrawnInEveryWorld(World world) {
      for (long seed = 1; seed <= 2; seed++) {
        WorldNight night = world.night(seed);
        NightPlan plan = night.plan();
        Truth.Axes noise = night.truth().noiseArcsec();
        double frames = night.star().size() / (1 + 2 * plan.airMemorySeconds / plan.cadenceSeconds);
        double slack = Math.max(0.08, 4 / Math.sqrt(2 * frames)) + (plan.student ? 0.15 : 0);
        assertThat(noise.ra() / plan.raNoise).as("%s", night).isCloseTo(1, within(slack));
        assertThat(noise.dec() / plan.decNoise).as("%s", night).isCloseTo(1, within(slack));
      }
    }

    /**
     * Mean of an Ornstein-Uhlenbeck motion over T: variance 2 (m/T) (1 - (m/T) (1 - exp(-T/m)));
     * its covariance one cadence C on: (m/T)^2 (1 - exp(-T/m))^2 exp(-(C - T)/m).
     */
    @Tag("identity")
    @ParameterizedTest
    @CsvSource({"0.3, 1, 0.6", "1.5, 2, 1.4", "3, 2, 1.8"})
    void noiseRemembersItselfAsAnAveragedForgetfulMotion(
        double memory, double cadence, double exposure) {
      NightPlan plan = still(19_000);
      plan.cadenceSeconds = cadence;
      plan.exposureSeconds = exposure;
      plan.airRa = 1;
      plan.airMemorySeconds = memory;
      Truth.Run run = played(plan).truth().runs().get(0);
      double share = memory / exposure;
      double rest = 1 - Math.exp(-exposure / memory);
      double variance = 2 * share * (1 - share * rest);
      double lag =
          share * share * rest * rest * Math.exp(-(cadence - exposure) / memory) / variance;
      assertThat(run.noiseArcsec().ra()).isCloseTo(Math.sqrt(variance), within(0.04));
      assertThat(run.noiseLag1().ra()).isCloseTo(lag, within(0.03));
    }

    @Tag("identity")
    @Test
    void heavyTailsAreHeavyAndOthersAreNot() {
      assertThat(kurtosis(World.HEAVY_TAILS)).isGreaterThan(1);
      assertThat(kurtosis(World.PLAIN)).isCloseTo(0, within(0.25));
    }

    private double kurtosis(World world) {
      double sum = 0;
      int nights = 10;
      for (long seed = 1; seed <= nights; seed++) {
        StarTruth star = world.night(seed).star();
        double[] errors = new double[star.size()];
        Arrays.setAll(errors, star::noiseEastArcsec);
        sum += new Kurtosis().evaluate(errors) / nights;
      }
      return sum;
    }

    @Tag("identity")
    @Test
    void changingNoiseChangesByTwo() {
      for (long seed = 1; seed <= 5; seed++) {
        WorldNight night = World.NOISE_CHANGING.night(seed);
        StarTruth star = night.star();
        int part = star.size() / 10;
        double first = rootMeanSquare(star, 0, part);
        double last = rootMeanSquare(star, star.size() - part, star.size());
        double ratio = Math.max(first, last) / Math.min(first, last);
        // The tenths at both ends lie nine tenths of the night apart.
        assertThat(ratio).as("%s", night).isBetween(1.5, 2.4);
      }
    }

    private double rootMeanSquare(StarTruth star, int from, int to) {
      double sum = 0;
      for (int i = from; i < to; i++) {
        sum += Math.pow(star.noiseEastArcsec(i), 2) + Math.pow(star.noiseNorthArcsec(i), 2);
      }
      return Math.sqrt(sum / (to - from));
    }
  }

  /** What the truth says is what the log's motion is. */
  @Nested
  class TheTruth {
    @Tag("identity")
    @ParameterizedTest
    @EnumSource(names = {"NO_DITHERS", "BENDING_GUIDE_SCOPE", "BOUNDED_WANDER", "SOUTHERN_SKY"})
    void unguidedStarDriftsAsTheTruthSays(World world) {
      for (long seed = 1; seed <= 4; seed++) {
        WorldNight night = world.night(seed).again(Cure.unguided(), Cure.stillAir());
        WorldNight smooth = night.again(Cure.periodicErrorTimes(0));
        LogRows rows = smooth.rows();
        double[] place = level(rows, rows.raOffset, rows.ditherEast);
        double[] north = level(rows, rows.decOffset, rows.ditherNorth);
        for (Truth.Run run : night.truth().runs()) {
          Truth.Axes drift =
              night
                  .truth()
                  .inLoggedAxes(
                      new Truth.Axes(
                          run.driftArcsecPerMinuteSky().ra() + run.bendArcsecPerMinuteSky().ra(),
                          run.driftArcsecPerMinuteSky().dec()
                              + run.bendArcsecPerMinuteSky().dec()));
          assertThat(slope(rows, place, run.run())).isCloseTo(drift.ra(), within(0.02));
          assertThat(slope(rows, north, run.run())).isCloseTo(drift.dec(), within(0.02));
        }
      }
    }

    @Tag("identity")
    @ParameterizedTest
    @EnumSource(names = {"SHORT_RUNS", "THREE_GEARS", "DECLINATION_75", "SHIVERING_WORM"})
    void wormOfTheUnguidedNightHasTheAmplitudeOfTheTruth(World world) {
      for (long seed = 1; seed <= 4; seed++) {
        WorldNight night = world.night(seed).again(Cure.unguided(), Cure.stillAir());
        WorldNight smooth = night.again(Cure.periodicErrorTimes(0));
        double period = night.truth().gears().get(0).periodSeconds();
        for (Truth.Run run : night.truth().runs()) {
          if (run.durationSeconds() < 6 * period) {
            continue;
          }
          double[] sums = new double[2];
          int count = 0;
          double first = Double.NaN;
          for (int i = 0; i < night.star().size(); i++) {
            double time = night.star().exposureStartSeconds(i);
            if (night.rows().run[i] == run.run()) {
              first = Double.isNaN(first) ? time : first;
              double whole = Math.floor(run.durationSeconds() / period) * period;
              if (time - first < whole) {
                double worm = night.star().eastArcsec(i) - smooth.star().eastArcsec(i);
                sums[0] += worm * Math.sin(2 * Math.PI * time / period);
                sums[1] += worm * Math.cos(2 * Math.PI * time / period);
                count++;
              }
            }
          }
          double cos = Math.cos(Math.toRadians(run.declinationDeg()));
          double amplitude = 2 * Math.hypot(sums[0], sums[1]) / count / cos;
          double expected = run.wormAmplitudeArcsecAxis();
          double slack = world == World.THREE_GEARS ? 0.25 : 0.12;
          assertThat(amplitude).as("%s", night).isCloseTo(expected, within(slack * expected));
        }
      }
    }

    /** Sums of squares of sinusoids and walks aside, both cameras must tell one story. */
    @Tag("identity")
    @Test
    void mainCameraSeesTheGuideStarsTrueMotionLessTheBending() {
      WorldNight night = World.NO_DITHERS.night(11);
      WorldNight bent = World.BENDING_GUIDE_SCOPE.night(11);
      assertThat(apart(night)).isLessThan(0.05);
      double bend = bent.plan().bendRaArcsecPerHour * bent.truth().runs().get(0).durationSeconds();
      assertThat(apart(bent.again(Cure.noBending()))).isLessThan(0.05);
      assertThat(Math.abs(bend / 3600)).isGreaterThan(0.3);
      assertThat(apart(bent)).isGreaterThan(0.1);
    }

    /** Scatter of main camera less guide star, both averaged over the guide exposures of a run. */
    private double apart(WorldNight night) {
      ImageMotion motion = night.mainCamera();
      StarTruth star = night.star();
      LogRows rows = night.rows();
      double shift = 0;
      List<Double> values = new ArrayList<>();
      for (int i = 0; i < star.size() && rows.run[i] == 1; i++) {
        shift += Double.isNaN(rows.ditherEast[i]) ? 0 : rows.ditherEast[i];
        double from = star.exposureStartSeconds(i);
        double to = star.exposureEndSeconds(i);
        double sum = 0;
        for (int k = 0; k < 20; k++) {
          sum += motion.eastArcsec(from + (k + 0.5) / 20 * (to - from)) / 20;
        }
        values.add(sum - star.eastArcsec(i) - shift);
      }
      double mean = values.stream().mapToDouble(v -> v).average().orElseThrow();
      return Math.sqrt(
          values.stream().mapToDouble(v -> (v - mean) * (v - mean)).sum() / values.size());
    }

    /**
     * NumPy's eigenvalues of the summed second moments: FWHM 2, guiding 0.25, a drift of 3 north.
     */
    @Tag("published")
    @Test
    void shapeOfADriftingStarIsThatOfSummedMoments() {
      ImageMotion motion = new ImageMotion(0.2);
      int points = 20_000;
      double[] north = new double[points + 1];
      for (int k = 0; k <= points; k++) {
        north[k] = 3.0 * k * 0.05 / 300;
      }
      motion.add(1000, new double[points + 1], north, 0.05, points);
      ImageMotion.Shape shape = motion.shape(1100, 300, 2.3208391502);
      assertThat(shape.majorSigmaArcsec()).isCloseTo(1.312001342, within(1e-5));
      assertThat(shape.minorSigmaArcsec()).isCloseTo(0.985569643, within(1e-8));
      assertThat(shape.elongation()).isCloseTo(1.331211195, within(1e-5));
      assertThat(shape.angleDeg()).isCloseTo(0, within(1e-6));
    }

    private double[] level(LogRows rows, double[] offset, double[] dithers) {
      double[] place = new double[rows.size];
      double shift = 0;
      for (int i = 0; i < rows.size; i++) {
        shift = i > 0 && rows.run[i] != rows.run[i - 1] ? 0 : shift;
        shift += Double.isNaN(dithers[i]) ? 0 : dithers[i];
        place[i] = offset[i] + shift;
      }
      return place;
    }

    private double slope(LogRows rows, double[] place, int run) {
      double n = 0;
      double t = 0;
      double tt = 0;
      double y = 0;
      double ty = 0;
      double zero = Double.NaN;
      for (int i = 0; i < rows.size; i++) {
        if (rows.run[i] == run) {
          zero = Double.isNaN(zero) ? rows.timeSeconds[i] : zero;
          double minutes = (rows.timeSeconds[i] - zero) / 60;
          n++;
          t += minutes;
          tt += minutes * minutes;
          y += place[i];
          ty += minutes * place[i];
        }
      }
      return (n * ty - t * y) / (n * tt - t * t);
    }
  }

  /** Seeds, cures, and what every world promises. */
  @Nested
  @Tag("slow")
  class Nights {
    @Tag("identity")
    @ParameterizedTest
    @EnumSource
    void equalSeedsGiveEqualNights(World world) {
      WorldNight night = world.night(5);
      double[] seen = seen(night);
      assertThat(seen(night.again())).isEqualTo(seen);
      WorldNight twin = world.night(5);
      assertThat(seen(twin)).isEqualTo(seen);
      assertThat(twin.truth()).isEqualTo(night.truth());
      assertThat(twin.guideTable(Precision.ROUNDED)).isEqualTo(night.guideTable(Precision.ROUNDED));
      assertThat(twin.equipment()).isEqualTo(night.equipment());
    }

    @Tag("identity")
    @Test
    void otherSeedsAndOtherWorldsGiveOtherNights() {
      double[] seen = seen(World.PLAIN.night(5));
      assertThat(seen(World.PLAIN.night(6))).isNotEqualTo(seen);
      assertThat(seen(World.PLAIN.night(-5))).isNotEqualTo(seen);
      assertThat(seen(World.NOISE_MEMORY.night(5))).isNotEqualTo(seen);
      assertThat(World.PLAY.night(5).plan().latitudeDeg)
          .isNotEqualTo(World.PLAIN.night(5).plan().latitudeDeg);
    }

    /** Offsets and pulses of all rows. */
    private double[] seen(WorldNight night) {
      LogRows rows = night.rows();
      double[] seen = new double[2 * rows.size];
      System.arraycopy(rows.raOffset, 0, seen, 0, rows.size);
      System.arraycopy(rows.decPulseMs, 0, seen, rows.size, rows.size);
      return seen;
    }

    @Tag("identity")
    @Test
    void cureLeavesAirWanderAndTheOtherAxisAsTheyWere() {
      int told = 0;
      for (long seed = 1; seed <= 8; seed++) {
        WorldNight night = World.UNEVEN_CADENCE_LOST_FRAMES.night(seed);
        if (night.plan().waitsForPulse || night.plan().decAfterRa) {
          continue;
        }
        NightPlan plan = night.plan();
        plan.cameraAngleDeg = 0;
        WorldNight before = night.again();
        WorldNight after = night.again(Cure.raGain(plan.ra.gain / 3));
        assertThat(after.star().size()).isEqualTo(before.star().size());
        assertThat(values(after.star(), after.star()::noiseEastArcsec))
            .isEqualTo(values(before.star(), before.star()::noiseEastArcsec));
        assertThat(values(after.star(), after.star()::northArcsec))
            .isEqualTo(values(before.star(), before.star()::northArcsec));
        assertThat(variance(after.star(), after.star()::eastArcsec))
            .isNotEqualTo(variance(before.star(), before.star()::eastArcsec));
        told++;
      }
      assertThat(told).isPositive();
    }

    @Tag("identity")
    @Test
    void oneWayDeclinationKeepsToItsWay() {
      for (long seed = 1; seed <= 6; seed++) {
        WorldNight night = World.DEC_ONE_WAY.night(seed);
        for (Truth.Run run : night.truth().runs()) {
          double least = 0;
          for (int i = 0; i < night.rows().size; i++) {
            if (night.rows().run[i] == run.run()) {
              least = Math.min(least, night.rows().decPulseMs[i] * run.decDirection());
            }
          }
          assertThat(least).as("%s", night).isZero();
        }
      }
    }

    @Tag("identity")
    @Test
    void mendedMountMovesLess() {
      WorldNight night = World.PLAY.night(3);
      WorldNight mended =
          night.again(Cure.periodicErrorTimes(0), Cure.decPlay(0), Cure.polarAxis(0, 0));
      assertThat(variance(mended.star(), mended.star()::eastArcsec))
          .isLessThan(variance(night.star(), night.star()::eastArcsec));
      assertThat(mended.truth().decPlayArcsec()).isZero();
      assertThat(mended.truth().wormAmplitudeArcsecAxis()).isZero();
      assertThat(mended.truth().azimuthArcmin()).isZero();
    }

    @Tag("identity")
    @ParameterizedTest
    @EnumSource
    void everyWorldKeepsItsPromiseAndStaysOnTheChip(World world) {
      for (long seed = 1; seed <= 2; seed++) {
        WorldNight night = world.night(seed);
        NightPlan plan = night.plan();
        Truth truth = night.truth();
        assertThat(keeps(world, plan, truth)).as("%s", night).isTrue();
        assertThat(truth.ra().ratio()).isBetween(0.4, 2.4);
        assertThat(plan.cadenceSeconds).isBetween(0.3, 20.0);
        double guided = truth.runs().stream().mapToDouble(Truth.Run::durationSeconds).sum();
        assertThat(guided / 3600).as("%s", night).isBetween(0.28, 6.1);
        assertThat(night.star().size()).isGreaterThan(60);
        double widest = 0;
        for (int i = 0; i < night.star().size(); i++) {
          widest =
              Math.max(widest, Math.hypot(night.star().eastArcsec(i), night.star().northArcsec(i)));
        }
        assertThat(widest).as("%s", night).isLessThan(90);
        for (WorldNight.Exposure exposure : List.of(first(night), last(night))) {
          double[] moved =
              night.mainCamera().covariance(exposure.startSeconds(), exposure.seconds());
          assertThat(moved[0] + moved[1]).as("%s", night).isBetween(0.0, 1000.0);
        }
        for (Truth.Run run : truth.runs()) {
          assertThat(Math.abs(run.declinationDeg())).isLessThanOrEqualTo(75);
        }
      }
    }

    private WorldNight.Exposure first(WorldNight night) {
      return night.exposures().get(0);
    }

    private WorldNight.Exposure last(WorldNight night) {
      return night.exposures().get(night.exposures().size() - 1);
    }

    private boolean keeps(World world, NightPlan plan, Truth truth) {
      double off = Math.max(truth.ra().ratio(), 1 / truth.ra().ratio());
      return switch (world) {
        case PLAIN, NOISE_CHANGING, HEAVY_TAILS, FLICKER_WANDER ->
            truth.faults().equals(List.of(world));
        case NO_DITHERS -> plan.dithering == Dithering.NONE;
        case GUIDE_RATE_OFF_BY_A_FIFTH -> off > 1.1 && off < 1.35;
        case GUIDE_RATE_OFF_BY_TWO_WITH_DITHERS ->
            off > 1.8 && off < 2.2 && plan.dithering != Dithering.NONE;
        case GUIDE_RATE_OFF_BY_TWO_WITHOUT_DITHERS ->
            off > 1.8 && off < 2.2 && plan.dithering == Dithering.NONE;
        case EAST_WEST_UNLIKE ->
            Math.abs(
                    Math.abs(truth.ra().plusArcsecPerSecond() - truth.ra().minusArcsecPerSecond())
                            / truth.ra().meanArcsecPerSecond()
                        - 0.05)
                < 1e-9;
        case UNEVEN_CADENCE_LOST_FRAMES -> plan.jitterShare > 0.04 && plan.lostSpellsPerHour > 2;
        case LATE_PULSES -> truth.pulseDelaySeconds() > 0.1 && truth.pulseDelaySeconds() < 0.95;
        case NOISE_MEMORY -> plan.airMemorySeconds >= 0.3 && plan.airMemorySeconds <= 3;
        case BOUNDED_WANDER -> truth.wander() == Wander.BOUNDED;
        case SHIVERING_WORM -> plan.shiverRad > 0;
        case THREE_GEARS -> truth.gears().size() == 3;
        case PLAY -> truth.decPlayArcsec() >= 0.3 && truth.decPlayArcsec() <= 12;
        case STICKING -> truth.decStickArcsec() > truth.decSlipToArcsec();
        case LOW_PASS -> plan.ra.law == Controller.Law.LOW_PASS && plan.ra.newestShare < 1;
        case DEC_VOTES -> plan.dec.votes > 1;
        case INTEGRAL -> plan.ra.law == Controller.Law.INTEGRAL && plan.ra.integralGain > 0;
        case PULSE_LIMITS -> plan.tightLimit > 0 && plan.ra.shortestMs > 0;
        case UNLOGGED_MOVES -> plan.unloggedMovesPerHour > 0;
        case SHORT_RUNS ->
            truth.runs().size() >= 3
                && truth.runs().stream()
                    .allMatch(r -> r.durationSeconds() > 650 && r.durationSeconds() <= 2400);
        case SLOW_CADENCE -> plan.cadenceSeconds == 20;
        case FAST_CADENCE -> plan.cadenceSeconds <= 0.6;
        case SOUTHERN_SKY -> plan.latitudeDeg < 0;
        case DECLINATION_75 -> Math.abs(truth.runs().get(0).declinationDeg()) >= 73;
        case BENDING_GUIDE_SCOPE -> truth.runs().get(0).bendArcsecPerMinuteSky().ra() != 0;
        case GUSTS -> truth.runs().stream().anyMatch(r -> !r.gustSeconds().isEmpty());
        case DEC_ONE_WAY -> truth.runs().stream().allMatch(r -> Math.abs(r.decDirection()) == 1);
        case SEVERAL_AT_ONCE -> truth.faults().size() >= 2;
        case SOUND_MOUNT -> truth.runs().get(0).periodicPeakToPeakArcsecAxis() == 0;
      };
    }
  }

  /** The log's form, by the contract's words and by the tool's own reader. */
  @Nested
  @Tag("slow")
  class TheLog {
    private static final Set<String> COLUMNS =
        Set.of(
            "time",
            "ra_offset",
            "dec_offset",
            "run",
            "ra_pulse",
            "dec_pulse",
            "snr",
            "flux",
            "dither_ra",
            "dither_dec",
            "event");
    private static final Set<String> KEYS =
        Set.of(
            "start",
            "guide_scale",
            "declination",
            "hour_angle",
            "pier_side",
            "guide_rate",
            "guide_exposure",
            "time_mark",
            "pulse_row",
            "gain_ra",
            "gain_dec",
            "deadband_ra",
            "deadband_dec",
            "pulse_limit",
            "dec_direction",
            "site_latitude",
            "runs");

    /** ECSV 1.0: Astropy Proposal for Enhancement 6; columns and keys of the guide table. */
    @Tag("published")
    @ParameterizedTest
    @EnumSource
    void tableObeysTheStandardAndTheContract(World world) {
      WorldNight night = world.night(2);
      for (Precision precision : Precision.values()) {
        List<String> lines = night.guideTable(precision).lines().toList();
        assertThat(lines.get(0)).isEqualTo("# %ECSV 1.0");
        assertThat(lines.get(1)).isEqualTo("# ---");
        int header = 0;
        List<String> columns = new ArrayList<>();
        while (lines.get(header).startsWith("# ")) {
          String line = lines.get(header++).substring(2);
          if (line.startsWith("- {name: ")) {
            assertThat(line)
                .matches("- \\{name: \\w+(, unit: \\w+)?, datatype: (float64|int64|string)}");
            columns.add(line.substring(9, line.indexOf(',')));
          } else if (line.startsWith("  ") && !line.startsWith("  - ")) {
            assertThat(KEYS).contains(line.trim().split(":")[0]);
          }
        }
        assertThat(COLUMNS).containsAll(columns);
        assertThat(lines.get(header)).isEqualTo(String.join(",", columns));
        String number =
            precision == Precision.ROUNDED ? "-?\\d+\\.\\d{2,3}" : "-?[0-9.]+(E-?\\d+)?";
        String pulse = precision == Precision.ROUNDED ? "-?\\d+" : number;
        String offsets = number + "," + number;
        String shifts = columns.contains("dither_ra") ? "(" + offsets + "|,)," : "";
        Pattern row =
            Pattern.compile(
                String.format(
                    "%s,\\d+,((%s,%s,%s,[0-9.]+,%s(settling|dither)?)|(,,%s,%s,[0-9.]+,%slost))",
                    number, offsets, pulse, pulse, shifts, pulse, pulse, shifts));
        List<String> wrong = new ArrayList<>();
        double last = Double.NEGATIVE_INFINITY;
        for (String line : lines.subList(header + 1, lines.size())) {
          double time = Double.parseDouble(line.substring(0, line.indexOf(',')));
          if (!(time > last) || !row.matcher(line).matches()) {
            wrong.add(line);
          }
          last = time;
        }
        assertThat(wrong).as("%s", night).isEmpty();
        assertThat(lines).hasSize(header + 1 + night.rows().size);
      }
    }

    @Tag("identity")
    @ParameterizedTest
    @EnumSource
    void toolReadsEveryRowAndTheEquipment(World world, @TempDir Path folder) throws IOException {
      for (long seed : new long[] {1}) {
        WorldNight night = world.night(seed);
        for (Precision precision : Precision.values()) {
          Path table = folder.resolve(seed + "-" + precision + ".ecsv");
          Files.writeString(table, night.guideTable(precision));
          GuideLog log = read(table, night);
          assertThat(log.warnings()).as("%s", night).isEmpty();
          assertThat(log.runs()).as("%s", night).hasSize(night.truth().runs().size());
          int rows = 0;
          for (GuideRun run : log.runs()) {
            assertThat(run.counts().unusable() + run.counts().rejected()).as("%s", night).isZero();
            rows += run.counts().rows();
          }
          assertThat(rows).as("%s", night).isEqualTo(night.rows().size);
        }
        Path equipment = folder.resolve(seed + ".toml");
        Files.writeString(equipment, night.equipment());
        try {
          assertThat(EquipmentReader.read(equipment)).isNotNull();
        } catch (UnusableInputException unusable) {
          throw new AssertionError(night + ": " + unusable.getMessage(), unusable);
        }
      }
    }

    private GuideLog read(Path table, WorldNight night) {
      try {
        return GuideTableReader.read(table);
      } catch (UnusableInputException unusable) {
        throw new AssertionError(night + ": " + unusable.getMessage(), unusable);
      }
    }
  }

  /** One run at the equator, motors at the sidereal rate, no air, no refraction, no fault. */
  private static NightPlan still(double seconds) {
    NightPlan plan = NightPlan.still(1);
    plan.runs = new ArrayList<>(List.of(new Pointing(0, seconds, 0, -30, true)));
    plan.pressureHpa = 0;
    plan.cadenceSeconds = 1;
    plan.exposureSeconds = 0.05;
    plan.latencySeconds = 0.01;
    plan.declaredGuideRate = 1;
    plan.believedGuideRate = 1;
    plan.eastRate = 1;
    plan.westRate = 1;
    plan.northRate = 1;
    plan.southRate = 1;
    return plan;
  }

  private static WorldNight played(NightPlan plan) {
    return WorldNight.play(World.PLAIN, 0, plan);
  }

  private static double[] values(StarTruth star, IntToDoubleFunction value) {
    double[] values = new double[star.size()];
    Arrays.setAll(values, value);
    return values;
  }

  /** About the mean, the first hundred rows left out. */
  private static double variance(StarTruth star, IntToDoubleFunction value) {
    double mean = 0;
    double square = 0;
    int count = star.size() - 100;
    for (int i = 100; i < star.size(); i++) {
      mean += value.applyAsDouble(i) / count;
    }
    for (int i = 100; i < star.size(); i++) {
      square += Math.pow(value.applyAsDouble(i) - mean, 2) / count;
    }
    return square;
  }
}
