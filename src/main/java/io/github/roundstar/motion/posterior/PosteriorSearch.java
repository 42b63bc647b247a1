package io.github.roundstar.motion.posterior;

import io.github.roundstar.motion.posterior.AxisPosterior.Draw;
import io.github.roundstar.motion.posterior.AxisPosterior.Entry;
import io.github.roundstar.motion.posterior.AxisPosterior.Explanation;
import io.github.roundstar.motion.posterior.AxisPosterior.Place;
import io.github.roundstar.motion.posterior.Evidence.Element;
import io.github.roundstar.motion.posterior.Lattice.Point;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Finds the peaks of an axis' posterior, lays the lattice about them and draws. The peaks are known
 * before the whole, for what has to be searched first.
 */
public final class PosteriorSearch {
  /** A seed so much lighter than the heaviest leads to no peak that counts [natural logarithm]. */
  private static final double LIGHT_SEED = 40;

  /** Memory for which the scale of the wander is made [s]. */
  private static final double USUAL_MEMORY_SECONDS = 0.8;

  /** So many frames show where the peaks are. */
  private static final int SKETCH_FRAMES = 3000;

  private static final int SKETCH_BLOCKS = 6;

  /** With more plays than this there are fewer points of wander and memory, each for all plays. */
  private static final int PAIRS = 40;

  private static final int MOST_PLAYS = 600;

  /**
   * A posterior that is wide beside the steps of its peak is summed up with steps so much wider.
   */
  private static final double COARSER = 1.5;

  /** Few posteriors are narrower than this on an even scale; steps need not be. */
  private static final double LEAST_UNITS = 0.75;

  /**
   * A play that is less likely than this beside none has no peak to lay a lattice about [natural
   * logarithm].
   */
  private static final double VAGUE_PLAY = 6;

  /** Where the search for the widest play that may be begins [arcsec], and by what it goes on. */
  private static final double NARROWEST = 0.05;

  private static final double WIDER = 1.4;

  /** Directions that are more unlike are linear in their difference, whatever the play. */
  private static final double LARGEST_UNLIKENESS = 0.1;

  /**
   * Of what play gains over pulses as sent, the best of a few thresholds must gain such a share. On
   * simulated nights that stick it gained 0.4 to 5 times as much; on those with play less than
   * pulses as sent in most cases, rarely 0.4 times as much.
   */
  private static final double PROMISING = 0.2;

  /** A peak so much lower than that with play is not summed up [natural logarithm]. */
  private static final double HOPELESS = 15;

  /** So many thresholds stand for all that have weight. */
  private static final int THRESHOLDS = 40;

  /** So many peaks are climbed at most. */
  private static final int MOST_PEAKS = 4;

  /** First steps of a climb to a play: logarithms of its width and of the odds of its start. */
  private static final double[] PLAY_STEPS = {0.7, 1.2};

  /** Between two peaks the density falls by at least this [natural logarithm]. */
  private static final double DIP = 0.5;

  private static final double[] RATIOS = {-5, -4, -3, -2, -1, 0};
  private static final double[] SHARES = {0.001, 0.06, 0.25, 0.5, 0.75, 0.9};
  private static final double[] PLAY_SHARES = {0.06, 0.5};
  private static final double[] PLAY_RATIOS = {-4, -3, -2, -1};
  private static final double[] WIDTHS = {0.15, 0.3, 0.6, 1, 1.6, 2.5, 4, 6, 9, 14};
  private static final double[] STARTS = {0.1, 0.5, 0.9};

  private final AxisModel model;
  private final Resolution resolution;
  private final Surface full;
  private final Surface still;
  private final Surface sketch;
  private final double cadence;
  private EvenScale ratios;
  private EvenScale memories;

  private List<Joint> joints;

  /** A search at the usual resolution. */
  public PosteriorSearch(AxisModel model) {
    this(model, Resolution.USUAL);
  }

