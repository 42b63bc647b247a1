package io.github.roundstar.diagnosis.exposures;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.Frames;
import io.github.roundstar.motion.Cadence;
import io.github.roundstar.signal.Quantile;
import io.github.roundstar.signal.Stretch;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/**
 * What is judged when a night is played again: its listed exposures, or windows of a length where
 * none were listed. One unit is round where the elongation in its middle and in its worst corner is
 * within the limit, as for any exposure.
 *
 * <p>Where an image was measured, the night as it was has the measured shape; another night has
 * what its motion changes of the predicted stretch added to it. What the image shows beyond the log
 * goes with what makes it: a bending telescope, or optics.
 */
public final class Units {
  private static final double ENOUGH_COVERAGE = 0.9;

  /**
   * How long after a dither exposures may begin, whatever the log says of settling; common
   * practice, no source [s].
   */
  public static final double WAIT_SECONDS = 30;

  /** Windows may overlap by about this share, so that a dither does not cost half of the night. */
  private static final double OVERLAP = 0.1;

  /** Places of the star that make an image in a playing; more change nothing that is told. */
  private static final int MOST_PLACES = 48;

  private final List<GuidedRun> runs;
  private final List<StarTrack> tracks;
  private final double[][][] setPoints;
  private final List<Unit> units;
  private final boolean listed;
  private final double limit;
  private final double seconds;

  /**
   * One exposure.
   *
   * @param run which run
   * @param from first measured frame of the run in it
   * @param to one past the last
   * @param settled first frame that a patient photographer would begin with
   * @param turn what the field's turn adds in the middle
   * @param corners the same in each corner
   * @param seen what its image showed
   */
  private record Unit(
      int run,
      int from,
      int to,
      int settled,
      double[] turn,
      List<double[]> corners,
      Optional<Seen> seen) {}

  /**
   * What an image showed.
   *
   * @param shape stretch measured; nothing for a part of the exposure, which was never seen by
   *     itself
   * @param sigma its standard error
   * @param beyond what of it the log does not tell
   * @param corner how much longer stars are in the worst corner, as a logarithm; 0 where they are
   *     not
   * @param kind what makes what lies beyond
   * @param cornerTurns whether it is the field's turn that makes the corner
   */
  private record Seen(
      Optional<Stretch> shape,
      double sigma,
      Stretch beyond,
      double corner,
      Beyond kind,
      boolean cornerTurns) {}

  /** What makes the part of an image that the log does not tell. */
  private enum Beyond {
    FLEXURE,
    OPTICS,
    AIR
  }

  /**
   * What is mended beside the motion of the guide star.
   *
   * @param turnShare share of the field's turn that is left
   * @param flexure whether the telescopes keep together
   * @param optics whether optics are set right
   * @param settled whether exposures wait for the star to settle
   * @param motionless whether nothing moves but by the air
   */
  public record Mended(
      double turnShare, boolean flexure, boolean optics, boolean settled, boolean motionless) {
    /** Nothing. */
    public static final Mended NOTHING = new Mended(1, false, false, false, false);
  }

  /**
   * Where the star was in each run, about the set point, at each measured frame.
   *
   * @param east [arcsec]
   * @param north [arcsec]
   */
  public record Path(double[][] east, double[][] north) {}

  /**
   * How the units came out.
   *
   * @param round round ones
   * @param middleElongation median over the units
   * @param cornerElongation the same in the worst corner; NaN where no corner is known
   */
  public record Outcome(int round, double middleElongation, double cornerElongation) {}

  private Units(
      List<GuidedRun> runs, List<Unit> units, boolean listed, double limit, double seconds) {
    this.runs = runs;
    this.tracks =
        runs.stream()
            .map(run -> StarTrack.measured(run.run().frames(), Optional.empty(), Optional.empty()))
            .toList();
    this.setPoints = new double[runs.size()][][];
    for (int r = 0; r < runs.size(); r++) {
      setPoints[r] = setPoints(runs.get(r).run().frames(), tracks.get(r));
    }
    this.units = List.copyOf(units);
    this.listed = listed;
    this.limit = limit;
    this.seconds = seconds;
  }

