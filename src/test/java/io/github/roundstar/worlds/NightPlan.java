package io.github.roundstar.worlds;

import static io.github.roundstar.worlds.Streams.logUniform;
import static io.github.roundstar.worlds.Streams.pick;
import static io.github.roundstar.worlds.Streams.uniform;

import io.github.roundstar.worlds.Controller.Law;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;

/**
 * Everything that makes a night before it is played: mount, air, camera, controller, what the log
 * declares. Plain fields, since a plan is drawn, bent by its world, made consistent ({@link
 * #settle}) and perhaps cured, in that order; nobody changes it while it is played.
 */
final class NightPlan {
  /** One gear of the right-ascension drive; its angle follows the axis, also over a slew. */
  record Gear(
      String name, double periodSeconds, double[] amplitudesArcsecAxis, double[] phasesRad) {
    /** A gear whose every amplitude is multiplied. */
    Gear times(double factor) {
      double[] scaled = amplitudesArcsecAxis.clone();
      for (int i = 0; i < scaled.length; i++) {
        scaled[i] *= factor;
      }
      return new Gear(name, periodSeconds, scaled, phasesRad);
    }
  }

  /** Where one run points; times from the start of the log. */
  record Pointing(
      double startSeconds,
      double durationSeconds,
      double declinationDeg,
      double hourAngleDeg,
      boolean tubeWest) {}

  enum Dithering {
    NONE,
    SMALL,
    LARGE
  }

  Streams streams;

  /** What the night is called, where no world names it. */
  String label = "";

  /** The worlds whose fault this night has. */
  List<World> bentBy = new ArrayList<>();

  double stepSeconds = 0.05;

  double latitudeDeg = 50;
  double longitudeDeg;
  double elevationM;
  double pressureHpa = 1010;
  double temperatureC = 10;
  Instant start = Instant.parse("2026-01-01T20:00:00Z");

  double azimuthArcmin;
  double altitudeArcmin;
  double rateErrorArcsecPerMinuteAxis;

  /** What a load on one side takes from the rate, until the axis is balanced. */
  double dragArcsecPerMinuteAxis;

  List<Gear> gears = new ArrayList<>();

  /** Random walk of the worm's phase: rad after one turn. */
  double shiverRad;

  /** Whether the drive takes off what the worm repeats from turn to turn. */
  boolean wormTrained;

  /** Relative scatter of the worm's amplitude, from turn to turn. */
  double shiverShare;

  /** True over declared guide rate, all directions. */
  double rateRatio = 1;

  double declaredGuideRate = 0.5;

  /** What the controller reckons with; it may know better than the log's head. */
  double believedGuideRate = 0.5;

  boolean controllerKnowsRate;
  double eastRate = 0.5;
  double westRate = 0.5;
  double northRate = 0.5;
  double southRate = 0.5;

  /** East less west, as a share of their mean. */
  double eastLessWest;

  double northLessSouth;

  /** From the end of the exposure to the command. */
  double latencySeconds;

  /** From the command to the motion. */
  double delaySeconds;

  boolean decAfterRa;
  boolean waitsForPulse;

  double playArcsec;
  double playStart;
  double stickArcsec;
  double slipToArcsec;

  Wander wander = Wander.WALK;
  double raWander;
  double decWander;
  double wanderMemorySeconds = 100;

  double gustsPerHour;
  double gustArcsec;
  double bendRaArcsecPerHour;
  double bendDecArcsecPerHour;

  /** Standard deviation of what is measured about the exposure's true mean. */
  double raNoise;

  double decNoise;

  /** Share of the noise variance that is image motion; the rest is made anew in each frame. */
  double airShare;

  double airMemorySeconds = 0.05;
  double airRa;
  double airDec;
  double centroidRa;
  double centroidDec;
  double noiseAtStart = 1;
  double noiseAtEnd = 1;
  boolean student;
  double cameraAngleDeg;
  double seeingFwhmArcsec = 2.5;

