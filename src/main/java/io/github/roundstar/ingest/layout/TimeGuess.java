package io.github.roundstar.ingest.layout;

import io.github.roundstar.ingest.layout.TimeForm.DateOrder;
import io.github.roundstar.ingest.layout.TimeForm.Kind;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Finds the columns that tell the time and works out how times are written: by names and units, the
 * look of the fields, their steps, and the sentences of the header.
 */
final class TimeGuess {
  private static final double STEADY = 0.95;
  private static final int LOOKED_AT = 40;
  private static final Pattern ZONE =
      Pattern.compile(
          "(?i)(?<!\\p{L})(?:utc|gmt|ut) ?([+\\u2212-]) ?([0-9]{1,2})(?::?([0-9]{2}))?(?![0-9.])");
  private static final Pattern SIGNED =
      Pattern.compile("(?<![0-9])([+\\u2212-]) ?([0-9]{1,2})(?::?([0-9]{2}))?(?![0-9.,])");
  private static final Pattern CIVIL = Pattern.compile("(?<![\\p{L}])([A-Z]{3,4})(?![\\p{L}])");
  private static final Pattern PARTS =
      Pattern.compile("([0-9]{1,4})([-./])([0-9]{1,2})[-./]([0-9]{1,4})");

  /** Common names of civil times with one meaning; those that also are words are left out. */
  private static final Map<String, String> CIVIL_HOURS =
      Map.ofEntries(
          Map.entry("CET", "+01:00"),
          Map.entry("MEZ", "+01:00"),
          Map.entry("CEST", "+02:00"),
          Map.entry("MESZ", "+02:00"),
          Map.entry("WET", "+00:00"),
          Map.entry("EET", "+02:00"),
          Map.entry("EEST", "+03:00"),
          Map.entry("BRT", "-03:00"),
          Map.entry("EDT", "-04:00"),
          Map.entry("CDT", "-05:00"),
          Map.entry("MDT", "-06:00"),
          Map.entry("PST", "-08:00"),
          Map.entry("PDT", "-07:00"),
          Map.entry("AEST", "+10:00"),
          Map.entry("AEDT", "+11:00"),
          Map.entry("NZST", "+12:00"),
          Map.entry("NZDT", "+13:00"),
          Map.entry("JST", "+09:00"),
          Map.entry("SAST", "+02:00"));

  private static final List<Set<String>> COUNT_WORDS =
      List.of(
          Set.of("one", "eine", "ein", "une", "un", "una", "uma", "um", "een"),
          Set.of("two", "zwei", "deux", "dos", "due", "duas", "dois", "twee"),
          Set.of("three", "drei", "trois", "tres", "tre", "drie"));

  private final List<Column> columns;
  private final List<String> others;
  private final List<Decision> decisions;
  private Column time;
  private Optional<Column> date = Optional.empty();
  private Optional<Column> half = Optional.empty();
  private boolean clock;
  private boolean frames;
  private String runnerUp = "no other column rises steadily";

  TimeGuess(List<Column> columns, List<String> others, List<Decision> decisions) {
    this.columns = columns;
    this.others = others;
    this.decisions = decisions;
    find();
  }

  /** The columns that tell the time; empty where none does. */
  Map<Meaning, Column> columns() {
    Map<Meaning, Column> found = new EnumMap<>(Meaning.class);
    if (time != null) {
      found.put(Meaning.TIME, time);
      date.filter(column -> clock).ifPresent(column -> found.put(Meaning.DATE, column));
      half.filter(column -> clock).ifPresent(column -> found.put(Meaning.DAY_HALF, column));
    }
    return found;
  }

