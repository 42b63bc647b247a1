package io.github.roundstar.motion;

import java.util.List;

/**
 * Where the shared fit starts: each run's own free fit, the runs shifted in time until their
 * sinusoids agree best with the first run's.
 */
final class ToneStart {
  /** Time shifts tried per period: fine enough for the tenth harmonic. */
  private static final int SHIFTS = 360;

  private ToneStart() {}

  static double[] of(ToneModel model) {
    ToneLayout layout = model.layout();
    double[] start = new double[layout.size()];
    List<RunBackground> backgrounds = model.backgrounds();
    for (int r = 0; r < layout.runs(); r++) {
      double[] own = backgrounds.get(r).fit().coefficients();
      start[layout.drift(r)] = own[0];
      start[layout.bend(r)] = own[1];
    }
    int first = ToneColumns.BEFORE_TONES;
    for (int f = 0; f < layout.families().size(); f++) {
      Family family = layout.families().get(f);
      start[layout.rate(f)] = family.angularRate();
      double[] common = free(backgrounds.get(0), first, family);
      double weight = weight(backgrounds.get(0));
      for (int r = 1; r < layout.runs(); r++) {
        double[] own = free(backgrounds.get(r), first, family);
        double shift = bestShift(family, common, own);
        start[layout.shift(f, r)] = shift;
        double ownWeight = weight(backgrounds.get(r));
        average(common, weight, shifted(family, own, -shift), ownWeight);
        weight += ownWeight;
      }
      System.arraycopy(common, 0, start, layout.amplitude(f, 0), common.length);
      first += common.length;
    }
    return start;
  }

  private static double[] free(RunBackground background, int first, Family family) {
    double[] own = new double[2 * family.harmonics().size()];
    System.arraycopy(background.fit().coefficients(), first, own, 0, own.length);
    return own;
  }

  /** Information a run has on amplitudes. */
  private static double weight(RunBackground background) {
    return background.whitening().size() / background.wanderNoise().noiseVariance();
  }

  private static double bestShift(Family family, double[] common, double[] own) {
    double best = 0;
    double bestMatch = Double.NEGATIVE_INFINITY;
    for (int s = 0; s < SHIFTS; s++) {
      double shift = family.periodSeconds() * s / SHIFTS;
      double[] trial = shifted(family, common, shift);
      double match = 0;
      for (int j = 0; j < own.length; j++) {
        match += trial[j] * own[j];
      }
      if (match > bestMatch) {
        bestMatch = match;
        best = shift;
      }
    }
    return best;
  }

  /** Amplitudes, in unshifted time, of sinusoids delayed by {@code shift}. */
  private static double[] shifted(Family family, double[] amplitudes, double shift) {
    double[] turned = new double[amplitudes.length];
    for (int h = 0; h < family.harmonics().size(); h++) {
      double angle = family.harmonics().get(h) * family.angularRate() * shift;
      double a = amplitudes[2 * h];
      double b = amplitudes[2 * h + 1];
      turned[2 * h] = a * Math.cos(angle) - b * Math.sin(angle);
      turned[2 * h + 1] = a * Math.sin(angle) + b * Math.cos(angle);
    }
    return turned;
  }

  private static void average(double[] common, double weight, double[] own, double ownWeight) {
    for (int j = 0; j < common.length; j++) {
      common[j] = (weight * common[j] + ownWeight * own[j]) / (weight + ownWeight);
    }
  }
}
