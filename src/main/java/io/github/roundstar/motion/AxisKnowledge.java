package io.github.roundstar.motion;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.motion.posterior.AxisPosterior;
import io.github.roundstar.motion.posterior.AxisPosterior.Draw;
import io.github.roundstar.motion.posterior.Figure;
import io.github.roundstar.motion.posterior.PosteriorSearch;
import io.github.roundstar.motion.posterior.Priors;
import io.github.roundstar.signal.WanderNoise;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.apache.commons.math3.stat.correlation.Covariance;

/**
 * What the frames of one axis tell over all runs of a night: every figure out of the one posterior.
 */
public final class AxisKnowledge {
  /** Fewer frames do not fill a model of drift, pulses, wander and noise. */
  static final int FEWEST_FRAMES = 20;

  /** No camera tells less; what sums of pulses round is far smaller [arcsec]. */
  private static final double LEAST_ARCSEC = 1e-6;

  /** Pushes are lost with at least this probability before it is asked how. */
  private static final double SURELY_LOST = 0.9;

  /** Share of the axes that lose pushes which stick; common practice, no source. */
  private static final double STICKING = 0.1;

  /** A sinusoid's amplitude is known to nobody before: an interval as wide as its prior. */
  private static final double TONE_WIDTH = 2 * Estimate.SIGMAS_95 * Priors.TONE;

  /** Place of the start among the numbers of an effect. */
  private static final int START = 4;

  /** Angles at which a turn's curve is looked at for its extremes. */
  private static final int ANGLES = 180;

  private final AxisPosterior posterior;
  private final AxisQuestion question;
  private final List<Family> families;
  private final LostMotion.Kind kind;
  private final List<Part> parts;
  private final Lazy<double[][]> away = new Lazy<>(this::away);

  private AxisKnowledge(
      AxisPosterior posterior,
      AxisQuestion question,
      List<Family> families,
      LostMotion.Kind kind,
      List<Part> parts) {
    this.posterior = posterior;
    this.question = question;
    this.families = families;
    this.kind = kind;
    this.parts = parts;
  }

  /**
   * One run.
   *
   * @param run the run
   * @param made what its motion is made of
   * @param quiet which of its samples are without jolts; all where nothing was found
   * @param cosine cosine of the declination; 1 in declination itself
   * @param sense 1, or -1 where the motor turns the other way than the sky's directions
   * @param declared whether the log or the equipment file declares a guide rate
   */
  record Part(
      GuideRun run,
      Reconstruction made,
      Optional<JoltFree> quiet,
      double cosine,
      int sense,
      boolean declared) {
    /** Why the run tells nothing; nothing where it does. */
    Optional<String> unfit() {
      MotionSeries plain = made.sky();
      MotionSeries kept = quiet.map(q -> q.kept(plain)).orElse(plain);
      if (kept.size() - kept.pieces() < FEWEST_FRAMES - 1) {
        return Optional.of("too few measured frames: record at least a few minutes of guiding");
      }
      MotionSeries offsets = kept.answering(0, 0);
      for (int i = 1; i < offsets.size(); i++) {
        if (!offsets.startsPiece(i)
            && Math.abs(offsets.arcsec(i) - offsets.arcsec(i - 1)) > LEAST_ARCSEC) {
          return Optional.empty();
        }
      }
      return Optional.of("the star never moved, not by a hundredth: see whether it was measured");
    }

    Part without(Optional<JoltFree> jolts) {
      return new Part(run, made, jolts, cosine, sense, declared);
    }
  }

