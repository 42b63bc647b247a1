package io.github.roundstar.motion;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.signal.Covariance;
import io.github.roundstar.signal.LeastSquares;
import io.github.roundstar.signal.NeweyWest;
import io.github.roundstar.signal.WhiteRegression;
import io.github.roundstar.sky.Refraction;
import io.github.roundstar.sky.Site;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;

/**
 * Where a mount's axis points, from the motion of all runs of a night.
 *
 * <p>The reconstructed positions in declination are fitted with the exact rotation about an axis in
 * error, refraction included, so that the bend of a run counts as well as its slope; drifts in
 * right ascension join beside a free tracking rate. Generalised least squares against each run's
 * wander and noise. The interval carries the wander, the uncertainty of the mount's response to
 * pulses and of the refraction. There is no cosine of the declination in a drift in declination.
 *
 * @see "Chauvenet (1876), Manual of Spherical and Practical Astronomy, vol. 2"
 */
public final class PolarAlignment {
  private static final int MOST_STEPS = 10;
  private static final double LAST_STEP_ARCMIN = 1e-4;

  /** Residuals less likely than this are no chance. */
  private static final double CONSISTENT = 0.01;

  /** A pattern that takes away so much of what the axis leaves is the cause. */
  private static final double MOSTLY = 0.8;

  private final AxisSystem system;
  private final double[] parameters;
  private final Covariance covariance;
  private final double inflation;
  private final Site site;
  private final FreeDrifts free;
  private final AxisResidual residual;

  private PolarAlignment(
      Site site, Solution solution, FreeDrifts free, double inflation, AxisResidual residual) {
    this.system = solution.system;
    this.parameters = solution.parameters;
    this.covariance = solution.covariance;
    this.inflation = inflation;
    this.site = site;
    this.free = free;
    this.residual = residual;
  }

  /**
   * Fits.
   *
   * @param site latitude within 85 degrees of the equator
   * @param air refraction at the site
   * @param liftDeviation one standard deviation of the true refraction about that, as a share
   * @param runs at least one, each above {@link Refraction#LOWEST_ALTITUDE_DEGREES} throughout
   */
  public static Optional<PolarAlignment> of(
      Site site, Refraction air, double liftDeviation, List<PointedRun> runs) {
    double[] nothingBeside = new double[0];
    List<RunBackground> backgrounds = runs.stream().map(PointedRun::background).toList();
    return solve(new AxisSystem(site, air, liftDeviation, runs, backgrounds, nothingBeside))
        .map(plain -> judged(site, air, liftDeviation, plain));
  }

  private static PolarAlignment judged(
      Site site, Refraction air, double liftDeviation, Solution plain) {
    List<PointedRun> runs = plain.system.runs();
    FreeDrifts free =
        FreeDrifts.of(runs, plain.system.backgrounds(), plain.system.paths(plain.parameters));
    double chance = plain.chance(free);
    if (!(chance < CONSISTENT)) {
      return new PolarAlignment(
          site,
          plain,
          free,
          1,
          new AxisResidual(chance, plain.misfit(free), AxisResidual.Pattern.NONE));
    }
    AxisResidual.Pattern best = AxisResidual.Pattern.IRREGULAR;
    Solution explained = plain;
    double most = plain.squares() - MOSTLY * (plain.squares() - free.squares());
    for (AxisResidual.Pattern pattern : AxisResidual.Pattern.REGULAR) {
      Optional<Solution> tried =
          solve(
              new AxisSystem(
                  site,
                  air,
                  liftDeviation,
                  runs,
                  plain.system.backgrounds(),
                  pattern.weights(runs)));
      if (pattern.tellable(runs) && tried.isPresent() && tried.get().squares() < most) {
        best = pattern;
        explained = tried.get();
        most = explained.squares();
      }
    }
    double left = explained.chance(free);
    double inflation = left < CONSISTENT ? Math.sqrt(explained.overspread(free)) : 1;
    return new PolarAlignment(
        site, explained, free, inflation, new AxisResidual(chance, plain.misfit(free), best));
  }

  private static Optional<Solution> solve(AxisSystem system) {
    double[] parameters = system.start();
    for (int step = 0; step < MOST_STEPS; step++) {
      double[] change =
          WhiteRegression.of(system.residuals(parameters), system.derivatives(parameters))
              .coefficients();
      for (int j = 0; j < change.length; j++) {
        parameters[j] += change[j];
      }
      if (Math.hypot(change[AxisSystem.EAST], change[AxisSystem.HIGH]) < LAST_STEP_ARCMIN) {
        break;
      }
    }
    double[] residuals = system.residuals(parameters);
    double[] ofFrames = Arrays.copyOf(residuals, system.frameRows());
    return LeastSquares.on(system.derivatives(parameters))
        .map(
            design ->
                new Solution(
                    system,
                    parameters,
                    RunBackground.withOthers(
                        system.backgrounds(),
                        NeweyWest.covarianceWithPriors(
                            design, ofFrames, NeweyWest.plugInLag(ofFrames)),
                        design),
                    LeastSquares.dot(residuals, residuals)));
  }

  private record Solution(
      AxisSystem system, double[] parameters, Covariance covariance, double squares) {
    /** Slopes, bends and right-ascension drifts less what explains them. */
    int freedom() {
      int shared = system.raRows() > 0 ? 3 : 2;
      int beside = system.size() - AxisSystem.BESIDE;
      return 2 * system.runs().size() + system.raRows() - shared - beside;
    }

    /** Chance of residuals at least so large; NaN when nothing is left to test with. */
    double chance(FreeDrifts free) {
      return freedom() < 1
          ? Double.NaN
          : 1
              - new ChiSquaredDistribution(freedom())
                  .cumulativeProbability(Math.max(0, squares - free.squares()));
    }

    double overspread(FreeDrifts free) {
      return (squares - free.squares()) / freedom();
    }

    /** Root mean square of the runs' drifts against the axis's [arcsec/min]. */
    double misfit(FreeDrifts free) {
      return Math.sqrt(LeastSquares.dot(free.left(), free.left()) / system.runs().size());
    }
  }

