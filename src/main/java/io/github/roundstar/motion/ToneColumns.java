package io.github.roundstar.motion;

import java.util.List;

/** Columns of sinusoids at the times of a run, as the guide exposure averages them. */
final class ToneColumns {
  private ToneColumns() {}

  /** Factor by which an exposure dims a sinusoid of angular rate {@code rate}: sinc. */
  static double averaging(double rate, double exposureSeconds) {
    double x = rate * exposureSeconds / 2;
    return x == 0 ? 1 : Math.sin(x) / x;
  }

  /** Two columns, cosine and sine, for every harmonic of every family; nothing shifted in time. */
  static double[][] free(AxisRun run, List<Family> families) {
    int count = families.stream().mapToInt(f -> f.harmonics().size()).sum();
    double[][] columns = new double[2 * count][];
    double[] seconds = run.phaseSeconds();
    int next = 0;
    for (Family family : families) {
      for (int harmonic : family.harmonics()) {
        double rate = harmonic * family.angularRate();
        double[] cosine = new double[seconds.length];
        double[] sine = new double[seconds.length];
        double dimming = averaging(rate, run.exposureSeconds());
        for (int i = 0; i < seconds.length; i++) {
          cosine[i] = dimming * Math.cos(rate * seconds[i]);
          sine[i] = dimming * Math.sin(rate * seconds[i]);
        }
        columns[next++] = cosine;
        columns[next++] = sine;
      }
    }
    return columns;
  }

  /** The free columns with the time itself before them, for the drift. */
  static double[][] withDrift(AxisRun run, List<Family> families) {
    double[][] tones = free(run, families);
    double[][] columns = new double[tones.length + 1][];
    columns[0] = run.phaseSeconds();
    System.arraycopy(tones, 0, columns, 1, tones.length);
    return columns;
  }
}