  PosteriorSearch(AxisModel model, Resolution resolution) {
    this.model = model;
    this.resolution = resolution;
    this.full = new Surface(model, resolution);
    AxisModel staying = model.still();
    this.still = new Surface(staying, Resolution.SEARCH);
    AxisModel sample = staying.sample(SKETCH_FRAMES, SKETCH_BLOCKS);
    this.sketch = sample == staying ? still : new Surface(sample, Resolution.SEARCH);
    this.cadence = model.cadence();
  }

  /** A peak of wander and memory, and the play that goes with it. */
  private record Joint(Peak outer, Play play) {}

  /** Where a peak may be: ratio and memory as logarithms, play, and the density there. */
  private record Seed(double logRatio, double logMemory, Play play, double logDensity) {}

  /** The whole. */
  public AxisPosterior posterior() {
    return summed(joints());
  }

  /**
   * The whole if the axis sticks instead; nothing where no play stands out that could be one that
   * sticks, or where that is hopeless beside play.
   *
   * @param sticks the same question, its widths those of thresholds
   */
  public Optional<AxisPosterior> sticking(AxisModel sticks) {
    Joint play = joints().get(0);
    double width = play.play().width();
    if (width == 0) {
      return Optional.empty();
    }
    PosteriorSearch search = new PosteriorSearch(sticks, resolution);
    search.ratios = ratios;
    search.memories = memories;
    double[] even = play.outer().at();
    StickingSearch first = search.stickingAt(search.sketch, even);
    Play coarse = first.coarse(width).play();
    double nothing = at(sketch, even, Play.NONE);
    double gained = search.at(search.sketch, even, coarse) - nothing;
    if (gained < PROMISING * (at(sketch, even, play.play()) - nothing)) {
      return Optional.empty();
    }
    Play close = first.closer(coarse).play();
    List<Joint> peaks = search.stuck(close);
    if (peaks.get(0).outer().logDensity() < play.outer().logDensity() - HOPELESS) {
      return Optional.empty();
    }
    StickingSearch second = search.stickingAt(search.still, peaks.get(0).outer().at());
    Play best = second.best(close).play();
    List<Peak> outer =
        (best.equals(close) ? peaks : search.stuck(best)).stream().map(Joint::outer).toList();
    List<PlayPoint> points =
        search.thresholds(
            search.stickingAt(search.still, outer.get(0).at()).cells(best, resolution.cut()),
            outer.size());
    return Optional.of(search.summed(outer, points, new double[2]));
  }

  private List<Joint> joints() {
    if (joints == null) {
      joints = peaks(seeds());
    }
    return joints;
  }

  private List<Seed> seeds() {
    List<Seed> seeds = scan(Play.NONE);
    if (model.mayPlay()) {
      for (Play play : plays()) {
        seeds.addAll(scan(play));
      }
    }
    seeds.sort(Comparator.comparingDouble(seed -> -seed.logDensity()));
    ratios =
        EvenScale.ofRatio(
            model.size(), cadence, USUAL_MEMORY_SECONDS, model.priors().ratioDeviationLog());
    memories =
        EvenScale.ofMemory(
            model.size(),
            cadence,
            Math.pow(10, seeds.get(0).logRatio()),
            model.priors().memories().stream()
                .mapToDouble(Priors.Memory::logDeviation)
                .min()
                .orElseThrow());
    double heaviest = seeds.get(0).logDensity();
    return seeds.stream().filter(seed -> seed.logDensity() > heaviest - LIGHT_SEED).toList();
  }

  /** One draw at the highest peak, without its columns. */
  public Draw likeliest() {
    Joint top = joints().get(0);
    double logRatio = ratios.number(top.outer().at()[0]);
    double logMemory = memories.number(top.outer().at()[1]);
    Evidence there = still.at(logRatio, logMemory, top.play());
    Element best =
        there.elements().stream().max(Comparator.comparingDouble(Element::logWeight)).orElseThrow();
    double unlike = top.play().unlikeness();
    double noise = Math.exp(best.logNoise());
    return new Draw(
        best.r(),
        (1 + unlike) * best.r() + best.d(),
        (1 - unlike) * best.r() - best.d(),
        best.delay(),
        noise,
        Math.exp(logMemory),
        noise * Math.sqrt(Math.pow(10, logRatio)),
        top.play().width() * best.r(),
        top.play().start(),
        new double[0][]);
  }

