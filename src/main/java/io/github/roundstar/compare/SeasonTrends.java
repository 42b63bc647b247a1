package io.github.roundstar.compare;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.Trend;
import io.github.roundstar.signal.LeastSquares;
import io.github.roundstar.signal.Welch;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Figures along a season: a straight line with a step at every change. */
final class SeasonTrends {
  private static final double DAYS_PER_MONTH = 30;

  /** Fewer nights beyond the line and its steps say nothing of how nights scatter. */
  private static final int LEAST_SPARE_NIGHTS = 2;

  /** These repeat what others say; a season shows each thing once. */
  static final Set<String> REPEATED =
      Set.of("periodic-steepest-rate", "rms-ra", "rms-dec", "polar-azimuth", "polar-altitude");

  private SeasonTrends() {}

  /** A figure of a telescope whose nights carry a line, before all lines are judged together. */
  private record Line(Figure figure, Telescope telescope, List<Trend.Point> points, Welch slope) {
    /** Exactly even nights have no slope, for certain. */
    double probability() {
      return slope == null ? 1 : slope.probability();
    }

    Trend trend(double level) {
      double[] values = values(points);
      return new Trend(
          figure.key(),
          figure.name(),
          figure.kind().group(),
          figure.unit(),
          figure.aim().words(figure.unit()),
          telescope.name(),
          slope == null
              ? null
              : Estimate.symmetric(slope.difference(), slope.least(level)).times(DAYS_PER_MONTH),
          slope == null ? "too few nights between the changes to tell a slope" : null,
          OwnNights.band(values).orElse(null),
          points);
    }
  }

  /** All figures of all telescopes; slopes hold for all of them together, as in a comparison. */
  static List<Trend> of(List<Telescope> telescopes, List<MountChange> changes, Instant first) {
    List<Line> lines =
        telescopes.stream()
            .flatMap(telescope -> lines(telescope, changes, first).stream())
            .toList();
    List<Line> sloped = lines.stream().filter(line -> line.slope() != null).toList();
    double[] levels = Judge.levels(sloped.stream().mapToDouble(Line::probability).toArray());
    List<Trend> trends = new ArrayList<>();
    int next = 0;
    for (Line line : lines) {
      trends.add(line.trend(line.slope() == null ? 1 : levels[next++]));
    }
    return trends;
  }

  private static List<Line> lines(Telescope telescope, List<MountChange> changes, Instant first) {
    List<NightResult> results = DatedNight.results(telescope.nights());
    EqualAir air = new EqualAir(results, results);
    Comparability whole = new Comparability(results, results);
    return PairTests.figures(results, results, air).stream()
        .filter(figure -> !REPEATED.contains(figure.key()))
        .filter(figure -> figure.kind() != Figure.Kind.DRIFT && whole.because(figure).isEmpty())
        .map(figure -> line(figure, telescope, changes, first))
        .filter(line -> !line.points().isEmpty())
        .toList();
  }

  private static Line line(
      Figure figure, Telescope telescope, List<MountChange> changes, Instant first) {
    List<Trend.Point> points = new ArrayList<>();
    List<DatedNight> known = new ArrayList<>();
    for (DatedNight night : telescope.nights()) {
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
    return new Line(figure, telescope, points, slope(points, known, changes).orElse(null));
  }

  private static Optional<Welch> slope(
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
        .map(design -> design.fit(values(points)))
        .map(fit -> new Welch(fit.coefficient(1), fit.standardError(1), fit.degreesOfFreedom()));
  }

  private static double[] values(List<Trend.Point> points) {
    return points.stream().mapToDouble(point -> point.value().value()).toArray();
  }

  /** Days from the season's first night to noon of a date. */
  static double days(Instant first, MountChange change) {
    Instant noon = change.date().atTime(12, 0).toInstant(ZoneOffset.UTC);
    return java.time.Duration.between(first, noon).toSeconds() / 86_400.0;
  }
}
