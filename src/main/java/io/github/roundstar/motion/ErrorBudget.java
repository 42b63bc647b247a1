package io.github.roundstar.motion;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What the mean square about the set point is made of, in one axis of one run.
 *
 * <p>Each cause is sent through the loop by itself ({@link LinearLoop}); what it leaves in the
 * offsets, times the offsets, averaged over the used frames, is its part: its own mean square and
 * half of every cross term with another cause. So the parts add up to the mean square, and a cause
 * that happens to work against the others has a negative one. Since the offsets are known, a part
 * is linear in its cause, and the smoothed wander and noise give it without bias.
 *
 * @param parts parts by cause, in a fixed order
 * @param trailingArcsec2 mean square that is left when the mean of every exposure is taken out
 *     [arcsec^2]
 */
public record ErrorBudget(List<Part> parts, double trailingArcsec2) {
  /** Cause of a mean offset that no other cause makes. */
  public static final String STEADY = "steady-offset";

  /**
   * Cause of what the loop leaves, beyond its average gain, since it sends no pulse below the
   * deadband and none above the limit.
   */
  public static final String DEADBAND = "deadband";

  /** What no cause explains: dithers, pulses that were not sent or follow no law. */
  public static final String REMAINDER = "remainder";

  /** A loop that turns a cause into this many times the offsets' mean square is not linear. */
  private static final double RUNAWAY = 100;

  /** Copies. */
  public ErrorBudget {
    parts = List.copyOf(parts);
  }

  /**
   * One part.
   *
   * @param cause what makes it
   * @param meanSquareArcsec2 its part of the mean square [arcsec^2]
   * @param shareOfTrailing its share of what is left when the mean of every exposure is taken out
   */
  public record Part(String cause, double meanSquareArcsec2, double shareOfTrailing) {}

  /**
   * Splits.
   *
   * @param fit the loop's law, where its memory, delay, deadband and limits stand
   * @param imagingSeconds length of the main camera's exposures [s]
   */
  public static Answer<ErrorBudget> of(
      MotionSplit split, Optional<LoopFit> fit, double imagingSeconds) {
    GuidedFrames frames = split.frames;
    Exposures exposures = Exposures.of(frames, imagingSeconds);
    if (exposures.frames() == 0) {
      return Answer.none("no frame of the run was usable");
    }
    Map<String, double[]> left = left(split, fit, exposures);
    double square = exposures.product(frames.offsetArcsec, frames.offsetArcsec);
    double trailing = exposures.trailing(frames.offsetArcsec, frames.offsetArcsec);
    List<Part> parts = new ArrayList<>();
    for (Map.Entry<String, double[]> cause : left.entrySet()) {
      double own = exposures.product(cause.getValue(), cause.getValue());
      if (!(own <= RUNAWAY * square)) {
        return Answer.none(
            "the loop swings by itself, so that its offsets cannot be told apart by cause: lower"
                + " its gain");
      }
      double part = exposures.trailing(cause.getValue(), frames.offsetArcsec);
      parts.add(
          new Part(
              cause.getKey(),
              exposures.product(cause.getValue(), frames.offsetArcsec),
              trailing == 0 ? 0 : part / trailing));
    }
    return Answer.of(new ErrorBudget(parts, trailing));
  }

  /** What each cause leaves in the offsets; the sum is the offsets. */
  private static Map<String, double[]> left(
      MotionSplit split, Optional<LoopFit> fit, Exposures exposures) {
    LinearLoop loop = LinearLoop.of(split, fit.map(LoopFit::law));
    Map<String, double[]> causes = new LinkedHashMap<>(split.causes);
    fit.filter(LoopFit::describes)
        .map(LoopFit::law)
        .filter(
            law -> law.deadbandArcsec() > 0 || law.shortestMillis() > 0 || fit.get().limitSeen())
        .ifPresent(law -> causes.put(DEADBAND, loop.withheld(law, split)));
    Map<String, double[]> left = new LinkedHashMap<>();
    double[] rest = split.frames.offsetArcsec.clone();
    left.put(STEADY, new double[rest.length]);
    causes.forEach(
        (cause, series) -> {
          double[] leaves = loop.leaves(series);
          left.put(cause, leaves);
          for (int i = 0; i < rest.length; i++) {
            rest[i] -= leaves[i];
          }
        });
    double mean = exposures.mean(rest);
    for (int i = 0; i < rest.length; i++) {
      left.get(STEADY)[i] = mean;
      rest[i] -= mean;
    }
    left.put(REMAINDER, rest);
    return left;
  }
}
