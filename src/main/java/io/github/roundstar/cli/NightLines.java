package io.github.roundstar.cli;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.results.ExposureCounts;
import io.github.roundstar.results.Level;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.NightSummary;
import io.github.roundstar.results.Periodic;
import io.github.roundstar.results.RunResult;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** A night in a few lines for the terminal. */
final class NightLines {
  private static final int MOST_FINDINGS = 3;

  private NightLines() {}

  static List<String> of(NightResult result) {
    NightSummary night = result.night();
    List<String> lines = new ArrayList<>();
    int used = result.runs().stream().map(RunResult::counts).mapToInt(c -> c.used()).sum();
    lines.add(
        format(
            "%s  %d run%s, %.1f h guided, %d of %d frames used",
            night.date(),
            night.runs(),
            night.runs() == 1 ? "" : "s",
            night.guidedHours(),
            used,
            night.frames()));
    if (night.guided() != null) {
      lines.add(
          format(
              "  star     within %.2f arcsec RMS of its place (%.2f east-west, %.2f north-south)",
              night.guided().rmsRadialArcsec(),
              night.guided().ra().rmsArcsec(),
              night.guided().dec().rmsArcsec()));
    }
    lines.add("  period   " + periodic(night.periodic()));
    lines.add(
        "  drift    "
            + drift("east", night.driftArcsecPerMinuteSky().ra())
            + ", "
            + drift("north", night.driftArcsecPerMinuteSky().dec()));
    if (result.exposures() != null) {
      lines.add("  stars    " + ExposureCounts.of(result.exposures()).words());
    }
    lines.addAll(judged(result));
    return lines;
  }

  /** The decision, then the weightiest findings. */
  private static List<String> judged(NightResult result) {
    List<String> lines = new ArrayList<>();
    if (result.verdict() != null) {
      lines.add("  verdict  " + result.verdict().summary());
    }
    if (result.findings() != null) {
      result.findings().stream()
          .filter(finding -> finding.level().atLeast(Level.WATCH))
          .limit(MOST_FINDINGS)
          .map(finding -> "  found    " + finding.title() + " (" + word(finding.level()) + ")")
          .forEach(lines::add);
    }
    return lines;
  }

  /** {@code FIX_FIRST} becomes {@code fix first}. */
  private static String word(Level level) {
    return level.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  private static String periodic(Periodic periodic) {
    if (periodic == null) {
      return "not known; the report says why";
    }
    if (periodic.peakToPeakArcsecAxis() == null) {
      return "nothing stands out of wander and noise, or too few turns; the report says more";
    }
    return interval(periodic.peakToPeakArcsecAxis())
        + " arcsec peak to peak at the axis, largest at "
        + format("%.1f s", periodic.components().get(0).periodSeconds().value());
  }

  private static String drift(String direction, Estimate drift) {
    return drift == null
        ? direction + " not known"
        : direction + " " + interval(drift) + " arcsec/min";
  }

  private static String interval(Estimate estimate) {
    return format(
        "%.2f (%.2f .. %.2f)",
        noNegativeZero(estimate.value()),
        noNegativeZero(estimate.lo95()),
        noNegativeZero(estimate.hi95()));
  }

  /** A number that two decimals show as zero is shown without a sign. */
  private static double noNegativeZero(double value) {
    return Math.abs(value) < 0.005 ? 0 : value;
  }

  private static String format(String pattern, Object... values) {
    return String.format(Locale.ROOT, pattern, values);
  }
}
