package io.github.roundstar.report;

import io.github.roundstar.model.Sentences;
import io.github.roundstar.report.Page.First;
import io.github.roundstar.report.Page.Next;
import io.github.roundstar.report.chart.LadderChart;
import io.github.roundstar.report.chart.Svg;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.Need;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.Rung;
import io.github.roundstar.results.Step;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What was asked of the night, what to do next, and what each cure buys. */
final class FirstScreen {
  private FirstScreen() {}

  /** Nothing in a result that was not played again. */
  static First of(NightResult result, Charts charts) {
    if (result.need() == null) {
      return null;
    }
    List<Next> steps = new ArrayList<>();
    for (Step step : result.steps() == null ? List.<Step>of() : result.steps()) {
      steps.add(
          new Next(
              step.text(),
              Sentences.capital(
                      step.wins().isEmpty() ? step.effort() : step.wins() + "; " + step.effort())
                  + ".",
              Sentences.capital(step.nextLog()) + ".",
              step.caution()));
    }
    Svg ladder =
        result.ladder() == null || result.verdict() == null || result.verdict().rung() == null
            ? null
            : charts.of(
                "the ladder",
                () -> LadderChart.draw(result.ladder(), result.need(), result.verdict().rung()));
    return new First(need(result), steps, rest(result, steps), last(result), ladder);
  }

  private static List<String> last(NightResult result) {
    List<String> last = new ArrayList<>();
    if (result.kept() != null) {
      last.add(FindingSections.signed(result.kept().text()));
    }
    last.addAll(UsualSection.farOff(result.usual()));
    return last;
  }

  private static String need(NightResult result) {
    Need need = result.need();
    boolean user = need.from().equals("user");
    if (!need.ofStars()) {
      return String.format(
          Locale.ROOT,
          "Asked: a radial RMS of %s arcsec or less in the log, by your equipment file.",
          Numbers.plain(need.limit()));
    }
    Optional<Rung> now = result.rung(Rung.AS_IT_WAS);
    String units =
        now.map(
                rung ->
                    String.format(
                        Locale.ROOT,
                        " in %d of %d %s",
                        need.round(rung.units()),
                        rung.units(),
                        kind(rung)))
            .orElse("");
    return String.format(
        Locale.ROOT,
        "Asked: stars round to %s%s%s.",
        Numbers.plain(need.limit()),
        units,
        user ? ", by your limit" : "; the limit is the tool's, since you set none");
  }

  private static String kind(Rung rung) {
    String seconds = String.format(Locale.ROOT, "%.0f s", rung.unitSeconds());
    return rung.unitKind().equals("exposures")
        ? "exposures"
        : "windows of " + seconds + ", as long as an exposure";
  }

  private static String rest(NightResult result, List<Next> steps) {
    String rung = result.verdict() == null ? null : result.verdict().rung();
    if (rung == null) {
      return "";
    }
    if (rung.equals(Rung.AS_IT_WAS)) {
      return "Nothing is needed.";
    }
    return steps.isEmpty() || rung.equals(Rung.AIR_LIMIT) ? "" : "Nothing else is needed.";
  }
}
