package io.github.roundstar.ingest.layout;

import io.github.roundstar.model.PierSide;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * Works out signs and axes from how pulses answer offsets: first the row whose offset a pulse
 * answers, since one row off turns the sign round, then signs, rotation and parity. What a name or
 * a letter says of a direction is checked against the data; what neither says stays nameless.
 */
final class PulseSigns {
  private static final double CLEARLY_LESS = 0.6;
  private static final int FEWEST_PULSES = 20;

  private final PulseSeries series;
  private final PulseQuestions questions;
  private final List<Decision> decisions;
  private final Map<Meaning, Direction> positive = new EnumMap<>(Meaning.class);
  private final Set<Meaning> turning = EnumSet.noneOf(Meaning.class);
  private CameraAxes axes =
      new CameraAxes(OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty());
  private int lag;

  PulseSigns(PulseSeries series, List<Decision> decisions) {
    this.series = series;
    this.questions = new PulseQuestions(series, decisions);
    this.decisions = decisions;
  }

  Optional<Direction> positive(Meaning meaning) {
    return Optional.ofNullable(positive.get(meaning));
  }

  boolean turns(Meaning meaning) {
    return turning.contains(meaning);
  }

  boolean inNextRow() {
    return lag == 1;
  }

  CameraAxes camera() {
    return axes;
  }

  void find() {
    double[][] pulses = {series.pulses(false), series.pulses(true)};
    boolean any = pulses[0] != null && pulses[1] != null;
    boolean sent = any && (count(pulses[0]) > 0 || count(pulses[1]) > 0);
    if (!any) {
      decisions.add(
          Decision.noted(
              "pulses",
              "none in the log",
              "no pair of columns looks like pulses, so the mount's own motion stays hidden behind"
                  + " the guiding",
              ""));
    }
    if (!sent) {
      withoutPulses();
      return;
    }
    findLag(pulses);
    if (series.alongCamera()) {
      new CameraAngle(series, questions, positive, lag).find(pulses).ifPresent(on -> axes = on);
    } else {
      findSigns(pulses[0], false);
      findSigns(pulses[1], true);
    }
  }

  private static long count(double[] pulses) {
    return IntStream.range(0, pulses.length)
        .filter(i -> Double.isFinite(pulses[i]) && pulses[i] != 0)
        .count();
  }

  private void withoutPulses() {
    if (series.alongCamera()) {
      questions.openCamera("without pulses nothing tells how the camera lies on the sky");
      return;
    }
    asNamed(false);
    asNamed(true);
  }

  /** Without a pulse on the axis, its name alone tells a direction, and no figure asks for more. */
  private void asNamed(boolean dec) {
    Meaning offset = dec ? Meaning.DEC_OFFSET : Meaning.RA_OFFSET;
    Meaning signed = dec ? Meaning.DEC_PULSE : Meaning.RA_PULSE;
    Optional<Direction> named = series.named(offset);
    positive.put(offset, named.orElse(Direction.ONE_WAY));
    if (series.column(signed).isPresent() && !series.hasLetters(dec)) {
      positive.put(signed, positive.get(offset));
    }
    if (named.isEmpty()) {
      questions.noteSense(dec);
    }
  }

  private void findLag(double[][] pulses) {
    double[] share = new double[2];
    int rows = 0;
    for (double[] axis : pulses) {
      for (Optional<PierSide> side : series.sides()) {
        PulseAnswer same = series.answer(axis, 0, side);
        PulseAnswer next = series.answer(axis, 1, side);
        share[0] += same.share() * same.rows();
        share[1] += next.share() * same.rows();
        rows += same.rows();
      }
    }
    double best = Math.max(share[0], share[1]) / Math.max(1, rows);
    double other = Math.min(share[0], share[1]) / Math.max(1, rows);
    lag = share[1] > share[0] ? 1 : 0;
    String because =
        String.format(
            Locale.ROOT,
            "over %d pulses the offset of the same row explains %.0f %% of them, that of the row"
                + " before %.0f %%",
            rows,
            100 * share[0] / Math.max(1, rows),
            100 * share[1] / Math.max(1, rows));
    boolean clear = best >= PulseSeries.ENOUGH_SHARE && 1 - best < CLEARLY_LESS * (1 - other);
    decisions.add(
        clear && rows >= FEWEST_PULSES
            ? Decision.certain("pulse row", lag == 1 ? "next" : "same", because)
            : Decision.open("pulse row", because, "[pulses]\nrow = \"same\"   # or \"next\""));
  }

