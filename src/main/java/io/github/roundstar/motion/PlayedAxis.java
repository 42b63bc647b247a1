package io.github.roundstar.motion;

import io.github.roundstar.motion.posterior.AxisPosterior;
import io.github.roundstar.motion.posterior.AxisPosterior.Draw;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;

/**
 * One axis of a run, ready to be guided again with a cure applied: what moved the star is drawn
 * from the night's posterior, the measured frames' noise with it. Immutable.
 *
 * <p>The path that the star really took is the logged offsets less the drawn noise, whatever the
 * strength of the pulses. With a cure, the drawn disturbance goes through the law that the loop
 * followed; where no law describes the loop, what is taken out of the disturbance goes through the
 * loop's average gain ({@link LinearLoop}) and is taken off the path.
 */
public final class PlayedAxis {
  /** No guide camera sees farther from its middle; common practice, no source [arcsec]. */
  private static final double FIELD_ARCSEC = 3600;

  /** Repeating the present settings must give the log's own RMS to within this share. */
  private static final double REPEATS = 0.15;

  /** Shorter guide exposures chase the air; common practice, no source [s]. */
  private static final double SHORTEST_SECONDS = 0.5;

  /** Between frames farther apart than this times the usual the star was not measured. */
  private static final double GAP = 1.5;

  private final MotionSplit split;
  private final Optional<Controller> law;
  private final String whyNoLaw;
  private final AxisPosterior posterior;
  private final double strength;
  private final LinearLoop linear;
  private final double frameSeconds;
  private final double cosine;

  /** What each frame's smoothing error takes over from the frame before. */
  private final double carried;

  private PlayedAxis(
      MotionSplit split, Answer<LoopFit> fit, AxisMotion motion, double frameSeconds) {
    this.split = split;
    this.posterior = motion.known().posterior();
    this.strength = motion.effect().strength();
    this.linear = LinearLoop.of(split, fit.value().map(LoopFit::law));
    this.frameSeconds = frameSeconds;
    this.cosine = motion.run().cosine();
    Draw middle = posterior.draws().get(posterior.draws().size() / 2);
    this.carried = LoopLimit.smoothingMemory(model(middle));
    Answer<Controller> repeated = fit.then(f -> repeating(f, new Drawn(middle, 0)));
    this.law = repeated.value();
    this.whyNoLaw = repeated.because();
  }

  /**
   * An axis.
   *
   * @param fit the loop's law; it is played only where it describes the loop well enough
   * @param frameSeconds from frame to frame [s]
   */
  public static PlayedAxis of(
      MotionSplit split, Answer<LoopFit> fit, AxisMotion motion, double frameSeconds) {
    return new PlayedAxis(split, fit, motion, frameSeconds);
  }

  /** The law where it plays the run as it was logged. */
  private Answer<Controller> repeating(LoopFit fit, Drawn drawn) {
    if (!fit.describes()) {
      return Answer.none(
          String.format(
              Locale.ROOT,
              "the law that was fitted to the loop explains %.0f %% of its pulses, and %.0f %% are"
                  + " needed to play it again",
              100 * fit.explainedShare(),
              100 * LoopFit.FEWEST_EXPLAINED));
    }
    if (!(split.strength.mean() > 0)) {
      return Answer.none("what a second of pulse moves is not known");
    }
    double logged = rms(split.frames.offsetArcsec, new double[size()]);
    double repeated =
        rms(drawn.played(fit.law(), Change.NONE, new double[size()]).arcsec(), drawn.noise);
    if (Double.isNaN(repeated)) {
      return Answer.none("no frame of the run was usable");
    }
    return Math.abs(repeated - logged) <= REPEATS * logged
        ? Answer.of(fit.law())
        : Answer.none(
            String.format(
                Locale.ROOT,
                "played again, the present settings give an RMS of %.2f arcsec where the log has"
                    + " %.2f: something moves the star that the recovered motion lacks",
                repeated,
                logged));
  }

  /** Over the frames that count while the loop was at work [arcsec]; NaN without any. */
  private double rms(double[] path, double[] noise) {
    double sum = 0;
    double square = 0;
    int n = 0;
    for (int i = 0; i < path.length; i++) {
      if (split.frames.used[i] && split.frames.listening[i]) {
        double x = path[i] + noise[i];
        sum += x;
        square += x * x;
        n++;
      }
    }
    return n == 0 ? Double.NaN : Math.sqrt(Math.max(0, square - sum * sum / n) / n);
  }

