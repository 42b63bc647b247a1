package io.github.roundstar.compare;

import io.github.roundstar.results.CompareEvidence;
import io.github.roundstar.results.CompareEvidence.RunDrift;
import io.github.roundstar.results.Component;
import io.github.roundstar.results.NightEvidence;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.NotComputed;
import io.github.roundstar.results.Polyline;
import io.github.roundstar.results.RunResult;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** What the charts show of both sides, and which charts cannot be drawn. */
final class Overlays {
  /** Nights a side that are still told apart in a chart. */
  private static final int MOST_LINES = 12;

  private static final int DISTANCE_STEPS = 100;
  private static final String FRAMES =
      "it needs the frames, which a JSON result does not hold: give the logs themselves";

  private Overlays() {}

  static CompareEvidence of(Sides sides) {
    Optional<Component> turn = strongest(sides);
    return new CompareEvidence(
        lines(sides, night -> night.evidence().flatMap(Overlays::spectrum)),
        turn.isEmpty()
            ? new CompareEvidence.Sides(List.of(), List.of())
            : lines(sides, night -> TurnOfNight.of(night.result(), turn.get())),
        turn.map(part -> part.periodSeconds().value()).orElse(0.0),
        drifts(sides),
        lines(sides, night -> night.evidence().flatMap(Overlays::distances)));
  }

  static List<NotComputed> notDrawn(CompareEvidence evidence) {
    List<NotComputed> gaps = new ArrayList<>();
    if (evidence.spectra().lacksOne()) {
      gaps.add(new NotComputed("spectra", FRAMES));
    }
    if (evidence.turns().lacksOne()) {
      gaps.add(new NotComputed("one turn", "no periodic error was found on one of the sides"));
    }
    if (evidence.drifts().isEmpty()) {
      gaps.add(
          new NotComputed(
              "drift against hour angle",
              "the hour angle of the star is not known: add hour_angle"));
    }
    if (evidence.distances().lacksOne()) {
      gaps.add(new NotComputed("distribution of offsets", FRAMES));
    }
    return gaps;
  }

  private static CompareEvidence.Sides lines(
      Sides sides, Function<NightInput, Optional<Polyline>> line) {
    return new CompareEvidence.Sides(lines(sides.before(), line), lines(sides.after(), line));
  }

  private static List<Polyline> lines(
      List<NightInput> nights, Function<NightInput, Optional<Polyline>> line) {
    return nights.stream().flatMap(night -> line.apply(night).stream()).limit(MOST_LINES).toList();
  }

  private static Optional<Polyline> spectrum(NightEvidence evidence) {
    return evidence.spectrum().map(trace -> trace.amplitude()).filter(line -> line.size() > 1);
  }

  /** The worm where any night names it, else the strongest part of any night. */
  private static Optional<Component> strongest(Sides sides) {
    List<NightInput> all = new ArrayList<>(sides.before());
    all.addAll(sides.after());
    List<Component> parts =
        all.stream()
            .filter(night -> night.result().night().periodic() != null)
            .flatMap(night -> night.result().night().periodic().components().stream())
            .toList();
    Optional<Component> worm = parts.stream().filter(p -> p.source().equals("worm")).findFirst();
    return worm.or(
        () ->
            parts.stream()
                .reduce(
                    (a, b) ->
                        a.amplitudeArcsecAxis().value() >= b.amplitudeArcsecAxis().value()
                            ? a
                            : b));
  }

  private static List<RunDrift> drifts(Sides sides) {
    List<RunDrift> drifts = new ArrayList<>();
    sides.before().forEach(night -> add(drifts, night.result(), false));
    sides.after().forEach(night -> add(drifts, night.result(), true));
    return drifts;
  }

  private static void add(List<RunDrift> drifts, NightResult night, boolean after) {
    for (RunResult run : night.runs()) {
      Double hourAngle = Setup.middleHourAngle(run);
      boolean known =
          run.driftArcsecPerMinuteSky() != null
              && (run.driftArcsecPerMinuteSky().ra() != null
                  || run.driftArcsecPerMinuteSky().dec() != null);
      if (hourAngle != null && known) {
        drifts.add(
            new RunDrift(
                after, hourAngle, DriftFigures.raAtAxis(run), run.driftArcsecPerMinuteSky().dec()));
      }
    }
  }

  /** Share of the frames within a distance of their mean place, against that distance. */
  private static Optional<Polyline> distances(NightEvidence evidence) {
    Polyline points = evidence.offsets().points();
    int n = points.size();
    if (n < 2) {
      return Optional.empty();
    }
    double[] radius = new double[n];
    Arrays.setAll(radius, i -> Math.hypot(points.x(i), points.y(i)));
    Arrays.sort(radius);
    double[] x = new double[DISTANCE_STEPS + 1];
    double[] y = new double[DISTANCE_STEPS + 1];
    for (int i = 1; i <= DISTANCE_STEPS; i++) {
      y[i] = (double) i / DISTANCE_STEPS;
      x[i] = radius[(int) Math.min(n - 1L, Math.round(y[i] * (n - 1)))];
    }
    return Optional.of(Polyline.of(x, y));
  }
}