  /**
   * The peaks, before the whole is summed up.
   *
   * @param parts at least one, none of them unfit
   * @param axis the axis
   * @param families sinusoids, the one that may move first
   * @param kind how pushes are lost
   */
  record Peaks(
      List<Part> parts,
      Axis axis,
      List<Family> families,
      LostMotion.Kind kind,
      AxisQuestion question,
      PosteriorSearch search) {
    static Peaks of(List<Part> parts, Axis axis, List<Family> families) {
      return of(parts, axis, families, LostMotion.Kind.PLAY);
    }

    private static Peaks of(
        List<Part> parts, Axis axis, List<Family> families, LostMotion.Kind kind) {
      AxisQuestion question = asked(parts, axis, families, kind);
      return new Peaks(
          parts,
          axis,
          families,
          kind,
          question,
          new PosteriorSearch(question.model(priors(parts))));
    }

    /** What pulses do in each run at the highest peak alone. */
    List<PulseEffect> effects() {
      Draw draw = search.likeliest();
      List<PulseEffect> effects = new ArrayList<>();
      for (int r = 0; r < parts.size(); r++) {
        double[] numbers = numbers(draw);
        numbers[START] = r == 0 ? draw.start() : 0.5;
        effects.add(effect(numbers, kind, parts.get(r).sense()));
      }
      return effects;
    }

    /** The whole; where pushes surely are lost, how. */
    AxisKnowledge known() {
      AxisKnowledge playing = whole();
      AxisPosterior play = playing.posterior;
      if (axis == Axis.RA || play.playProbability() < SURELY_LOST) {
        return playing;
      }
      AxisQuestion sticks = asked(parts, axis, families, LostMotion.Kind.STICKING);
      double ofPlay =
          play.logEvidence() + Math.log(play.playProbability()) + Math.log(1 - STICKING);
      return search
          .sticking(sticks.model(priors(parts)))
          .filter(sticking -> sticking.logEvidence() + Math.log(STICKING) > ofPlay)
          .map(
              sticking ->
                  new AxisKnowledge(sticking, sticks, families, LostMotion.Kind.STICKING, parts))
          .orElse(playing);
    }

    private AxisKnowledge whole() {
      return new AxisKnowledge(search.posterior(), question, families, kind, parts);
    }
  }

  private static Priors priors(List<Part> parts) {
    return parts.stream().allMatch(Part::declared) ? Priors.USUAL : Priors.USUAL.undeclared();
  }

  private static AxisQuestion asked(
      List<Part> parts, Axis axis, List<Family> families, LostMotion.Kind kind) {
    double cadence =
        parts.stream()
            .mapToDouble(part -> Cadence.medianSeconds(part.run().frames()).orElse(0))
            .filter(seconds -> seconds > 0)
            .min()
            .orElse(1);
    AxisQuestion question = new AxisQuestion(axis, families, cadence, kind);
    for (Part part : parts) {
      question.add(
          part.made(),
          part.quiet(),
          part.cosine(),
          part.run().camera().exposureSeconds().orElse(0),
          part.sense());
    }
    return question;
  }

  /** The axis. */
  public Axis axis() {
    return question.axis();
  }

  /** The posterior itself. */
  public AxisPosterior posterior() {
    return posterior;
  }

  /** Mean strength of both directions [declared]. */
  public Figure strength() {
    return posterior.strength();
  }

  /** Strength of pulses east or north in a run [declared]. */
  public Figure oneWay(int runId) {
    return part(runId).sense() > 0 ? posterior.oneWay() : posterior.otherWay();
  }

  /** Strength of pulses west or south in a run [declared]. */
  public Figure otherWay(int runId) {
    return part(runId).sense() > 0 ? posterior.otherWay() : posterior.oneWay();
  }

  /** What pulses do in a run, each number at its median. */
  PulseEffect effect(int runId) {
    return effect(likely(part(runId)), kind, part(runId).sense());
  }

  /**
   * What else pulses may do in a run: effects each a standard deviation away from that, along
   * directions that are independent of each other and the same in all runs; the mean square of what
   * they change is the sum of their squares.
   */
  List<PulseEffect> others(int runId) {
    Part part = part(runId);
    int place = parts.indexOf(part);
    double[] likely = likely(part);
    List<PulseEffect> others = new ArrayList<>();
    for (double[] direction : away.get()) {
      double[] numbers = likely.clone();
      for (int j = 0; j < numbers.length; j++) {
        numbers[j] += place > 0 && j == START ? 0 : direction[j];
      }
      others.add(effect(numbers, kind, part.sense()));
    }
    if (place > 0) {
      // Where the gears rest when a later run begins nobody asks: anywhere in the play.
      likely[START] += (place % 2 == 0 ? 1 : -1) / Math.sqrt(12);
      others.add(effect(likely, kind, part.sense()));
    }
    return others;
  }

