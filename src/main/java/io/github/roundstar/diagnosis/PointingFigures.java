package io.github.roundstar.diagnosis;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.model.Night;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.motion.StarScatter;
import io.github.roundstar.results.AxisDrift;
import io.github.roundstar.results.Flip;
import io.github.roundstar.results.Pointings;
import io.github.roundstar.results.RunResult;
import io.github.roundstar.results.Target;
import io.github.roundstar.signal.MovingBlocks;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Function;

/** Fields, flips and airmass of a night as the result shows them. */
final class PointingFigures {
  private static final double STEP_SECONDS = 300;
  private static final String SITE = "left out on request, since it tells the site";
  private static final String LOG = "the log does not tell";
  private static final String UNUSED = "no frame of the field was usable";

  private static final Map<String, Function<Flip, Flip.Change>> FLIP_FIGURES =
      new TreeMap<>(
          Map.of(
              "raRmsArcsec", Flip::raRmsArcsec,
              "decRmsArcsec", Flip::decRmsArcsec,
              "raNoiseArcsec", Flip::raNoiseArcsec,
              "decNoiseArcsec", Flip::decNoiseArcsec,
              "raDriftArcsecPerMinuteSky", Flip::raDriftArcsecPerMinuteSky,
              "decDriftArcsecPerMinuteSky", Flip::decDriftArcsecPerMinuteSky,
              "raResponseArcsecPerSecondAxis", Flip::raResponseArcsecPerSecondAxis,
              "decResponseArcsecPerSecondAxis", Flip::decResponseArcsecPerSecondAxis));

  private PointingFigures() {}

  static Pointings of(
      Night night,
      List<RunStudy> studies,
      List<RunResult> runs,
      Equipment equipment,
      boolean siteShown,
      Reasons.Scope scope) {
    NightClock clock = NightClock.of(night.runs());
    Fields fields = Fields.of(night.runs(), clock, equipment);
    List<Target> targets = new ArrayList<>();
    for (int f = 0; f < fields.runs().size(); f++) {
      List<RunStudy> own = fields.runs().get(f).stream().map(studies::get).toList();
      targets.add(target(f + 1, own, equipment, siteShown));
    }
    Pointings pointings =
        new Pointings(
            targets,
            FlipFigures.of(studies, runs, fields, clock),
            scope.orNull(
                "/pointings/airmass",
                AirmassFigures.of(studies, fields, clock, equipment, siteShown)));
    reasons(pointings, studies, siteShown, scope);
    return pointings;
  }

  /** Why figures are missing, once for all fields and flips. */
  private static void reasons(
      Pointings pointings, List<RunStudy> studies, boolean siteShown, Reasons.Scope scope) {
    String height = siteShown ? "latitude, declination or hour angle is not surely known" : SITE;
    String motion = "too little is known of the motion in the runs concerned: see the runs";
    String eastward = because(studies, RunStudy::raDriftSky);
    String northward = because(studies, RunStudy::decDrift);
    String field = "/pointings/targets/*";
    missing(pointings.targets(), Target::declinationDeg, field + "/declinationDeg", LOG, scope);
    missing(
        pointings.targets(),
        Target::rightAscensionHours,
        field + "/rightAscensionHours",
        LOG,
        scope);
    missing(
        pointings.targets(), Target::leastAltitudeDeg, field + "/leastAltitudeDeg", height, scope);
    missing(
        pointings.targets(), Target::mostAltitudeDeg, field + "/mostAltitudeDeg", height, scope);
    missing(pointings.targets(), Target::raRmsArcsec, field + "/raRmsArcsec", UNUSED, scope);
    missing(pointings.targets(), Target::decRmsArcsec, field + "/decRmsArcsec", UNUSED, scope);
    String drift = field + "/driftArcsecPerMinuteSky";
    missing(
        pointings.targets(), t -> t.driftArcsecPerMinuteSky().ra(), drift + "/ra", eastward, scope);
    missing(
        pointings.targets(),
        t -> t.driftArcsecPerMinuteSky().dec(),
        drift + "/dec",
        northward,
        scope);
    missing(pointings.flips(), Flip::utc, "/pointings/flips/*/utc", Instants.UNDATED, scope);
    FLIP_FIGURES.forEach(
        (name, figure) ->
            missing(pointings.flips(), figure, "/pointings/flips/*/" + name, motion, scope));
    if (pointings.airmass() != null && !siteShown) {
      scope.note("/pointings/airmass/leastAirmass", SITE);
      scope.note("/pointings/airmass/mostAirmass", SITE);
    }
  }

