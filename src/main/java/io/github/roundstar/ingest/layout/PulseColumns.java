package io.github.roundstar.ingest.layout;

import java.util.ArrayList;
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
record PulseColumns(
    Column main,
    Optional<Column> beside,
    boolean apart,
    double[] series,
    char axis,
    List<String> toward,
    List<String> away,
    boolean known) {
  private static final int MOST_CODES = 6;

  /** What the codes of a column stand for. */
  private record Codes(char axis, Set<String> toward, Set<String> away, boolean known) {
    static Optional<Codes> of(Set<String> values, LogSentences text, boolean bare) {
      Set<String> toward = new LinkedHashSet<>();
      Set<String> away = new LinkedHashSet<>();
      Set<String> unknown = new LinkedHashSet<>();
      boolean dec = false;
      boolean ra = false;
      boolean told = false;
      for (String value : values) {
        Optional<Direction> to =
            text.direction(value).or(() -> Words.of(value).direction(text.eastIsO()));
        told |= to.isPresent();
        if (to.isPresent()) {
          dec |= to.get() == Direction.NORTH || to.get() == Direction.SOUTH;
          ra |= to.get() == Direction.EAST || to.get() == Direction.WEST;
          (to.get().sign() > 0 ? toward : away).add(value);
        } else if (!isNone(value)) {
          unknown.add(value);
        }
      }
      if (told) {
        return dec != ra && unknown.isEmpty()
            ? Optional.of(new Codes(dec ? 'd' : 'r', toward, away, true))
            : Optional.empty();
      }
      return bare ? signs(values, unknown) : Optional.empty();
    }

    /** Two codes that name nothing: plus and minus, or any two. */
    private static Optional<Codes> signs(Set<String> values, Set<String> unknown) {
      Set<String> plus = new LinkedHashSet<>();
      Set<String> minus = new LinkedHashSet<>();
      List<String> others = new ArrayList<>();
      for (String value : values) {
        if (value.equals("+") || value.equals("+1") || value.equals("1") || value.equals("1.0")) {
          plus.add(value);
        } else if (value.equals("-")
            || value.equals("\u2212")
            || value.equals("-1")
            || value.equals("\u22121")
            || value.equals("-1.0")) {
          minus.add(value);
        } else if (!isNone(value)) {
          others.add(value);
        }
      }
      if (others.isEmpty() && plus.size() + minus.size() > 0) {
        return Optional.of(new Codes(' ', plus, minus, false));
      }
      return unknown.size() == 2 && others.size() == 2
          ? Optional.of(new Codes(' ', Set.of(others.get(0)), Set.of(others.get(1)), false))
          : Optional.empty();
    }

    private static boolean isNone(String value) {
      return value.equals("0")
          || !value.equals("-") && Numbers.isNoValue(value)
          || value.equals(".");
    }
  }

  /** All that may be pulses among some columns. */
  static List<PulseColumns> among(List<Column> columns, LogSentences text) {
    List<PulseColumns> all = new ArrayList<>();
    for (Column column : columns) {
      if (column.isLettered()) {
        Codes.of(column.letters.keySet(), text, true)
            .ifPresent(codes -> all.add(inField(column, codes)));
      } else if (column.isNumeric() && !column.isOneSided() || isAllZero(column)) {
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
              && near(codes, length, columns)) {
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

  private static boolean isAllZero(Column column) {
    return column.isNumeric() && column.largest() == 0;
  }

  private static boolean near(Column codes, Column length, List<Column> columns) {
    return Math.abs(columns.indexOf(codes) - columns.indexOf(length)) <= 4;
  }

  private static Set<String> codeValues(Column column) {
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
    double[] series = column.numbers.clone();
    for (int i = 0; i < series.length; i++) {
      String word = LetteredNumber.of(column.cells.get(i)).word();
      series[i] = codes.away.contains(word) ? -series[i] : series[i];
    }
    return of(column, Optional.empty(), series, codes);
  }

  private static PulseColumns beside(Column length, Column letters, Codes codes) {
    double[] series = length.numbers.clone();
    for (int i = 0; i < series.length; i++) {
      String code = letters.cells.get(i);
      series[i] =
          codes.away.contains(code) ? -series[i] : codes.toward.contains(code) ? series[i] : 0;
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
        codes.axis,
        List.copyOf(codes.toward),
        List.copyOf(codes.away),
        codes.known);
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

  /** How many pulses there are. */
  int sent() {
    int count = 0;
    for (double pulse : series) {
      count += pulse != 0 && Double.isFinite(pulse) ? 1 : 0;
    }
    return count;
  }

  boolean uses(Column column) {
    return main == column || beside.filter(other -> other == column).isPresent();
  }

  String called() {
    return main.called() + beside.map(other -> " with " + other.called()).orElse("");
  }
}
