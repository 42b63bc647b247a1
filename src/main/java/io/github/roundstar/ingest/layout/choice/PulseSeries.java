package io.github.roundstar.ingest.layout.choice;

import io.github.roundstar.ingest.layout.CameraAxes;
import io.github.roundstar.ingest.layout.Direction;
import io.github.roundstar.ingest.layout.evidence.Column;
import io.github.roundstar.ingest.layout.evidence.LogSentences;
import io.github.roundstar.ingest.layout.evidence.PulseColumns;
import io.github.roundstar.model.PierSide;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.DecompositionSolver;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.linear.SingularMatrixException;

/** Offsets and pulses of a sample as the log has them, and what names and letters say of them. */
final class PulseSeries {
  /** Share of the pulses' variance that the offsets must explain before a sign is believed. */
  static final double ENOUGH_SHARE = 0.5;

  private static final int STRETCH_PULSES = 40;

  private final ColumnChoice.Choice choice;
  private final List<Optional<PierSide>> sides;
  private final LogSentences text;
  private final double[] one;
  private final double[] two;

  PulseSeries(ColumnChoice.Choice choice, List<Optional<PierSide>> sides, LogSentences text) {
    this.choice = choice;
    this.sides = sides;
    this.text = text;
    this.one = choice.offsets()[0].numbers;
    this.two = choice.offsets()[1].numbers;
  }

  /** Whether offsets are along the camera's axes. */
  boolean alongCamera() {
    return choice.camera();
  }

  /** Whether a sentence may tell the sense of an axis that was not understood. */
  boolean passesOverSense(boolean dec) {
    return text.passesOverSense(dec);
  }

  /** How the camera lies on the sky, as a sentence tells. */
  Optional<CameraAxes> told() {
    return text.camera();
  }

  /** The column of the offsets of an axis. */
  Column offset(boolean dec) {
    return choice.offsets()[dec ? 1 : 0];
  }

  /** Where the pulses of an axis stand, if the log has any. */
  Optional<PulseColumns> pulse(boolean dec) {
    return choice.hasPulses() ? Optional.of(choice.pulses()[dec ? 1 : 0]) : Optional.empty();
  }

  /** Sides of the pier in order of appearance; an empty one where no line tells it. */
  List<Optional<PierSide>> sides() {
    return sides.stream().distinct().toList();
  }

  /** How pulses answer offsets on one side of the pier. */
  Answer answer(double[] pulse, int lag, Optional<PierSide> side) {
    return Answer.of(pulse, one, two, lag, i -> sides.get(i).equals(side));
  }

  /** The log's pulses as signed numbers; null if it has none. */
  double[] pulses(boolean dec) {
    return pulse(dec).map(PulseColumns::series).orElse(null);
  }

  /** Whether codes or columns of their own tell the directions of the pulses on the sky. */
  boolean hasLetters(boolean dec) {
    return pulse(dec).map(PulseColumns::known).orElse(false);
  }

  /** Where a positive offset points, as its name or a sentence tells. */
  Optional<Direction> namedOffset(boolean dec) {
    return ofAxis(offset(dec).direction(text.eastIsO()), dec).or(() -> text.positive(false, dec));
  }

  /** Where a positive offset points, as a sentence tells. */
  Optional<Direction> toldOffset(boolean dec) {
    return text.positive(false, dec);
  }

  /** Where a positive pulse pushes, as its name or a sentence tells. */
  Optional<Direction> namedPulse(boolean dec) {
    return pulse(dec)
        .filter(p -> p.toward().isEmpty())
        .flatMap(p -> ofAxis(p.main().direction(text.eastIsO()), dec))
        .or(() -> text.positive(true, dec));
  }

  /** Whether a sentence tells where a positive pulse, or one with a letter, pushes. */
  boolean pulseTold(boolean dec) {
    return text.explainsLetters() || text.positive(true, dec).isPresent();
  }

  /** Whether the lengths east and west, or north and south, stand in columns of their own. */
  boolean isApart(boolean dec) {
    return pulse(dec).filter(PulseColumns::apart).isPresent();
  }

