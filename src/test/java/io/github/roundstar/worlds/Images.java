package io.github.roundstar.worlds;

import io.github.roundstar.worlds.NightPlan.Pointing;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.random.RandomGenerator;

/**
 * What becomes of the main camera's images: how long drawn a star is in the middle and in the worst
 * corner, and a list of them as a program that measures stars would write it.
 *
 * <p><b>Elongation</b>, the one definition of this package: long axis over short of the adaptive
 * moments of the image. The image is the path of the star during the exposure, every place of it
 * drawn as a Gaussian of the seeing's FWHM, to which optics and dispersion add their variance
 * (moments of a convolution add). Adaptive moments weigh the image with the Gaussian that fits it
 * (Bernstein and Jarvis 2002, AJ 123, 583, section 3; Hirata and Seljak 2003, MNRAS 343, 459): with
 * S the second moments of image times weight, the weight's covariance is M = 2 S. For a path whose
 * places scatter as a Gaussian, M = core + scatter, so that elongation^2 = 1 + variance along /
 * core where nothing moves across.
 *
 * <p>A place of the field moves against the guide star by the exact rotation of the sky about an
 * axis that is misplaced, refraction included ({@link SkyPath}). The camera's rows run east.
 */
public final class Images {
  /** Places of a path that an image is made of; more change the third decimal of nothing. */
  private static final int MOST_PLACES = 300;

  /** Smaller turns of the field show in no corner [arcsec]. */
  private static final double NO_TURN_ARCSEC = 0.02;

  private static final double WIDTH_PX = 6000;
  private static final double HEIGHT_PX = 4000;

  /** A star's image: long axis over short, long axis north through east, both sigmas [arcsec]. */
  public record Star(double elongation, double angleDeg, double longSigma, double shortSigma) {}

  /** Both places that are judged. */
  public record Shape(Star middle, Star worstCorner) {
    /** The worse of both. */
    public double elongation() {
      return Math.max(middle.elongation(), worstCorner.elongation());
    }
  }

  /** What a list of exposures tells beside names and times. */
  public enum Listing {
    /** Nothing. */
    TIMES,
    /** Shapes, measured as well as some sixty stars allow. */
    SHAPES
  }

  private final NightPlan plan;
  private final ImageMotion motion;

  Images(NightPlan plan, ImageMotion motion) {
    this.plan = plan;
    this.motion = motion;
  }

  /** Shape of the stars of an exposure. */
  public Shape shape(WorldNight.Exposure exposure) {
    double from = exposure.startSeconds();
    double seconds = exposure.seconds();
    int places = (int) Math.max(20, Math.min(MOST_PLACES, seconds / motion.stepSeconds()));
    double[] times = new double[places];
    double[] east = new double[places];
    double[] north = new double[places];
    for (int i = 0; i < places; i++) {
      times[i] = from + (i + 0.5) * seconds / places;
      east[i] = motion.eastArcsec(times[i]);
      north[i] = motion.northArcsec(times[i]);
    }
    Pointing run = at(from);
    double[] core = core(run, from + seconds / 2);
    double scale = 206.264806247 * 3.8 / plan.imagingFocalMm;
    double toEast = -plan.starEastArcmin * 60;
    double toNorth = -plan.starNorthArcmin * 60;
    Star middle = moved(run, times, east, north, core, toEast, toNorth);
    Star worst = middle;
    for (int side = 0; side < 4; side++) {
      double e = toEast + (side % 2 == 0 ? 1 : -1) * scale * WIDTH_PX / 2;
      double n = toNorth + (side < 2 ? 1 : -1) * scale * HEIGHT_PX / 2;
      Star corner = moved(run, times, east, north, core, e, n);
      worst = corner == null || corner.elongation() < worst.elongation() ? worst : corner;
    }
    return new Shape(middle, worst);
  }

  /** How many of these exposures are round in the middle and in all corners. */
  public int round(List<WorldNight.Exposure> exposures, double limit) {
    return (int) exposures.stream().filter(e -> shape(e).elongation() <= limit).count();
  }

