package io.github.roundstar.dialects;

import io.github.roundstar.dialects.Recipe.Angle;
import io.github.roundstar.dialects.Recipe.Around;
import io.github.roundstar.dialects.Recipe.Axes;
import io.github.roundstar.dialects.Recipe.Clock;
import io.github.roundstar.dialects.Recipe.Events;
import io.github.roundstar.dialects.Recipe.Extra;
import io.github.roundstar.dialects.Recipe.Form;
import io.github.roundstar.dialects.Recipe.Lead;
import io.github.roundstar.dialects.Recipe.Names;
import io.github.roundstar.dialects.Recipe.Pulses;
import io.github.roundstar.dialects.Recipe.RunMark;
import io.github.roundstar.dialects.Recipe.SettingsStyle;
import io.github.roundstar.dialects.Recipe.Source;
import io.github.roundstar.dialects.Recipe.Style;
import io.github.roundstar.dialects.Recipe.Told;
import io.github.roundstar.dialects.Recipe.UnitPlace;
import io.github.roundstar.dialects.Tongue.Way;
import io.github.roundstar.dialects.Truth.Event;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Writes a night as a recipe says, and keeps what the text then says as truth. One scribe writes
 * one log.
 */
final class Scribe {
  private static final Pattern QUOTED_NUMBER =
      Pattern.compile("[-+\u2212]?[\\d.,]*([eE][-+]\\d+)?");
  private static final Pattern JSON_NUMBER =
      Pattern.compile("-?(0|[1-9]\\d*)(\\.\\d+)?([eE][-+]\\d+)?");

  private final Recipe r;
  private final Night night;
  private final int[] rows;
  private final LogClock clock;
  private final double[] ra;
  private final double[] dec;
  private final double unitArcsec;
  private final double cameraDegrees;
  private final double markX;
  private final double markY;
  private final List<Column> columns = new ArrayList<>();
  private final List<String> lines = new ArrayList<>();
  private final List<Set<Event>> told = new ArrayList<>();
  private final String program;
  private double focalMillimetres;
  private double pixelMicrons;
  private boolean swapped;
  private final Map<List<Column>, List<String>> headersOf = new HashMap<>();

  /** Which of a frame's two lines a cell stands on, where a frame has two. */
  private enum Part {
    BOTH,
    STAR,
    PULSE
  }

  private record Column(
      List<String> group,
      List<String> name,
      String unit,
      Part part,
      String[] cells,
      boolean text) {}

  Scribe(Recipe recipe) {
    r = recipe;
    night =
        new Night(
            r.random,
            r.runs,
            r.events != Events.NONE && r.source != Source.PLACES_AND_MARK,
            r.worm);
    if (r.scaleByFocalLength) {
      pixelMicrons = r.pick(2.9, 3.75, 3.8, 4.63, 5.2);
      focalMillimetres = 5 * Math.round(206.264806 * pixelMicrons / night.arcsecPerPixel / 5);
      night.arcsecPerPixel = 206.264806 * pixelMicrons / focalMillimetres;
    }
    List<Integer> written = new ArrayList<>();
    for (int i = 0; i < night.size; i++) {
      if (!(r.lostRowsAbsent && night.lost[i])) {
        written.add(i);
      }
    }
    rows = written.stream().mapToInt(Integer::intValue).toArray();
    clock = new LogClock(r, night, rows);
    ra = new double[rows.length];
    dec = new double[rows.length];
    unitArcsec =
        r.angle == Angle.ARCSEC ? 1 : r.angle == Angle.PIXEL ? night.arcsecPerPixel : 0.001;
    cameraDegrees = 10 + r.random.nextInt(60) + (r.random.nextBoolean() ? 0.5 : 0);
    markX = 200 + Math.round(r.random.nextDouble() * 80000) / 100.0;
    markY = 150 + Math.round(r.random.nextDouble() * 60000) / 100.0;
    program =
        r.pick("brass", "clover", "dusk", "elder", "fen", "gable", "heron")
            + r.pick("loom", "barrow", "wick", "vane", "tern", "post")
            + " 0."
            + (1 + r.random.nextInt(9));
  }

  DialectLog write(long seed, String name) {
    makeColumns();
    for (int k = 0; k < rows.length; k++) {
      told.add(toldAt(k));
    }
    prelude();
    body();
    ending();
    String joined = String.join(r.lineEnd, lines) + (r.noFinalLineEnd ? "" : r.lineEnd);
    if (r.around.contains(Around.TRUNCATED)) {
      joined =
          joined.substring(
              0, joined.length() - r.lineEnd.length() - lines.get(lines.size() - 1).length() / 2);
    }
    Set<OpenFact> open = r.open();
    Truth truth = truth(open);
    return new DialectLog(
        seed,
        name,
        ByteForm.bytes(joined, r.charset, r.byteOrderMark),
        joined,
        List.copyOf(r.obstacles),
        Set.copyOf(open),
        answers(open),
        false,
        Optional.of(truth));
  }

  // ---------------------------------------------------------------- numbers

  private static String fixed(double value, int decimals) {
    return Digits.fixed(value, decimals);
  }

  private int angleDecimals() {
    return r.angle == Angle.MILLIARCSEC ? 0 : r.decimals;
  }

  /** A signed angle in the log's unit, in plain digits. */
  private String plainAngle(double value) {
    return r.scientific ? String.format(Locale.ROOT, "%.4e", value) : fixed(value, angleDecimals());
  }

  /** Plain digits as this log writes numbers. */
  private String local(String plain, boolean signed) {
    String text = plain;
    if (r.form == Form.JSON) {
      return text;
    }
    if (r.noLeadingZero) {
      text = text.replaceFirst("^(-?)0\\.", "$1.");
    }
    if (r.plus && signed && !text.startsWith("-") && text.matches(".*[1-9].*")) {
      text = "+" + text;
    }
    if (r.decimalComma) {
      text = text.replace('.', ',');
    }
    return text.replace("-", r.minus);
  }

  private String number(double value, int decimals) {
    return Double.isNaN(value) ? missing() : local(fixed(value, decimals), false);
  }

  private String missing() {
    if (r.missing.isEmpty() && !r.cellsMayHoldBlanks() && r.form != Form.KEY_EQUALS_BLANK) {
      return "-";
    }
    return r.missing.matches("-?9+\\.9+") ? local(r.missing, false) : r.missing;
  }

  // ---------------------------------------------------------------- columns

  private void makeColumns() {
    int n = rows.length;
    for (Map.Entry<List<String>, String[]> time : clock.columns().entrySet()) {
      String unit = clock.unit();
      columns.add(new Column(List.of(), time.getKey(), unit, Part.BOTH, time.getValue(), true));
    }
    if (r.runs > 1 && r.runMark == RunMark.COLUMN) {
      String[] cells = new String[n];
      for (int k = 0; k < n; k++) {
        cells[k] = "" + night.run[rows[k]];
      }
      columns.add(new Column(List.of(), List.of(r.word("run")), "", Part.STAR, cells, false));
    }
    offsets();
    pulses();
    for (Extra extra : r.extras) {
      extra(extra);
    }
    states();
    if (r.shuffled) {
      Collections.shuffle(columns, r.random);
    } else if (r.timeLast) {
      Collections.rotate(columns, -clock.columns().size());
    }
  }

  private String axis(boolean isRa, Axes axes, int positive) {
    return switch (axes) {
      case RA_DEC -> r.word(isRa ? "ra" : "dec");
      case EAST_NORTH ->
          r.spell(
              r.tongue.word(
                  isRa
                      ? positive > 0 ? Way.EAST : Way.WEST
                      : positive > 0 ? Way.NORTH : Way.SOUTH));
      case XY -> isRa ? "x" : "y";
      case NUMBERS -> isRa ? "1" : "2";
    };
  }

  private List<String> named(String axis, String quantity) {
    if (quantity.equals("Δ")) {
      return List.of("Δ" + axis);
    }
    return r.quantityFirst || axis.matches("[12]")
        ? List.of(quantity, axis)
        : List.of(axis, quantity);
  }

  private List<String> offsetName(boolean isRa) {
    String concept =
        r.offsetAxes == Axes.XY
            ? isRa ? "offset-x" : "offset-y"
            : isRa ? "ra-offset" : "dec-offset";
    String whole =
        r.offsetAxes == Axes.NUMBERS
            ? null
            : r.paired("offset", concept, r.bothUnits ? "" : angleWord());
    if (whole != null) {
      return List.of(whole);
    }
    String axis = axis(isRa, r.offsetAxes, isRa ? r.raSign : r.decSign);
    if (r.delta && r.offsetAxes != Axes.NUMBERS) {
      return List.of((r.tongue == Tongue.GREEK ? "Δ" : "d") + axis);
    }
    return named(axis, r.word("offset"));
  }

  private Column placeColumn(String axis, String unit, String[] cells) {
    List<String> name = placed("place", "star", axis);
    return new Column(
        name.subList(0, name.size() - 1),
        name.subList(name.size() - 1, name.size()),
        unit,
        Part.STAR,
        cells,
        false);
  }

