package io.github.roundstar.motion;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Where a polar axis may point, by what a night tells of it and by what is known of axes at large.
 *
 * <p>Owners set their axes with more or less care: how far off such an axis lies is taken for any
 * of some scales from an arc minute to two degrees, each as likely as the next, and no direction
 * for likelier than another (common practice, no source). A night that tells only one part of the
 * error so tells the scale, and by it how large the other part may be; where both are told, the
 * scale does not matter.
 */
public final class AxisPlaces {
  private static final double[] SCALES_ARCMIN = {1, 2, 4, 8, 16, 32, 64, 128};

  private AxisPlaces() {}

  /** One place, in two parts at right angles on the sky [arcmin]. */
  public record Place(double first, double second) {}

  /**
   * Draws.
   *
   * @param first what the night tells of one part [arcmin]
   * @param second of the other
   * @param varianceFirst of the first; infinite where it tells nothing [arcmin^2]
   * @param varianceSecond of the second
   * @param covariance of both; 0 where either tells nothing
   */
  public static List<Place> draws(
      double first,
      double second,
      double varianceFirst,
      double varianceSecond,
      double covariance,
      int count) {
    double determinant = varianceFirst * varianceSecond - covariance * covariance;
    boolean both = Double.isFinite(determinant) && determinant > 0;
    double[] weights = {
      both ? varianceSecond / determinant : 1 / varianceFirst,
      both ? varianceFirst / determinant : 1 / varianceSecond,
      both ? -covariance / determinant : 0
    };
    double[] pulls = {
      weights[0] * first + weights[2] * second, weights[2] * first + weights[1] * second
    };
    double[] likelihood = new double[SCALES_ARCMIN.length];
    double sum = 0;
    for (int s = 0; s < likelihood.length; s++) {
      Posterior posterior = Posterior.of(weights, pulls, SCALES_ARCMIN[s]);
      likelihood[s] = posterior.logLikelihood();
      sum = s == 0 ? likelihood[0] : Math.max(sum, likelihood[s]);
    }
    double most = sum;
    sum = 0;
    for (int s = 0; s < likelihood.length; s++) {
      likelihood[s] = Math.exp(likelihood[s] - most);
      sum += likelihood[s];
    }
    List<Place> places = new ArrayList<>();
    for (int d = 0; d < count; d++) {
      double left = sum * (d + 0.5) / count;
      int s = 0;
      while (s < likelihood.length - 1 && left > likelihood[s]) {
        left -= likelihood[s++];
      }
      places.add(
          Posterior.of(weights, pulls, SCALES_ARCMIN[s])
              .draw(new SplittableRandom(7_919L * d + s)));
    }
    return List.copyOf(places);
  }

  /**
   * Normal, of one scale of the prior.
   *
   * @param logLikelihood of the scale, but for what all scales share
   */
  private record Posterior(
      double first,
      double second,
      double varianceFirst,
      double varianceSecond,
      double covariance,
      double logLikelihood) {
    /**
     * Combines.
     *
     * @param weights inverse covariance of what the night tells: both variances, then the rest
     * @param pulls it times what the night tells
     */
    static Posterior of(double[] weights, double[] pulls, double scale) {
      double prior = 1 / (scale * scale);
      double a = weights[0] + prior;
      double b = weights[1] + prior;
      double determinant = a * b - weights[2] * weights[2];
      double varianceFirst = b / determinant;
      double varianceSecond = a / determinant;
      double covariance = -weights[2] / determinant;
      double first = varianceFirst * pulls[0] + covariance * pulls[1];
      double second = covariance * pulls[0] + varianceSecond * pulls[1];
      return new Posterior(
          first,
          second,
          varianceFirst,
          varianceSecond,
          covariance,
          (pulls[0] * first + pulls[1] * second - Math.log(determinant)) / 2 + Math.log(prior));
    }

    Place draw(SplittableRandom random) {
      double one = random.nextGaussian();
      double other = random.nextGaussian();
      double sigma = Math.sqrt(varianceFirst);
      double along = covariance / sigma;
      return new Place(
          first + sigma * one,
          second + along * one + Math.sqrt(Math.max(0, varianceSecond - along * along)) * other);
    }
  }
}
