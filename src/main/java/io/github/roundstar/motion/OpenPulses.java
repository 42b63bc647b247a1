package io.github.roundstar.motion;

import java.util.Comparator;
import java.util.PriorityQueue;

/**
 * Pulses that have been sent and have not all acted yet, however many there are at once.
 *
 * <p>A pulse that neither begins nor ends in an exposure acts in it as long as the exposure's
 * middle lies behind its beginning, so of all those only the number and the sum of the beginnings,
 * each earlier by the leap, count. The others are looked at one by one: exposures follow each
 * other, so each pulse is among them for a few exposures, and a run of n frames costs n log n even
 * where every pulse outlasts it.
 */
final class OpenPulses {
  /** So few are looked at one by one from the start: most pulses are over within an exposure. */
  private static final int FEW = 4;

  private final double[] begins;
  private final double[] lengths;
  private final double[] leaps;
  private int sent;

  private final PriorityQueue<Integer> waiting;
  private final PriorityQueue<Integer> running;
  private double beginsOfRunning;
  private final int[] near;
  private int nearCount;
  private double finished;

  /** None yet. */
  OpenPulses(int most) {
    begins = new double[most];
    lengths = new double[most];
    leaps = new double[most];
    near = new int[most];
    waiting = new PriorityQueue<>(Comparator.comparingDouble(this::begin));
    running = new PriorityQueue<>(Comparator.comparingDouble(this::end));
  }

  private double begin(int pulse) {
    return begins[pulse];
  }

  private double end(int pulse) {
    return begins[pulse] + lengths[pulse];
  }

  /**
   * Adds a pulse.
   *
   * @param begin when it begins to act [s]
   * @param length how long it acts [s, &gt; 0]
   * @param leap how much it acts at once when it begins [s, &ge; 0]
   */
  void send(double begin, double length, double leap) {
    begins[sent] = begin;
    lengths[sent] = length;
    leaps[sent] = leap;
    if (nearCount < FEW) {
      near[nearCount++] = sent++;
    } else {
      waiting.add(sent++);
    }
  }

  /**
   * How long all pulses had acted, averaged over an exposure.
   *
   * @param begin of the exposure, never before that of an earlier call [s]
   * @param exposure length of the exposure; 0 for an instant [s]
   */
  double acted(double begin, double exposure) {
    if (nearCount == 0 && waiting.isEmpty() && running.isEmpty()) {
      return finished;
    }
    while (!waiting.isEmpty() && begin(waiting.peek()) < begin + exposure) {
      near[nearCount++] = waiting.poll();
    }
    while (!running.isEmpty() && end(running.peek()) < begin + exposure) {
      int pulse = running.poll();
      beginsOfRunning = running.isEmpty() ? 0 : beginsOfRunning - begins[pulse] + leaps[pulse];
      near[nearCount++] = pulse;
    }
    double partly = actedNear(begin, exposure);
    return finished + partly + running.size() * (begin + exposure / 2) - beginsOfRunning;
  }

  private double actedNear(double begin, double exposure) {
    double partly = 0;
    int kept = 0;
    for (int i = 0; i < nearCount; i++) {
      int pulse = near[i];
      if (begin >= end(pulse)) {
        finished += lengths[pulse] + leaps[pulse];
      } else if (begin >= begins[pulse] && begin + exposure <= end(pulse)) {
        running.add(pulse);
        beginsOfRunning += begins[pulse] - leaps[pulse];
      } else {
        near[kept++] = pulse;
        partly +=
            lengths[pulse] * ExecutedPulses.share(begins[pulse], lengths[pulse], begin, exposure)
                + leaps[pulse] * ExecutedPulses.step(begins[pulse], begin, exposure);
      }
    }
    nearCount = kept;
    return partly;
  }
}
