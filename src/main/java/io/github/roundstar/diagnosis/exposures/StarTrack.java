package io.github.roundstar.diagnosis.exposures;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.Frames;
import io.github.roundstar.motion.SmoothedStar;
import io.github.roundstar.signal.RobustScale;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;

/**
 * Where the star was on the main camera's sensor at each measured frame of a run, dithers included,
 * with what has to be added to the covariance of these places to get that of the star: for smoothed
 * places the variance of the smoothing, for measured ones less than nothing, since they count the
 * noise of measuring too.
 */
public final class StarTrack {

  /** Variance of second differences of white noise, in units of its own. */
  private static final double SECOND_DIFFERENCES = 6;

  private final double[] seconds;
  private final double[] ra;
  private final double[] dec;
  private final double[] sinceDither;
  private final double[] lostBefore;
  private final double[] raJumps;
  private final double[] decJumps;
  private final Noise raNoise;
  private final Noise decNoise;

  /**
   * What the variance over a window has to be corrected by.
   *
   * @param addedVariance to be added to the variance of the places [arcsec2]
   * @param sigmaOfAdded its standard error [arcsec2]
   * @param placeVariance variance of one place about the truth [arcsec2]
   */
  public record Noise(double addedVariance, double sigmaOfAdded, double placeVariance) {}

  private static final Noise CERTAIN = new Noise(0, 0, 0);

  private StarTrack(
      double[] seconds,
      double[] ra,
      double[] dec,
      double[] sinceDither,
      double[] lostBefore,
      double[] raJumps,
      double[] decJumps,
      Noise raNoise,
      Noise decNoise) {
    this.seconds = seconds;
    this.ra = ra;
    this.dec = dec;
    this.sinceDither = sinceDither;
    this.lostBefore = lostBefore;
    this.raJumps = raJumps;
    this.decJumps = decJumps;
    this.raNoise = raNoise;
    this.decNoise = decNoise;
  }

  /**
   * The measured offsets, with the noise floor taken off their variance. Where there is no noise
   * floor, the second differences bound it from above and zero from below.
   *
   * @param raFloor noise of one frame in right ascension [arcsec]
   * @param decFloor the same in declination [arcsec]
   */
  public static StarTrack measured(
      Frames frames, Optional<Estimate> raFloor, Optional<Estimate> decFloor) {
    return of(
        frames,
        frames::raArcsec,
        frames::decArcsec,
        places -> noise(places, raFloor),
        places -> noise(places, decFloor));
  }

  /**
   * The smoothed star, with the variance of the smoothing. Its errors hang together over the frames
   * that it averages, so that a window tells as much of the motion as if each frame were off by its
   * noise.
   *
   * @param raFloor noise of one frame in right ascension [arcsec]
   * @param decFloor the same in declination [arcsec]
   */
  public static StarTrack smoothed(
      Frames frames, SmoothedStar star, Estimate raFloor, Estimate decFloor) {
    return of(
        frames,
        star::raArcsec,
        star::decArcsec,
        places -> smoothing(frames, star::raVariance, raFloor),
        places -> smoothing(frames, star::decVariance, decFloor));
  }

  private static Noise smoothing(Frames frames, IntToDoubleFunction variance, Estimate floor) {
    double mean =
        IntStream.range(0, frames.size())
            .filter(frames::measured)
            .mapToDouble(variance)
            .average()
            .orElse(0);
    double half = (floor.hi95() - floor.lo95()) / 2;
    return new Noise(
        mean, 2 * mean * half / floor.value() / Estimate.SIGMAS_95, floor.value() * floor.value());
  }

  private static StarTrack of(
      Frames frames,
      IntToDoubleFunction east,
      IntToDoubleFunction north,
      Function<double[], Noise> raNoise,
      Function<double[], Noise> decNoise) {
    int[] at = IntStream.range(0, frames.size()).filter(frames::measured).toArray();
    double[][] moves = setPoint(frames);
    double[] seconds = new double[at.length];
    double[] ra = new double[at.length];
    double[] dec = new double[at.length];
    double[] sinceDither = new double[at.length];
    double[] lostBefore = new double[at.length];
    double dither = Double.NEGATIVE_INFINITY;
    int next = 0;
    for (int m = 0; m < at.length; m++) {
      int i = at[m];
      seconds[m] = frames.timeSeconds(i);
      ra[m] = east.applyAsDouble(i) + moves[0][i];
      dec[m] = north.applyAsDouble(i) + moves[1][i];
      int lost = 0;
      for (; next <= i; next++) {
        if (frames.ditherStart(next)) {
          dither = frames.timeSeconds(next);
        }
        lost += frames.state(next) == FrameState.LOST ? 1 : 0;
      }
      lostBefore[m] = lost;
      boolean settling =
          frames.state(i) == FrameState.SETTLING || frames.state(i) == FrameState.DITHER;
      sinceDither[m] = settling ? 0 : seconds[m] - dither;
    }
    return new StarTrack(
        seconds,
        ra,
        dec,
        sinceDither,
        lostBefore,
        new double[at.length],
        new double[at.length],
        raNoise.apply(ra),
        decNoise.apply(dec));
  }