  /** Local maxima of a coarse net. */
  private List<Seed> scan(Play behind) {
    double[][] values = new double[RATIOS.length][SHARES.length];
    double prior =
        !model.mayPlay()
            ? 0
            : behind.width() > 0
                ? model.priors().logPlay(behind.width())
                : Math.log(1 - model.priors().playShare());
    for (int i = 0; i < RATIOS.length; i++) {
      for (int j = 0; j < SHARES.length; j++) {
        values[i][j] = prior + sketch.log(RATIOS[i], logMemory(SHARES[j]), behind);
      }
    }
    List<Seed> found = new ArrayList<>();
    for (int i = 0; i < RATIOS.length; i++) {
      for (int j = 0; j < SHARES.length; j++) {
        if (highest(values, i, j)) {
          found.add(new Seed(RATIOS[i], logMemory(SHARES[j]), behind, values[i][j]));
        }
      }
    }
    return found;
  }

  /**
   * For each width the best start over all ratios and two memories, since a play that is left out
   * passes for noise that lasts; the widths that stand above their neighbours.
   */
  private List<Play> plays() {
    double[] best = new double[WIDTHS.length];
    Play[] plays = new Play[WIDTHS.length];
    Play[][] trials = new Play[WIDTHS.length][STARTS.length];
    for (int w = 0; w < trials.length; w++) {
      for (int s = 0; s < STARTS.length; s++) {
        trials[w][s] = new Play(WIDTHS[w], STARTS[s], 0);
      }
    }
    Arrays.fill(best, Double.NEGATIVE_INFINITY);
    for (double share : PLAY_SHARES) {
      for (double logRatio : PLAY_RATIOS) {
        for (int w = 0; w < WIDTHS.length; w++) {
          for (Play trial : trials[w]) {
            double value =
                sketch.log(logRatio, logMemory(share), trial) + model.priors().logPlay(WIDTHS[w]);
            if (value > best[w]) {
              best[w] = value;
              plays[w] = trial;
            }
          }
        }
      }
    }
    List<Integer> tops = new ArrayList<>();
    for (int w = 0; w < WIDTHS.length; w++) {
      if ((w == 0 || best[w] >= best[w - 1]) && (w == WIDTHS.length - 1 || best[w] > best[w + 1])) {
        tops.add(w);
      }
    }
    tops.sort(Comparator.comparingDouble(w -> -best[w]));
    return tops.stream().limit(2).map(w -> plays[w]).toList();
  }

  private double logMemory(double share) {
    return Math.log(-cadence / Math.log(share));
  }

  private static boolean highest(double[][] values, int i, int j) {
    for (int a = Math.max(0, i - 1); a <= Math.min(values.length - 1, i + 1); a++) {
      for (int b = Math.max(0, j - 1); b <= Math.min(values[0].length - 1, j + 1); b++) {
        if (values[a][b] > values[i][j]) {
          return false;
        }
      }
    }
    return true;
  }

  private List<Joint> peaks(List<Seed> seeds) {
    List<Joint> peaks = new ArrayList<>();
    for (Seed seed : seeds.subList(0, Math.min(MOST_PEAKS, seeds.size()))) {
      Play behind = seed.play();
      Peak fine = outer(seed);
      if (behind.width() > 0) {
        Play closer = playAt(playPeak(fine.at(), behind).at(), 0);
        fine = Peak.climb(x -> density(still, x, closer), fine.at(), new double[] {1, 1});
        add(peaks, new Joint(fine, closer));
      } else {
        add(peaks, new Joint(fine, behind));
      }
    }
    peaks.sort(Comparator.comparingDouble(p -> -p.outer().logDensity()));
    return peaks;
  }

