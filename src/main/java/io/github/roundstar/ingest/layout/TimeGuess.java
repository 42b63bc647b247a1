package io.github.roundstar.ingest.layout;

import io.github.roundstar.ingest.layout.TimeForm.DateOrder;
import io.github.roundstar.ingest.layout.TimeForm.Kind;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Works out how times are written: by the look of the fields, their steps, and the header. */
final class TimeGuess {
  private static final Pattern ZONE =
      Pattern.compile("(?i)(?:utc|gmt) ?([+-])([0-9]{1,2})(?::?([0-9]{2}))?");
  private static final Pattern AHEAD =
      Pattern.compile("(?i)(one|two|three|1|2|3) hours? (ahead of|behind) utc");
  private static final Pattern MARK =
      Pattern.compile("(?i)(start|beginning|middle|mid|end) of (?:the |each )?(?:guide )?exposure");
  private static final Pattern PARTS =
      Pattern.compile("([0-9]{1,4})[-./]([0-9]{1,2})[-./]([0-9]{1,4})");

  private final List<String> others;
  private final List<Decision> decisions;

  TimeGuess(List<String> others, List<Decision> decisions) {
    this.others = others;
    this.decisions = decisions;
  }

  TimeForm of(ColumnData time, Optional<ColumnData> date) {
    if (ColumnMeanings.isClock(time) && !time.isNumeric()) {
      return clock(time, date);
    }
    return new TimeForm(counted(time), DateOrder.YMD, Optional.empty(), mark());
  }

  /** Which part of the exposure the times mark, where a line tells it. */
  private Optional<String> mark() {
    for (String line : others) {
      Matcher mark = MARK.matcher(line);
      if (mark.find()) {
        String word = mark.group(1).toLowerCase(Locale.ROOT);
        String chosen = word.startsWith("mid") ? "middle" : word.equals("end") ? "end" : "start";
        decisions.add(Decision.certain("time mark", chosen, "a line tells it"));
        return Optional.of(chosen);
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

  private TimeForm clock(ColumnData time, Optional<ColumnData> date) {
    List<String> dates = date.map(d -> d.cells).orElse(time.cells);
    boolean dated = dates.stream().anyMatch(cell -> PARTS.matcher(cell).find());
    DateOrder order = order(dated ? dates : others, dated);
    Optional<ZoneOffset> zone = zone(time);
    decisions.add(
        Decision.certain(
            time.called(),
            dated ? "date and time" : "time of day",
            "such as " + time.cells.get(0)));
    return new TimeForm(dated ? Kind.DATE_TIME : Kind.CLOCK, order, zone, mark());
  }

  private Optional<ZoneOffset> zone(ColumnData time) {
    String first = time.cells.get(0);
    if (ClockText.of(first, DateOrder.YMD).offset().isPresent()) {
      return Optional.empty(); // the fields say it themselves
    }
    for (String line : others) {
      Matcher zone = ZONE.matcher(line);
      Matcher ahead = AHEAD.matcher(line);
      if (zone.find()) {
        int hours = Integer.parseInt(zone.group(2));
        int minutes = zone.group(3) == null ? 0 : Integer.parseInt(zone.group(3));
        int sign = zone.group(1).equals("-") ? -1 : 1;
        if (hours <= 14 && minutes < 60) {
          return said(ZoneOffset.ofHoursMinutes(sign * hours, sign * minutes));
        }
      } else if (ahead.find()) {
        int hours = "one two three".indexOf(ahead.group(1).toLowerCase(Locale.ROOT)) / 4 + 1;
        int count =
            Character.isDigit(ahead.group(1).charAt(0)) ? Integer.parseInt(ahead.group(1)) : hours;
        int sign = ahead.group(2).toLowerCase(Locale.ROOT).startsWith("behind") ? -1 : 1;
        return said(ZoneOffset.ofHours(sign * count));
      }
    }
    decisions.add(
        Decision.noted(
            "utc_offset",
            "taken as UTC",
            "no line tells the offset of the log's clock",
            "[time]\nutc_offset = \"+00:00\""));
    return Optional.empty();
  }

  private Optional<ZoneOffset> said(ZoneOffset offset) {
    decisions.add(Decision.certain("utc_offset", offset.getId(), "a line tells it"));
    return Optional.of(offset);
  }

  private DateOrder order(List<String> texts, boolean inRows) {
    boolean any = false;
    boolean dayFirst = false;
    boolean monthFirst = false;
    for (String text : texts) {
      Matcher parts = PARTS.matcher(text);
      if (parts.find()) {
        if (parts.group(1).length() == 4) {
          return DateOrder.YMD;
        }
        any = true;
        dayFirst |= Integer.parseInt(parts.group(1)) > 12;
        monthFirst |= Integer.parseInt(parts.group(2)) > 12;
      }
    }
    if (!any) {
      return DateOrder.YMD;
    }
    if (dayFirst != monthFirst) {
      decisions.add(
          Decision.certain(
              "date_order", dayFirst ? "dmy" : "mdy", "a part over 12 can only be the day"));
    } else {
      decisions.add(
          Decision.open(
              "date_order",
              "the dates in " + (inRows ? "the rows" : "the header") + " can be read both ways",
              "[time]\ndate_order = \"dmy\"   # or \"mdy\""));
    }
    return monthFirst ? DateOrder.MDY : DateOrder.DMY;
  }

  private Kind counted(ColumnData time) {
    double[] values = time.finite();
    double level = values.length == 0 ? 0 : values[values.length / 2];
    double step = time.step();
    Kind kind = kind(level, step, time.unit);
    if (kind == null) {
      decisions.add(
          Decision.open(
              time.called(),
              String.format(
                  Locale.ROOT, "its steps of %.4g may be seconds, milliseconds or minutes", step),
              "[time]\nform = \"elapsed-s\"   # or \"elapsed-ms\" or \"elapsed-min\""));
      return Kind.ELAPSED_S;
    }
    decisions.add(
        Decision.certain(
            time.called(),
            kind.word(),
            String.format(
                Locale.ROOT,
                "values near %.8g in steady steps of %.4g%s",
                level,
                step,
                time.unit.isEmpty() ? "" : ", unit " + time.unit)));
    return kind;
  }

  /** Frames follow each other in a tenth of a second to a few minutes; null if two units fit. */
  private static Kind kind(double level, double step, String unit) {
    switch (unit) {
      case "s":
        return level > 1e9 && level < 4e9 ? Kind.UNIX_S : Kind.ELAPSED_S;
      case "ms":
        return level > 1e12 ? Kind.UNIX_MS : Kind.ELAPSED_MS;
      case "min":
        return Kind.ELAPSED_MIN;
      default:
    }
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
    if (step >= 0.5 && step <= 20) {
      return Kind.ELAPSED_S; // as milliseconds too fast for a camera, as minutes too slow to guide
    }
    return step >= 200 && step <= 60_000 ? Kind.ELAPSED_MS : null;
  }
}