  private void find() {
    double best = 0;
    double second = 0;
    for (Column column : columns) {
      if (date.isEmpty() && isDate(column)) {
        date = Optional.of(column);
        continue;
      }
      if (half.isEmpty() && isHalf(column)) {
        half = Optional.of(column);
        continue;
      }
      boolean clockLike = isClock(column);
      double worth = clockLike ? clockWorth(column) : countWorth(column);
      boolean better = worth > best;
      Column other = better ? time : column;
      double less = better ? best : worth;
      if (other != null && less > second) {
        second = less;
        double most = Math.max(best, worth);
        runnerUp = String.format(Locale.ROOT, "%s, by %.1f less", other.called(), most - less);
      }
      if (better) {
        best = worth;
        time = column;
        clock = clockLike;
      }
    }
    boolean counter = time != null && !clock && time.isWhole() && time.step() == 1;
    frames = counter && !time.hasAny("time", "elapsed") && cadence().isPresent();
    for (int i = 0; i < columns.size() && time == null; i++) {
      time = runsOn(columns.get(i)) ? columns.get(i) : null;
    }
    for (int i = 0; i < columns.size() && time == null; i++) {
      Column column = columns.get(i);
      boolean counts =
          column.isNumeric() && column.isWhole() && column.step() == 1 && column.rising() > STEADY;
      if (counts) {
        time = column;
        frames = true;
      }
    }
  }

  /** Numbers that rise in steady steps, under whatever name, and count nothing. */
  private static boolean runsOn(Column column) {
    if (!column.isNumeric() || !(column.step() > 0) || column.rising() < STEADY) {
      return false;
    }
    double[] values = column.finite();
    int steady = 0;
    for (int i = 1; i < values.length; i++) {
      double step = values[i] - values[i - 1];
      steady += step > 0.5 * column.step() && step < 2 * column.step() ? 1 : 0;
    }
    boolean counter = column.isWhole() && column.step() == 1;
    return !counter && values.length > 10 && steady > 0.8 * values.length;
  }

  private static boolean allMatch(Column column, Predicate<String> test) {
    List<String> some =
        column.cells.stream().filter(cell -> !Numbers.isNoValue(cell)).limit(LOOKED_AT).toList();
    return !some.isEmpty() && some.stream().filter(test).count() >= 0.9 * some.size();
  }

  private static boolean isDate(Column column) {
    if (column.isNumeric()) {
      boolean compact =
          column.has("date") && allMatch(column, cell -> cell.matches("(?:19|20)[0-9]{6}"));
      return compact;
    }
    return allMatch(
        column,
        cell -> {
          ClockText dayFirst = ClockText.of(cell, DateOrder.DMY);
          return dayFirst.time().isEmpty()
              && dayFirst.date().or(() -> ClockText.of(cell, DateOrder.MDY).date()).isPresent();
        });
  }

  private static boolean isHalf(Column column) {
    return column.numeric == 0
        && !column.words.isEmpty()
        && column.words.stream().allMatch(word -> word.matches("(?i)[ap][.]? ?m?[.]?"));
  }

  private static boolean isClock(Column column) {
    return !column.isNumeric()
        && allMatch(
            column,
            cell ->
                ClockText.of(cell, DateOrder.YMD).time().isPresent()
                    || ClockText.elapsedSeconds(cell).isPresent());
  }

  private static double clockWorth(Column column) {
    boolean constant = column.words.size() < 3 && column.cells.size() > 10;
    double worth = 5 + (column.has("time") ? 1 : 0);
    worth += allMatch(column, cell -> PARTS.matcher(cell).find()) ? 3 : 0;
    worth -= column.hasAny("other", "exposure", "start", "end") ? 2 : 0;
    return constant ? -1 : worth;
  }

  /** Numbers that rise steadily; a counter of frames does, too, in steps of one. */
  private static double countWorth(Column column) {
    if (!column.isNumeric() || !(column.step() > 0) || column.rising() < STEADY) {
      return -1;
    }
    double level = column.median();
    boolean epoch =
        level > 1e9 && level < 4e9
            || level > 1e12 && level < 4e12
            || (level > 2.4e6 && level < 2.6e6 || level > 4e4 && level < 9e4)
                && column.step() < 0.01;
    boolean counter = column.isWhole() && column.step() == 1;
    if (counter && column.isNameless() && column.isCounter()) {
      return -1;
    }
    double worth = column.hasAny("time", "elapsed") ? 4 : column.isNameless() ? 1.5 : 0;
    worth += epoch ? 4 : 0;
    worth += Set.of("s", "ms", "min").contains(column.unit()) ? 2 : 0;
    worth -= column.has("frame") ? 3 : 0;
    worth -= counter ? 1.2 : 0;
    boolean length = column.has("length"); // what rises all night is a time, not a pulse
    worth += length ? 2 : 0;
    worth -= column.hasAny("snr", "flux", "offset", "other", "statistic") ? 3 : 0;
    worth -= column.has("pulse") && !length ? 3 : 0;
    return worth;
  }

