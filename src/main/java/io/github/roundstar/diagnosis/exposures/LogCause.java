package io.github.roundstar.diagnosis.exposures;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.signal.Quantile;
import io.github.roundstar.signal.RobustScale;
import io.github.roundstar.signal.Stretch;
import java.util.Locale;
import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.function.IntToDoubleFunction;

/**
 * Which part of the logged motion trailed an exposure. The rules, in order; the first that holds is
 * the cause:
 *
 * <ol>
 *   <li>{@code field-rotation}: without the turn of the field about the guide star the stretch is
 *       at most half ({@link #mostly}).
 *   <li>{@code star-lost}: without the frames from a loss of the star to 40 s after it came back,
 *       the stretch is at most half.
 *   <li>{@code slow-settling}: without the frames that the log calls settling, or that follow a
 *       dither by less than 90 s, it is at most half.
 *   <li>{@code jolts}: without the frames around sudden moves (beyond 1 arcsec and six robust
 *       deviations of the run's moves from frame to frame, or of the exposure's places) it is at
 *       most half. A dither's own move is none. Of these two, where both hold, the one that leaves
 *       less.
 *   <li>{@code over-correction}: along the long axis the star swings back and forth: lag-1 or lag-2
 *       autocorrelation, the noise taken off, below -0.3.
 *   <li>{@code dec-backlash}: the long axis lies nearer north than east, and the play found in
 *       declination is surely above 0.5 arcsec.
 *   <li>{@code polar-axis}: nearer north without such play, and a straight line explains at least
 *       half of the motion in declination.
 *   <li>{@code periodic-error}: nearer east, and a periodic error was found in the night.
 *   <li>{@code polar-axis}: nearer east, no periodic error, and a straight line explains at least
 *       half of the motion in right ascension.
 * </ol>
 *
 * <p>Half, 40 s, 90 s and the other limits: common practice, no source; simulated nights with one
 * fault confirm them.
 */
final class LogCause {
  private static final double HALF = 0.5;
  private static final double AFTER_LOSS_SECONDS = 40;
  private static final double AFTER_DITHER_SECONDS = 90;
  private static final double BESIDE_JOLT_SECONDS = 8;
  private static final double AFTER_JOLT_SECONDS = 60;
  private static final double JOLT_SIGMAS = 6;
  private static final double LEAST_JOLT_ARCSEC = 1;
  private static final double SWINGS = -0.3;
  private static final double LEAST_PLAY_ARCSEC = 0.5;

  private final GuidedRun run;
  private final StarTrack track;
  private final int from;
  private final int to;
  private final double seeing;
  private final double whole;

  /**
   * For one exposure.
   *
   * @param from first frame of the track in its window
   * @param to one past the last
   * @param seeingFwhm width of the round image [arcsec]
   */
  LogCause(GuidedRun run, int from, int to, double seeingFwhm) {
    this.run = run;
    this.track = run.track();
    this.from = from;
    this.to = to;
    this.seeing = seeingFwhm;
    this.whole = stretch(i -> true);
  }

  /** The cause; its code is null when no rule holds. */
  Cause find() {
    return lost()
        .or(this::settlingOrJolts)
        .map(Without::cause)
        .or(this::swings)
        .orElseGet(() -> northward() ? declination() : rightAscension());
  }

  /**
   * Whether what the log does not hold makes up at least half of the stretch.
   *
   * @param added what it adds to the star image, as (ee, nn, en) [arcsec2]
   */
  boolean mostly(double[] added) {
    return whole <= HALF * stretch(i -> true, added);
  }

  private double stretch(IntPredicate wanted) {
    return stretch(wanted, new double[3]);
  }

  private double stretch(IntPredicate wanted, double[] added) {
    double round = PredictedShape.variance(seeing);
    CoreShape core = CoreShape.of(track, from, to, wanted, added, round);
    Stretch stretch = PredictedShape.stretch(core);
    return Math.hypot(stretch.along(), stretch.aslant());
  }

