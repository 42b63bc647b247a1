package io.github.roundstar.diagnosis.ladder;

import io.github.roundstar.diagnosis.exposures.Scatter;
import io.github.roundstar.diagnosis.exposures.Units;
import io.github.roundstar.diagnosis.exposures.Units.Outcome;
import io.github.roundstar.diagnosis.exposures.Units.Path;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.motion.PlayedAxis;
import io.github.roundstar.motion.PlayedAxis.Change;
import io.github.roundstar.motion.PlayedAxis.Drawn;
import io.github.roundstar.motion.PlayedAxis.Way;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import org.apache.commons.math3.special.Erf;

/**
 * A night of which tens of draws are played again, each in many ways; always the same draws, so
 * that other settings and the cures of the ladder are judged alike. Immutable.
 */
public final class PlayedNight {
  /** Frames that are played in all draws together for one way; more draws tell little more. */
  private static final int FRAMES = 80_000;

  private static final int FEWEST_DRAWS = 12;
  private static final int MOST_DRAWS = 32;

  /** Fractions of its multiples lie evenly. */
  private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;

  /** The round image is at least this share of its likely width. */
  private static final double LEAST_WIDTH = 0.5;

  private final List<PlayedRun> runs;
  private final Units units;
  private final Estimate roundFwhm;
  private final double[][][] smoothed;
  private final List<Draw> draws;

  /**
   * One draw of what moved the star.
   *
   * @param width of the round image [arcsec]
   * @param ra of each run; null where its motion is not known
   * @param dec likewise
   * @param asItWas the way that the star took
   * @param number which draw
   */
  private record Draw(double width, List<Drawn> ra, List<Drawn> dec, Path asItWas, int number) {}

  /**
   * A night.
   *
   * @param runs its runs, as units count them
   * @param units what is judged
   * @param roundFwhm width of the round image [arcsec]
   */
  public PlayedNight(List<PlayedRun> runs, Units units, Estimate roundFwhm) {
    this.runs = runs;
    this.units = units;
    this.roundFwhm = roundFwhm;
    this.smoothed =
        IntStream.range(0, runs.size()).mapToObj(units::smoothed).toArray(double[][][]::new);
    int frames = 1;
    for (double[][] run : smoothed) {
      frames += run[0].length;
    }
    int count = Math.max(FEWEST_DRAWS, Math.min(MOST_DRAWS, FRAMES / frames));
    this.draws = IntStream.range(0, count).parallel().mapToObj(d -> draw(d, count)).toList();
  }

  private Draw draw(int d, int count) {
    List<Drawn> ra = new ArrayList<>();
    List<Drawn> dec = new ArrayList<>();
    for (int r = 0; r < runs.size(); r++) {
      long seed = 1_000_003L * d + 7919L * r;
      ra.add(drawn(runs.get(r).ra().orElse(null), (d + 0.5) / count, seed));
      dec.add(drawn(runs.get(r).dec().orElse(null), fraction(d + 0.5, GOLDEN), seed + 1));
    }
    return new Draw(width(d), ra, dec, path(Playing.AS_IT_WAS, ra, dec), d);
  }

  /** What is judged. */
  public Units units() {
    return units;
  }

  List<PlayedRun> runs() {
    return runs;
  }

  /** Width of the round image [arcsec]. */
  public Estimate roundFwhm() {
    return roundFwhm;
  }

  /**
   * How far one axis moved in a draw.
   *
   * @param motion the star's motion, by stretches of the night
   * @param loggedArcsec2 mean square of the offsets that the log would show, about each run's mean
   *     [arcsec^2]
   */
  record Moved(Scatter motion, double loggedArcsec2) {
    double motionArcsec2() {
      return motion.meanSquare();
    }
  }

