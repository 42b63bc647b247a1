package io.github.roundstar.ingest.layout.evidence;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * Columns that tell where the star stands on the camera: less a set point in columns beside them,
 * or in a sentence, or else less the place after each move, they are offsets.
 */
public final class Places {
  /** Offsets scatter about a place near zero; places lie this many scatters off it. */
  private static final double FAR = 8;

  private Places() {}

  /** Turns the numbers of such columns into offsets, and remembers how. */
  public static void find(List<Column> columns, LogSentences text) {
    for (Column column : columns) {
      if (column.axis(text.eastIsO()) == ' ' && column.isNumeric()) {
        axisByMark(column, text).ifPresent(column::takeAxis);
      }
      char axis = column.axis(text.eastIsO());
      OptionalDouble mark = text.mark(axis);
      boolean told = mark.isPresent() && isNear(column, mark.getAsDouble());
      if (axis == ' ' || !column.isNumeric() || !told && !isPlace(column, axis)) {
        continue;
      }
      Optional<Column> set =
          columns.stream()
              .filter(c -> c != column && c.isNumeric() && c.nameHas("set point"))
              .filter(c -> c.axis(text.eastIsO()) == axis && !c.nameHas("offset"))
              .findFirst();
      double[] places = column.numbers.clone();
      double zero = column.finite().length == 0 ? 0 : column.finite()[0];
      for (int i = 0; i < places.length; i++) {
        double less = set.isPresent() ? set.get().numbers[i] : mark.orElse(zero);
        column.numbers[i] = places[i] - less;
      }
      column.isPlaceLess(set);
    }
  }

  /** The axis of the one set point that numbers lie about. */
  private static Optional<Character> axisByMark(Column column, LogSentences text) {
    List<Character> near =
        Stream.of('x', 'y')
            .filter(axis -> text.mark(axis).isPresent())
            .filter(axis -> isNear(column, text.mark(axis).getAsDouble()))
            .toList();
    return near.size() == 1 ? Optional.of(near.get(0)) : Optional.empty();
  }

  /** Whether numbers lie about a set point that a sentence tells, and far from zero. */
  private static boolean isNear(Column column, double mark) {
    double scatter = column.scatter();
    return scatter > 0
        && Math.abs(column.median() - mark) < FAR * scatter
        && Math.abs(column.median()) > FAR * scatter;
  }

  private static boolean isPlace(Column column, char axis) {
    if (column.nameHas("set point") || column.hasAny("pulse", "statistic", "length", "sense")) {
      return false;
    }
    boolean far = Math.abs(column.median()) > FAR * column.scatter() && column.scatter() > 0;
    boolean named = column.nameHas("place");
    boolean bare = (axis == 'x' || axis == 'y') && !column.hasAny("offset", "other", "flux", "snr");
    return far && (named || bare) && column.rising() < 0.9;
  }
}