  /**
   * A cause and what it leaves.
   *
   * @param cause the cause
   * @param rest stretch without its frames
   */
  private record Without(Cause cause, double rest) {}

  /** Where both hold, as when a cable catches while the star settles, what leaves less. */
  private Optional<Without> settlingOrJolts() {
    Optional<Without> settling = settling();
    Optional<Without> jolts = jolts();
    boolean jolted =
        settling.isEmpty() || jolts.isPresent() && jolts.get().rest < settling.get().rest;
    return jolted ? jolts : settling;
  }

  /** The cause where leaving frames out takes away at least half of the stretch. */
  private Optional<Without> without(IntPredicate part, String code, String what) {
    int n = 0;
    for (int i = from; i < to; i++) {
      n += part.test(i) ? 1 : 0;
    }
    if (n == 0 || to - from - n < 2) {
      return Optional.empty();
    }
    double rest = stretch(i -> !part.test(i));
    return rest > HALF * whole
        ? Optional.empty()
        : Optional.of(
            new Without(
                new Cause(
                    code,
                    format(
                        "without %d frames %s the log gives an elongation of %.2f instead of %.2f",
                        n, what, Math.exp(rest), Math.exp(whole))),
                rest));
  }

  private Optional<Without> lost() {
    boolean[] after = new boolean[to - from];
    double since = Double.NEGATIVE_INFINITY;
    for (int i = from; i < to; i++) {
      since = track.lostBefore(i) > 0 && i > 0 ? track.seconds(i) : since;
      after[i - from] = track.seconds(i) - since < AFTER_LOSS_SECONDS;
    }
    return without(i -> after[i - from], "star-lost", "after the star was lost");
  }

  private Optional<Without> settling() {
    return without(
        i -> track.sinceDither(i) < AFTER_DITHER_SECONDS,
        "slow-settling",
        "while the star settled after a dither");
  }

  private Optional<Without> jolts() {
    Sudden east = new Sudden(track::ra);
    Sudden north = new Sudden(track::dec);
    boolean[] near = new boolean[to - from];
    int first = from;
    while (first > 0 && track.seconds(from) - track.seconds(first - 1) < AFTER_JOLT_SECONDS) {
      first--;
    }
    for (int jolt = first; jolt < to; jolt++) {
      boolean dithered = track.sinceDither(jolt) < BESIDE_JOLT_SECONDS;
      boolean jumped = !dithered && (east.jump(jolt) || north.jump(jolt));
      boolean far = jolt >= from && (east.far(jolt) || north.far(jolt));
      if (!jumped && !far) {
        continue;
      }
      double after = jumped ? AFTER_JOLT_SECONDS : BESIDE_JOLT_SECONDS;
      for (int i = from; i < to; i++) {
        double since = track.seconds(i) - track.seconds(jolt);
        near[i - from] |= since > -BESIDE_JOLT_SECONDS && since < after;
      }
    }
    return without(i -> near[i - from], "jolts", "around sudden moves");
  }

  /** Moves along one axis that the rest of the run, or of the exposure, does not make. */
  private final class Sudden {
    private final IntToDoubleFunction place;
    private final double mostMove;
    private final double middle;
    private final double farthest;

    Sudden(IntToDoubleFunction place) {
      this.place = place;
      double[] moves = new double[track.size() - 1];
      for (int i = 0; i < moves.length; i++) {
        moves[i] = place.applyAsDouble(i + 1) - place.applyAsDouble(i);
      }
      double[] inside = new double[to - from];
      for (int i = from; i < to; i++) {
        inside[i - from] = place.applyAsDouble(i);
      }
      mostMove = Math.max(LEAST_JOLT_ARCSEC, JOLT_SIGMAS * RobustScale.of(moves));
      middle = Quantile.median(inside);
      farthest = Math.max(LEAST_JOLT_ARCSEC, JOLT_SIGMAS * RobustScale.of(inside));
    }

