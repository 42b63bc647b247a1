package io.github.roundstar.motion.posterior;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;

/**
 * A night whose every number is drawn from the priors, played frame by frame: the star walks,
 * pulses answer what was seen, and act behind a play. It knows nothing of filters.
 */
final class PriorNight {
  private static final int MOVING = 6;
  private static final double DITHER_ARCSEC = 4;

  /** What the night was drawn with. */
  double strength;

  double oneWay;
  double otherWay;
  double delay;
  double noise;
  double memory;
  double wander;
  double play;
  double start;
  double[] columns;

  private final Random random;
  private final Priors priors;
  private final boolean worm;
  private AxisModel model;
  private double cadence;

  private PriorNight(long seed, Priors priors, boolean worm) {
    // Seeds that follow each other make first draws that are nearly the same; a scrambled one not.
    this.random = new Random(new SplittableRandom(seed).nextLong());
    this.priors = priors;
    this.worm = worm;
  }

  /**
   * A night.
   *
   * @param worm whether the axis has a worm and no play, or a play and no worm
   * @param frames of all runs together
   * @param runs of the same length
   */
  static PriorNight of(long seed, Priors priors, boolean worm, int frames, int runs) {
    PriorNight night = new PriorNight(seed, priors, worm);
    night.draw();
    night.playOut(frames, runs);
    return night;
  }

  AxisModel model() {
    return model;
  }

  /** Constant part of the sinusoid's amplitude. */
  static double amplitude(double[] columns) {
    return columns.length < 4 ? 0 : Math.hypot(columns[2], columns[3]);
  }

  private void draw() {
    double u = random.nextDouble();
    int c = 0;
    while (c < priors.strengths().size() - 1 && u > priors.strengths().get(c).weight()) {
      u -= priors.strengths().get(c).weight();
      c++;
    }
    Priors.Strength of = priors.strengths().get(c);
    strength = of.mean() + of.deviation() * random.nextGaussian();
    double difference = of.unlikeness() * of.mean() * random.nextGaussian();
    oneWay = strength + difference;
    otherWay = strength - difference;
    noise =
        priors.noiseMedianArcsec() * Math.exp(priors.noiseLogDeviation() * random.nextGaussian());
    Priors.Memory kind =
        priors.memories().get(random.nextDouble() < priors.memories().get(0).weight() ? 0 : 1);
    memory = kind.medianSeconds() * Math.exp(kind.logDeviation() * random.nextGaussian());
    double logRatio = priors.ratioMedianLog() + priors.ratioDeviationLog() * random.nextGaussian();
    wander = noise * Math.sqrt(Math.pow(10, logRatio));
    play =
        !worm && random.nextDouble() < priors.playShare()
            ? -priors.meanPlayArcsec() * Math.log(random.nextDouble())
            : 0;
    start = random.nextDouble();
  }

  private void playOut(int frames, int runs) {
    double cadence = 1 + 4 * random.nextDouble();
    this.cadence = cadence;
    drawDelay();
    boolean even = random.nextBoolean();
    boolean dithers = random.nextInt(3) > 0;
    boolean known = random.nextBoolean();
    double gain = 0.2 + 0.5 * random.nextDouble();
    double deadband = random.nextBoolean() ? 0 : 0.5 * noise;
    double most = 3;
    int n = frames / runs;
    double span = n * cadence;
    double period = span / (3 + 6 * random.nextDouble());
    int staying = worm ? 4 : 2;
    int k = staying + (worm ? 2 * MOVING : 0);
    double[] deviations = new double[k];
    deviations[0] = Priors.DRIFT;
    deviations[1] = Priors.BEND;
    columns = new double[k];
    double walk = drawnWalk();
    double scale = priors.scales().get(random.nextInt(priors.scales().size())).factor();
    double turns = span / period;
    for (int j = 0; j < k; j++) {
      double use = scale;
      if (j >= staying) {
        deviations[j] = Math.sqrt(turns) / (Math.PI * ((j - staying) / 2 + 1));
        use = walk;
      } else if (j >= 2) {
        deviations[j] = Priors.TONE;
      }
      columns[j] =
          (j < staying ? Priors.ofSize(j, deviations[j], use) : use * deviations[j])
              * random.nextGaussian();
    }
    List<ObservedRun> observed = new ArrayList<>();
    for (int r = 0; r < runs; r++) {
      double[] seconds = new double[n];
      double[][] of = new double[k][n];
      double time = 0;
      for (int i = 0; i < n; i++) {
        seconds[i] = time;
        time += even ? cadence : cadence * (0.7 + 0.6 * random.nextDouble());
      }
      for (int i = 0; i < n; i++) {
        double t = seconds[i] - span / 2;
        of[0][i] = t;
        of[1][i] = t * t;
        for (int j = 2; j < k; j++) {
          double angle = 2 * Math.PI * seconds[i] / period;
          double wave = j % 2 == 0 ? Math.cos(angle) : Math.sin(angle);
          int m = j < staying ? 0 : (j - staying) / 2 + 1;
          of[j][i] = wave * (m == 0 ? 1 : Math.sqrt(2) * Math.cos(Math.PI * m * seconds[i] / span));
        }
      }
      observed.add(run(seconds, of, deviations, dithers, known, gain, deadband, most));
    }
    model =
        new AxisModel(
            observed, cadence, partDelay(), staying, worm ? 2 * MOVING : 0, !worm, priors);
  }

