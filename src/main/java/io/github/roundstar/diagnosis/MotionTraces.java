package io.github.roundstar.diagnosis;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.LevelledMotion;
import io.github.roundstar.motion.MountDrift;
import io.github.roundstar.results.MotionTrace;
import io.github.roundstar.results.Polyline;
import io.github.roundstar.signal.Decimation;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** Motion of the mount with the corrections taken out, run by run, thinned for a chart. */
final class MotionTraces {
  /** Columns over all runs of a night; a chart is some 650 pixels wide. */
  private static final int COLUMNS = 450;

  /** Enough for a parabola to look smooth. */
  private static final int TREND_POINTS = 25;

  private MotionTraces() {}

  static List<MotionTrace> ra(List<RunStudy> studies, NightClock clock) {
    List<MotionTrace> traces = new ArrayList<>();
    for (int r = 0; r < studies.size(); r++) {
      RunStudy study = studies.get(r);
      Optional<LevelledMotion> levelled =
          study.periodic().value().flatMap(found -> found.levelled(study.run().id()));
      add(traces, levelled, study.raDriftSky(), clock.shiftSeconds(r), studies);
    }
    return traces;
  }

  static List<MotionTrace> dec(List<RunStudy> studies, NightClock clock) {
    List<MotionTrace> traces = new ArrayList<>();
    for (int r = 0; r < studies.size(); r++) {
      RunStudy study = studies.get(r);
      Optional<LevelledMotion> levelled = study.decDriftFit().value().map(MountDrift::levelled);
      add(traces, levelled, study.decDrift(), clock.shiftSeconds(r), studies);
    }
    return traces;
  }

  private static void add(
      List<MotionTrace> traces,
      Optional<LevelledMotion> levelled,
      Answer<Estimate> drift,
      double shift,
      List<RunStudy> studies) {
    if (levelled.isEmpty() || levelled.get().size() == 0) {
      return;
    }
    LevelledMotion motion = levelled.get();
    double total = studies.stream().mapToDouble(RunStudy::durationSeconds).sum();
    double own = motion.run().motion().spanSeconds();
    int columns = total == 0 ? 1 : (int) Math.max(1, COLUMNS * own / total);
    traces.add(
        new MotionTrace(
            motion.run().runId(),
            motionLine(motion, shift, columns),
            driftLine(motion, shift),
            drift.value().orElse(null)));
  }

  private static Polyline motionLine(LevelledMotion motion, double shift, int columns) {
    double[] x = motion.run().motion().seconds();
    double[] y = new double[x.length];
    double cosine = motion.run().cosine();
    for (int i = 0; i < x.length; i++) {
      x[i] += shift;
      y[i] = cosine * motion.arcsec(i);
    }
    List<double[]> keptX = new ArrayList<>();
    List<double[]> keptY = new ArrayList<>();
    for (Stretches.Stretch stretch : Stretches.of(x, motion.run().cadenceSeconds(), columns)) {
      Decimation thinned =
          Decimation.of(
              Arrays.copyOfRange(x, stretch.from(), stretch.to()),
              Arrays.copyOfRange(y, stretch.from(), stretch.to()),
              stretch.columns());
      keptX.add(IntStream.range(0, thinned.size()).mapToDouble(thinned::x).toArray());
      keptY.add(IntStream.range(0, thinned.size()).mapToDouble(thinned::y).toArray());
    }
    return Polyline.of(Stretches.joined(keptX), Stretches.joined(keptY));
  }

  /** The drift with its bend, through the mean of the motion. */
  private static Polyline driftLine(LevelledMotion motion, double shift) {
    int last = motion.size() - 1;
    double level = 0;
    for (int i = 0; i <= last; i++) {
      level += (motion.arcsec(i) - motion.driftArcsec(i)) / (last + 1);
    }
    double cosine = motion.run().cosine();
    int points = Math.min(TREND_POINTS, last + 1);
    double[] x = new double[points];
    double[] y = new double[points];
    for (int p = 0; p < points; p++) {
      int i = points == 1 ? 0 : (int) ((long) p * last / (points - 1));
      x[p] = motion.run().motion().seconds(i) + shift;
      y[p] = cosine * (motion.driftArcsec(i) + level);
    }
    return Polyline.of(x, y);
  }
}
