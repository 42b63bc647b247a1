package io.github.roundstar.worlds;

import static io.github.roundstar.worlds.Streams.logUniform;
import static io.github.roundstar.worlds.Streams.sign;
import static io.github.roundstar.worlds.Streams.uniform;

import io.github.roundstar.worlds.Controller.Law;
import java.util.random.RandomGenerator;

/**
 * The kinds of night. A world fixes what its name says; all else is drawn anew for every seed:
 * site, pointing, polar axis, worm, guide rate, wander, noise, cadence, dithers, controller,
 * length.
 */
public enum World {
  /** Nights as they come. */
  PLAIN,
  /** The set point never moves. */
  NO_DITHERS,
  /** Guide rate 20 % above or below the declared one. */
  GUIDE_RATE_OFF_BY_A_FIFTH,
  /** Guide rate twice or half the declared one, with dithers. */
  GUIDE_RATE_OFF_BY_TWO_WITH_DITHERS,
  /** Guide rate twice or half the declared one, without dithers. */
  GUIDE_RATE_OFF_BY_TWO_WITHOUT_DITHERS,
  /** Pulses to the east move five per cent more or less than pulses to the west. */
  EAST_WEST_UNLIKE,
  /** Frames come unevenly and some are lost, as rows marked so or as missing rows. */
  UNEVEN_CADENCE_LOST_FRAMES,
  /** Pulses act 0.1 to 0.8 s after they were commanded. */
  LATE_PULSES,
  /** Noise remembers itself for 0.3 to 3 s. */
  NOISE_MEMORY,
  /** Noise grows or falls by a factor of two over the night. */
  NOISE_CHANGING,
  /** Noise of each frame is Student's t with four degrees of freedom. */
  HEAVY_TAILS,
  /** Wander that stays within bounds. */
  BOUNDED_WANDER,
  /** Wander with a 1/f spectrum. */
  FLICKER_WANDER,
  /** The worm's phase and amplitude shiver. */
  SHIVERING_WORM,
  /** Three gears without a common period. */
  THREE_GEARS,
  /** Declination play of 0.3 to 12 arcsec, from any start. */
  PLAY,
  /** Declination sticks and slips. */
  STICKING,
  /** Controllers with a low-pass filter. */
  LOW_PASS,
  /** Declination turns round only after two to five offsets in a row ask for it. */
  DEC_VOTES,
  /** Controllers with an integral part. */
  INTEGRAL,
  /** Pulse limits so short, and shortest pulses so long, that both matter. */
  PULSE_LIMITS,
  /** The set point moves and the log does not tell. */
  UNLOGGED_MOVES,
  /** Three to ten runs of 12 to 40 minutes. */
  SHORT_RUNS,
  /** A frame every 20 s. */
  SLOW_CADENCE,
  /** Frames every 0.3 to 0.6 s. */
  FAST_CADENCE,
  /** Sites south of the equator. */
  SOUTHERN_SKY,
  /** Declination 73 to 75 degrees from the equator, on the side of the elevated pole. */
  DECLINATION_75,
  /** The guide scope bends against the main one. */
  BENDING_GUIDE_SCOPE,
  /** Gusts. */
  GUSTS,
  /** Declination pulses in one direction only, against the drift. */
  DEC_ONE_WAY,
  /** Two to four of the other worlds at once. */
  SEVERAL_AT_ONCE,
  /** A mount without periodic error. */
  SOUND_MOUNT;

  /** The night of this world with this seed; equal seeds give equal nights. */
  public WorldNight night(long seed) {
    return WorldNight.play(this, seed, plan(seed));
  }

  NightPlan plan(long seed) {
    Streams streams = new Streams(name(), seed);
    NightPlan plan = NightPlan.draw(streams);
    bend(plan, streams.of("world"));
    return plan.settle();
  }

