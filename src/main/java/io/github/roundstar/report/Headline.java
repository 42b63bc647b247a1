package io.github.roundstar.report;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.GuidingMode;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.report.words.Times;
import io.github.roundstar.results.AxisDrift;
import io.github.roundstar.results.Component;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.NightSummary;
import io.github.roundstar.results.Periodic;

/** The one sentence on top, and sentences about the mount that headings share. */
final class Headline {
  private Headline() {}

  /** The verdict's sentence; without one, what the figures support. */
  static String of(NightResult result) {
    if (result.verdict() != null) {
      return result.verdict().summary();
    }
    NightSummary night = result.night();
    if (night.guided() == null) {
      return "No frame of this night could be used, so nothing can be said about the mount.";
    }
    String star = star(result) + Numbers.plain(night.guided().rmsRadialArcsec()) + " arcsec RMS";
    String worm = swing(night.periodic());
    if (worm != null) {
      return star + "; " + worm + ".";
    }
    String drift = drift(night.driftArcsecPerMinuteSky());
    return drift == null ? star + "." : star + "; " + drift + ".";
  }

  private static String star(NightResult result) {
    boolean leftAlone =
        !result.runs().isEmpty()
            && result.runs().stream().allMatch(run -> run.mode() == GuidingMode.UNGUIDED);
    return leftAlone
        ? "Left to itself, the mount let the star wander by "
        : "Guiding held the star to ";
  }

  /** What the worm does, when its interval leaves no doubt that it does; else null. */
  static String swing(Periodic periodic) {
    Estimate swing = periodic == null ? null : periodic.peakToPeakArcsecAxis();
    if (swing == null || swing.lo95() <= 0 || periodic.components().isEmpty()) {
      return null;
    }
    Component leading =
        periodic.components().stream()
            .filter(component -> component.source().equals("worm"))
            .findFirst()
            .orElse(periodic.components().get(0));
    String what =
        leading.source().equals("worm") ? "the worm swings the mount by " : "the mount swings by ";
    return what
        + Numbers.value(swing)
        + " arcsec every "
        + Times.shortPeriod(leading.periodSeconds().value());
  }

  /** Which way the mount drifts, when the interval excludes standing still; else null. */
  static String drift(AxisDrift drift) {
    if (drift == null) {
      return null;
    }
    String dec = way(drift.dec(), "north", "south");
    String ra = way(drift.ra(), "east", "west");
    if (dec == null && ra == null) {
      return null;
    }
    return "the mount drifts "
        + (dec == null ? ra : ra == null ? dec : dec + " and " + ra)
        + " arcsec a minute";
  }

  private static String way(Estimate drift, String positive, String negative) {
    if (drift == null || drift.covers(0)) {
      return null;
    }
    double sign = Math.signum(drift.value());
    return (sign > 0 ? positive : negative) + " by " + Numbers.value(drift.times(sign));
  }
}