  double cadenceSeconds = 2;
  double exposureShare = 0.8;
  double exposureSeconds = 1.6;
  double jitterShare;
  double lostSpellsPerHour;
  double lostFrames = 1;
  boolean lostRowsMissing;

  Dithering dithering = Dithering.NONE;
  double ditherArcsec;
  double ditherEverySeconds = 1e9;
  boolean ditherShiftLogged = true;
  boolean settlingLogged = true;
  double settledArcsec = 1;
  double unloggedMovesPerHour;
  double imagingSeconds = 300;

  /** Pause from a dither to the next image; NaN = until the star has settled. */
  double pauseSeconds = Double.NaN;

  /** Variance that the optics add along one direction of the sky [arcsec^2]. */
  double opticsVariance;

  /** That direction, north through east. */
  double opticsAngleDeg;

  /** Standard deviation of a star's colours along the vertical at 45 degrees up [arcsec]. */
  double dispersionArcsec;

  /** Where the guide star stands in the main camera's field, east and north of its middle. */
  double starEastArcmin;

  double starNorthArcmin;

  boolean starPlaceDeclared;

  /** Long axis over short that the user still calls round; NaN = never said. */
  double elongationLimit = Double.NaN;

  /** What the user allows either axis [arcsec RMS]; NaN = never said. */
  double rmsLimitArcsec = Double.NaN;

  double firstEastArcsec;
  double firstNorthArcsec;

  Controller.Settings ra = new Controller.Settings();
  Controller.Settings dec = new Controller.Settings();

  /** Longest pulse as a multiple of the noise; 0 = drawn freely. */
  double tightLimit;

  /** Declination is pushed against its drift only. */
  boolean decOneWay;

  /** The direction of declination pulses of each run: 0 both, 1 north, -1 south. */
  double[] decDirections = {0};

  double hoursAsked;
  int runsAsked;
  double shortestRunMinutes = 25;
  double longestRunMinutes = 360;
  double decAskedDeg = Double.NaN;
  List<Pointing> runs = new ArrayList<>();

  String timeMark = "middle";
  int offsetDecimals = 3;
  int timeDecimals = 3;
  boolean teethDeclared = true;
  boolean weatherDeclared = true;
  boolean gearsDeclared = true;
  int guideFocalMm = 300;
  int imagingFocalMm = 750;
  boolean offAxis;

  /** A plan without any fault, wander or noise: the bare loop, for checks against closed forms. */
  static NightPlan still(long seed) {
    NightPlan plan = new NightPlan();
    plan.streams = new Streams("still", seed);
    plan.ra.gain = 0.5;
    plan.dec.gain = 0.5;
    plan.raWander = 0;
    plan.decWander = 0;
    return plan;
  }

