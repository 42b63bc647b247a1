package io.github.roundstar.motion;

import java.util.List;
import java.util.stream.Stream;

/**
 * Sinusoids that turn together: a gear and its harmonics.
 *
 * @param angularRate of the fundamental [rad/s]
 * @param harmonics orders that are present, ascending; 1 is the fundamental
 * @param source what the gear is: {@code worm}, {@code strain-wave}, {@code gear:NAME} or {@code
 *     unlabelled}
 */
record Family(double angularRate, List<Integer> harmonics, String source) {
  static final String WORM = "worm";
  static final String STRAIN_WAVE = "strain-wave";
  static final String UNLABELLED = "unlabelled";

  Family {
    harmonics = List.copyOf(harmonics);
  }

  static Family ofPeriod(double periodSeconds, int harmonic, String source) {
    return new Family(2 * Math.PI / periodSeconds, List.of(harmonic), source);
  }

  double periodSeconds() {
    return 2 * Math.PI / angularRate;
  }

  double hertz(int harmonic) {
    return harmonic * angularRate / (2 * Math.PI);
  }

  Family withHarmonic(int harmonic) {
    List<Integer> more =
        Stream.concat(harmonics.stream(), Stream.of(harmonic)).distinct().sorted().toList();
    return new Family(angularRate, more, source);
  }

  Family withRate(double newRate) {
    return new Family(newRate, harmonics, source);
  }

  /** The same sinusoids counted as harmonics of a gear that turns {@code factor} times slower. */
  Family slower(int factor) {
    return new Family(
        angularRate / factor, harmonics.stream().map(h -> h * factor).toList(), source);
  }

  Family named(String newSource) {
    return new Family(angularRate, harmonics, newSource);
  }

  /** What a component is called. */
  String label(int harmonic) {
    boolean counted = source.equals(WORM) || source.equals(STRAIN_WAVE);
    return harmonic == 1 || !counted ? source : source + "/" + harmonic;
  }
}