  private void findSigns(double[] pulse, boolean dec) {
    Meaning offset = dec ? Meaning.DEC_OFFSET : Meaning.RA_OFFSET;
    Meaning signed = dec ? Meaning.DEC_PULSE : Meaning.RA_PULSE;
    boolean letters = series.hasLetters(dec);
    Optional<Direction> star = series.named(offset);
    Optional<Direction> push =
        letters
            ? Optional.of(dec ? Direction.NORTH : Direction.EAST)
            : series.column(signed).isPresent() ? series.named(signed) : Optional.empty();
    if (count(pulse) == 0) {
      asNamed(dec);
      return;
    }
    int[] signs = signsBySide(pulse, dec);
    if (signs.length == 0) {
      star.ifPresent(to -> positive.put(offset, to));
      if (!letters) {
        push.ifPresent(to -> positive.put(signed, to));
      }
      return;
    }
    int relative = signs[0];
    boolean turned = IntStream.of(signs).anyMatch(sign -> sign != relative);
    if (turned && series.sides().contains(Optional.<PierSide>empty())) {
      questions.openChange(PulseQuestions.word(dec) + " signs");
      return;
    }
    if (turned && star.isPresent() && push.isPresent()) {
      decisions.add(
          Decision.open(
              PulseQuestions.word(dec) + " signs",
              "pulse and offset are both named, but have the opposite relation on the other side of"
                  + " the pier",
              questions.ask(
                      offset,
                      dec ? Direction.NORTH : Direction.EAST,
                      dec ? Direction.SOUTH : Direction.WEST)
                  + "\nturns_with_pier = true   # here, or with the pulse"));
      return;
    }
    if (turned) {
      turning.add(push.isPresent() ? offset : signed);
      decisions.add(
          Decision.certain(
              PulseQuestions.word(dec) + " on the two sides of the pier",
              (push.isPresent() ? offset : signed).word() + " turns with the pier side",
              "pulse and offset have the opposite relation there"));
    }
    settle(offset, signed, star, push, relative, letters, dec);
  }

  private void settle(
      Meaning offset,
      Meaning signed,
      Optional<Direction> star,
      Optional<Direction> push,
      int relative,
      boolean letters,
      boolean dec) {
    Direction toward = dec ? Direction.NORTH : Direction.EAST;
    Direction away = dec ? Direction.SOUTH : Direction.WEST;
    String fits = "a pulse follows its offset with the sign " + (relative > 0 ? "+" : "-");
    if (star.isPresent() && push.isPresent()) {
      positive.put(offset, star.get());
      if (!letters) {
        positive.put(signed, push.get());
      }
      if (star.get().sign() * push.get().sign() * relative > 0) {
        decisions.add(Decision.certain(PulseQuestions.word(dec) + " signs", "as named", fits));
      } else {
        decisions.add(
            Decision.open(
                PulseQuestions.word(dec) + " signs",
                fits + ", against what the names or letters say of both",
                questions.ask(offset, toward, away)));
      }
    } else if (star.isPresent() || push.isPresent()) {
      int sign = star.or(() -> push).get().sign() * relative;
      positive.put(offset, star.orElse(sign > 0 ? toward : away));
      if (!letters) {
        positive.put(signed, push.orElse(sign > 0 ? toward : away));
      }
      decisions.add(
          Decision.certain(
              PulseQuestions.word(dec) + " signs",
              "positive offset is " + positive.get(offset).word(),
              (star.isPresent() ? "the offset's name; " : "the pulse's name or letter; ") + fits));
    } else {
      positive.put(offset, Direction.ONE_WAY);
      positive.put(signed, relative > 0 ? Direction.ONE_WAY : Direction.OTHER_WAY);
      decisions.add(
          Decision.certain(
              PulseQuestions.word(dec) + " relative sign", relative > 0 ? "+" : "-", fits));
      questions.noteSense(dec);
    }
  }

  /** Sign of the pulse against its own axis's offset on each side of the pier; empty if unclear. */
  private int[] signsBySide(double[] pulse, boolean dec) {
    List<Optional<PierSide>> all = series.sides();
    int[] signs = new int[all.size()];
    int known = 0;
    for (Optional<PierSide> side : all) {
      PulseAnswer answer = series.answer(pulse, lag, side);
      double own = PulseSeries.own(answer, dec);
      double other = PulseSeries.own(answer, !dec);
      int sign = own > 0 ? 1 : -1;
      if (series.changes(
          pulse,
          lag,
          side,
          part -> !PulseSeries.isOwn(part, dec) || sign * PulseSeries.own(part, dec) > 0)) {
        questions.openChange(PulseQuestions.word(dec) + " signs");
        return new int[0];
      }
      if (answer.share() < PulseSeries.ENOUGH_SHARE) {
        continue;
      }
      if (!PulseSeries.isOwn(answer, dec)) {
        decisions.add(
            Decision.open(
                PulseQuestions.word(dec) + " pulses",
                String.format(
                    Locale.ROOT,
                    "they follow the other axis's offset (%.3g against %.3g per unit): two columns"
                        + " may be swapped",
                    other,
                    own),
                LayoutText.column(
                            ColumnMeanings.rule(
                                series.column(Meaning.RA_OFFSET).orElseThrow(), Meaning.RA_OFFSET))
                        .strip()
                    + "   # or dec-offset, and the other column ra-offset"));
        return new int[0];
      }
      signs[known++] = sign;
    }
    if (known < all.size()) {
      decisions.add(
          Decision.open(
              PulseQuestions.word(dec) + " signs",
              "too few pulses follow the offset for its sign to be told",
              questions.ask(
                  dec ? Meaning.DEC_OFFSET : Meaning.RA_OFFSET,
                  dec ? Direction.NORTH : Direction.EAST,
                  dec ? Direction.SOUTH : Direction.WEST)));
      return new int[0];
    }
    return signs;
  }
}
