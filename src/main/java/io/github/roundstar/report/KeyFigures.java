package io.github.roundstar.report;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.RowCounts;
import io.github.roundstar.model.Sentences;
import io.github.roundstar.report.Page.KeyFigure;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.AxisDrift;
import io.github.roundstar.results.Guided;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.RunResult;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The few figures that decide, each with its interval and a line on what it means. */
final class KeyFigures {
  private final Reasons reasons;
  private final List<KeyFigure> known = new ArrayList<>();
  private final Map<String, List<String>> namesByReason = new LinkedHashMap<>();

  private KeyFigures(Reasons reasons) {
    this.reasons = reasons;
  }

  /** Known figures first; those that one reason keeps away share a place. */
  static List<KeyFigure> of(NightResult result) {
    KeyFigures figures = new KeyFigures(new Reasons(result.notComputed()));
    ExposureSection.figure(result).ifPresent(figures.known::add);
    figures.radial(result);
    figures.periodic(result);
    AxisDrift drift = result.night().driftArcsecPerMinuteSky();
    figures.drift(drift == null ? null : drift.dec(), "Dec", "north");
    figures.drift(drift == null ? null : drift.ra(), "RA", "east");
    if (ExposureSection.figure(result).isEmpty()) {
      figures.known.add(frames(result));
    }
    figures.namesByReason.forEach(
        (reason, names) ->
            figures.known.add(
                new KeyFigure(
                    Numbers.NOT_KNOWN,
                    "",
                    "",
                    Sentences.capital(Sentences.list(names)) + ". " + Sentences.whole(reason))));
    return figures.known;
  }

  private void missing(String name, String... pointers) {
    namesByReason.computeIfAbsent(reasons.why(pointers), key -> new ArrayList<>()).add(name);
  }

  private void radial(NightResult result) {
    Guided guided = result.night().guided();
    if (guided == null) {
      missing("radial RMS", "/night/guided");
      return;
    }
    if (Guiding.tooFew(result).isPresent()) {
      return;
    }
    Double pixels = guided.rmsRadialImagingPixels();
    String what =
        Guiding.leftAlone(result)
            ? "Radial RMS of the star about its mean place, without guiding."
            : "Radial RMS of the guided star about its mean place.";
    known.add(
        new KeyFigure(
            Numbers.plain(guided.rmsRadialArcsec()),
            "",
            "arcsec",
            pixels == null
                ? what
                : what + " That is " + Numbers.plain(pixels) + " imaging pixels."));
  }

  private void periodic(NightResult result) {
    Estimate swing =
        result.night().periodic() == null ? null : result.night().periodic().peakToPeakArcsecAxis();
    if (swing != null) {
      known.add(
          estimate(
              swing.ofSize(),
              "arcsec",
              "Periodic error at the axis, peak to peak, without guiding."));
    } else if (PeriodicWords.searchedInVain(result.night().periodic())) {
      known.add(
          new KeyFigure(
              "none found",
              "",
              "",
              "Periodic error at the axis. "
                  + PeriodicWords.needed(result.night().periodic().detectable())));
    } else {
      missing(
          "periodic error",
          "/night/periodic/peakToPeakArcsecAxis",
          "/night/periodic",
          "/runs/*/periodic");
    }
  }

  private void drift(Estimate drift, String axis, String positive) {
    if (drift == null) {
      missing(
          "drift in " + axis,
          "/night/driftArcsecPerMinuteSky/" + axis.toLowerCase(java.util.Locale.ROOT),
          "/runs/*/driftArcsecPerMinuteSky");
      return;
    }
    String what = "Drift in " + axis + " of the mount without guiding, " + positive + " positive.";
    known.add(estimate(drift, "arcsec/min", drift.covers(0) ? what + " It may be nothing." : what));
  }

  private static KeyFigure estimate(Estimate value, String unit, String meaning) {
    return new KeyFigure(Numbers.value(value), Numbers.interval(value), unit, meaning);
  }

  private static KeyFigure frames(NightResult result) {
    RowCounts counts =
        result.runs().stream().map(RunResult::counts).reduce(RowCounts.NONE, RowCounts::plus);
    int left = counts.rows() - counts.used();
    double seconds = Guiding.loggedSeconds(result);
    boolean hours = seconds >= 3600;
    return new KeyFigure(
        hours ? Numbers.fixed(seconds / 3600, 1) : Numbers.fixed(seconds / 60, 0),
        "",
        hours ? "h" : "min",
        "Length of the log. "
            + Numbers.counted(counts.used(), "frame", "frames")
            + " used, "
            + (left == 0 ? "none left out." : Numbers.count(left) + " left out; see below."));
  }
}
