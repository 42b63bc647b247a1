package io.github.roundstar.motion.posterior;

import java.util.List;

/**
 * What is asked of the frames of one axis.
 *
 * @param runs the runs, at least one; they share strength, late share, memory, noise, wander and
 *     play
 * @param cadence time between frames, as long as a delay may be [s]
 * @param partDelay delay of the pushes' second column, shorter [s]
 * @param scaled how many of each run's first columns have a size in common with all others of the
 *     mount; the first three of those are the drift and its bends
 * @param moving how many of each run's columns are those in which a sinusoid moves
 * @param mayPlay whether the axis is turned both ways, so that play shows
 * @param priors what is known before
 */
public record AxisModel(
    List<ObservedRun> runs,
    double cadence,
    double partDelay,
    int scaled,
    int moving,
    boolean mayPlay,
    Priors priors) {
  /**
   * Where a delay lies between those of two columns of pushes, as a share of the way.
   *
   * @param before the first of them
   */
  double betweenColumns(int before, double delay) {
    return before == 0
        ? delay / partDelay
        : Math.min(1, (delay - partDelay) / (cadence - partDelay));
  }

  /** Number of columns of each run. */
  int columns() {
    return runs.get(0).columns().length;
  }

  /** Number of frames. */
  int size() {
    return runs.stream().mapToInt(ObservedRun::size).sum();
  }

  /** The same with sinusoids that stay as they are. */
  AxisModel still() {
    int staying = columns() - moving;
    return new AxisModel(
        runs.stream().map(run -> run.first(staying)).toList(),
        cadence,
        partDelay,
        scaled,
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
        cadence,
        partDelay,
        scaled,
        moving,
        mayPlay,
        priors);
  }
}
