package io.github.roundstar.ingest.layout.evidence;

import io.github.roundstar.ingest.layout.Direction;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * One column, or two, that may hold the pulses of an axis, folded into one signed series.
 *
 * @param main the lengths, or those east or north
 * @param beside a code for the direction, or the lengths west or south
 * @param apart whether both are lengths
 * @param series signed pulses, NaN where there is none
 * @param axis 'r' or 'd' where codes tell it; else a blank
 * @param toward codes for east or north; where no one knows, for one way
 * @param away codes for the opposite
 * @param known whether the codes name directions on the sky
 */
public record PulseColumns(
    Column main,
    Optional<Column> beside,
    boolean apart,
    double[] series,
    char axis,
    List<String> toward,
    List<String> away,
    boolean known) {
  private static final int MOST_CODES = 6;

  /** All that may be pulses among some columns. */
  public static List<PulseColumns> among(List<Column> columns, LogSentences text) {
    List<PulseColumns> all = new ArrayList<>();
    for (Column column : columns) {
      if (column.isLettered()) {
        column.codes().ifPresent(codes -> all.add(inField(column, codes)));
      } else if (column.isNumeric() && isSigned(column, columns) && !isCode(column)
          || isAllZero(column)) {
        all.add(
            new PulseColumns(
                column, Optional.empty(), false, column.numbers, ' ', List.of(), List.of(), false));
      }
    }
    for (Column codes : columns) {
      Set<String> values = codeValues(codes);
      if (!values.isEmpty() && values.size() <= MOST_CODES) {
        Optional<Codes> found = Codes.of(values, text, true);
        for (Column length : found.isPresent() ? columns : List.<Column>of()) {
          if (length != codes
              && length.isNumeric()
              && length.isOneSided()
              && !length.isLettered()
              && (near(codes, length, columns) || isOneAxis(codes, length, text.eastIsO()))) {
            PulseColumns pulses = beside(length, codes, found.get());
            if (pulses.sent() >= 0.9 * length.share(v -> v != 0) * length.finite().length) {
              all.add(pulses);
            }
          }
        }
      }
    }
    for (Column one : columns) {
      for (Column other : columns) {
        apart(one, other, text.eastIsO()).ifPresent(all::add);
      }
    }
    return all;
  }

  /** Numbers with a sign; those of a guider that pushes one way only may have the same one. */
  private static boolean isSigned(Column column, List<Column> columns) {
    if (!column.isOneSided() || column.share(v -> v < 0) > 0) {
      return true;
    }
    return column.hasAny("pulse")
        && columns.stream()
            .filter(c -> c != column && c.has("pulse") && c.unit().equals(column.unit()))
            .anyMatch(c -> c.isNumeric() && c.share(v -> v < 0) > 0.05);
  }

  /** Ones, minus ones and zeros are codes for directions. */
  private static boolean isCode(Column column) {
    return column.isWhole() && column.largest() <= 1;
  }

  private static boolean isAllZero(Column column) {
    return column.isNumeric() && column.largest() == 0;
  }

  private static boolean near(Column codes, Column length, List<Column> columns) {
    return Math.abs(columns.indexOf(codes) - columns.indexOf(length)) <= 4;
  }

  private static boolean isOneAxis(Column codes, Column length, boolean eastIsO) {
    char axis = length.axis(eastIsO);
    return axis != ' ' && axis == codes.axis(eastIsO);
  }

  public static Set<String> codeValues(Column column) {
    Set<String> values = new LinkedHashSet<>();
    boolean few =
        column.numeric == 0 || column.isNumeric() && column.largest() <= 1 && column.isWhole();
    for (int i = 0; i < column.cells.size() && few && values.size() <= MOST_CODES; i++) {
      if (!column.cells.get(i).isEmpty()) {
        values.add(column.cells.get(i));
      }
    }
    return values;
  }

  private static PulseColumns inField(Column column, Codes codes) {
    return of(column, Optional.empty(), column.numbers, codes);
  }

  private static PulseColumns beside(Column length, Column letters, Codes codes) {
    double[] series = length.numbers.clone();
    for (int i = 0; i < series.length; i++) {
      String code = letters.cells.get(i);
      series[i] =
          codes.away().contains(code) ? -series[i] : codes.toward().contains(code) ? series[i] : 0;
    }
    return of(length, Optional.of(letters), series, codes);
  }

  private static PulseColumns of(
      Column main, Optional<Column> beside, double[] series, Codes codes) {
    return new PulseColumns(
        main,
        beside,
        false,
        series,
        codes.axis(),
        List.copyOf(codes.toward()),
        List.copyOf(codes.away()),
        codes.known());
  }

  /** Lengths in columns of their own, never in both of them at once. */
  private static Optional<PulseColumns> apart(Column one, Column other, boolean eastIsO) {
    Optional<Direction> to = one.nameDirection(eastIsO);
    Optional<Direction> from = other.nameDirection(eastIsO);
    boolean pair =
        to.isPresent()
            && to.get().sign() > 0
            && from.equals(to.map(Direction::opposite))
            && one.isNumeric()
            && other.isNumeric()
            && one.share(v -> v < 0) == 0
            && other.share(v -> v < 0) == 0
            && one.isNumeric()
            && one.letters.isEmpty();
    if (!pair) {
      return Optional.empty();
    }
    double[] series = new double[one.numbers.length];
    int both = 0;
    for (int i = 0; i < series.length; i++) {
      double east = Double.isNaN(one.numbers[i]) ? 0 : one.numbers[i];
      double west = Double.isNaN(other.numbers[i]) ? 0 : other.numbers[i];
      both += east != 0 && west != 0 ? 1 : 0;
      series[i] = east - west;
    }
    char axis = to.get() == Direction.EAST ? 'r' : 'd';
    return both > series.length / 100
        ? Optional.empty()
        : Optional.of(
            new PulseColumns(
                one, Optional.of(other), true, series, axis, List.of(), List.of(), true));
  }

  /** Two columns of lengths that take turns as an offset changes sides; empty if there are none. */
  public static List<Column> turns(List<Column> columns, Column[] offsets) {
    List<Column> lengths =
        columns.stream()
            .filter(c -> c.isNumeric() && c.isOneSided() && !c.isConstant())
            .filter(c -> c.share(v -> v == 0) > 0.2 && c.largest() > 1)
            .limit(12)
            .toList();
    for (Column one : lengths) {
      for (Column other : lengths) {
        double[] series = new double[one.numbers.length];
        int both = 0;
        for (int i = 0; i < series.length; i++) {
          series[i] = one.numbers[i] - other.numbers[i];
          both += one.numbers[i] != 0 && other.numbers[i] != 0 ? 1 : 0;
        }
        for (Column offset : offsets) {
          double follows =
              Math.max(
                  Relation.correlation(series, offset.numbers, 0, i -> series[i] != 0),
                  Relation.correlation(series, offset.numbers, 1, i -> series[i] != 0));
          if (one != other && both < series.length / 20 && follows > 0.7) {
            return List.of(one, other);
          }
        }
      }
    }
    return List.of();
  }

  /** Columns whose sizes follow those of an offset, with zeros between, though none tells a way. */
  public static List<Column> sizes(List<Column> columns, Column[] offsets) {
    return columns.stream()
        .filter(c -> c.isNumeric() && c.isOneSided() && !c.isConstant())
        .filter(c -> c.share(v -> v == 0) > 0.05)
        .filter(c -> Arrays.stream(offsets).anyMatch(offset -> followsSize(c, offset)))
        .toList();
  }

  private static boolean followsSize(Column column, Column offset) {
    double[] sizes = Arrays.stream(offset.numbers).map(Math::abs).toArray();
    double[] own = column.numbers;
    return Math.max(
            Relation.correlation(own, sizes, 0, i -> own[i] != 0),
            Relation.correlation(own, sizes, 1, i -> own[i] != 0))
        > 0.9;
  }

  /** How many pulses there are. */
  public int sent() {
    int count = 0;
    for (double pulse : series) {
      count += pulse != 0 && Double.isFinite(pulse) ? 1 : 0;
    }
    return count;
  }

  public boolean uses(Column column) {
    return main == column || beside.filter(other -> other == column).isPresent();
  }

  public String called() {
    return main.called() + beside.map(other -> " with " + other.called()).orElse("");
  }
}