  private Pointing at(double seconds) {
    Pointing found = plan.runs.get(0);
    for (Pointing run : plan.runs) {
      found = run.startSeconds() <= seconds ? run : found;
    }
    return found;
  }

  /** Covariance of a star that does not move: east, north, product [arcsec^2]. */
  private double[] core(Pointing run, double seconds) {
    double seeing = plan.seeingFwhmArcsec * plan.seeingFwhmArcsec / (8 * Math.log(2));
    double[] core = {seeing, seeing, 0};
    along(core, plan.opticsVariance, Math.toRadians(plan.opticsAngleDeg));
    if (plan.dispersionArcsec > 0) {
      double hour = hourAngle(run, seconds);
      double dec = Math.toRadians(run.declinationDeg());
      double latitude = Math.toRadians(plan.latitudeDeg);
      double altitude = plan.skyPath().altitude(hour, dec);
      double parallactic =
          Math.atan2(
              Math.sin(hour), Math.tan(latitude) * Math.cos(dec) - Math.sin(dec) * Math.cos(hour));
      double deviation = plan.dispersionArcsec / Math.tan(altitude);
      along(core, deviation * deviation, parallactic);
    }
    return core;
  }

  private static void along(double[] covariance, double variance, double angle) {
    covariance[0] += variance * Math.sin(angle) * Math.sin(angle);
    covariance[1] += variance * Math.cos(angle) * Math.cos(angle);
    covariance[2] += variance * Math.sin(angle) * Math.cos(angle);
  }

  private double hourAngle(Pointing run, double seconds) {
    return Math.toRadians(run.hourAngleDeg())
        + (seconds - run.startSeconds()) * SkyPath.SIDEREAL_ARCSEC_PER_SECOND * SkyPath.ARCSEC;
  }

  /** The star at a place of the field, seen from the guide star; null where it moves as that. */
  private Star moved(
      Pointing run,
      double[] times,
      double[] east,
      double[] north,
      double[] core,
      double fromStarEast,
      double fromStarNorth) {
    int nodes = 4;
    double[][] against = new double[nodes + 1][];
    double first = times[0];
    double span = times[times.length - 1] - first;
    double most = 0;
    SkyPath path = plan.skyPath();
    for (int k = 0; k <= nodes; k++) {
      against[k] = place(path, run, first + span * k / nodes, fromStarEast, fromStarNorth);
      most = Math.max(most, Math.abs(against[k][0] - against[0][0]));
      most = Math.max(most, Math.abs(against[k][1] - against[0][1]));
    }
    boolean middle =
        fromStarEast == -plan.starEastArcmin * 60 && fromStarNorth == -plan.starNorthArcmin * 60;
    if (most < NO_TURN_ARCSEC && !middle) {
      return null;
    }
    double[] e = east.clone();
    double[] n = north.clone();
    for (int i = 0; i < times.length; i++) {
      double at = (times[i] - first) / span * nodes;
      int k = Math.min(nodes - 1, (int) at);
      double share = at - k;
      e[i] += (1 - share) * against[k][0] + share * against[k + 1][0] - against[0][0];
      n[i] += (1 - share) * against[k][1] + share * against[k + 1][1] - against[0][1];
    }
    return adaptive(e, n, core);
  }