  /** What can be taken away from an axis as a whole. */
  public enum Trouble {
    /** All sinusoids. */
    GEARS,
    /** Play, or sticking. */
    LOST_MOTION,
    /** Sudden moves. */
    JOLTS,
    /** That pulses act more one way than the other. */
    UNLIKE_PULSES
  }

  /**
   * What is changed.
   *
   * @param gainFactor times the gain in use
   * @param deadbandArcsec offsets left alone [arcsec]; NaN for the one in use
   * @param cadenceFactor times the time from pulse to pulse: 2 and more average so many frames, a
   *     half measures and corrects twice as often
   * @param driftShare share of the drift that is taken away, 0 to 1
   * @param trainedShare share of the trainable curve that is taken away
   * @param without what is taken away as a whole
   */
  public record Change(
      double gainFactor,
      double deadbandArcsec,
      double cadenceFactor,
      double driftShare,
      double trainedShare,
      Set<Trouble> without) {
    /** Nothing is changed. */
    public static final Change NONE = new Change(1, Double.NaN, 1, 0, 0, Set.of());

    /** With other settings. */
    public Change settings(double factor, double deadband, double cadence) {
      return new Change(factor, deadband, cadence, driftShare, trainedShare, without);
    }

    /** With so much of the drift taken away. */
    public Change drift(double share) {
      return new Change(gainFactor, deadbandArcsec, cadenceFactor, share, trainedShare, without);
    }

    /** With so much of the worm's curve trained out. */
    public Change trained(double share) {
      return new Change(gainFactor, deadbandArcsec, cadenceFactor, driftShare, share, without);
    }

    /** Without a trouble. */
    public Change without(Trouble trouble) {
      Set<Trouble> all = EnumSet.of(trouble);
      all.addAll(without);
      return new Change(gainFactor, deadbandArcsec, cadenceFactor, driftShare, trainedShare, all);
    }

    private boolean quick() {
      return cadenceFactor < 1;
    }

    private boolean lacks(Trouble trouble) {
      return without.contains(trouble);
    }
  }

  /** Number of measured frames. */
  public int size() {
    return split.frames.size();
  }

  /** How long the guide camera exposes; 0 where that is not known [s]. */
  public double exposureSeconds() {
    return split.frames.exposureSeconds;
  }

  /**
   * Times the time from pulse to pulse where the guide camera exposes for a share of what it does,
   * and what lies between the exposures stays as long as it is; 0 where that exposure is too short
   * for the air to average out.
   */
  public double quicker(double share) {
    return share * exposed() < SHORTEST_SECONDS
        ? 0
        : (frameSeconds - (1 - share) * exposed()) / frameSeconds;
  }

  /**
   * How long the guide camera exposes at so many times the time from pulse to pulse, what lies
   * between the exposures left as it is; at 1, as it does [s].
   */
  public double exposedSeconds(double cadenceFactor) {
    return exposed() + (cadenceFactor - 1) * frameSeconds;
  }

  private double exposed() {
    return exposureSeconds() > 0 ? exposureSeconds() : frameSeconds;
  }

  /** Why settings cannot be played; empty where they can. */
  public String whyNoLaw() {
    return whyNoLaw;
  }

  /** From frame to frame [s]. */
  public double cadenceSeconds() {
    return frameSeconds;
  }

  /** Share of a lasting offset that one pulse takes away; of an axis whose law is known. */
  public double gain() {
    return law.orElseThrow().millisPerArcsec() / 1000 * split.strength.mean();
  }

  /** Offsets that are left alone, of an axis whose law is known [arcsec]. */
  public double deadbandArcsec() {
    return law.orElseThrow().deadbandArcsec();
  }

  /** Standard deviation of the noise of a frame [arcsec]. */
  public double noiseArcsec() {
    double[] noise = split.causes.get(MotionSplit.NOISE);
    double sum = 0;
    for (int i = 0; i < noise.length; i++) {
      sum += noise[i] * noise[i] + split.levelVariance[i];
    }
    return noise.length == 0 ? 0 : Math.sqrt(sum / noise.length);
  }

  /** Whether settings can be played, and not only what is taken out of the disturbance. */
  public boolean lawKnown() {
    return law.isPresent();
  }

