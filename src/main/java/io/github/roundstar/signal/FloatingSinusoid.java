package io.github.roundstar.signal;

/**
 * A sinusoid with a floating mean fitted to weighted samples, one frequency at a time, by direct
 * sums. Times are taken about their mean and values about theirs, so that neither costs digits.
 */
final class FloatingSinusoid {
  /** Below this the cosine and sine cannot be told apart from each other or from a constant. */
  private static final double SINGULAR = 1e-12;

  final double[] seconds;
  final double[] weights;
  final double[] values;
  final double meanSeconds;
  final double meanValue;

  /** Weighted mean square of the values about their mean. */
  final double variance;

  FloatingSinusoid(Series series, double[] rawWeights) {
    weights = normalised(rawWeights);
    seconds = series.seconds();
    values = series.values();
    meanSeconds = centre(seconds);
    meanValue = centre(values);
    variance = variance();
  }

  /** Other values at the same times, with the same weights. */
  FloatingSinusoid(FloatingSinusoid same, double[] otherValues) {
    weights = same.weights;
    seconds = same.seconds;
    values = otherValues.clone();
    meanSeconds = same.meanSeconds;
    meanValue = centre(values);
    variance = variance();
  }

  private double variance() {
    double sum = 0;
    for (int i = 0; i < values.length; i++) {
      sum += weights[i] * values[i] * values[i];
    }
    return sum;
  }

  private static double[] normalised(double[] raw) {
    double sum = 0;
    for (int i = 0; i < raw.length; i++) {
      if (!(raw[i] >= 0)) {
        throw new IllegalArgumentException("weight [" + i + "] = " + raw[i] + " is negative");
      }
      sum += raw[i];
    }
    Check.positive("sum of the weights", sum);
    double[] weights = new double[raw.length];
    for (int i = 0; i < raw.length; i++) {
      weights[i] = raw[i] / sum;
    }
    return weights;
  }

  /** Takes the weighted mean out of {@code column} and returns it. */
  private double centre(double[] column) {
    double mean = 0;
    for (int pass = 0; pass < 2; pass++) {
      double rest = LeastSquares.dot(weights, column);
      for (int i = 0; i < column.length; i++) {
        column[i] -= rest;
      }
      mean += rest;
    }
    return mean;
  }

  /** The fit at one frequency; power and coefficients are 0 where they cannot be had. */
  Sinusoid at(double frequencyHz) {
    int n = seconds.length;
    double[] cosines = new double[n];
    double[] sines = new double[n];
    for (int i = 0; i < n; i++) {
      double angle = angle(frequencyHz, seconds[i]);
      cosines[i] = Math.cos(angle);
      sines[i] = Math.sin(angle);
    }
    double meanCosine = centre(cosines);
    double meanSine = centre(sines);
    double cc = 0;
    double ss = 0;
    double cs = 0;
    double yc = 0;
    double ys = 0;
    for (int i = 0; i < n; i++) {
      double wc = weights[i] * cosines[i];
      double ws = weights[i] * sines[i];
      cc += wc * cosines[i];
      ss += ws * sines[i];
      cs += wc * sines[i];
      yc += wc * values[i];
      ys += ws * values[i];
    }
    return solved(frequencyHz, new Moments(meanCosine, meanSine, cc, ss, cs, yc, ys));
  }

  Sinusoid solved(double frequencyHz, Moments m) {
    if (m.isSingular(SINGULAR) || variance == 0) {
      return new Sinusoid(frequencyHz, 0, 0, 0, meanValue);
    }
    double a = m.cosine();
    double b = m.sine();
    double angle = angle(frequencyHz, meanSeconds);
    return new Sinusoid(
        frequencyHz,
        m.power(variance),
        a * Math.cos(angle) - b * Math.sin(angle),
        a * Math.sin(angle) + b * Math.cos(angle),
        meanValue - a * m.meanCosine() - b * m.meanSine());
  }

  /** 2 pi f t, whole turns dropped. */
  static double angle(double frequencyHz, double seconds) {
    double turns = frequencyHz * seconds;
    return 2 * Math.PI * (turns - Math.rint(turns));
  }
}
