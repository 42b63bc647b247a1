package io.github.roundstar.ingest;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.ingest.layout.ColumnRule;
import io.github.roundstar.ingest.layout.Direction;
import io.github.roundstar.ingest.layout.Layout;
import io.github.roundstar.ingest.layout.Meaning;
import io.github.roundstar.ingest.layout.Setting;
import io.github.roundstar.ingest.layout.text.LayoutLines;
import io.github.roundstar.ingest.layout.text.Numbers;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Offsets and pulses of one run in the model's units and signs. */
final class LayoutAxes {
  private final String file;
  private final Layout layout;
  private final LayoutSettings settings;
  private final Map<Meaning, Double> factors = new EnumMap<>(Meaning.class);
  private final Map<Meaning, ColumnRule> rules = new EnumMap<>(Meaning.class);
  private double setX;
  private double setY;
  private boolean moved = true;
  private final double raRadians;
  private final double decRadians;

  LayoutAxes(String file, Layout layout, LayoutSettings settings) throws FormatException {
    this.file = file;
    this.layout = layout;
    this.settings = settings;
    for (ColumnRule column : layout.columns()) {
      rules.put(column.means(), column);
      factors.put(column.means(), unit(column, column.unit().orElse("")) * sign(column));
    }
    boolean camera = layout.alongCamera();
    OptionalDouble told = camera ? settings.cameraDegrees() : OptionalDouble.empty();
    double written = layout.camera().raDegrees().orElse(0);
    double ra = told.orElse(written);
    double dec = ra + layout.camera().decDegrees().orElse(written + 90) - written;
    double turn = camera && !settings.angleToldForRun() && turned("the camera") ? 180 : 0;
    raRadians = Math.toRadians(ra + turn);
    decRadians = Math.toRadians(dec + turn);
  }

  private double unit(ColumnRule column, String unit) throws FormatException {
    boolean distance = !unit.equals("ms") && !unit.equals("s") && !unit.equals("us");
    double factor =
        switch (unit) {
          case "px" -> scale(column);
          case "s" -> 1000;
          case "us", "mas" -> 1e-3;
          case "arcmin" -> 60;
          default -> 1;
        };
    if (!column.means().isPulse() || !distance) {
      return factor;
    }
    double rate =
        settings
            .guideArcsecPerSecond()
            .orElseThrow(() -> needs(column, unit, "the guide rate", "guide-rate", "0.5"));
    double cosine = 1;
    if (!column.means().isDec()) {
      double dec =
          settings
              .declinationDegrees()
              .orElseThrow(() -> needs(column, unit, "the declination", "declination", "41.5"));
      cosine = Math.cos(Math.toRadians(dec));
    }
    return factor * 1000 / (rate * Math.max(cosine, 1e-3));
  }

  private double scale(ColumnRule column) throws FormatException {
    return settings
        .arcsecPerPixel()
        .orElseThrow(() -> needs(column, "px", "the scale", "scale", "1.85"));
  }

  private FormatException needs(
      ColumnRule column, String unit, String what, String setting, String example) {
    return new FormatException(
        file,
        0,
        column.called() + " is in " + unit + ", but neither log nor layout tells " + what,
        String.format(
            Locale.ROOT,
            "add to the layout: [[setting]] means = \"%s\" value = \"%s\"",
            setting,
            example));
  }

  private int sign(ColumnRule column) throws FormatException {
    int turn = column.turnsWithPier() && turned(column.called()) ? -1 : 1;
    return turn * column.positive().map(Direction::sign).orElse(1);
  }

  /** Whether the tube is on the other side of the pier than the one the layout is written for. */
  private boolean turned(String what) throws FormatException {
    if (layout.camera().pierSide().isEmpty()) {
      return false;
    }
    return layout.camera().pierSide().get()
        != settings
            .side()
            .orElseThrow(
                () ->
                    new FormatException(
                        file,
                        0,
                        what + " turns with the pier side, which the log does not tell",
                        "add to the layout: [[setting]] means = \"pier-side\" value = \"west\""));
  }

  /** Offsets east and north [arcsec]; NaN where missing. */
  double[] offsetArcsec(LayoutLines lines) throws CellFault {
    if (!layout.alongCamera()) {
      return new double[] {along(lines, Meaning.RA_OFFSET), along(lines, Meaning.DEC_OFFSET)};
    }
    boolean places = layout.has(Meaning.X_PLACE);
    double x = along(lines, places ? Meaning.X_PLACE : Meaning.X_OFFSET);
    double y = along(lines, places ? Meaning.Y_PLACE : Meaning.Y_OFFSET);
    if (places) {
      takeSetPoint(lines, x, y);
      x -= setX;
      y -= setY;
    }
    return new double[] {
      x * Math.cos(raRadians) + y * Math.sin(raRadians),
      x * Math.cos(decRadians) + y * Math.sin(decRadians)
    };
  }

