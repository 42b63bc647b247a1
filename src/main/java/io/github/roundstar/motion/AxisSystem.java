package io.github.roundstar.motion;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.sky.Refraction;
import io.github.roundstar.sky.Site;
import java.util.Arrays;
import java.util.List;

/**
 * The equations of a night's polar axis: white residuals and derivatives of all runs' motion in
 * declination, below them one row for each drift in right ascension, and below those what is known
 * of the parameters beforehand.
 *
 * <p>Parameters: the axis east and high on the sky [arcmin]; the excess of refraction; the tracking
 * rate's error [arcsec/min at the axis]; and on request a drift beside the axis [arcsec/min] with a
 * weight for each run. The level of every piece of every run is free. The strength of the pulses is
 * the posterior's, since the same frames have told it already: what is not known of it widens the
 * intervals ({@link RunBackground#withOthers}), and nothing here changes it.
 */
final class AxisSystem {
  static final int EAST = 0;
  static final int HIGH = 1;
  static final int LIFT = 2;
  static final int RATE = 3;

  /** The drift beside the axis. */
  static final int BESIDE = 4;

  /**
   * One standard deviation of either error before anything is measured: so wide that it only keeps
   * the equations solvable [arcmin].
   */
  private static final double ANYWHERE_ARCMIN = 300;

  /** The same for the tracking rate [arcsec/min]. */
  private static final double ANY_RATE = 100;

  /** Step of the numeric derivatives [arcmin]. */
  private static final double STEP_ARCMIN = 1;

  private final List<PointedRun> runs;
  private final List<PolarPath> paths;
  private final List<RunBackground> backgrounds;
  private final double liftDeviation;
  private final double[] besideWeights;
  private final int frameRows;
  private final int raRows;

  AxisSystem(
      Site site,
      Refraction air,
      double liftDeviation,
      List<PointedRun> runs,
      List<RunBackground> backgrounds,
      double[] besideWeights) {
    this.runs = runs;
    this.paths = runs.stream().map(run -> new PolarPath(site, air, run)).toList();
    this.backgrounds = List.copyOf(backgrounds);
    this.liftDeviation = liftDeviation;
    this.besideWeights = besideWeights.clone();
    this.frameRows = backgrounds.stream().mapToInt(b -> b.whitening().size()).sum();
    this.raRows = (int) runs.stream().filter(run -> run.raDriftSky().isPresent()).count();
  }

  List<PointedRun> runs() {
    return runs;
  }

  /** Mean drift north that axis and air give a run [arcsec/min]. */
  double northPerMinute(double[] p, int run) {
    return paths.get(run).northPerMinute(p[EAST], p[HIGH], 1 + p[LIFT]);
  }

  List<RunBackground> backgrounds() {
    return backgrounds;
  }

  /** Motion north that axis and air give every run at its samples [arcsec]. */
  List<double[]> paths(double[] p) {
    return paths.stream().map(path -> path.northArcsec(p[EAST], p[HIGH], 1 + p[LIFT])).toList();
  }

  int frameRows() {
    return frameRows;
  }

  int raRows() {
    return raRows;
  }

  int size() {
    return BESIDE + (besideWeights.length > 0 ? 1 : 0);
  }

  /** Nothing known. */
  double[] start() {
    return new double[size()];
  }

  /** White residuals, all rows. */
  double[] residuals(double[] p) {
    double[] all = new double[frameRows + raRows + BESIDE];
    int next = 0;
    for (int r = 0; r < runs.size(); r++) {
      double[] left = backgrounds.get(r).run().motion().arcsec();
      double[] axis = paths.get(r).northArcsec(p[EAST], p[HIGH], 1 + p[LIFT]);
      for (int i = 0; i < left.length; i++) {
        left[i] -= axis[i];
      }
      if (besideWeights.length > 0) {
        subtract(left, p[BESIDE] * besideWeights[r] / 60, backgrounds.get(r).run().phaseSeconds());
      }
      next = ToneModel.append(backgrounds.get(r), left, all, next);
    }
    for (int r = 0; r < runs.size(); r++) {
      if (runs.get(r).raDriftSky().isPresent()) {
        double drift = runs.get(r).raDriftSky().get().value();
        double axis = paths.get(r).eastPerMinute(p[EAST], p[HIGH], 1 + p[LIFT]);
        all[next++] = (drift - axis - p[RATE] * cosine(r)) / raDeviation(r);
      }
    }
    for (int j = 0; j < BESIDE; j++) {
      all[next++] = -p[j] / prior(j);
    }
    return all;
  }

  /** White derivatives: one column per parameter, rows as in the residuals. */
  double[][] derivatives(double[] p) {
    double[][] all = new double[size()][frameRows + raRows + BESIDE];
    int next = 0;
    for (int r = 0; r < runs.size(); r++) {
      RunBackground background = backgrounds.get(r);
      for (int j = EAST; j <= LIFT; j++) {
        ToneModel.append(background, northBy(r, p, j), all[j], next);
      }
      if (besideWeights.length > 0) {
        double[] column = background.run().phaseSeconds();
        for (int i = 0; i < column.length; i++) {
          column[i] *= besideWeights[r] / 60;
        }
        ToneModel.append(background, column, all[BESIDE], next);
      }
      next += background.whitening().size();
    }
    for (int r = 0; r < runs.size(); r++) {
      if (runs.get(r).raDriftSky().isPresent()) {
        for (int j = EAST; j <= LIFT; j++) {
          all[j][next] = eastBy(r, p, j) / raDeviation(r);
        }
        all[RATE][next++] = cosine(r) / raDeviation(r);
      }
    }
    for (int j = 0; j < BESIDE; j++) {
      all[j][next++] = 1 / prior(j);
    }
    return all;
  }

  private double[] northBy(int r, double[] p, int j) {
    double[] up = moved(p, j, 1);
    double[] down = moved(p, j, -1);
    double[] high = paths.get(r).northArcsec(up[EAST], up[HIGH], 1 + up[LIFT]);
    double[] low = paths.get(r).northArcsec(down[EAST], down[HIGH], 1 + down[LIFT]);
    for (int i = 0; i < high.length; i++) {
      high[i] = (high[i] - low[i]) / (up[j] - down[j]);
    }
    return high;
  }

  private double eastBy(int r, double[] p, int j) {
    double[] up = moved(p, j, 1);
    double[] down = moved(p, j, -1);
    return (paths.get(r).eastPerMinute(up[EAST], up[HIGH], 1 + up[LIFT])
            - paths.get(r).eastPerMinute(down[EAST], down[HIGH], 1 + down[LIFT]))
        / (up[j] - down[j]);
  }

  private static double[] moved(double[] p, int j, int way) {
    double[] moved = Arrays.copyOf(p, RATE);
    moved[j] += way * (j == LIFT ? 0.1 : STEP_ARCMIN);
    return moved;
  }

  private double prior(int j) {
    return switch (j) {
      case EAST, HIGH -> ANYWHERE_ARCMIN;
      case LIFT -> liftDeviation;
      default -> ANY_RATE;
    };
  }

  private double raDeviation(int r) {
    Estimate drift = runs.get(r).raDriftSky().orElseThrow();
    return (drift.hi95() - drift.lo95()) / 2 / Estimate.SIGMAS_95;
  }

  private double cosine(int r) {
    return Math.cos(Math.toRadians(runs.get(r).atZero().declinationDegrees()));
  }

  private static void subtract(double[] values, double factor, double[] column) {
    for (int i = 0; i < values.length; i++) {
      values[i] -= factor * column[i];
    }
  }
}
