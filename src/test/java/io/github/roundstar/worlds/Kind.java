package io.github.roundstar.worlds;

import static io.github.roundstar.worlds.Streams.logUniform;
import static io.github.roundstar.worlds.Streams.sign;
import static io.github.roundstar.worlds.Streams.uniform;

import io.github.roundstar.worlds.Images.Listing;
import java.util.List;
import java.util.Optional;
import java.util.random.RandomGenerator;

/**
 * Nights that a decision is judged on: each kind has a trouble of its own, about as large as
 * matters, sometimes less and sometimes more. What a night needs is found by playing it, not by its
 * kind. All else is drawn anew for every seed.
 */
public enum Kind {
  /** Nothing is wrong. */
  SOUND,
  /** A worm that a gain of 0.25 hardly follows. */
  WORM_GAIN_LOW(0.25, 1, 2.4),
  /** A worm that a gain of 0.4 hardly follows. */
  WORM_GAIN_MIDDLING(0.4, 0.9, 2),
  /** A worm that a gain of 0.8 follows as well as any. */
  WORM_GAIN_RIGHT(0.8, 0.4, 1.4),
  /** A gear too quick for any gain. */
  WORM_NO_GAIN_CURES,
  /** The polar axis 80 arcmin off, corrections weak. */
  AXIS_FAR_OFF,
  /** Play in declination, still air. */
  PLAY_CALM,
  /** Play in declination, gusts. */
  PLAY_WINDY,
  /** Both axes out of balance: pulses unlike, rate dragged. */
  IMBALANCE,
  /** A guide scope that bends; its own log is good. */
  FLEXURE,
  /** Optics that draw stars out; the log is good. */
  OPTICS,
  /** Colours drawn out along the vertical; the log is good. */
  DISPERSION,
  /** Images begin before the star has settled. */
  SETTLING_TOO_SHORT,
  /** Nothing but noise and air. */
  NOISE_BOUND,
  /** Two of the other kinds at once. */
  PAIR;

  /** Pairs draw from these. */
  private static final List<Kind> TROUBLES =
      List.of(
          WORM_GAIN_LOW,
          WORM_GAIN_MIDDLING,
          WORM_NO_GAIN_CURES,
          AXIS_FAR_OFF,
          PLAY_CALM,
          PLAY_WINDY,
          IMBALANCE,
          FLEXURE,
          OPTICS,
          DISPERSION,
          SETTLING_TOO_SHORT);

  private final double gain;
  private final double least;
  private final double most;

  Kind() {
    this(Double.NaN, 0, 0);
  }

  Kind(double gain, double least, double most) {
    this.gain = gain;
    this.least = least;
    this.most = most;
  }

  /**
   * A night with what its owner has.
   *
   * @param listing what the list of exposures tells; nothing where there is no list
   */
  public record Drawn(Kind kind, long seed, WorldNight night, Optional<Listing> listing) {
    /** Long axis over short that counts as round. */
    public double limit() {
      double said = night.plan().elongationLimit;
      return Double.isNaN(said) ? USUAL_LIMIT : said;
    }

    /** The list of exposures as text. */
    public Optional<String> exposureList() {
      return listing.map(how -> night.images().list(night.exposures(), how));
    }

    @Override
    public String toString() {
      return kind + " seed " + seed;
    }
  }

  /** A star of axis ratio 1.15 still passes for round: common practice, no source. */
  public static final double USUAL_LIMIT = 1.15;

  /** The night of this kind with this seed. */
  public Drawn night(long seed) {
    return drawn(seed, plan(seed));
  }

  /** The same, but the owner may have set a limit to the RMS of either axis. */
  public Drawn withAnyNeed(long seed) {
    NightPlan plan = plan(seed);
    RandomGenerator random = plan.streams.of("need");
    if (random.nextDouble() < 0.3) {
      plan.rmsLimitArcsec = Math.round(logUniform(random, 0.2, 1.5) * 100) / 100.0;
    }
    return drawn(seed, plan);
  }

  private Drawn drawn(long seed, NightPlan plan) {
    RandomGenerator random = plan.streams.of("listing");
    int form = random.nextInt(3);
    boolean images = plan.opticsVariance > 0 || plan.dispersionArcsec > 0 || bends(plan);
    Optional<Listing> listing =
        images || form == 2
            ? Optional.of(Listing.SHAPES)
            : form == 1 || !Double.isNaN(plan.pauseSeconds)
                ? Optional.of(Listing.TIMES)
                : Optional.empty();
    return new Drawn(this, seed, WorldNight.play(World.PLAIN, seed, plan), listing);
  }

  private static boolean bends(NightPlan plan) {
    return plan.bendDecArcsecPerHour != 0 || plan.bendRaArcsecPerHour != 0;
  }

