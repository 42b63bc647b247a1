package io.github.roundstar.worlds;

import io.github.roundstar.worlds.NightPlan.Dithering;
import io.github.roundstar.worlds.NightPlan.Gear;
import io.github.roundstar.worlds.NightPlan.Pointing;
import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;

/**
 * Plays a plan: mount, air and camera advance in steps of {@code stepSeconds}, frame after frame is
 * exposed, measured, answered and logged. What moves the star without pulses is laid out before,
 * run by run, from streams of its own, so that it does not depend on what the controller does.
 */
final class Playthrough {
  private static final double TAIL_SECONDS = 40;
  private static final double IMAGE_STEP_SECONDS = 0.2;

  private final NightPlan plan;
  private final double step;
  private final double nightSeconds;
  final LogRows rows = new LogRows();
  final List<Truth.Run> runs = new ArrayList<>();
  final ImageMotion motion = new ImageMotion(IMAGE_STEP_SECONDS);
  final List<WorldNight.Exposure> exposures = new ArrayList<>();
  final StarTruth star = new StarTruth();

  private Playthrough(NightPlan plan) {
    this.plan = plan;
    this.step = plan.stepSeconds;
    Pointing last = plan.runs.get(plan.runs.size() - 1);
    this.nightSeconds = last.startSeconds() + last.durationSeconds();
  }

  static Playthrough of(NightPlan plan) {
    Playthrough played = new Playthrough(plan);
    for (int r = 0; r < plan.runs.size(); r++) {
      played.run(r);
    }
    return played;
  }

  /** What moves the star in one run without pulses, on the grid; arcsec, east and north. */
  private final class Unguided {
    final int points;
    final double[] steadyEast;
    final double[] steadyNorth;
    final double[] looseEast;
    final double[] looseNorth;
    final double[] periodicAxis;
    final double[] airEast;
    final double[] airNorth;
    final double wormAmplitude;
    final List<Double> gustTimes = new ArrayList<>();
    final double cos;
    final Pointing at;

    Unguided(int index) {
      at = plan.runs.get(index);
      cos = Math.cos(Math.toRadians(at.declinationDeg()));
      points = (int) Math.ceil((at.durationSeconds() + TAIL_SECONDS) / step) + 1;
      steadyEast = new double[points];
      steadyNorth = new double[points];
      steady();
      looseEast = new double[points];
      looseNorth = new double[points];
      wander(stream("wander east", index), plan.raWander, looseEast);
      wander(stream("wander north", index), plan.decWander, looseNorth);
      gusts(stream("gusts", index));
      periodicAxis = new double[points];
      wormAmplitude = periodic(index);
      airEast = new double[points];
      airNorth = new double[points];
      Streams.addForgetful(
          stream("air east", index), plan.airRa, plan.airMemorySeconds, step, airEast);
      Streams.addForgetful(
          stream("air north", index), plan.airDec, plan.airMemorySeconds, step, airNorth);
    }

    private void steady() {
      SkyPath path = plan.skyPath();
      double hourAngle = Math.toRadians(at.hourAngleDeg());
      double declination = Math.toRadians(at.declinationDeg());
      double nodeSeconds = 2;
      int perNode = (int) Math.round(nodeSeconds / step);
      double[] from = path.offset(hourAngle, declination, 0);
      for (int node = 0; node * perNode < points; node++) {
        double[] to = path.offset(hourAngle, declination, (node + 1) * perNode * step);
        for (int i = 0; i < perNode && node * perNode + i < points; i++) {
          int k = node * perNode + i;
          double share = (double) i / perNode;
          steadyEast[k] =
              from[0]
                  + share * (to[0] - from[0])
                  + (plan.rateErrorArcsecPerMinuteAxis + plan.dragArcsecPerMinuteAxis)
                      * cos
                      * k
                      * step
                      / 60;
          steadyNorth[k] = from[1] + share * (to[1] - from[1]);
        }
        from = to;
      }
    }

    private void wander(RandomGenerator random, double strength, double[] into) {
      switch (plan.wander) {
        case WALK -> Streams.addWalk(random, strength, step, into);
        case BOUNDED ->
            Streams.addForgetful(random, strength, plan.wanderMemorySeconds, step, into);
        case FLICKER -> Streams.addFlicker(random, strength, step, into);
        default -> throw new AssertionError(plan.wander);
      }
    }