  /**
   * Plays one axis by its law, the settings in use too, so that what the law lacks cancels out.
   *
   * @param within whether motion counts about its mean in each unit, as images see it, or about the
   *     mean of each run
   * @return for each draw, for each change
   */
  List<List<Moved>> moved(boolean ra, List<Change> changes, boolean within) {
    return draws.parallelStream()
        .map(
            draw -> {
              List<Drawn> drawn = ra ? draw.ra() : draw.dec();
              return changes.stream().map(change -> moved(ra, drawn, change, within)).toList();
            })
        .toList();
  }

  private Moved moved(boolean ra, List<Drawn> drawn, Change change, boolean within) {
    double[][] path = new double[runs.size()][];
    for (int r = 0; r < path.length; r++) {
      Drawn axis = drawn.get(r);
      path[r] = axis == null ? smoothed[r][ra ? 0 : 1] : axis.byTheLaw(change).arcsec();
    }
    boolean[][] counts = counts(path, drawn);
    return new Moved(
        within ? units.scatterWithin(path) : scatter(path, drawn, counts, false),
        scatter(path, drawn, counts, true).meanSquare());
  }

  /**
   * How a playing of one draw came out.
   *
   * @param judged its units
   * @param raArcsec RMS of the motion in right ascension [arcsec]
   * @param decArcsec in declination [arcsec]
   * @param loggedArcsec radial RMS that the log would show [arcsec]
   */
  record Played(Outcome judged, double raArcsec, double decArcsec, double loggedArcsec) {
    double radialArcsec() {
      return Math.hypot(raArcsec, decArcsec);
    }
  }

  /**
   * Plays.
   *
   * @param playings ways to play
   * @param cuts other lengths of exposures, judged on these ways
   * @return for each way, then for each way and length, one result a draw
   */
  Results play(Set<Playing> playings, Map<Playing, List<Units>> cuts) {
    Set<Playing> all = new LinkedHashSet<>(playings);
    all.addAll(cuts.keySet());
    List<List<Played>> perDraw = draws.parallelStream().map(draw -> play(draw, all, cuts)).toList();
    Map<Playing, List<Played>> results = new LinkedHashMap<>();
    Map<Units, Map<Playing, List<Played>>> cut = new LinkedHashMap<>();
    int at = 0;
    for (Playing playing : all) {
      results.put(playing, column(perDraw, at++));
      for (Units other : cuts.getOrDefault(playing, List.of())) {
        cut.computeIfAbsent(other, u -> new LinkedHashMap<>()).put(playing, column(perDraw, at++));
      }
    }
    return new Results(results, cut);
  }

  /** All that was played. */
  record Results(
      Map<Playing, List<Played>> ways, Map<Units, Map<Playing, List<Played>>> ofLength) {}

  private static List<Played> column(List<List<Played>> rows, int at) {
    return rows.stream().map(row -> row.get(at)).toList();
  }

  private List<Played> play(Draw draw, Set<Playing> playings, Map<Playing, List<Units>> cuts) {
    List<Played> played = new ArrayList<>();
    for (Playing playing : playings) {
      Path path = path(playing, draw.ra(), draw.dec());
      boolean[][] inRa = counts(path.east(), draw.ra());
      boolean[][] inDec = counts(path.north(), draw.dec());
      double east = scatter(path.east(), draw.ra(), inRa, false).meanSquare();
      double north = scatter(path.north(), draw.dec(), inDec, false).meanSquare();
      double logged =
          Math.sqrt(
              scatter(path.east(), draw.ra(), inRa, true).meanSquare()
                  + scatter(path.north(), draw.dec(), inDec, true).meanSquare());
      played.add(
          new Played(judge(units, draw, playing, path), Math.sqrt(east), Math.sqrt(north), logged));
      for (Units other : cuts.getOrDefault(playing, List.of())) {
        played.add(
            new Played(
                judge(other, draw, playing, path), Math.sqrt(east), Math.sqrt(north), logged));
      }
    }
    return played;
  }