  private static Optional<Direction> ofAxis(Optional<Direction> to, boolean dec) {
    return to.filter(d -> dec == (d == Direction.NORTH || d == Direction.SOUTH));
  }

  /** Whether a stretch of the log answers otherwise than the whole does. */
  boolean changes(double[] pulse, int lag, Optional<PierSide> side, Predicate<Answer> asTheWhole) {
    int from = 0;
    int sent = 0;
    for (int i = 0; i < pulse.length; i++) {
      sent += sides.get(i).equals(side) && pulse[i] != 0 && Double.isFinite(pulse[i]) ? 1 : 0;
      if (sent == STRETCH_PULSES || i == pulse.length - 1) {
        Answer part =
            Answer.of(
                pulse,
                one,
                two,
                lag,
                IntStream.rangeClosed(from, i).filter(r -> sides.get(r).equals(side)));
        if (part.share() >= ENOUGH_SHARE && !asTheWhole.test(part)) {
          return true;
        }
        from = i + 1;
        sent = 0;
      }
    }
    return false;
  }

  /**
   * How a pulse follows from the two offsets of a row: p = a first + b second + c, by least squares
   * over the rows with a pulse.
   *
   * @param rows rows with a pulse and offsets
   * @param first a, in pulse units per offset unit
   * @param second b
   * @param share share of the pulses' variance that the offsets explain (R squared); 0 where it
   *     cannot be had
   */
  record Answer(int rows, double first, double second, double share) {
    private static final Answer NONE = new Answer(0, 0, 0, 0);
    private static final int FEWEST = 8;
    private static final double AXIS_DOMINATES = 2;

    /**
     * Fits.
     *
     * @param lag 0: a row's pulse answers its own offset; 1: that of the row before
     * @param taken rows to use
     */
    static Answer of(double[] pulse, double[] one, double[] two, int lag, IntPredicate taken) {
      return of(pulse, one, two, lag, IntStream.range(1, pulse.length).filter(taken));
    }

    /** Fits over some rows. */
    static Answer of(double[] pulse, double[] one, double[] two, int lag, IntStream taken) {
      int[] rows =
          taken
              .filter(i -> i > 0)
              .filter(i -> pulse[i] != 0 && Double.isFinite(pulse[i]))
              .filter(i -> Double.isFinite(one[i - lag]) && Double.isFinite(two[i - lag]))
              .toArray();
      if (rows.length < FEWEST) {
        return new Answer(rows.length, 0, 0, 0);
      }
      double[][] x = new double[rows.length][];
      double[] y = new double[rows.length];
      double mean = 0;
      for (int r = 0; r < rows.length; r++) {
        int i = rows[r] - lag;
        x[r] = new double[] {one[i], two[i], 1};
        y[r] = pulse[rows[r]];
        mean += y[r] / rows.length;
      }
      try {
        DecompositionSolver solver =
            new QRDecomposition(new Array2DRowRealMatrix(x, false)).getSolver();
        RealVector fit = solver.solve(new ArrayRealVector(y, false));
        return new Answer(
            rows.length, fit.getEntry(0), fit.getEntry(1), explained(x, y, mean, fit));
      } catch (SingularMatrixException e) {
        return NONE;
      }
    }

    private static double explained(double[][] x, double[] y, double mean, RealVector fit) {
      double left = 0;
      double all = 0;
      for (int r = 0; r < y.length; r++) {
        double model = x[r][0] * fit.getEntry(0) + x[r][1] * fit.getEntry(1) + fit.getEntry(2);
        left += (y[r] - model) * (y[r] - model);
        all += (y[r] - mean) * (y[r] - mean);
      }
      return all > 0 ? Math.max(0, 1 - left / all) : 0;
    }

    /** How it follows the first offset, or the second. */
    double along(boolean ofSecond) {
      return ofSecond ? second : first;
    }

    /** Whether it follows one of the offsets far more than the other. */
    boolean isOwn(boolean ofSecond) {
      return Math.abs(along(ofSecond)) >= AXIS_DOMINATES * Math.abs(along(!ofSecond));
    }

    /**
     * Direction of the offset that calls for a positive pulse, from the first through the second.
     */
    double degrees() {
      return Math.toDegrees(Math.atan2(second, first));
    }
  }
}