    private void gusts(RandomGenerator random) {
      if (plan.gustsPerHour <= 0) {
        return;
      }
      double time = 0;
      while (true) {
        time += -Math.log(1 - random.nextDouble()) * 3600 / plan.gustsPerHour;
        if (time >= at.durationSeconds()) {
          return;
        }
        gustTimes.add(at.startSeconds() + time);
        double size = plan.gustArcsec * (0.3 - Math.log(1 - random.nextDouble()));
        double angle = Streams.uniform(random, 0, 2 * Math.PI);
        double rise = Streams.uniform(random, 0.1, 0.4);
        double fall = Streams.logUniform(random, 0.4, 5);
        int until = (int) Math.min(points, (time + 12 * fall) / step);
        for (int k = (int) Math.ceil(time / step); k < until; k++) {
          double age = k * step - time;
          double shape = (1 - Math.exp(-age / rise)) * Math.exp(-age / fall);
          looseEast[k] += size * Math.sin(angle) * shape;
          looseNorth[k] += size * Math.cos(angle) * shape;
        }
      }
    }

    /** Adds all gears; returns the amplitude of the worm's own period as a fit would see it. */
    private double periodic(int index) {
      RandomGenerator shiver = stream("shiver", index);
      double amplitude = 0;
      for (int g = 0; g < plan.gears.size(); g++) {
        Gear gear = plan.gears.get(g);
        double[] amplitudes = gear.amplitudesArcsecAxis();
        double axisDeg = at.hourAngleDeg() + (at.tubeWest() ? 0 : 180);
        double turnsPerRevolution = SkyPath.SIDEREAL_DAY_SECONDS / gear.periodSeconds();
        double atStart = 2 * Math.PI * turnsPerRevolution * axisDeg / 360;
        double speed = 2 * Math.PI / gear.periodSeconds();
        boolean trained = g == 0 && plan.wormTrained;
        boolean shivers = g == 0 && (plan.shiverRad > 0 || plan.shiverShare > 0);
        double perStep = plan.shiverRad * Math.sqrt(step / gear.periodSeconds());
        double kept = Math.exp(-step / gear.periodSeconds());
        double fresh = plan.shiverShare * Math.sqrt(1 - kept * kept);
        double phase = 0;
        double scale = shivers ? plan.shiverShare * shiver.nextGaussian() : 0;
        double[] alone = new double[points];
        for (int k = 0; k < points; k++) {
          double angle = atStart + speed * k * step + phase;
          alone[k] = (1 + scale) * turned(gear, angle);
          if (trained) {
            alone[k] -= turned(gear, angle - phase);
          }
          if (shivers) {
            phase += perStep * shiver.nextGaussian();
            scale = kept * scale + fresh * shiver.nextGaussian();
          }
        }
        if (g == 0) {
          int until = (int) (at.durationSeconds() / step);
          amplitude =
              shivers ? Truth.amplitude(alone, step, until, gear.periodSeconds()) : amplitudes[0];
        }
        for (int k = 0; k < points; k++) {
          periodicAxis[k] += alone[k];
        }
      }
      return amplitude;
    }

    /** Arcsec of axis at an angle of the gear. */
    private double turned(Gear gear, double angle) {
      double[] amplitudes = gear.amplitudesArcsecAxis();
      double sum = 0;
      for (int h = 0; h < amplitudes.length; h++) {
        if (amplitudes[h] != 0) {
          sum += amplitudes[h] * Math.sin((h + 1) * angle + gear.phasesRad()[h]);
        }
      }
      return sum;
    }

    double bend(double perHour, int k) {
      // Slower and slower, as a tube that settles while the load shifts.
      double hours = k * step / 3600;
      return perHour * hours / (1 + 0.15 * hours);
    }

    double east(int k) {
      return steadyEast[k] + looseEast[k] + cos * periodicAxis[k];
    }

    double north(int k) {
      return steadyNorth[k] + looseNorth[k];
    }
  }

  /** Where the star stands in both cameras, pulses included, grid point by grid point. */
  private final class Track {
    private final Unguided sky;
    private final Pulses raPulses;
    private final Pulses decPulses;
    private final DecGear gear;
    private final double side;
    private final double axisAtStart;
    private final double firstEast;
    private final double firstNorth;
    private double raMoved;
    final double[] east;
    final double[] north;
    final double[] mainEast;
    final double[] mainNorth;
    int done;

