package io.github.roundstar.motion;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.signal.LeastSquares;
import io.github.roundstar.signal.LinearFit;
import io.github.roundstar.signal.WanderNoise;
import io.github.roundstar.signal.WhiteRegression;
import io.github.roundstar.signal.Whitening;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * A run's offsets as drift, bend and pulses behind a play, and the linear model about it. The first
 * columns are those of the background; after them come the strength of pulses, how unlike both
 * directions are, where the gears rest at first, and last the play in arcseconds.
 */
final class PlayModel {
  /** A column of less than this share of what the pulses move tells nothing. */
  private static final double TELLS = 1e-4;

  private final Optional<JoltFree> quiet;
  private final TiedPulses pulses;
  private final MotionSeries motion;
  private final double[] offsets;
  private final double[][] background;

  PlayModel(PlayProfile profile) {
    this.quiet = profile.quiet();
    this.pulses = new TiedPulses(profile.reconstruction());
    AxisRun run = quiet.map(profile.plain()::without).orElse(profile.plain());
    this.motion = run.motion();
    this.background = ToneColumns.withDrift(run, List.of());
    this.offsets = motion.answering(0, 0).arcsec();
  }

  /**
   * A play with the strength of pulses that is likeliest for it.
   *
   * @param play width as pulses of strength 1 lose it
   */
  record Place(LostMotion play, double strength, WanderNoise wanderNoise, double logLikelihood) {
    /** The play itself [arcsec]. */
    double arcsec() {
      return play.arcsec() * strength;
    }
  }

  /** What derivatives are taken over: a standard error, within bounds [arcsec; share; share]. */
  record Steps(double width, double unlikeness, double start) {
    static final Steps FIRST = new Steps(0.05, 0.01, 0.03);

    static Steps within(double width, double unlikeness, double start) {
      return new Steps(
          Math.max(0.03, Math.min(0.3, width)),
          Math.max(0.002, Math.min(0.03, unlikeness)),
          Math.max(0.01, Math.min(0.1, start)));
    }
  }

  /**
   * The linear model about a place.
   *
   * @param columns at the samples that are left, as the class says
   * @param starts whether where the gears rest at first is among them: it tells something, and is
   *     not held by a flank
   * @param fit of the white offsets
   */
  record Linear(
      Place place,
      Steps steps,
      double[][] columns,
      boolean starts,
      LeastSquares design,
      LinearFit fit) {
    /** Column of the play; its coefficient is the play [arcsec]. */
    int play() {
      return columns.length - 1;
    }

    /** Column of the strength; its coefficient is the strength. */
    int strength() {
      return play() - (starts ? 3 : 2);
    }

    /** Whether pulses surely push at all: beside a star that never answers them nothing is lost. */
    boolean pushes() {
      return place.strength() > 0
          && fit.coefficient(strength()) > Estimate.SIGMAS_95 * fit.standardError(strength());
    }

    /** How much more unlike the directions are than at the place. */
    double unlikeness() {
      return fit.coefficient(strength() + 1) / place.strength();
    }

    /** How much farther the gears rest at first than at the place. */
    double start() {
      return starts ? fit.coefficient(strength() + 2) / place.strength() : 0;
    }

    /** Steps of a standard error. */
    Steps nextSteps() {
      double strength = place.strength();
      return Steps.within(
          fit.standardError(play()) / strength,
          fit.standardError(strength() + 1) / strength,
          starts ? fit.standardError(strength() + 2) / strength : steps.start());
    }
  }

  /** A play, wander and noise known, everything else fitted. */
  Place at(LostMotion play, WanderNoise wanderNoise) {
    double[][] columns = Arrays.copyOf(background, background.length + 1);
    columns[background.length] = kept(pulses.column(play));
    Whitening whitening = whitening(wanderNoise);
    WhiteRegression fit = WhiteRegression.of(whitening.apply(offsets), whitening.apply(columns));
    return new Place(
        play,
        fit.coefficients()[background.length],
        wanderNoise,
        whitening.logLikelihood(fit.sumOfSquares()));
  }