  /** The runs that took part. */
  public List<PointedRun> runs() {
    return system.runs();
  }

  /** Error of the elevated end to the east, on the sky [arcmin]. */
  public Estimate eastArcmin() {
    return single(AxisSystem.EAST);
  }

  /** The same about the vertical, as the azimuth adjuster turns [arcmin]. */
  public Estimate azimuthArcmin() {
    return eastArcmin().times(1 / Math.cos(Math.toRadians(site.latitudeDegrees())));
  }

  /** Error above the true pole [arcmin]. */
  public Estimate altitudeArcmin() {
    return single(AxisSystem.HIGH);
  }

  /** Both on the sky [arcmin]; first order, or from zero up when it may well be zero. */
  public Estimate totalArcmin() {
    double east = parameters[AxisSystem.EAST];
    double high = parameters[AxisSystem.HIGH];
    double total = Math.hypot(east, high);
    double half = Estimate.SIGMAS_95 * deviation(east / total, high / total);
    double widest = Estimate.SIGMAS_95 * deviation(Math.cos(worst()), Math.sin(worst()));
    return total > widest
        ? new Estimate(total, Math.max(0, total - half), total + half)
        : new Estimate(total, 0, total + widest);
  }

  /**
   * The combination that is known best.
   *
   * @param arcmin {@code eastShare} times the error to the east plus {@code highShare} times that
   *     above the pole, on the sky [arcmin]
   * @param eastShare -1 to 1
   * @param highShare 0 to 1; the squares of both shares add up to 1
   */
  public record Combination(Estimate arcmin, double eastShare, double highShare) {}

  /** The combination of both errors that is known best. */
  public Combination known() {
    double angle = worst() + Math.PI / 2;
    double sign = Math.sin(angle) < 0 ? -1 : 1;
    return combination(sign * Math.cos(angle), sign * Math.sin(angle));
  }

  /** Any combination of both errors, on the sky; the squares of the shares add up to 1. */
  public Combination combination(double eastShare, double highShare) {
    double value =
        eastShare * parameters[AxisSystem.EAST] + highShare * parameters[AxisSystem.HIGH];
    double half = Estimate.SIGMAS_95 * deviation(eastShare, highShare);
    return new Combination(Estimate.symmetric(value, half), eastShare, highShare);
  }

  /** How far ahead of the stars the mount runs, air and axis taken out [arcsec/min at the axis]. */
  public Optional<Estimate> rateErrorArcsecPerMinute() {
    return system.raRows() == 0 ? Optional.empty() : Optional.of(single(AxisSystem.RATE));
  }

  /** What the axis leaves of the drifts. */
  public AxisResidual residual() {
    return residual;
  }

  /** The drift beside the axis where its residuals have a pattern [arcsec/min]. */
  public Optional<Estimate> besideArcsecPerMinute() {
    return residual.pattern().regular() ? Optional.of(single(AxisSystem.BESIDE)) : Optional.empty();
  }

  /** Largest error that may be left on the sky once the one found has been taken out [arcmin]. */
  public double leftArcmin() {
    return Estimate.SIGMAS_95 * deviation(Math.cos(worst()), Math.sin(worst()));
  }

  /**
   * Drift of a run by itself, through its middle: at its begin, its middle and its end
   * [arcsec/min].
   */
  public double[] driftOfRun(int run) {
    double minutes =
        (system.runs().get(run).lastSeconds() - system.runs().get(run).firstSeconds()) / 60;
    double bend = 4 * free.bends()[run] / minutes;
    double slope = free.slopes()[run];
    return new double[] {slope - bend, slope, slope + bend};
  }

  /** Drift in declination that axis and air give a run [arcsec/min]. */
  public double northPerMinute(int run) {
    return system.northPerMinute(parameters, run);
  }

  private Estimate single(int j) {
    double half = Estimate.SIGMAS_95 * inflation * covariance.standardError(j);
    return Estimate.symmetric(parameters[j], half);
  }

  /** Angle of the combination that is known least, from east toward high. */
  private double worst() {
    double east = covariance.at(AxisSystem.EAST, AxisSystem.EAST);
    double high = covariance.at(AxisSystem.HIGH, AxisSystem.HIGH);
    double both = covariance.at(AxisSystem.EAST, AxisSystem.HIGH);
    return 0.5 * Math.atan2(2 * both, east - high);
  }

  /** Where the axis may point: east of the elevated pole, then above it, on the sky. */
  public List<AxisPlaces.Place> draws(int count) {
    double scale = inflation * inflation;
    return AxisPlaces.draws(
        parameters[AxisSystem.EAST],
        parameters[AxisSystem.HIGH],
        scale * covariance.at(AxisSystem.EAST, AxisSystem.EAST),
        scale * covariance.at(AxisSystem.HIGH, AxisSystem.HIGH),
        scale * covariance.at(AxisSystem.EAST, AxisSystem.HIGH),
        count);
  }

  private double deviation(double east, double high) {
    double variance =
        east * east * covariance.at(AxisSystem.EAST, AxisSystem.EAST)
            + high * high * covariance.at(AxisSystem.HIGH, AxisSystem.HIGH)
            + 2 * east * high * covariance.at(AxisSystem.EAST, AxisSystem.HIGH);
    return inflation * Math.sqrt(Math.max(0, variance));
  }
}
