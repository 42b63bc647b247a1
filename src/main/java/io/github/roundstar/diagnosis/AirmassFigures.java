package io.github.roundstar.diagnosis;

import io.github.roundstar.diagnosis.BlockLevels.Block;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.results.AirmassGrowth;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Whether noise and scatter grow with the air that the star is seen through: logarithms of their
 * mean squares in blocks of time against that of the airmass, each field at a level of its own,
 * since another star is measured otherwise, and beside a random walk of the air itself.
 */
final class AirmassFigures {
  /** Less between the highest and the lowest place tells nothing. */
  private static final double LEAST_RATIO = 1.15;

  /** An interval whose ends are farther apart tells nothing of use. */
  private static final double WIDEST = 4;

  /** From the logarithm of a mean square to the factor of its root through twice the air. */
  private static final double PER_DOUBLING = 0.5 * Math.log(2);

  private AirmassFigures() {}

  static Answer<AirmassGrowth> of(
      List<RunStudy> studies,
      Fields fields,
      NightClock clock,
      Equipment equipment,
      boolean siteShown) {
    List<Optional<StarHeight>> heights =
        studies.stream().map(study -> StarHeight.of(study.run(), equipment)).toList();
    if (heights.stream().allMatch(Optional::isEmpty)) {
      return Answer.none("latitude, declination or hour angle is not surely known");
    }
    double least = Double.POSITIVE_INFINITY;
    double most = 0;
    for (int i = 0; i < studies.size(); i++) {
      if (heights.get(i).isPresent()) {
        for (double seconds : new double[] {0, 0.5, 1}) {
          OptionalDouble air =
              heights.get(i).get().airmass(seconds * studies.get(i).durationSeconds());
          least = Math.min(least, air.orElse(least));
          most = Math.max(most, air.orElse(most));
        }
      }
    }
    if (!(most > LEAST_RATIO * least)) {
      return Answer.none("the stars stood at nearly the same height all night");
    }
    Optional<Estimate> noise = growth(BlockLevels.ofNoise(studies, clock), fields, heights);
    Optional<Estimate> rms = growth(BlockLevels.ofRadius(studies, clock), fields, heights);
    if (noise.isEmpty() || rms.isEmpty()) {
      return Answer.none("too few stretches of five minutes at different heights of one star");
    }
    if (noise.get().hi95() > WIDEST * noise.get().lo95()) {
      return Answer.none(
          "the height changed too little, beside what the air does by itself, to show anything");
    }
    return Answer.of(
        new AirmassGrowth(
            siteShown ? rounded(least) : null,
            siteShown ? rounded(most) : null,
            noise.get(),
            rms.get()));
  }

  private static double rounded(double airmass) {
    return Math.rint(10 * airmass) / 10;
  }

  /** By what the root of the mean square is multiplied through twice the air. */
  private static Optional<Estimate> growth(
      BlockLevels levels, Fields fields, List<Optional<StarHeight>> heights) {
    List<Block> blocks = new ArrayList<>();
    List<Double> airs = new ArrayList<>();
    for (Block block : levels.blocks()) {
      OptionalDouble air =
          heights
              .get(block.study())
              .map(height -> height.airmass(block.sinceFirst()))
              .orElse(OptionalDouble.empty());
      if (air.isPresent()) {
        blocks.add(block);
        airs.add(Math.log(air.getAsDouble()));
      }
    }
    List<double[]> columns = new ArrayList<>();
    columns.add(airs.stream().mapToDouble(air -> air).toArray());
    for (int f = 0; f < fields.runs().size(); f++) {
      int field = f;
      double[] own =
          blocks.stream().mapToDouble(b -> fields.of(b.study()) == field ? 1 : 0).toArray();
      if (Arrays.stream(own).anyMatch(one -> one > 0)) {
        columns.add(own);
      }
    }
    return LevelTrend.first(
            blocks.stream().mapToDouble(Block::seconds).toArray(),
            blocks.stream().mapToDouble(Block::level).toArray(),
            columns.toArray(double[][]::new),
            Estimate.SIGMAS_95)
        .map(AirmassFigures::factor);
  }

  private static Estimate factor(Estimate power) {
    return new Estimate(
        Math.exp(PER_DOUBLING * power.value()),
        Math.exp(PER_DOUBLING * power.lo95()),
        Math.exp(PER_DOUBLING * power.hi95()));
  }
}
