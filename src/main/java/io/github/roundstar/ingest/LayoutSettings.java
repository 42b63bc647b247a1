package io.github.roundstar.ingest;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.ingest.layout.Direction;
import io.github.roundstar.ingest.layout.Layout;
import io.github.roundstar.ingest.layout.Setting;
import io.github.roundstar.ingest.layout.SettingRule;
import io.github.roundstar.ingest.layout.text.ClockText;
import io.github.roundstar.ingest.layout.text.Numbers;
import io.github.roundstar.ingest.layout.text.Words;
import io.github.roundstar.model.PierSide;
import io.github.roundstar.model.SkySense;
import io.github.roundstar.sky.SiderealRate;
import io.github.roundstar.sky.SiderealTime;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a log and its layout say of the run that begins. A setting holds until the log tells
 * another; hour angle, pier side and start hold for the run they were told for.
 */
final class LayoutSettings {
  /** Arcseconds of a radian over 1000: micrometres over millimetres into arcsec. */
  private static final double ARCSEC_PER_MILLIRADIAN = 206.264806;

  private static final List<Setting> OWN_RUN =
      List.of(Setting.SCALE, Setting.BINNING, Setting.DECLINATION, Setting.PIER_SIDE);

  private final String file;
  private final Layout layout;
  private final Map<Setting, String> known = new EnumMap<>(Setting.class);
  private final Map<Setting, String> units = new EnumMap<>(Setting.class);
  private Optional<PierSide> side = Optional.empty();
  private boolean angleTold;
  private boolean begun;

  LayoutSettings(String file, Layout layout) {
    this.file = file;
    this.layout = layout;
    for (SettingRule rule : layout.settings()) {
      rule.value().ifPresent(value -> known.put(rule.means(), value));
      rule.unit().ifPresent(unit -> units.put(rule.means(), unit));
    }
  }

  /** Whether what the lines told makes a run of its own. */
  boolean changes(Map<Setting, String> told) {
    return OWN_RUN.stream()
        .anyMatch(key -> told.containsKey(key) && !told.get(key).equals(known.get(key)));
  }

  /** Takes over what the lines told and gives what holds for the run that begins. */
  HeaderMeta.Values begin(Map<Setting, String> told, boolean flip, LayoutTimes times, TableRow row)
      throws FormatException {
    known.putAll(told);
    Map<MetaKey, Object> given = new EnumMap<>(MetaKey.class);
    put(given, MetaKey.GUIDE_SCALE, scale());
    put(given, MetaKey.DECLINATION, number(Setting.DECLINATION));
    put(given, MetaKey.SITE_LATITUDE, number(Setting.LATITUDE));
    put(given, MetaKey.GUIDE_RATE, guideRate());
    put(given, MetaKey.GUIDE_EXPOSURE, exposure());
    layout.time().mark().ifPresent(mark -> given.put(MetaKey.TIME_MARK, mark));
    if (layout.pulseInNextRow()) {
      given.put(MetaKey.PULSE_ROW, "next");
    }
    takeSide(told, flip, given);
    angleTold = told.containsKey(Setting.CAMERA_ANGLE);
    put(given, MetaKey.HOUR_ANGLE, hourAngle(told, times, row));
    if (toldNow(told, Setting.HOUR_ANGLE) && toldNow(told, Setting.RIGHT_ASCENSION)) {
      put(given, MetaKey.RIGHT_ASCENSION, angle(Setting.RIGHT_ASCENSION, true));
      put(given, MetaKey.SITE_LONGITUDE, number(Setting.LONGITUDE));
    }
    start(times, row).ifPresent(start -> given.put(MetaKey.START, start));
    begun = true;
    return new HeaderMeta.Values(
        given, new SkySense(layout.senseKnown(false), layout.senseKnown(true)));
  }

  private void takeSide(Map<Setting, String> told, boolean flip, Map<MetaKey, Object> given)
      throws FormatException {
    if (told.containsKey(Setting.PIER_SIDE) || !begun && known.containsKey(Setting.PIER_SIDE)) {
      String text = known.get(Setting.PIER_SIDE).toLowerCase(Locale.ROOT);
      Optional<Direction> named = Words.direction(text);
      boolean east = named.isEmpty() ? text.startsWith("e") : named.get() == Direction.EAST;
      boolean west = named.isEmpty() ? text.startsWith("w") : named.get() == Direction.WEST;
      if (!east && !west) {
        throw fault(Setting.PIER_SIDE, "a word for east or west");
      }
      side = Optional.of(east ? PierSide.EAST : PierSide.WEST);
      given.put(MetaKey.PIER_SIDE, east ? "east" : "west");
    } else if (flip) {
      side = side.map(s -> s == PierSide.EAST ? PierSide.WEST : PierSide.EAST);
    }
  }

  private Optional<OffsetDateTime> start(LayoutTimes times, TableRow row) {
    if (times.absolute()) {
      // Of use for the offset of the log's clock only.
      return times.offset().map(offset -> instant(row).atOffset(offset));
    }
    return Optional.ofNullable(known.get(Setting.START))
        .flatMap(text -> times.instant(text, Optional.ofNullable(known.get(Setting.DATE))));
  }

  private static Instant instant(TableRow row) {
    return Instant.ofEpochSecond(0, row.epochNanos);
  }

  private boolean toldNow(Map<Setting, String> told, Setting setting) {
    return told.containsKey(setting) || !begun && known.containsKey(setting);
  }

