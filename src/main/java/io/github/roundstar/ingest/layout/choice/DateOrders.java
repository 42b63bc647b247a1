package io.github.roundstar.ingest.layout.choice;

import io.github.roundstar.ingest.layout.Decision;
import io.github.roundstar.ingest.layout.TimeForm.DateOrder;
import io.github.roundstar.ingest.layout.evidence.Column;
import io.github.roundstar.ingest.layout.text.Words;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Whether a log writes the day or the month first. */
final class DateOrders {
  private static final Pattern PARTS = TimeGuess.PARTS;
  private static final Pattern DAY_MONTH =
      Pattern.compile(
          "(?<!\\p{L})(?:[DTJG]{1,2}[-./ ]M{1,2}[-./ ]|(?i:day|tag|jour|d\u00eda|dia|giorno|dag)[-./, ]{1,2}(?i:month|monat|mois|mes|m\u00eas|mese|maand))");

  private static final Pattern MONTH_DAY =
      Pattern.compile(
          "(?<!\\p{L})(?:M{1,2}[-./ ][DTJG]{1,2}[-./ ]|(?i:month|monat|mois|mes|m\u00eas|mese|maand)[-./, ]{1,2}(?i:day|tag|jour|d\u00eda|dia|giorno|dag))");

  private final List<Column> columns;
  private final List<String> others;
  private final List<Decision> decisions;

  DateOrders(List<Column> columns, List<String> others, List<Decision> decisions) {
    this.columns = columns;
    this.others = others;
    this.decisions = decisions;
  }

  /**
   * The order of the parts of dates: told by a part over 12, by the part that changes at midnight,
   * by points between the parts, or by a language that writes the day first.
   */
  DateOrder of(List<String> texts, boolean inRows) {
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
}
