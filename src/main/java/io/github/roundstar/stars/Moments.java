package io.github.roundstar.stars;

/** First and second moments of weighted places, the second about the first. */
final class Moments {
  double sum;
  private double sumX;
  private double sumY;
  private double sumXx;
  private double sumYy;
  private double sumXy;

  void clear() {
    sum = 0;
    sumX = 0;
    sumY = 0;
    sumXx = 0;
    sumYy = 0;
    sumXy = 0;
  }

  void add(double weight, double dx, double dy) {
    sum += weight;
    sumX += weight * dx;
    sumY += weight * dy;
    sumXx += weight * dx * dx;
    sumYy += weight * dy * dy;
    sumXy += weight * dx * dy;
  }

  double x() {
    return sumX / sum;
  }

  double y() {
    return sumY / sum;
  }

  double xx() {
    return sumXx / sum - x() * x();
  }

  double yy() {
    return sumYy / sum - y() * y();
  }

  double xy() {
    return sumXy / sum - x() * y();
  }
}
