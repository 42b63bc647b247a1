package io.github.roundstar.compare;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.Trend;
import io.github.roundstar.signal.LeastSquares;
import io.github.roundstar.signal.LinearFit;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.apache.commons.math3.distribution.TDistribution;

/** Figures along a season: a straight line with a step at every change. */
final class SeasonTrends {
  private static final double DAYS_PER_MONTH = 30;

  /** Fewer nights beyond the line and its steps say nothing of how nights scatter. */
  private static final int LEAST_SPARE_NIGHTS = 2;

  /** These repeat what others say; a season shows each thing once. */
  private static final Set<String> LEFT_OUT =
      Set.of("periodic-steepest-rate", "rms-ra", "rms-dec", "polar-azimuth", "polar-altitude");

  private SeasonTrends() {}

  static List<Trend> of(List<DatedNight> nights, List<MountChange> changes) {
    List<NightResult> results = DatedNight.results(nights);
    EqualAir air = new EqualAir(results, results);
    Comparability whole = new Comparability(results, results);
    return PairTests.figures(results, results, air).stream()
        .filter(figure -> !LEFT_OUT.contains(figure.key()))
        .filter(figure -> figure.kind() != Figure.Kind.DRIFT && whole.because(figure).isEmpty())
        .map(figure -> trend(figure, nights, changes))
        .filter(trend -> !trend.points().isEmpty())
        .toList();
  }

  private static Trend trend(Figure figure, List<DatedNight> nights, List<MountChange> changes) {
    Instant first = nights.get(0).start();
    List<Trend.Point> points = new ArrayList<>();
    List<DatedNight> known = new ArrayList<>();
    for (DatedNight night : nights) {
      Reading reading = figure.reading().apply(night.result());
      if (reading.known()) {
        known.add(night);
        points.add(
            new Trend.Point(
                night.result().night().date(),
                night.daysSince(first),
                Estimate.symmetric(
                    figure.aim().compared(reading.value()),
                    Estimate.SIGMAS_95 * reading.withinError())));
      }
    }
    Optional<Estimate> slope = slope(points, known, changes);
    return new Trend(
        figure.key(),
        figure.name(),
        figure.kind().group(),
        figure.unit(),
        figure.aim().words(figure.unit()),
        slope.orElse(null),
        slope.isPresent() ? null : "too few nights between the changes to tell a slope",
        points);
  }

  private static Optional<Estimate> slope(
      List<Trend.Point> points, List<DatedNight> nights, List<MountChange> changes) {
    double[] days = points.stream().mapToDouble(Trend.Point::days).toArray();
    List<double[]> columns = new ArrayList<>(List.of(days));
    for (MountChange change : changes) {
      double[] step = new double[days.length];
      int after = 0;
      for (int i = 0; i < step.length; i++) {
        step[i] = nights.get(i).evening().isBefore(change.date()) ? 0 : 1;
        after += (int) step[i];
      }
      if (after > 0 && after < step.length) {
        columns.add(step);
      }
    }
    if (days.length < columns.size() + 1 + LEAST_SPARE_NIGHTS) {
      return Optional.empty();
    }
    return LeastSquares.withConstant(days.length, columns.toArray(double[][]::new))
        .map(design -> slope(design.fit(values(points))));
  }

  private static double[] values(List<Trend.Point> points) {
    return points.stream().mapToDouble(point -> point.value().value()).toArray();
  }

  private static Estimate slope(LinearFit fit) {
    double t = new TDistribution(null, fit.degreesOfFreedom()).inverseCumulativeProbability(0.975);
    return Estimate.symmetric(fit.coefficient(1), t * fit.standardError(1)).times(DAYS_PER_MONTH);
  }

  /** Days from the season's first night to noon of a date. */
  static double days(Instant first, MountChange change) {
    Instant noon = change.date().atTime(12, 0).toInstant(ZoneOffset.UTC);
    return java.time.Duration.between(first, noon).toSeconds() / 86_400.0;
  }
}