  /** Where the row tells no set point, it is the first place that was measured after a move. */
  private void takeSetPoint(LayoutLines lines, double x, double y) throws CellFault {
    boolean told = layout.has(Meaning.X_SET) && layout.has(Meaning.Y_SET);
    if (told) {
      setX = along(lines, Meaning.X_SET);
      setY = along(lines, Meaning.Y_SET);
    } else if (settings.text(Setting.SET_X).isPresent()
        && settings.text(Setting.SET_Y).isPresent()) {
      setX = mark(lines, Setting.SET_X) * factors.get(Meaning.X_PLACE);
      setY = mark(lines, Setting.SET_Y) * factors.get(Meaning.Y_PLACE);
    } else if (moved && Double.isFinite(x) && Double.isFinite(y)) {
      setX = x;
      setY = y;
      moved = false;
    }
  }

  /** The set point as a line told it last. */
  private double mark(LayoutLines lines, Setting setting) throws CellFault {
    String told = lines.peekTold().get(setting);
    return number(told == null ? settings.text(setting).orElse("") : told);
  }

  /** The star moves to another set point: its place after that is the new one. */
  void newSetPoint() {
    moved = true;
  }

  /** A column in the model's unit and sign; NaN where missing. */
  double along(LayoutLines lines, Meaning meaning) throws CellFault {
    Optional<String> cell = lines.cell(meaning);
    if (cell.isEmpty()) {
      return Double.NaN;
    }
    ColumnRule rule = column(meaning);
    Meaning letter = meaning.isDec() ? Meaning.DEC_OFFSET_LETTER : Meaning.RA_OFFSET_LETTER;
    boolean offset = meaning == Meaning.RA_OFFSET || meaning == Meaning.DEC_OFFSET;
    if (offset && rules.containsKey(letter)) {
      PulseText sized = PulseText.of(cell.get(), lines.cell(letter), rule, rules.get(letter));
      return value(sized.number(), rule) * (sized.sign() == 0 ? 1 : sized.sign());
    }
    if (rule.toward().isEmpty()) {
      return value(cell.get(), rule);
    }
    PulseText lettered = PulseText.of(cell.get(), Optional.empty(), rule, rule);
    return value(lettered.number(), rule) * (lettered.sign() == 0 ? 1 : lettered.sign());
  }

  /** The pulse of an axis, east or north positive [ms]; NaN where missing. */
  double pulseMillis(LayoutLines lines, boolean dec) throws CellFault {
    Meaning toward = dec ? Meaning.NORTH_PULSE : Meaning.EAST_PULSE;
    Meaning away = dec ? Meaning.SOUTH_PULSE : Meaning.WEST_PULSE;
    if (layout.has(toward) || layout.has(away)) {
      return orZero(along(lines, toward)) - orZero(along(lines, away));
    }
    Meaning signed = dec ? Meaning.DEC_PULSE : Meaning.RA_PULSE;
    Optional<String> cell = lines.cell(signed);
    if (cell.isEmpty()) {
      return Double.NaN;
    }
    Meaning letter = dec ? Meaning.DEC_LETTER : Meaning.RA_LETTER;
    PulseText pulse =
        PulseText.of(cell.get(), lines.cell(letter), column(signed), codes(letter, signed));
    boolean direction = pulse.sign() != 0 || column(signed).positive().isPresent();
    if (!direction && number(pulse.number()) != 0) {
      throw new CellFault(
          RowProblem.TEXT_IN_NUMBER,
          "found a pulse '" + CellFault.shortened(cell.get()) + "' without a direction");
    }
    return value(pulse.number(), column(signed)) * (pulse.sign() == 0 ? 1 : pulse.sign());
  }

  /** A number of a column in the model's unit and sign. */
  private double value(String number, ColumnRule rule) throws CellFault {
    return number(number) * factors.get(rule.means()) * written(number, rule);
  }

  /**
   * By how much the unit that is written in a field differs from that of its column: columns may
   * change places within a log, and a field with its unit says what it is.
   */
  private double written(String number, ColumnRule rule) throws CellFault {
    if (number.isEmpty() || Character.isDigit(number.charAt(number.length() - 1))) {
      return 1;
    }
    String own = rule.unit().orElse("");
    Optional<String> unit = Numbers.unit(number).filter(rule.means().units()::contains);
    if (unit.isEmpty() || own.isEmpty() || unit.get().equals(own)) {
      return 1;
    }
    try {
      return unit(rule, unit.get()) / unit(rule, own);
    } catch (FormatException e) {
      throw new CellFault(
          RowProblem.TEXT_IN_NUMBER,
          "found '" + CellFault.shortened(number) + "' in a column of " + own);
    }
  }

  private ColumnRule codes(Meaning letter, Meaning signed) {
    return rules.getOrDefault(letter, column(signed));
  }

  private ColumnRule column(Meaning meaning) {
    return rules.get(meaning);
  }

  private static double orZero(double value) {
    return Double.isNaN(value) ? 0 : value;
  }

  private double number(String text) throws CellFault {
    return CellFault.number(text, layout.text().decimalComma());
  }
}
