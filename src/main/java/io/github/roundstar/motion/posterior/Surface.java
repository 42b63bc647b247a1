package io.github.roundstar.motion.posterior;

import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;

/** The posterior density of wander over noise, memory and play, everything else summed over. */
final class Surface {
  /** Pushes of so many frames are kept at most. */
  private static final long MOST_KEPT = 2_000_000;

  private final AxisModel model;
  private final Resolution resolution;
  private final WhiteFrames frames;
  private final SteadyColumns columns;
  private final Map<Play, double[][][]> pushes = new IdentityHashMap<>();
  private double filteredRatio = Double.NaN;
  private double filteredMemory = Double.NaN;

  Surface(AxisModel model, Resolution resolution) {
    this.model = model;
    this.resolution = resolution;
    this.frames = new WhiteFrames(model);
    this.columns = new SteadyColumns(model);
  }

  /** The posterior at a point, priors of ratio and memory left out. */
  Evidence at(double logRatio, double logMemory, Play play) {
    return at(logRatio, logMemory, play, Double.NEGATIVE_INFINITY);
  }

  /** The same without what is lighter than a floor. */
  Evidence at(double logRatio, double logMemory, Play play, double floor) {
    return Evidence.of(
        model, resolution, frames, products(logRatio, logMemory, play), columns, play, floor);
  }

  /** Logarithm of the density of the ratio's logarithm and the memory's, the play known. */
  double log(double logRatio, double logMemory, Play play) {
    double[][][] products = products(logRatio, logMemory, play);
    return Evidence.log(model, resolution, frames, products, columns, play)
        + model.priors().logRatio(logRatio)
        + model.priors().logMemory(logMemory);
  }

  private double[][][] products(double logRatio, double logMemory, Play play) {
    if (logRatio != filteredRatio || logMemory != filteredMemory) {
      frames.filter(Math.pow(10, logRatio), Math.exp(logMemory));
      filteredRatio = logRatio;
      filteredMemory = logMemory;
    }
    return frames.products(pushes(play));
  }

  private double[][][] pushes(Play play) {
    double[][][] known = pushes.get(play);
    if (known == null) {
      List<ObservedRun> runs = model.runs();
      known = new double[runs.size()][][];
      for (int r = 0; r < known.length; r++) {
        known[r] = runs.get(r).pushes().columns(play.width(), play.start(), play.unlikeness());
      }
      if ((pushes.size() + 1L) * model.size() < MOST_KEPT) {
        pushes.put(play, known);
      }
    }
    return known;
  }
}