  /** The words for a place on the camera, the last of them the axis or all in one. */
  private List<String> placed(String key, String concept, String axis) {
    String whole = r.paired(concept, concept + "-" + axis, "px");
    return whole != null ? List.of(whole) : List.of(r.word(key), axis);
  }

  private String angleWord() {
    return r.angle == Angle.ARCSEC ? "arcsec" : r.angle == Angle.PIXEL ? "px" : "mas";
  }

  private String angleUnit() {
    return switch (r.angle) {
      case ARCSEC -> r.arcsecMark.equals("local") ? r.word("arcsec") : r.arcsecMark;
      case PIXEL -> r.word("pixel");
      case MILLIARCSEC -> "mas";
    };
  }

  private void offsets() {
    int n = rows.length;
    String[] first = new String[n];
    String[] second = new String[n];
    double turn = Math.toRadians(cameraDegrees);
    boolean turned = r.source == Source.CAMERA_TOLD || r.source == Source.CAMERA_UNTOLD;
    boolean places = r.source == Source.PLACES_ONLY || r.source == Source.PLACES_AND_MARK;
    for (int k = 0; k < n; k++) {
      int i = rows[k];
      if (night.lost[i]) {
        ra[k] = Double.NaN;
        dec[k] = Double.NaN;
        String gone = r.zerosWhileLost ? local(fixed(0, angleDecimals()), false) : missing();
        first[k] = gone;
        second[k] = gone;
        continue;
      }
      double a = r.raSign * night.raArcsec[i] / unitArcsec;
      double b = r.decSign * night.decArcsec[i] / unitArcsec;
      double x = turned ? a * Math.cos(turn) - b * Math.sin(turn) : places ? markX + a : a;
      double y = turned ? a * Math.sin(turn) + b * Math.cos(turn) : places ? markY + b : b;
      String xText = plainAngle(x);
      String yText = plainAngle(y);
      double xRead = Double.parseDouble(xText);
      double yRead = Double.parseDouble(yText);
      double aRead =
          turned ? xRead * Math.cos(turn) + yRead * Math.sin(turn) : places ? xRead - markX : xRead;
      double bRead =
          turned ? yRead * Math.cos(turn) - xRead * Math.sin(turn) : places ? yRead - markY : yRead;
      ra[k] = r.raSign * aRead * unitArcsec;
      dec[k] = r.decSign * bRead * unitArcsec;
      if (r.offsetLetters || r.form == Form.PROSE) {
        first[k] = sized(xText, ra[k] < 0 ? Way.WEST : Way.EAST);
        second[k] = sized(yText, dec[k] < 0 ? Way.SOUTH : Way.NORTH);
      } else {
        first[k] = withUnit(local(xText, true), angleUnit());
        second[k] = withUnit(local(yText, true), angleUnit());
      }
    }
    if (places) {
      columns.add(placeColumn("x", r.word("pixel"), first));
      columns.add(placeColumn("y", r.word("pixel"), second));
      return;
    }
    if (r.source == Source.TWO_STARS) {
      swapped = r.random.nextBoolean();
      String[][] other = otherStar();
      List<String> a = List.of(swapped ? "B" : "A");
      List<String> b = List.of(swapped ? "A" : "B");
      Column[] four = {
        new Column(a, offsetName(true), angleUnit(), Part.STAR, first, false),
        new Column(a, offsetName(false), angleUnit(), Part.STAR, second, false),
        new Column(b, offsetName(true), angleUnit(), Part.STAR, other[0], false),
        new Column(b, offsetName(false), angleUnit(), Part.STAR, other[1], false)
      };
      for (int c = 0; c < 4; c++) {
        columns.add(four[swapped ? (c + 2) % 4 : c]);
      }
      return;
    }
    boolean text = r.offsetLetters;
    columns.add(
        new Column(
            List.of(),
            offsetName(true),
            text && r.unitPlace == UnitPlace.IN_VALUE ? "" : angleUnit(),
            Part.STAR,
            first,
            text));
    columns.add(
        new Column(
            List.of(),
            offsetName(false),
            text && r.unitPlace == UnitPlace.IN_VALUE ? "" : angleUnit(),
            Part.STAR,
            second,
            text));
    if (r.bothUnits) {
      double other = r.angle == Angle.PIXEL ? night.arcsecPerPixel : 1 / night.arcsecPerPixel;
      String otherUnit = r.angle == Angle.PIXEL ? "arcsec" : r.word("pixel");
      for (boolean isRa : new boolean[] {true, false}) {
        String[] cells = new String[n];
        for (int k = 0; k < n; k++) {
          double value = isRa ? r.raSign * ra[k] : r.decSign * dec[k];
          cells[k] =
              Double.isNaN(value)
                  ? missing()
                  : withUnit(local(fixed(value / unitArcsec * other, 4), true), otherUnit);
        }
        columns.add(new Column(List.of(), offsetName(isRa), otherUnit, Part.STAR, cells, false));
      }
    }
  }

  private String sized(String plain, Way way) {
    String digits = local(plain.startsWith("-") ? plain.substring(1) : plain, false);
    if (r.form == Form.PROSE) {
      return digits;
    }
    return withUnit(digits, angleUnit()) + (r.cellsMayHoldBlanks() ? " " : "") + letter(way);
  }

  private String[][] otherStar() {
    String[][] cells = new String[2][rows.length];
    for (int k = 0; k < rows.length; k++) {
      double spread = 0.5 / unitArcsec;
      cells[0][k] =
          Double.isNaN(ra[k])
              ? missing()
              : withUnit(
                  local(
                      plainAngle(r.raSign * ra[k] / unitArcsec + spread * r.random.nextGaussian()),
                      true),
                  angleUnit());
      cells[1][k] =
          Double.isNaN(dec[k])
              ? missing()
              : withUnit(
                  local(
                      plainAngle(
                          r.decSign * dec[k] / unitArcsec + spread * r.random.nextGaussian()),
                      true),
                  angleUnit());
    }
    return cells;
  }

  private String withUnit(String number, String unit) {
    if (r.unitPlace != UnitPlace.IN_VALUE || r.form == Form.PROSE) {
      return number;
    }
    boolean mark = unit.matches("[\"″'a-zµ]{1,3}");
    return number
        + (mark || !r.cellsMayHoldBlanks() ? "" : " ")
        + (r.cellsMayHoldBlanks() ? unit : unit.replace(' ', '_'));
  }

  private String letter(Way way) {
    return r.localLetters ? r.tongue.letter(way) : way.name().substring(0, 1);
  }

  private Way pulseWay(boolean isRa, long nativeMillis) {
    boolean star = r.pulseSignTold == Told.STAR;
    boolean plus = nativeMillis >= 0 != star;
    return isRa ? plus ? Way.EAST : Way.WEST : plus ? Way.NORTH : Way.SOUTH;
  }

  private String pulseLength(long millis) {
    return switch (r.pulseUnit) {
      case "s" -> fixed(millis / 1000.0, 3);
      case "us", "µs" -> "" + millis * 1000;
      default -> "" + millis;
    };
  }

  /** Pulse that stands in row k of the log, native sign; NaN where the log has none. */
  private double pulseInRow(boolean isRa, int k) {
    long[] all = isRa ? night.raPulseMillis : night.decPulseMillis;
    if (!r.nextRow) {
      return all[rows[k]];
    }
    return k == 0 || night.run[rows[k - 1]] != night.run[rows[k]] ? 0 : all[rows[k - 1]];
  }

  private List<String> pulseName(boolean isRa) {
    String whole =
        r.pulseAxes != Axes.RA_DEC
            ? null
            : r.paired(
                "pulse", isRa ? "pulse-ra" : "pulse-dec", r.pulseUnit.replace('\u00b5', 'u'));
    return whole != null
        ? List.of(whole)
        : named(axis(isRa, r.pulseAxes, isRa ? r.raPulseSign : r.decPulseSign), r.word("pulse"));
  }

  /** The words for pulses of one way in a column of their own. */
  private List<String> pulseName(Way way) {
    String concept = "pulse-" + way.name().toLowerCase(Locale.ROOT);
    String whole = r.paired("pulses", concept, r.pulseUnit.replace('\u00b5', 'u'));
    return whole != null ? List.of(whole) : List.of(r.word("pulse"), r.way(way));
  }