  private OptionalDouble hourAngle(Map<Setting, String> told, LayoutTimes times, TableRow row)
      throws FormatException {
    if (toldNow(told, Setting.HOUR_ANGLE)) {
      OptionalDouble hours = angle(Setting.HOUR_ANGLE, true);
      return hours.isPresent() ? OptionalDouble.of(HourAngle.later(hours.getAsDouble(), 0)) : hours;
    }
    OptionalDouble ra = angle(Setting.RIGHT_ASCENSION, true);
    OptionalDouble longitude = number(Setting.LONGITUDE);
    Optional<Instant> at =
        times.absolute()
            ? Optional.of(instant(row))
            : start(times, row)
                .map(start -> start.toInstant().plusNanos(Math.round(row.timeSeconds * 1e9)));
    if (ra.isEmpty() || longitude.isEmpty() || at.isEmpty()) {
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(
        SiderealTime.hourAngleHours(at.get(), longitude.getAsDouble(), ra.getAsDouble()));
  }

  private OptionalDouble scale() throws FormatException {
    OptionalDouble scale = number(Setting.SCALE);
    OptionalDouble focal = number(Setting.FOCAL_LENGTH);
    OptionalDouble pixel = number(Setting.PIXEL_SIZE);
    if (scale.isPresent() || focal.isEmpty() || pixel.isEmpty()) {
      return scale;
    }
    double binning = number(Setting.BINNING).orElse(1);
    return OptionalDouble.of(
        ARCSEC_PER_MILLIRADIAN * pixel.getAsDouble() * binning / focal.getAsDouble());
  }

  private OptionalDouble guideRate() throws FormatException {
    OptionalDouble rate = number(Setting.GUIDE_RATE);
    double factor =
        switch (units.getOrDefault(Setting.GUIDE_RATE, "sidereal")) {
          case "percent" -> 0.01;
          case "arcsec/s" -> 1 / SiderealRate.ARCSEC_PER_SECOND;
          default -> 1;
        };
    return rate.isPresent() ? OptionalDouble.of(rate.getAsDouble() * factor) : rate;
  }

  private OptionalDouble exposure() throws FormatException {
    OptionalDouble exposure = number(Setting.EXPOSURE);
    boolean millis = units.getOrDefault(Setting.EXPOSURE, "s").equals("ms");
    return exposure.isPresent() && millis
        ? OptionalDouble.of(exposure.getAsDouble() / 1000)
        : exposure;
  }

  /** A number, decimal or in degrees, minutes and seconds. */
  private OptionalDouble number(Setting setting) throws FormatException {
    String text = known.get(setting);
    if (text == null || text.isEmpty()) {
      return OptionalDouble.empty();
    }
    boolean comma = layout.text().decimalComma();
    OptionalDouble value = Numbers.sexagesimal(text, comma);
    value = value.isPresent() ? value : Numbers.sexagesimal(text, !comma); // the header may differ
    if (value.isEmpty()) {
      throw fault(setting, "a number");
    }
    return value;
  }

  private OptionalDouble angle(Setting setting, boolean hours) throws FormatException {
    OptionalDouble value = number(setting);
    boolean degrees = hours && units.getOrDefault(setting, "h").equals("deg");
    return value.isPresent() && degrees ? OptionalDouble.of(value.getAsDouble() / 15) : value;
  }

  private void put(Map<MetaKey, Object> given, MetaKey key, OptionalDouble value)
      throws FormatException {
    if (value.isPresent()) {
      if (!key.allows(value.getAsDouble())) {
        throw new FormatException(
            file,
            0,
            "the log tells " + key.key() + " = " + value.getAsDouble() + ", which cannot be",
            "check pattern and unit of the setting in the layout");
      }
      given.put(key, value.getAsDouble());
    }
  }

  private FormatException fault(Setting setting, String expected) {
    return new FormatException(
        file,
        0,
        setting.word() + ": found '" + known.get(setting) + "', expected " + expected,
        "correct the pattern or the value in the layout");
  }

  /**
   * The date that the lines, or the layout, tell for the next row; {@code null}: none fresh. A row
   * much earlier in the day than a start is of the day after it.
   */
  Optional<LocalDate> date(Map<Setting, String> told, double seconds) {
    if (told == null) {
      return Optional.empty();
    }
    Map<Setting, String> all = told;
    if (!begun) {
      all = new EnumMap<>(Setting.class);
      all.putAll(known);
      all.putAll(told);
    }
    for (Setting setting : List.of(Setting.DATE, Setting.START)) {
      Optional<ClockText> read =
          Optional.ofNullable(all.get(setting))
              .map(text -> ClockText.of(text, layout.time().order()))
              .filter(clock -> clock.date().isPresent());
      if (read.isPresent()) {
        double start = read.get().time().map(LocalTime::toSecondOfDay).orElse(0);
        return read.get().date().map(date -> date.plusDays(seconds < start - 43_200 ? 1 : 0));
      }
    }
    return Optional.empty();
  }

  /** A setting's text as it holds for the run. */
  Optional<String> text(Setting setting) {
    return Optional.ofNullable(known.get(setting));
  }

  OptionalDouble arcsecPerPixel() throws FormatException {
    return scale();
  }

  OptionalDouble guideArcsecPerSecond() throws FormatException {
    OptionalDouble rate = guideRate();
    return rate.isPresent()
        ? OptionalDouble.of(rate.getAsDouble() * SiderealRate.ARCSEC_PER_SECOND)
        : rate;
  }

  OptionalDouble declinationDegrees() throws FormatException {
    return number(Setting.DECLINATION);
  }

  /** The camera's angle, where the log tells it. */
  OptionalDouble cameraDegrees() throws FormatException {
    return number(Setting.CAMERA_ANGLE);
  }

  /** Whether the angle was told for this very run, so that it needs no turning. */
  boolean angleToldForRun() {
    return angleTold;
  }

  Optional<PierSide> side() {
    return side;
  }
}
