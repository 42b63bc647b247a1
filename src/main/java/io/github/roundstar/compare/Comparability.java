package io.github.roundstar.compare;

import io.github.roundstar.results.NightResult;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.DoubleStream;

/** What differs between the nights, and which figures cannot be compared for it. */
final class Comparability {
  private static final double SAME_SCALE = 0.02;
  private static final double SAME_RATE = 0.02;
  private static final double SAME_WORM = 0.01;
  private static final double SAME_CADENCE = 0.1;

  /** Beyond these the same polar axis drifts a star otherwise. */
  private static final double SAME_DECLINATION_DEG = 5;

  private static final double SAME_HOUR_ANGLE_HOURS = 1;

  private final Setup before;
  private final Setup after;

  Comparability(List<NightResult> before, List<NightResult> after) {
    this.before = new Setup(before);
    this.after = new Setup(after);
  }

  /** Why a figure must not be compared; empty when it may. */
  Optional<String> because(Figure figure) {
    boolean mount = figure.kind().group().equals("mount");
    if (mount && otherMount()) {
      return Optional.of("the nights are of different mounts");
    }
    return switch (figure.kind()) {
      case PERIODIC ->
          differ(before.wormSeconds(), after.wormSeconds(), SAME_WORM)
              ? Optional.of("the worm turns in another time, so it is another gear")
              : Optional.empty();
      case POLAR ->
          otherHemisphere()
              ? Optional.of("the nights are from both hemispheres, so the mount was set up anew")
              : Optional.empty();
      case DRIFT -> drift();
      default -> Optional.empty();
    };
  }

  private Optional<String> drift() {
    if (otherHemisphere()) {
      return Optional.of("the nights are from both hemispheres, so the mount was set up anew");
    }
    if (before.declinationsDeg().length * after.declinationsDeg().length == 0
        || before.hourAnglesHours().length * after.hourAnglesHours().length == 0) {
      return Optional.of(
          "drift depends on where the star stands, which is not known of all nights: add declination"
              + " and hour_angle to the logs");
    }
    boolean elsewhere =
        Math.abs(mean(before.declinationsDeg()) - mean(after.declinationsDeg()))
                > SAME_DECLINATION_DEG
            || Math.abs(mean(before.hourAnglesHours()) - mean(after.hourAnglesHours()))
                > SAME_HOUR_ANGLE_HOURS;
    return elsewhere
        ? Optional.of(
            "drift depends on where the star stands, and it stood elsewhere; the polar axis does"
                + " not")
        : Optional.empty();
  }

  /** What the reader should know of the nights. */
  List<String> noticed() {
    List<String> noticed = new ArrayList<>();
    if (otherMount()) {
      noticed.add(
          "Different mounts ("
              + String.join(", ", union(before.mounts(), after.mounts()))
              + "): figures of the mount were not compared.");
    }
    if (otherHemisphere()) {
      noticed.add(
          "Nights from both hemispheres: polar axis and drift were not compared; the rest was.");
    }
    differing(
        noticed,
        "Guide scale",
        before.guideScales(),
        after.guideScales(),
        SAME_SCALE,
        "arcsec per pixel: offsets were compared in arcsec; the noise floor carries the rest.");
    differing(
        noticed,
        "Scale of the main camera",
        before.imagingScales(),
        after.imagingScales(),
        SAME_SCALE,
        "arcsec per pixel: round exposures mean another thing before and after.");
    differing(
        noticed,
        "Declared guide rate",
        before.guideRates(),
        after.guideRates(),
        SAME_RATE,
        "times sidereal: response was compared as a share of it; guiding changed with it.");
    differing(
        noticed,
        "Worm period",
        before.wormSeconds(),
        after.wormSeconds(),
        SAME_WORM,
        "s: another gear, so the periodic error was not compared.");
    differing(
        noticed,
        "Cadence",
        before.cadencesSeconds(),
        after.cadencesSeconds(),
        SAME_CADENCE,
        "s: scatter in equal air was brought to one cadence.");
    return noticed;
  }

  private static void differing(
      List<String> noticed, String what, double[] one, double[] other, double same, String then) {
    if (differ(one, other, same)) {
      noticed.add(
          what
              + " differs, "
              + Setup.span(one)
              + " before and "
              + Setup.span(other)
              + " after, in "
              + then);
    }
  }

  private boolean otherMount() {
    return other(before.mounts(), after.mounts());
  }

  private boolean otherHemisphere() {
    return other(before.hemispheres(), after.hemispheres());
  }

  private static boolean other(TreeSet<String> one, TreeSet<String> other) {
    return !one.isEmpty() && !other.isEmpty() && union(one, other).size() > 1;
  }

  private static TreeSet<String> union(TreeSet<String> one, TreeSet<String> other) {
    TreeSet<String> all = new TreeSet<>(one);
    all.addAll(other);
    return all;
  }

  private static boolean differ(double[] one, double[] other, double share) {
    return one.length > 0 && other.length > 0 && Math.abs(mean(one) / mean(other) - 1) > share;
  }

  private static double mean(double[] values) {
    return DoubleStream.of(values).average().orElse(0);
  }
}