  private void pulses() {
    if (!r.hasPulses()) {
      return;
    }
    String unit = r.pulseUnit;
    int n = rows.length;
    for (boolean isRa : new boolean[] {true, false}) {
      String[] main = new String[n];
      String[] side = new String[n];
      for (int k = 0; k < n; k++) {
        long value = (long) pulseInRow(isRa, k);
        int sign = isRa ? r.raPulseSign : r.decPulseSign;
        String size = withUnit(local(pulseLength(Math.abs(value)), false), unit);
        Way way = pulseWay(isRa, value);
        boolean none = value == 0;
        String hole = r.cellsMayHoldBlanks() && r.missing.isEmpty() ? "" : "-";
        main[k] =
            switch (r.pulses) {
              case SIGNED -> withUnit(local(pulseLength(sign * value), true), unit);
              case LETTER_BEHIND -> none ? size : size + letter(way);
              case LETTER_BEHIND_BLANK -> none ? size : size + " " + letter(way);
              case LETTER_FRONT -> none ? size : letter(way) + size;
              case FOUR_COLUMNS -> value > 0 ? size : withUnit(local(pulseLength(0), false), unit);
              default -> size;
            };
        side[k] =
            switch (r.pulses) {
              case LETTER_COLUMN, LETTER_COLUMN_BEFORE -> none ? hole : letter(way);
              case WORD_COLUMN -> none ? hole : r.way(way);
              case PLUS_MINUS_COLUMN -> sign * value < 0 ? r.minus : "+";
              case ONE_COLUMN -> none ? "0" : sign * value < 0 ? r.minus + "1" : "1";
              case FOUR_COLUMNS -> value < 0 ? size : withUnit(local(pulseLength(0), false), unit);
              default -> "";
            };
        if (r.form == Form.PROSE) {
          main[k] = size;
          side[k] = r.way(way);
        }
      }
      boolean text =
          r.pulses == Pulses.LETTER_BEHIND
              || r.pulses == Pulses.LETTER_BEHIND_BLANK
              || r.pulses == Pulses.LETTER_FRONT;
      Column length = new Column(List.of(), pulseName(isRa), unit, Part.PULSE, main, text);
      Column way =
          new Column(
              List.of(),
              named(axis(isRa, r.pulseAxes, 1), r.word("way")),
              "",
              Part.PULSE,
              side,
              true);
      switch (r.pulses) {
        case LETTER_COLUMN, WORD_COLUMN, PLUS_MINUS_COLUMN, ONE_COLUMN ->
            columns.addAll(List.of(length, way));
        case LETTER_COLUMN_BEFORE -> columns.addAll(List.of(way, length));
        case FOUR_COLUMNS -> {
          Way plus = pulseWay(isRa, 1);
          Way minus = pulseWay(isRa, -1);
          columns.add(new Column(List.of(), pulseName(plus), unit, Part.PULSE, main, false));
          columns.add(new Column(List.of(), pulseName(minus), unit, Part.PULSE, side, false));
        }
        default -> {
          columns.add(length);
          if (r.form == Form.PROSE) {
            columns.add(way);
          }
        }
      }
    }
  }

  private void add(
      List<String> group,
      List<String> name,
      String unit,
      java.util.function.IntFunction<String> cell) {
    String[] cells = new String[rows.length];
    for (int k = 0; k < cells.length; k++) {
      cells[k] = cell.apply(k);
    }
    columns.add(new Column(group, name, unit, Part.STAR, cells, false));
  }

  private void extra(Extra extra) {
    switch (extra) {
      case SNR ->
          add(
              List.of(),
              List.of(r.word("snr")),
              "",
              k -> gone(k) ? missing() : number(night.snr[rows[k]], 1));
      case FLUX ->
          add(
              List.of(),
              List.of(r.word("flux")),
              "",
              k -> gone(k) ? missing() : grouped((long) night.flux[rows[k]]));
      case PEAK ->
          add(
              List.of(),
              List.of(r.word("peak")),
              "",
              k -> gone(k) ? missing() : "" + Math.round(night.flux[rows[k]] / 17));
      case FWHM ->
          add(
              List.of(),
              List.of(r.word("fwhm")),
              angleUnit(),
              k ->
                  gone(k)
                      ? missing()
                      : withUnit(
                          number((2.6 + 0.2 * Math.sin(k * 1.7)) / unitArcsec, 2), angleUnit()));
      case COUNTER -> add(List.of(), List.of(r.word("frame")), "", k -> "" + (rows[k] + 1));
      case CONSTANT ->
          add(
              List.of(),
              List.of(r.word("exposure")),
              "s",
              k -> withUnit(number(night.exposureSeconds, 1), "s"));
      case TEMPERATURE ->
          add(
              List.of(),
              List.of(r.word("temperature")),
              "C",
              k -> number(11.4 - 0.003 * k + 0.1 * Math.sin(k), 1));
      case TEXT -> {
        String word = "cam-" + (1 + r.random.nextInt(3));
        columns.add(
            new Column(List.of(), List.of(r.word("camera")), "", Part.STAR, same(word), true));
      }
      case EMPTY ->
          columns.add(
              new Column(
                  List.of(),
                  List.of(r.word("note")),
                  "",
                  Part.STAR,
                  same(r.cellsMayHoldBlanks() ? "" : "-"),
                  true));
      case ELAPSED_TOO ->
          add(
              List.of(),
              List.of(r.word("elapsed")),
              "s",
              k -> number(clock.seconds(k) - clock.seconds(0), 1));
      case RUNNING_RMS, RUNNING_MEAN, SMOOTHED -> running(extra);
      case RUNNING_SUM -> {
        for (boolean isRa : new boolean[] {true, false}) {
          long[] total = new long[1];
          int sign = isRa ? r.raPulseSign : r.decPulseSign;
          add(
              List.of(r.word("sum")),
              r.hasPulses() ? pulseName(isRa) : offsetName(isRa),
              r.hasPulses() ? r.pulseUnit : angleUnit(),
              k -> {
                total[0] +=
                    r.hasPulses()
                        ? (long) (sign * pulseInRow(isRa, k))
                        : Math.round(1000 * nz(isRa ? ra[k] * r.raSign : dec[k] * r.decSign));
                return r.hasPulses()
                    ? local(pulseLength(total[0]), true)
                    : local(fixed(total[0] / 1000.0 / unitArcsec, angleDecimals()), true);
              });
        }
      }
      case TOTAL_DISTANCE ->
          add(
              List.of(),
              List.of(r.word("total")),
              angleUnit(),
              k ->
                  gone(k)
                      ? missing()
                      : withUnit(
                          number(Math.hypot(ra[k], dec[k]) / unitArcsec, angleDecimals()),
                          angleUnit()));
      case PULSE_COPY, PULSE_COPY_ANGLE -> {
        if (r.hasPulses()) {
          boolean angle = extra == Extra.PULSE_COPY_ANGLE;
          String unit = angle ? angleUnit() : r.pulseUnit.equals("ms") ? "s" : "ms";
          for (boolean isRa : new boolean[] {true, false}) {
            int sign = isRa ? r.raPulseSign : r.decPulseSign;
            double perMilli =
                15.041
                    * night.guideRate
                    / 1000
                    * (isRa ? Math.cos(Math.toRadians(night.declinationDegrees)) : 1)
                    / unitArcsec;
            add(
                List.of(r.word("copy")),
                pulseName(isRa),
                unit,
                k -> {
                  double value = sign * pulseInRow(isRa, k);
                  String plain =
                      angle
                          ? fixed(value * perMilli, r.angle == Angle.MILLIARCSEC ? 1 : 4)
                          : unit.equals("s") ? fixed(value / 1000, 3) : "" + (long) value;
                  return withUnit(local(plain, true), unit);
                });
          }
        }
      }
      case PLACES, PLACES_AND_MARK -> {
        double[] x0 = new double[rows.length];
        double[] y0 = new double[rows.length];
        for (int k = 0; k < rows.length; k++) {
          boolean moved = k > 0 && night.dither[rows[k]];
          x0[k] =
              k == 0
                  ? markX
                  : x0[k - 1] + (moved ? Math.round(300 * r.random.nextGaussian()) / 100.0 : 0);
          y0[k] =
              k == 0
                  ? markY
                  : y0[k - 1] + (moved ? Math.round(300 * r.random.nextGaussian()) / 100.0 : 0);
        }
        String px = r.word("pixel");
        add(
            List.of(),
            placed("place", "star", "x"),
            px,
            k -> gone(k) ? missing() : number(x0[k] + r.raSign * ra[k] / night.arcsecPerPixel, 3));
        add(
            List.of(),
            placed("place", "star", "y"),
            px,
            k ->
                gone(k) ? missing() : number(y0[k] + r.decSign * dec[k] / night.arcsecPerPixel, 3));
        if (extra == Extra.PLACES_AND_MARK) {
          add(List.of(), placed("mark", "setpoint", "x"), px, k -> number(x0[k], 2));
          add(List.of(), placed("mark", "setpoint", "y"), px, k -> number(y0[k], 2));
        }
      }
      case CAMERA_RAW -> {
        double c = Math.cos(Math.toRadians(cameraDegrees));
        double s = Math.sin(Math.toRadians(cameraDegrees));
        double px = night.arcsecPerPixel;
        String d = r.tongue == Tongue.GREEK ? "Δ" : "d";
        String unit = r.word("pixel");
        add(
            List.of(r.word("camera")),
            List.of(d + "x"),
            unit,
            k -> gone(k) ? missing() : local(fixed((ra[k] * c - dec[k] * s) / px, 3), true));
        add(
            List.of(r.word("camera")),
            List.of(d + "y"),
            unit,
            k -> gone(k) ? missing() : local(fixed((ra[k] * s + dec[k] * c) / px, 3), true));
      }
      case OTHER_STAR -> {
        String[][] other = otherStar();
        columns.add(
            new Column(
                List.of("star 2"), offsetName(true), angleUnit(), Part.STAR, other[0], false));
        columns.add(
            new Column(
                List.of("star 2"), offsetName(false), angleUnit(), Part.STAR, other[1], false));
      }
    }
  }

