package io.github.roundstar.ingest.layout.choice;

import io.github.roundstar.ingest.layout.CameraAxes;
import io.github.roundstar.ingest.layout.ColumnRule;
import io.github.roundstar.ingest.layout.Decision;
import io.github.roundstar.ingest.layout.Direction;
import io.github.roundstar.ingest.layout.LayoutText;
import io.github.roundstar.ingest.layout.Meaning;
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
 * answers, since one row off turns the sign round, then the direction in which the pulses of each
 * axis follow the two offsets, on each side of the pier. On the sky it can only be along the axis
 * itself; along the camera's axes it tells how the camera lies. What a name, a letter or a sentence
 * says of a direction is checked against the data; what nothing says stays nameless.
 */
final class PulseSigns {
  /** What the better row leaves unexplained is at most this share of what the other leaves. */
  private static final double CLEARLY_LESS = 0.6;

  private static final int FEWEST_PULSES = 20;
  private static final double RIGHT_ANGLE_WITHIN = 10;

  /** What is told and what the pulses show are one direction within this [deg]. */
  private static final double SAME_WITHIN = 45;

  /** What a sentence tells exactly stands where the pulses show it to this [deg]. */
  private static final double TOLD_WITHIN = 15;

  private final PulseSeries series;
  private final List<Decision> decisions;
  private final Map<Meaning, Direction> positive = new EnumMap<>(Meaning.class);
  private final Set<Meaning> turning = EnumSet.noneOf(Meaning.class);
  private final Set<Meaning> lettersOfTheStar = EnumSet.noneOf(Meaning.class);
  private CameraAxes axes =
      new CameraAxes(OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty());
  private int lag;

  PulseSigns(PulseSeries series, List<Decision> decisions) {
    this.series = series;
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
    return lettersOfTheStar.contains(pulse(dec));
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
    if (!any) {
      decisions.add(
          Decision.noted(
              "pulses",
              "none in the log",
              "no pair of columns looks like pulses, so the mount's own motion stays hidden behind"
                  + " the guiding",
              ""));
    }
    if (!any || count(pulses[0]) + count(pulses[1]) == 0) {
      withoutPulses();
      return;
    }
    lag = row(pulses);
    if (series.alongCamera()) {
      findCamera(pulses);
    } else {
      findSign(pulses[0], false);
      findSign(pulses[1], true);
    }
  }

  private static long count(double[] pulses) {
    return IntStream.range(0, pulses.length)
        .filter(i -> Double.isFinite(pulses[i]) && pulses[i] != 0)
        .count();
  }

  private static Meaning offset(boolean dec) {
    return dec ? Meaning.DEC_OFFSET : Meaning.RA_OFFSET;
  }

  private static Meaning pulse(boolean dec) {
    return dec ? Meaning.DEC_PULSE : Meaning.RA_PULSE;
  }

  private static String word(boolean dec) {
    return dec ? "declination" : "right ascension";
  }

  private static Direction toward(boolean dec) {
    return dec ? Direction.NORTH : Direction.EAST;
  }

  private static Direction toward(boolean dec, boolean along) {
    return along ? toward(dec) : toward(dec).opposite();
  }

