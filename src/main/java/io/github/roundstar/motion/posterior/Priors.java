package io.github.roundstar.motion.posterior;

import java.util.Comparator;
import java.util.List;

/**
 * What is said of mounts and air before a frame has been seen, all in one place. Where no source is
 * named it is common practice, no source.
 *
 * @param strengths strength of pulses, in multiples of the declared one
 * @param delays how long a push waits after the exposure that asked for it, as distributions that
 *     fall from zero: computers and mounts take a tenth of a second or two; and some programs log a
 *     pulse with the frame before the one that it follows
 * @param memories the time in which the star's noise forgets all but 1/e of itself, as log-normal
 *     distributions: that of photons and of a camera has no memory that any frame would see, that
 *     of the air lasts as long as it takes to move through the line of sight
 * @param ratioMedianLog median of wander over noise, q / s^2, as the walk's variance in a second:
 *     0.02 arcsec a second beside a noise of 0.35 arcsec [decades of 1/s]
 * @param ratioDeviationLog standard deviation of it: at two of them below, a night's wander is lost
 *     in a single frame's noise; at two above, a star wanders farther in a second than its noise
 *     [decades]
 * @param noiseMedianArcsec median of the noise's standard deviation [arcsec]
 * @param noiseLogDeviation standard deviation of its natural logarithm
 * @param playShare share of the mounts that have play at all
 * @param meanPlayArcsec mean width where there is one, falling from zero [arcsec of declared
 *     pushes]
 * @param scales common factor on all of {@link #DRIFT}, {@link #BEND} and {@link #TONE} of a mount,
 *     each with its probability. Where pulses may be stronger, everything that a mount is said to
 *     do grows with them: amplitudes that were each equally likely at any size would together make
 *     strong pulses likelier by as many powers of the strength. A good mount and a bad one differ
 *     by a factor of a hundred in all of them
 * @param movements how fast the complex amplitude of a sinusoid walks, each with its probability
 */