  /** How far from its mean the trainable curve goes at most [arcsec]. */
  public double trainableArcsec() {
    return reach(split.trainableArcsec);
  }

  /** How far from their mean all sinusoids go at most [arcsec]. */
  public double gearsArcsec() {
    return reach(gears());
  }

  /** Width of play or sticking that is played [arcsec]. */
  public double lostArcsec() {
    return split.lost.arcsec();
  }

  /** Whether the axis sticks, rather than has play. */
  public boolean sticks() {
    return split.lost.kind() == LostMotion.Kind.STICKING;
  }

  private static double reach(double[] series) {
    if (series == null || series.length == 0) {
      return 0;
    }
    double low = Arrays.stream(series).min().orElse(0);
    double high = Arrays.stream(series).max().orElse(0);
    return (high - low) / 2;
  }

  private double[] gears() {
    double[] sum = new double[size()];
    for (Map.Entry<String, double[]> cause : split.causes.entrySet()) {
      if (cause.getKey().startsWith(MotionSplit.PERIODIC)) {
        for (int i = 0; i < sum.length; i++) {
          sum[i] += cause.getValue()[i];
        }
      }
    }
    return sum;
  }

  /**
   * The axis in one draw.
   *
   * @param place which draw, as a share of all of them, 0 to below 1
   * @param seed of the noise's own draw
   */
  public Drawn drawn(double place, long seed) {
    List<Draw> draws = posterior.draws();
    return new Drawn(draws.get((int) (place * draws.size())), seed);
  }

  private LoopLimit.Model model(Draw draw) {
    double share =
        draw.memory() > 0 && frameSeconds > 0 ? Math.exp(-frameSeconds / draw.memory()) : 0;
    double walk = cosine * draw.wander();
    return new LoopLimit.Model(
        walk * walk * frameSeconds, draw.noise() * draw.noise(), Math.min(0.98, share));
  }

  /**
   * The way that a star took.
   *
   * @param arcsec place at each measured frame, about the set point [arcsec]
   * @param jumpsArcsec how far a pulse moved it between each frame and the next; the root mean
   *     square where there were more [arcsec]
   */
  public record Way(double[] arcsec, double[] jumpsArcsec) {
    /** One on which nothing is corrected. */
    public static Way uncorrected(double[] arcsec) {
      return new Way(arcsec, new double[arcsec.length]);
    }
  }

  /** One draw of what moved the star. */
  public final class Drawn {
    private final Draw draw;
    private final double factor;
    private final long seed;

    /** -1 for an axis that is turned round: it draws the mirror image. */
    private final double side;

    /** Noise of each frame [arcsec]. */
    private final double[] noise;

    private Drawn(Draw draw, long seed) {
      this.draw = draw;
      this.seed = seed;
      this.factor = strength > 0 && draw.strength() > 0 ? draw.strength() / strength : 1;
      this.noise = split.causes.get(MotionSplit.NOISE).clone();
      // The smoothed path's error is a first-order autoregression: its spectrum is that of wander
      // and noise in parallel.
      SplittableRandom random = new SplittableRandom(seed);
      double renewed = Math.sqrt(1 - carried * carried);
      double state = random.nextGaussian();
      this.side = Arrays.stream(noise).filter(x -> x != 0).findFirst().orElse(1) < 0 ? -1 : 1;
      for (int i = 0; i < noise.length; i++) {
        noise[i] += side * Math.sqrt(split.levelVariance[i]) * state;
        state = carried * state + renewed * random.nextGaussian();
      }
    }

    /** Noise that the log adds to the star's place in each frame [arcsec]. */
    public double noiseArcsec(int i) {
      return noise[i];
    }

    /**
     * Which frames would count in the RMS of the log: those of a settled star, which may settle
     * sooner or later than it did.
     *
     * @param path the way that the star takes [arcsec]
     */
    public boolean[] counts(double[] path) {
      GuidedFrames guided = split.frames;
      SettlingRule.Watch watch = guided.settlingRule.new Watch();
      boolean[] counts = new boolean[path.length];
      for (int i = 0; i < path.length; i++) {
        double radius = Math.hypot(path[i] + noise[i], guided.besideArcsec[i]);
        boolean settled = watch.settled(guided.moved[i], guided.seconds[i], radius);
        counts[i] = settled && guided.steady[i];
      }
      return counts;
    }

