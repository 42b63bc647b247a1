package io.github.roundstar.simulate;

import io.github.roundstar.sky.GuideTolerance;
import java.util.Optional;

/** Error of the measured star: image motion by the air, centroid noise, plain white noise. */
final class Measurement {

  private final SkyPlan sky;
  private final Axis ra;
  private final Axis dec;

  /**
   * The error of one exposure.
   *
   * @param total all of it
   * @param air the part that is image motion
   */
  record Error(Offset total, Offset air) {}

  private static final class Axis {
    final Optional<ImageMotion> air;
    final NoiseStream centroid;
    final NoiseStream white;

    Axis(SkyPlan sky, long seed, String name, int id) {
      air = sky.seeing().map(s -> new ImageMotion(s, NoiseStream.of(seed, "air-" + name, id)));
      centroid = NoiseStream.of(seed, "centroid-" + name, id);
      white = NoiseStream.of(seed, "white-" + name, id);
    }

    void skip(double seconds) {
      air.ifPresent(motion -> motion.skip(seconds));
    }

    double motion(double seconds) {
      return air.map(motion -> motion.mean(seconds)).orElse(0.0);
    }
  }

  Measurement(SkyPlan sky, long seed, int id) {
    this.sky = sky;
    this.ra = new Axis(sky, seed, "ra", id);
    this.dec = new Axis(sky, seed, "dec", id);
  }

  /** Goes on without looking. */
  void skip(double seconds) {
    ra.skip(seconds);
    dec.skip(seconds);
  }

  /** Goes on over an exposure. */
  Error next(double seconds, double snr) {
    Offset air = new Offset(ra.motion(seconds), dec.motion(seconds));
    double sigma = centroidSigmaArcsec(snr);
    Offset noise = new Offset(draw(ra, sigma), draw(dec, sigma));
    return new Error(air.plus(noise), air);
  }

  /**
   * Photon noise of a centroid, FWHM / (2.3548 SNR).
   *
   * @see "King (1983), PASP 95, 163"
   */
  private double centroidSigmaArcsec(double snr) {
    return sky.seeing()
        .map(s -> s.fwhmArcsec() / (GuideTolerance.FWHM_PER_SIGMA * Math.max(1, snr)))
        .orElse(0.0);
  }

  private double draw(Axis axis, double centroidSigma) {
    return centroidSigma * axis.centroid.gaussian() + sky.noiseArcsec() * axis.white.gaussian();
  }
}
