package io.github.roundstar.ingest.layout.choice;

import io.github.roundstar.ingest.layout.Decision;
import io.github.roundstar.ingest.layout.EventRule;
import io.github.roundstar.ingest.layout.LinePattern;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/** How far the set point was moved, where a line tells it with directions and in arcseconds. */
final class DitherSize {
  private static final String NUMBER = "[+-]?[0-9]+(?:[.,][0-9]+)?";
  private static final String UNIT = "(?: ?(?:arcsec(?:onds?)?|\"))?";
  private static final Pattern ARCSEC = Pattern.compile("(?i)[0-9] ?(?:arcsec|\")|\\[arcsec");
  private static final List<String> FORMS =
      List.of(
          "(?<east>%s)%s ?(?:east|e)\\b.*?(?<north>%s)%s ?(?:north|n)\\b",
          "\\b(?:east|e)\\b[ :=]{0,3}(?<east>%s)%s.*?\\b(?:north|n)\\b[ :=]{0,3}(?<north>%s)%s");

  private DitherSize() {}

  /**
   * The rule for lines such as this one; empty where it tells no size that is sure. A dither of
   * unknown size is an unknown step, which makes no figure wrong.
   *
   * @param line the first line that tells of a dither
   * @param words expression of the words for a dither
   */
  static Optional<EventRule> rule(String line, String words, List<Decision> decisions) {
    for (String form : FORMS) {
      String size = form.replaceFirst("%s", NUMBER).replaceFirst("%s", UNIT);
      size = size.replaceFirst("%s", NUMBER).replaceFirst("%s", UNIT);
      LinePattern pattern = LinePattern.of("(?i)^(?=.*(?:" + words + ")).*?" + size);
      if (pattern.find(line).isPresent()) {
        return sure(line, pattern, decisions);
      }
    }
    return Optional.empty();
  }

  private static Optional<EventRule> sure(
      String line, LinePattern pattern, List<Decision> decisions) {
    if (!ARCSEC.matcher(line).find()) {
      decisions.add(
          Decision.noted(
              "dither sizes",
              "not used",
              "a line tells them without the word arcsec",
              "[[event]]\nmeans = \"dither\"\nline = '" + pattern.expression() + "'"));
      return Optional.empty();
    }
    decisions.add(
        Decision.certain("dither sizes", "in arcsec, east and north", "such as " + line.strip()));
    return Optional.of(new EventRule(EventRule.Kind.DITHER, Optional.of(pattern), List.of()));
  }
}
