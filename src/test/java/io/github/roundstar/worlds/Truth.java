package io.github.roundstar.worlds;

import java.util.List;

/**
 * What an estimator should find. "At the axis": right ascension on the sky divided by cos
 * (declination). East and north are positive.
 *
 * @param faults the worlds whose fault the night has (one, but for several at once)
 * @param ra what pulses achieve in right ascension (plus = east, minus = west)
 * @param dec what pulses achieve in declination once the play is through (plus = north)
 * @param gears worm first; empty amplitudes mean none
 * @param wormAmplitudeArcsecAxis amplitude of the worm's own period, mean of the runs by their
 *     length
 * @param azimuthArcmin polar axis: elevated end, positive east, as the angle about the vertical
 * @param altitudeArcmin polar axis: elevated end, positive above the true pole
 * @param decPlayArcsec whole width of the play
 * @param decStickArcsec how far the drive winds up before a sticking axis slips; 0 = it does not
 * @param decSlipToArcsec what is left of it after the slip
 * @param raWander strength, in the unit of {@code wander}
 * @param cameraAngleDeg turn of the logged axes against the sky
 * @param pulseDelaySeconds end of the exposure to the first motion of a pulse
 * @param seeingFwhmArcsec FWHM on the main camera, guiding left out
 */
public record Truth(
    List<World> faults,
    Response ra,
    Response dec,
    List<Gear> gears,
    double wormAmplitudeArcsecAxis,
    double azimuthArcmin,
    double altitudeArcmin,
    double decPlayArcsec,
    double decStickArcsec,
    double decSlipToArcsec,
    Wander wander,
    double raWander,
    double decWander,
    double wanderMemorySeconds,
    double cameraAngleDeg,
    double pulseDelaySeconds,
    double seeingFwhmArcsec,
    List<Run> runs) {

  /** One figure for each axis. */
  public record Axes(double ra, double dec) {}

  /**
   * Arcsec at the axis per second of pulse in both directions, and what the log declares.
   *
   * @param meanArcsecPerSecond mean of both directions
   */
  public record Response(
      double plusArcsecPerSecond,
      double minusArcsecPerSecond,
      double meanArcsecPerSecond,
      double declaredArcsecPerSecond) {
    static Response of(double plusRate, double minusRate, double declaredRate) {
      double om = SkyPath.SIDEREAL_ARCSEC_PER_SECOND;
      return new Response(
          plusRate * om, minusRate * om, (plusRate + minusRate) / 2 * om, declaredRate * om);
    }

    /** Achieved over declared. */
    public double ratio() {
      return meanArcsecPerSecond / declaredArcsecPerSecond;
    }
  }

  /** A gear: amplitudes at the axis of its period, half of it, a third, a quarter. */
  public record Gear(String name, double periodSeconds, List<Double> amplitudesArcsecAxis) {}

  /**
   * One run.
   *
   * @param startSeconds since the start of the log
   * @param durationSeconds first to last measured frame
   * @param hourAngleHours at the start, west positive
   * @param driftArcsecPerMinuteSky least-squares slope of the mount's motion without pulses and
   *     without periodic parts: polar axis, refraction, rate, wander, gusts
   * @param steadyDriftArcsecPerMinuteSky the same without wander and gusts
   * @param bendArcsecPerMinuteSky slope of the guide scope's bending, which a log shows on top
   * @param noiseArcsec standard deviation of the measured place about the exposure's true mean
   * @param noiseLag1 correlation of that noise from frame to frame
   * @param wormAmplitudeArcsecAxis amplitude of the worm's own period in this run
   * @param periodicPeakToPeakArcsecAxis of all gears together, over the run
   * @param decDirection 0 both, 1 north only, -1 south only
   * @param gustSeconds when gusts began, since the start of the log
   */
  public record Run(
      int run,
      double startSeconds,
      double durationSeconds,
      int frames,
      double declinationDeg,
      double hourAngleHours,
      boolean tubeWest,
      Axes driftArcsecPerMinuteSky,
      Axes steadyDriftArcsecPerMinuteSky,
      Axes bendArcsecPerMinuteSky,
      Axes noiseArcsec,
      Axes noiseLag1,
      double wormAmplitudeArcsecAxis,
      double periodicPeakToPeakArcsecAxis,
      double decDirection,
      List<Double> gustSeconds) {}

  /** A figure of the sky (east, north) as the log's axes, a little turned against it, show it. */
  public Axes inLoggedAxes(Axes sky) {
    double turned = Math.toRadians(cameraAngleDeg);
    return new Axes(
        sky.ra * Math.cos(turned) + sky.dec * Math.sin(turned),
        -sky.ra * Math.sin(turned) + sky.dec * Math.cos(turned));
  }

  /** Noise of all runs, pooled by their frames. */
  public Axes noiseArcsec() {
    double ra2 = 0;
    double dec2 = 0;
    double frames = 0;
    for (Run run : runs) {
      ra2 += run.frames * run.noiseArcsec.ra * run.noiseArcsec.ra;
      dec2 += run.frames * run.noiseArcsec.dec * run.noiseArcsec.dec;
      frames += run.frames;
    }
    return new Axes(Math.sqrt(ra2 / frames), Math.sqrt(dec2 / frames));
  }

  static Truth of(NightPlan plan, List<Run> runs) {
    double weighted = 0;
    double seconds = 0;
    for (Run run : runs) {
      weighted += run.durationSeconds * run.wormAmplitudeArcsecAxis;
      seconds += run.durationSeconds;
    }
    return new Truth(
        List.copyOf(plan.bentBy),
        Response.of(plan.eastRate, plan.westRate, plan.declaredGuideRate),
        Response.of(plan.northRate, plan.southRate, plan.declaredGuideRate),
        plan.gears.stream()
            .map(
                gear ->
                    new Gear(
                        gear.name(),
                        gear.periodSeconds(),
                        java.util.Arrays.stream(gear.amplitudesArcsecAxis()).boxed().toList()))
            .toList(),
        weighted / seconds,
        plan.azimuthArcmin,
        plan.altitudeArcmin,
        plan.playArcsec,
        plan.stickArcsec,
        plan.slipToArcsec,
        plan.wander,
        plan.raWander,
        plan.decWander,
        plan.wanderMemorySeconds,
        plan.cameraAngleDeg,
        plan.latencySeconds + plan.delaySeconds,
        plan.seeingFwhmArcsec,
        List.copyOf(runs));
  }

  /** Least-squares slope of a path on the grid, per minute. */
  static double slopePerMinute(double[] path, double step, int first, int last) {
    double middle = (first + last) / 2.0;
    double sum = 0;
    double square = 0;
    for (int k = first; k <= last; k++) {
      sum += (k - middle) * path[k];
      square += (k - middle) * (k - middle);
    }
    return sum / square / step * 60;
  }

  /** Least-squares amplitude of a sinusoid of known period beside a constant. */
  static double amplitude(double[] path, double step, int points, double periodSeconds) {
    double[][] normal = new double[3][4];
    for (int k = 0; k < points; k++) {
      double angle = 2 * Math.PI * k * step / periodSeconds;
      double[] row = {1, Math.sin(angle), Math.cos(angle), path[k]};
      for (int i = 0; i < 3; i++) {
        for (int j = 0; j < 4; j++) {
          normal[i][j] += row[i] * row[j];
        }
      }
    }
    for (int i = 0; i < 3; i++) {
      for (int other = 0; other < 3; other++) {
        if (other != i) {
          double factor = normal[other][i] / normal[i][i];
          for (int j = i; j < 4; j++) {
            normal[other][j] -= factor * normal[i][j];
          }
        }
      }
    }
    return Math.hypot(normal[1][3] / normal[1][1], normal[2][3] / normal[2][2]);
  }
}