  /** A night as they come, without the fault of any world; {@link #settle} must follow. */
  static NightPlan draw(Streams streams) {
    RandomGenerator random = streams.of("plan");
    NightPlan plan = new NightPlan();
    plan.streams = streams;
    plan.latitudeDeg =
        random.nextDouble() < 0.75 ? uniform(random, 15, 60) : uniform(random, -50, -15);
    plan.longitudeDeg = uniform(random, -180, 180);
    plan.elevationM = Math.round(logUniform(random, 5, 2500));
    plan.temperatureC = Math.round(uniform(random, -12, 22));
    plan.pressureHpa =
        Math.round(1013.25 * Math.exp(-plan.elevationM / 8300) + 8 * random.nextGaussian());
    // In the evening of local mean solar time, so that the log lies within one night.
    plan.start =
        LocalDate.of(2022, 1, 1)
            .plusDays(random.nextInt(2000))
            .atStartOfDay()
            .toInstant(ZoneOffset.UTC)
            .plusSeconds(Math.round((uniform(random, 18, 22.5) - plan.longitudeDeg / 15) * 3600));

    double polar = logUniform(random, 0.2, 20);
    double angle = uniform(random, 0, 2 * Math.PI);
    plan.azimuthArcmin = polar * Math.cos(angle) / Math.cos(Math.toRadians(plan.latitudeDeg));
    plan.altitudeArcmin = polar * Math.sin(angle);
    plan.rateErrorArcsecPerMinuteAxis = 0.3 * random.nextGaussian();

    double period = uniform(random, 180, 640);
    int teeth = (int) Math.round(SkyPath.SIDEREAL_DAY_SECONDS / period);
    plan.gears.add(worm(random, teeth, logUniform(random, 0.3, 12)));

    plan.rateRatio = 1 + 0.02 * random.nextGaussian();
    plan.controllerKnowsRate = random.nextBoolean();
    plan.eastLessWest = 0.007 * random.nextGaussian();
    plan.northLessSouth = 0.007 * random.nextGaussian();
    plan.latencySeconds = uniform(random, 0.01, 0.12);
    plan.delaySeconds = uniform(random, 0, 0.08);
    plan.decAfterRa = random.nextDouble() < 0.3;
    plan.waitsForPulse = random.nextDouble() < 0.3;

    plan.playArcsec = random.nextDouble() < 0.4 ? 0 : logUniform(random, 0.05, 2);
    plan.playStart = uniform(random, -1, 1);

    plan.raWander = logUniform(random, 0.003, 0.05);
    plan.decWander = plan.raWander * logUniform(random, 0.5, 2);

    plan.raNoise = logUniform(random, 0.1, 1.5);
    plan.decNoise = plan.raNoise * uniform(random, 0.8, 1.25);
    plan.airShare = uniform(random, 0.2, 0.9);
    plan.airMemorySeconds = logUniform(random, 0.02, 0.15);
    plan.cameraAngleDeg = 0.5 * random.nextGaussian();
    plan.seeingFwhmArcsec = logUniform(random, 1.4, 4.5);

    plan.cadenceSeconds = Math.max(0.3, Math.min(20, 2.5 * Math.exp(0.75 * random.nextGaussian())));
    plan.exposureShare = uniform(random, 0.5, 0.92);
    plan.jitterShare = random.nextBoolean() ? 0 : uniform(random, 0, 0.02);

    plan.imagingSeconds = pick(random, 60, 120, 180, 300, 300, 600);
    double kind = random.nextDouble();
    plan.dithering = kind < 0.25 ? Dithering.NONE : kind < 0.65 ? Dithering.SMALL : Dithering.LARGE;
    plan.ditherShiftLogged = random.nextDouble() < 0.75;
    plan.settlingLogged = random.nextDouble() < 0.7;

    plan.ra.gain = uniform(random, 0.1, 1.2);
    plan.dec.gain = uniform(random, 0.1, 1.2);
    plan.ra.deadbandArcsec = random.nextDouble() < 0.3 ? 0 : -uniform(random, 0, 0.8);
    plan.dec.deadbandArcsec = random.nextDouble() < 0.3 ? 0 : -uniform(random, 0, 1);
    plan.ra.longestMs = logUniform(random, 300, 3000);
    plan.dec.longestMs = logUniform(random, 300, 3000);
    plan.ra.shortestMs = random.nextBoolean() ? 0 : Math.round(uniform(random, 1, 30));
    plan.dec.shortestMs = plan.ra.shortestMs;

    plan.hoursAsked = logUniform(random, 0.5, 6);
    plan.runsAsked = random.nextInt(1, 4);

    plan.timeMark = random.nextDouble() < 0.6 ? "middle" : random.nextBoolean() ? "start" : "end";
    plan.offsetDecimals = random.nextInt(2, 4);
    plan.timeDecimals = random.nextInt(2, 4);
    plan.teethDeclared = random.nextDouble() < 0.8;
    plan.weatherDeclared = random.nextDouble() < 0.7;
    plan.gearsDeclared = random.nextBoolean();
    plan.guideFocalMm = random.nextInt(160, 800);
    plan.imagingFocalMm = random.nextInt(350, 2000);
    plan.offAxis = random.nextBoolean();
    return plan;
  }