  /** Other units of the same runs. */
  private Units(Units of, List<Unit> units, double seconds) {
    this.runs = of.runs;
    this.tracks = of.tracks;
    this.setPoints = of.setPoints;
    this.units = List.copyOf(units);
    this.listed = of.listed;
    this.limit = of.limit;
    this.seconds = seconds;
  }

  private static double[][] setPoints(Frames frames, StarTrack track) {
    int[] at = IntStream.range(0, frames.size()).filter(frames::measured).toArray();
    double[][] moves = new double[2][at.length];
    for (int i = 0; i < at.length; i++) {
      moves[0][i] = track.ra(i) - frames.raArcsec(at[i]);
      moves[1][i] = track.dec(i) - frames.decArcsec(at[i]);
    }
    return moves;
  }

  /** The exposures that the log covers. */
  public static Units listed(
      ExposureReport report, List<GuidedRun> runs, Equipment equipment, Optional<FieldTurn> turn) {
    boolean bends =
        report.exposures().stream()
            .anyMatch(exposure -> "differential-flexure".equals(exposure.cause().code()));
    List<Unit> units = new ArrayList<>();
    double seconds = 0;
    for (JudgedExposure exposure : report.exposures()) {
      Window window = exposure.window();
      if (exposure.predicted().isEmpty() || window.run().isEmpty()) {
        continue;
      }
      int run = indexOf(runs, window.run().get());
      int settled = window.from();
      StarTrack track = window.run().get().track();
      for (int i = window.from(); i < window.to(); i++) {
        settled = track.sinceDither(i) < WAIT_SECONDS ? i + 1 : settled;
      }
      units.add(
          new Unit(
              run,
              window.from(),
              window.to(),
              Math.min(settled, Math.max(window.from(), window.to() - 2)),
              window.turned(turn, equipment),
              window.turnedCorners(turn, equipment),
              window.measured().map(m -> seen(exposure, m, bends))));
      seconds = Math.max(seconds, exposure.seconds());
    }
    return new Units(runs, units, true, equipment.limits().elongation(), seconds);
  }

  private static int indexOf(List<GuidedRun> runs, GuidedRun run) {
    for (int r = 0; r < runs.size(); r++) {
      if (runs.get(r).run().id() == run.run().id()) {
        return r;
      }
    }
    throw new IllegalArgumentException("run " + run.run().id());
  }

  private static Seen seen(JudgedExposure exposure, MeasuredShape measured, boolean bends) {
    Stretch told = exposure.predicted().orElseThrow().stretch();
    double size = Math.log(measured.elongation().value());
    double half =
        (Math.log(measured.elongation().hi95()) - Math.log(measured.elongation().lo95())) / 2;
    double angle = 2 * Math.toRadians(measured.angleDegrees().orElse(told.angleDegrees()));
    Stretch shape = new Stretch(size * Math.cos(angle), size * Math.sin(angle));
    String cause = String.valueOf(exposure.cause().code());
    double corner = measured.corner().map(c -> Math.max(0, Math.log(c.value()) - size)).orElse(0.0);
    Beyond kind =
        switch (cause) {
          case "differential-flexure" -> Beyond.FLEXURE;
          case "optics", "unknown" -> Beyond.OPTICS;
          case "atmospheric-dispersion", "differential-refraction" -> Beyond.AIR;
          default -> bends ? Beyond.FLEXURE : Beyond.OPTICS;
        };
    return new Seen(
        Optional.of(shape),
        half / Estimate.SIGMAS_95,
        new Stretch(shape.along() - told.along(), shape.aslant() - told.aslant()),
        corner,
        kind,
        measured.pattern().equals("rotation") || cause.equals("field-rotation"));
  }

