package io.github.roundstar.report;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.RowCounts;
import io.github.roundstar.report.Page.KeyFigure;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.AxisDrift;
import io.github.roundstar.results.Guided;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.RunResult;
import java.util.List;

/** The few figures that decide, each with its interval and a line on what it means. */
final class KeyFigures {
  private KeyFigures() {}

  static List<KeyFigure> of(NightResult result) {
    Reasons reasons = new Reasons(result.notComputed());
    AxisDrift drift = result.night().driftArcsecPerMinuteSky();
    Estimate swing =
        result.night().periodic() == null ? null : result.night().periodic().peakToPeakArcsecAxis();
    return List.of(
        radial(result.night().guided(), reasons),
        estimate(
            swing,
            "arcsec",
            "Periodic error at the axis, peak to peak, before guiding.",
            reasons.stop("/night/periodic/peakToPeakArcsecAxis", "/runs/*/periodic")),
        estimate(
            drift == null ? null : drift.dec(),
            "arcsec/min",
            "Drift in Dec of the mount without guiding, north positive. A polar axis that is off"
                + " shows here.",
            reasons.stop("/night/driftArcsecPerMinuteSky/dec", "/runs/*/driftArcsecPerMinuteSky")),
        estimate(
            drift == null ? null : drift.ra(),
            "arcsec/min",
            "Drift in RA of the mount without guiding, east positive.",
            reasons.stop("/night/driftArcsecPerMinuteSky/ra", "/runs/*/driftArcsecPerMinuteSky")),
        frames(result));
  }

  private static KeyFigure radial(Guided guided, Reasons reasons) {
    if (guided == null) {
      return missing("Radial RMS about the mean place", reasons.stop("/night/guided"));
    }
    Double pixels = guided.rmsRadialImagingPixels();
    String inPixels =
        pixels == null
            ? " In imaging pixels: not known, "
                + reasons.stop("/night/guided/rmsRadialImagingPixels")
            : " That is " + Numbers.plain(pixels) + " imaging pixels.";
    return new KeyFigure(
        Numbers.plain(guided.rmsRadialArcsec()),
        "",
        "arcsec",
        "Radial RMS of the guided star about its mean place." + inPixels);
  }

  private static KeyFigure estimate(Estimate value, String unit, String meaning, String because) {
    return value == null
        ? missing(meaning.substring(0, meaning.indexOf('.')), because)
        : new KeyFigure(Numbers.value(value), Numbers.interval(value), unit, meaning);
  }

  private static KeyFigure missing(String what, String because) {
    return new KeyFigure(Numbers.NOT_KNOWN, "", "", what + ": " + because);
  }

  private static KeyFigure frames(NightResult result) {
    RowCounts counts =
        result.runs().stream().map(RunResult::counts).reduce(RowCounts.NONE, RowCounts::plus);
    int left = counts.rows() - counts.used();
    return new KeyFigure(
        Numbers.fixed(result.night().guidedHours(), 1),
        "",
        "h",
        "Logged. "
            + Numbers.counted(counts.used(), "frame", "frames")
            + " used, "
            + Numbers.counted(left, "row", "rows")
            + " left out for the reasons below.");
  }
}