    Track(Unguided sky, Pulses raPulses, Pulses decPulses, DecGear gear) {
      this.sky = sky;
      this.raPulses = raPulses;
      this.decPulses = decPulses;
      this.gear = gear;
      side = sky.at.tubeWest() ? 1 : -1;
      axisAtStart = gear.axis();
      // The set point is where the star is when guiding begins, but for a slip of the first frame.
      firstEast = plan.firstEastArcsec - sky.east(0);
      firstNorth = plan.firstNorthArcsec - sky.north(0);
      east = new double[sky.points];
      north = new double[sky.points];
      mainEast = new double[sky.points];
      mainNorth = new double[sky.points];
      put(0, 0, axisAtStart);
    }

    /**
     * Moves on to the last grid point before {@code seconds}. The point after it is laid out too,
     * as it will be if no pulse is commanded meanwhile: exposures end between grid points.
     */
    void until(double seconds) {
      int whole = (int) (seconds / step);
      while (done < whole) {
        double before = done * step;
        raMoved += raPulses.moved(before, before + step);
        double axis = gear.turn(side * decPulses.moved(before, before + step));
        put(++done, raMoved, axis);
      }
      double now = done * step;
      put(
          done + 1,
          raMoved + raPulses.moved(now, now + step),
          gear.after(side * decPulses.moved(now, now + step)));
    }

    private void put(int k, double ra, double decAxis) {
      mainEast[k] = firstEast + sky.east(k) - sky.cos * ra;
      mainNorth[k] = firstNorth + sky.north(k) - side * (decAxis - axisAtStart);
      east[k] = mainEast[k] + sky.bend(plan.bendRaArcsecPerHour, k);
      north[k] = mainNorth[k] + sky.bend(plan.bendDecArcsecPerHour, k);
    }
  }

  private RandomGenerator stream(String cause, int run) {
    return plan.streams.of(cause + " " + run);
  }