  static Gear worm(RandomGenerator random, int teeth, double amplitude) {
    return gear(random, "worm", SkyPath.SIDEREAL_DAY_SECONDS / teeth, amplitude);
  }

  static Gear gear(RandomGenerator random, String name, double periodSeconds, double amplitude) {
    double[] amplitudes = new double[4];
    double[] phases = new double[4];
    for (int k = 0; k < 4; k++) {
      amplitudes[k] =
          k == 0 ? amplitude : amplitude * uniform(random, 0, 0.5) / ((k + 1) * (k + 1) / 3.0);
      phases[k] = uniform(random, 0, 2 * Math.PI);
    }
    return new Gear(name, periodSeconds, amplitudes, phases);
  }

  /** Turns wishes into what is played: all that hangs on other fields is worked out here. */
  NightPlan settle() {
    RandomGenerator random = streams.of("settle");
    settleRates(random);
    stepSeconds = cadenceSeconds < 1 ? 0.025 : 0.05;
    exposureSeconds = cadenceSeconds * exposureShare;
    settleRuns(random);
    settleOneWay(random);
    settleNoise();
    settleLoop(random);
    settleDithers(random);
    firstEastArcsec = raNoise * random.nextGaussian();
    firstNorthArcsec = decNoise * random.nextGaussian();
    return this;
  }

  private void settleRates(RandomGenerator random) {
    do {
      declaredGuideRate = pick(random, 0.25, 0.3, 0.4, 0.5, 0.5, 0.6, 0.75, 0.9, 1.0);
    } while (declaredGuideRate * rateRatio > 1.1 || declaredGuideRate * rateRatio < 0.2);
    double raRate = declaredGuideRate * rateRatio * (1 + 0.01 * random.nextGaussian());
    double decRate = declaredGuideRate * rateRatio * (1 + 0.01 * random.nextGaussian());
    eastRate = raRate * (1 + eastLessWest / 2);
    westRate = raRate * (1 - eastLessWest / 2);
    northRate = decRate * (1 + northLessSouth / 2);
    southRate = decRate * (1 - northLessSouth / 2);
    double known = raRate * (1 + 0.03 * random.nextGaussian());
    believedGuideRate = controllerKnowsRate ? known : declaredGuideRate;
  }

  SkyPath skyPath() {
    return new SkyPath(
        latitudeDeg, azimuthArcmin * 60, altitudeArcmin * 60, pressureHpa, temperatureC);
  }

  private void settleRuns(RandomGenerator random) {
    double hours = Math.min(hoursAsked, 20_000 * cadenceSeconds / 3600);
    int count = Math.max(1, Math.min(runsAsked, (int) (hours * 60 / shortestRunMinutes)));
    double[] minutes = new double[count];
    double sum = 0;
    for (int r = 0; r < count; r++) {
      minutes[r] = uniform(random, 0.5, 1.5);
      sum += minutes[r];
    }
    double from = 0;
    Pointing last = null;
    for (int r = 0; r < count; r++) {
      double length = minutes[r] / sum * hours * 60;
      length = Math.max(shortestRunMinutes, Math.min(longestRunMinutes, length)) * 60;
      double gap = uniform(random, 60, 900);
      from += r == 0 ? 0 : gap;
      Pointing next = null;
      if (last != null && random.nextDouble() < 0.6) {
        double hourAngle =
            last.hourAngleDeg
                + (from - last.startSeconds) * SkyPath.SIDEREAL_ARCSEC_PER_SECOND / 3600;
        Pointing on = new Pointing(from, length, last.declinationDeg, hourAngle, hourAngle < 0);
        next = isHigh(on) ? on : null;
      }
      for (int attempt = 0; next == null; attempt++) {
        double hourAngle = uniform(random, -90, 60);
        double low = attempt > 300 ? 0.6 : 1;
        double declination =
            Double.isNaN(decAskedDeg)
                ? Math.toDegrees(
                    Math.asin(
                        uniform(
                            random, -Math.sin(Math.toRadians(75)), Math.sin(Math.toRadians(75)))))
                : decAskedDeg;
        // Some mounts track on a little beyond the meridian before they are turned.
        boolean west = hourAngle < (random.nextDouble() < 0.2 ? 8 : 0);
        Pointing tried = new Pointing(from, length * low, declination, hourAngle, west);
        next = isHigh(tried) || attempt > 3000 ? tried : null;
      }
      runs.add(next);
      from += next.durationSeconds;
      last = next;
    }
  }