public record Priors(
    List<Strength> strengths,
    List<Delay> delays,
    List<Memory> memories,
    double ratioMedianLog,
    double ratioDeviationLog,
    double noiseMedianArcsec,
    double noiseLogDeviation,
    double playShare,
    double meanPlayArcsec,
    List<Scale> scales,
    List<Movement> movements) {
  /**
   * Standard deviation of a drift [arcsec/s]: a polar axis ten arcminutes off drifts by 2.6 arcsec
   * a minute, and few mounts are used that drift by twice that.
   */
  public static final double DRIFT = 0.1;

  /**
   * Standard deviation of the drift's change over time [arcsec/s^2]: the drift of a polar axis
   * turns with the sky, 7.3e-5 rad/s, and guide scopes bend as they turn.
   */
  public static final double BEND = 1e-5;

  /**
   * Standard deviation of the second change of a drift [arcsec/s^3]: what a polar axis makes is a
   * sinusoid of the sidereal rate w, whose third order is w^2 / 6 of the first.
   */
  public static final double SECOND_BEND = 1e-10;

  /**
   * The best of gears do not make a polar axis right, nor a rate, nor the air bend less: however
   * small all else is, a drift is taken to have at least this standard deviation [arcsec/s].
   */
  static final double LEAST_DRIFT = 0.02;

  /** The same of the drift's change [arcsec/s^2]. */
  static final double LEAST_BEND = 2e-6;

  /** The same of its second change [arcsec/s^3]. */
  static final double LEAST_SECOND_BEND = 2e-11;

  /**
   * Standard deviation of each amplitude of a sinusoid [arcsec]: worms of 30 arcsec exist. Those of
   * harmonics are smaller by their order.
   */
  public static final double TONE = 15;

  /**
   * One way in which pulses may be strong.
   *
   * @param weight its probability
   * @param mean strength [declared]
   * @param deviation standard deviation [declared]
   * @param unlikeness standard deviation of half the difference between both directions, as a share
   *     of the mean
   */
  public record Strength(double weight, double mean, double deviation, double unlikeness) {}

  /**
   * One speed at which a sinusoid's complex amplitude walks at random.
   *
   * @param weight its probability
   * @param arcsecPerRootTurn standard deviation of the walk over a turn [arcsec]; 0 for one that
   *     stays
   */
  public record Movement(double weight, double arcsecPerRootTurn) {}

  /**
   * One kind of delay, falling from zero; its mean is the sum of both.
   *
   * @param weight its probability
   * @param meanSeconds mean [s]
   * @param meanFrames mean [frames]
   */
  public record Delay(double weight, double meanSeconds, double meanFrames) {}

  private static final List<Delay> DELAYS =
      List.of(new Delay(0.85, 0.15, 0), new Delay(0.15, 0, 0.3));

  /**
   * One kind of memory.
   *
   * @param weight its probability
   * @param medianSeconds median [s]
   * @param logDeviation standard deviation of the natural logarithm
   */
  public record Memory(double weight, double medianSeconds, double logDeviation) {}

  private static final List<Memory> MEMORIES =
      List.of(new Memory(0.5, 0.8, Math.log(3)), new Memory(0.5, 0.05, Math.log(2)));

  /**
   * One size of everything that a mount does by itself.
   *
   * @param weight its probability
   * @param factor on the standard deviations
   */
  public record Scale(double weight, double factor) {}

  private static final List<Scale> SCALES =
      List.of(
          new Scale(0.2, 1),
          new Scale(0.2, 0.333),
          new Scale(0.2, 0.111),
          new Scale(0.2, 0.037),
          new Scale(0.2, 0.0123));

  private static final List<Movement> MOVEMENTS =
      List.of(
          new Movement(0.5, 0),
          new Movement(0.125, 0.05),
          new Movement(0.125, 0.15),
          new Movement(0.125, 0.45),
          new Movement(0.125, 1.35));

  /** Of two directions that are each some 3 % off by themselves. */
  static final double ALIKE = 0.021;

  /**
   * A declared rate is mostly right to a few per cent (gears and guide scale), at times off by
   * twenty (a scale from a catalogue's focal length); now and then the rate itself was left at half
   * or twice what the mount uses, and is as exact as any other about that; and anything else
   * happens. Now and then one hardly acts at all: a loose gear, clutch or cable.
   */
  private static final List<Strength> DECLARED =
      List.of(
          new Strength(0.71, 1, 0.04, ALIKE),
          new Strength(0.18, 1, 0.2, ALIKE),
          new Strength(0.025, 0.5, 0.03, ALIKE),
          new Strength(0.025, 2, 0.12, ALIKE),
          new Strength(0.05, 1, 0.5, ALIKE),
          new Strength(0.01, 0.7, 0.4, 0.6));

  /**
   * Nothing declared: most mounts are set to about half the sidereal rate, many to nearly all of
   * it, some to a quarter.
   */
  private static final List<Strength> UNDECLARED =
      List.of(
          new Strength(0.5, 1, 0.3, ALIKE),
          new Strength(0.35, 1.9, 0.3, ALIKE),
          new Strength(0.15, 0.5, 0.2, ALIKE));

  /** Those that hold for a mount whose guide rate is declared. */
  public static final Priors USUAL =
      new Priors(DECLARED, DELAYS, MEMORIES, -2.5, 1.5, 0.35, 1.0, 0.5, 3.0, SCALES, MOVEMENTS);

  /** The same without a declared rate: strengths are in multiples of half the sidereal rate. */
  public Priors undeclared() {
    return withStrengths(UNDECLARED);
  }

  /** The strength that is least known beforehand. */
  Strength widest() {
    return strengths.stream().max(Comparator.comparingDouble(Strength::deviation)).orElseThrow();
  }

  /** The same with other strengths. */
  public Priors withStrengths(List<Strength> others) {
    return new Priors(
        others,
        delays,
        memories,
        ratioMedianLog,
        ratioDeviationLog,
        noiseMedianArcsec,
        noiseLogDeviation,
        playShare,
        meanPlayArcsec,
        scales,
        movements);
  }

  /** The same for mounts of one size alone. */
  Priors ofOneSize() {
    return new Priors(
        strengths,
        delays,
        memories,
        ratioMedianLog,
        ratioDeviationLog,
        noiseMedianArcsec,
        noiseLogDeviation,
        playShare,
        meanPlayArcsec,
        List.of(new Scale(1, 1)),
        movements);
  }

  /** All of them so many times as wide, to see what rests on them. */
  public Priors widened(double factor) {
    return new Priors(
        strengths.stream()
            .map(
                s ->
                    new Strength(
                        s.weight(), s.mean(), factor * s.deviation(), factor * s.unlikeness()))
            .toList(),
        delays.stream()
            .map(d -> new Delay(d.weight(), factor * d.meanSeconds(), factor * d.meanFrames()))
            .toList(),
        memories.stream()
            .map(m -> new Memory(m.weight(), m.medianSeconds(), factor * m.logDeviation()))
            .toList(),
        ratioMedianLog,
        factor * ratioDeviationLog,
        noiseMedianArcsec,
        factor * noiseLogDeviation,
        playShare,
        factor * meanPlayArcsec,
        scales,
        movements);
  }

  /**
   * Standard deviation of what one of the columns is multiplied by that have a size in common.
   *
   * @param column drift first, then its two bends, then sinusoids
   * @param deviation of a mount of size 1
   */
  static double ofSize(int column, double deviation, double size) {
    double least =
        switch (column) {
          case 0 -> LEAST_DRIFT;
          case 1 -> LEAST_BEND;
          case 2 -> LEAST_SECOND_BEND;
          default -> 0;
        };
    return Math.hypot(least, size * deviation);
  }

  /** Logarithm of the density of the ratio's logarithm [per decade]. */
  double logRatio(double logRatio) {
    return logNormal(logRatio, ratioMedianLog, ratioDeviationLog);
  }

  /** Logarithm of the density of the memory's natural logarithm. */
  double logMemory(double logSeconds) {
    double sum = 0;
    for (Memory m : memories) {
      sum +=
          m.weight()
              * Math.exp(logNormal(logSeconds, Math.log(m.medianSeconds()), m.logDeviation()));
    }
    return Math.log(sum);
  }

  /** Logarithm of the density of the natural logarithm of the noise. */
  double logNoise(double logArcsec) {
    return logNormal(logArcsec, Math.log(noiseMedianArcsec), noiseLogDeviation);
  }

  /**
   * Logarithm of the density of a delay, from none to a whole frame [1/s].
   *
   * @param cadence time between frames [s]
   */
  double logDelay(double seconds, double cadence) {
    double sum = 0;
    for (Delay delay : delays) {
      double mean = delay.meanSeconds() + delay.meanFrames() * cadence;
      sum += delay.weight() * Math.exp(-seconds / mean) / (mean * -Math.expm1(-cadence / mean));
    }
    return Math.log(sum);
  }

  /** Logarithm of the density of a width that is not zero [per arcsec], times its probability. */
  double logPlay(double width) {
    return Math.log(playShare) - Math.log(meanPlayArcsec) - width / meanPlayArcsec;
  }

  static double logNormal(double x, double mean, double deviation) {
    double z = (x - mean) / deviation;
    return -0.5 * z * z - Math.log(deviation) - 0.5 * Math.log(2 * Math.PI);
  }
}
