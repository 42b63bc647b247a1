package io.github.roundstar.compare;

import io.github.roundstar.results.ComparedFigure;
import java.util.Locale;

/** The word for a change, and what it rests on. */
final class Judge {
  /** All figures of a comparison together are wrong this often where nothing changed. */
  static final double LEVEL = 0.05;

  private Judge() {}

  static ComparedFigure of(ChangeTest test, double adjusted, int figures, String adjustment) {
    Figure figure = test.figure();
    String verdict = verdict(test, adjusted);
    int more = verdict.equals(ComparedFigure.CANNOT_TELL) ? test.moreNights(figures) : 0;
    return new ComparedFigure(
        figure.key(),
        figure.name(),
        figure.kind().group(),
        figure.unit(),
        figure.aim().words(figure.unit()),
        test.before().nights(),
        test.after().nights(),
        test.mean(test.before()),
        test.mean(test.after()),
        test.change(),
        test.probability(),
        adjusted,
        test.margin(),
        figure.margin().because(),
        test.nightToNight(),
        figure.nightToNight().because(),
        verdict,
        because(test, verdict, adjusted, figures, more),
        more == 0 ? null : more,
        adjustment);
  }

  static String verdict(ChangeTest test, double adjusted) {
    boolean inside = test.insideMargin(0);
    if (inside && !test.oneNight()) {
      return ComparedFigure.NO_REAL_CHANGE;
    }
    if (adjusted < LEVEL && !inside) {
      return test.figure().aim().improves(test.welch(0).difference())
          ? ComparedFigure.BETTER
          : ComparedFigure.WORSE;
    }
    return ComparedFigure.CANNOT_TELL;
  }

  private static String because(
      ChangeTest test, String verdict, double adjusted, int figures, int more) {
    String together = figures == 1 ? "" : format(", %d figures taken together", figures);
    return switch (verdict) {
      case ComparedFigure.NO_REAL_CHANGE ->
          format(
              "the whole interval lies within %s: %s",
              shown(test.margin()), test.figure().margin().because());
      case ComparedFigure.CANNOT_TELL -> cannotTell(test, figures, more);
      default ->
          adjusted < 0.001
              ? "chance makes such a change in less than 1 of 1000 cases" + together
              : format(
                  "chance makes such a change in %.1f of 100 cases%s", 100 * adjusted, together);
    };
  }

  private static String cannotTell(ChangeTest test, int figures, int more) {
    String so =
        test.oneNight()
            ? "one night a side says nothing of how far nights differ, so a change counts from "
                + shown(test.allowance(figures))
                + " on"
            : "nights scatter too much: a change counts from "
                + shown(test.allowance(figures))
                + " on";
    return more == 0
        ? so + "; no reasonable number of further nights would tell"
        : so
            + format(
                "; %d more night%s like these on each side would tell", more, more == 1 ? "" : "s");
  }

  /** Three significant digits without an exponent. */
  static String shown(double value) {
    double size = Math.abs(value);
    int decimals = size == 0 ? 0 : (int) Math.max(0, 2 - Math.floor(Math.log10(size)));
    return format("%." + Math.min(decimals, 5) + "f", value);
  }

  private static String format(String pattern, Object... values) {
    return String.format(Locale.ROOT, pattern, values);
  }
}