  /** At least 22 degrees up all the time: lower down, nobody photographs. */
  private boolean isHigh(Pointing run) {
    SkyPath path = new SkyPath(latitudeDeg, 0, 0, pressureHpa, temperatureC);
    for (int i = 0; i <= 12; i++) {
      double hourAngle =
          run.hourAngleDeg
              + run.durationSeconds * i / 12 * SkyPath.SIDEREAL_ARCSEC_PER_SECOND / 3600;
      double altitude =
          path.altitude(Math.toRadians(hourAngle), Math.toRadians(run.declinationDeg));
      if (Math.toDegrees(altitude) < 22) {
        return false;
      }
    }
    return true;
  }

  /** Whoever pushes one way only has a drift that goes one way: the axis is drawn to give one. */
  private void settleOneWay(RandomGenerator random) {
    for (int attempt = 0; decOneWay && attempt < 500 && turnsBackArcsec() > 2; attempt++) {
      double polar = logUniform(random, 3, 25);
      double angle = uniform(random, 0, 2 * Math.PI);
      azimuthArcmin = polar * Math.cos(angle) / Math.cos(Math.toRadians(latitudeDeg));
      altitudeArcmin = polar * Math.sin(angle);
    }
  }

  /** The most by which the steady drift in declination goes back on its way, of all runs. */
  private double turnsBackArcsec() {
    SkyPath path = skyPath();
    double most = 0;
    for (Pointing run : runs) {
      double hourAngle = Math.toRadians(run.hourAngleDeg);
      double declination = Math.toRadians(run.declinationDeg);
      double way = Math.signum(path.offset(hourAngle, declination, run.durationSeconds)[1]);
      double farthest = 0;
      for (int i = 1; i <= 40; i++) {
        double at = way * path.offset(hourAngle, declination, run.durationSeconds * i / 40)[1];
        farthest = Math.max(farthest, at);
        most = Math.max(most, farthest - at);
      }
    }
    return most;
  }

  private void settleNoise() {
    int points = Math.max(1, (int) Math.round(exposureSeconds / stepSeconds));
    double mean = Streams.deviationOfMean(airMemorySeconds, stepSeconds, points);
    airRa = raNoise * Math.sqrt(airShare) / mean;
    airDec = decNoise * Math.sqrt(airShare) / mean;
    centroidRa = raNoise * Math.sqrt(1 - airShare);
    centroidDec = decNoise * Math.sqrt(1 - airShare);
  }

