package io.github.roundstar.ingest.layout.choice;

import io.github.roundstar.ingest.layout.Decision;
import io.github.roundstar.ingest.layout.LayoutText;
import io.github.roundstar.ingest.layout.Meaning;
import io.github.roundstar.ingest.layout.Setting;
import io.github.roundstar.ingest.layout.SettingRule;
import io.github.roundstar.ingest.layout.evidence.Column;
import io.github.roundstar.ingest.layout.evidence.LogSentences;
import io.github.roundstar.ingest.layout.text.Words;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Units of offsets, shifts and pulses: as written, as told, or as the size of the numbers allows.
 */
final class ColumnUnits {
  private final Map<Meaning, String> units = new EnumMap<>(Meaning.class);
  private static final Meaning[][] PAIRS = {
    {Meaning.RA_OFFSET, Meaning.DEC_OFFSET},
    {Meaning.X_OFFSET, Meaning.Y_OFFSET},
    {Meaning.X_PLACE, Meaning.Y_PLACE},
    {Meaning.X_PLACE, Meaning.X_SET},
    {Meaning.Y_PLACE, Meaning.Y_SET},
    {Meaning.RA_PULSE, Meaning.DEC_PULSE},
    {Meaning.EAST_PULSE, Meaning.NORTH_PULSE},
    {Meaning.EAST_PULSE, Meaning.WEST_PULSE},
    {Meaning.NORTH_PULSE, Meaning.SOUTH_PULSE}
  };

  private final Map<Meaning, Column> unknown = new EnumMap<>(Meaning.class);
  private final LogSentences text;
  private final List<Decision> decisions;

  ColumnUnits(
      Map<Meaning, Column> columns,
      LogSentences text,
      List<SettingRule> settings,
      List<Decision> decisions) {
    this.text = text;
    this.decisions = decisions;
    shareUnits(columns);
    columns.forEach(this::unit);
    for (Meaning[] pair : PAIRS) {
      Meaning known = units.containsKey(pair[0]) ? pair[0] : pair[1];
      Meaning open = known == pair[0] ? pair[1] : pair[0];
      boolean follows = units.containsKey(known) && unknown.containsKey(open);
      if (follows && !hasOtherUnit(unknown.get(open))) {
        put(
            open,
            unknown.remove(open),
            units.get(known),
            "that of the other axis",
            Optional.empty());
      }
    }
    ask(false);
    ask(true);
    boolean pixels = units.containsValue("px");
    if (pixels && !SettingLines.scaleTold(settings)) {
      decisions.add(
          Decision.open(
              "scale",
              "columns are in pixels, and no line tells the scale",
              "[[setting]]\nmeans = \"scale\"\nvalue = \"1.85\"   # arcsec per logged pixel"));
    }
    boolean distance =
        units.entrySet().stream()
            .anyMatch(
                e -> e.getKey().isPulse() && Set.of("px", "arcsec", "mas").contains(e.getValue()));
    if (distance && !SettingLines.told(settings, Setting.GUIDE_RATE)) {
      decisions.add(
          Decision.open(
              "guide-rate",
              "pulses are told as a distance, and no line tells how fast they push",
              "[[setting]]\nmeans = \"guide-rate\"\nvalue = \"0.5\"   # times sidereal"));
    }
    if (distance && !SettingLines.told(settings, Setting.DECLINATION)) {
      decisions.add(
          Decision.open(
              "declination",
              "pulses are told as a distance on the sky, and no line tells the declination",
              "[[setting]]\nmeans = \"declination\"\nvalue = \"41.5\"   # degrees"));
    }
  }

  /** Both axes of one table come in one unit. */
  private static void shareUnits(Map<Meaning, Column> columns) {
    for (Meaning[] pair : PAIRS) {
      Column one = columns.get(pair[0]);
      Column two = columns.get(pair[1]);
      if (one != null && two != null && one.unit().isEmpty() != two.unit().isEmpty()) {
        boolean first = one.unit().isEmpty();
        if (hasOtherUnit(first ? one : two)) {
          continue;
        }
        (first ? one : two).unitTold((first ? two : one).unit());
      }
    }
  }

  Optional<String> of(Meaning meaning) {
    return Optional.ofNullable(units.get(meaning));
  }

