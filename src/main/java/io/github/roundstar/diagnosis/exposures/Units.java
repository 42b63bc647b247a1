package io.github.roundstar.diagnosis.exposures;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Frames;
import io.github.roundstar.motion.Cadence;
import io.github.roundstar.signal.Quantile;
import io.github.roundstar.signal.Stretch;
import io.github.roundstar.sky.GuideTolerance;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import java.util.stream.Stream;

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
  private static final double WAIT_SECONDS = 30;

  /** So much of an exposure shows how it would have been as a whole. */
  private static final double LEAST_SETTLED = 0.3;

  /** An exposure that begins later has nothing of the dither before it [s]. */
  private static final double DITHERED_SECONDS = 180;

  /** Windows may overlap by about this share, so that a dither does not cost half of the night. */
  private static final double OVERLAP = 0.1;

  /** Parts of a longer exposure that are judged; more change nothing that is told. */
  private static final int MOST_PARTS = 3;

  /** Places of the star that make an image in a playing; more change nothing that is told. */
  private static final int MOST_PLACES = 48;

  private final List<GuidedRun> runs;
  private final List<StarTrack> tracks;
  private final double[][][] setPoints;
  private final List<Unit> units;
  private final boolean listed;
  private final double limit;
  private final double seconds;
  private final double waitSeconds;

  /**
   * One exposure.
   *
   * @param run which run
   * @param from first measured frame of the run in it
   * @param to one past the last
   * @param settled first frame that a patient photographer would begin with
   * @param settledTo one past the last of an exposure as long that begins there
   * @param turned how the field turns in it
   * @param seen what its image showed
   */
  private record Unit(
      int run,
      int from,
      int to,
      int settled,
      int settledTo,
      Turned turned,
      Optional<SeenImage> seen) {
    /** One that begins when the star has settled anyway. */
    Unit(int run, int from, int to, Turned turned, Optional<SeenImage> seen) {
      this(run, from, to, from, to, turned, seen);
    }
  }

  /**
   * What a turn of the field adds to an image; its moments go with the square of the angle.
   *
   * @param middle moments of one radian in the middle of the field [arcsec2]
   * @param corners the same in each corner
   */
  private record Field(double[] middle, List<double[]> corners) {
    private static final Field NONE = new Field(new double[3], List.of());

    static Field of(Equipment equipment, Optional<ImageScale> scale) {
      FieldPlace star = FieldPlace.likelyGuideStar(equipment, scale);
      return new Field(
          FieldPlace.CENTRE.turned(star, 1),
          FieldPlace.corners(equipment, scale).stream()
              .map(corner -> corner.turned(star, 1))
              .toList());
    }
  }

  /** How the field turns in an exposure, by the axis of each draw. */
  private static final class Turned {
    private static final Turned NOT = new Turned(Field.NONE, () -> new double[0], 1);

    private final Field field;
    private final Supplier<double[]> angles;
    private final double share;

    /** Most lengths of windows are never judged, so angles are worked out when asked for. */
    private volatile double[] radians;

    /**
     * A turn.
     *
     * @param angles by the axis of each draw; none where nothing turns [rad]
     * @param share of these angles
     */
    private Turned(Field field, Supplier<double[]> angles, double share) {
      this.field = field;
      this.angles = angles;
      this.share = share;
    }

    /** Square of the angle of a draw, a share of the axis's error left. */
    double square(int draw, double left) {
      if (radians == null) {
        radians = angles.get();
      }
      double angle = radians.length == 0 ? 0 : left * (share * radians[draw % radians.length]);
      return angle * angle;
    }

    /** The same in another part of the exposure. */
    Turned part(double ofExposure) {
      return new Turned(field, angles, ofExposure * share);
    }
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
   * @param eastJumps how far a pulse moved it between each frame and the next [arcsec]
   * @param northJumps likewise
   */
  public record Path(
      double[][] east, double[][] north, double[][] eastJumps, double[][] northJumps) {}

  /**
   * How the units came out.
   *
   * @param round round ones
   * @param middleElongation median over the units
   * @param cornerElongation the same in the worst corner; NaN where no corner is known
   */
  public record Outcome(int round, double middleElongation, double cornerElongation) {}

  private Units(
      List<GuidedRun> runs,
      List<Unit> units,
      boolean listed,
      double limit,
      double seconds,
      double waitSeconds) {
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
    this.waitSeconds = waitSeconds;
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
    this.waitSeconds = of.waitSeconds;
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

  /**
   * The exposures that the log covers.
   *
   * @param settlingSeconds how long the star takes to settle after a dither, 0 where that is not
   *     known [s]
   */
  public static Units listed(
      ExposureReport report,
      List<GuidedRun> runs,
      Equipment equipment,
      Optional<FieldTurn> turn,
      double settlingSeconds) {
    double waitSeconds = waitSeconds(report, settlingSeconds);
    boolean bends =
        report.exposures().stream()
            .anyMatch(exposure -> "differential-flexure".equals(exposure.cause().code()));
    ImagesByLog images = ImagesByLog.of(report.exposures());
    List<Unit> units = new ArrayList<>();
    double seconds = 0;
    for (JudgedExposure exposure : report.exposures()) {
      Window window = exposure.window();
      if (exposure.predicted().isEmpty() || window.run().isEmpty()) {
        continue;
      }
      int run = indexOf(runs, window.run().get());
      int[] settled = settled(window, waitSeconds);
      units.add(
          new Unit(
              run,
              window.from(),
              window.to(),
              settled[0],
              settled[1],
              window.measured().isPresent() && turn.filter(FieldTurn::known).isEmpty()
                  ? Turned.NOT
                  : turned(
                      turn,
                      Field.of(equipment, ImageScale.of(window.frame(), equipment)),
                      runs.get(run),
                      window.startSeconds(),
                      window.startSeconds() + exposure.seconds()),
              window.measured().map(m -> SeenImage.of(exposure, m, bends, images))));
      seconds = Math.max(seconds, exposure.seconds());
    }
    boolean early = units.stream().anyMatch(unit -> unit.settled() > unit.from());
    return new Units(
        runs, units, true, equipment.limits().elongation(), seconds, early ? waitSeconds : 0);
  }

  /** Longer than the star takes to settle, and longer than was waited. */
  private static double waitSeconds(ExposureReport report, double settlingSeconds) {
    double[] waited =
        report.exposures().stream()
            .map(JudgedExposure::window)
            .filter(window -> window.run().isPresent() && window.from() < window.to())
            .mapToDouble(window -> window.run().get().track().sinceDither(window.from()))
            .filter(since -> since < DITHERED_SECONDS)
            .toArray();
    double now = waited.length == 0 ? 0 : Quantile.median(waited);
    return Math.max(WAIT_SECONDS, Math.max(settlingSeconds, Math.rint(now + WAIT_SECONDS)));
  }

  /**
   * First frame, and one past the last, of an exposure as long that begins after the wait. Where
   * the next dither leaves less, the settled part stands for it, if need be with some of what was
   * before.
   */
  private static int[] settled(Window window, double waitSeconds) {
    StarTrack track = window.run().orElseThrow().track();
    int first = window.from();
    for (int i = window.from(); i < window.to(); i++) {
      first = track.sinceDither(i) < waitSeconds ? i + 1 : first;
    }
    if (first == window.from()) {
      return new int[] {window.from(), window.to()};
    }
    while (first < track.size() && track.sinceDither(first) < waitSeconds && calm(track, first)) {
      first++;
    }
    int end = window.to();
    while (end < track.size() && calm(track, end)) {
      end++;
    }
    int frames = window.to() - window.from();
    int least = Math.max(2, (int) (LEAST_SETTLED * frames));
    int from = Math.max(window.from(), Math.min(first, end - least));
    return new int[] {from, Math.min(end, from + frames)};
  }

  /** Whether no dither began between the frame before and this one. */
  private static boolean calm(StarTrack track, int i) {
    return i == 0 || track.sinceDither(i) == 0 || track.sinceDither(i) >= track.sinceDither(i - 1);
  }

  private static int indexOf(List<GuidedRun> runs, GuidedRun run) {
    for (int r = 0; r < runs.size(); r++) {
      if (runs.get(r).run().id() == run.run().id()) {
        return r;
      }
    }
    throw new IllegalArgumentException("run " + run.run().id());
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
        seconds,
        0);
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
    Field field = Field.of(equipment, scale(equipment));
    List<Unit> units = new ArrayList<>();
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
          units.add(
              new Unit(
                  r,
                  from,
                  to,
                  turned(turn, field, runs.get(r), begin, begin + seconds),
                  Optional.empty()));
        }
      }
    }
    return units;
  }

  private static Optional<ImageScale> scale(Equipment equipment) {
    return equipment.imaging().arcsecPerPixel().stream()
        .mapToObj(arcsecPerPixel -> new ImageScale(arcsecPerPixel, ""))
        .findFirst();
  }

  /** How the field turns about the guide star from one time of a run to another. */
  private static Turned turned(
      Optional<FieldTurn> turn, Field field, GuidedRun run, double from, double to) {
    return turn.map(
            known -> new Turned(field, () -> known.drawnRadiansBetween(run.run(), from, to), 1))
        .orElse(Turned.NOT);
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

  /** How long after a dither exposures would better begin; 0 where none begins too early [s]. */
  public double waitSeconds() {
    return waitSeconds;
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
    return images().anyMatch(image -> image.showsMore(SeenImage.Maker.FLEXURE));
  }

  /** Whether images show more than the log tells, by optics. */
  public boolean opticsOff() {
    return images().anyMatch(i -> i.showsMore(SeenImage.Maker.OPTICS) || i.cornersOff());
  }

  private Stream<SeenImage> images() {
    return units.stream().flatMap(unit -> unit.seen().stream());
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
   * The units, each cut into shorter parts of which a few stand for all, where they are listed;
   * else windows of that length.
   */
  public Units cut(double shorter, Equipment equipment, Optional<FieldTurn> turn) {
    if (!listed) {
      return new Units(this, tiled(runs, shorter, equipment, turn), shorter);
    }
    double share = shorter / seconds;
    int parts = (int) Math.floor(seconds / shorter + 1e-9);
    int judged = Math.min(parts, MOST_PARTS);
    List<Unit> cut = new ArrayList<>();
    for (Unit unit : units) {
      StarTrack track = tracks.get(unit.run());
      for (int k = 0; k < judged; k++) {
        double begin =
            track.seconds(unit.from()) + (k + 0.5) * parts / judged * shorter - shorter / 2;
        int from = Math.max(unit.from(), firstAtOrAfter(track, begin));
        int to = Math.min(unit.to(), firstAtOrAfter(track, begin + shorter));
        if (to - from < 2) {
          continue;
        }
        cut.add(
            new Unit(
                unit.run(),
                from,
                to,
                unit.turned().part(share),
                unit.seen().map(image -> image.part(share))));
      }
    }
    return new Units(this, cut, shorter);
  }

  /**
   * Exposures of another length: shorter ones as {@link #cut}, longer ones as windows between
   * dithers of which the images nearest to them tell what the log does not.
   */
  public Units ofLength(double length, Equipment equipment, Optional<FieldTurn> turn) {
    if (length == seconds) {
      return this;
    }
    if (length < seconds) {
      return cut(length, equipment, turn);
    }
    List<Unit> longer = tiled(runs, length, equipment, turn, true);
    return new Units(
        this,
        listed ? longer.stream().map(window -> seenBeside(window, length)).toList() : longer,
        length);
  }

  private Unit seenBeside(Unit window, double length) {
    Unit nearest =
        units.stream()
            .min(
                Comparator.comparing((Unit unit) -> unit.run() != window.run())
                    .thenComparing(unit -> Math.abs(unit.from() - window.from())))
            .orElseThrow();
    return new Unit(
        window.run(),
        window.from(),
        window.to(),
        nearest.turned() == Turned.NOT ? Turned.NOT : window.turned(),
        nearest.seen().map(image -> image.part(length / seconds)));
  }

  /** The longest stretch from a settled star to the next dither, or to the run's end [s]. */
  public double longestCalmSeconds() {
    return longest(true);
  }

  /** The longest run [s]. */
  public double longestRunSeconds() {
    return longest(false);
  }

  private double longest(boolean betweenDithers) {
    double longest = 0;
    for (StarTrack track : tracks) {
      for (int[] calm : calm(track, betweenDithers)) {
        longest = Math.max(longest, track.seconds(calm[1] - 1) - track.seconds(calm[0]));
      }
    }
    return longest;
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
   * @param draw which draw: of the axis, and of what the measurement of images may be off
   */
  public Outcome judge(Path asItWas, Path played, Mended mended, double roundFwhm, int draw) {
    double round = PredictedShape.variance(roundFwhm);
    SplittableRandom random = new SplittableRandom(31L * draw);
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
              : core(unit, now[unit.run()], mended.settled(), draw, mended.turnShare(), round);
      double middle;
      double corner;
      if (unit.seen().isPresent()) {
        SeenImage seen = unit.seen().get();
        Stretch before =
            seen.whole()
                ? PredictedShape.stretch(core(unit, then[unit.run()], false, draw, 1, round))
                : seen.told();
        middle = seen.played(PredictedShape.stretch(core), before, mended, random).size();
        corner = middle + seen.cornerPlayed(mended);
        anyCorner |= seen.corner() > 0;
      } else {
        middle = Math.log(PredictedShape.stretch(core).elongation());
        corner = middle;
        if (!mended.motionless()) {
          double square = unit.turned().square(draw, mended.turnShare());
          double[] middlePart = unit.turned().field.middle();
          for (double[] turned : unit.turned().field.corners()) {
            anyCorner = true;
            CoreShape there =
                new CoreShape(
                    core.ee() + square * (turned[0] - middlePart[0]),
                    core.nn() + square * (turned[1] - middlePart[1]),
                    core.en() + square * (turned[2] - middlePart[2]));
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
    double rms = GuideTolerance.axisRmsArcsec(roundFwhm, limit);
    return rms * rms;
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
      Unit unit, StarTrack track, boolean settled, int draw, double turnShare, double round) {
    int from = settled ? unit.settled() : unit.from();
    int to = settled ? unit.settledTo() : unit.to();
    int stride = 1 + (to - from) / MOST_PLACES;
    return CoreShape.of(
        track,
        from,
        to,
        i -> (i - from) % stride == 0,
        scaled(unit.turned().field.middle(), unit.turned().square(draw, turnShare)),
        round);
  }

  private StarTrack[] tracks(Path path) {
    StarTrack[] all = new StarTrack[tracks.size()];
    for (int r = 0; r < all.length; r++) {
      all[r] =
          tracks
              .get(r)
              .at(
                  sum(path.east()[r], setPoints[r][0]),
                  sum(path.north()[r], setPoints[r][1]),
                  path.eastJumps()[r],
                  path.northJumps()[r]);
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
