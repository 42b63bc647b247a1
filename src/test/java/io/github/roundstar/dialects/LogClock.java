package io.github.roundstar.dialects;

import io.github.roundstar.dialects.Recipe.Clock;
import io.github.roundstar.dialects.Recipe.Zone;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** The clock of an invented log: writes the times of its rows, and knows what was written. */
final class LogClock {

  private final Recipe r;
  private final int[] run;
  private final long startEpochSeconds;
  private final String zoneName;
  private final int offsetHours;
  private final double[] seconds;
  private final double[] shownSeconds;
  private final String[] texts;
  private final String[] dates;
  private final Map<List<String>, String[]> columns = new LinkedHashMap<>();

  LogClock(Recipe recipe, Night night, int[] rows) {
    r = recipe;
    LocalDate day =
        LocalDate.of(
            2026 + r.random.nextInt(2),
            1 + r.random.nextInt(12),
            1 + r.random.nextInt(r.clock == Clock.SLASHES_UNTOLD ? 11 : 28));
    if (r.clock == Clock.SLASHES_TOLD && day.getDayOfMonth() < 13 && r.random.nextBoolean()) {
      day = day.plusDays(13);
    }
    boolean summer = day.getMonthValue() >= 4 && day.getMonthValue() <= 9;
    switch (r.zone) {
      case OFFSET, OFFSET_IN_HEADER, UNTOLD -> {
        offsetHours = r.pick(1, 2, -5, 3, -3, 1);
        String hours =
            String.format(
                Locale.ROOT, "%s%02d:00", offsetHours < 0 ? "-" : "+", Math.abs(offsetHours));
        zoneName =
            r.pick(
                hours,
                "UTC" + (offsetHours < 0 ? "" : "+") + offsetHours,
                "UT" + (offsetHours < 0 ? "" : "+") + offsetHours);
      }
      case NAME_IN_HEADER -> {
        zoneName =
            summer ? r.pick("CEST", "MESZ", "EEST") : r.pick("CET", "MEZ", "EET", "EST", "PST");
        offsetHours =
            switch (zoneName) {
              case "CET", "MEZ" -> 1;
              case "EEST" -> 3;
              case "EST" -> -5;
              case "PST" -> -8;
              default -> 2;
            };
      }
      default -> {
        offsetHours = 0;
        zoneName = r.pick("UTC", "UTC", "GMT", "UT");
      }
    }
    LocalTime begin =
        LocalTime.of(20 + r.random.nextInt(3), r.random.nextInt(60), r.random.nextInt(60));
    if (r.clock == Clock.TIME_ONLY
        || r.clock == Clock.TWELVE_HOURS_TIME_ONLY
        || r.clock == Clock.DATE_AND_TIME) {
      double untilMidnight = (0.2 + 0.5 * r.random.nextDouble()) * night.seconds[night.size - 1];
      begin = LocalTime.ofSecondOfDay(86_400 - (long) untilMidnight);
    }
    startEpochSeconds = LocalDateTime.of(day, begin).toEpochSecond(ZoneOffset.ofHours(offsetHours));
    int n = rows.length;
    run = new int[n];
    seconds = new double[n];
    shownSeconds = new double[n];
    texts = new String[n];
    dates = new String[n];
    double runStart = 0;
    for (int k = 0; k < n; k++) {
      run[k] = night.run[rows[k]];
      double t = night.seconds[rows[k]] + night.cadenceSeconds;
      if (k > 0 && run[k] != run[k - 1]) {
        runStart = Math.floor(t - night.cadenceSeconds);
      }
      if (r.clock == Clock.FRAMES_ONLY || r.clock == Clock.FRAMES_AND_CADENCE) {
        seconds[k] = (rows[k] + 1) * night.cadenceSeconds;
        texts[k] = "" + (rows[k] + 1);
        continue;
      }
      double since = r.clock == Clock.ELAPSED_RESTART ? runStart : 0;
      shownSeconds[k] = t - since;
      write(k, t, since);
    }
    String zoned = r.zone == Zone.UTC_IN_NAME ? "UTC" : "";
    if (r.clock == Clock.DATE_AND_TIME) {
      columns.put(List.of(r.word("date")), dates);
    }
    String key =
        r.clock.elapsed
            ? r.clock == Clock.FRAMES_ONLY || r.clock == Clock.FRAMES_AND_CADENCE
                ? "frame"
                : "elapsed"
            : "time";
    String whole = r.phrases == null ? null : timePhrase(key);
    String word = whole == null ? r.word(key) : whole;
    columns.put(zoned.isEmpty() ? List.of(word) : List.of(word, zoned), texts);
  }

  /** A whole phrase for the times; null where none fits. */
  private String timePhrase(String key) {
    boolean seconds = r.clock == Clock.ELAPSED_SECONDS || r.clock == Clock.ELAPSED_RESTART;
    if (key.equals("elapsed")) {
      return seconds ? r.paired("elapsed", "time-elapsed-seconds", "s") : null;
    }
    boolean ofClock = key.equals("time") && !r.clock.universal;
    boolean utc = r.zone == Zone.Z || r.zone == Zone.UTC_IN_NAME || r.zone == Zone.UTC_IN_HEADER;
    return ofClock ? r.paired("time", utc ? "time-utc" : "time-local", "") : null;
  }

