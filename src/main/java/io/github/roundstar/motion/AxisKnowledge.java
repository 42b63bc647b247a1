package io.github.roundstar.motion;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.motion.posterior.AxisPosterior;
import io.github.roundstar.motion.posterior.AxisPosterior.Draw;
import io.github.roundstar.motion.posterior.Figure;
import io.github.roundstar.motion.posterior.Priors;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/**
 * What the frames of one axis tell, over one run or all runs of a night: every figure out of the
 * one posterior.
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

  private final AxisPosterior posterior;
  private final AxisQuestion question;
  private final List<Family> families;
  private final double declaredArcsecPerSecond;
  private final LostMotion.Kind kind;
  private final List<Integer> runIds;

  private AxisKnowledge(
      AxisPosterior posterior,
      AxisQuestion question,
      List<Family> families,
      double declaredArcsecPerSecond,
      LostMotion.Kind kind,
      List<Integer> runIds) {
    this.posterior = posterior;
    this.question = question;
    this.families = families;
    this.declaredArcsecPerSecond = declaredArcsecPerSecond;
    this.kind = kind;
    this.runIds = runIds;
  }

  /** One run, and which of its samples are without jolts. */
  public record Part(GuideRun run, Optional<JoltFree> quiet) {}

  /**
   * What runs tell.
   *
   * @param families sinusoids, the one that may move first
   */
  static Answer<AxisKnowledge> of(
      List<Part> parts, Axis axis, Equipment equipment, List<Family> families) {
    Answer<AxisKnowledge> playing = of(parts, axis, equipment, families, LostMotion.Kind.PLAY);
    if (axis == Axis.RA || playing.value().isEmpty()) {
      return playing;
    }
    // Only where pushes are lost at all the question is how.
    AxisPosterior play = playing.value().get().posterior();
    if (play.playProbability() < SURELY_LOST) {
      return playing;
    }
    Answer<AxisKnowledge> sticking = of(parts, axis, equipment, families, LostMotion.Kind.STICKING);
    return sticking
        .value()
        .filter(
            sticks ->
                sticks.posterior().logEvidence()
                        + Math.log(sticks.posterior().playProbability())
                        + Math.log(STICKING)
                    > play.logEvidence()
                        + Math.log(play.playProbability())
                        + Math.log(1 - STICKING))
        .map(sticks -> sticking)
        .orElse(playing);
  }

  private static Answer<AxisKnowledge> of(
      List<Part> parts,
      Axis axis,
      Equipment equipment,
      List<Family> families,
      LostMotion.Kind kind) {
    double cadence =
        parts.stream()
            .mapToDouble(part -> Cadence.medianSeconds(part.run().frames()).orElse(0))
            .filter(seconds -> seconds > 0)
            .min()
            .orElse(1);
    AxisQuestion question = new AxisQuestion(families, cadence, kind);
    List<Integer> ids = new ArrayList<>();
    double declared = 0;
    String because = "there is no run";
    for (Part part : parts) {
      Answer<Reconstruction> made = Reconstruction.of(part.run(), axis, equipment);
      if (made.value().isEmpty()) {
        because = made.because();
        continue;
      }
      MotionSeries plain = made.value().get().sky();
      Optional<String> unfit = unfit(plain, part.quiet());
      if (unfit.isPresent()) {
        because = unfit.get();
        continue;
      }
      double cosine = axis == Axis.DEC ? 1 : CosDec.of(part.run()).value().orElse(1.0);
      question.add(
          made.value().get(),
          plain,
          part.quiet(),
          cosine,
          part.run().camera().exposureSeconds().orElse(0));
      ids.add(part.run().id());
      declared = GuideRate.declaredAxis(part.run(), equipment).value().orElse(declared);
    }
    if (!question.hasRuns()) {
      return Answer.none(because);
    }
    return Answer.of(
        new AxisKnowledge(
            AxisPosterior.of(question.model(axis, Priors.USUAL)),
            question,
            families,
            declared,
            kind,
            ids));
  }

  private static Optional<String> unfit(MotionSeries plain, Optional<JoltFree> quiet) {
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

  /** The posterior itself. */
  public AxisPosterior posterior() {
    return posterior;
  }

  /** Speed of pulses at the axis, mean of both directions [arcsec/s]. */
  public Figure responseArcsecPerSecondAxis() {
    return posterior.strength().times(declaredArcsecPerSecond);
  }

  /** Speed of pulses east or north at the axis [arcsec/s]. */
  public Figure oneWayArcsecPerSecondAxis() {
    return posterior.oneWay().times(declaredArcsecPerSecond);
  }

  /** Speed of pulses west or south at the axis [arcsec/s]. */
  public Figure otherWayArcsecPerSecondAxis() {
    return posterior.otherWay().times(declaredArcsecPerSecond);
  }

  /** Drift of a run on the sky, pulses taken out [arcsec/min]; nothing where it took no part. */
  public Optional<Figure> driftArcsecPerMinuteSky(int runId) {
    int run = runIds.indexOf(runId);
    return run < 0 ? Optional.empty() : Optional.of(posterior.column(run, 0).times(60));
  }

  /** Noise of the star on the sky [arcsec]. */
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

  /** Amplitude of a family's first sinusoid, mean of the runs by what each knows [arcsec, axis]. */
  public Figure amplitudeArcsecAxis(int family) {
    int at = question.tone(family, 0);
    return pooled(
        run -> draw -> Math.hypot(draw.columns()[run][at], draw.columns()[run][at + 1]),
        TONE_WIDTH);
  }

  /** Period of a family, mean of the runs by what each knows [s]. */
  public Figure periodSeconds(int family) {
    double rate = families.get(family).angularRate();
    int at = question.rate(family);
    return pooled(
        run -> draw -> 2 * Math.PI / (rate + draw.columns()[run][at]),
        0.2 * families.get(family).periodSeconds());
  }

  /** A figure that every run tells for itself, weighted by its variance. */
  private Figure pooled(
      java.util.function.IntFunction<ToDoubleFunction<Draw>> ofRun, double priorWidth) {
    List<Draw> draws = posterior.draws();
    double[] sum = new double[draws.size()];
    double weights = 0;
    for (int run = 0; run < runIds.size(); run++) {
      double[] values = draws.stream().mapToDouble(ofRun.apply(run)).toArray();
      double mean = 0;
      double squares = 0;
      for (double value : values) {
        mean += value / values.length;
        squares += value * value / values.length;
      }
      double weight = 1 / Math.max(1e-12 * squares, squares - mean * mean);
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
}