  /** East and north of the guide star in the mount's own circles, in its tangent plane [arcsec]. */
  private double[] place(SkyPath path, Pointing run, double seconds, double east, double north) {
    double hour = hourAngle(run, seconds);
    double dec = Math.toRadians(run.declinationDeg());
    // The place is fixed to the stars: the tangent plane of the guide star turned back.
    double x = east * SkyPath.ARCSEC;
    double y = north * SkyPath.ARCSEC;
    double down = Math.cos(dec) - y * Math.sin(dec);
    double placeHour = hour - Math.atan2(x, down);
    double placeDec = Math.atan2(Math.sin(dec) + y * Math.cos(dec), Math.hypot(x, down));
    double[] star = path.inMount(hour, dec);
    double[] other = path.inMount(placeHour, placeDec);
    double lag = star[0] - other[0];
    double cosine =
        Math.sin(other[1]) * Math.sin(star[1])
            + Math.cos(other[1]) * Math.cos(star[1]) * Math.cos(lag);
    return new double[] {
      Math.cos(other[1]) * Math.sin(lag) / cosine / SkyPath.ARCSEC,
      (Math.sin(other[1]) * Math.cos(star[1])
              - Math.cos(other[1]) * Math.sin(star[1]) * Math.cos(lag))
          / cosine
          / SkyPath.ARCSEC
    };
  }

  /**
   * Adaptive moments of equally bright Gaussians at these places.
   *
   * @param core their covariance: east, north, product [arcsec^2]
   */
  static Star adaptive(double[] east, double[] north, double[] core) {
    double[] m = core.clone();
    double e0 = 0;
    double n0 = 0;
    for (int i = 0; i < east.length; i++) {
      e0 += east[i] / east.length;
      n0 += north[i] / east.length;
    }
    for (int i = 0; i < east.length; i++) {
      m[0] += (east[i] - e0) * (east[i] - e0) / east.length;
      m[1] += (north[i] - n0) * (north[i] - n0) / east.length;
      m[2] += (east[i] - e0) * (north[i] - n0) / east.length;
    }
    for (int turn = 0; turn < 200; turn++) {
      // Product of two Gaussians: core about the place, weight about the centre.
      double[] sum = inverse(new double[] {core[0] + m[0], core[1] + m[1], core[2] + m[2]});
      double[] t = new double[4];
      t[0] = m[0] * sum[0] + m[2] * sum[2];
      t[1] = m[0] * sum[2] + m[2] * sum[1];
      t[2] = m[2] * sum[0] + m[1] * sum[2];
      t[3] = m[2] * sum[2] + m[1] * sum[1];
      // t = M (C + M)^-1 draws a place towards the centre; t C is the product's covariance.
      double weights = 0;
      double[] mean = new double[2];
      double[] square = new double[3];
      for (int i = 0; i < east.length; i++) {
        double x = east[i] - e0;
        double y = north[i] - n0;
        double weight = Math.exp(-0.5 * (x * x * sum[0] + y * y * sum[1] + 2 * x * y * sum[2]));
        double u = t[0] * x + t[1] * y;
        double v = t[2] * x + t[3] * y;
        weights += weight;
        mean[0] += weight * u;
        mean[1] += weight * v;
        square[0] += weight * u * u;
        square[1] += weight * v * v;
        square[2] += weight * u * v;
      }
      mean[0] /= weights;
      mean[1] /= weights;
      double[] next = {
        2 * (t[0] * core[0] + t[1] * core[2] + square[0] / weights - mean[0] * mean[0]),
        2 * (t[2] * core[2] + t[3] * core[1] + square[1] / weights - mean[1] * mean[1]),
        2 * (t[0] * core[2] + t[1] * core[1] + square[2] / weights - mean[0] * mean[1])
      };
      double change =
          Math.abs(next[0] - m[0]) + Math.abs(next[1] - m[1]) + Math.abs(next[2] - m[2]);
      m = next;
      e0 += 2 * mean[0];
      n0 += 2 * mean[1];
      if (change < 1e-6 * (m[0] + m[1])) {
        break;
      }
    }
    double middle = (m[0] + m[1]) / 2;
    double spread = Math.hypot((m[0] - m[1]) / 2, m[2]);
    double angle = Math.toDegrees(0.5 * Math.atan2(2 * m[2], m[1] - m[0]));
    double along = Math.sqrt(middle + spread);
    double across = Math.sqrt(middle - spread);
    return new Star(along / across, angle < 0 ? angle + 180 : angle, along, across);
  }