  /** How times are written. */
  TimeForm form() {
    return frames ? framesForm() : clock ? clockForm() : counted();
  }

  /** Numbers of frames, a time apart that a sentence tells. */
  private TimeForm framesForm() {
    OptionalDouble step = cadence();
    if (step.isPresent()) {
      decisions.add(
          Decision.certain(
                  time.called(),
                  "number of the frame",
                  "no column tells the time, and a sentence tells a frame every "
                      + step.getAsDouble()
                      + " s")
              .before(runnerUp));
    } else {
      decisions.add(
          Decision.open(
              "time from frame to frame",
              "no column tells the time, and " + time.called() + " counts frames",
              "[time]\nform = \"frames\"\nstep_s = 3.0   # seconds from frame to frame"));
    }
    return new TimeForm(Kind.FRAMES, order(others, false), zone(false), mark(), step);
  }

  private static final Pattern SECONDS = Pattern.compile("([0-9]+(?:[.,][0-9]+)?) ?(ms|\\p{L}+)?");

  private OptionalDouble cadence() {
    for (String line : others.subList(0, Math.min(200, others.size()))) {
      String every = fromEvery(line);
      if (!every.isEmpty() && !Words.of(line).hasAny("scale", "dither")) {
        Matcher number = SECONDS.matcher(every);
        while (number.find()) {
          Optional<String> unit = Optional.ofNullable(number.group(2)).flatMap(Words::unit);
          double value = Double.parseDouble(number.group(1).replace(',', '.'));
          double seconds = unit.filter("ms"::equals).isPresent() ? value / 1000 : value;
          boolean second = unit.filter(u -> u.equals("s") || u.equals("ms")).isPresent();
          if (second && seconds >= 0.05 && seconds <= 300) {
            return OptionalDouble.of(seconds);
          }
        }
      }
    }
    return OptionalDouble.empty();
  }

  /** A line from the word that says how often frames come; empty where none does. */
  private static String fromEvery(String line) {
    Matcher word = Pattern.compile("\\p{L}+(?: \\p{L}+)?").matcher(line);
    for (int from = 0; word.find(from); from = word.start() + 1) {
      for (String text : List.of(word.group().split(" ")[0], word.group())) {
        if (Words.of(text).has("frame every")) {
          return line.substring(word.start());
        }
      }
    }
    return "";
  }

  /** Which part of the exposure the times mark, where a line tells it. */
  private Optional<String> mark() {
    List<String> texts = new ArrayList<>(others.subList(0, Math.min(200, others.size())));
    texts.add(time.name);
    for (String line : texts) {
      for (String clause : line.split("[;|]|, ")) {
        Words words = Words.of(clause);
        boolean start = words.has("start");
        boolean middle = words.has("middle");
        boolean end = words.has("end");
        boolean one = (start ? 1 : 0) + (middle ? 1 : 0) + (end ? 1 : 0) == 1;
        if (one && words.has("exposure") && clause.chars().noneMatch(Character::isDigit)) {
          String chosen = middle ? "middle" : end ? "end" : "start";
          decisions.add(Decision.certain("time mark", chosen, "a line tells it"));
          return Optional.of(chosen);
        }
      }
    }
    decisions.add(
        Decision.noted(
            "time mark",
            "taken as the middle of the exposure",
            "no line tells; times would be half an exposure off at most",
            "[time]\nmark = \"middle\""));
    return Optional.empty();
  }

