package io.github.roundstar.diagnosis;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.GuidingMode;
import io.github.roundstar.model.Night;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.Gears;
import io.github.roundstar.motion.PeriodicError;
import io.github.roundstar.motion.StarScatter;
import io.github.roundstar.results.AxisDrift;
import io.github.roundstar.results.Backlash;
import io.github.roundstar.results.ComparisonBasis;
import io.github.roundstar.results.Guided;
import io.github.roundstar.results.NightSummary;
import io.github.roundstar.results.NoiseFloor;
import io.github.roundstar.results.Response;
import io.github.roundstar.results.RunResult;
import io.github.roundstar.results.Sticking;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/** All runs of a night together as the result shows them. */
final class NightFigures {
  private static final Answer<Estimate> RUN_BY_RUN =
      Answer.none("every run has a drift of its own: see the runs");

  private NightFigures() {}

  static NightSummary of(
      Night night,
      List<RunStudy> studies,
      List<RunResult> runs,
      Answer<PeriodicError> periodic,
      OptionalDouble imagingArcsecPerPixel,
      Gears gears,
      Equipment equipment,
      ComparisonBasis comparison,
      boolean siteShown,
      Reasons.Scope scope) {
    return new NightSummary(
        night.name(),
        instant("/startUtc", NightClock.of(night.runs()).start(), scope),
        instant("/endUtc", end(night), scope),
        studies.size(),
        studies.stream().mapToInt(study -> study.run().frames().size()).sum(),
        studies.stream()
            .filter(study -> study.run().mode() != GuidingMode.UNGUIDED)
            .mapToDouble(study -> study.durationSeconds() / 3600)
            .sum(),
        scope.part("/guided", () -> guided(studies, imagingArcsecPerPixel, scope), null),
        scope.part(
            "/driftArcsecPerMinuteSky",
            () ->
                new AxisDrift(
                    scope.orNull(
                        "/driftArcsecPerMinuteSky/ra", mean(studies, RunStudy::raDriftSky)),
                    scope.orNull(
                        "/driftArcsecPerMinuteSky/dec", mean(studies, RunStudy::decDrift))),
            new AxisDrift(null, null)),
        scope.part(
            "/responseArcsecPerSecond",
            () -> new NightPulses(studies, runs, scope).response(),
            new Response(null, null, null)),
        scope.part(
            "/noiseFloorArcsec",
            () -> new NightPulses(studies, runs, scope).noiseFloor(),
            new NoiseFloor(null, null, null)),
        scope.part(
            "/periodic",
            () -> PeriodicFigures.of(periodic, gears, Directions.of(studies), scope),
            null),
        scope.part(
            "/backlashArcsecAxis",
            () -> new NightPulses(studies, runs, scope).backlash(),
            new Backlash(null, null)),
        scope.part(
            "/stickingArcsecAxis",
            () -> new NightPulses(studies, runs, scope).sticking(),
            new Sticking(null)),
        scope.part(
            "/settling", () -> SettlingFigures.of(night.runs(), scope), SettlingFigures.NONE),
        comparison,
        scope.part("/learned", () -> LearnedFigures.of(studies, equipment, scope), null),
        scope.part(
            "/pointings",
            () -> PointingFigures.of(night, studies, runs, equipment, siteShown, scope),
            null));
  }

  private static String instant(String figure, Optional<Instant> instant, Reasons.Scope scope) {
    return scope.orNull(figure, instant.map(Instants::text), Instants.UNDATED);
  }

  private static Optional<Instant> end(Night night) {
    return night.runs().stream()
        .filter(run -> run.frames().size() > 0)
        .reduce((first, second) -> second)
        .flatMap(run -> run.instantAt(run.frames().timeSeconds(run.frames().size() - 1)));
  }

  private static Guided guided(
      List<RunStudy> studies, OptionalDouble imagingArcsecPerPixel, Reasons.Scope scope) {
    return studies.stream()
        .flatMap(study -> study.scatter().stream())
        .reduce(StarScatter::pooledWith)
        .map(
            pooled ->
                new GuidedFigures(imagingArcsecPerPixel, Directions.of(studies), scope)
                    .of(pooled, RUN_BY_RUN, RUN_BY_RUN))
        .orElseGet(() -> scope.orNull("/guided", Answer.none("no frame of the night was usable")));
  }

  /**
   * Mean over the runs that have the figure, weighted by their length. What is not known of the
   * mount's response is the same in all runs, so their intervals are averaged too, not taken as
   * independent.
   */
  static Answer<Estimate> mean(
      List<RunStudy> studies, Function<RunStudy, Answer<Estimate>> figure) {
    double weight = 0;
    double sum = 0;
    double halves = 0;
    for (RunStudy study : studies) {
      Optional<Estimate> drift = figure.apply(study).value();
      if (drift.isPresent()) {
        double seconds = study.durationSeconds();
        double half = (drift.get().hi95() - drift.get().lo95()) / 2;
        weight += seconds;
        sum += seconds * drift.get().value();
        halves += seconds * half;
      }
    }
    if (weight == 0) {
      return studies.isEmpty() ? Answer.none("there is no run") : figure.apply(studies.get(0));
    }
    return Answer.of(Estimate.symmetric(sum / weight, halves / weight));
  }
}
