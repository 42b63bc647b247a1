package io.github.roundstar.diagnosis.ladder;

import io.github.roundstar.diagnosis.exposures.Scatter;
import io.github.roundstar.diagnosis.exposures.Units;
import io.github.roundstar.diagnosis.exposures.Units.Outcome;
import io.github.roundstar.diagnosis.exposures.Units.Path;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.motion.PlayedAxis;
import io.github.roundstar.motion.PlayedAxis.Change;
import io.github.roundstar.motion.PlayedAxis.Drawn;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import org.apache.commons.math3.special.Erf;

/** A night of which tens of draws are played again, each in many ways; always the same draws. */
final class PlayedNight {
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
  private final int draws;
  private final double[][][] smoothed;

  PlayedNight(List<PlayedRun> runs, Units units, Estimate roundFwhm) {
    this.runs = runs;
    this.units = units;
    this.roundFwhm = roundFwhm;
    this.smoothed =
        IntStream.range(0, runs.size()).mapToObj(units::smoothed).toArray(double[][][]::new);
    int frames = 1;
    for (double[][] run : smoothed) {
      frames += run[0].length;
    }
    this.draws = Math.max(FEWEST_DRAWS, Math.min(MOST_DRAWS, FRAMES / frames));
  }

  Units units() {
    return units;
  }

  List<PlayedRun> runs() {
    return runs;
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
    return IntStream.range(0, draws)
        .parallel()
        .mapToObj(
            d -> {
              List<Drawn> drawn = drawn(d, ra);
              return changes.stream().map(change -> moved(ra, drawn, change, within)).toList();
            })
        .toList();
  }

  private Moved moved(boolean ra, List<Drawn> drawn, Change change, boolean within) {
    double[][] path = new double[runs.size()][];
    for (int r = 0; r < path.length; r++) {
      Drawn axis = drawn.get(r);
      path[r] = axis == null ? smoothed[r][ra ? 0 : 1] : axis.byTheLaw(change);
    }
    return new Moved(
        within ? units.scatterWithin(path) : scatter(path, drawn, false),
        scatter(path, drawn, true).meanSquare());
  }

  private List<Drawn> drawn(int d, boolean ra) {
    List<Drawn> drawn = new ArrayList<>();
    for (int r = 0; r < runs.size(); r++) {
      long seed = 1_000_003L * d + 7919L * r;
      drawn.add(
          ra
              ? drawn(runs.get(r).ra().orElse(null), (d + 0.5) / draws, seed)
              : drawn(runs.get(r).dec().orElse(null), fraction(d + 0.5, GOLDEN), seed + 1));
    }
    return drawn;
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
    List<List<Played>> perDraw =
        IntStream.range(0, draws).parallel().mapToObj(d -> play(d, all, cuts)).toList();
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

  private List<Played> play(int d, Set<Playing> playings, Map<Playing, List<Units>> cuts) {
    double width = width(d);
    List<Drawn> ra = drawn(d, true);
    List<Drawn> dec = drawn(d, false);
    Path asItWas = path(Playing.AS_IT_WAS, ra, dec);
    List<Played> played = new ArrayList<>();
    for (Playing playing : playings) {
      Path path = path(playing, ra, dec);
      double east = scatter(path.east(), ra, false).meanSquare();
      double north = scatter(path.north(), dec, false).meanSquare();
      double logged =
          Math.sqrt(
              scatter(path.east(), ra, true).meanSquare()
                  + scatter(path.north(), dec, true).meanSquare());
      Outcome outcome = units.judge(asItWas, path, playing.mended(), width, 31L * d);
      played.add(new Played(outcome, Math.sqrt(east), Math.sqrt(north), logged));
      for (Units other : cuts.getOrDefault(playing, List.of())) {
        Outcome shorter = other.judge(asItWas, path, playing.mended(), width, 31L * d);
        played.add(new Played(shorter, Math.sqrt(east), Math.sqrt(north), logged));
      }
    }
    return played;
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
    for (int r = 0; r < east.length; r++) {
      east[r] = axis(playing, playing.ra(), ra.get(r), smoothed[r][0]);
      north[r] = axis(playing, playing.dec(), dec.get(r), smoothed[r][1]);
    }
    return new Path(east, north);
  }

  private static double[] axis(Playing playing, Change change, Drawn drawn, double[] otherwise) {
    if (playing.mended().motionless()) {
      return new double[otherwise.length];
    }
    if (drawn == null) {
      return otherwise;
    }
    return playing.loopsLimit() ? drawn.atTheLoopsLimit() : drawn.with(change);
  }

  /** About each run's mean, over the frames that count. */
  private Scatter scatter(double[][] paths, List<Drawn> axes, boolean withNoise) {
    Scatter scatter = new Scatter();
    double[] places = new double[Arrays.stream(paths).mapToInt(p -> p.length).max().orElse(0)];
    for (int r = 0; r < paths.length; r++) {
      Drawn drawn = axes.get(r);
      boolean[] counts = drawn == null ? null : drawn.counts(paths[r]);
      int n = 0;
      for (int i = 0; i < paths[r].length; i++) {
        if (drawn == null || counts[i]) {
          places[n++] = paths[r][i] + (withNoise && drawn != null ? drawn.noiseArcsec(i) : 0);
        }
      }
      scatter.add(places, 0, n, (double) r / paths.length, (r + 1.0) / paths.length);
    }
    return scatter;
  }
}