  private void bend(NightPlan plan, RandomGenerator random) {
    switch (this) {
      case PLAIN -> {}
      case NO_DITHERS -> plan.dithering = NightPlan.Dithering.NONE;
      case GUIDE_RATE_OFF_BY_A_FIFTH -> plan.rateRatio *= random.nextBoolean() ? 1.2 : 0.8;
      case GUIDE_RATE_OFF_BY_TWO_WITH_DITHERS -> {
        plan.rateRatio *= random.nextBoolean() ? 2 : 0.5;
        plan.dithering =
            random.nextBoolean() ? NightPlan.Dithering.SMALL : NightPlan.Dithering.LARGE;
      }
      case GUIDE_RATE_OFF_BY_TWO_WITHOUT_DITHERS -> {
        plan.rateRatio *= random.nextBoolean() ? 2 : 0.5;
        plan.dithering = NightPlan.Dithering.NONE;
      }
      case EAST_WEST_UNLIKE -> plan.eastLessWest = 0.05 * sign(random);
      case UNEVEN_CADENCE_LOST_FRAMES -> {
        plan.jitterShare = uniform(random, 0.05, 0.4);
        plan.lostSpellsPerHour = logUniform(random, 3, 60);
        plan.lostFrames = uniform(random, 1, 6);
        plan.lostRowsMissing = random.nextBoolean();
      }
      case LATE_PULSES -> plan.delaySeconds = uniform(random, 0.1, 0.8);
      case NOISE_MEMORY -> {
        plan.airMemorySeconds = logUniform(random, 0.3, 3);
        plan.airShare = uniform(random, 0.6, 0.95);
      }
      case NOISE_CHANGING -> {
        boolean grows = random.nextBoolean();
        plan.noiseAtStart = grows ? Math.sqrt(0.5) : Math.sqrt(2);
        plan.noiseAtEnd = 1 / plan.noiseAtStart;
      }
      case HEAVY_TAILS -> {
        plan.student = true;
        plan.airShare = uniform(random, 0, 0.15);
      }
      case BOUNDED_WANDER -> {
        plan.wander = Wander.BOUNDED;
        plan.raWander = logUniform(random, 0.1, 1.2);
        plan.decWander = plan.raWander * logUniform(random, 0.5, 2);
        plan.wanderMemorySeconds = logUniform(random, 15, 400);
      }
      case FLICKER_WANDER -> {
        plan.wander = Wander.FLICKER;
        plan.raWander = logUniform(random, 0.04, 0.5);
        plan.decWander = plan.raWander * logUniform(random, 0.5, 2);
      }
      case SHIVERING_WORM -> {
        plan.shiverRad = logUniform(random, 0.05, 0.5);
        plan.shiverShare = uniform(random, 0, 0.25);
      }
      case THREE_GEARS -> {
        double worm = plan.gears.get(0).periodSeconds();
        double amplitude = plan.gears.get(0).amplitudesArcsecAxis()[0];
        plan.gears.add(
            NightPlan.gear(
                random,
                "second",
                worm * uniform(random, 0.55, 0.83),
                amplitude * logUniform(random, 0.3, 1)));
        plan.gears.add(
            NightPlan.gear(
                random,
                "third",
                worm * uniform(random, 0.12, 0.42),
                amplitude * logUniform(random, 0.1, 0.6)));
      }
      case PLAY -> plan.playArcsec = logUniform(random, 0.3, 12);
      case STICKING -> {
        plan.playArcsec = 0;
        plan.stickArcsec = logUniform(random, 0.3, 4);
        plan.slipToArcsec = plan.stickArcsec * uniform(random, 0, 0.7);
      }
      case LOW_PASS -> {
        plan.ra.law = Law.LOW_PASS;
        plan.dec.law = Law.LOW_PASS;
        plan.ra.newestShare = uniform(random, 0.3, 0.8);
        plan.dec.newestShare = uniform(random, 0.3, 0.8);
      }
      case DEC_VOTES -> plan.dec.votes = random.nextInt(2, 6);
      case INTEGRAL -> {
        plan.ra.law = Law.INTEGRAL;
        plan.dec.law = Law.INTEGRAL;
        plan.ra.integralGain = uniform(random, 0.03, 0.25);
        plan.dec.integralGain = uniform(random, 0.03, 0.25);
      }
      case PULSE_LIMITS -> {
        plan.tightLimit = uniform(random, 0.4, 1.5);
        plan.ra.shortestMs = Math.round(uniform(random, 10, 80));
        plan.dec.shortestMs = Math.round(uniform(random, 10, 80));
      }
      case UNLOGGED_MOVES -> plan.unloggedMovesPerHour = uniform(random, 1, 8);
      case SHORT_RUNS -> {
        plan.runsAsked = random.nextInt(3, 11);
        plan.shortestRunMinutes = 12;
        plan.longestRunMinutes = 40;
        plan.hoursAsked = plan.runsAsked * uniform(random, 14, 36) / 60;
      }
      case SLOW_CADENCE -> plan.cadenceSeconds = 20;
      case FAST_CADENCE -> plan.cadenceSeconds = uniform(random, 0.3, 0.6);
      case SOUTHERN_SKY -> plan.latitudeDeg = uniform(random, -55, -12);
      case DECLINATION_75 -> {
        plan.latitudeDeg =
            Math.copySign(Math.max(30, Math.abs(plan.latitudeDeg)), plan.latitudeDeg);
        plan.decAskedDeg = Math.copySign(uniform(random, 73, 75), plan.latitudeDeg);
      }
      case BENDING_GUIDE_SCOPE -> {
        plan.offAxis = false;
        plan.bendRaArcsecPerHour = sign(random) * logUniform(random, 1, 25);
        plan.bendDecArcsecPerHour = sign(random) * logUniform(random, 1, 25);
      }
      case GUSTS -> {
        plan.gustsPerHour = logUniform(random, 4, 60);
        plan.gustArcsec = logUniform(random, 0.8, 5);
      }
      case DEC_ONE_WAY -> plan.decOneWay = true;
      case SEVERAL_AT_ONCE -> {
        World[] all = values();
        int wanted = random.nextInt(2, 5);
        int taken = 0;
        while (taken < wanted) {
          World other = all[1 + random.nextInt(all.length - 1)];
          if (other != SEVERAL_AT_ONCE && !plan.bentBy.contains(other)) {
            plan.bentBy.add(other);
            other.bend(plan, random);
            taken++;
          }
        }
      }
      case SOUND_MOUNT -> plan.gears.replaceAll(gear -> gear.times(0));
      default -> throw new AssertionError(this);
    }
    if (this != SEVERAL_AT_ONCE && !plan.bentBy.contains(this)) {
      plan.bentBy.add(this);
    }
  }
}
