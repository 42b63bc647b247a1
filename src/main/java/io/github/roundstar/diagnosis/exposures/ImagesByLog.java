package io.github.roundstar.diagnosis.exposures;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.signal.Stretch;
import java.util.List;
import java.util.Set;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;

/**
 * How the images of a night follow from its log: each is as long as the log tells, times a number
 * near one, and beside that as all of them are, which is the optics' doing. Least squares in the
 * stretches, the number held near one by how well motion is told; what is left over belongs to
 * single images.
 *
 * @param perTold how much longer motion makes the images than the log tells
 * @param always what all images show beside it; nothing where that may be chance
 * @param ownSigma by how much single images differ from that, the error of measuring taken out;
 *     infinite where there are too few to tell
 */
record ImagesByLog(double perTold, Stretch always, double ownSigma) {
  /** The air moves the field against the guide star. */
  static final String REFRACTION = "differential-refraction";

  /** The air draws colours out. */
  static final String DISPERSION = "atmospheric-dispersion";

  /** Guide scope and telescope bend apart. */
  static final String FLEXURE = "differential-flexure";

  private static final Set<String> NOT_OPTICS = Set.of(REFRACTION, DISPERSION, FLEXURE);

  /** The log tells motion to within about this share; common practice, no source. */
  static final double TOLD_TO = 0.15;

  /** Single images differ by at least so much, whatever their errors say; common practice. */
  private static final double LEAST_SIGMA = 0.02;

  /** Fewer images may be alike by chance. */
  private static final int FEWEST = 4;

  /** What chance makes as large in one night of a hundred. */
  private static final double BEYOND_CHANCE =
      new ChiSquaredDistribution(2).inverseCumulativeProbability(0.99);

  private static final Stretch NONE = new Stretch(0, 0);

  /** From the exposures whose images were measured and show neither flexure nor air. */
  static ImagesByLog of(List<JudgedExposure> exposures) {
    List<JudgedExposure> used =
        exposures.stream()
            .filter(e -> e.predicted().isPresent() && e.window().run().isPresent())
            .filter(e -> e.window().measured().isPresent())
            .filter(e -> !NOT_OPTICS.contains(String.valueOf(e.cause().code())))
            .toList();
    List<Stretch> told = used.stream().map(e -> e.predicted().orElseThrow().stretch()).toList();
    List<Stretch> shown =
        used.stream().map(e -> shape(e, e.window().measured().orElseThrow())).toList();
    double[] sigmas =
        used.stream().mapToDouble(e -> sigma(e.window().measured().orElseThrow())).toArray();
    return fit(told, shown, sigmas);
  }

  /**
   * Fits.
   *
   * @param stretches what the log tells of each image
   * @param shown what it shows
   * @param sigmas standard errors of that
   */
  static ImagesByLog fit(List<Stretch> stretches, List<Stretch> shown, double[] sigmas) {
    int n = stretches.size();
    if (n < FEWEST) {
      return new ImagesByLog(1, NONE, Double.POSITIVE_INFINITY);
    }
    double[][] told = new double[2][n];
    double[][] more = new double[2][n];
    double[] weights = new double[n];
    for (int i = 0; i < n; i++) {
      Stretch tells = stretches.get(i);
      told[0][i] = tells.along();
      told[1][i] = tells.aslant();
      more[0][i] = shown.get(i).along() - tells.along();
      more[1][i] = shown.get(i).aslant() - tells.aslant();
      double own = Math.max(LEAST_SIGMA, sigmas[i]);
      double toldTo = TOLD_TO * tells.size();
      weights[i] = 1 / (own * own + toldTo * toldTo);
    }
    double all = 0;
    double[] meanTold = new double[2];
    double[] meanMore = new double[2];
    for (int i = 0; i < n; i++) {
      all += weights[i];
      for (int c = 0; c < 2; c++) {
        meanTold[c] += weights[i] * told[c][i];
        meanMore[c] += weights[i] * more[c][i];
      }
    }
    for (int c = 0; c < 2; c++) {
      meanTold[c] /= all;
      meanMore[c] /= all;
    }
    double held = 1 / (TOLD_TO * TOLD_TO);
    double slope = slope(told, more, weights, meanTold, meanMore, held);
    double[] always = {
      meanMore[0] - slope * meanTold[0], meanMore[1] - slope * meanTold[1],
    };
    double squares = 0;
    double plain = 0;
    double errors = 0;
    for (int i = 0; i < n; i++) {
      errors += sigmas[i] * sigmas[i] / n;
      for (int c = 0; c < 2; c++) {
        double left = more[c][i] - slope * told[c][i] - always[c];
        squares += weights[i] * left * left;
        plain += left * left / (2 * n - 3);
      }
    }
    double own = Math.sqrt(Math.max(0, plain - errors));
    double spread = Math.max(1, squares / (2 * n - 3));
    double slopeVariance = spread / (variation(told, weights, meanTold) + held);
    double common = spread / all;
    // Inverse of the identity times one variance plus the slope's share along what is told.
    double size = Math.hypot(meanTold[0], meanTold[1]);
    double across = always[0] * always[0] + always[1] * always[1];
    double along = size == 0 ? 0 : (always[0] * meanTold[0] + always[1] * meanTold[1]) / size;
    double distance =
        (across - along * along) / common + along * along / (common + slopeVariance * size * size);
    if (distance > BEYOND_CHANCE) {
      return new ImagesByLog(1 + slope, new Stretch(always[0], always[1]), own);
    }
    double[] nothing = new double[2];
    return new ImagesByLog(1 + slope(told, more, weights, nothing, nothing, held), NONE, own);
  }

  /**
   * How much of the difference between an image and what all images have in common is its own, and
   * not the error of measuring it, 0 to 1.
   */
  double ownShare(double sigma) {
    return Double.isInfinite(ownSigma) || sigma == 0
        ? 1
        : ownSigma * ownSigma / (ownSigma * ownSigma + sigma * sigma);
  }

  private static double slope(
      double[][] told,
      double[][] more,
      double[] weights,
      double[] aboutTold,
      double[] aboutMore,
      double held) {
    double sum = 0;
    for (int c = 0; c < 2; c++) {
      for (int i = 0; i < weights.length; i++) {
        sum += weights[i] * (told[c][i] - aboutTold[c]) * (more[c][i] - aboutMore[c]);
      }
    }
    return sum / (variation(told, weights, aboutTold) + held);
  }

  private static double variation(double[][] told, double[] weights, double[] about) {
    double sum = 0;
    for (int c = 0; c < 2; c++) {
      for (int i = 0; i < weights.length; i++) {
        double from = told[c][i] - about[c];
        sum += weights[i] * from * from;
      }
    }
    return sum;
  }

  /** The stretch that an image shows; a round one has the angle that the log tells. */
  static Stretch shape(JudgedExposure exposure, MeasuredShape measured) {
    double size = Math.log(measured.elongation().value());
    double degrees =
        measured
            .angleDegrees()
            .orElseGet(() -> exposure.predicted().orElseThrow().stretch().angleDegrees());
    double angle = 2 * Math.toRadians(degrees);
    return new Stretch(size * Math.cos(angle), size * Math.sin(angle));
  }

  /** Its standard error. */
  static double sigma(MeasuredShape measured) {
    return (Math.log(measured.elongation().hi95()) - Math.log(measured.elongation().lo95()))
        / (2 * Estimate.SIGMAS_95);
  }
}