  private NightPlan plan(long seed) {
    Streams streams = new Streams("decision " + name(), seed);
    NightPlan plan = NightPlan.draw(streams);
    plan.label = name();
    sound(plan, streams.of("sound"));
    List<Kind> troubles = troubles(streams.of("troubles"));
    RandomGenerator random = streams.of("kind");
    troubles.forEach(kind -> kind.bend(plan, random));
    plan.settle();
    // After that, since no owner would guide so, and settle() holds to what owners do.
    troubles.forEach(kind -> kind.loop(plan, random));
    return plan;
  }

  private List<Kind> troubles(RandomGenerator random) {
    if (this != PAIR) {
      return List.of(this);
    }
    Kind one = TROUBLES.get(random.nextInt(TROUBLES.size()));
    Kind other = one;
    while (other == one) {
      other = TROUBLES.get(random.nextInt(TROUBLES.size()));
    }
    return List.of(one, other);
  }

  /** A mount that is good enough for its camera, looked after with sense. */
  private static void sound(NightPlan plan, RandomGenerator random) {
    plan.hoursAsked = logUniform(random, 1, 3.5);
    plan.runsAsked = random.nextInt(1, 3);
    plan.cadenceSeconds = Math.max(1, Math.min(6, plan.cadenceSeconds));
    plan.imagingSeconds = Streams.pick(random, 60, 90, 120, 180, 240, 300, 300, 480);
    plan.imagingFocalMm = random.nextInt(350, 1200);
    double core = plan.seeingFwhmArcsec / 2.3548;
    plan.raNoise = Math.min(plan.raNoise, 0.45 * core);
    plan.decNoise = plan.raNoise * uniform(random, 0.85, 1.15);
    plan.raWander = Math.min(plan.raWander, 0.03 * core);
    plan.decWander = plan.raWander * uniform(random, 0.7, 1.4);
    plan.playArcsec = Math.min(plan.playArcsec, 0.3);
    plan.gears.clear();
    int teeth = random.nextInt(135, 400);
    plan.gears.add(NightPlan.worm(random, teeth, logUniform(random, 0.2, 1)));
    plan.ra.gain = uniform(random, 0.5, 0.75);
    plan.dec.gain = uniform(random, 0.4, 0.7);
    plan.ra.deadbandArcsec = -uniform(random, 0, 0.4);
    plan.dec.deadbandArcsec = -uniform(random, 0, 0.5);
    polar(plan, random, logUniform(random, 0.3, 4));
    plan.starPlaceDeclared = random.nextDouble() < 0.75;
    if (plan.offAxis) {
      double scale = 206.264806247 * 3.8 / plan.imagingFocalMm;
      plan.starNorthArcmin = scale * 2000 / 60 + uniform(random, 2, 6);
    }
    if (random.nextDouble() < 0.2) {
      plan.elongationLimit = Math.round(uniform(random, 1.1, 1.25) * 100) / 100.0;
    }
  }

  private static void polar(NightPlan plan, RandomGenerator random, double arcmin) {
    double angle = uniform(random, 0, 2 * Math.PI);
    plan.azimuthArcmin = arcmin * Math.cos(angle) / Math.cos(Math.toRadians(plan.latitudeDeg));
    plan.altitudeArcmin = arcmin * Math.sin(angle);
  }

  /** RMS along one axis that draws a star out to the limit: elongation^2 = 1 + (rms / core)^2. */
  private static double bearable(NightPlan plan) {
    double limit = Double.isNaN(plan.elongationLimit) ? USUAL_LIMIT : plan.elongationLimit;
    return plan.seeingFwhmArcsec / 2.3548 * Math.sqrt(limit * limit - 1);
  }

  /** Mean square of a unit sinusoid about its mean over an image. */
  private static double seen(double imageSeconds, double periodSeconds) {
    double x = Math.PI * imageSeconds / periodSeconds;
    double sinc = Math.sin(x) / x;
    return 0.5 * (1 - sinc * sinc);
  }

