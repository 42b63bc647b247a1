package io.github.roundstar.simulate;

/**
 * Chance that is the same on every machine: SplitMix64, one independent stream per source and run,
 * so that a change to one source leaves the others as they were.
 *
 * @see "Steele, Lea &amp; Flood (2014), Fast splittable pseudorandom number generators, OOPSLA,
 *     with the mixing constants of Stafford's variant 13"
 */
final class NoiseStream {
  private static final long GOLDEN_GAMMA = 0x9E3779B97F4A7C15L;

  private long state;

  private NoiseStream(long state) {
    this.state = state;
  }

  /** The bare generator. */
  static NoiseStream of(long seed) {
    return new NoiseStream(seed);
  }

  /** The stream of one source of noise in one run. */
  static NoiseStream of(long seed, String source, int run) {
    long name = 0xCBF29CE484222325L; // FNV-1a, 64 bits
    for (int i = 0; i < source.length(); i++) {
      name = (name ^ source.charAt(i)) * 0x100000001B3L;
    }
    return new NoiseStream(mix(mix(seed ^ name) + run * GOLDEN_GAMMA));
  }

  long nextLong() {
    state += GOLDEN_GAMMA;
    return mix(state);
  }

  /** Evenly spread in [0, 1). */
  double uniform() {
    return (nextLong() >>> 11) * 0x1.0p-53;
  }

  /** Evenly spread in [from, to). */
  double between(double from, double to) {
    return from + (to - from) * uniform();
  }

  /** Mean 0, variance 1 (Box &amp; Muller 1958, Ann. Math. Stat. 29, 610). */
  double gaussian() {
    double radius = StrictMath.sqrt(-2 * StrictMath.log(1 - uniform()));
    return radius * StrictMath.cos(2 * Math.PI * uniform());
  }

  /** Waiting time of a process that happens {@code rate} times per unit of time. */
  double waiting(double rate) {
    return -StrictMath.log(1 - uniform()) / rate;
  }

  private static long mix(long bits) {
    long z = (bits ^ (bits >>> 30)) * 0xBF58476D1CE4E5B9L;
    z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
    return z ^ (z >>> 31);
  }
}