  /** The linear model; nothing where its columns cannot be told apart, or no pulse pushes. */
  Optional<Linear> linear(Place place, Steps steps) {
    return linear(place, steps, true)
        .flatMap(
            free -> {
              double start = place.play().start();
              boolean held = start <= 0 && free.start() < 0 || start >= 1 && free.start() > 0;
              return held ? linear(place, steps, false) : Optional.of(free);
            })
        .filter(Linear::pushes);
  }

  private Optional<Linear> linear(Place place, Steps steps, boolean startFree) {
    LostMotion play = place.play();
    Whitening whitening = whitening(place.wanderNoise());
    double[] column = kept(pulses.column(play));
    double[] byWidth = kept(pulses.byWidth(play, steps.width()));
    double[] byStart = kept(pulses.byStart(play, steps.start()));
    boolean starts = startFree && tells(whitening.apply(byStart), whitening.apply(column));
    List<double[]> columns = new ArrayList<>(List.of(background));
    columns.add(samePlay(column, play.arcsec(), byWidth));
    columns.add(kept(pulses.byUnlikeness(play, steps.unlikeness())));
    if (starts) {
      columns.add(byStart);
    }
    columns.add(byWidth);
    double[][] all = columns.toArray(double[][]::new);
    return LeastSquares.on(whitening.apply(all))
        .map(
            design ->
                new Linear(
                    place, steps, all, starts, design, design.fit(whitening.apply(offsets))));
  }

  private static boolean tells(double[] column, double[] beside) {
    return LeastSquares.dot(column, column) > TELLS * TELLS * LeastSquares.dot(beside, beside);
  }

  /** What a strength of 1 moves behind a play that stays the same in arcseconds, not in pulses. */
  private static double[] samePlay(double[] column, double width, double[] byWidth) {
    double[] samePlay = column.clone();
    for (int i = 0; i < samePlay.length; i++) {
      samePlay[i] -= width * byWidth[i];
    }
    return samePlay;
  }

  /** Wander and noise beside the linear model, looked for near those of its place. */
  WanderNoise refit(Linear top) {
    return refit(top, offsets, top.columns());
  }

  private WanderNoise refit(Linear top, double[] data, double[][] columns) {
    WanderNoise near = top.place().wanderNoise();
    return near.refit(motion.seconds(), motion.startsPiece(), data, columns).orElse(near);
  }

  /** The same with the memory that the noise has. */
  WanderNoise.Remembering remembering(Linear top) {
    return top.place()
        .wanderNoise()
        .remembering(motion.seconds(), motion.startsPiece(), offsets, top.columns());
  }

  /** The play beside other wander and noise [arcsec]. */
  double arcsec(Linear top, WanderNoise other) {
    Whitening whitening = whitening(other);
    return WhiteRegression.of(whitening.apply(offsets), whitening.apply(top.columns()))
        .coefficients()[top.play()];
  }

  /** Log likelihood of a play in arcseconds, everything else fitted, wander and noise too. */
  double logLikelihood(Linear top, double arcsec) {
    LostMotion play = top.place().play();
    double[] byWidth = top.columns()[top.play()];
    double width = arcsec / top.place().strength();
    double[][] columns = Arrays.copyOf(top.columns(), top.play());
    double[] column = kept(pulses.column(TiedPulses.wide(play, width)));
    columns[top.strength()] = samePlay(column, width, byWidth);
    double[] data = offsets.clone();
    for (int i = 0; i < data.length; i++) {
      data[i] -= arcsec * byWidth[i];
    }
    Whitening whitening = whitening(refit(top, data, columns));
    return whitening.logLikelihood(
        WhiteRegression.of(whitening.apply(data), whitening.apply(columns)).sumOfSquares());
  }

  private double[] kept(double[] column) {
    return quiet.map(q -> q.kept(column)).orElse(column);
  }

  private Whitening whitening(WanderNoise wanderNoise) {
    return motion.whitening(wanderNoise);
  }
}
