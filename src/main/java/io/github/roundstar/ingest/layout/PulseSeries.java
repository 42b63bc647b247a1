package io.github.roundstar.ingest.layout;

import io.github.roundstar.model.PierSide;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.IntStream;

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
  PulseAnswer answer(double[] pulse, int lag, Optional<PierSide> side) {
    return PulseAnswer.of(pulse, one, two, lag, i -> sides.get(i).equals(side));
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
  boolean changes(
      double[] pulse, int lag, Optional<PierSide> side, Predicate<PulseAnswer> asTheWhole) {
    int from = 0;
    int sent = 0;
    for (int i = 0; i < pulse.length; i++) {
      sent += sides.get(i).equals(side) && pulse[i] != 0 && Double.isFinite(pulse[i]) ? 1 : 0;
      if (sent == STRETCH_PULSES || i == pulse.length - 1) {
        PulseAnswer part =
            PulseAnswer.of(
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
}