  /** The peak of wander and memory that a seed leads to, its play as it is. */
  private Peak outer(Seed seed) {
    double more = Math.sqrt((double) model.size() / Math.max(1, sketchSize()));
    double[] even = {ratios.even(seed.logRatio()), memories.even(seed.logMemory())};
    Play behind = seed.play();
    Peak rough = Peak.climb(x -> density(sketch, x, behind), even, new double[] {more, more});
    return sketch == still
        ? rough
        : Peak.climb(x -> density(still, x, behind), rough.at(), new double[] {1, 1});
  }

  /** The peaks of wander and memory where the axis sticks so. */
  private List<Joint> stuck(Play so) {
    List<Seed> seeds = scan(so);
    seeds.sort(Comparator.comparingDouble(seed -> -seed.logDensity()));
    List<Joint> peaks = new ArrayList<>();
    for (Seed seed : seeds.subList(0, Math.min(MOST_PEAKS, seeds.size()))) {
      add(peaks, new Joint(outer(seed), so));
    }
    peaks.sort(Comparator.comparingDouble(p -> -p.outer().logDensity()));
    return peaks;
  }

  private StickingSearch stickingAt(Surface surface, double[] even) {
    return new StickingSearch(play -> at(surface, even, play), model.priors());
  }

  private double at(Surface surface, double[] even, Play play) {
    return surface.log(ratios.number(even[0]), memories.number(even[1]), play);
  }

  /** Adds a peak, unless the density hardly dips on the way to one that is known. */
  private void add(List<Joint> peaks, Joint peak) {
    for (int p = 0; p < peaks.size(); p++) {
      Joint known = peaks.get(p);
      boolean samePlay =
          Math.abs(known.play().width() - peak.play().width()) <= 0.3 * peak.play().width();
      if (samePlay && connected(known, peak)) {
        if (peak.outer().logDensity() > known.outer().logDensity()) {
          peaks.set(p, peak);
        }
        return;
      }
    }
    peaks.add(peak);
  }

  private boolean connected(Joint a, Joint b) {
    double lower = Math.min(a.outer().logDensity(), b.outer().logDensity());
    if (distance(a.outer(), b.outer()) < 1) {
      return true;
    }
    double[] middle = new double[a.outer().at().length];
    for (int i = 0; i < middle.length; i++) {
      middle[i] = (a.outer().at()[i] + b.outer().at()[i]) / 2;
    }
    return density(still, middle, a.play()) > lower - DIP;
  }

  private int sketchSize() {
    return Math.min(SKETCH_FRAMES, model.size());
  }

  private static double distance(Peak a, Peak b) {
    double sum = 0;
    for (int i = 0; i < a.at().length; i++) {
      double off = (a.at()[i] - b.at()[i]) / Math.max(a.deviation(i), b.deviation(i));
      sum += off * off;
    }
    return Math.sqrt(sum);
  }

  private double density(Surface surface, double[] even, Play behind) {
    if (!ratios.holds(even[0]) || !memories.holds(even[1])) {
      return Double.NEGATIVE_INFINITY;
    }
    return surface.log(ratios.number(even[0]), memories.number(even[1]), behind)
        + Math.log(ratios.width(even[0]) * memories.width(even[1]));
  }

  private static Play playAt(double[] x, double unlikeness) {
    return new Play(Math.exp(x[0]), 1 / (1 + Math.exp(-x[1])), unlikeness);
  }

  /** Prior of a play in the coordinates of {@link #playAt}. */
  private double logPlayPrior(double[] x) {
    double width = Math.exp(x[0]);
    double odds = Math.abs(x[1]);
    return model.priors().logPlay(width) + x[0] - odds - 2 * Math.log1p(Math.exp(-odds));
  }

  private Peak playPeak(double[] even, Play from) {
    double start = Math.max(1e-3, Math.min(1 - 1e-3, from.start()));
    return Peak.climb(
        x -> playDensity(even, x, from.unlikeness()),
        new double[] {
          Math.log(from.width() > 0 ? from.width() : WIDTHS[0]), Math.log(start / (1 - start))
        },
        PLAY_STEPS);
  }

  private double playDensity(double[] even, double[] x, double unlike) {
    return isPlay(x)
        ? at(still, even, playAt(x, unlike)) + logPlayPrior(x)
        : Double.NEGATIVE_INFINITY;
  }