  /**
   * Windows spread over the time from each settled star to the next dither. Where dithers leave no
   * room for one, the set point's moves are left out.
   *
   * @param seconds length of a window [s]
   */
  public static Units windows(
      List<GuidedRun> runs, double seconds, Equipment equipment, Optional<FieldTurn> turn) {
    return new Units(
        runs,
        tiled(runs, seconds, equipment, turn),
        false,
        equipment.limits().elongation(),
        seconds);
  }

  private static List<Unit> tiled(
      List<GuidedRun> runs, double seconds, Equipment equipment, Optional<FieldTurn> turn) {
    List<Unit> units = tiled(runs, seconds, equipment, turn, true);
    return units.isEmpty() ? tiled(runs, seconds, equipment, turn, false) : units;
  }

  private static List<Unit> tiled(
      List<GuidedRun> runs,
      double seconds,
      Equipment equipment,
      Optional<FieldTurn> turn,
      boolean betweenDithers) {
    List<Unit> units = new ArrayList<>();
    Optional<FieldPlace> star = FieldPlace.guideStar(equipment);
    List<FieldPlace> corners =
        turn.isPresent() && star.isPresent()
            ? FieldPlace.corners(
                equipment,
                equipment.imaging().arcsecPerPixel().isPresent()
                    ? Optional.of(
                        new ImageScale(equipment.imaging().arcsecPerPixel().getAsDouble(), ""))
                    : Optional.empty())
            : List.of();
    for (int r = 0; r < runs.size(); r++) {
      StarTrack track = runs.get(r).track();
      double cadence = Cadence.medianSeconds(runs.get(r).run().frames()).orElse(0);
      for (int[] calm : calm(track, betweenDithers)) {
        double first = track.seconds(calm[0]);
        double room = track.seconds(calm[1] - 1) + cadence - first;
        int count = (int) Math.floor(room / seconds + OVERLAP);
        for (int w = 0; w < count && room >= seconds * ENOUGH_COVERAGE; w++) {
          double begin = first + (count == 1 ? 0 : w * Math.max(0, room - seconds) / (count - 1));
          int from = firstAtOrAfter(track, begin);
          int to = Math.min(calm[1], firstAtOrAfter(track, begin + seconds));
          if (to - from < 2 || (to - from) * cadence < ENOUGH_COVERAGE * seconds) {
            continue;
          }
          double radians =
              turn.isEmpty() || star.isEmpty()
                  ? 0
                  : turn.get().radiansBetween(runs.get(r).run(), begin, begin + seconds);
          units.add(
              new Unit(
                  r,
                  from,
                  to,
                  from,
                  star.map(s -> FieldPlace.CENTRE.turned(s, radians)).orElse(new double[3]),
                  corners.stream().map(c -> c.turned(star.get(), radians)).toList(),
                  Optional.empty()));
        }
      }
    }
    return units;
  }

  /** Stretches from settled to the next dither, as first frame and one past the last. */
  private static List<int[]> calm(StarTrack track, boolean betweenDithers) {
    List<int[]> calm = new ArrayList<>();
    if (!betweenDithers) {
      if (track.size() > 1) {
        calm.add(new int[] {0, track.size()});
      }
      return calm;
    }
    int from = -1;
    for (int i = 0; i <= track.size(); i++) {
      boolean ends =
          i == track.size()
              || track.sinceDither(i) == 0
              || i > 0 && track.sinceDither(i) < track.sinceDither(i - 1);
      if (ends && from >= 0) {
        calm.add(new int[] {from, i});
        from = -1;
      }
      if (from < 0 && i < track.size() && track.sinceDither(i) > 0) {
        from = i;
      }
    }
    return calm;
  }

