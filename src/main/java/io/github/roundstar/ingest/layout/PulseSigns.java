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
import java.util.function.Predicate;
import java.util.stream.IntStream;

/**
 * Works out signs and axes from how pulses answer offsets: first the row whose offset a pulse
 * answers, since one row off turns the sign round, then signs, rotation and parity. What a name or
 * a letter says of a direction is checked against the data; what neither says stays nameless.
 */
final class PulseSigns {
  private static final double ENOUGH_SHARE = 0.5;
  private static final double CLEARLY_LESS = 0.6;
  private static final double AXIS_DOMINATES = 2;
  private static final double RIGHT_ANGLE_WITHIN = 10;
  private static final int FEWEST_PULSES = 20;
  private static final int STRETCH_PULSES = 40;

  private final Map<Meaning, ColumnData> columns;
  private final List<Optional<PierSide>> sides;
  private final boolean comma;
  private final List<Decision> decisions;
  private final Map<Meaning, Direction> positive = new EnumMap<>(Meaning.class);
  private final Set<Meaning> turning = EnumSet.noneOf(Meaning.class);
  private final boolean camera;
  private final double[] one;
  private final double[] two;
  private CameraAxes axes =
      new CameraAxes(OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty());
  private int lag;

  PulseSigns(
      Map<Meaning, ColumnData> columns,
      List<Optional<PierSide>> sides,
      boolean comma,
      List<Decision> decisions) {
    this.columns = columns;
    this.sides = sides;
    this.comma = comma;
    this.decisions = decisions;
    this.camera = columns.containsKey(Meaning.X_OFFSET);
    this.one = columns.get(camera ? Meaning.X_OFFSET : Meaning.RA_OFFSET).numbers;
    this.two = columns.get(camera ? Meaning.Y_OFFSET : Meaning.DEC_OFFSET).numbers;
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
    double[][] pulses = {pulses(false), pulses(true)};
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
    if (camera) {
      findCamera(pulses);
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
    if (camera) {
      decisions.add(
          Decision.open(
              "camera angle",
              "without pulses nothing tells how the camera lies on the sky",
              "[camera]\nra_deg = 0   # direction of east on the camera, from X through Y\n"
                  + "dec_deg = 90   # the same of north"));
      return;
    }
    for (Meaning meaning : List.of(Meaning.RA_OFFSET, Meaning.DEC_OFFSET)) {
      Optional<Direction> named = named(meaning);
      positive.put(meaning, named.orElse(Direction.ONE_WAY));
      if (named.isEmpty()) {
        noteSense(meaning.isDec());
      }
    }
    for (Meaning meaning : List.of(Meaning.RA_PULSE, Meaning.DEC_PULSE)) {
      if (columns.containsKey(meaning)) {
        positive.put(
            meaning, positive.get(meaning.isDec() ? Meaning.DEC_OFFSET : Meaning.RA_OFFSET));
      }
    }
  }

  /** The log's pulses as numbers, E and N positive where letters or columns tell them apart. */
  private double[] pulses(boolean dec) {
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

  private boolean hasLetters(boolean dec) {
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

  private void findLag(double[][] pulses) {
    double[] share = new double[2];
    int rows = 0;
    for (double[] axis : pulses) {
      for (Optional<PierSide> side : sides.stream().distinct().toList()) {
        PulseAnswer same = PulseAnswer.of(axis, one, two, 0, i -> sides.get(i).equals(side));
        PulseAnswer next = PulseAnswer.of(axis, one, two, 1, i -> sides.get(i).equals(side));
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
    boolean clear = best >= ENOUGH_SHARE && 1 - best < CLEARLY_LESS * (1 - other);
    decisions.add(
        clear && rows >= FEWEST_PULSES
            ? Decision.certain("pulse row", lag == 1 ? "next" : "same", because)
            : Decision.open("pulse row", because, "[pulses]\nrow = \"same\"   # or \"next\""));
  }

  private Optional<Direction> named(Meaning meaning) {
    ColumnData column = columns.get(meaning);
    return column == null ? Optional.empty() : new NameWords(column.name).direction();
  }

  private void findSigns(double[] pulse, boolean dec) {
    Meaning offset = dec ? Meaning.DEC_OFFSET : Meaning.RA_OFFSET;
    Meaning signed = dec ? Meaning.DEC_PULSE : Meaning.RA_PULSE;
    boolean letters = hasLetters(dec);
    Optional<Direction> star = named(offset);
    Optional<Direction> push =
        letters
            ? Optional.of(dec ? Direction.NORTH : Direction.EAST)
            : columns.containsKey(signed) ? named(signed) : Optional.empty();
    int[] signs = signsBySide(pulse, dec);
    if (signs.length == 0) {
      star.ifPresent(to -> positive.put(offset, to));
      if (!letters) {
        push.ifPresent(to -> positive.put(signed, to));
      }
      return;
    }
    int relative = signs[0];
    boolean turned = signs.length > 1 && signs[1] != relative;
    if (turned && star.isPresent() && push.isPresent()) {
      decisions.add(
          Decision.open(
              word(dec) + " signs",
              "pulse and offset are both named, but have the opposite relation on the other side of"
                  + " the pier",
              ask(
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
              word(dec) + " on the two sides of the pier",
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
        decisions.add(Decision.certain(word(dec) + " signs", "as named", fits));
      } else {
        decisions.add(
            Decision.open(
                word(dec) + " signs",
                fits + ", against what the names or letters say of both",
                ask(offset, toward, away)));
      }
    } else if (star.isPresent() || push.isPresent()) {
      int sign = star.or(() -> push).get().sign() * relative;
      positive.put(offset, star.orElse(sign > 0 ? toward : away));
      if (!letters) {
        positive.put(signed, push.orElse(sign > 0 ? toward : away));
      }
      decisions.add(
          Decision.certain(
              word(dec) + " signs",
              "positive offset is " + positive.get(offset).word(),
              (star.isPresent() ? "the offset's name; " : "the pulse's name or letter; ") + fits));
    } else {
      positive.put(offset, Direction.ONE_WAY);
      positive.put(signed, relative > 0 ? Direction.ONE_WAY : Direction.OTHER_WAY);
      decisions.add(Decision.certain(word(dec) + " relative sign", relative > 0 ? "+" : "-", fits));
      noteSense(dec);
    }
  }

  private String ask(Meaning offset, Direction toward, Direction away) {
    ColumnRule rule = ColumnMeanings.rule(columns.get(offset), offset);
    return LayoutText.column(rule).strip()
        + "\npositive = \""
        + toward.word()
        + "\"   # or \""
        + away.word()
        + "\"";
  }

  private void noteSense(boolean dec) {
    String toward = dec ? "north" : "east";
    String away = dec ? "south" : "west";
    decisions.add(
        Decision.noted(
            "direction of " + word(dec),
            "not known",
            "no letter, name or declared sign tells "
                + toward
                + " from "
                + away
                + ", and offset and pulse negated together give the same log: drift direction,"
                + " polar axis and angles stay out",
            "positive = \""
                + toward
                + "\"   # in place of one-way, and \""
                + away
                + "\" in place of other-way; or the reverse"));
  }

  /** Sign of the pulse against its own axis's offset on each side of the pier; empty if unclear. */
  private int[] signsBySide(double[] pulse, boolean dec) {
    List<Optional<PierSide>> all = sides.stream().distinct().toList();
    int[] signs = new int[all.size()];
    int known = 0;
    for (Optional<PierSide> side : all) {
      PulseAnswer answer = PulseAnswer.of(pulse, one, two, lag, i -> sides.get(i).equals(side));
      double own = own(answer, dec);
      double other = own(answer, !dec);
      int sign = own > 0 ? 1 : -1;
      if (changes(pulse, side, part -> !isOwn(part, dec) || sign * own(part, dec) > 0)) {
        openChange(word(dec) + " signs");
        return new int[0];
      }
      if (answer.share() < ENOUGH_SHARE) {
        continue;
      }
      if (!isOwn(answer, dec)) {
        decisions.add(
            Decision.open(
                word(dec) + " pulses",
                String.format(
                    Locale.ROOT,
                    "they follow the other axis's offset (%.3g against %.3g per unit): two columns"
                        + " may be swapped",
                    other,
                    own),
                LayoutText.column(
                            ColumnMeanings.rule(columns.get(Meaning.RA_OFFSET), Meaning.RA_OFFSET))
                        .strip()
                    + "   # or dec-offset, and the other column ra-offset"));
        return new int[0];
      }
      signs[known++] = sign;
    }
    if (known < all.size()) {
      decisions.add(
          Decision.open(
              word(dec) + " signs",
              "too few pulses follow the offset for its sign to be told",
              ask(
                  dec ? Meaning.DEC_OFFSET : Meaning.RA_OFFSET,
                  dec ? Direction.NORTH : Direction.EAST,
                  dec ? Direction.SOUTH : Direction.WEST)));
      return new int[0];
    }
    return signs;
  }

  private static double own(PulseAnswer answer, boolean dec) {
    return dec ? answer.second() : answer.first();
  }

  private static boolean isOwn(PulseAnswer answer, boolean dec) {
    return Math.abs(own(answer, dec)) >= AXIS_DOMINATES * Math.abs(own(answer, !dec));
  }

  /** Whether a stretch of the log answers otherwise than the whole does. */
  private boolean changes(
      double[] pulse, Optional<PierSide> side, Predicate<PulseAnswer> asTheWhole) {
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

  private void openChange(String about) {
    decisions.add(
        Decision.open(
            about,
            "they change within the log, as after a flip, and no line tells the pier side",
            "[[setting]]\nmeans = \"pier-side\"\nline = '(?<value>east|west)'   # the line that"
                + " tells it"));
  }

  private void findCamera(double[][] pulses) {
    List<Optional<PierSide>> all = sides.stream().distinct().toList();
    double[] ra = new double[all.size()];
    double[] dec = new double[all.size()];
    for (int s = 0; s < all.size(); s++) {
      Optional<PierSide> side = all.get(s);
      PulseAnswer a = PulseAnswer.of(pulses[0], one, two, lag, i -> sides.get(i).equals(side));
      PulseAnswer b = PulseAnswer.of(pulses[1], one, two, lag, i -> sides.get(i).equals(side));
      ra[s] = a.degrees();
      dec[s] = b.degrees();
      boolean right =
          Math.abs(Math.abs(turn(dec[s] - ra[s])) - 90) < RIGHT_ANGLE_WITHIN
              && a.share() >= ENOUGH_SHARE
              && b.share() >= ENOUGH_SHARE;
      if (!right) {
        openCamera("the directions of the two axes' pulses are not at a right angle");
        return;
      }
      squareUp(ra, dec, s, a.rows(), b.rows());
      double raWhole = ra[s];
      double decWhole = dec[s];
      if (changes(pulses[0], side, p -> Math.abs(turn(p.degrees() - raWhole)) < 45)
          || changes(pulses[1], side, p -> Math.abs(turn(p.degrees() - decWhole)) < 45)) {
        openChange("camera angle");
        return;
      }
    }
    boolean turns = all.size() > 1 && Math.abs(turn(ra[1] - ra[0])) > 90;
    boolean sameElse =
        all.size() < 2
            || Math.abs(turn(ra[1] - ra[0] - (turns ? 180 : 0))) < RIGHT_ANGLE_WITHIN
                && Math.abs(turn(dec[1] - dec[0] - (turns ? 180 : 0))) < RIGHT_ANGLE_WITHIN;
    if (!sameElse || turns && all.get(0).isEmpty()) {
      openCamera("the camera lies differently on the two sides of the pier");
      return;
    }
    finish(ra[0], dec[0], turns ? all.get(0) : Optional.empty());
  }

  private void openCamera(String because) {
    decisions.add(
        Decision.open(
            "camera angle",
            because,
            "[camera]\nra_deg = 0   # direction of east on the camera, from X through Y\n"
                + "dec_deg = 90   # the same of north"));
  }

  /** Both axes' directions turned to an exact right angle, weighted by their pulses. */
  private static void squareUp(double[] ra, double[] dec, int s, int raRows, int decRows) {
    double parity = turn(dec[s] - ra[s]) > 0 ? 90 : -90;
    double apart = turn(dec[s] - parity - ra[s]);
    ra[s] += apart * decRows / (raRows + decRows);
    dec[s] = ra[s] + parity;
  }

  private void finish(double raFound, double decFound, Optional<PierSide> side) {
    double ra = raFound;
    double dec = decFound;
    for (boolean north : new boolean[] {false, true}) {
      Meaning signed = north ? Meaning.DEC_PULSE : Meaning.RA_PULSE;
      Optional<Direction> push = hasLetters(north) ? Optional.empty() : named(signed);
      if (push.isPresent()) {
        positive.put(signed, push.get());
        ra += !north && push.get().sign() < 0 ? 180 : 0;
        dec += north && push.get().sign() < 0 ? 180 : 0;
      } else if (!hasLetters(north)) {
        positive.put(signed, Direction.ONE_WAY);
        noteSense(north);
      }
    }
    axes = new CameraAxes(OptionalDouble.of(turn(ra)), OptionalDouble.of(turn(dec)), side);
    decisions.add(
        Decision.certain(
            "camera angle",
            String.format(
                Locale.ROOT,
                "right ascension at %.2f deg, declination at %.2f deg%s",
                turn(ra),
                turn(dec),
                side.isPresent() ? ", turned by 180 deg on the other side of the pier" : ""),
            "the pulses follow the offsets in these directions"));
  }

  /** An angle in (-180, 180]. */
  private static double turn(double degrees) {
    double turned = degrees % 360;
    return turned > 180 ? turned - 360 : turned <= -180 ? turned + 360 : turned;
  }

  private static String word(boolean dec) {
    return dec ? "declination" : "right ascension";
  }
}
