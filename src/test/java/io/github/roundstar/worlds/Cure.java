package io.github.roundstar.worlds;

import java.util.function.Consumer;

/**
 * One thing done differently on the same night: a setting changed or the mount mended. Air, wander,
 * gusts, dithers and clouds stay as they were; they come from streams that no cure touches. A cure
 * is done as it is asked for: a gain that makes the loop swing makes it swing.
 */
public final class Cure {
  private final String name;
  private final Consumer<NightPlan> change;

  private Cure(String name, Consumer<NightPlan> change) {
    this.name = name;
    this.change = change;
  }

  void apply(NightPlan plan) {
    change.accept(plan);
  }

  /** Gain of right ascension as the controller's setting has it. */
  public static Cure raGain(double gain) {
    return new Cure("gain of right ascension " + gain, plan -> plan.ra.gain = gain);
  }

  public static Cure decGain(double gain) {
    return new Cure("gain of declination " + gain, plan -> plan.dec.gain = gain);
  }

  /** Arcsec on the sky below which right ascension is left alone. */
  public static Cure raDeadband(double arcsec) {
    return new Cure("deadband of right ascension " + arcsec, p -> p.ra.deadbandArcsec = arcsec);
  }

  public static Cure decDeadband(double arcsec) {
    return new Cure("deadband of declination " + arcsec, p -> p.dec.deadbandArcsec = arcsec);
  }

  /** Longest pulse of both axes. */
  public static Cure pulseLimit(double milliseconds) {
    return new Cure(
        "pulse limit " + milliseconds,
        plan -> {
          plan.ra.longestMs = milliseconds;
          plan.dec.longestMs = milliseconds;
        });
  }

  /** Cadence and guide exposure; the air is averaged over the new exposure. */
  public static Cure cadence(double seconds, double exposureSeconds) {
    if (exposureSeconds >= seconds) {
      throw new IllegalArgumentException("exposure longer than the cadence");
    }
    return new Cure(
        "cadence " + seconds,
        plan -> {
          plan.cadenceSeconds = seconds;
          plan.exposureSeconds = exposureSeconds;
        });
  }

  /** Guide exposure and cadence; the pause between exposures and the noise of a frame follow. */
  public static Cure guideExposure(double seconds) {
    return new Cure(
        "guide exposure " + seconds,
        plan -> {
          double pause = plan.cadenceSeconds - plan.exposureSeconds;
          // Half the light, half the photons: the scatter of a centroid goes as 1 / sqrt(time)
          // (King 1983, PASP 95, 163, for a star above the background).
          double dimmer = Math.sqrt(plan.exposureSeconds / seconds);
          plan.centroidRa *= dimmer;
          plan.centroidDec *= dimmer;
          plan.exposureSeconds = seconds;
          plan.cadenceSeconds = seconds + pause;
        });
  }

  /** Guide exposure with a cadence of its own. */
  public static Cure guideExposure(double seconds, double cadenceSeconds) {
    Cure exposure = guideExposure(seconds);
    return new Cure(
        exposure.name + " every " + cadenceSeconds,
        plan -> {
          exposure.change.accept(plan);
          plan.cadenceSeconds = Math.max(cadenceSeconds, seconds + 0.01);
        });
  }

  /** Images wait so long after a dither, settled or not. */
  public static Cure pauseAfterDither(double seconds) {
    return new Cure("pause after a dither " + seconds, plan -> plan.pauseSeconds = seconds);
  }

  /** Images wait until the star has settled. */
  public static Cure waitUntilSettled() {
    return new Cure("wait until settled", plan -> plan.pauseSeconds = Double.NaN);
  }

  /** Length of the main camera's images. */
  public static Cure imageSeconds(double seconds) {
    return new Cure("images of " + seconds, plan -> plan.imagingSeconds = seconds);
  }

  /** Polar axis as close as this, on the side where it was; an axis that is closer stays. */
  public static Cure polarAxisWithin(double arcmin) {
    return new Cure(
        "polar axis within " + arcmin,
        plan -> {
          double off =
              Math.hypot(
                  plan.azimuthArcmin * Math.cos(Math.toRadians(plan.latitudeDeg)),
                  plan.altitudeArcmin);
          double left = Math.min(1, arcmin / off);
          plan.azimuthArcmin *= left;
          plan.altitudeArcmin *= left;
        });
  }

  /** Both axes balanced: pulses act alike both ways, and nothing drags. */
  public static Cure balanced() {
    return new Cure(
        "balance",
        plan -> {
          double ra = (plan.eastRate + plan.westRate) / 2;
          double dec = (plan.northRate + plan.southRate) / 2;
          plan.eastRate = ra;
          plan.westRate = ra;
          plan.northRate = dec;
          plan.southRate = dec;
          plan.dragArcsecPerMinuteAxis = 0;
        });
  }

