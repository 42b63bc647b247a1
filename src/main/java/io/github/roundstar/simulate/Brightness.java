package io.github.roundstar.simulate;

import java.util.List;

/** Flux and signal to noise of the guide star from frame to frame: slow changes and clouds. */
final class Brightness {
  private static final double SLOW_SECONDS = 900;

  private final SkyPlan.Star star;
  private final List<CloudPassage> clouds;
  private final List<OtherStar> otherStars;
  private final Relaxation slow;
  private final NoiseStream shot;

  /** A cloud between two times of the run that takes away {@code depth} of the light at most. */
  record CloudPassage(double atSeconds, double seconds, double depth) {
    double transmission(double time) {
      double inside = Math.max(0, Math.min(seconds, time - atSeconds));
      double sine = StrictMath.sin(Math.PI * inside / seconds);
      return 1 - depth * sine * sine;
    }
  }

  /** From a time of the run another star is looked at. */
  record OtherStar(double atSeconds, double fluxRatio) {}

  /** One frame. */
  record Frame(double snr, double fluxAdu, boolean lost) {}

  Brightness(SkyPlan.Star star, Disturbances disturbances, NoiseStream noise, NoiseStream shot) {
    this.star = star;
    this.clouds = List.copyOf(disturbances.clouds);
    this.otherStars = List.copyOf(disturbances.otherStars);
    this.slow = new Relaxation(star.variation() * star.variation(), SLOW_SECONDS, noise);
    this.shot = shot;
  }

  /** The frame at a time, a cadence after the last one. */
  Frame next(double time, double cadenceSeconds) {
    double relative = StrictMath.exp(slow.skip(cadenceSeconds));
    for (CloudPassage cloud : clouds) {
      relative *= cloud.transmission(time);
    }
    for (OtherStar other : otherStars) {
      relative *= time < other.atSeconds() ? 1 : other.fluxRatio();
    }
    double snr = star.snr() * StrictMath.sqrt(relative);
    double flux = star.fluxAdu() * relative * (1 + shot.gaussian() / Math.max(3, snr));
    return new Frame(snr, Math.max(0, flux), snr < star.lostBelowSnr());
  }
}
