package io.github.roundstar.ingest.layout;

import io.github.roundstar.model.PierSide;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;

/** Offsets and pulses of a sample as the log has them, and what names and letters say of them. */
final class PulseSeries {
  /** Share of the pulses' variance that the offsets must explain before a sign is believed. */
  static final double ENOUGH_SHARE = 0.5;

  private static final double AXIS_DOMINATES = 2;
  private static final int STRETCH_PULSES = 40;

  private final Map<Meaning, ColumnData> columns;
  private final List<Optional<PierSide>> sides;
  private final boolean comma;
  private final boolean camera;
  private final double[] one;
  private final double[] two;

  PulseSeries(Map<Meaning, ColumnData> columns, List<Optional<PierSide>> sides, boolean comma) {
    this.columns = columns;
    this.sides = sides;
    this.comma = comma;
    this.camera = columns.containsKey(Meaning.X_OFFSET);
    this.one = columns.get(camera ? Meaning.X_OFFSET : Meaning.RA_OFFSET).numbers;
    this.two = columns.get(camera ? Meaning.Y_OFFSET : Meaning.DEC_OFFSET).numbers;
  }

  /** Whether offsets are along the camera's axes. */
  boolean alongCamera() {
    return camera;
  }

  /** The column that means something, if any does. */
  Optional<ColumnData> column(Meaning meaning) {
    return Optional.ofNullable(columns.get(meaning));
  }

  /** Sides of the pier in order of appearance; an empty one where no line tells it. */
  List<Optional<PierSide>> sides() {
    return sides.stream().distinct().toList();
  }

  /** How pulses answer offsets on one side of the pier. */
  PulseAnswer answer(double[] pulse, int lag, Optional<PierSide> side) {
    return PulseAnswer.of(pulse, one, two, lag, i -> sides.get(i).equals(side));
  }

  /**
   * The log's pulses as numbers, null if it has none, E and N positive where letters or columns
   * tell them apart.
   */
  double[] pulses(boolean dec) {
    ColumnData toward = columns.get(dec ? Meaning.NORTH_PULSE : Meaning.EAST_PULSE);
    ColumnData away = columns.get(dec ? Meaning.SOUTH_PULSE : Meaning.WEST_PULSE);
    if (toward != null && away != null) {
      double[] all = new double[one.length];
      for (int i = 0; i < all.length; i++) {
        all[i] = zeroFor(toward.numbers[i]) - zeroFor(away.numbers[i]);
      }
      return all;
    }
    ColumnData signed = columns.get(dec ? Meaning.DEC_PULSE : Meaning.RA_PULSE);
    return signed == null
        ? null
        : lettered(signed, columns.get(dec ? Meaning.DEC_LETTER : Meaning.RA_LETTER), dec);
  }

  private double[] lettered(ColumnData signed, ColumnData letters, boolean dec) {
    double[] all = new double[one.length];
    for (int i = 0; i < all.length; i++) {
      String cell = signed.cells.get(i);
      String word = letters == null ? cell.replaceAll("[^A-Za-z]", "") : letters.cells.get(i);
      double length = Numbers.of(cell.replaceAll("[A-Za-z ]", ""), comma).orElse(0);
      boolean away = !word.isEmpty() && (dec ? "sS" : "wW").indexOf(word.charAt(0)) >= 0;
      all[i] = away ? -length : length;
    }
    return all;
  }

  boolean hasLetters(boolean dec) {
    if (columns.containsKey(dec ? Meaning.NORTH_PULSE : Meaning.EAST_PULSE)
        || columns.containsKey(dec ? Meaning.DEC_LETTER : Meaning.RA_LETTER)) {
      return true;
    }
    ColumnData signed = columns.get(dec ? Meaning.DEC_PULSE : Meaning.RA_PULSE);
    return signed != null
        && signed.words.stream().anyMatch(w -> w.matches("[EWNSewns].*|.*[EWNSewns]"));
  }

  private static double zeroFor(double value) {
    return Double.isFinite(value) ? value : 0;
  }

  Optional<Direction> named(Meaning meaning) {
    ColumnData column = columns.get(meaning);
    return column == null ? Optional.empty() : new NameWords(column.name).direction();
  }

  static double own(PulseAnswer answer, boolean dec) {
    return dec ? answer.second() : answer.first();
  }

  static boolean isOwn(PulseAnswer answer, boolean dec) {
    return Math.abs(own(answer, dec)) >= AXIS_DOMINATES * Math.abs(own(answer, !dec));
  }

  /** Whether a stretch of the log answers otherwise than the whole does. */
  boolean changes(
      double[] pulse, int lag, Optional<PierSide> side, Predicate<PulseAnswer> asTheWhole) {
    int from = 0;
    int sent = 0;
    for (int i = 0; i < pulse.length; i++) {
      sent += sides.get(i).equals(side) && pulse[i] != 0 && Double.isFinite(pulse[i]) ? 1 : 0;
      if (sent == STRETCH_PULSES || i == pulse.length - 1) {
        int begin = from;
        int end = i;
        PulseAnswer part =
            PulseAnswer.of(
                pulse, one, two, lag, r -> r >= begin && r <= end && sides.get(r).equals(side));
        if (part.share() >= ENOUGH_SHARE && !asTheWhole.test(part)) {
          return true;
        }
        from = i + 1;
        sent = 0;
      }
    }
    return false;
  }
}