  private String[] same(String word) {
    String[] cells = new String[rows.length];
    java.util.Arrays.fill(cells, word);
    return cells;
  }

  private static double nz(double value) {
    return Double.isNaN(value) ? 0 : value;
  }

  private boolean gone(int k) {
    return night.lost[rows[k]];
  }

  private String grouped(long value) {
    if (!r.thousands) {
      return "" + value;
    }
    boolean apart =
        r.form == Form.TAB
            || r.form == Form.SEMICOLON
            || r.form == Form.PIPES
            || r.form == Form.PIPE_FRAME
            || r.quoteAll;
    String mark = r.decimalComma ? "." : apart ? "," : "'";
    return String.format(Locale.ROOT, "%,d", value).replace(",", mark);
  }

  private void running(Extra extra) {
    String key =
        extra == Extra.RUNNING_RMS ? "rms" : extra == Extra.RUNNING_MEAN ? "mean" : "smooth";
    for (boolean isRa : new boolean[] {true, false}) {
      double[] state = new double[3];
      String average = r.phrases == null ? null : r.average(isRa);
      add(
          average == null ? List.of(r.word(key)) : List.of(),
          average != null
              ? List.of(average)
              : extra == Extra.RUNNING_RMS
                  ? List.of(axis(isRa, r.offsetAxes, isRa ? r.raSign : r.decSign))
                  : offsetName(isRa),
          angleUnit(),
          k -> {
            if (gone(k)) {
              return missing();
            }
            double value = (isRa ? ra[k] * r.raSign : dec[k] * r.decSign) / unitArcsec;
            state[0]++;
            state[1] += value;
            state[2] =
                extra == Extra.SMOOTHED ? 0.7 * state[2] + 0.3 * value : state[2] + value * value;
            double out =
                extra == Extra.RUNNING_RMS
                    ? Math.sqrt(state[2] / state[0])
                    : extra == Extra.RUNNING_MEAN ? state[1] / state[0] : state[2];
            return withUnit(local(fixed(out, angleDecimals()), true), angleUnit());
          });
    }
  }

  /** A kind for a row as one code can tell it: the strongest wins. */
  private int code(int k) {
    int i = rows[k];
    return night.lost[i] ? 2 : night.dither[i] ? 3 : night.settling[i] ? 1 : 0;
  }

  private void states() {
    int n = rows.length;
    String[] words = {r.word("ok"), r.word("settling"), r.word("lost"), r.word("dither")};
    String[] cells = new String[n];
    switch (r.events) {
      case FLAG_WORDS, FLAG_CODES, FLAG_LETTERS, NOTE_COLUMN -> {
        String letters = flagLetters();
        for (int k = 0; k < n; k++) {
          int code = code(k);
          cells[k] =
              switch (r.events) {
                case FLAG_WORDS -> words[code];
                case FLAG_CODES -> "" + code;
                case FLAG_LETTERS -> "" + letters.charAt(code);
                default -> code == 0 ? "" : words[code];
              };
        }
        columns.add(
            new Column(
                List.of(),
                List.of(r.word(r.events == Events.NOTE_COLUMN ? "note" : "state")),
                "",
                Part.STAR,
                cells,
                r.events != Events.FLAG_CODES));
      }
      case ONE_ZERO_COLUMNS -> {
        add(List.of(), List.of(words[3]), "", k -> night.dither[rows[k]] ? "1" : "0");
        add(List.of(), List.of(words[1]), "", k -> night.settling[rows[k]] ? "1" : "0");
        add(List.of(), List.of(words[2]), "", k -> night.lost[rows[k]] ? "1" : "0");
      }
      default -> {}
    }
  }

  /** Letters for measured, settling, lost, dither, as the tongue's legend explains them. */
  private String flagLetters() {
    String legend = r.tongue.words("s.flagletters").get(0);
    StringBuilder letters = new StringBuilder();
    java.util.regex.Matcher matcher = Pattern.compile("(\\w) = ").matcher(legend);
    while (matcher.find()) {
      letters.append(matcher.group(1));
    }
    return letters.toString();
  }

  private Set<Event> toldAt(int k) {
    Set<Event> set = EnumSet.noneOf(Event.class);
    int i = rows[k];
    if (r.flip && k > 0 && night.run[rows[k - 1]] != night.run[i]) {
      set.add(Event.FLIP);
    }
    if (r.events == Events.NONE) {
      return set;
    }
    if (r.events.lines() || r.events == Events.ONE_ZERO_COLUMNS) {
      if (night.dither[i]) {
        set.add(Event.DITHER);
      }
      if (night.settling[i] && r.settlingTold) {
        set.add(Event.SETTLING);
      }
      if (night.lost[i]) {
        set.add(Event.LOST);
      }
      return set;
    }
    int code = code(k);
    if (code > 0) {
      set.add(code == 1 ? Event.SETTLING : code == 2 ? Event.LOST : Event.DITHER);
    }
    return set;
  }

  // ---------------------------------------------------------------- names

  private String styled(List<String> words) {
    if (words.stream().anyMatch(r.whole::contains)) {
      return asWritten(words);
    }
    boolean blanks =
        r.cellsMayHoldBlanks() && r.form != Form.JSON && r.form != Form.KEY_EQUALS_COMMA;
    if (r.style == Style.SPACED && blanks) {
      String joined = String.join(" ", words);
      return r.form.delimiter == null || r.quoteText || r.quoteAll
          ? joined
          : joined.replace(
              r.form.delimiter.strip().isEmpty() ? "\t" : r.form.delimiter.strip(), " ");
    }
    List<String> parts = new ArrayList<>();
    for (String word : words) {
      for (String part : word.split("[^\\p{L}\\p{N}]+")) {
        if (!part.isEmpty()) {
          parts.add(part);
        }
      }
    }
    StringBuilder name = new StringBuilder();
    for (String part : parts) {
      boolean first = name.isEmpty();
      boolean greek = part.matches("[Δαδ]+|µs");
      String lower = greek ? part : part.toLowerCase(Locale.ROOT);
      String capital =
          greek ? part : lower.substring(0, 1).toUpperCase(Locale.ROOT) + lower.substring(1);
      switch (r.style) {
        case CAMEL -> name.append(first ? lower : capital);
        case PASCAL -> name.append(capital);
        case UPPER ->
            name.append(first ? "" : "_").append(greek ? part : part.toUpperCase(Locale.ROOT));
        case KEBAB -> name.append(first ? "" : "-").append(lower);
        case DOTTED -> name.append(first ? "" : ".").append(lower);
        case GLUED -> name.append(lower);
        case CUT ->
            name.append(first ? "" : blanks ? " " : "")
                .append(
                    capital.length() > 4
                        ? capital.substring(0, 3 + capital.length() % 2) + "."
                        : capital);
        default -> name.append(first ? "" : "_").append(lower);
      }
    }
    return name.toString();
  }

  /** Whole phrases as they are, as far as the form of the log allows their signs. */
  private String asWritten(List<String> words) {
    String joined = String.join(" ", words);
    if (r.form.delimiter == null) {
      return joined
          .replaceAll("[\"\u2033]", " arcsec ")
          .strip()
          .replaceAll("[^\\p{L}\\p{N}]+", "_")
          .replaceAll("^_|_$", "");
    }
    String sign = r.form.delimiter.strip();
    boolean listed = r.names == Names.LIST_IN_COMMENT || r.form == Form.COMMA_BLANK;
    String free = sign.isEmpty() || r.quoteText || r.quoteAll ? joined : joined.replace(sign, " ");
    return (listed ? free.replaceAll("[,;]", " ") : free).replaceAll(" +", " ").strip();
  }

  private static String identifierUnit(String unit) {
    return unit.matches("[\"″']+") ? "arcsec" : unit;
  }

  private boolean tellsUnit(String word) {
    return r.whole.contains(word) && !Phrases.unit(word).isEmpty();
  }

  private String nameOf(Column c) {
    List<String> words = new ArrayList<>(c.group());
    words.addAll(c.name());
    return unitAdded(words, c.unit());
  }

