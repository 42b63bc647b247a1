package io.github.roundstar.motion;

import java.util.List;

/**
 * Where each parameter of the shared model stands: per run a drift and a bend; per family and
 * harmonic a cosine and a sine amplitude; per family an angular rate; per family and run after the
 * first a time shift.
 */
final class ToneLayout {
  private final int runs;
  private final List<Family> families;
  private final int[] firstAmplitude;
  private final int firstRate;
  private final int firstShift;
  private final int size;

  ToneLayout(int runs, List<Family> families) {
    this.runs = runs;
    this.families = List.copyOf(families);
    firstAmplitude = new int[families.size()];
    int next = 2 * runs;
    for (int f = 0; f < firstAmplitude.length; f++) {
      firstAmplitude[f] = next;
      next += 2 * families.get(f).harmonics().size();
    }
    firstRate = next;
    firstShift = next + families.size();
    size = firstShift + families.size() * (runs - 1);
  }

  int runs() {
    return runs;
  }

  List<Family> families() {
    return families;
  }

  int size() {
    return size;
  }

  int drift(int run) {
    return run;
  }

  int bend(int run) {
    return runs + run;
  }

  /**
   * The cosine amplitude of a family's {@code h}-th listed harmonic; the sine amplitude follows it.
   */
  int amplitude(int family, int h) {
    return firstAmplitude[family] + 2 * h;
  }

  int rate(int family) {
    return firstRate + family;
  }

  /** The time shift of a run; run 0 has none. */
  int shift(int family, int run) {
    return firstShift + family * (runs - 1) + run - 1;
  }
}
