package io.github.roundstar.report;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.report.words.Times;
import io.github.roundstar.results.AxisDrift;
import io.github.roundstar.results.Component;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.NightSummary;
import io.github.roundstar.results.Periodic;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

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
    Optional<String> tooFew = Guiding.tooFew(result);
    if (tooFew.isPresent()) {
      return tooFew.get();
    }
    List<String> parts = new ArrayList<>();
    String swing = swing(night.periodic());
    String drift = drift(night);
    boolean driftLeads = drift != null && (swing == null || outruns(night));
    if (driftLeads) {
      parts.add(drift);
    }
    if (swing != null) {
      parts.add(swing);
    }
    String star = star(result) + Numbers.plain(night.guided().rmsRadialArcsec()) + " arcsec RMS";
    return parts.isEmpty() ? star + "." : star + "; " + String.join(", and ", parts) + ".";
  }

  /** Whether drift takes the star farther than the periodic error does, in the time of a turn. */
  private static boolean outruns(NightSummary night) {
    AxisDrift drift = night.driftArcsecPerMinuteSky();
    double minutes = leading(night.periodic()).periodSeconds().value() / 60;
    double swing = night.periodic().peakToPeakArcsecAxis().value();
    return Math.max(least(drift.ra()), least(drift.dec())) * minutes > swing;
  }

  /** The part of a drift that its interval leaves no doubt about. */
  private static double least(Estimate drift) {
    return drift == null || drift.covers(0)
        ? 0
        : Math.min(Math.abs(drift.lo95()), Math.abs(drift.hi95()));
  }

  private static String star(NightResult result) {
    return Guiding.leftAlone(result)
        ? "Left to itself, the mount let the star wander by "
        : "Guiding held the star to ";
  }

  /** What the worm does, when its interval leaves no doubt that it does; else null. */
  static String swing(Periodic periodic) {
    Estimate swing = periodic == null ? null : periodic.peakToPeakArcsecAxis();
    if (swing == null || swing.lo95() <= 0 || periodic.components().isEmpty()) {
      return null;
    }
    Component leading = leading(periodic);
    String what =
        leading.source().equals("worm") ? "the worm swings the mount by " : "the mount swings by ";
    return what
        + Numbers.value(swing)
        + " arcsec every "
        + Times.shortPeriod(leading.periodSeconds().value());
  }

  /** The worm's own component, else the strongest. */
  static Component leading(Periodic periodic) {
    return periodic.components().stream()
        .filter(component -> component.source().equals("worm"))
        .findFirst()
        .orElse(periodic.components().get(0));
  }

  /** Which way the mount drifts; the mean when there are several runs, else null as below. */
  static String drift(NightSummary night) {
    String drift = drift(night.driftArcsecPerMinuteSky());
    return drift == null || night.runs() < 2 ? drift : "on average " + drift;
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
