package io.github.roundstar.ingest.layout.choice;

import io.github.roundstar.ingest.layout.Decision;
import io.github.roundstar.ingest.layout.Meaning;
import io.github.roundstar.ingest.layout.TimeForm;
import io.github.roundstar.ingest.layout.TimeForm.DateOrder;
import io.github.roundstar.ingest.layout.TimeForm.Kind;
import io.github.roundstar.ingest.layout.evidence.Column;
import io.github.roundstar.ingest.layout.text.ClockText;
import io.github.roundstar.ingest.layout.text.Numbers;
import io.github.roundstar.ingest.layout.text.Words;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
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
  private static final Set<String> LENGTHS = Set.of("s", "ms", "min");
  static final Pattern PARTS = Pattern.compile("([0-9]{1,4})([-./])([0-9]{1,2})[-./]([0-9]{1,4})");

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
    // One by one go seconds, too, but only a name or a unit tells those from frames.
    boolean seconds = counter && time.hasUnitOfItsOwn() && LENGTHS.contains(time.unit());
    frames = counter && !seconds && !time.hasAny("time", "elapsed");
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
    worth += LENGTHS.contains(column.unit()) ? 2 : 0;
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
    return new TimeForm(
        Kind.FRAMES,
        new DateOrders(columns, others, decisions).of(others, false),
        zone(false),
        mark(),
        step);
  }

  /** Not "each exposure of 2 s", but "an exposure every 2 s". */
  private static final Pattern EVERY_NUMBER = Pattern.compile("^\\p{L}+(?: \\p{L}+)? [0-9]");

  private static final Pattern SECONDS = Pattern.compile("([0-9]+(?:[.,][0-9]+)?) ?(ms|\\p{L}+)?");

  /**
   * Seconds from frame to frame. Of two times that come with each frame the longer is meant: none
   * is exposed for longer than it takes.
   */
  private OptionalDouble cadence() {
    Set<Double> told = new TreeSet<>();
    boolean frames = false;
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
            told.add(seconds);
            frames |= !Words.of(line).has("exposure") || EVERY_NUMBER.matcher(every).find();
          }
        }
      }
    }
    boolean exposure = told.size() == 1 && !frames; // how long each is exposed, not how often
    return told.isEmpty() || told.size() > 2 || exposure
        ? OptionalDouble.empty()
        : told.stream().mapToDouble(v -> v).max();
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
      return new TimeForm(
          Kind.ELAPSED_HMS,
          new DateOrders(columns, others, decisions).of(others, false),
          zone(false),
          mark());
    }
    List<String> dates = date.map(d -> d.cells).orElse(time.cells);
    boolean dated =
        date.isPresent()
            || allMatch(time, cell -> ClockText.of(cell, DateOrder.DMY).date().isPresent())
            || allMatch(time, cell -> ClockText.of(cell, DateOrder.MDY).date().isPresent());
    DateOrder order = new DateOrders(columns, others, decisions).of(dated ? dates : others, dated);
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
      Optional<ZoneOffset> told = ClockZone.of(line);
      if (told.isPresent()) {
        return said(told.get(), "a line tells it");
      }
    }
    Optional<ZoneOffset> named =
        ClockZone.of(time.name).or(() -> date.flatMap(d -> ClockZone.of(d.name)));
    if (named.isPresent()) {
      return said(named.get(), "the column's name tells it");
    }
    for (String line : others.subList(0, Math.min(300, others.size()))) {
      if (ClockZone.saysUtc(line)) {
        return said(ZoneOffset.UTC, "a line tells it");
      }
    }
    if (ClockZone.saysUtc(time.name)) {
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

  private Optional<ZoneOffset> said(ZoneOffset offset, String because) {
    String other = offset.equals(ZoneOffset.UTC) ? "none is told" : "UTC, if nothing told one";
    decisions.add(Decision.certain("utc_offset", offset.getId(), because).before(other));
    return Optional.of(offset);
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
    DateOrder order =
        kind.isElapsed()
            ? new DateOrders(columns, others, decisions).of(others, false)
            : DateOrder.YMD;
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