  /** Rows between an offset and the pulse that answers it: 0 or 1. */
  private int row(double[][] pulses) {
    double[] share = new double[2];
    int rows = 0;
    for (double[] axis : pulses) {
      for (Optional<PierSide> side : series.sides()) {
        PulseSeries.Answer same = series.answer(axis, 0, side);
        share[0] += same.share() * same.rows();
        share[1] += series.answer(axis, 1, side).share() * same.rows();
        rows += same.rows();
      }
    }
    double best = Math.max(share[0], share[1]) / Math.max(1, rows);
    double other = Math.min(share[0], share[1]) / Math.max(1, rows);
    int better = share[1] > share[0] ? 1 : 0;
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
            ? Decision.certain("pulse row", better == 1 ? "next" : "same", because)
            : Decision.open("pulse row", because, "[pulses]\nrow = \"same\"   # or \"next\""));
    return better;
  }

  private void withoutPulses() {
    if (series.alongCamera() && series.told().isPresent()) {
      axes = series.told().get();
      decisions.add(
          Decision.certain("camera angle", "as told", "a sentence tells where x and y point"));
    } else if (series.alongCamera()) {
      openCamera("without pulses nothing tells how the camera lies on the sky");
    } else {
      asNamed(false);
      asNamed(true);
    }
  }

  /** Without a pulse on the axis, its name alone tells a direction, and no figure asks for more. */
  private void asNamed(boolean dec) {
    Optional<Direction> named = series.namedOffset(dec);
    positive.put(offset(dec), named.orElse(Direction.ONE_WAY));
    if (series.pulse(dec).isPresent() && !series.hasLetters(dec)) {
      positive.put(pulse(dec), positive.get(offset(dec)));
    }
    if (named.isEmpty()) {
      noteSense(dec);
    }
  }

  /** On the sky: the sign of the pulse against the offset of its own axis. */
  private void findSign(double[] pulses, boolean dec) {
    if (count(pulses) == 0) {
      asNamed(dec);
      return;
    }
    boolean letters = series.hasLetters(dec);
    Optional<Direction> star = series.namedOffset(dec);
    Optional<Direction> push = letters ? Optional.of(toward(dec)) : series.namedPulse(dec);
    int[] signs = signs(pulses, dec);
    if (signs.length == 0) {
      star.ifPresent(to -> positive.put(offset(dec), to));
      push.filter(to -> !letters).ifPresent(to -> positive.put(pulse(dec), to));
      return;
    }
    boolean turned = IntStream.of(signs).anyMatch(sign -> sign != signs[0]);
    if (turned && series.sides().contains(Optional.<PierSide>empty())) {
      openChange(word(dec) + " signs");
    } else if (turned && star.isPresent() && push.isPresent()) {
      openSign(
          dec,
          "pulse and offset are both named, but have the opposite relation on the other side of the"
              + " pier",
          "\nturns_with_pier = true   # here, or with the pulse");
    } else {
      if (turned) {
        Meaning turns = push.isPresent() ? offset(dec) : pulse(dec);
        turning.add(turns);
        decisions.add(
            Decision.certain(
                word(dec) + " on the two sides of the pier",
                turns.word() + " turns with the pier side",
                "pulse and offset have the opposite relation there"));
      }
      settle(star, push, signs[0], dec);
    }
  }

  /** Sign of the pulse against its own axis's offset on each side of the pier; empty if unclear. */
  private int[] signs(double[] pulses, boolean dec) {
    List<Optional<PierSide>> all = series.sides();
    int[] signs = new int[all.size()];
    int known = 0;
    for (Optional<PierSide> side : all) {
      PulseSeries.Answer answer = series.answer(pulses, lag, side);
      int sign = answer.along(dec) > 0 ? 1 : -1;
      Predicate<PulseSeries.Answer> same = part -> !part.isOwn(dec) || sign * part.along(dec) > 0;
      if (series.changes(pulses, lag, side, same)) {
        openChange(word(dec) + " signs");
        return new int[0];
      }
      if (answer.share() >= PulseSeries.ENOUGH_SHARE && !answer.isOwn(dec)) {
        decisions.add(
            Decision.open(
                word(dec) + " pulses",
                String.format(
                    Locale.ROOT,
                    "they follow the other axis's offset (%.3g against %.3g per unit): two columns"
                        + " may be swapped",
                    answer.along(!dec),
                    answer.along(dec)),
                LayoutText.column(series.offset(false).rule(Meaning.RA_OFFSET)).strip()
                    + "   # or dec-offset, and the other column ra-offset"));
        return new int[0];
      }
      if (answer.share() >= PulseSeries.ENOUGH_SHARE) {
        signs[known++] = sign;
      }
    }
    if (known < all.size()) {
      openSign(dec, "too few pulses follow the offset for its sign to be told", "");
      return new int[0];
    }
    return signs;
  }

  /** Brings what is said of offset and pulse together with the sign between them. */
  private void settle(
      Optional<Direction> star, Optional<Direction> push, int relative, boolean dec) {
    boolean letters = series.hasLetters(dec);
    String fits = "a pulse follows its offset with the sign " + (relative > 0 ? "+" : "-");
    if (star.isEmpty() && push.isEmpty()) {
      positive.put(offset(dec), Direction.ONE_WAY);
      positive.put(pulse(dec), relative > 0 ? Direction.ONE_WAY : Direction.OTHER_WAY);
      decisions.add(Decision.certain(word(dec) + " relative sign", relative > 0 ? "+" : "-", fits));
      noteSense(dec);
      return;
    }
    Direction follows = toward(dec, star.or(() -> push).get().sign() * relative > 0);
    positive.put(offset(dec), star.orElse(follows));
    if (!letters) {
      positive.put(pulse(dec), push.orElse(follows));
    }
    boolean both = star.isPresent() && push.isPresent();
    if (!both) {
      decisions.add(
          Decision.certain(
              word(dec) + " signs",
              "positive offset is " + positive.get(offset(dec)).word(),
              (star.isPresent() ? "the offset's name; " : "the pulse's name or letter; ") + fits));
    } else if (star.get().sign() * push.get().sign() * relative > 0) {
      decisions.add(Decision.certain(word(dec) + " signs", "as named", fits));
    } else if (!takeLettersOfTheStar(dec, fits)) {
      openSign(dec, fits + ", against what the names or letters say of both", "");
    }
  }

  /** Letters that nothing explains may name where the star is sent. */
  private boolean takeLettersOfTheStar(boolean dec, String because) {
    boolean free = series.hasLetters(dec) && !series.pulseTold(dec) && !series.isApart(dec);
    if (free) {
      lettersOfTheStar.add(pulse(dec));
      decisions.add(
          Decision.certain(
              word(dec) + " letters",
              "tell where the star is sent, not the mount",
              because + ", and nothing else explains them"));
    }
    return free;
  }

  /** Along the camera: the directions in which the pulses of the two axes answer the offsets. */
  private void findCamera(double[][] pulses) {
    List<Optional<PierSide>> all = series.sides();
    double[] ra = new double[all.size()];
    double[] dec = new double[all.size()];
    for (int s = 0; s < all.size(); s++) {
      Optional<PierSide> side = all.get(s);
      PulseSeries.Answer a = series.answer(pulses[0], lag, side);
      PulseSeries.Answer b = series.answer(pulses[1], lag, side);
      ra[s] = a.degrees();
      dec[s] = b.degrees();
      boolean right =
          Math.abs(Math.abs(turn(dec[s] - ra[s])) - 90) < RIGHT_ANGLE_WITHIN
              && a.share() >= PulseSeries.ENOUGH_SHARE
              && b.share() >= PulseSeries.ENOUGH_SHARE;
      if (!right) {
        openCamera("the directions of the two axes' pulses are not at a right angle");
        return;
      }
      squareUp(ra, dec, s, a.rows(), b.rows());
      if (changes(pulses[0], side, ra[s]) || changes(pulses[1], side, dec[s])) {
        openChange("camera angle");
        return;
      }
    }
    boolean turns = all.size() > 1 && Math.abs(turn(ra[1] - ra[0])) > 90;
    int half = turns ? 180 : 0;
    boolean sameElse =
        all.size() < 2
            || Math.abs(turn(ra[1] - ra[0] - half)) < RIGHT_ANGLE_WITHIN
                && Math.abs(turn(dec[1] - dec[0] - half)) < RIGHT_ANGLE_WITHIN;
    if (!sameElse || all.size() > 2 || turns && all.get(0).isEmpty()) {
      openCamera("the camera lies differently on the two sides of the pier");
      return;
    }
    Optional<PierSide> side = turns ? all.get(0) : Optional.empty();
    OptionalDouble east = named(ra[0], false);
    OptionalDouble north = named(dec[0], true);
    if (east.isEmpty() || north.isEmpty()) {
      return;
    }
    axes = new CameraAxes(east, north, side);
    decisions.add(
        Decision.certain(
            "camera angle",
            String.format(
                Locale.ROOT,
                "right ascension at %.2f deg, declination at %.2f deg%s",
                east.getAsDouble(),
                north.getAsDouble(),
                turns ? ", turned by 180 deg on the other side of the pier" : ""),
            "the pulses follow the offsets in these directions"));
  }

  private boolean changes(double[] pulses, Optional<PierSide> side, double degrees) {
    return series.changes(
        pulses, lag, side, part -> Math.abs(turn(part.degrees() - degrees)) < SAME_WITHIN);
  }

  /** Both axes' directions turned to an exact right angle, weighted by their pulses. */
  private static void squareUp(double[] ra, double[] dec, int s, int raRows, int decRows) {
    double parity = turn(dec[s] - ra[s]) > 0 ? 90 : -90;
    double apart = turn(dec[s] - parity - ra[s]);
    ra[s] += apart * decRows / (raRows + decRows);
    dec[s] = ra[s] + parity;
  }

  /**
   * The direction of east, or north, on the camera: that of the offsets which call for positive
   * pulses, or its opposite, by what is told of either. Empty where they contradict each other.
   */
  private OptionalDouble named(double found, boolean dec) {
    boolean letters = series.hasLetters(dec);
    Optional<Direction> push = letters ? Optional.of(toward(dec)) : series.namedPulse(dec);
    OptionalDouble told = told(found, dec);
    double away = told.isPresent() ? turn(found - told.getAsDouble()) : 0;
    boolean along = Math.abs(away) < 90;
    if (push.isEmpty()) {
      positive.put(pulse(dec), told.isPresent() ? toward(dec, along) : Direction.ONE_WAY);
      if (told.isEmpty()) {
        noteSense(dec);
      }
    } else if (!letters) {
      positive.put(pulse(dec), push.get());
    }
    boolean reverse = push.isPresent() ? push.get().sign() < 0 : !along;
    boolean against = push.isPresent() && told.isPresent() && along == reverse;
    if (against) {
      String because = "pulses go against what is told of the offsets";
      if (!takeLettersOfTheStar(dec, because)) {
        openCamera(because + " in " + word(dec));
        return OptionalDouble.empty();
      }
      reverse = !reverse;
    }
    double shown = turn(found + (reverse ? 180 : 0));
    boolean exact = told.isPresent() && Math.abs(turn(shown - told.getAsDouble())) < TOLD_WITHIN;
    return OptionalDouble.of(exact ? turn(told.getAsDouble()) : shown);
  }

  /**
   * Where east, or north, lies on the camera as sentences tell: by its angle, or by what positive
   * values along the camera's axis mean that the pulses follow.
   */
  private OptionalDouble told(double found, boolean dec) {
    if (series.told().isPresent()) {
      return dec ? series.told().get().decDegrees() : series.told().get().raDegrees();
    }
    Optional<Direction> sense = series.toldOffset(dec);
    double axis = Math.abs(Math.cos(Math.toRadians(found))) > Math.sqrt(0.5) ? 0 : 90;
    double off = Math.abs(turn(2 * (found - axis))) / 2;
    return sense.isPresent() && off < TOLD_WITHIN + 5
        ? OptionalDouble.of(axis + (sense.get().sign() > 0 ? 0 : 180))
        : OptionalDouble.empty();
  }

  /** An angle in (-180, 180]. */
  private static double turn(double degrees) {
    double turned = degrees % 360;
    return turned > 180 ? turned - 360 : turned <= -180 ? turned + 360 : turned;
  }

  private void openChange(String about) {
    decisions.add(
        Decision.open(
            about,
            "they change within the log, as after a flip, and no line tells the pier side",
            "[[setting]]\nmeans = \"pier-side\"\nline = '(?<value>east|west)'   # the line that"
                + " tells it"));
  }

  private void openCamera(String because) {
    decisions.add(
        Decision.open(
            "camera angle",
            because,
            "[camera]\nra_deg = 0   # direction of east on the camera, from X through Y\n"
                + "dec_deg = 90   # the same of north"));
  }

  private void openSign(boolean dec, String because, String more) {
    ColumnRule rule = series.offset(dec).rule(offset(dec));
    decisions.add(
        Decision.open(
            word(dec) + " signs",
            because,
            String.format(
                Locale.ROOT,
                "%s\npositive = \"%s\"   # or \"%s\"%s",
                LayoutText.column(rule).strip(),
                toward(dec).word(),
                toward(dec).opposite().word(),
                more)));
  }

  private void noteSense(boolean dec) {
    String to = toward(dec).word();
    String from = toward(dec).opposite().word();
    if (series.passesOverSense(dec)) {
      openSign(
          dec, "a sentence names a direction, but what it says of signs was not understood", "");
      return;
    }
    decisions.add(
        Decision.noted(
            "direction of " + word(dec),
            "not known",
            "no letter, name or declared sign tells "
                + to
                + " from "
                + from
                + ", and offset and pulse negated together give the same log: drift direction,"
                + " polar axis and angles stay out",
            "positive = \""
                + to
                + "\"   # in place of one-way, and \""
                + from
                + "\" in place of other-way; or the reverse"));
  }
}