  private void run(int index) {
    Unguided sky = new Unguided(index);
    Pointing at = sky.at;
    double cos = sky.cos;
    RandomGenerator eastCentroid = stream("centroid east", index);
    RandomGenerator northCentroid = stream("centroid north", index);
    RandomGenerator jitter = stream("jitter", index);
    RandomGenerator loss = stream("loss", index);
    DitherPlan dithers = new DitherPlan(index, at.durationSeconds());
    DecGear gear =
        new DecGear(
            plan.playArcsec,
            index == 0 ? plan.playStart : Streams.uniform(stream("flank", index), -1, 1),
            plan.stickArcsec,
            plan.slipToArcsec);
    double believed = plan.believedGuideRate * SkyPath.SIDEREAL_ARCSEC_PER_SECOND;
    Controller ra = new Controller(plan.ra, believed * cos);
    Controller.Settings decSettings = plan.dec.copy();
    if (decSettings.direction == 0) {
      decSettings.direction = plan.decDirections[Math.min(index, plan.decDirections.length - 1)];
    }
    Controller dec = new Controller(decSettings, believed);
    Pulses raPulses = new Pulses();
    Pulses decPulses = new Pulses();
    Track track = new Track(sky, raPulses, decPulses, gear);

    double turned = Math.toRadians(plan.cameraAngleDeg);
    double setEast = 0;
    double setNorth = 0;
    double fromSeconds = 0.3;
    int lostLeft = 0;
    int calmFrames = 3;
    double unsettledSince = Double.NaN;
    double settledAt = 0;
    List<Double> settledTimes = new ArrayList<>();
    NoiseSum noiseEast = new NoiseSum();
    NoiseSum noiseNorth = new NoiseSum();
    int firstStep = -1;
    int lastStep = 0;
    int frames = 0;

    while (fromSeconds + plan.exposureSeconds <= at.durationSeconds()) {
      double toSeconds = fromSeconds + plan.exposureSeconds;
      track.until(toSeconds);

      double nightTime = at.startSeconds() + 0.5 * (fromSeconds + toSeconds);
      if (lostLeft == 0
          && loss.nextDouble() < plan.lostSpellsPerHour * plan.cadenceSeconds / 3600) {
        lostLeft = 1 + (int) (-Math.log(1 - loss.nextDouble()) * plan.lostFrames);
      }
      boolean lost = lostLeft > 0;
      lostLeft = Math.max(0, lostLeft - 1);

      // Nobody moves the set point while there is no star.
      double[] move = lost ? null : dithers.moveBefore(fromSeconds);
      boolean dithered = move != null && move[2] > 0;
      if (move != null) {
        setEast += move[0];
        setNorth += move[1];
      }
      if (dithered) {
        ra.forget();
        dec.forget();
        calmFrames = 0;
        unsettledSince = fromSeconds;
      }

      double strength =
          plan.noiseAtStart
              * Math.pow(plan.noiseAtEnd / plan.noiseAtStart, nightTime / nightSeconds);
      double trueEast = mean(track.east, fromSeconds, toSeconds);
      double trueNorth = mean(track.north, fromSeconds, toSeconds);
      double errorEast =
          strength
              * (mean(sky.airEast, fromSeconds, toSeconds)
                  + plan.centroidRa * centroid(eastCentroid));
      double errorNorth =
          strength
              * (mean(sky.airNorth, fromSeconds, toSeconds)
                  + plan.centroidDec * centroid(northCentroid));
      double skyEast = trueEast + errorEast - setEast;
      double skyNorth = trueNorth + errorNorth - setNorth;
      double raOffset = skyEast * Math.cos(turned) + skyNorth * Math.sin(turned);
      double decOffset = -skyEast * Math.sin(turned) + skyNorth * Math.cos(turned);
      double raMs = lost ? 0 : ra.pulseMs(raOffset);
      double decMs = lost ? 0 : dec.pulseMs(decOffset);

      double act = toSeconds + plan.latencySeconds + plan.delaySeconds;
      raPulses.add(
          act,
          Math.abs(raMs) / 1000,
          raMs > 0 ? arcsecPerSecond(plan.eastRate) : -arcsecPerSecond(plan.westRate));
      double decAct = plan.decAfterRa && raMs != 0 ? raPulses.end() : act;
      decPulses.add(
          decAct,
          Math.abs(decMs) / 1000,
          decMs > 0 ? arcsecPerSecond(plan.northRate) : -arcsecPerSecond(plan.southRate));

      String event = "";
      if (dithered) {
        event = "dither";
      } else if (calmFrames < 3) {
        calmFrames =
            !lost && Math.hypot(raOffset, decOffset) < plan.settledArcsec ? calmFrames + 1 : 0;
        if (fromSeconds - unsettledSince > 60) {
          calmFrames = 3;
        }
        event = plan.settlingLogged ? "settling" : "";
        if (calmFrames >= 3) {
          settledAt = toSeconds;
          settledTimes.add(settledAt);
        }
      }
      if (lost) {
        event = "lost";
      }
      double stamp =
          switch (plan.timeMark) {
            case "start" -> at.startSeconds() + fromSeconds;
            case "end" -> at.startSeconds() + toSeconds;
            default -> nightTime;
          };
      if (!(lost && plan.lostRowsMissing)) {
        rows.add(
            index + 1,
            stamp,
            lost ? Double.NaN : raOffset,
            lost ? Double.NaN : decOffset,
            raMs,
            decMs,
            dithered ? move[0] : Double.NaN,
            dithered ? move[1] : Double.NaN,
            signalToNoise(strength),
            event);
        star.add(
            at.startSeconds() + fromSeconds,
            at.startSeconds() + toSeconds,
            trueEast - setEast,
            trueNorth - setNorth,
            lost ? Double.NaN : errorEast,
            lost ? Double.NaN : errorNorth);
      }
      if (!lost) {
        noiseEast.add(errorEast);
        noiseNorth.add(errorNorth);
        lastStep = (int) Math.round(0.5 * (fromSeconds + toSeconds) / step);
        firstStep = firstStep < 0 ? lastStep : firstStep;
        frames++;
      }

      double next =
          fromSeconds + plan.cadenceSeconds * (1 + plan.jitterShare * jitter.nextGaussian());
      if (plan.waitsForPulse) {
        next = Math.max(next, Math.max(raPulses.end(), decPulses.end()) + 0.02);
      }
      fromSeconds = Math.max(next, toSeconds + 0.01);
    }

    if (frames < 2) {
      throw new IllegalStateException("run " + (index + 1) + " has fewer than two frames");
    }
    track.until(at.durationSeconds() + 1);
    motion.add(at.startSeconds(), track.mainEast, track.mainNorth, step, track.done);
    expose(at, at.durationSeconds(), dithers, settledTimes);
    runs.add(truthOf(index, sky, firstStep, lastStep, frames, noiseEast, noiseNorth, decSettings));
  }

