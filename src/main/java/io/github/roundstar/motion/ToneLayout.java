package io.github.roundstar.motion;

import java.util.List;

/**
 * Where each parameter of the shared model stands: per run a drift and a bend; per family and
 * harmonic a cosine and a sine amplitude; per family an angular rate; per family and run after the
 * first a time shift; the excess responses; last, per run, its slow swings.
 */
final class ToneLayout {
  static final int DIRECTIONS = 2;

  private final int runs;
  private final List<Family> families;
  private final int[] firstAmplitude;
  private final int firstRate;
  private final int firstShift;
  private final int[] slot;
  private final int slots;
  private final int[] firstSwing;
  private final int size;

  ToneLayout(List<AxisRun> ofRuns, List<Family> families) {
    this.runs = ofRuns.size();
    this.families = List.copyOf(families);
    firstAmplitude = new int[families.size()];
    int next = 2 * runs;
    for (int f = 0; f < firstAmplitude.length; f++) {
      firstAmplitude[f] = next;
      next += 2 * families.get(f).harmonics().size();
    }
    firstRate = next;
    firstShift = next + families.size();
    slot = new int[runs];
    int used = 1;
    for (int r = 0; r < runs; r++) {
      slot[r] = ofRuns.get(r).responseMeasured() ? used++ : 0;
    }
    slots = used;
    firstSwing = new int[runs];
    int end = excess(slots, 0);
    for (int r = 0; r < runs; r++) {
      firstSwing[r] = end;
      end += ofRuns.get(r).swings();
    }
    size = end;
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

  /** The first slow swing of a run; its others follow. */
  int swing(int run) {
    return firstSwing[run];
  }

  /**
   * Number of excess responses per direction: one that all runs share whose response is as
   * declared, and one for each run whose response was measured.
   */
  int slots() {
    return slots;
  }

  /** Which of them is a run's. */
  int slot(int run) {
    return slot[run];
  }

  /**
   * The excess response of pulses east or north (0), west or south (1), as a share of the one
   * taken.
   */
  int excess(int ofSlot, int direction) {
    return firstShift + families.size() * (runs - 1) + DIRECTIONS * ofSlot + direction;
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
