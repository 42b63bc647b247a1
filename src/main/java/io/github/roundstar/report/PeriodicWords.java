package io.github.roundstar.report;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.Sentences;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.report.words.Times;
import io.github.roundstar.results.Component;
import io.github.roundstar.results.Detectable;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.Periodic;
import java.util.ArrayList;
import java.util.List;

/** What the search for periodic error found, in sentences. */
final class PeriodicWords {
  private PeriodicWords() {}

  /** Whether enough turns were searched and nothing stood out. */
  static boolean searchedInVain(Periodic periodic) {
    return periodic != null && periodic.components().isEmpty() && periodic.detectable() != null;
  }

  /** What it would have taken to stand out. */
  static String needed(Detectable detectable) {
    return "To stand out from chance it would take about "
        + Numbers.plain(2 * detectable.amplitudeArcsecAxis())
        + " arcsec peak to peak at a period of "
        + Times.period(detectable.periodSeconds())
        + ".";
  }

  static String heading(NightResult result) {
    Periodic periodic = result.night().periodic();
    String swing = Headline.swing(periodic);
    if (swing != null) {
      return Sentences.capital(swing);
    }
    if (searchedInVain(periodic)) {
      return "No periodic error stands out";
    }
    return periodic == null || periodic.components().isEmpty()
        ? "Periodic error cannot be told from this log"
        : "Periodic error";
  }

  static List<String> summary(NightResult result) {
    Periodic periodic = result.night().periodic();
    Reasons reasons = new Reasons(result.notComputed());
    if (periodic == null) {
      return List.of(reasons.sentence("/night/periodic", "/runs/*/periodic"));
    }
    if (searchedInVain(periodic)) {
      return List.of(
          "No period stands out from wander and noise. " + needed(periodic.detectable()));
    }
    if (periodic.components().isEmpty()) {
      return List.of(reasons.sentence("/night/periodic/peakToPeakArcsecAxis", "/runs/*/periodic"));
    }
    return found(periodic, reasons);
  }

  private static List<String> found(Periodic periodic, Reasons reasons) {
    List<String> sentences = new ArrayList<>();
    Estimate swing = periodic.peakToPeakArcsecAxis();
    if (swing == null) {
      sentences.add(reasons.sentence("/night/periodic/peakToPeakArcsecAxis", "/runs/*/periodic"));
      return sentences;
    }
    Component leading = Headline.leading(periodic);
    StringBuilder text =
        new StringBuilder("The period is ").append(Times.period(leading.periodSeconds().value()));
    if (periodic.cycles() != null) {
      text.append("; the data hold ").append(Numbers.fixed(periodic.cycles(), 1)).append(" turns");
    }
    text.append('.');
    if (periodic.maxRateArcsecPerSecondAxis() != null) {
      text.append(" At its steepest the mount runs off by ")
          .append(Numbers.plain(periodic.maxRateArcsecPerSecondAxis()))
          .append(" arcsec a second.");
    }
    if (periodic.repeatability() != null) {
      text.append(" It repeats from turn to turn to ")
          .append(Numbers.percent(periodic.repeatability()))
          .append(": training can take that part away")
          .append(
              periodic.repeatability() < 0.995
                  ? ", and leaves a worm error of some "
                      + Numbers.coarse(left(periodic))
                      + " arcsec RMS."
                  : ".");
    }
    sentences.add(text.toString());
    return sentences;
  }

  /**
   * What training leaves: the share that does not come back, of a sinusoid of the curve's swing
   * [arcsec RMS].
   */
  private static double left(Periodic periodic) {
    double squared = Math.pow(periodic.peakToPeakArcsecAxis().value(), 2) / 8;
    return Math.sqrt(squared * (1 / Math.max(0.01, periodic.repeatability()) - 1));
  }
}