  private TimeForm clockForm() {
    if (isElapsedClock()) {
      decisions.add(
          Decision.certain(
                  time.called(), "elapsed-hms", "hours, minutes and seconds since the start")
              .before(runnerUp));
      return new TimeForm(Kind.ELAPSED_HMS, order(others, false), zone(false), mark());
    }
    List<String> dates = date.map(d -> d.cells).orElse(time.cells);
    boolean dated =
        date.isPresent()
            || allMatch(time, cell -> ClockText.of(cell, DateOrder.DMY).date().isPresent())
            || allMatch(time, cell -> ClockText.of(cell, DateOrder.MDY).date().isPresent());
    DateOrder order = order(dated ? dates : others, dated);
    Optional<ZoneOffset> zone = zone(true);
    decisions.add(
        Decision.certain(
                time.called(),
                dated ? "date and time" : "time of day",
                "such as " + time.cells.get(0))
            .before(runnerUp));
    return new TimeForm(dated ? Kind.DATE_TIME : Kind.CLOCK, order, zone, mark());
  }

  /** A time of day does not begin at zero, nor again with each run, nor go beyond 24 hours. */
  private boolean isElapsedClock() {
    if (date.isPresent() || time.cells.stream().limit(LOOKED_AT).anyMatch(PARTS.asPredicate())) {
      return false;
    }
    boolean minutesOnly = !allMatch(time, cell -> cell.matches(".*[:h].*[:m].*"));
    if (minutesOnly) {
      return allMatch(time, cell -> cell.matches(".*[:m'][0-9]{1,2}[.,][0-9]+.*"))
          || time.has("elapsed");
    }
    double last = -1;
    int fromZero = 0;
    boolean beyond = false;
    for (String cell : time.cells) {
      OptionalDouble seconds = ClockText.elapsedSeconds(cell);
      if (seconds.isPresent()) {
        fromZero +=
            (last < 0 || seconds.getAsDouble() < last - 60) && seconds.getAsDouble() < 30 ? 1 : 0;
        beyond |= seconds.getAsDouble() >= 86_400;
        last = seconds.getAsDouble();
      }
    }
    OptionalDouble first = ClockText.elapsedSeconds(time.cells.get(0));
    boolean begins = first.isPresent() && first.getAsDouble() < 10;
    return beyond || time.has("elapsed") || fromZero >= 2 && begins || begins;
  }

  private Optional<ZoneOffset> zone(boolean needed) {
    String first = time.cells.get(0);
    if (ClockText.of(first, DateOrder.YMD).offset().isPresent()) {
      return Optional.empty(); // the fields say it themselves
    }
    for (String line : others.subList(0, Math.min(300, others.size()))) {
      Optional<ZoneOffset> told = zoneOf(line);
      if (told.isPresent()) {
        return said(told.get(), "a line tells it");
      }
    }
    Optional<ZoneOffset> named = zoneOf(time.name).or(() -> date.flatMap(d -> zoneOf(d.name)));
    if (named.isPresent()) {
      return said(named.get(), "the column's name tells it");
    }
    for (String line : others.subList(0, Math.min(300, others.size()))) {
      if (saysUtc(line)) {
        return said(ZoneOffset.UTC, "a line tells it");
      }
    }
    if (saysUtc(time.name)) {
      return said(ZoneOffset.UTC, "the column's name tells it");
    }
    if (needed) {
      decisions.add(
          Decision.noted(
              "utc_offset",
              "taken as UTC",
              "no line tells the offset of the log's clock",
              "[time]\nutc_offset = \"+00:00\""));
    }
    return Optional.empty();
  }

  private static boolean saysUtc(String line) {
    List<String> tokens = Words.tokens(line);
    return tokens.contains("utc") || tokens.contains("gmt") || tokens.contains("ut");
  }

  /** The offset that a text tells, by name, number or sentence. */
  private static Optional<ZoneOffset> zoneOf(String line) {
    Matcher zone = ZONE.matcher(line);
    if (zone.find()) {
      return offset(zone);
    }
    Words words = Words.of(line);
    Matcher civil = CIVIL.matcher(line);
    while (civil.find()) {
      String hours = CIVIL_HOURS.get(civil.group(1));
      if (hours != null) {
        return Optional.of(ZoneOffset.of(hours));
      }
    }
    if (words.has("zone") || words.says("tz")) {
      Matcher signed = SIGNED.matcher(line);
      if (signed.find()) {
        return offset(signed);
      }
    }
    boolean utc = saysUtc(line);
    boolean ahead = words.has("ahead");
    boolean behind = words.has("behind");
    if (utc && words.has("hours") && ahead != behind) {
      List<String> tokens = words.tokens();
      for (int i = 1; i < tokens.size(); i++) {
        int count = Words.of(tokens.get(i)).has("hours") ? count(tokens.get(i - 1)) : 0;
        if (count > 0) {
          return Optional.of(ZoneOffset.ofHours(ahead ? count : -count));
        }
      }
    }
    return Optional.empty();
  }

