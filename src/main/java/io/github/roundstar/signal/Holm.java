package io.github.roundstar.signal;

import java.util.Comparator;
import java.util.stream.IntStream;

/**
 * Probabilities of many tests, raised so that a chance find among all of them stays as rare as in
 * one.
 *
 * @see "Holm (1979), Scandinavian Journal of Statistics 6, 65"
 */
public final class Holm {
  private Holm() {}

  /** The adjusted probabilities in the order of {@code probabilities}; a new array. */
  public static double[] adjusted(double[] probabilities) {
    int n = probabilities.length;
    int[] order =
        IntStream.range(0, n)
            .boxed()
            .sorted(Comparator.comparingDouble(i -> probabilities[i]))
            .mapToInt(i -> i)
            .toArray();
    double[] adjusted = new double[n];
    double least = 0;
    for (int rank = 0; rank < n; rank++) {
      least = Math.max(least, Math.min(1, (n - rank) * probabilities[order[rank]]));
      adjusted[order[rank]] = least;
    }
    return adjusted;
  }
}
