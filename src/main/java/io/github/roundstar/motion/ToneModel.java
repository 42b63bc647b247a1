package io.github.roundstar.motion;

import java.util.ArrayList;
import java.util.List;

/**
 * The shared model of a night's drift and sinusoids, as white residuals and derivatives of all runs
 * one after the other.
 *
 * <p>In run r at time t since its origin a family contributes sum over its harmonics h of a_h cos(h
 * w (t - s_r)) + b_h sin(h w (t - s_r)), dimmed by the exposure's averaging; s is 0 in the first
 * run.
 *
 * <p>Pulses have been taken out of the motion; what else they may do is added to the covariance of
 * a fit ({@link RunBackground#withOthers}).
 */
final class ToneModel {
  private final List<RunBackground> backgrounds;
  private final ToneLayout layout;
  private final int rows;

  ToneModel(List<RunBackground> backgrounds, List<Family> families) {
    this.backgrounds = List.copyOf(backgrounds);
    this.layout = new ToneLayout(backgrounds.size(), families);
    this.rows = backgrounds.stream().mapToInt(b -> b.whitening().size()).sum();
  }

  List<RunBackground> backgrounds() {
    return backgrounds;
  }

  ToneLayout layout() {
    return layout;
  }

  List<Family> families(double[] parameters) {
    List<Family> families = new ArrayList<>();
    for (int f = 0; f < layout.families().size(); f++) {
      families.add(layout.families().get(f).withRate(parameters[layout.rate(f)]));
    }
    return families;
  }

  double shift(double[] parameters, int family, int run) {
    return run == 0 ? 0 : parameters[layout.shift(family, run)];
  }

  /** White residuals over each run's noise, all runs in a row. */
  double[] residuals(double[] parameters) {
    double[] all = new double[rows];
    int next = 0;
    for (int r = 0; r < backgrounds.size(); r++) {
      RunBackground background = backgrounds.get(r);
      double[] left = background.run().motion().arcsec();
      double[] fitted = values(parameters, r);
      for (int i = 0; i < left.length; i++) {
        left[i] -= fitted[i];
      }
      next = append(background, left, all, next);
    }
    return all;
  }

  /** Drift and sinusoids of one run at its frames [arcsec]. */
  double[] values(double[] parameters, int run) {
    double[] values = driftAndBend(parameters, run);
    for (int f = 0; f < layout.families().size(); f++) {
      double[] tones = tones(parameters, f, run);
      for (int i = 0; i < values.length; i++) {
        values[i] += tones[i];
      }
    }
    return values;
  }

  /** Drift and bend of one run at its frames [arcsec]. */
  double[] driftAndBend(double[] parameters, int run) {
    return driftAndBend(parameters, run, backgrounds.get(run).run().phaseSeconds());
  }

  /** The same at other times [arcsec]. */
  double[] driftAndBend(double[] parameters, int run, double[] phaseSeconds) {
    double[] values = phaseSeconds.clone();
    double[] bend = ToneColumns.bend(backgrounds.get(run).run(), phaseSeconds);
    for (int i = 0; i < values.length; i++) {
      values[i] =
          parameters[layout.drift(run)] * values[i] + parameters[layout.bend(run)] * bend[i];
    }
    return values;
  }

  /** Sinusoids of one family in one run at its frames [arcsec]. */
  double[] tones(double[] parameters, int family, int run) {
    double[] sum = new double[backgrounds.get(run).run().motion().size()];
    for (int h = 0; h < layout.families().get(family).harmonics().size(); h++) {
      double[] tone = tone(parameters, family, h, run);
      for (int i = 0; i < sum.length; i++) {
        sum[i] += tone[i];
      }
    }
    return sum;
  }

  /** One sinusoid of a family, its {@code h}-th listed harmonic, in one run [arcsec]. */
  double[] tone(double[] parameters, int family, int h, int run) {
    return tone(parameters, family, h, run, backgrounds.get(run).run().phaseSeconds());
  }

  /** The same at other times [arcsec]. */
  double[] tone(double[] parameters, int family, int h, int run, double[] seconds) {
    AxisRun axisRun = backgrounds.get(run).run();
    double shift = shift(parameters, family, run);
    int harmonic = layout.families().get(family).harmonics().get(h);
    double rate = harmonic * parameters[layout.rate(family)];
    double dimming = ToneColumns.averaging(rate, axisRun.exposureSeconds());
    double a = dimming * parameters[layout.amplitude(family, h)];
    double b = dimming * parameters[layout.amplitude(family, h) + 1];
    double[] tone = new double[seconds.length];
    for (int i = 0; i < tone.length; i++) {
      double angle = rate * (seconds[i] - shift);
      tone[i] = a * Math.cos(angle) + b * Math.sin(angle);
    }
    return tone;
  }

  /**
   * White derivatives over each run's noise: one column per parameter, rows as in the residuals.
   */
  double[][] derivatives(double[] parameters) {
    double[][] all = new double[layout.size()][rows];
    int next = 0;
    for (int r = 0; r < backgrounds.size(); r++) {
      RunBackground background = backgrounds.get(r);
      append(background, background.run().phaseSeconds(), all[layout.drift(r)], next);
      append(background, ToneColumns.bend(background.run()), all[layout.bend(r)], next);
      for (int f = 0; f < layout.families().size(); f++) {
        appendFamily(parameters, f, r, all, next);
      }
      next += background.whitening().size();
    }
    return all;
  }

  private void appendFamily(double[] parameters, int family, int run, double[][] all, int next) {
    RunBackground background = backgrounds.get(run);
    double[] seconds = background.run().phaseSeconds();
    double shift = shift(parameters, family, run);
    double[] byRate = new double[seconds.length];
    double[] byShift = new double[seconds.length];
    List<Integer> harmonics = layout.families().get(family).harmonics();
    for (int h = 0; h < harmonics.size(); h++) {
      int order = harmonics.get(h);
      double rate = order * parameters[layout.rate(family)];
      double dimming = ToneColumns.averaging(rate, background.run().exposureSeconds());
      int at = layout.amplitude(family, h);
      double[] cosine = new double[seconds.length];
      double[] sine = new double[seconds.length];
      for (int i = 0; i < seconds.length; i++) {
        double elapsed = seconds[i] - shift;
        cosine[i] = dimming * Math.cos(rate * elapsed);
        sine[i] = dimming * Math.sin(rate * elapsed);
        double byAngle = parameters[at + 1] * cosine[i] - parameters[at] * sine[i];
        byRate[i] += order * elapsed * byAngle;
        byShift[i] -= rate * byAngle;
      }
      append(background, cosine, all[at], next);
      append(background, sine, all[at + 1], next);
    }
    append(background, byRate, all[layout.rate(family)], next);
    if (run > 0) {
      append(background, byShift, all[layout.shift(family, run)], next);
    }
  }

  /** Whitens a run's column into {@code all} over its noise; returns where the next run begins. */
  static int append(RunBackground background, double[] column, double[] all, int next) {
    double[] white = background.whitening().apply(column);
    double weight = 1 / Math.sqrt(background.wanderNoise().noiseVariance());
    for (int i = 0; i < white.length; i++) {
      all[next + i] = weight * white[i];
    }
    return next + white.length;
  }
}