  /** The first reason why a run has no such figure. */
  private static <T> String because(List<RunStudy> studies, Function<RunStudy, Answer<T>> figure) {
    return studies.stream()
        .map(figure)
        .filter(answer -> answer.value().isEmpty())
        .map(Answer::because)
        .findFirst()
        .orElse("");
  }

  private static <T> void missing(
      List<T> items, Function<T, ?> figure, String place, String because, Reasons.Scope scope) {
    if (items.stream().anyMatch(item -> figure.apply(item) == null)) {
      scope.note(place, because);
    }
  }

  private static Target target(
      int number, List<RunStudy> studies, Equipment equipment, boolean siteShown) {
    double[] altitudes = siteShown ? altitudes(studies, equipment) : new double[0];
    boolean known = altitudes.length > 0;
    return new Target(
        number,
        studies.stream().map(study -> study.run().id()).toList(),
        first(studies, run -> run.pointing().declinationDegrees()),
        first(studies, run -> run.pointing().rightAscensionHours()),
        known ? Arrays.stream(altitudes).min().orElseThrow() : null,
        known ? Arrays.stream(altitudes).max().orElseThrow() : null,
        rms(studies, Axis.RA).orElse(null),
        rms(studies, Axis.DEC).orElse(null),
        new AxisDrift(
            NightFigures.mean(studies, RunStudy::raDriftSky).value().orElse(null),
            NightFigures.mean(studies, RunStudy::decDrift).value().orElse(null)));
  }

  private static Double first(List<RunStudy> studies, Function<GuideRun, OptionalDouble> figure) {
    return studies.stream()
        .map(study -> figure.apply(study.run()))
        .filter(OptionalDouble::isPresent)
        .map(OptionalDouble::getAsDouble)
        .findFirst()
        .orElse(null);
  }

  /** RMS over runs, each about its own mean, with its interval; nothing without a used frame. */
  static Optional<Estimate> rms(List<RunStudy> studies, Axis axis) {
    return studies.stream()
        .flatMap(study -> study.scatter().stream())
        .reduce(StarScatter::pooledWith)
        .map(
            pooled -> {
              double[] ra = pooled.aboutMeanArcsec(Axis.RA);
              double[] dec = pooled.aboutMeanArcsec(Axis.DEC);
              double[] raSquares = ScatterIntervals.products(ra, ra);
              double[] decSquares = ScatterIntervals.products(dec, dec);
              MovingBlocks blocks = ScatterIntervals.blocks(raSquares, decSquares);
              return ScatterIntervals.root(blocks, axis == Axis.RA ? raSquares : decSquares);
            });
  }

  /** Every few minutes over all runs; empty unless the height is known in each of them [deg]. */
  private static double[] altitudes(List<RunStudy> studies, Equipment equipment) {
    List<Double> found = new ArrayList<>();
    for (RunStudy study : studies) {
      Optional<StarHeight> height = StarHeight.of(study.run(), equipment);
      if (height.isEmpty()) {
        return new double[0];
      }
      int steps = (int) Math.max(1, Math.ceil(study.durationSeconds() / STEP_SECONDS));
      for (int i = 0; i <= steps; i++) {
        found.add(height.get().altitudeDegrees(study.durationSeconds() * i / steps));
      }
    }
    return found.stream().mapToDouble(degrees -> degrees).toArray();
  }
}
