package io.github.roundstar.worlds;

import java.util.ArrayList;
import java.util.List;

/**
 * Where a star stood on the main camera, without the air: what the mount did, pulses included, and
 * without the guide scope's bending (so that a bending guide scope shows here as drift). Arcsec on
 * the sky, east and north, about the place of the first moment of each run; times are seconds since
 * the start of the log. Turning of the field about the guide star is not in it.
 */
public final class ImageMotion {
  private record Piece(double startSeconds, double[] east, double[] north) {}

  /** Size and direction of a star's image, and how far it was drawn out. */
  public record Shape(double majorSigmaArcsec, double minorSigmaArcsec, double angleDeg) {
    /** Major over minor axis. */
    public double elongation() {
      return majorSigmaArcsec / minorSigmaArcsec;
    }
  }

  private final double step;
  private final List<Piece> pieces = new ArrayList<>();

  ImageMotion(double stepSeconds) {
    step = stepSeconds;
  }

  void add(double startSeconds, double[] east, double[] north, double gridStep, int points) {
    int every = (int) Math.round(step / gridStep);
    int size = points / every + 1;
    double[] e = new double[size];
    double[] n = new double[size];
    for (int i = 0; i < size; i++) {
      e[i] = east[i * every];
      n[i] = north[i * every];
    }
    pieces.add(new Piece(startSeconds, e, n));
  }

  /** Seconds between the samples behind it. */
  public double stepSeconds() {
    return step;
  }

  /** East [arcsec] at a time; NaN between runs. */
  public double eastArcsec(double seconds) {
    Piece piece = piece(seconds);
    return piece == null ? Double.NaN : between(piece.east, seconds - piece.startSeconds);
  }

  /** North [arcsec] at a time; NaN between runs. */
  public double northArcsec(double seconds) {
    Piece piece = piece(seconds);
    return piece == null ? Double.NaN : between(piece.north, seconds - piece.startSeconds);
  }

  /**
   * Mean square about the exposure's own mean: east, north and their product [arcsec^2]; NaN where
   * the exposure leaves the run.
   */
  public double[] covariance(double fromSeconds, double seconds) {
    int samples = Math.max(2, (int) Math.round(seconds / step));
    double[] mean = new double[2];
    double[] sums = new double[3];
    for (int pass = 0; pass < 2; pass++) {
      for (int i = 0; i < samples; i++) {
        double time = fromSeconds + (i + 0.5) * seconds / samples;
        double e = eastArcsec(time);
        double n = northArcsec(time);
        if (pass == 0) {
          mean[0] += e / samples;
          mean[1] += n / samples;
        } else {
          sums[0] += (e - mean[0]) * (e - mean[0]) / samples;
          sums[1] += (n - mean[1]) * (n - mean[1]) / samples;
          sums[2] += (e - mean[0]) * (n - mean[1]) / samples;
        }
      }
    }
    return sums;
  }

  /**
   * Second moments of the image: Gaussian of this FWHM plus the motion during the exposure (moments
   * of a convolution add). Angle north through east.
   */
  public Shape shape(double fromSeconds, double seconds, double fwhmArcsec) {
    double[] c = covariance(fromSeconds, seconds);
    double core = fwhmArcsec * fwhmArcsec / (8 * Math.log(2));
    double middle = core + (c[0] + c[1]) / 2;
    double spread = Math.hypot((c[0] - c[1]) / 2, c[2]);
    double angle = Math.toDegrees(0.5 * Math.atan2(2 * c[2], c[1] - c[0]));
    return new Shape(
        Math.sqrt(middle + spread), Math.sqrt(middle - spread), angle < 0 ? angle + 180 : angle);
  }

  private Piece piece(double seconds) {
    for (Piece piece : pieces) {
      double at = seconds - piece.startSeconds;
      if (at >= 0 && at <= (piece.east.length - 1) * step) {
        return piece;
      }
    }
    return null;
  }

  private double between(double[] values, double at) {
    int i = Math.min((int) (at / step), values.length - 2);
    double share = at / step - i;
    return values[i] + share * (values[i + 1] - values[i]);
  }
}