  private static double arcsecPerSecond(double guideRate) {
    return guideRate * SkyPath.SIDEREAL_ARCSEC_PER_SECOND;
  }

  private double centroid(RandomGenerator random) {
    return plan.student ? Streams.studentOfUnitVariance(random) : random.nextGaussian();
  }

  private double signalToNoise(double strength) {
    double spread = Math.max(0.02, Math.hypot(plan.centroidRa, plan.centroidDec) * strength);
    return Math.min(200, 3 / spread);
  }

  /** Mean of a path that is straight between grid points. */
  private double mean(double[] path, double from, double to) {
    return (integral(path, to) - integral(path, from) + whole(path, from, to)) / (to - from);
  }

  /** From the grid point below {@code time} to it. */
  private double integral(double[] path, double time) {
    int k = (int) (time / step);
    double share = time / step - k;
    return step * share * (path[k] + 0.5 * share * (path[k + 1] - path[k]));
  }

  private double whole(double[] path, double from, double to) {
    double sum = 0;
    int until = (int) (to / step);
    for (int k = (int) (from / step); k < until; k++) {
      sum += 0.5 * (path[k] + path[k + 1]);
    }
    return sum * step;
  }

  private Truth.Run truthOf(
      int index,
      Unguided sky,
      int first,
      int last,
      int frames,
      NoiseSum noiseEast,
      NoiseSum noiseNorth,
      Controller.Settings decSettings) {
    double[] total = new double[sky.points];
    for (int k = 0; k < sky.points; k++) {
      total[k] = sky.steadyEast[k] + sky.looseEast[k];
    }
    double eastDrift = Truth.slopePerMinute(total, step, first, last);
    for (int k = 0; k < sky.points; k++) {
      total[k] = sky.bend(plan.bendRaArcsecPerHour, k);
    }
    double eastBend = Truth.slopePerMinute(total, step, first, last);
    for (int k = 0; k < sky.points; k++) {
      total[k] = sky.north(k);
    }
    double northDrift = Truth.slopePerMinute(total, step, first, last);
    for (int k = 0; k < sky.points; k++) {
      total[k] = sky.bend(plan.bendDecArcsecPerHour, k);
    }
    double northBend = Truth.slopePerMinute(total, step, first, last);
    double lowest = Double.POSITIVE_INFINITY;
    double highest = Double.NEGATIVE_INFINITY;
    for (int k = first; k <= last; k++) {
      lowest = Math.min(lowest, sky.periodicAxis[k]);
      highest = Math.max(highest, sky.periodicAxis[k]);
    }
    return new Truth.Run(
        index + 1,
        sky.at.startSeconds(),
        last * step - first * step,
        frames,
        sky.at.declinationDeg(),
        sky.at.hourAngleDeg() / 15,
        sky.at.tubeWest(),
        new Truth.Axes(eastDrift, northDrift),
        new Truth.Axes(
            Truth.slopePerMinute(sky.steadyEast, step, first, last),
            Truth.slopePerMinute(sky.steadyNorth, step, first, last)),
        new Truth.Axes(eastBend, northBend),
        new Truth.Axes(noiseEast.deviation(), noiseNorth.deviation()),
        new Truth.Axes(noiseEast.lag1(), noiseNorth.lag1()),
        sky.wormAmplitude,
        highest - lowest,
        decSettings.direction,
        List.copyOf(sky.gustTimes));
  }

  /** Images of the main camera: one after another, between settling and the next dither. */
  private void expose(Pointing at, double until, DitherPlan dithers, List<Double> settled) {
    double time = 20;
    double before = time;
    while (true) {
      // One that comes while the last image is read out is waited for as well.
      double nextDither = dithers.firstDitherAfter(before);
      double end = time + plan.imagingSeconds;
      if (end > until) {
        return;
      }
      if (end <= nextDither) {
        exposures.add(new WorldNight.Exposure(at.startSeconds() + time, plan.imagingSeconds));
        time = end + 8;
        before = end;
        continue;
      }
      double calm = nextDither + 60;
      if (!Double.isNaN(plan.pauseSeconds)) {
        calm = nextDither + plan.pauseSeconds;
      } else {
        for (double candidate : settled) {
          if (candidate >= nextDither) {
            calm = Math.min(calm, candidate);
            break;
          }
        }
      }
      time = Math.max(calm, nextDither + 1);
      before = nextDither;
    }
  }

  /** Moves of the set point, told beforehand: time from the run's start, shift, logged or not. */
  private final class DitherPlan {
    private final List<double[]> moves = new ArrayList<>();
    private int next;