  private static double[] inverse(double[] c) {
    double determinant = c[0] * c[1] - c[2] * c[2];
    return new double[] {c[1] / determinant, c[0] / determinant, -c[2] / determinant};
  }

  /** A list of exposures as the tool reads it: plain CSV. */
  public String list(List<WorldNight.Exposure> exposures, Listing listing) {
    boolean shapes = listing == Listing.SHAPES;
    RandomGenerator random = plan.streams.of("measured shapes");
    StringBuilder out = new StringBuilder("file,start,seconds");
    if (shapes) {
      out.append(",elongation,elongation_lo,elongation_hi,fwhm,angle,shift_east,shift_north");
      out.append(",shift_error,corner_elongation,corner_elongation_lo,corner_elongation_hi");
      out.append(",pattern");
    }
    out.append('\n');
    Pointing before = null;
    double[] placeBefore = null;
    for (int i = 0; i < exposures.size(); i++) {
      WorldNight.Exposure exposure = exposures.get(i);
      List<String> row = new ArrayList<>();
      row.add(String.format(Locale.ROOT, "image-%03d", i + 1));
      row.add(plan.start.plusMillis(Math.round(exposure.startSeconds() * 1000)).toString());
      row.add(number(exposure.seconds(), 1));
      if (shapes) {
        Shape shape = shape(exposure);
        double[] middle = measured(random, shape.middle(), 0.008, 1.96, row);
        row.add(number(middle[1], 3));
        row.add(number(middle[2], 1));
        Pointing run = at(exposure.startSeconds());
        double[] place = meanPlace(exposure);
        boolean follows = run.equals(before);
        row.add(follows ? number(place[0] - placeBefore[0] + 0.05 * random.nextGaussian(), 3) : "");
        row.add(follows ? number(place[1] - placeBefore[1] + 0.05 * random.nextGaussian(), 3) : "");
        row.add(follows ? "0.05" : "");
        before = run;
        placeBefore = place;
        boolean turns = shape.worstCorner().elongation() > 1.05 * shape.middle().elongation();
        if (turns) {
          measured(random, shape.worstCorner(), 0.016, 2.5, row);
        } else {
          row.addAll(row.subList(3, 6));
        }
        row.add(turns ? "rotation" : shape.middle().elongation() > 1.03 ? "uniform" : "none");
      }
      out.append(String.join(",", row)).append('\n');
    }
    return out.toString();
  }

  /** Appends elongation and interval; says elongation, FWHM and angle as measured. */
  private static double[] measured(
      RandomGenerator random, Star star, double sigma, double sigmas, List<String> row) {
    double size = Math.log(star.elongation());
    double twice = Math.toRadians(2 * star.angleDeg());
    double along = size * Math.cos(twice) + sigma * random.nextGaussian();
    double aslant = size * Math.sin(twice) + sigma * random.nextGaussian();
    double seen = Math.hypot(along, aslant);
    double angle = Math.toDegrees(Math.atan2(aslant, along)) / 2;
    row.add(number(Math.exp(seen), 4));
    row.add(number(Math.exp(Math.max(0, seen - sigmas * sigma)), 4));
    row.add(number(Math.exp(seen + sigmas * sigma), 4));
    double fwhm = Math.sqrt(8 * Math.log(2) * star.longSigma() * star.shortSigma());
    return new double[] {Math.exp(seen), fwhm, angle < 0 ? angle + 180 : angle};
  }

  /** Mean place of the middle's star on the sensor, dithers included [arcsec]. */
  private double[] meanPlace(WorldNight.Exposure exposure) {
    double[] sums = new double[2];
    int places = 100;
    for (int i = 0; i < places; i++) {
      double time = exposure.startSeconds() + (i + 0.5) * exposure.seconds() / places;
      sums[0] += motion.eastArcsec(time) / places;
      sums[1] += motion.northArcsec(time) / places;
    }
    return sums;
  }

  private static String number(double value, int decimals) {
    return GuideTableText.text(value, decimals);
  }
}