  private void unit(Meaning meaning, Column column) {
    if (meaning.units().isEmpty()) {
      return;
    }
    Optional<String> told = text.unit(meaning.isPulse()).filter(meaning.units()::contains);
    if (meaning.units().contains(column.unit()) && !isTooFar(meaning, column, column.unit())) {
      put(meaning, column, column.unit(), column.unitFrom(), told);
    } else if (told.isPresent()
        && column.unit().isEmpty()
        && !isTooFar(meaning, column, told.get())) {
      put(meaning, column, told.get(), "a sentence", Optional.empty());
    } else if (meaning.isPulse() && endsInSeconds(column)) {
      put(meaning, column, "s", "the s at the end of its glued name", Optional.empty());
    } else if (meaning.isPulse() && areMillis(column)) {
      put(
          meaning,
          column,
          "ms",
          "whole numbers up to "
              + (long) column.largest()
              + ": as seconds, pixels or arcsec too large for a correction",
          Optional.empty());
    } else {
      unknown.put(meaning, column);
    }
  }

  /** By a unit, the star would usually be a minute of arc off: no guider follows it there. */
  private static boolean isTooFar(Meaning meaning, Column column, String unit) {
    double arcsec =
        switch (unit) {
          case "mas" -> 1000;
          case "arcsec", "px" -> 1;
          default -> Double.POSITIVE_INFINITY;
        };
    return !meaning.isPulse() && !column.isPlace() && column.scatter() > 60 * arcsec;
  }

  /** Names without gaps have their units without a gap as well; as milliseconds, too short. */
  private static boolean endsInSeconds(Column column) {
    String name = column.name.toLowerCase(Locale.ROOT);
    return Words.areGlued(name) && name.endsWith("s") && column.largest() < 5;
  }

  /** One question for the columns of one kind, since they have one unit. */
  private void ask(boolean pulses) {
    List<String> called = new ArrayList<>();
    List<String> lines = new ArrayList<>();
    unknown.forEach(
        (meaning, column) -> {
          if (meaning.isPulse() == pulses) {
            called.add(column.called());
            lines.add(
                LayoutText.column(column.rule(meaning)).strip()
                    + (pulses
                        ? "\nunit = \"ms\"   # or \"s\", \"px\", \"arcsec\""
                        : "\nunit = \"arcsec\"   # or \"px\""));
          }
        });
    if (!called.isEmpty()) {
      decisions.add(
          Decision.open(
              String.join(" and ", called),
              (pulses ? "pulses" : "offsets")
                  + ", but neither their names nor a line beside them tells the unit",
              String.join("\n", lines)));
    }
  }

  private void put(
      Meaning meaning, Column column, String unit, String because, Optional<String> told) {
    units.put(meaning, unit);
    String other =
        told.filter(any -> !any.equals(unit))
            .map(any -> any + ", which a sentence tells")
            .orElseGet(() -> asOther(meaning, column, unit));
    decisions.add(
        Decision.certain(
                column.called(),
                String.format(Locale.ROOT, "%s in %s", meaning.word(), unit),
                because)
            .before(other));
  }

  /** What the largest value would be in the unit that comes next. */
  private static String asOther(Meaning meaning, Column column, String unit) {
    double largest = column.largest();
    return meaning.isPulse()
        ? switch (unit) {
          case "ms" ->
              String.format(Locale.ROOT, "s, by which the longest pulse is %.4g s", largest);
          case "s" ->
              String.format(Locale.ROOT, "ms, by which the longest pulse is %.4g ms", largest);
          default -> String.format(Locale.ROOT, "ms, by which the longest is %.4g ms", largest);
        }
        : String.format(
            Locale.ROOT,
            "%s, by which the largest is %.4g %1$s",
            unit.equals("px") ? "arcsec" : "px",
            largest);
  }

  /**
   * A correction of a minute, of hundreds of pixels or arcseconds is none; something in brackets
   * that is no unit known here, such as motor steps, is another unit.
   */
  private static boolean areMillis(Column column) {
    return column.isWhole() && column.largest() >= 60 && !hasOtherUnit(column);
  }

  private static boolean hasOtherUnit(Column column) {
    return column.unit().isEmpty() && column.name.matches(".*[\\[(].+[\\])].*");
  }
}