  private String unitAdded(List<String> words, String unit) {
    String base = styled(words);
    if (unit.isEmpty() || words.stream().anyMatch(this::tellsUnit)) {
      return base;
    }
    boolean blanks =
        r.cellsMayHoldBlanks() && r.form != Form.KEY_EQUALS_COMMA && r.form != Form.JSON;
    String short_ = blanks ? unit : unit.replace(' ', '_');
    String gap = blanks && (r.style == Style.SPACED || r.style == Style.CUT) ? " " : "";
    switch (r.unitPlace) {
      case IN_NAME -> {
        if (words.stream().anyMatch(r.whole::contains)) {
          return base + (r.form.delimiter == null ? "_" : " ") + identifierUnit(unit);
        }
        List<String> more = new ArrayList<>(words);
        more.add(identifierUnit(unit));
        return styled(more);
      }
      case SQUARE -> {
        return base + gap + "[" + short_ + "]";
      }
      case ROUND -> {
        return base + gap + "(" + short_ + ")";
      }
      case SLASH -> {
        return base + "/" + short_;
      }
      default -> {
        return base;
      }
    }
  }

  /**
   * Names of all columns, made different from each other by a number where the words are the same.
   */
  private List<String> headers(List<Column> of) {
    return headersOf.computeIfAbsent(List.copyOf(of), this::madeHeaders);
  }

  private List<String> madeHeaders(List<Column> of) {
    List<String> names = new ArrayList<>();
    Set<String> seen = new HashSet<>();
    for (Column c : of) {
      String name = nameOf(c);
      for (int n = 2; !seen.add(name); n++) {
        name = nameOf(c) + n;
      }
      names.add(name);
    }
    return names;
  }

  // ---------------------------------------------------------------- lines

  private String joined(List<String> cells, List<Integer> widths, boolean names) {
    List<String> out = new ArrayList<>();
    for (int c = 0; c < cells.size(); c++) {
      String cell = cells.get(c);
      boolean quote =
          r.quoteAll || r.quoteText && (names || !QUOTED_NUMBER.matcher(cell).matches());
      if (quote) {
        cell = "\"" + cell.replace("\"", "\"\"") + "\"";
      } else if (r.form.delimiter != null) {
        String strip = r.form.delimiter.strip();
        if (!strip.isEmpty() && !(r.decimalComma && strip.equals(","))) {
          cell = cell.replace(strip, strip.equals(",") ? ";" : ",");
        }
        if (!r.cellsMayHoldBlanks()) {
          cell = cell.strip().replace(", ", ",").replace(' ', '_');
        }
      }
      out.add(cell);
    }
    String line =
        switch (r.form) {
          case BLANK_RUNS, FIXED_WIDTH -> {
            StringBuilder b = new StringBuilder();
            for (int c = 0; c < out.size(); c++) {
              int width = widths.get(c);
              b.append(" ".repeat(Math.max(c == 0 ? 0 : 1, width - out.get(c).length())))
                  .append(out.get(c));
            }
            yield b.toString();
          }
          case PIPE_FRAME -> {
            StringBuilder b = new StringBuilder("|");
            for (int c = 0; c < out.size(); c++) {
              b.append(" ".repeat(Math.max(1, widths.get(c) - 1 - out.get(c).length())))
                  .append(out.get(c))
                  .append(" |");
            }
            yield b.toString();
          }
          default -> String.join(r.form.delimiter, out);
        };
    return (r.leadingBlanks ? "   " : "")
        + line
        + (r.trailingDelimiter
            ? r.form.delimiter.strip().isEmpty() ? r.form.delimiter : r.form.delimiter.strip()
            : "");
  }

  private List<Integer> widths(List<Column> of) {
    List<Integer> widths = new ArrayList<>();
    List<String> names = headers(of);
    for (int c = 0; c < of.size(); c++) {
      int width = r.names == Names.ABOVE || r.names == Names.REPEATED ? names.get(c).length() : 3;
      if (r.names == Names.TWO_LINES) {
        width = Math.max(styled(of.get(c).name()).length(), groupOf(of.get(c)).length());
      }
      for (String cell : of.get(c).cells()) {
        width = Math.max(width, cell.length());
      }
      if (r.unitPlace == UnitPlace.LINE_BELOW) {
        width = Math.max(width, of.get(c).unit().length());
      }
      widths.add(width + 2);
    }
    return widths;
  }

  private String groupOf(Column c) {
    return c.group().isEmpty() ? "" : styled(c.group());
  }

  private static final String[] LETTERS = {"F", "E", "S", "H"};

  /**
   * Puts what stands before every line: kind 0 frame, 1 event, 2 settings and sentences, 3 names.
   */
  private void emit(int kind, int row, String text) {
    String line =
        switch (r.lead) {
          case NONE -> text;
          case TYPE_LETTER ->
              LETTERS[kind]
                  + (r.form.delimiter == null
                          || r.form == Form.FIXED_WIDTH
                          || r.form == Form.PIPE_FRAME
                      ? " "
                      : r.form.delimiter)
                  + text;
          case LEVEL -> (kind == 1 ? "NOTE  " : "INFO  ") + text;
          case TIME_IN_BRACKETS -> "[" + clock.text(Math.max(0, row)) + "] " + text;
        };
    lines.add(line);
  }

  private void remark(String text) {
    if (text.isEmpty()) {
      return;
    }
    if (r.form == Form.JSON) {
      lines.add(
          "{\"" + r.word("note").replace(' ', '_') + "\":\"" + text.replace("\"", "\\\"") + "\"}");
      return;
    }
    emit(2, 0, (r.lead == Lead.NONE ? r.marker : "") + text);
  }

  private String sentence(String key, String... fills) {
    String text =
        r.spell(
            r.tongue
                .words(key)
                .get(r.plainestWords ? 0 : r.random.nextInt(r.tongue.words(key).size())));
    for (int f = 0; f < fills.length; f += 2) {
      text = text.replace("{" + fills[f] + "}", fills[f + 1]);
    }
    if (r.tongue.words(key).stream().anyMatch(t -> t.startsWith("{r}")) && !text.isEmpty()) {
      return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }
    return text;
  }

  private String ways(boolean isRa, int sign) {
    return r.spell(
        r.tongue.word(isRa ? sign > 0 ? Way.EAST : Way.WEST : sign > 0 ? Way.NORTH : Way.SOUTH));
  }

  private void prelude() {
    if (r.around.contains(Around.TITLE) && r.form != Form.JSON) {
      remark(r.word("title") + " - " + program);
      remark(r.word("place.name"));
      remark("=".repeat(40));
    }
    if (r.around.contains(Around.SECTIONS)) {
      lines.add("[" + r.word("section.settings") + "]");
    }
    Map<String, String[]> settings = settings();
    writeSettings(settings);
    boolean signs =
        r.offsetSignTold == Told.STAR_MINUS_MARK || r.offsetSignTold == Told.MARK_MINUS_STAR;
    String raSense =
        signs ? r.paired("sign", r.raSign > 0 ? "sign-ra-east" : "sign-ra-west", "") : null;
    String decSense =
        signs ? r.paired("sign", r.decSign > 0 ? "sign-dec-north" : "sign-dec-south", "") : null;
    if (raSense != null && decSense != null && r.source == Source.OFFSETS && r.form != Form.PROSE) {
      remark(raSense);
      remark(decSense);
    } else if (r.offsetSignTold == Told.STAR_MINUS_MARK
        && r.form != Form.PROSE
        && r.source != Source.PLACES_AND_MARK
        && r.source != Source.PLACES_ONLY) {
      remark(sentence("s.sign", "r", ways(true, r.raSign), "d", ways(false, r.decSign)));
    } else if (r.offsetSignTold == Told.MARK_MINUS_STAR) {
      remark(sentence("s.reverse", "r", ways(true, r.raSign), "d", ways(false, r.decSign)));
    }
    if (r.source == Source.PLACES_AND_MARK) {
      remark(
          sentence(
              "s.setpoint",
              "x",
              local(fixed(markX, 2), false),
              "y",
              local(fixed(markY, 2), false),
              "r",
              ways(true, r.raSign),
              "d",
              ways(false, r.decSign)));
    } else if (r.source == Source.PLACES_ONLY) {
      remark(sentence("s.xy", "r", ways(true, r.raSign), "d", ways(false, r.decSign)));
    } else if (r.source == Source.CAMERA_TOLD) {
      remark(sentence("s.rotation", "a", local(fixed(cameraDegrees, 1), false)));
    }
    if (r.hasPulses() && r.pulseSignTold != Told.NOT && !r.letters()) {
      boolean mount = r.pulseSignTold == Told.MOUNT;
      remark(
          sentence(
              mount ? "s.mount" : "s.star",
              "r",
              ways(true, mount ? r.raPulseSign : -r.raPulseSign),
              "d",
              ways(false, mount ? r.decPulseSign : -r.decPulseSign)));
    }
    if (r.hasPulses()
        && r.letters()
        && r.form != Form.PROSE
        && r.pulses != Pulses.WORD_COLUMN
        && r.pulses != Pulses.FOUR_COLUMNS
        && r.lettersExplained) {
      List<String> fills = new ArrayList<>();
      for (Way way : Way.values()) {
        fills.addAll(List.of(way.name().substring(0, 1), letter(way), way.key, r.way(way)));
      }
      remark(sentence("s.letters", fills.toArray(String[]::new)));
    }
    if (r.unitPlace == UnitPlace.COMMENT) {
      remark(sentence("s.unit", "u", angleUnit(), "p", r.pulseUnit));
    }
    if (r.axesSentence) {
      remark(sentence("s.axes"));
    }
    if (r.missingExplained && !r.missing.isEmpty()) {
      remark(sentence("s.missing", "m", missing()));
    }
    if (r.nextRow && r.nextRowTold) {
      remark(sentence("s.next"));
    }
    if (r.clock == Clock.FRAMES_AND_CADENCE) {
      remark(sentence("s.cadence", "c", local(fixed(night.cadenceSeconds, 1), false)));
    }
    if (r.clock == Clock.SLASHES_TOLD) {
      remark(sentence("s.dateorder", "o", clock.order()));
    }
    if (r.events == Events.FLAG_CODES) {
      remark(sentence("s.codes", "k", r.word("state")));
    } else if (r.events == Events.FLAG_LETTERS) {
      remark(sentence("s.flagletters", "k", r.word("state")));
    }
    if (r.around.contains(Around.OTHER_TABLE) && r.form.delimiter != null) {
      otherTable();
    }
    if (r.around.contains(Around.SECTIONS)) {
      lines.add("");
      lines.add("[" + r.word("section.frames") + "]");
    } else if (r.around.contains(Around.BLANK_LINES)) {
      lines.add("");
    }
  }

