package io.github.roundstar.ingest.layout.choice;

import io.github.roundstar.ingest.layout.Decision;
import io.github.roundstar.ingest.layout.LinePattern;
import io.github.roundstar.ingest.layout.Setting;
import io.github.roundstar.ingest.layout.SettingRule;
import io.github.roundstar.ingest.layout.TimeForm;
import io.github.roundstar.ingest.layout.text.ClockText;
import io.github.roundstar.ingest.layout.text.RunLines;
import io.github.roundstar.ingest.layout.text.TableHead;
import io.github.roundstar.ingest.layout.text.Words;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Dates and instants in lines that are no rows: the day of a clock, the start of elapsed times. */
final class DateLines {
  private static final String PLAIN_DATE = "[0-9]{1,4}[-./][0-9]{1,2}[-./][0-9]{2,4}";

  private static final String DATE_TEXT =
      "(?:"
          + PLAIN_DATE
          + "|[0-9]{1,2}[. ] ?(?:de )?\\p{L}{3,10}[. ] ?(?:de )?[0-9]{4}"
          + "|\\p{L}{3,10}[. ] ?[0-9]{1,2},? [0-9]{4}"
          + "|[0-9]{1,2}-\\p{L}{3,9}-[0-9]{4})";

  private static final String CLOCK_TEXT =
      "[0-9]{1,2}[:h][0-9]{2}(?:[:m][0-9]{2}(?:[.,][0-9]+)?s?)?(?: ?[aApP][.]?[mM][.]?)?"
          + "(?: ?(?:Z|UTC|[+-][0-9]{2}:?[0-9]{2})(?![0-9\\p{L}]))?";

  static final Pattern INSTANT =
      Pattern.compile(
          "(?:"
              + DATE_TEXT
              + "(?:T| |, | - |_|\\t| at | um | \u00e0 )"
              + CLOCK_TEXT
              + "|[0-9]{8}T[0-9]{6}Z?)");

  static final Pattern DATE =
      Pattern.compile("(?<![0-9])" + DATE_TEXT + "(?![0-9])|(?<![0-9])20[0-9]{6}(?![0-9])");

  /** The date in one line, the clock time of the start in another. */
  private static final Pattern START_CLOCK =
      Pattern.compile("(?<![0-9:])" + CLOCK_TEXT + "(?![0-9:])");

  private final List<Decision> decisions;

  DateLines(List<Decision> decisions) {
    this.decisions = decisions;
  }

  private static void add(
      Setting setting,
      String expression,
      List<String> lines,
      List<SettingRule> rules,
      List<Decision> decisions) {
    rules.add(
        new SettingRule(
            setting, Optional.of(LinePattern.of(expression)), Optional.empty(), Optional.empty()));
    decisions.add(
        Decision.certain(setting.word(), "told by a line", "a date where it is needed")
            .before(
                Math.max(0, lines.stream().filter(line -> holds(DATE, line)).count() - 1)
                    + " other lines with a date"));
  }

  void rules(List<String> lines, TimeForm time, List<SettingRule> rules) {
    if (time.kind().isElapsed()) {
      Optional<String> start = instantOfStart(lines);
      start.ifPresent(expression -> add(Setting.START, expression, lines, rules, decisions));
      if (start.isEmpty()) {
        apart(lines, rules);
      }
    } else if (time.kind() == TimeForm.Kind.CLOCK
        && lines.stream().anyMatch(line -> holds(DATE, line))) {
      add(Setting.DATE, dateIn(lines), lines, rules, decisions);
    }
  }

  /** The plainest expression that finds the dates of some lines. */
  private static String dateIn(List<String> lines) {
    Pattern plain = Pattern.compile("(?<![0-9])(?<value>" + PLAIN_DATE + ")(?![0-9])");
    boolean all =
        lines.stream().noneMatch(line -> holds(DATE, line) && !plain.matcher(line).find());
    return all ? plain.pattern() : "(?<value>" + DATE.pattern() + ")";
  }

  private static boolean holds(Pattern pattern, String line) {
    Matcher found = pattern.matcher(line);
    while (found.find()) {
      ClockText read = ClockText.of(found.group(), TimeForm.DateOrder.DMY);
      if (read.date()
          .or(() -> ClockText.of(found.group(), TimeForm.DateOrder.MDY).date())
          .isPresent()) {
        return true;
      }
    }
    return false;
  }

  /** Of lines with an instant, those that speak of a start, if any does. */
  private static Optional<String> instantOfStart(List<String> lines) {
    List<String> all = lines.stream().filter(line -> holds(INSTANT, line)).toList();
    Set<String> starts = new LinkedHashSet<>();
    for (String line : all) {
      Matcher found = INSTANT.matcher(line);
      if (found.find() && Words.of(TableHead.withoutLead(line)).has("start")) {
        starts.add(RunLines.beginning(line.substring(0, found.start())));
      }
    }
    Pattern plain = Pattern.compile(PLAIN_DATE + "[T ,_]+" + CLOCK_TEXT);
    boolean simple = all.stream().allMatch(line -> plain.matcher(line).find());
    String value = "(?<value>" + (simple ? plain : INSTANT).pattern() + ")";
    if (starts.size() == 1
        && starts.iterator().next().length() >= 3
        && starts.size() < all.size()) {
      return Optional.of(
          "^" + LinePattern.quoted(starts.iterator().next()).replace("\t", "\\t") + ".*?" + value);
    }
    return all.isEmpty() ? Optional.empty() : Optional.of(value);
  }

  private void apart(List<String> lines, List<SettingRule> rules) {
    boolean dated = lines.stream().anyMatch(line -> holds(DATE, line));
    Optional<String> clock =
        lines.stream()
            .filter(line -> Words.of(line).hasAny("start") && START_CLOCK.matcher(line).find())
            .findFirst();
    if (dated && clock.isPresent()) {
      Matcher found = START_CLOCK.matcher(clock.get());
      found.find();
      String before = RunLines.beginning(clock.get().substring(0, found.start()));
      if (before.length() >= 3) {
        add(Setting.DATE, dateIn(lines), lines, rules, decisions);
        add(
            Setting.START,
            "^"
                + LinePattern.quoted(before).replace("\t", "\\t")
                + "[^0-9]*(?<value>"
                + CLOCK_TEXT
                + ")",
            lines,
            rules,
            decisions);
      }
    }
  }
}