  /** The same of all frames and columns; keeps which unlikeness is likeliest there. */
  private double playDensity(
      double[] even, double[] x, double unlike, Map<double[], Double> unlikenesses) {
    if (!isPlay(x)) {
      return Double.NEGATIVE_INFINITY;
    }
    Play play = playAt(x, unlike);
    double logRatio = ratios.number(even[0]);
    double logMemory = memories.number(even[1]);
    Evidence there = full.at(logRatio, logMemory, play);
    unlikenesses.put(x, unlikeness(there, play));
    return there.log()
        + model.priors().logRatio(logRatio)
        + model.priors().logMemory(logMemory)
        + logPlayPrior(x);
  }

  private static boolean isPlay(double[] x) {
    return Math.abs(x[0]) <= 8 && Math.abs(x[1]) <= 40;
  }

  /** The unlikeness that is likeliest with a play, by a step from the play's own. */
  private double unlikeness(double[] even, Play play) {
    return unlikeness(full.at(ratios.number(even[0]), memories.number(even[1]), play), play);
  }

  private static double unlikeness(Evidence there, Play play) {
    double r = 0;
    double d = 0;
    double top = there.elements().stream().mapToDouble(Element::logWeight).max().orElse(0);
    for (Element e : there.elements()) {
      double weight = Math.exp(e.logWeight() - top);
      r += weight * e.r();
      d += weight * e.d();
    }
    double bound = LARGEST_UNLIKENESS;
    return r > 0 ? Math.max(-bound, Math.min(bound, play.unlikeness() + d / r)) : 0;
  }

  /**
   * A play on its lattice.
   *
   * @param x logarithms of its width and of the odds of its start; NaN for none
   * @param logPrior of it times its cell
   * @param expected for each peak how heavy it is there, beside the heaviest
   * @param cell bounds of width and start that it stands for; null where the lattice is even
   */
  private record PlayPoint(
      Play play, double[] x, double logPrior, double[] expected, double[] cell) {}

  /** Plays that have weight at any peak, on one lattice; nothing where they are too many. */
  private Optional<List<PlayPoint>> plays(List<Joint> peaks, double unlike, double[][] steps) {
    Map<List<Integer>, PlayPoint> found = new TreeMap<>(PosteriorSearch::compare);
    double cell = Math.log(Math.abs(steps[0][0] * steps[1][1]));
    double[] origin = null;
    PlayPoint none =
        new PlayPoint(
            new Play(0, 0.5, unlike),
            new double[] {Double.NaN, Double.NaN},
            Math.log(1 - model.priors().playShare()),
            new double[peaks.size()],
            null);
    for (int p = 0; p < peaks.size(); p++) {
      double[] even = peaks.get(p).outer().at();
      double[] top = playPeak(even, peaks.get(p).play()).at();
      origin = origin == null ? top : origin;
      // How a push changes with unlikeness depends on it where there is play.
      Map<double[], Double> own = new IdentityHashMap<>();
      Optional<List<Point>> laid =
          Lattice.over(
              x -> playDensity(even, x, unlike, own),
              List.of(origin, top),
              steps,
              resolution.cut(),
              MOST_PLAYS);
      if (laid.isEmpty()) {
        return Optional.empty();
      }
      List<Point> points = laid.get();
      double bare =
          full.log(ratios.number(even[0]), memories.number(even[1]), none.play())
              + none.logPrior()
              - cell;
      double highest =
          Math.max(bare, points.stream().mapToDouble(Point::logDensity).max().orElse(bare));
      none.expected()[p] = bare - highest;
      for (Point point : points) {
        List<Integer> key = Arrays.stream(point.index()).boxed().toList();
        PlayPoint known = found.get(key);
        if (known == null) {
          double[] expected = new double[peaks.size()];
          Arrays.fill(expected, Double.NEGATIVE_INFINITY);
          known =
              new PlayPoint(
                  playAt(point.x(), own.get(point.x())),
                  point.x(),
                  logPlayPrior(point.x()) + cell,
                  expected,
                  null);
          found.put(key, known);
        }
        known.expected()[p] = point.logDensity() - highest;
      }
    }
    List<PlayPoint> all = new ArrayList<>();
    all.add(none);
    all.addAll(found.values());
    return Optional.of(all);
  }