  private static int count(String token) {
    for (int i = 0; i < COUNT_WORDS.size(); i++) {
      if (COUNT_WORDS.get(i).contains(token)) {
        return i + 1;
      }
    }
    return token.matches("[0-9]|1[0-4]") ? Integer.parseInt(token) : 0;
  }

  private static Optional<ZoneOffset> offset(Matcher zone) {
    int hours = Integer.parseInt(zone.group(2));
    int minutes = zone.group(3) == null ? 0 : Integer.parseInt(zone.group(3));
    int sign = zone.group(1).equals("+") ? 1 : -1;
    return hours <= 14 && minutes < 60
        ? Optional.of(ZoneOffset.ofHoursMinutes(sign * hours, sign * minutes))
        : Optional.empty();
  }

  private Optional<ZoneOffset> said(ZoneOffset offset, String because) {
    String other = offset.equals(ZoneOffset.UTC) ? "none is told" : "UTC, if nothing told one";
    decisions.add(Decision.certain("utc_offset", offset.getId(), because).before(other));
    return Optional.of(offset);
  }

  /**
   * The order of the parts of dates: told by a part over 12, by the part that changes at midnight,
   * by points between the parts, or by a language that writes the day first.
   */
  private DateOrder order(List<String> texts, boolean inRows) {
    Set<String> dates = new LinkedHashSet<>();
    boolean dots = false;
    for (String line : texts) {
      Matcher parts = PARTS.matcher(line);
      if (parts.find() && dates.size() < 50) {
        if (parts.group(1).length() == 4) {
          return DateOrder.YMD;
        }
        dates.add(parts.group());
        dots |= parts.group(2).equals(".");
      }
    }
    if (dates.isEmpty()) {
      return DateOrder.DMY;
    }
    Optional<DateOrder> told = orderTold();
    if (told.isPresent()) {
      decisions.add(
          Decision.certain(
              "date_order", told.get() == DateOrder.DMY ? "dmy" : "mdy", "a line tells it"));
      return told.get();
    }
    Set<Integer> firsts = new LinkedHashSet<>();
    Set<Integer> seconds = new LinkedHashSet<>();
    for (String text : dates) {
      Matcher parts = PARTS.matcher(text);
      parts.find();
      firsts.add(Integer.parseInt(parts.group(1)));
      seconds.add(Integer.parseInt(parts.group(3)));
    }
    boolean dayFirst = firsts.stream().anyMatch(part -> part > 12);
    boolean monthFirst = seconds.stream().anyMatch(part -> part > 12);
    String because = "a part over 12 can only be the day";
    if (dayFirst == monthFirst) {
      dayFirst = inRows && firsts.size() > 1 && seconds.size() == 1;
      monthFirst = inRows && seconds.size() > 1 && firsts.size() == 1;
      because = "the part that changes within a night is the day";
    }
    if (dayFirst == monthFirst) {
      dayFirst = dots || speaksOtherThanEnglish();
      because =
          dots
              ? "dates with points are written with the day first"
              : "the log's language writes the day first";
    }
    if (dayFirst != monthFirst) {
      decisions.add(
          Decision.certain("date_order", dayFirst ? "dmy" : "mdy", because)
              .before((dayFirst ? "mdy" : "dmy") + ", for which nothing speaks"));
    } else {
      decisions.add(
          Decision.open(
              "date_order",
              "the dates in "
                  + (inRows ? "the rows" : "the header")
                  + ", such as "
                  + dates.iterator().next()
                  + ", can be read both ways",
              "[time]\ndate_order = \"dmy\"   # or \"mdy\""));
    }
    return monthFirst ? DateOrder.MDY : DateOrder.DMY;
  }