  private double[] likely(Part part) {
    double start =
        parts.indexOf(part) == 0
            ? posterior.draws().stream()
                .filter(d -> d.playArcsec() > 0)
                .mapToDouble(Draw::start)
                .sorted()
                .skip((long) (posterior.playProbability() * posterior.draws().size() / 2))
                .findFirst()
                .orElse(0.5)
            : 0.5;
    return new double[] {
      posterior.oneWay().estimate().value(),
      posterior.otherWay().estimate().value(),
      posterior.delay().estimate().value(),
      posterior.play().estimate().value(),
      start
    };
  }

  private static double[] numbers(Draw draw) {
    return new double[] {
      draw.oneWay(), draw.otherWay(), draw.delay(), draw.playArcsec(), draw.start()
    };
  }

  /** Principal directions of the draws' numbers, a standard deviation long. */
  private double[][] away() {
    double[][] draws =
        posterior.draws().stream().map(AxisKnowledge::numbers).toArray(double[][]::new);
    EigenDecomposition principal =
        new EigenDecomposition(new Covariance(draws).getCovarianceMatrix());
    double[][] away = new double[START + 1][];
    for (int j = 0; j < away.length; j++) {
      double deviation = Math.sqrt(Math.max(0, principal.getRealEigenvalue(j)));
      away[j] = principal.getEigenvector(j).mapMultiply(deviation).toArray();
    }
    return away;
  }

  /**
   * An effect in a run.
   *
   * @param numbers as in {@link #numbers}
   */
  private static PulseEffect effect(double[] numbers, LostMotion.Kind kind, int sense) {
    double oneWay = numbers[0];
    double otherWay = numbers[1];
    double start = Math.max(0, Math.min(1, numbers[START]));
    double strength = (oneWay + otherWay) / 2;
    double unlike = sense * (oneWay - otherWay) / (oneWay + otherWay);
    double width = strength > 0 ? Math.max(0, numbers[3]) / strength : 0;
    double begin = sense > 0 ? start : 1 - start;
    LostMotion lost =
        width <= 0
            ? LostMotion.NONE
            : kind == LostMotion.Kind.PLAY
                ? LostMotion.play(width, begin, unlike)
                : LostMotion.sticking(width, 2 * begin - 1, unlike);
    return new PulseEffect(
        sense > 0 ? oneWay : otherWay,
        sense > 0 ? otherWay : oneWay,
        Math.max(0, numbers[2]),
        lost);
  }

  /** Standard deviation of the strength, as a share of it. */
  double strengthUncertainShare() {
    double sum = 0;
    double squares = 0;
    for (Draw draw : posterior.draws()) {
      double value = draw.strength();
      sum += value;
      squares += value * value;
    }
    int n = posterior.draws().size();
    double deviation = Math.sqrt(Math.max(0, squares / n - (sum / n) * (sum / n)));
    return deviation / Math.max(1e-3, Math.abs(sum / n));
  }

  /** Wander and noise of a run's motion at the axis, each number at its median. */
  WanderNoise wanderNoise(int runId) {
    double cosine = part(runId).cosine();
    double noise = posterior.noise().estimate().value();
    double walk = cosine * posterior.wander().estimate().value();
    return new WanderNoise(
        noise * noise / (cosine * cosine),
        walk * walk / (noise * noise),
        posterior.memory().estimate().value());
  }

  /** Drift of a run on the sky, pulses taken out [arcsec/min]; nothing where it took no part. */
  public Optional<Figure> driftArcsecPerMinuteSky(int runId) {
    int run = index(runId);
    return run < 0
        ? Optional.empty()
        : Optional.of(posterior.column(run, 0).times(60.0 * parts.get(run).sense()));
  }

  /** Noise of the star on the sky, mean of all runs [arcsec]. */
  public Figure noiseArcsec() {
    return posterior.noise();
  }

  /** Width of the play [arcsec at the axis]; nothing where the axis sticks. */
  public Optional<Figure> playArcsecAxis() {
    return kind == LostMotion.Kind.PLAY ? Optional.of(posterior.play()) : Optional.empty();
  }

  /** What an axis that sticks withholds [arcsec at the axis]; nothing where it does not. */
  public Optional<Figure> stickingArcsecAxis() {
    return kind == LostMotion.Kind.PLAY ? Optional.empty() : Optional.of(posterior.play());
  }