  /**
   * Sum of the set point's moves at each frame, east and north. A move that the log does not tell
   * is what the offset jumped by, the other way.
   */
  private static double[][] setPoint(Frames frames) {
    double[][] sum = new double[2][frames.size()];
    double east = 0;
    double north = 0;
    int before = -1;
    for (int i = 0; i < frames.size(); i++) {
      if (frames.ditherStart(i)) {
        boolean known =
            Double.isFinite(frames.ditherRaArcsec(i)) && Double.isFinite(frames.ditherDecArcsec(i));
        boolean seen = before >= 0 && frames.measured(i);
        if (known) {
          east += frames.ditherRaArcsec(i);
          north += frames.ditherDecArcsec(i);
        } else if (seen) {
          east -= frames.raArcsec(i) - frames.raArcsec(before);
          north -= frames.decArcsec(i) - frames.decArcsec(before);
        }
      }
      sum[0][i] = east;
      sum[1][i] = north;
      before = frames.measured(i) ? i : before;
    }
    return sum;
  }

  private static Noise noise(double[] places, Optional<Estimate> floor) {
    if (floor.isPresent()) {
      double variance = floor.get().value() * floor.get().value();
      double half = (floor.get().hi95() - floor.get().lo95()) / 2;
      return new Noise(-variance, 2 * floor.get().value() * half / Estimate.SIGMAS_95, variance);
    }
    if (places.length < 5) {
      return new Noise(0, 0, 0);
    }
    double[] bends = new double[places.length - 2];
    for (int i = 0; i < bends.length; i++) {
      bends[i] = places[i] - 2 * places[i + 1] + places[i + 2];
    }
    double most = RobustScale.of(bends) * RobustScale.of(bends) / SECOND_DIFFERENCES;
    return new Noise(-most / 2, most / 2 / Estimate.SIGMAS_95, most);
  }

  /** The same star on a sensor that moves steadily against it. */
  StarTrack drifting(double eastArcsecPerSecond, double northArcsecPerSecond) {
    double[] east = ra.clone();
    double[] north = dec.clone();
    for (int i = 0; i < seconds.length; i++) {
      east[i] += eastArcsecPerSecond * seconds[i];
      north[i] += northArcsecPerSecond * seconds[i];
    }
    return new StarTrack(
        seconds, east, north, sinceDither, lostBefore, raJumps, decJumps, raNoise, decNoise);
  }

  /** The same frames with the star at other places, each of them certain. */
  StarTrack at(double[] eastArcsec, double[] northArcsec, double[] eastJumps, double[] northJumps) {
    return new StarTrack(
        seconds,
        eastArcsec,
        northArcsec,
        sinceDither,
        lostBefore,
        eastJumps,
        northJumps,
        CERTAIN,
        CERTAIN);
  }

  /**
   * The same star, with how far a pulse moved it between each measured frame and the next [arcsec].
   */
  public StarTrack jumping(double[] east, double[] north) {
    return new StarTrack(seconds, ra, dec, sinceDither, lostBefore, east, north, raNoise, decNoise);
  }

  int size() {
    return seconds.length;
  }

  /** Time since the run's start [s]. */
  double seconds(int i) {
    return seconds[i];
  }

  /** Place east [arcsec]. */
  double ra(int i) {
    return ra[i];
  }

  /** Place north [arcsec]. */
  double dec(int i) {
    return dec[i];
  }

  /** How far a pulse moved it towards the next frame, east [arcsec]. */
  double raJump(int i) {
    return raJumps[i];
  }

  /** The same north [arcsec]. */
  double decJump(int i) {
    return decJumps[i];
  }

  /** Time since the last dither, 0 while the log says that it settles; infinite before any [s]. */
  double sinceDither(int i) {
    return sinceDither[i];
  }

  /** Frames in which the star was lost just before this one. */
  double lostBefore(int i) {
    return lostBefore[i];
  }

  Noise raNoise() {
    return raNoise;
  }

  Noise decNoise() {
    return decNoise;
  }
}
