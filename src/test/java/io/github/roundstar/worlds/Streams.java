package io.github.roundstar.worlds;

import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;

/**
 * Random numbers, one independent stream per cause. A stream is known by the night's key and its
 * own name, so that a night that is played again with another controller meets the same air, wander
 * and gusts.
 */
final class Streams {
  private static final RandomGeneratorFactory<RandomGenerator> FACTORY =
      RandomGeneratorFactory.of("L64X128MixRandom");

  private final long key;

  Streams(String world, long seed) {
    key = spread(seed * 0x9E3779B97F4A7C15L + world.hashCode());
  }

  RandomGenerator of(String name) {
    return FACTORY.create(spread(key ^ spread(name.hashCode() * 0xD1342543DE82EF95L + 77)));
  }

  /** Stafford's thirteenth mix: keys that differ in one bit give streams without likeness. */
  private static long spread(long value) {
    long mixed = (value ^ (value >>> 30)) * 0xBF58476D1CE4E5B9L;
    mixed = (mixed ^ (mixed >>> 27)) * 0x94D049BB133111EBL;
    return mixed ^ (mixed >>> 31);
  }

  static double uniform(RandomGenerator random, double low, double high) {
    return low + (high - low) * random.nextDouble();
  }

  /** Every factor as likely as any other. */
  static double logUniform(RandomGenerator random, double low, double high) {
    return low * Math.exp(random.nextDouble() * Math.log(high / low));
  }

  static double sign(RandomGenerator random) {
    return random.nextBoolean() ? 1 : -1;
  }

  static double pick(RandomGenerator random, double... values) {
    return values[random.nextInt(values.length)];
  }

  /** Student's t with four degrees of freedom, scaled to variance 1 (its own variance is 2). */
  static double studentOfUnitVariance(RandomGenerator random) {
    double chiSquare = -2 * Math.log((1 - random.nextDouble()) * (1 - random.nextDouble()));
    return random.nextGaussian() / Math.sqrt(chiSquare / 4) / Math.sqrt(2);
  }

  /**
   * A motion that forgets (Ornstein-Uhlenbeck), sampled exactly on the grid and at rest in its own
   * statistics from the first step; added to {@code into}.
   *
   * @param deviation its standard deviation [arcsec]
   * @param memorySeconds after which it is correlated by 1/e with itself
   */
  static void addForgetful(
      RandomGenerator random, double deviation, double memorySeconds, double step, double[] into) {
    double kept = Math.exp(-step / memorySeconds);
    double fresh = deviation * Math.sqrt(1 - kept * kept);
    double value = deviation * random.nextGaussian();
    for (int k = 0; k < into.length; k++) {
      into[k] += value;
      value = kept * value + fresh * random.nextGaussian();
    }
  }

  /** A random walk from 0; {@code strength} in arcsec per square root of a second. */
  static void addWalk(RandomGenerator random, double strength, double step, double[] into) {
    double increment = strength * Math.sqrt(step);
    double value = 0;
    for (int k = 0; k < into.length; k++) {
      into[k] += value;
      value += increment * random.nextGaussian();
    }
  }

  /**
   * Flicker: forgetful motions of equal variance, memories a factor of three apart from 3 s to 6561
   * s, whose spectra add up to 1/f between. {@code deviation} is that of each of the eight.
   */
  static void addFlicker(RandomGenerator random, double deviation, double step, double[] into) {
    for (int power = 1; power <= 8; power++) {
      addForgetful(random, deviation, Math.pow(3, power), step, into);
    }
  }

  /** Standard deviation of the mean of {@code steps} grid points of a forgetful motion of 1. */
  static double deviationOfMean(double memorySeconds, double step, int steps) {
    double kept = Math.exp(-step / memorySeconds);
    double sum = steps;
    double power = 1;
    for (int lag = 1; lag < steps; lag++) {
      power *= kept;
      sum += 2 * (steps - lag) * power;
    }
    return Math.sqrt(sum) / steps;
  }
}
