package io.github.roundstar.stars;

import java.util.Optional;

/**
 * A star's centre and second moments under a Gaussian weight that follows the star, until the
 * star's weighted moments are those that the weight itself would have in its place, summed over the
 * same pixels. For a Gaussian star the limit is the star itself; for any star it is the
 * least-squares fit of an elliptical Gaussian to pixels of equal noise. That the weight's own
 * moments are half its covariance holds for wide stars only; a star of two pixels FWHM would come
 * out wrong by 1 % if it were taken for granted.
 *
 * <p>The parts of the stretch ln(a / b) then have the standard error 2 / SNR each (least squares:
 * Condon 1997, PASP 109, 166), times the root of the mean square of the residuals over the noise
 * where that exceeds 1, as with a bright star's own photon noise.
 *
 * @param x centre [px, from 0]
 * @param y centre [px, from 0]
 * @param xx variance along x [px2]
 * @param yy variance along y [px2]
 * @param xy covariance [px2]
 * @param amplitude height of the Gaussian [adu]
 * @param snr signal to noise
 * @param residualRatio mean square of the residuals over that of the noise, weighted by the star
 * @see "Bernstein &amp; Jarvis (2002), AJ 123, 583; Hirata &amp; Seljak (2003), MNRAS 343, 459"
 */
record AdaptiveShape(
    double x,
    double y,
    double xx,
    double yy,
    double xy,
    double amplitude,
    double snr,
    double residualRatio) {
  private static final int MOST_ITERATIONS = 150;
  private static final double CONVERGED = 1e-5;

  /** Beyond four standard deviations of the weight, squared and halved, nothing counts. */
  private static final double FARTHEST = 8;

  /** Narrower than that no star image is [px2]. */
  private static final double LEAST_VARIANCE = 0.15;

  private static final double MOST_DEVIATION = 60;

  /** Standard error of either part of the stretch. */
  double stretchSigma() {
    return 2 / snr * Math.sqrt(Math.max(1, residualRatio));
  }

  /**
   * Measures a star.
   *
   * @param plane background taken off
   * @param start where to begin, from 0, and with which weight
   * @param level what is left of the background around the star [adu]
   * @param noise standard deviation of a pixel [adu]
   * @return nothing when there is no convergence to something that can be a star
   */
  static Optional<AdaptiveShape> of(Plane plane, Segment start, double level, double noise) {
    Sums sums = new Sums(plane, level);
    double x = start.x();
    double y = start.y();
    double xx = Math.max(start.xx(), 0.5);
    double yy = Math.max(start.yy(), 0.5);
    double xy = start.xy() * (xx * yy > start.xx() * start.yy() ? 0.5 : 1);
    for (int i = 0; i < MOST_ITERATIONS; i++) {
      if (!sums.take(x, y, xx, yy, xy)) {
        return Optional.empty();
      }
      double change =
          Math.max(Math.abs(2 * sums.xx), Math.abs(2 * sums.yy)) + Math.hypot(sums.x, sums.y);
      x += 2 * sums.x;
      y += 2 * sums.y;
      xx += 2 * sums.xx;
      yy += 2 * sums.yy;
      xy += 2 * sums.xy;
      double wandered = Math.hypot(x - start.x(), y - start.y());
      if (wandered > 2 + 2 * Math.sqrt(start.xx() + start.yy())) {
        return Optional.empty();
      }
      if (change < CONVERGED * (xx + yy)) {
        return sums.shape(x, y, xx, yy, xy, noise);
      }
    }
    return Optional.empty();
  }

  /** Weighted moments of the pixels about a centre, less those of the weight in their place. */
  private static final class Sums {
    private final Plane plane;
    private final double level;
    private final Moments star = new Moments();
    private final Moments own = new Moments();
    private double x;
    private double y;
    private double xx;
    private double yy;
    private double xy;

    Sums(Plane plane, double level) {
      this.plane = plane;
      this.level = level;
    }

    boolean take(double cx, double cy, double mxx, double myy, double mxy) {
      double determinant = mxx * myy - mxy * mxy;
      if (!(determinant > LEAST_VARIANCE * LEAST_VARIANCE
          && mxx > 0
          && mxx + myy < MOST_DEVIATION * MOST_DEVIATION)) {
        return false;
      }
      double a = myy / determinant;
      double b = -mxy / determinant;
      double c = mxx / determinant;
      double reachX = Math.sqrt(2 * FARTHEST * mxx);
      double reachY = Math.sqrt(2 * FARTHEST * myy);
      star.clear();
      own.clear();
      for (int py = from(cy, reachY); py <= to(cy, reachY, plane.height()); py++) {
        double dy = py - cy;
        for (int px = from(cx, reachX); px <= to(cx, reachX, plane.width()); px++) {
          double dx = px - cx;
          double half = (a * dx * dx + 2 * b * dx * dy + c * dy * dy) / 2;
          if (half > FARTHEST || !plane.sampling().takes(px, py)) {
            continue;
          }
          double value = plane.at(px, py) - level;
          if (!Double.isFinite(value)) {
            continue;
          }
          double weight = Math.exp(-half);
          star.add(value * weight, dx, dy);
          own.add(weight * weight, dx, dy);
        }
      }
      if (!(star.sum > 0)) {
        return false;
      }
      x = star.x() - own.x();
      y = star.y() - own.y();
      xx = star.xx() - own.xx();
      yy = star.yy() - own.yy();
      xy = star.xy() - own.xy();
      return star.xx() > 0 && star.yy() > 0 && star.xx() * star.yy() > star.xy() * star.xy();
    }

    Optional<AdaptiveShape> shape(
        double cx, double cy, double mxx, double myy, double mxy, double noise) {
      double determinant = mxx * myy - mxy * mxy;
      if (!(determinant > LEAST_VARIANCE * LEAST_VARIANCE)) {
        return Optional.empty();
      }
      double product = 0;
      double squares = 0;
      double pixels = 0;
      double residuals = 0;
      double amplitude = 0;
      for (int pass = 0; pass < 2; pass++) {
        for (int py = from(cy, 4 * Math.sqrt(myy));
            py <= to(cy, 4 * Math.sqrt(myy), plane.height());
            py++) {
          for (int px = from(cx, 4 * Math.sqrt(mxx));
              px <= to(cx, 4 * Math.sqrt(mxx), plane.width());
              px++) {
            double dx = px - cx;
            double dy = py - cy;
            double half = (myy * dx * dx - 2 * mxy * dx * dy + mxx * dy * dy) / (2 * determinant);
            double value = plane.at(px, py) - level;
            if (half > FARTHEST || !plane.sampling().takes(px, py) || !Double.isFinite(value)) {
              continue;
            }
            double g = Math.exp(-half);
            if (pass == 0) {
              product += g * value;
              squares += g * g;
            } else {
              double off = value - amplitude * g;
              residuals += g * g * off * off;
              pixels += g * g;
            }
          }
        }
        amplitude = product / squares;
      }
      double ratio = residuals / pixels / (noise * noise);
      double snr = amplitude * Math.sqrt(squares) / noise;
      return Optional.of(new AdaptiveShape(cx, cy, mxx, myy, mxy, amplitude, snr, ratio));
    }

    private static int from(double centre, double reach) {
      return Math.max(0, (int) Math.ceil(centre - reach));
    }

    private static int to(double centre, double reach, int size) {
      return Math.min(size - 1, (int) Math.floor(centre + reach));
    }
  }
}