  private static int firstAtOrAfter(StarTrack track, double seconds) {
    int low = 0;
    int high = track.size();
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (track.seconds(middle) < seconds) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /** Number of units. */
  public int size() {
    return units.size();
  }

  /** Whether they are the listed exposures. */
  public boolean areListed() {
    return listed;
  }

  /** Length of the longest [s]. */
  public double seconds() {
    return seconds;
  }

  /** Whether images show more than the log tells, by what bends. */
  public boolean bends() {
    return beyond(Beyond.FLEXURE);
  }

  /** Whether images show more than the log tells, by optics. */
  public boolean opticsOff() {
    return beyond(Beyond.OPTICS)
        || units.stream()
            .anyMatch(
                unit -> unit.seen().filter(s -> s.corner() > 0 && !s.cornerTurns()).isPresent());
  }

  private boolean beyond(Beyond kind) {
    return units.stream().anyMatch(unit -> unit.seen().filter(s -> s.kind() == kind).isPresent());
  }

  /** Whether any exposure began before the star had settled. */
  public boolean unsettled() {
    return units.stream().anyMatch(unit -> unit.settled() > unit.from());
  }

  /** The night as logged, smoothed: for an axis that cannot be played. */
  public double[][] smoothed(int run) {
    StarTrack track = runs.get(run).track();
    double[][] places = new double[2][track.size()];
    for (int i = 0; i < track.size(); i++) {
      places[0][i] = track.ra(i) - setPoints[run][0][i];
      places[1][i] = track.dec(i) - setPoints[run][1][i];
    }
    return places;
  }

  /**
   * The units, each cut to a shorter time, where they are listed; else windows of that length stand
   * for them.
   */
  public Units cut(double shorter, Equipment equipment, Optional<FieldTurn> turn) {
    if (!listed) {
      return new Units(this, tiled(runs, shorter, equipment, turn), shorter);
    }
    List<Unit> cut = new ArrayList<>();
    for (Unit unit : units) {
      StarTrack track = tracks.get(unit.run());
      int to = unit.from();
      while (to < unit.to() && track.seconds(to) < track.seconds(unit.from()) + shorter) {
        to++;
      }
      double share = shorter / seconds;
      cut.add(
          new Unit(
              unit.run(),
              unit.from(),
              Math.max(unit.from() + 1, to),
              Math.min(unit.settled(), to - 1),
              scaled(unit.turn(), share * share),
              unit.corners().stream().map(c -> scaled(c, share * share)).toList(),
              unit.seen().map(seen -> cut(seen, share))));
    }
    return new Units(this, cut, shorter);
  }

  /**
   * Of what bends or turns, the variance over that of the round image goes with the square of the
   * time; optics stay.
   */
  private static Seen cut(Seen seen, double share) {
    double stretched = Math.hypot(seen.beyond().along(), seen.beyond().aslant());
    double variance = (Math.exp(2 * stretched) - 1) * share * share;
    double left =
        seen.kind() == Beyond.OPTICS || stretched == 0 ? 1 : Math.log(1 + variance) / 2 / stretched;
    return new Seen(
        Optional.empty(),
        seen.sigma(),
        new Stretch(left * seen.beyond().along(), left * seen.beyond().aslant()),
        seen.cornerTurns() ? share * share * seen.corner() : seen.corner(),
        seen.kind(),
        seen.cornerTurns());
  }

  private static double[] scaled(double[] moments, double factor) {
    return new double[] {moments[0] * factor, moments[1] * factor, moments[2] * factor};
  }

  /**
   * Judges a night.
   *
   * @param asItWas where the star was
   * @param played where it would have been
   * @param roundFwhm width of the round image [arcsec]
   * @param seed of what the measurement of images may be off
   */
  public Outcome judge(Path asItWas, Path played, Mended mended, double roundFwhm, long seed) {
    double round = PredictedShape.variance(roundFwhm);
    SplittableRandom random = new SplittableRandom(seed);
    StarTrack[] now = tracks(played);
    StarTrack[] then = tracks(asItWas);
    int count = 0;
    double[] middles = new double[units.size()];
    double[] corners = new double[units.size()];
    boolean anyCorner = false;
    for (int u = 0; u < middles.length; u++) {
      Unit unit = units.get(u);
      CoreShape core =
          mended.motionless()
              ? new CoreShape(round, round, 0)
              : core(unit, now[unit.run()], mended.settled(), mended.turnShare(), round);
      double middle;
      double corner;
      if (unit.seen().isPresent()) {
        Seen seen = unit.seen().get();
        Stretch told = PredictedShape.stretch(core);
        double kept =
            seen.kind() == Beyond.FLEXURE && mended.flexure()
                    || seen.kind() == Beyond.OPTICS && mended.optics()
                ? 0
                : 1;
        double along = told.along() + kept * seen.beyond().along();
        double aslant = told.aslant() + kept * seen.beyond().aslant();
        if (seen.shape().isPresent()) {
          // What was measured, and what the motion changes of it.
          Stretch before = PredictedShape.stretch(core(unit, then[unit.run()], false, 1, round));
          along += seen.shape().get().along() - seen.beyond().along() - before.along();
          aslant += seen.shape().get().aslant() - seen.beyond().aslant() - before.aslant();
        }
        along += seen.sigma() * random.nextGaussian();
        aslant += seen.sigma() * random.nextGaussian();
        middle = Math.hypot(along, aslant);
        double there =
            seen.cornerTurns()
                ? (mended.motionless() ? 0 : mended.turnShare() * mended.turnShare())
                : mended.optics() ? 0 : 1;
        corner = middle + there * seen.corner();
        anyCorner |= seen.corner() > 0;
      } else {
        middle = Math.log(PredictedShape.stretch(core).elongation());
        corner = middle;
        if (!mended.motionless()) {
          double share = mended.turnShare() * mended.turnShare();
          for (double[] turned : unit.corners()) {
            anyCorner = true;
            CoreShape there =
                new CoreShape(
                    core.ee() + share * (turned[0] - unit.turn()[0]),
                    core.nn() + share * (turned[1] - unit.turn()[1]),
                    core.en() + share * (turned[2] - unit.turn()[2]));
            corner = Math.max(corner, Math.log(PredictedShape.stretch(there).elongation()));
          }
        }
      }
      middles[u] = Math.exp(middle);
      corners[u] = Math.exp(corner);
      count += middles[u] <= limit && corners[u] <= limit ? 1 : 0;
    }
    return new Outcome(
        count,
        middles.length == 0 ? Double.NaN : Quantile.median(middles),
        anyCorner ? Quantile.median(corners) : Double.NaN);
  }

  /** Where one axis alone moves by this mean square, the image is as long as the limit allows. */
  public double bearableArcsec2(double roundFwhm) {
    return PredictedShape.variance(roundFwhm) * (limit * limit - 1);
  }

  /**
   * One axis about its mean in each unit.
   *
   * @param paths where the star was in each run, at each measured frame
   */
  public Scatter scatterWithin(double[][] paths) {
    Scatter scatter = new Scatter();
    double size = units.size();
    for (int u = 0; u < size; u++) {
      Unit unit = units.get(u);
      scatter.add(paths[unit.run()], unit.from(), unit.to(), u / size, (u + 1) / size);
    }
    return scatter;
  }

  private static CoreShape core(
      Unit unit, StarTrack track, boolean settled, double turnShare, double round) {
    int from = settled ? unit.settled() : unit.from();
    int stride = 1 + (unit.to() - from) / MOST_PLACES;
    return CoreShape.of(
        track,
        from,
        unit.to(),
        i -> (i - from) % stride == 0,
        scaled(unit.turn(), turnShare * turnShare),
        round);
  }

  private StarTrack[] tracks(Path path) {
    StarTrack[] all = new StarTrack[tracks.size()];
    for (int r = 0; r < all.length; r++) {
      all[r] =
          tracks
              .get(r)
              .at(sum(path.east()[r], setPoints[r][0]), sum(path.north()[r], setPoints[r][1]));
    }
    return all;
  }

  private static double[] sum(double[] one, double[] other) {
    double[] sum = one.clone();
    for (int i = 0; i < sum.length; i++) {
      sum[i] += other[i];
    }
    return sum;
  }
}
