package io.github.roundstar.compare;

import io.github.roundstar.results.ComparisonBasis;
import io.github.roundstar.results.Component;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.Response;
import io.github.roundstar.results.RunResult;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/** What a set of nights was taken with, as far as their results tell. */
final class Setup {
  private static final double SIDEREAL_ARCSEC_PER_SECOND = 15.041067;

  private final List<NightResult> nights;

  Setup(List<NightResult> nights) {
    this.nights = nights;
  }

  /** Names of mounts, each once. */
  TreeSet<String> mounts() {
    return words(ComparisonBasis::mountName);
  }

  /** Hemispheres, each once. */
  TreeSet<String> hemispheres() {
    return words(ComparisonBasis::hemisphere);
  }

  /** Scales of the main camera [arcsec per pixel]. */
  double[] imagingScales() {
    return nights.stream()
        .map(night -> night.night().comparison())
        .filter(basis -> basis != null && basis.imagingArcsecPerPixel() != null)
        .mapToDouble(ComparisonBasis::imagingArcsecPerPixel)
        .toArray();
  }

  /** Scales of the guide camera [arcsec per pixel]. */
  double[] guideScales() {
    return settings(RunResult::guideScaleArcsecPerPixel);
  }

  double[] cadencesSeconds() {
    return settings(RunResult::cadenceSeconds);
  }

  double[] declinationsDeg() {
    return settings(RunResult::declinationDeg);
  }

  /** Hour angles at the middle of the runs [h]. */
  double[] hourAnglesHours() {
    return settings(Setup::middleHourAngle);
  }

  /** Declared guide rates, times sidereal. */
  double[] guideRates() {
    return settings(
        run -> {
          Response response = run.responseArcsecPerSecond();
          Double declared =
              response == null
                  ? null
                  : response.ra() != null
                      ? response.ra().declaredAxis()
                      : response.dec() != null ? response.dec().declaredAxis() : null;
          return declared == null ? null : declared / SIDEREAL_ARCSEC_PER_SECOND;
        });
  }

  /** Periods that carry the worm's name [s]. */
  double[] wormSeconds() {
    return nights.stream()
        .filter(night -> night.night().periodic() != null)
        .flatMap(night -> night.night().periodic().components().stream())
        .filter(part -> part.source().equals("worm"))
        .map(Component::periodSeconds)
        .mapToDouble(period -> period.value())
        .toArray();
  }

  static Double middleHourAngle(RunResult run) {
    return run.hourAngleHours() == null
        ? null
        : run.hourAngleHours() + run.durationSeconds() / 2 / 3600;
  }

  /** Least and greatest of values, as a reader would say it. */
  static String span(double[] values) {
    double low = DoubleStream.of(values).min().orElse(0);
    double high = DoubleStream.of(values).max().orElse(0);
    String one = String.format(Locale.ROOT, "%.2f", low);
    String other = String.format(Locale.ROOT, "%.2f", high);
    return one.equals(other) ? one : one + " to " + other;
  }

  private double[] settings(Function<RunResult, Double> of) {
    return nights.stream()
        .flatMap(night -> OverRuns.setting(night, of).stream())
        .mapToDouble(Double::doubleValue)
        .toArray();
  }

  private TreeSet<String> words(Function<ComparisonBasis, String> of) {
    TreeSet<String> words = new TreeSet<>();
    nights.stream()
        .flatMap(night -> Stream.ofNullable(night.night().comparison()))
        .flatMap(basis -> Optional.ofNullable(of.apply(basis)).stream())
        .forEach(words::add);
    return words;
  }
}
