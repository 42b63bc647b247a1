package io.github.roundstar.diagnosis;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.Night;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.motion.StarScatter;
import io.github.roundstar.results.ComparisonBasis;
import io.github.roundstar.results.GuidedIntervals;
import io.github.roundstar.signal.MovingBlocks;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** What a comparison with other nights needs to know of this one. */
final class ComparisonFigures {
  private static final int DRAWS = 400;
  private static final long SEED = 20_040;
  private static final String MOUNT = "add name under [mount] in the equipment file";
  private static final String CAMERA =
      "the main camera's scale is not known: add focal_length_mm and pixel_um under [imaging] in"
          + " the equipment file";

  private ComparisonFigures() {}

  static ComparisonBasis of(
      Night night,
      List<RunStudy> studies,
      Equipment equipment,
      boolean siteShown,
      Reasons.Scope scope) {
    return new ComparisonBasis(
        scope.orNull("/mountName", equipment.mount().name(), MOUNT),
        scope.orNull(
            "/imagingArcsecPerPixel",
            equipment.imaging().arcsecPerPixel().stream().boxed().findFirst(),
            CAMERA),
        hemisphere(night, equipment, siteShown, scope),
        intervals(studies, scope));
  }

  private static String hemisphere(
      Night night, Equipment equipment, boolean siteShown, Reasons.Scope scope) {
    if (!siteShown) {
      return scope.orNull(
          "/hemisphere", Answer.none("left out on request, since it tells of the site"));
    }
    OptionalDouble latitude = Observatory.latitudeDegrees(night.runs(), equipment);
    return scope.orNull(
        "/hemisphere",
        latitude.stream().mapToObj(deg -> deg < 0 ? "south" : "north").findFirst(),
        "the latitude is not known: add latitude_deg under [site] in the equipment file");
  }

  private static GuidedIntervals intervals(List<RunStudy> studies, Reasons.Scope scope) {
    Optional<StarScatter> pooled =
        studies.stream().flatMap(study -> study.scatter().stream()).reduce(StarScatter::pooledWith);
    if (pooled.isEmpty()) {
      return scope.orNull("/guidedIntervals", Answer.none("no frame of the night was usable"));
    }
    double[] ra = pooled.get().aboutMeanArcsec(Axis.RA);
    double[] dec = pooled.get().aboutMeanArcsec(Axis.DEC);
    double[] raSquares = ScatterIntervals.products(ra, ra);
    double[] decSquares = ScatterIntervals.products(dec, dec);
    double[] radial = new double[ra.length];
    Arrays.setAll(radial, i -> raSquares[i] + decSquares[i]);
    MovingBlocks blocks = ScatterIntervals.blocks(raSquares, decSquares);
    return new GuidedIntervals(
        ScatterIntervals.root(blocks, raSquares),
        ScatterIntervals.root(blocks, decSquares),
        ScatterIntervals.root(blocks, radial),
        scope.orNull(
            "/guidedIntervals/scatterElongation",
            elongation(
                blocks,
                new double[][] {
                  ra, dec, raSquares, decSquares, ScatterIntervals.products(ra, dec)
                }),
            "the offsets have no extent across their long axis"));
  }

  private static Optional<Estimate> elongation(MovingBlocks blocks, double[][] columns) {
    double[] means =
        Arrays.stream(columns).mapToDouble(c -> Arrays.stream(c).average().orElse(0)).toArray();
    double value = elongation(means);
    double[] drawn = blocks.resampled(columns, DRAWS, SEED, ComparisonFigures::elongation);
    double centre = Arrays.stream(drawn).average().orElse(value);
    double squares = Arrays.stream(drawn).map(v -> (v - centre) * (v - centre)).average().orElse(0);
    double half = Estimate.SIGMAS_95 * Math.sqrt(squares);
    return Double.isFinite(value) && Double.isFinite(half)
        ? Optional.of(new Estimate(value, Math.max(1, value - half), value + half))
        : Optional.empty();
  }

  /** From means of ra, dec, ra squared, dec squared and their product. */
  private static double elongation(double[] mean) {
    double ra = mean[2] - mean[0] * mean[0];
    double dec = mean[3] - mean[1] * mean[1];
    double half = Math.hypot((ra - dec) / 2, mean[4] - mean[0] * mean[1]);
    double minor = (ra + dec) / 2 - half;
    return minor > 1e-12 * (ra + dec) ? Math.sqrt(((ra + dec) / 2 + half) / minor) : Double.NaN;
  }
}
