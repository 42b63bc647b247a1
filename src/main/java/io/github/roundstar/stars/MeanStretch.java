package io.github.roundstar.stars;

import io.github.roundstar.signal.Stretch;
import java.util.List;

/**
 * Mean of the stars' stretches, each weighted by its own noise and the scatter that all share.
 *
 * @param stretch the mean
 * @param sigma standard error of either part: what the scatter of the stars gives, or their noise
 *     if that is more
 */
record MeanStretch(Stretch stretch, double sigma) {
  static MeanStretch of(List<Star> stars) {
    if (stars.isEmpty()) {
      return new MeanStretch(new Stretch(0, 0), 0);
    }
    double shared = sharedVariance(stars);
    double weights = 0;
    double along = 0;
    double aslant = 0;
    for (Star star : stars) {
      double weight = weight(star, shared);
      weights += weight;
      along += weight * star.stretch().along();
      aslant += weight * star.stretch().aslant();
    }
    Stretch mean = new Stretch(along / weights, aslant / weights);
    double squares = 0;
    for (Star star : stars) {
      double weight = weight(star, shared);
      squares += weight * weight * squareOff(star, mean) / 2;
    }
    double scatter = Math.sqrt(squares) / weights;
    return new MeanStretch(mean, Math.max(scatter, Math.sqrt(1 / weights)));
  }

  private static double weight(Star star, double shared) {
    return 1 / (star.stretchSigma() * star.stretchSigma() + shared);
  }

  /** Variance per part beyond the stars' own noise. */
  private static double sharedVariance(List<Star> stars) {
    double along = 0;
    double aslant = 0;
    double noise = 0;
    for (Star star : stars) {
      along += star.stretch().along() / stars.size();
      aslant += star.stretch().aslant() / stars.size();
      noise += star.stretchSigma() * star.stretchSigma() / stars.size();
    }
    Stretch mean = new Stretch(along, aslant);
    double squares = 0;
    for (Star star : stars) {
      squares += squareOff(star, mean) / 2 / Math.max(1, stars.size() - 1);
    }
    return Math.max(0, squares - noise);
  }

  private static double squareOff(Star star, Stretch mean) {
    double along = star.stretch().along() - mean.along();
    double aslant = star.stretch().aslant() - mean.aslant();
    return along * along + aslant * aslant;
  }
}