    /** The way that the star took. */
    public Way asItWas() {
      double[] path = split.frames.offsetArcsec.clone();
      double[] jumps = new double[path.length];
      for (int i = 0; i < path.length; i++) {
        path[i] -= noise[i];
        jumps[i] =
            i + 1 < path.length
                ? factor * (split.executedArcsec[i + 1] - split.executedArcsec[i])
                : 0;
      }
      return new Way(path, jumps);
    }

    /** The way that it would have taken. */
    public Way with(Change change) {
      if (change.equals(Change.NONE)) {
        return asItWas();
      }
      double[] removed = removed(change);
      return law.isEmpty() ? linearly(change, removed) : played(law.get(), change, removed);
    }

    /** The way that it would have taken, played by the law even where nothing is changed. */
    public Way byTheLaw(Change change) {
      return law.isEmpty() ? with(change) : played(law.get(), change, removed(change));
    }

    /** What is taken out of the disturbance. */
    private double[] removed(Change change) {
      double[] removed = new double[size()];
      add(removed, split.causes.get(MotionSplit.DRIFT), change.driftShare());
      if (change.lacks(Trouble.GEARS)) {
        add(removed, PlayedAxis.this.gears(), 1);
      } else {
        add(removed, split.trainableArcsec, change.trainedShare());
      }
      if (change.lacks(Trouble.JOLTS)) {
        add(removed, split.causes.get(MotionSplit.JOLTS), 1);
      }
      return removed;
    }

    private void add(double[] sum, double[] series, double share) {
      if (series != null && share != 0) {
        for (int i = 0; i < sum.length; i++) {
          sum[i] += share * factor * (series[i] - series[0]);
        }
      }
    }

    private Way linearly(Change change, double[] removed) {
      Way asItWas = asItWas();
      double[] path = asItWas.arcsec();
      if (change.lacks(Trouble.LOST_MOTION) && split.causes.containsKey(MotionSplit.BACKLASH)) {
        add(removed, split.causes.get(MotionSplit.BACKLASH), 1);
      }
      double[] leaves = linear.leaves(removed);
      for (int i = 0; i < path.length; i++) {
        path[i] = inField(path[i] - leaves[i]);
      }
      return asItWas;
    }

    /** A loop that runs away loses the star; numbers without end are of no use to anybody. */
    private static double inField(double arcsec) {
      return Double.isNaN(arcsec)
          ? FIELD_ARCSEC
          : Math.max(-FIELD_ARCSEC, Math.min(FIELD_ARCSEC, arcsec));
    }

    private static Controller.Course course(Controller in, Change change) {
      return in.with(
              in.millisPerArcsec() * change.gainFactor(),
              Double.isNaN(change.deadbandArcsec()) ? in.deadbandArcsec() : change.deadbandArcsec())
          .begin();
    }

    private Way played(Controller in, Change change, double[] removed) {
      return change.quick()
          ? playedQuicker(in, change, removed)
          : playedByFrames(in, change, removed);
    }

    private Way playedByFrames(Controller in, Change change, double[] removed) {
      GuidedFrames guided = split.frames;
      Controller.Course course = course(in, change);
      Mount mount = new Mount(change);
      double[] path = new double[guided.size()];
      double[] jumps = new double[path.length];
      double sum = 0;
      int averaged = 0;
      for (int i = 0; i < path.length; i++) {
        double offset = inField(disturbed(i, removed) - mount.correction(guided.seconds[i]));
        path[i] = offset - noise[i];
        sum += offset;
        averaged++;
        if (averaged >= change.cadenceFactor() || i == path.length - 1) {
          mount.push(course.next(sum / averaged) / 1000, guided.seconds[i]);
          jumps[i] = mount.jump();
          sum = 0;
          averaged = 0;
        }
      }
      return new Way(path, jumps);
    }

