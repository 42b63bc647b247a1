package io.github.roundstar.ingest.layout;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Units of offsets, shifts and pulses: as written, or as the size of the numbers allows. */
final class ColumnUnits {
  /** Something in brackets that is none of the known units, such as motor steps. */
  private static final String OTHER_UNIT = ".*[\\[(].+[\\])].*";

  private final Map<Meaning, ColumnData> columns;
  private final Map<Meaning, String> units = new EnumMap<>(Meaning.class);
  private final List<Decision> decisions;

  ColumnUnits(
      Map<Meaning, ColumnData> columns, List<SettingRule> settings, List<Decision> decisions) {
    this.columns = columns;
    this.decisions = decisions;
    columns.forEach(this::unit);
    boolean pixels = units.containsValue("px");
    boolean scale =
        told(settings, Setting.SCALE)
            || told(settings, Setting.FOCAL_LENGTH) && told(settings, Setting.PIXEL_SIZE);
    if (pixels && !scale) {
      decisions.add(
          Decision.open(
              "scale",
              "columns are in pixels, and no line tells the scale",
              "[[setting]]\nmeans = \"scale\"\nvalue = \"1.85\"   # arcsec per logged pixel"));
    }
  }

  private static boolean told(List<SettingRule> settings, Setting setting) {
    return settings.stream().anyMatch(rule -> rule.means() == setting);
  }

  Optional<String> of(Meaning meaning) {
    return Optional.ofNullable(units.get(meaning));
  }

  private void unit(Meaning meaning, ColumnData column) {
    if (meaning.units().isEmpty()) {
      return;
    }
    if (meaning.units().contains(column.unit)) {
      units.put(meaning, column.unit);
      decisions.add(
          Decision.certain(
              column.called(), meaning.word() + " in " + column.unit, "its name and unit"));
    } else if (meaning.isPulse() && areMillis(column) && !column.name.matches(OTHER_UNIT)) {
      units.put(meaning, "ms");
      decisions.add(
          Decision.certain(
              column.called(),
              meaning.word() + " in ms",
              "whole numbers up to "
                  + (long) largest(column)
                  + ": as seconds, pixels or arcsec too large for a correction"));
    } else {
      String choice =
          meaning.isPulse()
              ? "unit = \"ms\"   # or \"s\", \"px\", \"arcsec\""
              : "unit = \"arcsec\"   # or \"px\"";
      decisions.add(
          Decision.open(
              column.called(),
              meaning.word() + ", but neither its name nor a line beside it tells the unit",
              LayoutText.column(ColumnMeanings.rule(column, meaning)).strip() + "\n" + choice));
    }
  }

  /** A correction of a minute, of hundreds of pixels or arcseconds is none. */
  private static boolean areMillis(ColumnData column) {
    boolean whole = column.numeric == 0 || column.isWhole();
    return whole && largest(column) >= 60;
  }

  private static double largest(ColumnData column) {
    double largest = 0;
    for (String cell : column.cells) {
      double value = Numbers.of(cell.replaceAll("[A-Za-z ]", ""), false).orElse(0);
      largest = Math.max(largest, Math.abs(value));
    }
    return largest;
  }
}
