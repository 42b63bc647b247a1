package io.github.roundstar.motion.posterior;

import java.util.Arrays;
import java.util.List;

/**
 * What is asked of the frames of one axis.
 *
 * @param runs the runs; they share strength, memory, noise, wander, play and columns
 * @param deviations prior standard deviation of what each column is multiplied by; the columns in
 *     which a sinusoid moves come last, theirs are for a walk of 1 arcsec over a turn
 * @param moving how many those are
 * @param mayPlay whether the axis is turned both ways, so that play shows
 * @param priors what is known before
 */
public record AxisModel(
    List<ObservedRun> runs, double[] deviations, int moving, boolean mayPlay, Priors priors) {
  /** Number of columns. */
  int columns() {
    return deviations.length;
  }

  /** Number of frames. */
  int size() {
    return runs.stream().mapToInt(ObservedRun::size).sum();
  }

  /** The same with sinusoids that stay as they are. */
  AxisModel still() {
    int staying = columns() - moving;
    return new AxisModel(
        runs.stream()
            .map(
                run ->
                    new ObservedRun(
                        run.seconds(),
                        run.startsPiece(),
                        run.arcsec(),
                        Arrays.copyOf(run.columns(), staying),
                        run.pushes()))
            .toList(),
        Arrays.copyOf(deviations, staying),
        0,
        mayPlay,
        priors);
  }

  /** Some of the frames where there are many, spread over every run. */
  AxisModel sample(int frames, int blocks) {
    if (size() <= frames) {
      return this;
    }
    double share = (double) frames / size();
    return new AxisModel(
        runs.stream()
            .map(
                run -> {
                  int length = (int) (share * run.size() / blocks);
                  return length < 16 ? run : run.blocks(blocks, length);
                })
            .toList(),
        deviations,
        moving,
        mayPlay,
        priors);
  }
}
