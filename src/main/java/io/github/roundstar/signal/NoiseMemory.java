package io.github.roundstar.signal;

/**
 * How long noise remembers itself: the correlation from sample to sample and the ratio of wander to
 * noise that are likeliest together, by Newton's method on numeric derivatives. From white noise
 * that is one step or two.
 *
 * <p>Whoever answers each sample, as a guiding loop does, answers a part of the next sample's noise
 * too where the noise lasts. To a model of white noise each answer then seems too weak: by some two
 * percent for a correlation of 0.05, which a night's frames hardly show for certain. So it is not
 * tested for but taken as it comes, and its error kept.
 */
final class NoiseMemory {
  /** Step of the derivatives, and where they are taken first; a night's error is some 0.02. */
  private static final double STEP = 0.05;

  /** The same of the ratio [decades]. */
  private static final double RATIO_STEP = 0.1;

  /** Noise that resembles itself more than this from sample to sample is not told from wander. */
  private static final double STRONGEST = 0.9;

  /** Farthest that one step goes: beyond, the likelihood is no parabola. */
  private static final double FARTHEST = 0.15;

  /** Derivatives taken so near the maximum hold there too. */
  private static final double NEAR = 0.02;

  private static final int MOST_STEPS = 8;

  private final double[] seconds;
  private final boolean[] startsPiece;
  private final double[] data;
  private final double[][] regressors;
  private final double stepSeconds;

  NoiseMemory(double[] seconds, boolean[] startsPiece, double[] data, double[][] regressors) {
    this.seconds = seconds;
    this.startsPiece = startsPiece;
    this.data = data;
    this.regressors = regressors;
    double[] steps = new double[seconds.length - 1];
    for (int i = 0; i < steps.length; i++) {
      steps[i] = seconds[i + 1] - seconds[i];
    }
    this.stepSeconds = Quantile.median(steps);
  }

  /** The likeliest memory; that of white noise, without an error, where there is no maximum. */
  WanderNoise.Remembering of(WanderNoise white) {
    Place start = new Place(Math.log10(white.ratioPerSecond()), STEP);
    Parabola near = parabola(start);
    Place place = start;
    if (!near.peaked() || Math.abs(near.step()) >= FARTHEST) {
      place = likeliest(start);
      near = parabola(place);
    }
    for (int i = 0; i < MOST_STEPS && near.peaked(); i++) {
      double step = Math.max(-FARTHEST, Math.min(FARTHEST, near.step()));
      double found = Math.max(0, Math.min(STRONGEST, place.correlation() + step));
      double ratioStep = near.ratioStep(found - place.correlation());
      double logRatio = place.logRatio() + Math.max(-1, Math.min(1, ratioStep));
      double next = Math.max(STEP, Math.min(STRONGEST - STEP, found));
      if (Math.abs(next - place.correlation()) < NEAR && Math.abs(ratioStep) < RATIO_STEP) {
        double longer = Math.min(STRONGEST, found + near.error());
        return new WanderNoise.Remembering(
            model(logRatio, found),
            model(logRatio + near.ridge() * (longer - found), longer),
            (place.correlation() + step) / near.error(),
            near.error());
      }
      place = new Place(logRatio, next);
      near = parabola(place);
    }
    return new WanderNoise.Remembering(white, white, 0, 0);
  }

  /** Where the likelihood is told: decades of the ratio, correlation from sample to sample. */
  private record Place(double logRatio, double correlation) {
    Place {
      logRatio =
          Math.max(WanderNoise.LOWEST_LOG_RATIO, Math.min(WanderNoise.HIGHEST_LOG_RATIO, logRatio));
    }
  }

  /** The best of a few correlations: a long memory is out of sight from none. */
  private Place likeliest(Place start) {
    Place best = start;
    double highest = Double.NEGATIVE_INFINITY;
    for (double correlation = STEP; correlation < STRONGEST; correlation += 2 * STEP) {
      WanderLikelihood likelihood = likelihood(correlation);
      double logRatio = likelihood.highest(best.logRatio());
      double value = likelihood.at(logRatio);
      if (value > highest) {
        highest = value;
        best = new Place(logRatio, correlation);
      }
    }
    return best;
  }

  /** The log likelihood about a place, by its first and second derivatives. */
  private record Parabola(
      double byRatio, double byCorrelation, double ratio2, double both, double correlation2) {
    /** Second derivative along the ridge, on which the ratio is the likeliest. */
    private double alongRidge() {
      return correlation2 + both * ridge();
    }

    /** How the likeliest ratio changes with the correlation [decades]. */
    double ridge() {
      return -both / ratio2;
    }

    boolean peaked() {
      return ratio2 < 0 && alongRidge() < 0;
    }

    /** From here to the maximum. */
    double step() {
      return -(byCorrelation + byRatio * ridge()) / alongRidge();
    }

    /** The ratio's step that goes with one of the correlation. */
    double ratioStep(double step) {
      return -byRatio / ratio2 + ridge() * step;
    }

    /** Standard error of the correlation. */
    double error() {
      return 1 / Math.sqrt(-alongRidge());
    }
  }

  private Parabola parabola(Place place) {
    double logRatio = place.logRatio();
    double correlation = place.correlation();
    WanderLikelihood here = likelihood(correlation);
    WanderLikelihood more = likelihood(correlation + STEP);
    double middle = here.at(logRatio);
    double low = here.at(logRatio - RATIO_STEP);
    double high = here.at(logRatio + RATIO_STEP);
    double less = likelihood(correlation - STEP).at(logRatio);
    double up = more.at(logRatio);
    double corner = more.at(logRatio + RATIO_STEP);
    return new Parabola(
        (high - low) / (2 * RATIO_STEP),
        (up - less) / (2 * STEP),
        (high - 2 * middle + low) / (RATIO_STEP * RATIO_STEP),
        (corner - up - high + middle) / (STEP * RATIO_STEP),
        (up - 2 * middle + less) / (STEP * STEP));
  }

  private WanderNoise model(double logRatio, double correlation) {
    return likelihood(correlation).model(logRatio);
  }

  private WanderLikelihood likelihood(double correlation) {
    double memory = correlation > 0 ? -stepSeconds / Math.log(correlation) : 0;
    return new WanderLikelihood(seconds, startsPiece, data, regressors, memory);
  }
}
