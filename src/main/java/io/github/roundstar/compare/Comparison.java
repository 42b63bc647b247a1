package io.github.roundstar.compare;

import io.github.roundstar.results.CompareEvidence;
import io.github.roundstar.results.CompareResult;
import io.github.roundstar.results.ComparedFigure;
import io.github.roundstar.results.ComparedNight;
import io.github.roundstar.results.Method;
import io.github.roundstar.results.NightResult;
import java.util.ArrayList;
import java.util.List;

/**
 * Two sets of nights compared.
 *
 * @param result the figures
 * @param evidence what the charts show
 */
public record Comparison(CompareResult result, CompareEvidence evidence) {
  private static final List<Method> METHODS =
      List.of(
          new Method(
              "between nights",
              "Welch's t (1947) on night means: a night counts once, frames never. The variance of"
                  + " nights is moderated (Smyth 2004): the stated night-to-night scatter counts as"
                  + " 5 degrees of freedom, raised where the nights scatter more than it says, and"
                  + " the variance never lies below what the nights are uncertain within"
                  + " themselves. The interval of a change is the one that its verdict rests on: at"
                  + " the level at which Holm's method (1979) tests the figure beside all others,"
                  + " so that one of twenty comparisons without any change finds one."),
          new Method(
              "within a night",
              "The width of the 95 % interval in the night's result over 3.92 is the standard error."
                  + " RMS and elongation carry intervals of a moving-block bootstrap over the frames"
                  + " (Kuensch 1989); a result of an earlier version has none, and its nights are"
                  + " then taken as exact within, so that only the scatter between nights counts."
                  + " The steepest rate is known in proportion as the peak to peak."),
          PromiseJudge.METHOD,
          new Method(
              "parts of the periodic error",
              "A part that a night does not show counts as half of what would have stood out, give"
                  + " or take as much."),
          new Method(
              "in equal air",
              "The noise floor's part of each night's mean square, its square times 2 / (2 - gain),"
                  + " is taken out, the rest scaled by the cosine of the declination (RA) and by the"
                  + " cadence to the power 1.5, and the mean noise of all nights put back. What is"
                  + " not known of the gain widens the interval by the difference in noise."),
          new Method(
              "verdicts",
              "no real change: the interval lies inside the stated margin. better, worse: it"
                  + " excludes zero. Else: cannot tell; so it is, too, where one night on a side"
                  + " lies inside the margin, since one night does not show how far nights differ."));

  /**
   * Compares.
   *
   * @param sides both sides, none empty
   * @param noticed what was noticed before, each a sentence
   * @param version version of the tool
   */
  public static Comparison of(Sides sides, List<String> noticed, String version) {
    List<NightResult> before = Sides.results(sides.before());
    List<NightResult> after = Sides.results(sides.after());
    PairTests tests = new PairTests(before, after);
    List<ComparedFigure> compared = tests.compared();
    CompareEvidence evidence = Overlays.of(sides);
    List<String> all = new ArrayList<>(noticed);
    all.addAll(sides.noticed());
    all.addAll(new Comparability(before, after).noticed());
    oneNight(sides, all);
    return new Comparison(
        new CompareResult(
            CompareResult.SCHEMA,
            version,
            nights(sides.before()),
            nights(sides.after()),
            Summary.of(compared),
            AirWords.of(tests.air(), compared).orElse(null),
            Summary.need(after),
            Summary.next(compared).orElse(null),
            PromiseJudge.ofLast(before, after).orElse(null),
            compared,
            tests.notCompared(),
            all,
            Overlays.notDrawn(evidence),
            METHODS,
            List.of()),
        evidence);
  }

  private static void oneNight(Sides sides, List<String> noticed) {
    if (sides.before().size() == 1 || sides.after().size() == 1) {
      String which =
          sides.before().size() > 1
              ? "after"
              : sides.after().size() > 1 ? "before" : "on each side";
      noticed.add(
          "Only one night "
              + which
              + ": how far nights differ by themselves was taken as stated with each figure, and a"
              + " smaller change is not judged.");
    }
  }

  private static List<ComparedNight> nights(List<NightInput> nights) {
    return nights.stream()
        .map(
            night ->
                new ComparedNight(
                    night.night(),
                    night.result().night().startUtc(),
                    night.file(),
                    night.result().night().guidedHours()))
        .toList();
  }
}
