package io.github.roundstar.diagnosis;

import io.github.roundstar.model.SkySense;
import io.github.roundstar.motion.AmplitudeTrace;
import io.github.roundstar.motion.FoldedTurns;
import io.github.roundstar.motion.PeriodicError;
import io.github.roundstar.motion.TurnCurve;
import io.github.roundstar.results.Band;
import io.github.roundstar.results.Polyline;
import io.github.roundstar.results.Range;
import io.github.roundstar.results.SpectrumTrace;
import io.github.roundstar.results.WormTrace;
import io.github.roundstar.signal.Quantile;
import java.util.Arrays;
import java.util.Comparator;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** Spectrum and folded turn of the periodic error, thinned for a chart. */
final class PeriodicTraces {
  /** Pixel columns of the spectrum, even in the logarithm of the period. */
  private static final int COLUMNS = 600;

  private static final int MOST_TURNS = 20;

  /** So much of the spectrum is shown beyond the slowest period found. */
  private static final double BEYOND = 1.5;

  /** One turn repeats nothing. */
  private static final int FEWEST_TRAINED = 2;

  private PeriodicTraces() {}

  /**
   * Amplitude against period, of each pixel column its greatest; from three turns in the longest
   * run, or from beyond the slowest period that was found.
   */
  static SpectrumTrace spectrum(PeriodicError found) {
    AmplitudeTrace trace = found.amplitudes();
    int bins = trace.size() - 1;
    int slowest = slowest(found, trace);
    double longest = Math.log(trace.periodSeconds(slowest));
    double shortest = Math.log(trace.periodSeconds(bins));
    int[] greatest = new int[COLUMNS + 1];
    for (int k = bins; k >= slowest; k--) {
      double share = (Math.log(trace.periodSeconds(k)) - shortest) / (longest - shortest);
      int column = (int) (share * COLUMNS);
      int so = greatest[column];
      if (so == 0 || trace.amplitudeArcsec(k) > trace.amplitudeArcsec(so)) {
        greatest[column] = k;
      }
    }
    int[] kept = Arrays.stream(greatest).filter(k -> k > 0).toArray();
    double[] periods = Arrays.stream(kept).mapToDouble(trace::periodSeconds).toArray();
    return new SpectrumTrace(
        Polyline.of(periods, Arrays.stream(kept).mapToDouble(trace::amplitudeArcsec).toArray()),
        Polyline.of(periods, Arrays.stream(kept).mapToDouble(trace::onePercentArcsec).toArray()),
        PeriodicFigures.components(found, SkySense.KNOWN));
  }

  private static int slowest(PeriodicError found, AmplitudeTrace trace) {
    double longest =
        found.tones().stream()
            .mapToDouble(tone -> BEYOND * tone.periodSeconds().value())
            .max()
            .orElse(0);
    int slowest = Math.min((int) PeriodicError.FEWEST_CYCLES, trace.size() - 1);
    while (slowest > 1 && trace.periodSeconds(slowest) < longest) {
      slowest--;
    }
    return slowest;
  }

  /** One turn, where a curve was found and at least one turn is complete. */
  static Optional<WormTrace> turn(PeriodicError found) {
    Optional<TurnCurve> curve = found.curve().value();
    Optional<FoldedTurns> folded = found.folded().value().filter(turns -> turns.turns() > 0);
    if (curve.isEmpty() || folded.isEmpty()) {
      return Optional.empty();
    }
    FoldedTurns turns = folded.get();
    double[] phase = new double[FoldedTurns.BINS];
    double[] model = new double[FoldedTurns.BINS];
    double[] low = new double[FoldedTurns.BINS];
    double[] mean = new double[FoldedTurns.BINS];
    double[] high = new double[FoldedTurns.BINS];
    for (int bin = 0; bin < phase.length; bin++) {
      phase[bin] = (bin + 0.5) / FoldedTurns.BINS;
      model[bin] = curve.get().at(2 * Math.PI * phase[bin]);
      mean[bin] = turns.mean(bin);
      low[bin] = turns.mean(bin) - turns.spread(bin);
      high[bin] = turns.mean(bin) + turns.spread(bin);
    }
    return Optional.of(
        new WormTrace(
            curve.get().periodSeconds(),
            turns.turns(),
            Band.of(phase, low, mean, high),
            Polyline.of(phase, model),
            singleTurns(turns, phase),
            trained(turns, phase)));
  }

  /** Each turn with the mean of all others taken off. */
  private static Optional<WormTrace.Trained> trained(FoldedTurns turns, double[] phase) {
    int count = turns.turns();
    if (count < FEWEST_TRAINED) {
      return Optional.empty();
    }
    double[][] left = new double[count][phase.length];
    double[] before = new double[count];
    double[] after = new double[count];
    for (int turn = 0; turn < count; turn++) {
      double[] own = new double[phase.length];
      for (int bin = 0; bin < phase.length; bin++) {
        own[bin] = turns.turn(turn, bin);
        left[turn][bin] = own[bin] - others(turns, turn, bin);
      }
      before[turn] = swing(own);
      after[turn] = swing(left[turn]);
    }
    Range then = range(after);
    double[] middle =
        Arrays.stream(left)
            .min(Comparator.comparingDouble(l -> Math.abs(swing(l) - then.value())))
            .orElseThrow();
    return Optional.of(new WormTrace.Trained(Polyline.of(phase, middle), range(before), then));
  }

  private static double others(FoldedTurns turns, int turn, int bin) {
    return IntStream.range(0, turns.turns())
        .filter(t -> t != turn)
        .mapToDouble(t -> turns.turn(t, bin))
        .filter(Double::isFinite)
        .average()
        .orElse(Double.NaN);
  }

  private static double swing(double[] arcsec) {
    DoubleSummaryStatistics all =
        Arrays.stream(arcsec).filter(Double::isFinite).summaryStatistics();
    return all.getCount() == 0 ? 0 : all.getMax() - all.getMin();
  }

  private static Range range(double[] values) {
    return new Range(
        Quantile.median(values), Quantile.of(values, 0.025), Quantile.of(values, 0.975));
  }

  private static List<Polyline> singleTurns(FoldedTurns turns, double[] phase) {
    return IntStream.range(0, Math.min(MOST_TURNS, turns.turns()))
        .mapToObj(
            turn -> {
              double[] arcsec = new double[phase.length];
              Arrays.setAll(arcsec, bin -> turns.turn(turn, bin));
              return Polyline.of(phase, arcsec);
            })
        .toList();
  }
}