  /**
   * A small table of something else ahead of the frames: how far a focus motor's steps moved the
   * image's width.
   */
  private void otherTable() {
    String d =
        r.form.delimiter.strip().isEmpty()
            ? "\t".equals(r.form.delimiter) ? "\t" : "  "
            : r.form.delimiter.strip();
    lines.add(r.word("focuser"));
    lines.add(
        String.join(
            d,
            r.word("frame").replace(' ', '_'),
            r.word("focuser").replace(' ', '_'),
            r.word("fwhm").replace(' ', '_')));
    for (int step = 0; step < 7; step++) {
      lines.add(
          String.join(
              d,
              "" + (step + 1),
              "" + (20100 + 50 * step),
              local(fixed(2.4 + 0.12 * (step - 3) * (step - 3), 2), false)));
    }
    lines.add("");
  }

  /** Settings of this log: key, then value, unit and the word for the key that carries its unit. */
  private Map<String, String[]> settings() {
    Map<String, String[]> map = new LinkedHashMap<>();
    String px = "px";
    String perPixel = r.pick("arcsec/px", "\"/px", "arcsec per px");
    for (Map.Entry<String, String> entry : clock.settings().entrySet()) {
      map.put(entry.getKey(), new String[] {entry.getValue(), ""});
    }
    if (r.scaleTold && !(r.scaleByFocalLength)) {
      map.put(
          "scale",
          new String[] {
            local(fixed(night.arcsecPerPixel, 2), false),
            r.plainestWords ? "arcsec/" + px : perPixel
          });
    }
    if (r.scaleTold && r.scaleByFocalLength) {
      map.put("focal", new String[] {local(fixed(focalMillimetres, 0), false), "mm"});
      map.put(
          "pixelsize",
          new String[] {
            local(fixed(pixelMicrons, 2), false),
            r.plainestWords ? "um" : r.pick("um", "µm", "micron")
          });
    }
    map.put("exposureset", new String[] {local(fixed(night.exposureSeconds, 1), false), "s"});
    if (r.declinationTold) {
      map.put(
          "declination",
          new String[] {
            local(fixed(night.declinationDegrees, 1), true),
            r.plainestWords ? "deg" : r.pick("deg", "°", "degrees")
          });
    }
    if (r.pierTold) {
      map.put("pier", new String[] {pierSide(), ""});
    }
    if (r.gainTold) {
      map.put("gain", new String[] {local(fixed(night.gain, 2), false), ""});
    }
    if (r.rateTold) {
      map.put(
          "rate",
          new String[] {
            local(fixed(night.guideRate, 2), false), r.plainestWords ? "" : r.pick("", "x")
          });
    }
    return map;
  }

  private String pierSide() {
    String whole = r.paired("pier", night.tubeWest ? "value-pier-west" : "value-pier-east", "");
    return whole != null ? whole : r.spell(r.tongue.word(night.tubeWest ? Way.WEST : Way.EAST));
  }

  private void writeSettings(Map<String, String[]> settings) {
    if (r.form == Form.JSON) {
      List<String> parts = new ArrayList<>();
      settings.forEach(
          (key, value) -> {
            String name =
                styledKey(r.word(key)) + (value[1].isEmpty() ? "" : "_" + unitWord(value[1]));
            boolean number = value[0].matches("-?[0-9.]+");
            parts.add("\"" + name + "\":" + (number ? value[0] : "\"" + value[0] + "\""));
          });
      lines.add("{" + String.join(",", parts) + "}");
      return;
    }
    List<String> one = new ArrayList<>();
    settings.forEach(
        (key, value) -> {
          String word = r.word(key);
          String unit = value[1].isEmpty() ? "" : value[1].equals("x") ? "x" : " " + value[1];
          switch (r.settings) {
            case KEY_COLON -> remark(word + ": " + value[0] + unit);
            case EQUALS -> remark(word + " = " + value[0] + unit);
            case NEXT_FIELD -> {
              String d =
                  r.form.delimiter == null
                      ? ";"
                      : r.form.delimiter.strip().isEmpty() ? "\t" : r.form.delimiter.strip();
              emit(
                  2,
                  0,
                  (r.lead == Lead.NONE && r.marker.equals("# ") ? r.marker : "")
                      + word
                      + d
                      + value[0]
                      + (value[1].isEmpty() ? "" : d + value[1]));
            }
            case ONE_LINE -> one.add(word + " " + value[0] + unit);
            case UNIT_IN_KEY ->
                remark(
                    styledKey(word)
                        + (value[1].isEmpty() ? "" : "_" + unitWord(value[1]))
                        + "="
                        + value[0]);
            case SECTION -> one.add(word + "=" + value[0] + unit);
            case DOTTED_LEADERS ->
                remark(
                    word
                        + " "
                        + ".".repeat(Math.max(3, 30 - word.length()))
                        + " "
                        + value[0]
                        + unit);
            case SENTENCES -> {
              switch (key) {
                case "scale", "rate", "declination" -> remark(sentence("s." + key, "v", value[0]));
                case "exposureset" -> remark(sentence("s.exposure", "v", value[0]));
                default -> remark(word + ": " + value[0] + unit);
              }
            }
          }
        });
    if (r.settings == SettingsStyle.ONE_LINE) {
      remark(String.join(r.decimalComma ? "; " : ", ", one));
    } else if (r.settings == SettingsStyle.SECTION) {
      if (!r.around.contains(Around.SECTIONS)) {
        lines.add("[" + r.word("section.settings") + "]");
      }
      lines.addAll(one);
      lines.add("");
    }
  }

  private String styledKey(String word) {
    return word.replaceAll("[^\\p{L}\\p{N}]+", "_").replaceAll("_$", "").toLowerCase(Locale.ROOT);
  }

  private static String unitWord(String unit) {
    return unit.replace("\"", "arcsec")
        .replace("/", "_per_")
        .replace("°", "deg")
        .replace(' ', '_')
        .replaceAll("__+", "_");
  }

  private List<Column> shown() {
    if (r.lead != Lead.TIME_IN_BRACKETS) {
      return columns;
    }
    List<Column> shown = new ArrayList<>();
    Set<List<String>> times = clock.columns().keySet();
    for (Column c : columns) {
      if (!times.contains(c.name())) {
        shown.add(c);
      }
    }
    return shown;
  }