  /** Whether the frames say little of a play. */
  private boolean vague(Joint peak, Peak ofPlay, double unlike) {
    double[] even = peak.outer().at();
    double logRatio = ratios.number(even[0]);
    double logMemory = memories.number(even[1]);
    return full.log(logRatio, logMemory, playAt(ofPlay.at(), unlike))
            - full.log(logRatio, logMemory, new Play(0, 0.5, unlike))
        < VAGUE_PLAY;
  }

  /** Plays where none stands out: widths from zero to where they surely would show, any start. */
  private List<PlayPoint> vague(List<Joint> peaks, double unlike) {
    double[] even = peaks.get(0).outer().at();
    double logRatio = ratios.number(even[0]);
    double logMemory = memories.number(even[1]);
    List<PlayPoint> all = new ArrayList<>();
    Play none = new Play(0, 0.5, unlike);
    double noneLog = Math.log(1 - model.priors().playShare());
    double bare = full.log(logRatio, logMemory, none);
    double highest = bare + noneLog;
    double widest = NARROWEST;
    for (; widest < WIDTHS[WIDTHS.length - 1]; widest *= WIDER) {
      double best = Double.NEGATIVE_INFINITY;
      for (double start : STARTS) {
        best = Math.max(best, still.log(logRatio, logMemory, new Play(widest, start, unlike)));
      }
      if (best + model.priors().logPlay(widest) < highest - resolution.cut()) {
        break;
      }
    }
    GaussLegendre widths = GaussLegendre.of(3 * resolution.playNodes());
    GaussLegendre starts = GaussLegendre.of(resolution.playNodes());
    for (int i = 0; i < widths.size(); i++) {
      double width = widths.node(i, 0, widest);
      for (int j = 0; j < starts.size(); j++) {
        double start = starts.node(j, 0, 1);
        Play play = new Play(width, start, unlike);
        double log =
            model.priors().logPlay(width) + Math.log(widths.weight(i) * widest * starts.weight(j));
        double here = full.log(logRatio, logMemory, play) + log;
        highest = Math.max(highest, here);
        double[] expected = new double[peaks.size()];
        Arrays.fill(expected, here);
        all.add(
            new PlayPoint(
                play,
                logarithms(play),
                log,
                expected,
                new double[] {
                  widths.edge(i, 0, widest),
                  widths.edge(i + 1, 0, widest),
                  starts.edge(j, 0, 1),
                  starts.edge(j + 1, 0, 1)
                }));
      }
    }
    double[] ofNone = new double[peaks.size()];
    Arrays.fill(ofNone, bare + noneLog);
    all.add(new PlayPoint(none, new double[] {Double.NaN, Double.NaN}, noneLog, ofNone, null));
    for (PlayPoint point : all) {
      for (int p = 0; p < peaks.size(); p++) {
        point.expected()[p] -= highest;
      }
    }
    return all;
  }

  /**
   * Thresholds at even steps of weight, each with the weight of those that it stands for. Where the
   * density jumps no rule makes a few stand for all, but chance does.
   */
  private List<PlayPoint> thresholds(List<StickingSearch.Cell> cells, int peaks) {
    double all = StickingSearch.log(cells);
    List<PlayPoint> points = new ArrayList<>();
    double sum = 0;
    int taken = 0;
    for (StickingSearch.Cell cell : cells) {
      double weight = Math.exp(cell.logWeight() - all);
      sum += weight;
      int until = (int) Math.rint(THRESHOLDS * sum);
      if (until > taken) {
        double share = (double) (until - taken) / THRESHOLDS;
        taken = until;
        points.add(
            new PlayPoint(
                cell.play(),
                logarithms(cell.play()),
                cell.logPrior() + Math.log(share / weight),
                new double[peaks],
                cell.bounds()));
      }
    }
    return points;
  }