  private void bend(NightPlan plan, RandomGenerator random) {
    switch (this) {
      case SOUND, PAIR -> {}
      case WORM_GAIN_LOW, WORM_GAIN_MIDDLING, WORM_GAIN_RIGHT -> {
        plan.cadenceSeconds = Math.max(1.5, plan.cadenceSeconds);
        plan.imagingSeconds = Math.max(plan.imagingSeconds, 120);
        double period = plan.gears.get(0).periodSeconds();
        double times = logUniform(random, least, most);
        // A loop with this gain lets through speed times cadence / gain.
        double through = 2 * Math.PI / period * plan.cadenceSeconds / gain;
        double amplitude =
            times * bearable(plan) / Math.sqrt(seen(plan.imagingSeconds, period)) / through / 0.8;
        worm(plan, random, Math.min(40, amplitude));
      }
      case WORM_NO_GAIN_CURES -> {
        plan.cadenceSeconds = Math.max(3, plan.cadenceSeconds);
        double quick = plan.cadenceSeconds * uniform(random, 4, 7);
        double amplitude = 1.414 * bearable(plan) * logUniform(random, 1.1, 3) / 0.8;
        double period = plan.gears.get(0).periodSeconds();
        if (random.nextBoolean()) {
          int order = (int) Math.round(period / quick);
          double[] amplitudes = new double[order];
          double[] phases = new double[order];
          NightPlan.Gear worm = plan.gears.get(0);
          for (int k = 0; k < Math.min(4, order); k++) {
            amplitudes[k] = worm.amplitudesArcsecAxis()[k];
            phases[k] = worm.phasesRad()[k];
          }
          amplitudes[order - 1] = amplitude;
          plan.gears.set(0, new NightPlan.Gear("worm", period, amplitudes, phases));
        } else {
          plan.gears.add(
              new NightPlan.Gear(
                  "pinion",
                  quick,
                  new double[] {amplitude},
                  new double[] {uniform(random, 0, 2 * Math.PI)}));
        }
      }
      case AXIS_FAR_OFF -> polar(plan, random, uniform(random, 60, 100));
      case PLAY_CALM -> play(plan, random);
      case PLAY_WINDY -> {
        play(plan, random);
        plan.gustsPerHour = logUniform(random, 10, 90);
        plan.gustArcsec = bearable(plan) * logUniform(random, 1, 6);
      }
      case IMBALANCE -> {
        plan.eastLessWest = sign(random) * uniform(random, 0.3, 1.6);
        plan.northLessSouth = sign(random) * uniform(random, 0.1, 1.8);
        plan.dragArcsecPerMinuteAxis = sign(random) * logUniform(random, 1, 8);
        double period = plan.gears.get(0).periodSeconds();
        double through = 2 * Math.PI / period * plan.cadenceSeconds / plan.ra.gain;
        double heard = Math.sqrt(seen(plan.imagingSeconds, period));
        worm(
            plan,
            random,
            Math.min(30, logUniform(random, 0.2, 1) * bearable(plan) / heard / through / 0.8));
      }
      case FLEXURE -> {
        plan.offAxis = false;
        plan.starNorthArcmin = 0;
        double trail = 3.46 * bearable(plan) * logUniform(random, 0.8, 3);
        double perHour = Math.min(120, trail * 3600 / plan.imagingSeconds);
        double angle = uniform(random, 0, 2 * Math.PI);
        plan.bendRaArcsecPerHour = perHour * Math.sin(angle);
        plan.bendDecArcsecPerHour = perHour * Math.cos(angle);
      }
      case OPTICS -> {
        double rms = bearable(plan) * logUniform(random, 0.5, 2.5);
        plan.opticsVariance = rms * rms;
        plan.opticsAngleDeg = uniform(random, 0, 180);
      }
      case DISPERSION -> plan.dispersionArcsec = bearable(plan) * logUniform(random, 0.25, 1.6);
      case SETTLING_TOO_SHORT -> {
        plan.dithering = NightPlan.Dithering.LARGE;
        plan.pauseSeconds = uniform(random, 1, 4);
        plan.imagingSeconds = Streams.pick(random, 30, 45, 60, 90, 120);
        plan.cadenceSeconds = Math.max(2, plan.cadenceSeconds);
        plan.ra.gain = uniform(random, 0.15, 0.35);
        plan.dec.gain = uniform(random, 0.15, 0.35);
      }
      case NOISE_BOUND -> {
        double core = plan.seeingFwhmArcsec / 2.3548;
        plan.raNoise = core * uniform(random, 0.6, 1);
        plan.decNoise = plan.raNoise * uniform(random, 0.9, 1.1);
        worm(plan, random, logUniform(random, 0.1, 0.5));
      }
      default -> throw new AssertionError(this);
    }
  }

  /** Play that swings: nothing leans on one flank for long. */
  private static void play(NightPlan plan, RandomGenerator random) {
    plan.playArcsec = logUniform(random, 2, 20);
    plan.decWander *= logUniform(random, 1, 4);
    polar(plan, random, logUniform(random, 0.2, 2));
  }

  /** What belongs to the trouble: gains as the motors do them, dithers after every few images. */
  private void loop(NightPlan plan, RandomGenerator random) {
    if (this == SETTLING_TOO_SHORT) {
      plan.ditherEverySeconds = random.nextInt(1, 5) * (plan.imagingSeconds + 8) + 75;
    }
    double ratio = (plan.eastRate + plan.westRate) / 2 / plan.believedGuideRate;
    if (!Double.isNaN(gain)) {
      plan.ra.gain = gain / ratio;
    } else if (this == AXIS_FAR_OFF) {
      plan.ra.gain = 0.25 / ratio;
      plan.dec.gain = 0.25 / ratio;
    }
  }

  private static void worm(NightPlan plan, RandomGenerator random, double amplitude) {
    NightPlan.Gear worm = plan.gears.get(0);
    int teeth = (int) Math.round(SkyPath.SIDEREAL_DAY_SECONDS / worm.periodSeconds());
    plan.gears.set(0, NightPlan.worm(random, teeth, amplitude));
  }
}