  private void names(List<Column> of, int row) {
    if (r.form.delimiter == null) {
      return;
    }
    if (r.twoLines) {
      for (Part part : List.of(Part.STAR, Part.PULSE)) {
        List<Column> half = half(of, part);
        List<String> cells = new ArrayList<>(List.of(partWord(part)));
        cells.addAll(headers(half));
        emit(3, row, joined(cells, widthsWithWord(half), true));
      }
      return;
    }
    List<Integer> widths = widths(of);
    List<String> headers = headers(of);
    switch (r.names) {
      case ABOVE, REPEATED -> {
        rule(widths);
        emit(3, row, joined(headers, widths, true));
      }
      case TWO_LINES -> {
        rule(widths);
        List<String> top = new ArrayList<>();
        List<String> below = new ArrayList<>();
        for (Column c : of) {
          List<String> all = new ArrayList<>(c.group());
          all.addAll(c.name());
          boolean split = all.size() > 1;
          top.add(split ? styled(all.subList(0, 1)) : filler());
          below.add(unitAdded(split ? all.subList(1, all.size()) : all, c.unit()));
        }
        emit(3, row, joined(top, widths, true));
        emit(3, row, joined(below, widths, true));
      }
      case IN_COMMENT -> emit(3, row, r.marker + joined(headers, widths, true).strip());
      case LIST_IN_COMMENT -> {
        List<String> listed = new ArrayList<>();
        for (int c = 0; c < headers.size(); c++) {
          listed.add((c + 1) + " " + headers.get(c));
        }
        emit(
            3,
            row,
            r.marker
                + r.word("columns")
                + ": "
                + String.join(
                    r.form == Form.COMMA || r.form == Form.COMMA_BLANK ? "; " : ", ", listed));
      }
      case ONE_PER_LINE -> {
        emit(3, row, r.marker + r.word("columns") + ":");
        for (int c = 0; c < headers.size(); c++) {
          emit(3, row, r.marker + "  " + (c + 1) + (c < 9 ? "   " : "  ") + headers.get(c));
        }
      }
      case NONE -> {}
    }
    if (r.unitPlace == UnitPlace.LINE_BELOW && r.names != Names.NONE) {
      List<String> units = new ArrayList<>();
      for (Column c : of) {
        units.add(c.unit().isEmpty() ? filler() : c.unit());
      }
      String commented =
          r.names == Names.IN_COMMENT
                  || r.names == Names.LIST_IN_COMMENT
                  || r.names == Names.ONE_PER_LINE
              ? r.marker
              : "";
      emit(3, row, commented + joined(units, widths, true));
    }
    rule(widths);
  }

  private String filler() {
    return r.cellsMayHoldBlanks() ? "" : "-";
  }

  private void rule(List<Integer> widths) {
    if (r.form == Form.PIPE_FRAME) {
      StringBuilder b = new StringBuilder("+");
      for (int width : widths) {
        b.append("-".repeat(width)).append("+");
      }
      lines.add(b.toString());
    }
  }

  private String partWord(Part part) {
    return part == Part.STAR ? r.word("star") : r.word("pulse");
  }

  private List<Column> half(List<Column> of, Part part) {
    return of.stream().filter(c -> c.part() == part || c.part() == Part.BOTH).toList();
  }

  private List<Integer> widthsWithWord(List<Column> of) {
    List<Integer> widths = new ArrayList<>(List.of(14));
    widths.addAll(widths(of));
    return widths;
  }

  private String event(int row, String text) {
    if (r.form == Form.JSON) {
      String key = r.word("note").replace(' ', '_');
      return "{\""
          + styled(clock.columns().keySet().iterator().next())
          + "\":"
          + json(clock.text(row), true)
          + ",\""
          + key
          + "\":\""
          + text
          + "\"}";
    }
    return switch (r.events) {
      case LINES_IN_COMMENT -> "# " + text;
      case LINES_WITH_TIME -> clock.text(row) + " " + text;
      case LINES_WITH_STARS -> "*** " + text + " ***";
      default -> text;
    };
  }

  private void body() {
    List<Column> of = new ArrayList<>(shown());
    if (r.names != Names.NONE) {
      names(of, 0);
    }
    List<Integer> widths = widths(of);
    boolean pending = false;
    for (int k = 0; k < rows.length; k++) {
      int i = rows[k];
      boolean newRun = k == 0 || night.run[rows[k - 1]] != night.run[i];
      if (k > 0 && newRun) {
        if (r.events.lines() && pending && r.settlingTold) {
          emit(1, k - 1, event(k - 1, r.word("settled")));
          pending = false;
        }
        if (r.runMark != RunMark.COLUMN) {
          emit(1, k - 1, event(k - 1, r.word("end").replace("{n}", "" + night.run[rows[k - 1]])));
        }
        if (r.around.contains(Around.BLANK_LINES)) {
          lines.add("");
        }
        if (r.flip) {
          emit(1, k, event(k, r.word("flip")));
        }
      }
      if (newRun && (r.runs > 1 || r.events.lines()) && r.runMark != RunMark.COLUMN) {
        String text = r.word("start").replace("{n}", "" + night.run[i]);
        emit(1, k, event(k, text + clock.runStart(k)));
        if (k > 0 && r.runMark == RunMark.NAMES_AGAIN) {
          names(of, k);
        }
      }
      if (r.swapHalfWay && k == rows.length / 2) {
        Collections.swap(of, of.size() - 1, clock.columns().size());
        Collections.swap(of, clock.columns().size() + 1, clock.columns().size() + 2);
        widths = widths(of);
        names(of, k);
      } else if (r.names == Names.REPEATED && k > 0 && k % 60 == 0) {
        names(of, k);
      }
      if (r.events.lines()) {
        pending = eventLines(k, newRun, pending);
      }
      around(k);
      row(of, widths, k);
    }
    if (r.events.lines()) {
      emit(
          1,
          rows.length - 1,
          event(
              rows.length - 1,
              r.word("end").replace("{n}", "" + night.run[rows[rows.length - 1]])));
    }
    if (r.form == Form.PIPE_FRAME) {
      rule(widths);
    }
  }

  private boolean eventLines(int k, boolean newRun, boolean pendingBefore) {
    int i = rows[k];
    boolean pending = pendingBefore;
    boolean lostBefore = !newRun && i > 0 && night.lost[i - 1];
    if (night.lost[i] && !lostBefore) {
      emit(1, k, event(k, r.word("lost")));
    } else if (!night.lost[i] && lostBefore) {
      if (r.lostRowsAbsent) {
        emit(1, k - 1, event(k - 1, r.word("lost")));
      }
      emit(1, k, event(k, r.word("found")));
    }
    if (pending && !night.settling[i]) {
      emit(1, k, event(k, r.word("settled")));
      pending = false;
    }
    if (night.dither[i]) {
      emit(1, k, event(k, r.word("dither")));
      if (r.settlingTold) {
        if (!pending) {
          emit(1, k, event(k, r.word("settling")));
        }
        pending = true;
      }
    }
    return pending;
  }

  private void around(int k) {
    if (r.around.contains(Around.COMMENTS) && k % 70 == 35 && r.form != Form.JSON) {
      List<String> remarks = r.tongue.words("remarks");
      emit(1, k, "# " + r.spell(remarks.get(r.random.nextInt(remarks.size()))));
    }
    if (r.around.contains(Around.BLANK_LINES) && k % 50 == 49) {
      lines.add("");
    }
    String degrees = local(fixed(11.4 - 0.003 * k, 1), false);
    if (r.around.contains(Around.SECOND_DEVICE) && k % 23 == 11) {
      lines.add(
          clock.text(k)
              + " "
              + r.word("focuser")
              + ": "
              + r.word("place")
              + " "
              + (20514 - k / 5)
              + ", "
              + r.word("temperature")
              + " "
              + degrees
              + " C");
    }
    if (r.around.contains(Around.SECOND_DEVICE_AS_ROW) && k % 19 == 7 && r.form.delimiter != null) {
      String d = r.form.delimiter.isEmpty() ? "  " : r.form.delimiter;
      lines.add(String.join(d, List.of("DEW", clock.text(k), (35 + k % 9) + "%", degrees)));
    }
  }

  private String json(String cell, boolean text) {
    if (cell.isEmpty() || cell.equals("null")) {
      return "null";
    }
    if (cell.equals("NaN")) {
      return "NaN";
    }
    return JSON_NUMBER.matcher(cell).matches() ? cell : "\"" + cell.replace("\"", "\\\"") + "\"";
  }

  private void row(List<Column> of, List<Integer> widths, int k) {
    switch (r.form) {
      case JSON -> {
        List<String> names = headers(of);
        List<String> parts = new ArrayList<>();
        for (int c = 0; c < of.size(); c++) {
          parts.add(
              "\""
                  + names.get(c).replace("\"", "\\\"")
                  + "\":"
                  + json(of.get(c).cells()[k], of.get(c).text()));
        }
        lines.add("{" + String.join(",", parts) + "}");
      }
      case PROSE -> emit(0, k, prose(k));
      case KEY_EQUALS_BLANK, KEY_EQUALS_COMMA, KEY_COLON -> {
        if (r.twoLines) {
          for (Part part : List.of(Part.STAR, Part.PULSE)) {
            emit(0, k, partWord(part) + " " + keyed(half(of, part), k));
          }
        } else {
          emit(0, k, keyed(of, k));
        }
      }
      default -> {
        if (r.twoLines) {
          for (Part part : List.of(Part.STAR, Part.PULSE)) {
            List<Column> half = half(of, part);
            List<String> cells = new ArrayList<>(List.of(partWord(part)));
            half.forEach(c -> cells.add(c.cells()[k]));
            emit(0, k, joined(cells, widthsWithWord(half), false));
          }
        } else {
          List<String> cells = new ArrayList<>();
          of.forEach(c -> cells.add(c.cells()[k]));
          emit(0, k, joined(cells, widths, false));
        }
      }
    }
  }

