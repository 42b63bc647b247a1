package io.github.roundstar.motion;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.Frames;
import io.github.roundstar.model.GuideRun;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** A "star" that no pulse moves: a fault of the camera's chip, hot pixel or speck. */
final class StuckStar {
  /** A star that answers with less than this share of the declared strength does not answer. */
  private static final double NO_ANSWER = 0.2;

  /** Fewer frames of exactly the same place may be chance or coarse rounding. */
  private static final int FEWEST_FRAMES = 60;

  private StuckStar() {}

  /** The whole run as one disturbance; nothing when the star answers, or was never asked. */
  static Optional<Disturbance> of(GuideRun run, Optional<AxisMotion> ra, Optional<AxisMotion> dec) {
    boolean stuck =
        neverMoves(run.frames()) || deaf(Stream.concat(ra.stream(), dec.stream()).toList());
    if (!stuck) {
      return Optional.empty();
    }
    Frames frames = run.frames();
    return Optional.of(
        new Disturbance(
            Disturbance.Kind.STUCK_STAR,
            frames.timeSeconds(0),
            frames.timeSeconds(frames.size() - 1),
            OptionalDouble.empty(),
            OptionalDouble.empty()));
  }

  /** Every axis that was pushed is known not to have answered. */
  private static boolean deaf(List<AxisMotion> axes) {
    List<AxisMotion> pushed =
        axes.stream().filter(a -> a.pushedOneWay() || a.pushedOtherWay()).toList();
    return !pushed.isEmpty() && pushed.stream().allMatch(StuckStar::silent);
  }

  private static boolean silent(AxisMotion axis) {
    Estimate strength = axis.known().strength().estimate();
    return strength.hi95() < NO_ANSWER && strength.lo95() > -NO_ANSWER;
  }

  /** No real star stays at the very same place. */
  private static boolean neverMoves(Frames frames) {
    int[] measured = IntStream.range(0, frames.size()).filter(frames::measured).toArray();
    return measured.length >= FEWEST_FRAMES
        && IntStream.of(measured)
            .allMatch(
                i ->
                    frames.raArcsec(i) == frames.raArcsec(measured[0])
                        && frames.decArcsec(i) == frames.decArcsec(measured[0]));
  }
}