  /** Logarithms of the width and of the odds of the start. */
  private static double[] logarithms(Play play) {
    return new double[] {Math.log(play.width()), Math.log(play.start() / (1 - play.start()))};
  }

  private static int compare(List<Integer> a, List<Integer> b) {
    int first = a.get(0).compareTo(b.get(0));
    return first != 0 ? first : a.get(1).compareTo(b.get(1));
  }

  private AxisPosterior summed(List<Joint> joints) {
    List<Peak> peaks = joints.stream().map(Joint::outer).toList();
    double unlike = 0;
    List<PlayPoint> plays =
        List.of(
            new PlayPoint(
                Play.NONE,
                new double[] {Double.NaN, Double.NaN},
                0,
                new double[peaks.size()],
                null));
    double[] playKernel = new double[2];
    if (model.mayPlay()) {
      unlike =
          joints.get(0).play().width() > 0
              ? unlikeness(joints.get(0).outer().at(), joints.get(0).play())
              : 0;
      double shared = unlike;
      List<Joint> unlikes =
          joints.stream()
              .map(j -> new Joint(j.outer(), new Play(j.play().width(), j.play().start(), shared)))
              .toList();
      Peak ofPlay = playPeak(unlikes.get(0).outer().at(), unlikes.get(0).play());
      if (vague(unlikes.get(0), ofPlay, unlike)) {
        plays = vague(unlikes, unlike);
      } else {
        double[][] steps = steps(ofPlay);
        Optional<List<PlayPoint>> laid = plays(unlikes, unlike, steps);
        while (laid.isEmpty()) {
          steps = coarser(steps);
          laid = plays(unlikes, unlike, steps);
        }
        plays = laid.get();
        playKernel = kernel(steps);
      }
    }
    return summed(peaks, plays, playKernel);
  }

  /** Sums up over wander and memory. */
  private AxisPosterior summed(List<Peak> peaks, List<PlayPoint> plays, double[] playKernel) {
    double[][] steps = steps(peaks.get(0).noNarrower(LEAST_UNITS));
    List<Entry> entries = new ArrayList<>();
    double[] highest = {Double.NEGATIVE_INFINITY};
    int most = resolution.mostPoints() * PAIRS / Math.max(PAIRS, plays.size());
    for (boolean fits = false; !fits; ) {
      double cell = Math.log(Math.abs(steps[0][0] * steps[1][1]));
      entries.clear();
      highest[0] = Double.NEGATIVE_INFINITY;
      fits =
          Lattice.over(
                  x -> density(x, cell, plays, peaks, entries, highest),
                  peaks.stream().map(Peak::at).toList(),
                  steps,
                  resolution.cut(),
                  most)
              .isPresent();
      steps = fits ? steps : coarser(steps);
    }
    entries.removeIf(e -> e.logWeight() < highest[0] - resolution.elementCut());
    return finished(entries, peaks, kernel(steps), playKernel);
  }

  private static double[][] coarser(double[][] steps) {
    return Arrays.stream(steps)
        .map(step -> Arrays.stream(step).map(s -> COARSER * s).toArray())
        .toArray(double[][]::new);
  }