  /** Camera turned until its rows run east and west. */
  public static Cure cameraSquare() {
    return new Cure("camera angle", plan -> plan.cameraAngleDeg = 0);
  }

  /** Worm trained: what repeats from turn to turn is gone, what does not stays. */
  public static Cure wormTrained() {
    return new Cure("training", plan -> plan.wormTrained = true);
  }

  /** The mount runs at the rate of the stars. */
  public static Cure rateOfTheStars() {
    return new Cure("rate of the stars", plan -> plan.rateErrorArcsecPerMinuteAxis = 0);
  }

  /** Optics that draw round stars. */
  public static Cure roundOptics() {
    return new Cure("optics", plan -> plan.opticsVariance = 0);
  }

  /** A mount that does nothing of its own; the guiding goes on. */
  public static Cure perfectMount() {
    return new Cure(
        "perfect mount",
        plan -> {
          plan.gears.replaceAll(gear -> gear.times(0));
          plan.playArcsec = 0;
          plan.stickArcsec = 0;
          plan.slipToArcsec = 0;
          plan.raWander = 0;
          plan.decWander = 0;
          plan.gustsPerHour = 0;
          plan.bendRaArcsecPerHour = 0;
          plan.bendDecArcsecPerHour = 0;
          plan.azimuthArcmin = 0;
          plan.altitudeArcmin = 0;
          plan.rateErrorArcsecPerMinuteAxis = 0;
          plan.dragArcsecPerMinuteAxis = 0;
        });
  }

  /** The controller reckons with what the motors really do, and the log declares it. */
  public static Cure guideRateMeasured() {
    return new Cure(
        "guide rate measured",
        plan -> {
          double ra = (plan.eastRate + plan.westRate) / 2;
          plan.believedGuideRate = ra;
          plan.declaredGuideRate = ra;
        });
  }

  /** Polar axis set to these errors (elevated end; azimuth east, altitude up). */
  public static Cure polarAxis(double azimuthArcmin, double altitudeArcmin) {
    return new Cure(
        "polar axis",
        plan -> {
          plan.azimuthArcmin = azimuthArcmin;
          plan.altitudeArcmin = altitudeArcmin;
        });
  }

  /** Amplitudes of all gears times {@code left}: 0.2 for a trained worm, 0 for a perfect one. */
  public static Cure periodicErrorTimes(double left) {
    return new Cure("periodic error", plan -> plan.gears.replaceAll(gear -> gear.times(left)));
  }

  /** Declination play set to this width. */
  public static Cure decPlay(double arcsec) {
    return new Cure("declination play", plan -> plan.playArcsec = arcsec);
  }

  /** Declination no longer sticks. */
  public static Cure unstuck() {
    return new Cure(
        "sticking",
        plan -> {
          plan.stickArcsec = 0;
          plan.slipToArcsec = 0;
        });
  }

  /** Guide scope fastened. */
  public static Cure noBending() {
    return new Cure(
        "bending",
        plan -> {
          plan.bendRaArcsecPerHour = 0;
          plan.bendDecArcsecPerHour = 0;
        });
  }

  /** Sheltered from wind. */
  public static Cure noGusts() {
    return new Cure("gusts", plan -> plan.gustsPerHour = 0);
  }

  /** Pulses act at once. */
  public static Cure promptPulses() {
    return new Cure("delay", plan -> plan.delaySeconds = 0);
  }

  /** Plain gain and deadband: no filter, no integral part, no votes; gains as they are. */
  public static Cure plainLaw() {
    return new Cure(
        "plain law",
        plan -> {
          plan.ra.law = Controller.Law.PROPORTIONAL;
          plan.dec.law = Controller.Law.PROPORTIONAL;
          plan.ra.votes = 0;
          plan.dec.votes = 0;
        });
  }

  /** Wander of both axes times {@code left}: a mount that stands firmer. */
  public static Cure wanderTimes(double left) {
    return new Cure(
        "wander",
        plan -> {
          plan.raWander *= left;
          plan.decWander *= left;
        });
  }

  /** Declination pulses in both directions. */
  public static Cure decBothWays() {
    return new Cure(
        "both directions",
        plan -> {
          plan.dec.direction = 0;
          java.util.Arrays.fill(plan.decDirections, 0);
        });
  }

  /** Air without motion and a camera without noise: the mount alone. */
  public static Cure stillAir() {
    return new Cure(
        "still air",
        plan -> {
          plan.airRa = 0;
          plan.airDec = 0;
          plan.centroidRa = 0;
          plan.centroidDec = 0;
        });
  }

  /** No pulses at all. */
  public static Cure unguided() {
    return new Cure(
        "unguided",
        plan -> {
          plan.ra.direction = Double.NaN;
          plan.dec.direction = Double.NaN;
        });
  }

  @Override
  public String toString() {
    return name;
  }
}