  private static final Pattern DAY_MONTH =
      Pattern.compile(
          "(?<!\\p{L})(?:[DTJG]{1,2}[-./ ]M{1,2}[-./ ]|(?i:day|tag|jour|d\u00eda|dia|giorno|dag)[-./, ]{1,2}(?i:month|monat|mois|mes|m\u00eas|mese|maand))");
  private static final Pattern MONTH_DAY =
      Pattern.compile(
          "(?<!\\p{L})(?:M{1,2}[-./ ][DTJG]{1,2}[-./ ]|(?i:month|monat|mois|mes|m\u00eas|mese|maand)[-./, ]{1,2}(?i:day|tag|jour|d\u00eda|dia|giorno|dag))");

  private Optional<DateOrder> orderTold() {
    for (String line : others.subList(0, Math.min(200, others.size()))) {
      if (DAY_MONTH.matcher(line).find()) {
        return Optional.of(DateOrder.DMY);
      }
      if (MONTH_DAY.matcher(line).find()) {
        return Optional.of(DateOrder.MDY);
      }
    }
    return Optional.empty();
  }

  private boolean speaksOtherThanEnglish() {
    int words = 0;
    List<String> texts = new ArrayList<>(others.subList(0, Math.min(40, others.size())));
    columns.forEach(column -> texts.add(column.name));
    for (String line : texts) {
      for (String token : Words.tokens(line)) {
        words += Words.of(token).has("not english") ? 1 : 0;
      }
    }
    return words >= 2;
  }

  private TimeForm counted() {
    double level = time.median();
    double step = time.step();
    Kind kind = kind(level, step, time.unit());
    if (kind == null) {
      decisions.add(
          Decision.open(
              time.called(),
              String.format(
                  Locale.ROOT, "its steps of %.4g may be seconds, milliseconds or minutes", step),
              "[time]\nform = \"elapsed-s\"   # or \"elapsed-ms\" or \"elapsed-min\""));
      kind = Kind.ELAPSED_S;
    } else {
      decisions.add(
          Decision.certain(
                  time.called(),
                  kind.word(),
                  String.format(
                      Locale.ROOT,
                      "values near %.8g in steady steps of %.4g%s",
                      level,
                      step,
                      time.unit().isEmpty() ? "" : ", unit " + time.unit()))
              .before(runnerUp + otherKind(kind, step)));
    }
    Optional<ZoneOffset> zone = kind.isElapsed() ? zone(false) : Optional.empty();
    DateOrder order = kind.isElapsed() ? order(others, false) : DateOrder.YMD;
    return new TimeForm(kind, order, zone, mark());
  }

  /** How often frames would come by the likeliest other unit. */
  private static String otherKind(Kind kind, double step) {
    return switch (kind) {
      case ELAPSED_S -> String.format(Locale.ROOT, "; as minutes a frame every %.4g s", 60 * step);
      case ELAPSED_MS -> String.format(Locale.ROOT, "; as seconds a frame every %.4g s", step);
      case ELAPSED_MIN -> String.format(Locale.ROOT, "; as seconds a frame every %.4g s", step);
      default -> "";
    };
  }

  /** Frames follow each other in a tenth of a second to a few minutes; null if two units fit. */
  private static Kind kind(double level, double step, String unit) {
    if (level > 2.4e6 && level < 2.6e6 && step < 0.01) {
      return Kind.JD;
    }
    if (level > 4e4 && level < 9e4 && step < 0.01) {
      return Kind.MJD;
    }
    if (level > 1e9 && level < 4e9) {
      return Kind.UNIX_S;
    }
    if (level > 1e12 && level < 4e12) {
      return Kind.UNIX_MS;
    }
    switch (unit) {
      case "s":
        return Kind.ELAPSED_S;
      case "ms":
        return Kind.ELAPSED_MS;
      case "min":
        return Kind.ELAPSED_MIN;
      default:
    }
    if (step >= 0.5 && step <= 20) {
      return Kind.ELAPSED_S; // as milliseconds too fast for a camera, as minutes too slow to guide
    }
    if (step >= 0.005 && step < 0.1) {
      return Kind.ELAPSED_MIN; // as seconds faster than a guide camera
    }
    return step >= 200 && step <= 60_000 ? Kind.ELAPSED_MS : null;
  }
}