  private double rounded(double value, int decimals) {
    double scale = Math.pow(10, decimals);
    return Math.round(value * scale) / scale;
  }

  private void write(int k, double t, double since) {
    int d = r.clockDecimals;
    switch (r.clock) {
      case ELAPSED_SECONDS, ELAPSED_RESTART -> {
        int decimals = Math.max(1, d);
        texts[k] = comma(Digits.fixed(t - since, decimals));
        seconds[k] = since + rounded(t - since, decimals);
      }
      case ELAPSED_MILLIS -> {
        texts[k] = "" + Math.round(t * 1000);
        seconds[k] = Math.round(t * 1000) / 1000.0;
      }
      case ELAPSED_MINUTES -> {
        texts[k] = comma(Digits.fixed(t / 60, 4));
        seconds[k] = rounded(t / 60, 4) * 60;
      }
      case ELAPSED_HMS -> {
        double q = rounded(t, d);
        seconds[k] = q;
        long whole = (long) Math.floor(q + 1e-9);
        texts[k] =
            whole / 3600
                + ":"
                + Digits.two(whole / 60 % 60)
                + ":"
                + Digits.two(whole % 60)
                + fraction(q - whole, d);
      }
      case UNIX_SECONDS -> {
        double q = rounded(t, d);
        seconds[k] = q;
        long whole = (long) Math.floor(q + 1e-9);
        texts[k] = (startEpochSeconds + whole) + fraction(q - whole, d);
      }
      case UNIX_MILLIS -> {
        texts[k] = "" + (startEpochSeconds * 1000 + Math.round(t * 1000));
        seconds[k] = Math.round(t * 1000) / 1000.0;
      }
      case JULIAN, MODIFIED_JULIAN -> {
        double zero = r.clock == Clock.JULIAN ? 2440587.5 : 40587;
        String text =
            new java.math.BigDecimal(startEpochSeconds + t)
                .divide(new java.math.BigDecimal(86400), 8, java.math.RoundingMode.HALF_EVEN)
                .add(new java.math.BigDecimal(zero))
                .toPlainString();
        texts[k] = comma(text);
        seconds[k] =
            new java.math.BigDecimal(text)
                .subtract(new java.math.BigDecimal(zero))
                .multiply(new java.math.BigDecimal(86400))
                .subtract(new java.math.BigDecimal(startEpochSeconds))
                .doubleValue();
      }
      default -> {
        double q = rounded(t, d);
        seconds[k] = q;
        long whole = (long) Math.floor(q + 1e-9);
        LocalDateTime local =
            LocalDateTime.ofEpochSecond(
                startEpochSeconds + whole, 0, ZoneOffset.ofHours(offsetHours));
        dates[k] = isoDate(local);
        texts[k] = calendar(local, fraction(q - whole, d));
      }
    }
  }

  private String comma(String text) {
    return r.decimalComma ? text.replace('.', ',') : text;
  }

  private String fraction(double part, int decimals) {
    if (decimals == 0) {
      return "";
    }
    return comma(Digits.fixed(Math.abs(part), decimals).substring(1));
  }

  private static String isoDate(LocalDateTime local) {
    return local.getYear()
        + "-"
        + Digits.two(local.getMonthValue())
        + "-"
        + Digits.two(local.getDayOfMonth());
  }

  private static String twelve(LocalDateTime local, String fraction) {
    int hour = local.getHour() % 12 == 0 ? 12 : local.getHour() % 12;
    return hour
        + ":"
        + Digits.two(local.getMinute())
        + ":"
        + Digits.two(local.getSecond())
        + fraction
        + (local.getHour() < 12 ? " AM" : " PM");
  }

  private String calendar(LocalDateTime local, String fraction) {
    String time =
        Digits.two(local.getHour())
            + ":"
            + Digits.two(local.getMinute())
            + ":"
            + Digits.two(local.getSecond())
            + fraction;
    String suffix =
        switch (r.zone) {
          case Z ->
              r.clock == Clock.ISO || r.clock == Clock.COMPACT || r.clock == Clock.ISO_BLANK
                  ? "Z"
                  : "";
          case OFFSET -> offset();
          default -> "";
        };
    return switch (r.clock) {
      case ISO -> isoDate(local) + "T" + time + suffix;
      case ISO_BLANK -> isoDate(local) + " " + time + suffix;
      case COMPACT ->
          isoDate(local).replace("-", "")
              + "T"
              + Digits.two(local.getHour())
              + Digits.two(local.getMinute())
              + Digits.two(local.getSecond())
              + fraction
              + suffix;
      case DATE_AND_TIME, TIME_ONLY -> time;
      case TWELVE_HOURS -> isoDate(local) + " " + twelve(local, fraction);
      case TWELVE_HOURS_TIME_ONLY -> twelve(local, fraction);
      case SLASHES_TOLD, SLASHES_UNTOLD ->
          slashes()
                  .replace("uuuu", "" + local.getYear())
                  .replace("MM", Digits.two(local.getMonthValue()))
                  .replace("dd", Digits.two(local.getDayOfMonth()))
              + " "
              + time;
      case DOTS ->
          Digits.two(local.getDayOfMonth())
              + "."
              + Digits.two(local.getMonthValue())
              + "."
              + local.getYear()
              + " "
              + time;
      case TEXT_MONTH -> {
        String month =
            r.spell(r.tongue.words("months").get(0).split(" ")[local.getMonthValue() - 1]);
        String longMonth =
            r.spell(r.tongue.words("longmonths").get(0).split(" ")[local.getMonthValue() - 1]);
        yield switch (r.tongue) {
          case GERMAN ->
              local.getDayOfMonth() + ". " + longMonth + " " + local.getYear() + " " + time;
          case FRENCH, DUTCH, ITALIAN ->
              local.getDayOfMonth() + " " + longMonth + " " + local.getYear() + " " + time;
          case SPANISH, PORTUGUESE ->
              local.getDayOfMonth() + "-" + month + "-" + local.getYear() + " " + time;
          default -> local.getDayOfMonth() + " " + month + " " + local.getYear() + " " + time;
        };
      }
      default -> throw new IllegalStateException("no calendar in " + r.clock);
    };
  }