    DitherPlan(int run, double duration) {
      RandomGenerator random = stream("dithers", run);
      double east = 0;
      double north = 0;
      if (plan.dithering != Dithering.NONE) {
        boolean oneWay = plan.decOneWay;
        for (double time = 20 + plan.ditherEverySeconds;
            time < duration - 30;
            time += plan.ditherEverySeconds) {
          double toEast = plan.ditherArcsec * Streams.uniform(random, -1, 1);
          double toNorth = oneWay ? 0 : plan.ditherArcsec * Streams.uniform(random, -1, 1);
          moves.add(new double[] {time, toEast - east, toNorth - north, 1});
          east = toEast;
          north = toNorth;
        }
      }
      if (plan.unloggedMovesPerHour > 0) {
        RandomGenerator hidden = stream("unlogged moves", run);
        double time = 0;
        while (true) {
          time += -Math.log(1 - hidden.nextDouble()) * 3600 / plan.unloggedMovesPerHour;
          if (time > duration - 30) {
            break;
          }
          double size = Streams.logUniform(hidden, 0.7, 6);
          double angle = Streams.uniform(hidden, 0, 2 * Math.PI);
          moves.add(new double[] {time, size * Math.sin(angle), size * Math.cos(angle), 0});
        }
        moves.sort((a, b) -> Double.compare(a[0], b[0]));
      }
    }

    /** All moves up to {@code time}: east, north, 1 if one of them is logged; null if none. */
    double[] moveBefore(double time) {
      double[] sum = null;
      while (next < moves.size() && moves.get(next)[0] <= time) {
        double[] move = moves.get(next++);
        sum = sum == null ? new double[3] : sum;
        sum[0] += move[1];
        sum[1] += move[2];
        sum[2] = Math.max(sum[2], move[3]);
      }
      return sum;
    }

    double firstDitherAfter(double time) {
      for (double[] move : moves) {
        if (move[3] > 0 && move[0] > time) {
          return move[0];
        }
      }
      return Double.POSITIVE_INFINITY;
    }
  }

  /** Pulses of one axis; a motor can do one at a time, so that a late one begins later. */
  private static final class Pulses {
    private double[] starts = new double[64];
    private double[] ends = new double[64];
    private double[] rates = new double[64];
    private int head;
    private int size;
    private double end;

    void add(double start, double seconds, double arcsecPerSecond) {
      if (seconds == 0) {
        return;
      }
      if (size == starts.length) {
        int left = size - head;
        int room = Math.max(64, 2 * left);
        starts = shifted(starts, left, room);
        ends = shifted(ends, left, room);
        rates = shifted(rates, left, room);
        head = 0;
        size = left;
      }
      starts[size] = Math.max(start, end);
      end = starts[size] + seconds;
      ends[size] = end;
      rates[size++] = arcsecPerSecond;
    }

    private double[] shifted(double[] values, int left, int room) {
      double[] moved = new double[room];
      System.arraycopy(values, head, moved, 0, left);
      return moved;
    }

    double end() {
      return end;
    }

    /** Arcsec of axis that the motor turns between two times, which never go back. */
    double moved(double from, double to) {
      double sum = 0;
      while (head < size && ends[head] <= from) {
        head++;
      }
      for (int i = head; i < size && starts[i] < to; i++) {
        double overlap = Math.min(to, ends[i]) - Math.max(from, starts[i]);
        sum += overlap > 0 ? overlap * rates[i] : 0;
      }
      return sum;
    }
  }

  /** Deviation and correlation with itself, of what was measured less what was. */
  private static final class NoiseSum {
    private final List<Double> values = new ArrayList<>();

    void add(double error) {
      values.add(error);
    }

    private double mean() {
      return values.stream().mapToDouble(Double::doubleValue).average().orElse(Double.NaN);
    }

    double deviation() {
      double mean = mean();
      double sum = 0;
      for (double value : values) {
        sum += (value - mean) * (value - mean);
      }
      return Math.sqrt(sum / values.size());
    }

    double lag1() {
      double mean = mean();
      double sum = 0;
      double square = 0;
      for (int i = 0; i < values.size(); i++) {
        double here = values.get(i) - mean;
        square += here * here;
        sum += i == 0 ? 0 : here * (values.get(i - 1) - mean);
      }
      return square == 0 ? 0 : sum / square;
    }
  }
}
