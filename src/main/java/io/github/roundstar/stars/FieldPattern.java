package io.github.roundstar.stars;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.signal.Stretch;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.complex.Complex;

/**
 * How star shapes change over the field: {@link FieldFit} fits c + g z + h conj(z) + q z&sup2;. A
 * turn of the field about a point p stretches stars along circles about it: -k (z - p)&sup2;, so q
 * is negative. Optics that spread stars outwards give a positive q; a tilted sensor gives g and h.
 * Of a point far outside the image only c and g are seen; then q is g&sup2; / 4c, and its sign
 * tells which of the two it is.
 *
 * @param kind what dominates
 * @param cornerDifference largest difference of the stretch between two corners; 0 for a uniform
 *     field
 * @param cornerElongation long axis over short in the worst corner, all in all, the interval wide
 *     enough for the worst of four; that of the whole field where that is uniform; nothing with too
 *     few stars
 * @param pivot the point about which the field turns [px]; nothing unless it turns
 */
public record FieldPattern(
    Kind kind,
    double cornerDifference,
    Optional<Estimate> cornerElongation,
    Optional<Pivot> pivot) {
  /** Fewer stars cannot tell a pattern. */
  private static final int FEWEST_STARS = 20;

  /** Standard errors that a pattern must reach: one false in some thousands. */
  private static final double SIGNIFICANT = 4;

  /** Standard errors within which two coefficients agree. */
  private static final double AGREE = 3;

  /** Smaller patterns harm nobody: a tenth of the usual limit of 1.15 and less. */
  private static final double LEAST_STRETCH = 0.02;

  /** Two-sided 95 % for the worst of four corners (Bonferroni) over that for one. */
  private static final double WORST_OF_FOUR = 2.4977 / Estimate.SIGMAS_95;

  /** What the pattern looks like. */
  public enum Kind {
    /** Too few stars. */
    UNKNOWN,
    /** Round everywhere. */
    NONE,
    /** The same everywhere: tracking or wind. */
    UNIFORM,
    /** Along circles about a point: the field turned. */
    ROTATION,
    /** Outwards from the centre: optics. */
    RADIAL,
    /** Grows towards one side: tilt, or optics off their axis. */
    ONE_SIDED
  }

  /**
   * A point in the image, the first pixel's centre at 1.
   *
   * @param x along a row [px]
   * @param y along a column [px]
   */
  public record Pivot(double x, double y) {}

  private static final FieldPattern UNKNOWN =
      new FieldPattern(Kind.UNKNOWN, 0, Optional.empty(), Optional.empty());

  static FieldPattern of(List<Star> stars, int width, int height) {
    return stars.size() < FEWEST_STARS
        ? UNKNOWN
        : FieldFit.of(stars, width, height).map(fit -> of(fit, stars)).orElse(UNKNOWN);
  }

  private static FieldPattern of(FieldFit fit, List<Star> stars) {
    double square = fit.coefficient(3).getReal();
    if (clear(Math.abs(square), fit.sigma(3))) {
      return square > 0
          ? of(Kind.RADIAL, fit, Optional.empty())
          : of(Kind.ROTATION, fit, Optional.of(fit.pixel(fit.coefficient(1).divide(-2 * square))));
    }
    boolean slope = clear(fit.coefficient(1).abs(), fit.sigma(1));
    if (slope || clear(fit.coefficient(2).abs(), fit.sigma(2))) {
      return far(fit).orElseGet(() -> of(Kind.ONE_SIDED, fit, Optional.empty()));
    }
    MeanStretch mean = MeanStretch.of(stars);
    Estimate everywhere = mean.stretch().elongation(mean.sigma());
    return new FieldPattern(
        everywhere.lo95() <= 1 ? Kind.NONE : Kind.UNIFORM,
        0,
        Optional.of(everywhere),
        Optional.empty());
  }

  /** Circles about, or rays from, a point so far outside that their bend is lost in the noise. */
  private static Optional<FieldPattern> far(FieldFit fit) {
    Complex constant = fit.coefficient(0);
    Complex slope = fit.coefficient(1);
    boolean seen = clear(constant.abs(), fit.sigma(0)) && clear(slope.abs(), fit.sigma(1));
    if (!seen || fit.coefficient(2).abs() > AGREE * fit.sigma(2)) {
      return Optional.empty();
    }
    Complex bend = slope.multiply(slope).divide(constant.multiply(4));
    boolean fits = bend.subtract(fit.coefficient(3)).abs() <= AGREE * fit.sigma(3);
    boolean real = Math.abs(bend.getReal()) > Math.abs(bend.getImaginary());
    if (!fits || !real) {
      return Optional.empty();
    }
    return Optional.of(
        bend.getReal() > 0
            ? of(Kind.RADIAL, fit, Optional.empty())
            : of(Kind.ROTATION, fit, Optional.of(fit.pixel(constant.multiply(-2).divide(slope)))));
  }

  private static FieldPattern of(Kind kind, FieldFit fit, Optional<Pivot> pivot) {
    Complex worst =
        Arrays.stream(fit.corners())
            .max(Comparator.comparingDouble(corner -> fit.at(corner).elongation()))
            .orElseThrow();
    double difference = 0;
    for (Complex one : fit.corners()) {
      for (Complex other : fit.corners()) {
        difference = Math.max(difference, apart(fit.at(one), fit.at(other)));
      }
    }
    return new FieldPattern(
        kind,
        difference,
        Optional.of(fit.at(worst).elongation(WORST_OF_FOUR * fit.sigmaAt(worst))),
        pivot);
  }

  private static double apart(Stretch one, Stretch other) {
    return Math.hypot(one.along() - other.along(), one.aslant() - other.aslant());
  }

  private static boolean clear(double size, double sigma) {
    return size > SIGNIFICANT * sigma && size > LEAST_STRETCH;
  }
}