  private String keyed(List<Column> of, int k) {
    List<String> names = headers(of);
    List<String> parts = new ArrayList<>();
    for (int c = 0; c < of.size(); c++) {
      String cell = of.get(c).cells()[k];
      if (cell.isEmpty()) {
        continue;
      }
      if (r.form == Form.KEY_EQUALS_BLANK) {
        parts.add(names.get(c) + "=" + cell.replace(' ', '_'));
      } else if (r.form == Form.KEY_EQUALS_COMMA) {
        parts.add(names.get(c) + "=" + cell.replace(',', ';'));
      } else {
        parts.add(names.get(c) + ": " + cell);
      }
    }
    return String.join(
        r.form == Form.KEY_EQUALS_BLANK
            ? " "
            : r.form == Form.KEY_EQUALS_COMMA ? "," : r.decimalComma ? "; " : ", ",
        parts);
  }

  private String prose(int k) {
    String unit = r.angle == Angle.ARCSEC && r.arcsecMark.equals("\"") ? "\"" : " " + angleUnit();
    Map<List<String>, String[]> cells = new LinkedHashMap<>();
    for (Column c : columns) {
      cells.put(c.name(), c.cells());
    }
    String raText = cells.get(offsetName(true))[k] + unit + " " + ways(true, ra[k] < 0 ? -1 : 1);
    String decText =
        cells.get(offsetName(false))[k] + unit + " " + ways(false, dec[k] < 0 ? -1 : 1);
    String time = r.lead == Lead.TIME_IN_BRACKETS ? "" : clock.text(k) + " ";
    String raPush = "";
    String decPush = "";
    if (r.hasPulses()) {
      String way = r.word("way");
      raPush =
          cells.get(pulseName(true))[k]
              + " "
              + r.pulseUnit
              + " "
              + cells.get(named(axis(true, r.pulseAxes, 1), way))[k];
      decPush =
          cells.get(pulseName(false))[k]
              + " "
              + r.pulseUnit
              + " "
              + cells.get(named(axis(false, r.pulseAxes, 1), way))[k];
    }
    String text =
        switch (r.tongue) {
          case GERMAN ->
              time
                  + "Bild "
                  + (rows[k] + 1)
                  + ": Stern "
                  + raText
                  + ", "
                  + decText
                  + (raPush.isEmpty() ? "" : "; Montierung geschoben " + raPush + ", " + decPush);
          case FRENCH ->
              time
                  + "pose "
                  + (rows[k] + 1)
                  + " : étoile à "
                  + raText
                  + ", "
                  + decText
                  + (raPush.isEmpty() ? "" : " ; monture poussée " + raPush + ", " + decPush);
          default ->
              time
                  + "frame "
                  + (rows[k] + 1)
                  + ": star "
                  + raText
                  + " and "
                  + decText
                  + " of its mark"
                  + (raPush.isEmpty() ? "" : "; mount pushed " + raPush + ", " + decPush);
        };
    return r.spell(text);
  }

  private void ending() {
    double[] a = java.util.Arrays.stream(ra).filter(v -> !Double.isNaN(v)).toArray();
    double[] d = java.util.Arrays.stream(dec).filter(v -> !Double.isNaN(v)).toArray();
    String meanA = local(fixed(r.raSign * mean(a) / unitArcsec, 3), true);
    String meanD = local(fixed(r.decSign * mean(d) / unitArcsec, 3), true);
    String rmsA = local(fixed(rms(a) / unitArcsec, 3), false);
    String rmsD = local(fixed(rms(d) / unitArcsec, 3), false);
    if (r.around.contains(Around.SECTIONS)) {
      lines.add("");
      lines.add("[" + r.word("section.end") + "]");
    }
    if (r.around.contains(Around.TOTALS) && r.form != Form.JSON) {
      lines.add(sentence("mean.line", "a", meanA, "b", meanD));
      lines.add(sentence("rms.line", "a", rmsA, "b", rmsD));
      lines.add(sentence("frames.line", "n", "" + night.size, "m", "" + (night.size - a.length)));
    }
    if (r.around.contains(Around.TOTALS_AS_ROW) && r.form.delimiter != null && !r.twoLines) {
      List<Column> of = shown();
      for (boolean mean : new boolean[] {true, false}) {
        List<String> cells = new ArrayList<>();
        for (Column c : of) {
          boolean isRa = c.group().isEmpty() && c.name().equals(offsetName(true));
          boolean isDec = c.group().isEmpty() && c.name().equals(offsetName(false));
          cells.add(isRa ? mean ? meanA : rmsA : isDec ? mean ? meanD : rmsD : filler());
        }
        cells.set(0, r.word(mean ? "mean" : "rms"));
        lines.add(joined(cells, widths(of), false));
      }
    }
  }

  private static double mean(double[] values) {
    return java.util.Arrays.stream(values).average().orElse(0);
  }

  private static double rms(double[] values) {
    double mean = mean(values);
    return Math.sqrt(
        java.util.Arrays.stream(values).map(v -> (v - mean) * (v - mean)).average().orElse(0));
  }

  // ---------------------------------------------------------------- truth

  private Truth truth(Set<OpenFact> open) {
    List<Truth.Frame> frames = new ArrayList<>();
    int n = lastRowRead();
    for (int k = 0; k < n; k++) {
      double raPulse = pulseOfFrame(true, k);
      double decPulse = pulseOfFrame(false, k);
      frames.add(
          new Truth.Frame(
              clock.seconds(k),
              ra[k],
              dec[k],
              raPulse,
              decPulse,
              night.run[rows[k]],
              Set.copyOf(told.get(k))));
    }
    Set<Event> kinds = EnumSet.noneOf(Event.class);
    told.forEach(kinds::addAll);
    boolean scaleKnown = r.scaleTold || r.bothUnits || open.contains(OpenFact.SCALE);
    boolean proseOrLetters = r.signsTold() || r.source == Source.PLACES_ONLY;
    Truth bare =
        new Truth(
            clock.start(),
            frames,
            proseOrLetters,
            proseOrLetters,
            r.hasPulses(),
            r.nextRow,
            scaleKnown ? OptionalDouble.of(night.arcsecPerPixel) : OptionalDouble.empty(),
            r.declinationTold
                ? OptionalDouble.of(night.declinationDegrees)
                : OptionalDouble.empty(),
            r.rateTold ? OptionalDouble.of(night.guideRate) : OptionalDouble.empty(),
            OptionalDouble.of(night.exposureSeconds),
            r.gainTold ? OptionalDouble.of(night.gain) : OptionalDouble.empty(),
            r.pierTold ? Optional.of(night.tubeWest ? "west" : "east") : Optional.empty(),
            kinds,
            "");
    return new Truth(
        bare.start(),
        frames,
        bare.raSignTold(),
        bare.decSignTold(),
        bare.hasPulses(),
        bare.pulsesInNextRow(),
        bare.arcsecPerPixel(),
        bare.declinationDegrees(),
        bare.guideRate(),
        bare.exposureSeconds(),
        bare.raGain(),
        bare.pierSide(),
        kinds,
        NativeTable.write(bare));
  }

  /** Rows that stand whole in the file: the last may be cut off. */
  private int lastRowRead() {
    return r.around.contains(Around.TRUNCATED) ? rows.length - 1 : rows.length;
  }

  private double pulseOfFrame(boolean isRa, int k) {
    if (!r.hasPulses()) {
      return Double.NaN;
    }
    if (!r.nextRow) {
      return pulseInRow(isRa, k);
    }
    return k + 1 < lastRowRead() && night.run[rows[k + 1]] == night.run[rows[k]]
        ? pulseInRow(isRa, k + 1)
        : Double.NaN;
  }

  private Map<OpenFact, String> answers(Set<OpenFact> open) {
    Map<OpenFact, String> answers = new EnumMap<>(OpenFact.class);
    for (OpenFact fact : open) {
      answers.put(
          fact,
          switch (fact) {
            case WHICH_IS_RA ->
                "the column "
                    + (columnOf(offsetName(true)) + 1)
                    + " ("
                    + styled(offsetName(true))
                    + ")";
            case WHICH_OFFSETS -> "the pair of star " + (swapped ? "B" : "A");
            case UNIT_OF_OFFSETS -> r.angle == Angle.PIXEL ? "px" : "arcsec";
            case SCALE -> fixed(night.arcsecPerPixel, 2);
            case PULSE_DIRECTION -> "against the offset";
            case CADENCE -> fixed(night.cadenceSeconds, 1) + " s";
            case CAMERA_ANGLE -> fixed(cameraDegrees, 1);
            case SET_POINT -> fixed(markX, 2) + " " + fixed(markY, 2);
            case CLOCK_ZONE -> clock.offset();
            case DATE -> clock.date();
            case DATE_ORDER -> clock.order();
          });
    }
    return Map.copyOf(answers);
  }

  private int columnOf(List<String> name) {
    List<Column> of = shown();
    for (int c = 0; c < of.size(); c++) {
      if (of.get(c).group().isEmpty() && of.get(c).name().equals(name)) {
        return c;
      }
    }
    return -1;
  }

  /** The instant from which seconds count, for tests of the clock. */
  Optional<Instant> start() {
    return clock.start();
  }
}