    /**
     * With measurements of its own, more often than the log has frames: between two of them the
     * star goes on a bridge of its wander.
     */
    private Way playedQuicker(Controller in, Change change, double[] removed) {
      GuidedFrames guided = split.frames;
      Controller.Course course = course(in, change);
      Mount mount = new Mount(change);
      double step = change.cadenceFactor() * frameSeconds;
      // Less light, and less of the air's average, in each measurement.
      double noisier = Math.sqrt(exposed() / mount.exposure);
      double walk = cosine * draw.wander();
      SplittableRandom random = new SplittableRandom(~seed);
      double[] path = new double[guided.size()];
      double[] jumps = new double[path.length];
      double next = path.length == 0 ? 0 : guided.seconds[0];
      double there = path.length == 0 ? 0 : disturbed(0, removed) - noise[0];
      double when = next;
      for (int i = 0; i < path.length; i++) {
        double end = disturbed(i, removed) - noise[i];
        double seconds = guided.seconds[i];
        if (seconds - when > GAP * frameSeconds) {
          next = seconds;
        }
        double squares = 0;
        int pulses = 0;
        for (; next <= seconds + 1e-9; next += step) {
          double left = seconds - when;
          double share = left <= 0 ? 1 : Math.min(1, Math.max(0, (next - when) / left));
          there +=
              share * (end - there)
                  + side
                      * walk
                      * Math.sqrt(Math.max(0, left * share * (1 - share)))
                      * random.nextGaussian();
          when = Math.max(when, next);
          // Any other frame's noise is as good a draw.
          double other = noise[(int) ((i + next / step) % path.length)];
          double offset = inField(there - mount.correction(next) + noisier * other);
          mount.push(course.next(offset) / 1000, next);
          squares += mount.jump() * mount.jump();
          pulses++;
        }
        jumps[i] = Math.sqrt(squares / Math.max(1, pulses));
        there = end;
        when = seconds;
        path[i] = inField(end - mount.correction(seconds));
      }
      return new Way(path, jumps);
    }

    /** Where the star would be seen if nothing were corrected [arcsec]. */
    private double disturbed(int i, double[] removed) {
      return split.frames.offsetArcsec[i] + factor * split.executedArcsec[i] - removed[i];
    }

    /**
     * What no controller can better: what is left where each frame's place is foretold from all
     * frames before, drift and gears known beforehand [arcsec].
     */
    public double[] atTheLoopsLimit() {
      double[] place = split.causes.get(MotionSplit.WANDER).clone();
      double[] jolts = split.causes.get(MotionSplit.JOLTS);
      for (int i = 0; i < place.length; i++) {
        place[i] += jolts == null ? 0 : jolts[i];
        place[i] += split.causes.get(MotionSplit.NOISE)[i] - noise[i];
      }
      return LoopLimit.of(model(draw)).errors(place, noise);
    }

    /** The axis under correction. */
    private final class Mount {
      private final Drive drive;
      private final boolean alike;
      private double before;
      private double last;
      private double leap;
      private double lastSent;
      private double lastSeconds;
      private final double exposure;

      Mount(Change change) {
        this.exposure = change.quick() ? exposedSeconds(change.cadenceFactor()) : exposureSeconds();
        this.alike = change.lacks(Trouble.UNLIKE_PULSES);
        LostMotion lost =
            change.lacks(Trouble.LOST_MOTION) ? LostMotion.NONE : split.lost.times(factor);
        this.drive = lost.begin();
      }

      /** What has been corrected by a frame with its middle at this time. */
      double correction(double seconds) {
        if (last == 0) {
          return before;
        }
        double begin = seconds - exposure / 2;
        if (begin >= lastSent + lastSeconds) {
          return before + last + leap;
        }
        return before
            + last * ExecutedPulses.share(lastSent, lastSeconds, begin, exposure)
            + leap * ExecutedPulses.step(lastSent, begin, exposure);
      }

      /** How far the pulse sent last moves it [arcsec]. */
      double jump() {
        return last + leap;
      }

      /** Sends a pulse after the frame with its middle at this time. */
      void push(double pulseSeconds, double seconds) {
        before += last + leap;
        if (pulseSeconds == 0) {
          last = 0;
          leap = 0;
          return;
        }
        double push =
            factor
                * (alike
                    ? split.strength.mean() * pulseSeconds
                    : split.strength.moved(pulseSeconds));
        double lost = drive.lost(push);
        last = push - Math.copySign(lost, push);
        leap = last == 0 ? 0 : Math.copySign(drive.leap(push), push);
        double speed = Math.abs(push / pulseSeconds);
        double wait = speed == 0 ? 0 : lost / speed;
        lastSent = seconds + exposure / 2 + draw.delay() + wait;
        lastSeconds = Math.abs(pulseSeconds) - wait;
      }
    }
  }
}