  /**
   * Of each draw, the longest of some lengths at which enough exposures stay round.
   *
   * @param lengths the shortest first
   * @param present which of them to begin with
   * @param share that has to stay round
   * @see ExposureLengths#longest
   */
  List<ExposureLengths.Crossing> longest(
      Playing playing, List<Units> lengths, int present, double share) {
    double[] seconds = lengths.stream().mapToDouble(Units::seconds).toArray();
    return draws.parallelStream()
        .map(
            draw -> {
              Path path =
                  playing.equals(Playing.AS_IT_WAS)
                      ? draw.asItWas()
                      : path(playing, draw.ra(), draw.dec());
              return ExposureLengths.longest(
                  seconds,
                  at -> {
                    Units units = lengths.get(at);
                    return (double) judge(units, draw, playing, path).round() / units.size();
                  },
                  present,
                  share);
            })
        .toList();
  }

  private static Outcome judge(Units units, Draw draw, Playing playing, Path path) {
    return units.judge(draw.asItWas(), path, playing.mended(), draw.width(), draw.number());
  }

  private static double fraction(double k, double step) {
    return k * step - Math.floor(k * step);
  }

  private double width(int d) {
    double z = Math.sqrt(2) * Erf.erfInv(2 * fraction(d + 0.5, GOLDEN * GOLDEN) - 1);
    double side =
        z > 0 ? roundFwhm.hi95() - roundFwhm.value() : roundFwhm.value() - roundFwhm.lo95();
    return Math.max(
        LEAST_WIDTH * roundFwhm.value(), roundFwhm.value() + z * side / Estimate.SIGMAS_95);
  }

  private static Drawn drawn(PlayedAxis axis, double place, long seed) {
    return axis == null ? null : axis.drawn(place, seed);
  }

  private Path path(Playing playing, List<Drawn> ra, List<Drawn> dec) {
    double[][] east = new double[runs.size()][];
    double[][] north = new double[runs.size()][];
    double[][] eastJumps = new double[runs.size()][];
    double[][] northJumps = new double[runs.size()][];
    for (int r = 0; r < east.length; r++) {
      Way inRa = axis(playing, playing.ra(), ra.get(r), smoothed[r][0]);
      Way inDec = axis(playing, playing.dec(), dec.get(r), smoothed[r][1]);
      east[r] = inRa.arcsec();
      north[r] = inDec.arcsec();
      eastJumps[r] = inRa.jumpsArcsec();
      northJumps[r] = inDec.jumpsArcsec();
    }
    return new Path(east, north, eastJumps, northJumps);
  }

  private static Way axis(Playing playing, Change change, Drawn drawn, double[] otherwise) {
    if (playing.mended().motionless()) {
      return Way.uncorrected(new double[otherwise.length]);
    }
    if (drawn == null) {
      return Way.uncorrected(otherwise);
    }
    return playing.loopsLimit() ? Way.uncorrected(drawn.atTheLoopsLimit()) : drawn.with(change);
  }

  /** Which frames of each run count in an RMS; null for all. */
  private static boolean[][] counts(double[][] paths, List<Drawn> axes) {
    boolean[][] counts = new boolean[paths.length][];
    for (int r = 0; r < paths.length; r++) {
      counts[r] = axes.get(r) == null ? null : axes.get(r).counts(paths[r]);
    }
    return counts;
  }

  /** About each run's mean, over the frames that count. */
  private static Scatter scatter(
      double[][] paths, List<Drawn> axes, boolean[][] counts, boolean withNoise) {
    Scatter scatter = new Scatter();
    double[] places = new double[Arrays.stream(paths).mapToInt(p -> p.length).max().orElse(0)];
    for (int r = 0; r < paths.length; r++) {
      Drawn drawn = axes.get(r);
      int n = 0;
      for (int i = 0; i < paths[r].length; i++) {
        if (drawn == null || counts[r][i]) {
          places[n++] = paths[r][i] + (withNoise && drawn != null ? drawn.noiseArcsec(i) : 0);
        }
      }
      scatter.add(places, 0, n, (double) r / paths.length, (r + 1.0) / paths.length);
    }
    return scatter;
  }
}