    /** A jump during an exposure of the guide camera shows in two moves, half in each. */
    boolean jump(int i) {
      double now = place.applyAsDouble(i);
      return i > 0 && Math.abs(now - place.applyAsDouble(i - 1)) > mostMove
          || i > 1 && Math.abs(now - place.applyAsDouble(i - 2)) > mostMove;
    }

    boolean far(int i) {
      return Math.abs(place.applyAsDouble(i) - middle) > farthest;
    }
  }

  private Optional<Cause> swings() {
    boolean north = northward();
    IntToDoubleFunction place = north ? track::dec : track::ra;
    double noise = (north ? track.decNoise() : track.raNoise()).addedVariance();
    double mean = 0;
    for (int i = from; i < to; i++) {
      mean += place.applyAsDouble(i) / (to - from);
    }
    double[] sums = new double[3];
    for (int lag = 0; lag < 3; lag++) {
      for (int i = from; i + lag < to; i++) {
        sums[lag] += (place.applyAsDouble(i) - mean) * (place.applyAsDouble(i + lag) - mean);
      }
    }
    double variance = sums[0] + (to - from) * noise;
    double lowest = Math.min(sums[1], sums[2]) / variance;
    return variance > 0 && lowest < SWINGS
        ? Optional.of(
            new Cause(
                "over-correction",
                format(
                    "the star swings back and forth in %s: autocorrelation %.2f",
                    north ? "declination" : "right ascension", lowest)))
        : Optional.empty();
  }

  private boolean northward() {
    double round = PredictedShape.variance(seeing);
    CoreShape core = CoreShape.of(track, from, to, i -> true, new double[3], round);
    return core.nn() > core.ee();
  }

  private Cause declination() {
    return lostMotion(
            run.decBacklashArcsec(),
            "the star moves in declination, where the gears have %.1f (%.1f .. %.1f) arcsec of play")
        .or(
            () ->
                lostMotion(
                    run.decStickingArcsec(),
                    "the star moves in declination, where the axis sticks until pulses add up to"
                        + " %.1f (%.1f .. %.1f) arcsec"))
        .orElseGet(this::creep);
  }

  private static Optional<Cause> lostMotion(Optional<Estimate> arcsec, String text) {
    return arcsec
        .filter(e -> e.lo95() > LEAST_PLAY_ARCSEC)
        .map(e -> new Cause("dec-backlash", format(text, e.value(), e.lo95(), e.hi95())));
  }

  private Cause creep() {
    double share = straightShare(track::dec);
    return share >= HALF
        ? new Cause(
            "polar-axis",
            format("the star creeps in declination: a straight line explains %.0f %%", 100 * share))
        : new Cause(null, "the star moves in declination, and no single part stands out");
  }

  private Cause rightAscension() {
    if (run.periodicArcsec().isPresent()) {
      Estimate swing = run.periodicArcsec().get();
      return new Cause(
          "periodic-error",
          format(
              "the star moves in right ascension, where the mount swings by %.1f (%.1f .. %.1f)"
                  + " arcsec",
              swing.value(), swing.lo95(), swing.hi95()));
    }
    double share = straightShare(track::ra);
    return share >= HALF
        ? new Cause(
            "polar-axis",
            format(
                "the star creeps in right ascension: a straight line explains %.0f %%",
                100 * share))
        : new Cause(null, "the star moves in right ascension, and no single part stands out");
  }

  /** Share of the motion along one axis that a straight line explains. */
  private double straightShare(IntToDoubleFunction place) {
    int n = to - from;
    double time = 0;
    double mean = 0;
    for (int i = from; i < to; i++) {
      time += track.seconds(i) / n;
      mean += place.applyAsDouble(i) / n;
    }
    double tt = 0;
    double tx = 0;
    double xx = 0;
    for (int i = from; i < to; i++) {
      double t = track.seconds(i) - time;
      double x = place.applyAsDouble(i) - mean;
      tt += t * t;
      tx += t * x;
      xx += x * x;
    }
    return tt > 0 && xx > 0 ? tx * tx / tt / xx : 0;
  }

  private static String format(String pattern, Object... values) {
    return String.format(Locale.ROOT, pattern, values);
  }
}
