package io.github.roundstar.compare;

import io.github.roundstar.model.Decimals;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.results.ComparedFigure;
import java.util.Comparator;
import java.util.Locale;
import java.util.stream.IntStream;

/** The word for a change, and what it rests on. */
final class Judge {
  /** All figures of a comparison together are wrong this often where nothing changed. */
  static final double LEVEL = 0.05;

  private Judge() {}

  /**
   * A figure with its word.
   *
   * @param level at which Holm's method tests it
   * @param adjusted its probability, all figures taken together
   */
  static ComparedFigure of(
      ChangeTest test, double level, double adjusted, int figures, String adjustment) {
    Figure figure = test.figure();
    String verdict = verdict(test, level);
    int more = verdict.equals(ComparedFigure.CANNOT_TELL) ? test.moreNights(level) : 0;
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
        test.change(level),
        test.probability(),
        adjusted,
        test.margin(),
        figure.margin().because(),
        test.nightToNight(),
        figure.nightToNight().because(),
        verdict,
        because(test, verdict, level, adjusted, figures, more),
        more == 0 ? null : more,
        adjustment);
  }

  /** The word follows from the interval that is shown, and from nothing else. */
  static String verdict(ChangeTest test, double level) {
    Estimate change = test.change(level);
    boolean told = !change.covers(0);
    boolean inside = Math.max(-change.lo95(), change.hi95()) < test.margin();
    if (inside && (told || !test.oneNight())) {
      return ComparedFigure.NO_REAL_CHANGE;
    }
    if (!told) {
      return ComparedFigure.CANNOT_TELL;
    }
    return test.figure().aim().improves(change.value())
        ? ComparedFigure.BETTER
        : ComparedFigure.WORSE;
  }

  /**
   * The level at which Holm's method tests each of many figures, in the order of {@code
   * probabilities}: the least likely by chance at the strictest, all that are not told at the one
   * that the first of them failed. An interval at that level excludes zero where the method finds a
   * change, and only there.
   */
  static double[] levels(double... probabilities) {
    int n = probabilities.length;
    int[] order =
        IntStream.range(0, n)
            .boxed()
            .sorted(Comparator.comparingDouble(i -> probabilities[i]))
            .mapToInt(i -> i)
            .toArray();
    double[] levels = new double[n];
    int told = 0;
    for (int rank = 0; rank < n; rank++) {
      double level = LEVEL / (n - told);
      levels[order[rank]] = level;
      if (told == rank && probabilities[order[rank]] < level) {
        told++;
      }
    }
    return levels;
  }

  private static String because(
      ChangeTest test, String verdict, double level, double adjusted, int figures, int more) {
    String together = figures == 1 ? "" : format(", %d figures taken together", figures);
    return switch (verdict) {
      case ComparedFigure.NO_REAL_CHANGE ->
          format(
              "the whole interval lies within %s: %s",
              Decimals.text(test.margin()), test.figure().margin().because());
      case ComparedFigure.CANNOT_TELL -> cannotTell(test, level, more);
      default ->
          adjusted < 0.001
              ? "chance makes such a change in less than 1 of 1000 cases" + together
              : format(
                  "chance makes such a change in %.1f of 100 cases%s", 100 * adjusted, together);
    };
  }

  private static String cannotTell(ChangeTest test, double level, int more) {
    String so =
        test.oneNight()
            ? "one night a side says nothing of how far nights differ, so a change counts from "
                + Decimals.text(test.allowance(level))
                + " on"
            : "nights scatter too much: a change counts from "
                + Decimals.text(test.allowance(level))
                + " on";
    return more == 0
        ? so + "; no reasonable number of further nights would tell"
        : so
            + format(
                "; %d more night%s like these on each side would tell", more, more == 1 ? "" : "s");
  }

  private static String format(String pattern, Object... values) {
    return String.format(Locale.ROOT, pattern, values);
  }
}
