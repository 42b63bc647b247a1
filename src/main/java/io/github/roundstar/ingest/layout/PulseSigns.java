package io.github.roundstar.ingest.layout;

import io.github.roundstar.model.PierSide;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
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
  private final PulseSeries series;
  private final PulseQuestions questions;
  private final List<Decision> decisions;
  private final Map<Meaning, Direction> positive = new EnumMap<>(Meaning.class);
  private final Set<Meaning> turning = EnumSet.noneOf(Meaning.class);
  private final Set<Meaning> lettersOfTheStar = EnumSet.noneOf(Meaning.class);
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

  /** Whether codes at the pulses name where the star goes, against where the mount is pushed. */
  boolean lettersAreOfTheStar(boolean dec) {
    return lettersOfTheStar.contains(dec ? Meaning.DEC_PULSE : Meaning.RA_PULSE);
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
    lag = PulseRow.lag(series, pulses, decisions);
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
    if (series.alongCamera() && series.told().isPresent()) {
      axes = series.told().get();
      decisions.add(
          Decision.certain("camera angle", "as told", "a sentence tells where x and y point"));
      return;
    }
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
    Optional<Direction> named = series.namedOffset(dec);
    positive.put(offset, named.orElse(Direction.ONE_WAY));
    if (series.pulse(dec).isPresent() && !series.hasLetters(dec)) {
      positive.put(signed, positive.get(offset));
    }
    if (named.isEmpty()) {
      questions.noteSense(dec);
    }
  }

  private void findSigns(double[] pulse, boolean dec) {
    Meaning offset = dec ? Meaning.DEC_OFFSET : Meaning.RA_OFFSET;
    Meaning signed = dec ? Meaning.DEC_PULSE : Meaning.RA_PULSE;
    boolean letters = series.hasLetters(dec);
    Optional<Direction> star = series.namedOffset(dec);
    Optional<Direction> push =
        letters ? Optional.of(dec ? Direction.NORTH : Direction.EAST) : series.namedPulse(dec);
    if (count(pulse) == 0) {
      asNamed(dec);
      return;
    }
    int[] signs = new RelativeSigns(series, questions, decisions, lag).bySide(pulse, dec);
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
      boolean fitting = star.get().sign() * push.get().sign() * relative > 0;
      if (!fitting && letters && !series.pulseTold(dec) && !series.isApart(dec)) {
        lettersOfTheStar.add(signed);
        decisions.add(
            Decision.certain(
                PulseQuestions.word(dec) + " letters",
                "tell where the star is sent, not the mount",
                fits + ", and nothing else explains them"));
        return;
      }
      if (fitting) {
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
}