  private void drawDelay() {
    Priors.Delay kind =
        priors.delays().get(random.nextDouble() < priors.delays().get(0).weight() ? 0 : 1);
    do {
      delay = -(kind.meanSeconds() + kind.meanFrames() * cadence) * Math.log(random.nextDouble());
    } while (delay > cadence);
  }

  /** A delay of this leaves the short pulses of the last frame out. */
  private double partDelay() {
    return Math.min(0.3, cadence / 3);
  }

  private double drawnWalk() {
    double u = random.nextDouble();
    for (Priors.Movement movement : priors.movements()) {
      u -= movement.weight();
      if (u <= 0) {
        return movement.arcsecPerRootTurn();
      }
    }
    return 0;
  }

  private ObservedRun run(
      double[] seconds,
      double[][] of,
      double[] deviations,
      boolean dithers,
      boolean known,
      double gain,
      double deadband,
      double most) {
    int n = seconds.length;
    double[] motion = new double[n];
    boolean[] starts = new boolean[n];
    double[] pulses = new double[n];
    double level = 10 * random.nextGaussian();
    double walk = 0;
    double air = noise * random.nextGaussian();
    double setPoint = 0;
    double offLevel = 0;
    double pushed = 0;
    double pushedBefore = 0;
    double slack = start * play;
    double unlike = (oneWay - otherWay) / (oneWay + otherWay);
    for (int i = 0; i < n; i++) {
      if (i > 0) {
        double step = seconds[i] - seconds[i - 1];
        walk += wander * Math.sqrt(step) * random.nextGaussian();
        double kept = Math.exp(-step / memory);
        air = kept * air + noise * Math.sqrt(1 - kept * kept) * random.nextGaussian();
        double p = pulses[i - 1];
        pushedBefore = pushed;
        double motor = p > 0 ? (1 + unlike) * p : -(1 - unlike) * p;
        double lost = Math.min(motor, p > 0 ? slack : play - slack);
        slack -= p > 0 ? lost : -lost;
        pushed += p > 0 ? motor - lost : -(motor - lost);
      }
      starts[i] = i == 0;
      if (dithers && i > 0 && i % 120 == 0) {
        if (known) {
          setPoint += DITHER_ARCSEC * random.nextGaussian();
        } else {
          offLevel += DITHER_ARCSEC * random.nextGaussian();
          starts[i] = true;
        }
      }
      double steady = 0;
      for (int j = 0; j < of.length; j++) {
        steady += columns[j] * of[j][i];
      }
      motion[i] = level + steady + walk + air + offLevel - strength * arrived(pushed, pushedBefore);
      // The loop sees the star against the set point that it was given last.
      double seen = motion[i] - setPoint - (known ? 0 : 0);
      double wanted = Math.abs(seen) > deadband ? gain * seen : 0;
      pulses[i] = Math.max(-most, Math.min(most, wanted));
    }
    return new ObservedRun(
        seconds, starts, motion, of, deviations, (w, s, u) -> pushes(pulses, w, s, u), 1);
  }

  /** By the three columns: at once, the large part of what is new late, all of it late. */
  private double arrived(double pushed, double before) {
    double part = part(pushed, before);
    double share = delay / partDelay();
    return share < 1
        ? pushed + share * (part - pushed)
        : part + (delay - partDelay()) / (cadence - partDelay()) * (before - part);
  }

  private static double part(double pushed, double before) {
    double news = pushed - before;
    return before + Math.signum(news) * Math.min(0.3, Math.abs(news));
  }

  private static double[][] pushes(double[] pulses, double width, double start, double unlike) {
    double step = 0.005;
    double[] here = pushed(pulses, width, start, unlike);
    double[] more = pushed(pulses, width, start, unlike + step);
    double[] less = pushed(pulses, width, start, unlike - step);
    double[] slope = new double[here.length];
    for (int i = 0; i < slope.length; i++) {
      slope[i] = (more[i] - less[i]) / (2 * step);
    }
    double[] before = before(here);
    double[] part = new double[here.length];
    for (int i = 0; i < part.length; i++) {
      part[i] = part(here[i], before[i]);
    }
    return new double[][] {here, part, before, slope, before(slope)};
  }

  private static double[] pushed(double[] pulses, double width, double start, double unlike) {
    double[] pushed = new double[pulses.length];
    double tube = 0;
    double low = -(1 - start) * width;
    for (int i = 1; i < pulses.length; i++) {
      // The motor stands somewhere between both flanks; it takes the tube with it beyond them.
      double motor = pulses[i - 1] * (1 + Math.signum(pulses[i - 1]) * unlike);
      double at = low + motor;
      double beyond = Math.max(0, at) + Math.min(0, at + width);
      low = at - beyond;
      tube += beyond;
      pushed[i] = tube;
    }
    return pushed;
  }

  private static double[] before(double[] values) {
    double[] before = new double[values.length];
    System.arraycopy(values, 0, before, 1, values.length - 1);
    return before;
  }

  @Override
  public String toString() {
    return String.format(
        java.util.Locale.ROOT,
        "R %.3f (%.3f %.3f) delay %.3f noise %.3f memory %.2f wander %.4f play %.2f start %.2f %s",
        strength,
        oneWay,
        otherWay,
        delay,
        noise,
        memory,
        wander,
        play,
        start,
        Arrays.toString(columns));
  }
}