  /** Whether pulses were sent both ways in any run. */
  public boolean pushedBothWays() {
    return parts.stream().anyMatch(part -> part.made().pushedBothWays());
  }

  /** The families of sinusoids. */
  List<Family> families() {
    return families;
  }

  /** Number of families of sinusoids. */
  public int familyCount() {
    return families.size();
  }

  /**
   * Which family turns once in about such a time; nothing where none is within this share of it.
   */
  public Optional<Integer> nearest(double periodSeconds, double share) {
    List<Integer> near = new ArrayList<>();
    for (int f = 0; f < families.size(); f++) {
      Family family = families.get(f);
      if (family.harmonics().get(0) == 1
          && Math.abs(family.periodSeconds() / periodSeconds - 1) < share) {
        near.add(f);
      }
    }
    return near.stream()
        .min(
            Comparator.comparingDouble(
                f -> Math.abs(families.get(f).periodSeconds() - periodSeconds)));
  }

  /** Which family a found one is; nothing where it is none. */
  Optional<Integer> family(Family found) {
    Integer best = null;
    for (int f = 0; f < families.size(); f++) {
      if (families.get(f).source().equals(found.source())
          && (best == null || off(f, found) < off(best, found))) {
        best = f;
      }
    }
    return Optional.ofNullable(best);
  }

  private double off(int family, Family found) {
    return Math.abs(families.get(family).angularRate() / found.angularRate() - 1);
  }

  /** Amplitude of a family's first sinusoid, mean of the runs by what each knows [arcsec, axis]. */
  public Figure amplitudeArcsecAxis(int family) {
    return amplitudeArcsecAxis(family, families.get(family).harmonics().get(0));
  }

  /** The same of any of its orders. */
  Figure amplitudeArcsecAxis(int family, int order) {
    int at = question.tone(family, families.get(family).harmonics().indexOf(order));
    return pooled(
        run -> draw -> Math.hypot(draw.columns()[run][at], draw.columns()[run][at + 1]),
        TONE_WIDTH);
  }

  /** Period of a family, mean of the runs by what each knows [s]. */
  public Figure periodSeconds(int family) {
    double rate = families.get(family).angularRate();
    return pooled(
        run -> draw -> 2 * Math.PI / (rate + question.rateError(run, family, draw.columns()[run])),
        0.2 * families.get(family).periodSeconds());
  }

  /** Peak to peak of some orders of a family together [arcsec at the axis]. */
  Figure peakToPeakArcsecAxis(int family, List<Integer> orders) {
    return pooled(run -> draw -> peakToPeak(draw.columns()[run], family, orders), 2 * TONE_WIDTH);
  }

  private double peakToPeak(double[] columns, int family, List<Integer> orders) {
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < ANGLES; i++) {
      double sum = 0;
      for (int order : orders) {
        int at = question.tone(family, families.get(family).harmonics().indexOf(order));
        double angle = 2 * Math.PI * order * i / ANGLES;
        sum += columns[at] * Math.cos(angle) + columns[at + 1] * Math.sin(angle);
      }
      least = Math.min(least, sum);
      most = Math.max(most, sum);
    }
    return most - least;
  }

  /** A figure that every run tells for itself, weighted by its variance. */
  private Figure pooled(IntFunction<ToDoubleFunction<Draw>> ofRun, double priorWidth) {
    List<Draw> draws = posterior.draws();
    double[] sum = new double[draws.size()];
    double weights = 0;
    for (int run = 0; run < parts.size(); run++) {
      double[] values = draws.stream().mapToDouble(ofRun.apply(run)).toArray();
      double mean = 0;
      double squares = 0;
      for (double value : values) {
        mean += value / values.length;
        squares += value * value / values.length;
      }
      double weight = 1 / Math.max(1e-12 * squares + 1e-300, squares - mean * mean);
      weights += weight;
      for (int i = 0; i < sum.length; i++) {
        sum[i] += weight * values[i];
      }
    }
    for (int i = 0; i < sum.length; i++) {
      sum[i] /= weights;
    }
    return Figure.of(sum, priorWidth);
  }

  private int index(int runId) {
    for (int r = 0; r < parts.size(); r++) {
      if (parts.get(r).run().id() == runId) {
        return r;
      }
    }
    return -1;
  }

  private Part part(int runId) {
    return parts.get(index(runId));
  }
}