  /** Adds the elements of a point over all plays; its density is their sum. */
  private double density(
      double[] x,
      double cell,
      List<PlayPoint> plays,
      List<Peak> peaks,
      List<Entry> entries,
      double[] highest) {
    if (!ratios.holds(x[0]) || !memories.holds(x[1])) {
      return Double.NEGATIVE_INFINITY;
    }
    double logRatio = ratios.number(x[0]);
    double logMemory = memories.number(x[1]);
    double before =
        model.priors().logRatio(logRatio)
            + model.priors().logMemory(logMemory)
            + Math.log(ratios.width(x[0]) * memories.width(x[1]))
            + cell;
    int peak = nearest(peaks, x);
    List<PlayPoint> order = new ArrayList<>(plays);
    order.sort(Comparator.comparingDouble(p -> -p.expected()[peak]));
    double top = Double.NEGATIVE_INFINITY;
    double sum = 0;
    for (PlayPoint point : order) {
      // A play that is so light at the peak is taken to be not much heavier here.
      double lighter = point.expected()[peak] - order.get(0).expected()[peak];
      if (lighter < 0 && top + lighter < highest[0] - resolution.cut()) {
        break;
      }
      double prior = before + point.logPrior();
      Evidence evidence =
          full.at(logRatio, logMemory, point.play(), highest[0] - resolution.elementCut() - prior);
      double here = evidence.log() + prior;
      Place place =
          new Place(
              new double[] {x[0], x[1], point.x()[0], point.x()[1]},
              point.play(),
              point.cell(),
              evidence.centre(),
              evidence.noiseStep(),
              peak);
      for (Element element : evidence.elements()) {
        double weight = element.logWeight() + prior;
        highest[0] = Math.max(highest[0], weight);
        if (weight > highest[0] - resolution.elementCut()) {
          entries.add(new Entry(element, weight, place));
        }
      }
      if (here > top) {
        sum = sum * Math.exp(top - here) + 1;
        top = here;
      } else {
        sum += Math.exp(here - top);
      }
    }
    return top + Math.log(sum);
  }

  private static int nearest(List<Peak> peaks, double[] x) {
    int best = 0;
    double least = Double.POSITIVE_INFINITY;
    for (int p = 0; p < peaks.size(); p++) {
      double sum = 0;
      for (int i = 0; i < x.length; i++) {
        double off = (x[i] - peaks.get(p).at()[i]) / peaks.get(p).deviation(i);
        sum += off * off;
      }
      if (sum < least) {
        least = sum;
        best = p;
      }
    }
    return best;
  }

  /** Steps of the lattice along the columns of the covariance's root. */
  private double[][] steps(Peak peak) {
    int n = peak.at().length;
    double[][] steps = new double[n][n];
    for (int d = 0; d < n; d++) {
      for (int j = 0; j < n; j++) {
        steps[d][j] = resolution.step() * peak.spread()[j][d];
      }
    }
    return steps;
  }

  /** Variance of an even density over a cell, in each coordinate. */
  private static double[] kernel(double[][] steps) {
    double[] variance = new double[steps.length];
    for (double[] step : steps) {
      for (int j = 0; j < step.length; j++) {
        variance[j] += step[j] * step[j] / 12;
      }
    }
    return variance;
  }

  private AxisPosterior finished(
      List<Entry> entries, List<Peak> peaks, double[] kernel, double[] playKernel) {
    double top = entries.stream().mapToDouble(Entry::logWeight).max().orElseThrow();
    double all = 0;
    double playing = 0;
    double[] ofPeak = new double[peaks.size()];
    double[] strengthOfPeak = new double[peaks.size()];
    double[] memoryOfPeak = new double[peaks.size()];
    for (Entry entry : entries) {
      double weight = Math.exp(entry.logWeight() - top);
      int p = entry.place().peak();
      all += weight;
      playing += entry.place().play().width() > 0 ? weight : 0;
      ofPeak[p] += weight;
      strengthOfPeak[p] += weight * entry.element().r();
      memoryOfPeak[p] += weight * memories.number(entry.place().even()[1]);
    }
    List<Explanation> explanations = new ArrayList<>();
    for (int p = 0; p < ofPeak.length; p++) {
      if (ofPeak[p] > 0) {
        explanations.add(
            new Explanation(
                ofPeak[p] / all,
                strengthOfPeak[p] / ofPeak[p],
                Math.exp(memoryOfPeak[p] / ofPeak[p])));
      }
    }
    explanations.sort(Comparator.comparingDouble(e -> -e.probability()));
    return new AxisPosterior(
        model,
        entries,
        top + Math.log(all),
        new PosteriorDraws(this, entries, kernel, playKernel, peaks.size()).draws(),
        explanations,
        playing / all);
  }

  AxisModel model() {
    return model;
  }

  EvenScale ratios() {
    return ratios;
  }

  EvenScale memories() {
    return memories;
  }
}