  /** American order only in English. */
  private String slashes() {
    return r.chosen.computeIfAbsent(
        "slashes",
        key -> r.tongue == Tongue.ENGLISH && r.random.nextBoolean() ? "MM/dd/uuuu" : "dd/MM/uuuu");
  }

  String order() {
    return slashes().replace("uuuu", "YYYY").replace("dd", "DD");
  }

  /** Columns that hold the time, by their words. */
  Map<List<String>, String[]> columns() {
    return columns;
  }

  /** Unit of the time column, empty where its values show what it is. */
  String unit() {
    return switch (r.clock) {
      case ELAPSED_SECONDS, ELAPSED_RESTART -> "s";
      case ELAPSED_MILLIS -> "ms";
      case ELAPSED_MINUTES -> "min";
      case JULIAN -> "JD";
      case MODIFIED_JULIAN -> "MJD";
      default -> "";
    };
  }

  /** Lines of the log's head that belong to the clock: key of the word, text. */
  Map<String, String> settings() {
    Map<String, String> map = new LinkedHashMap<>();
    if (r.clock.elapsed && r.dateInTitle && r.clock != Clock.ELAPSED_RESTART) {
      map.put(
          "began",
          LocalDateTime.ofEpochSecond(startEpochSeconds, 0, ZoneOffset.ofHours(offsetHours))
                  .format(DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss", Locale.ROOT))
              + zoneSuffix());
    } else if (!r.clock.dated && !r.clock.elapsed && r.dateInTitle) {
      map.put(
          "date",
          isoDate(
              LocalDateTime.ofEpochSecond(startEpochSeconds, 0, ZoneOffset.ofHours(offsetHours))));
    }
    if ((r.zone == Zone.OFFSET_IN_HEADER
            || r.zone == Zone.NAME_IN_HEADER
            || r.zone == Zone.UTC_IN_HEADER)
        && !r.clock.universal
        && (!r.clock.elapsed || r.dateInTitle)) {
      map.put("zone", zoneName);
    }
    return map;
  }

  private String zoneSuffix() {
    return r.zone == Zone.Z || r.zone == Zone.UTC_IN_NAME
        ? " UTC"
        : r.zone == Zone.OFFSET ? offset() : "";
  }

  /**
   * What the line that starts a run says about its instant: needed where elapsed times begin anew.
   */
  String runStart(int k) {
    if (r.clock != Clock.ELAPSED_RESTART || !r.dateInTitle) {
      return "";
    }
    long at =
        startEpochSeconds + Math.round(seconds[k] - Double.parseDouble(texts[k].replace(',', '.')));
    return " "
        + LocalDateTime.ofEpochSecond(at, 0, ZoneOffset.ofHours(offsetHours))
            .format(DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss", Locale.ROOT))
        + zoneSuffix();
  }

  /** The time of a row as one text, for lines that are no rows. */
  String text(int k) {
    return r.clock == Clock.DATE_AND_TIME ? dates[k] + " " + texts[k] : texts[k];
  }

  /** Seconds of a row since {@link #start()}. */
  double seconds(int k) {
    return seconds[k];
  }

  /** The instant from which seconds count, where the log tells date and zone. */
  Optional<Instant> start() {
    boolean day = r.clock.dated && r.clock != Clock.SLASHES_UNTOLD || r.dateInTitle;
    boolean zone = r.zone != Zone.UNTOLD || r.clock.universal;
    return day && zone ? Optional.of(Instant.ofEpochSecond(startEpochSeconds)) : Optional.empty();
  }

  String offset() {
    return (offsetHours < 0 ? "-" : "+") + Digits.two(Math.abs(offsetHours)) + ":00";
  }

  String date() {
    return isoDate(
        LocalDateTime.ofEpochSecond(startEpochSeconds, 0, ZoneOffset.ofHours(offsetHours)));
  }
}
