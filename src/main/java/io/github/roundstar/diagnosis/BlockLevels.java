package io.github.roundstar.diagnosis;

import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.Frames;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.motion.AxisMotion;
import io.github.roundstar.motion.MotionSeries;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * Logarithms of mean squares in blocks of time, run by run, on the night's clock.
 *
 * @param blocks in order of time
 */
record BlockLevels(List<Block> blocks) {
  /** Longer than gusts, shorter than the sky changes; common practice, no source [s]. */
  private static final double SECONDS = 300;

  /** A longer night has longer blocks: the work grows with their cube. */
  private static final int MOST = 150;

  /** Fewer frames tell no mean square. */
  private static final int FEWEST_FRAMES = 15;

  /** Second differences of noise have six times its variance. */
  private static final double SECOND_DIFFERENCES = 6;

  /**
   * One block.
   *
   * @param study index of its run
   * @param seconds its middle, since the night's first frame [s]
   * @param sinceFirst its middle, since the run's first frame [s]
   * @param level logarithm of the mean square
   */
  record Block(int study, double seconds, double sinceFirst, double level) {}

  /** Squares at times since the run's start. */
  private record Squares(double[] seconds, double[] values) {}

  /** Offsets of an axis about the run's mean, used frames. */
  static BlockLevels ofOffsets(List<RunStudy> studies, NightClock clock, Axis axis) {
    return of(studies, clock, study -> offsets(study, List.of(axis)));
  }

  /** Radial offsets. */
  static BlockLevels ofRadius(List<RunStudy> studies, NightClock clock) {
    return of(studies, clock, study -> offsets(study, List.of(Axis.RA, Axis.DEC)));
  }

  /** Noise of an axis by second differences of the motion with the corrections taken out. */
  static BlockLevels ofNoise(List<RunStudy> studies, NightClock clock, Axis axis) {
    return of(studies, clock, study -> motion(study, axis).map(m -> noise(List.of(m))));
  }

  /** Noise of both axes together. */
  static BlockLevels ofNoise(List<RunStudy> studies, NightClock clock) {
    return of(
        studies,
        clock,
        study ->
            motion(study, Axis.RA)
                .flatMap(ra -> motion(study, Axis.DEC).map(dec -> noise(List.of(ra, dec)))));
  }

  private static BlockLevels of(
      List<RunStudy> studies, NightClock clock, Function<RunStudy, Optional<Squares>> squares) {
    double all = studies.stream().mapToDouble(RunStudy::durationSeconds).sum();
    double length = Math.max(SECONDS, all / MOST);
    List<Block> blocks = new ArrayList<>();
    for (int s = 0; s < studies.size(); s++) {
      Optional<Squares> found = squares.apply(studies.get(s));
      if (found.isPresent() && found.get().seconds().length > 0) {
        double first = studies.get(s).run().frames().timeSeconds(0);
        cut(s, found.get(), first, clock.shiftSeconds(s), length, blocks);
      }
    }
    return new BlockLevels(List.copyOf(blocks));
  }

  /** Blocks of equal length that fill the run as well as they can. */
  private static void cut(
      int study, Squares squares, double first, double shift, double length, List<Block> blocks) {
    double[] seconds = squares.seconds();
    double span = seconds[seconds.length - 1] - seconds[0];
    int count = (int) Math.max(1, Math.rint(span / length));
    double[] sums = new double[count];
    int[] frames = new int[count];
    for (int i = 0; i < seconds.length; i++) {
      int at = (int) Math.min(count - 1, (seconds[i] - seconds[0]) / Math.max(span, 1e-9) * count);
      sums[at] += squares.values()[i];
      frames[at]++;
    }
    for (int b = 0; b < count; b++) {
      double middle = seconds[0] + (b + 0.5) * span / count;
      if (frames[b] >= FEWEST_FRAMES && sums[b] > 0) {
        blocks.add(new Block(study, middle + shift, middle - first, Math.log(sums[b] / frames[b])));
      }
    }
  }

  private static Optional<Squares> offsets(RunStudy study, List<Axis> axes) {
    Frames frames = study.run().frames();
    return study
        .scatter()
        .map(
            scatter -> {
              double[] values = new double[scatter.frames()];
              for (Axis axis : axes) {
                double[] offsets = scatter.aboutMeanArcsec(axis);
                for (int i = 0; i < values.length; i++) {
                  values[i] += offsets[i] * offsets[i];
                }
              }
              double[] seconds = new double[values.length];
              int next = 0;
              for (int i = 0; i < frames.size(); i++) {
                if (frames.state(i) == FrameState.USED) {
                  seconds[next++] = frames.timeSeconds(i);
                }
              }
              return new Squares(seconds, values);
            });
  }

  private static Optional<MotionSeries> motion(RunStudy study, Axis axis) {
    return (axis == Axis.RA ? study.ra() : study.dec())
        .value()
        .map(AxisMotion::run)
        .map(run -> run.motion().times(run.cosine()));
  }

  /** Of motions at the same frames. */
  private static Squares noise(List<MotionSeries> motions) {
    MotionSeries one = motions.get(0);
    List<double[]> found = new ArrayList<>();
    for (int i = 2; i < one.size(); i++) {
      if (!one.startsPiece(i) && !one.startsPiece(i - 1)) {
        double sum = 0;
        for (MotionSeries motion : motions) {
          double second = motion.arcsec(i) - 2 * motion.arcsec(i - 1) + motion.arcsec(i - 2);
          sum += second * second / SECOND_DIFFERENCES;
        }
        found.add(new double[] {one.seconds(i - 1), sum});
      }
    }
    return new Squares(
        found.stream().mapToDouble(pair -> pair[0]).toArray(),
        found.stream().mapToDouble(pair -> pair[1]).toArray());
  }
}