  private void settleLoop(RandomGenerator random) {
    ra.deadbandArcsec = Math.abs(ra.deadbandArcsec) * raNoise;
    dec.deadbandArcsec = Math.abs(dec.deadbandArcsec) * decNoise;
    decDirections = new double[runs.size()];
    double widest = 0;
    double steepest = 0;
    for (int r = 0; r < runs.size(); r++) {
      Pointing run = runs.get(r);
      widest = Math.max(widest, Math.cos(Math.toRadians(run.declinationDeg)));
      double[] end =
          skyPath()
              .offset(
                  Math.toRadians(run.hourAngleDeg),
                  Math.toRadians(run.declinationDeg),
                  run.durationSeconds);
      steepest = Math.max(steepest, Math.hypot(end[0], end[1]) / run.durationSeconds);
      // A star that drifts north is followed by pushing the mount north.
      decDirections[r] = decOneWay ? Math.signum(end[1]) : 0;
    }
    double speed = 0;
    for (Gear gear : gears) {
      for (int k = 0; k < gear.amplitudesArcsecAxis.length; k++) {
        speed += gear.amplitudesArcsecAxis[k] * 2 * Math.PI * (k + 1) / gear.periodSeconds;
      }
    }
    double raPerFrame = (speed * widest + 2 * steepest + 0.01) * cadenceSeconds;
    double decPerFrame = (2 * steepest + 0.01) * cadenceSeconds;
    calm(ra, raPerFrame, Math.max(eastRate, westRate));
    calm(dec, decPerFrame, Math.max(northRate, southRate));
    limit(random, ra, raPerFrame, raNoise, eastRate, true);
    limit(random, dec, decPerFrame, decNoise, northRate, false);
    if (tightLimit == 0 && random.nextBoolean()) {
      // Most programs have one limit for both axes.
      ra.longestMs = Math.max(ra.longestMs, dec.longestMs);
      dec.longestMs = ra.longestMs;
    }
  }

  /** No user guides a whole night with a loop that swings by itself, or that lets the star go. */
  private void calm(Controller.Settings axis, double perFrame, double rate) {
    double dead = latencySeconds + delaySeconds - cadenceSeconds * (1 - exposureShare);
    int delay = dead <= 0 ? 0 : (int) Math.ceil(dead / cadenceSeconds);
    double most = Math.min(1.2, 0.7 * 2 * Math.sin(Math.PI / (2 * (2 * delay + 1))));
    if (axis.law != Law.PROPORTIONAL) {
      most *= 0.6;
    }
    double least = Math.min(most, perFrame / 6);
    double ratio = rate / believedGuideRate;
    axis.gain = Math.max(least, Math.min(most, axis.gain * ratio)) / ratio;
    axis.integralGain *= axis.gain;
  }

  private void limit(
      RandomGenerator random,
      Controller.Settings axis,
      double perFrame,
      double noise,
      double rate,
      boolean isRa) {
    double narrowest = 1;
    if (isRa) {
      for (Pointing run : runs) {
        narrowest = Math.min(narrowest, Math.cos(Math.toRadians(run.declinationDeg)));
      }
    }
    double arcsecPerMs = rate * SkyPath.SIDEREAL_ARCSEC_PER_SECOND * narrowest / 1000;
    if (tightLimit > 0) {
      axis.longestMs = tightLimit * noise * uniform(random, 0.8, 1.2) / arcsecPerMs;
    }
    double enough = 2 * perFrame / arcsecPerMs;
    axis.longestMs = Math.round(Math.min(Math.max(axis.longestMs, enough), 900 * cadenceSeconds));
    axis.shortestMs = Math.min(axis.shortestMs, axis.longestMs / 4);
  }

  private void settleDithers(RandomGenerator random) {
    if (dithering != Dithering.NONE) {
      ditherArcsec =
          dithering == Dithering.SMALL ? uniform(random, 0.5, 3) : logUniform(random, 4, 20);
      long images = Math.max(1, Math.round(uniform(random, 240, 900) / imagingSeconds));
      ditherEverySeconds = images * (imagingSeconds + 8) + 40;
    }
    settledArcsec = uniform(random, 2.5, 4) * Math.hypot(raNoise, decNoise);
  }

  NightPlan copy() {
    NightPlan copy = new NightPlan();
    for (java.lang.reflect.Field field : NightPlan.class.getDeclaredFields()) {
      if (!java.lang.reflect.Modifier.isStatic(field.getModifiers())) {
        try {
          field.set(copy, field.get(this));
        } catch (IllegalAccessException impossible) {
          throw new AssertionError(impossible);
        }
      }
    }
    copy.ra = ra.copy();
    copy.dec = dec.copy();
    copy.gears = new ArrayList<>(gears);
    copy.runs = new ArrayList<>(runs);
    copy.decDirections = decDirections.clone();
    return copy;
  }
}
