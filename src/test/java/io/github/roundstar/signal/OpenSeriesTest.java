package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Periods that others published for series that others measured, found in the data themselves. Runs
 * where the folder of open series stands beside the project or is named by
 * ROUNDSTAR_REFERENCE_DATA.
 */
@Tag("reference-data")
class OpenSeriesTest {
  /**
   * NIST StRD ENSO, monthly pressure differences: independent periodogram (Astropy 5.2, same grid)
   * and the certified period of the nonlinear fit, which differs since three sinusoids are fitted
   * at once.
   */
  @Tag("published")
  @ParameterizedTest
  @CsvSource({
    "11, 13, 11.939, 12,     0.08",
    "38, 60, 44.323, 44.311, 0.944",
    "24, 30, 27.118, 26.888, 0.416"
  })
  void pressureCyclesOfTheSouthernOscillationAreFound(
      double from, double to, double peak, double certified, double certifiedTolerance)
      throws IOException {
    double[][] rows =
        rows("ENSO.dat")
            .dropWhile(line -> !line.startsWith("Data:   y"))
            .skip(1)
            .map(line -> numbers(line.strip().split("\\s+")))
            .toArray(double[][]::new);
    assertThat(rows.length).isEqualTo(168);
    Periodogram periodogram =
        Periodogram.of(series(rows, 1, 0), FrequencyGrid.between(1 / 150.0, 0.5, 50_000));
    Sinusoid found = periodogram.refined(highest(periodogram, 1 / to, 1 / from));
    assertThat(found.periodSeconds()).isCloseTo(peak, within(0.0006));
    assertThat(found.periodSeconds()).isCloseTo(certified, within(certifiedTolerance));
  }

  /** LINEAR 11375941: VanderPlas 2018, ApJS 236, 16: 2.58014 h +- 0.00004 h; Astropy 2.580140 h. */
  @Test
  @Tag("published")
  void periodOfAVariableStarIsFound() throws IOException {
    double[][] rows =
        rows("LINEAR_11375941.csv")
            .skip(1)
            .map(line -> numbers(line.split(",")))
            .toArray(double[][]::new);
    assertThat(rows.length).isEqualTo(280);
    Periodogram perDay =
        Periodogram.of(series(rows, 0, 1), FrequencyGrid.between(1, 20, 2_000_001));
    assertThat(24 * perDay.peak().periodSeconds()).isCloseTo(2.580140, within(1e-6));
  }

  /**
   * K2 Campaign 5, EPIC 211436265 (MAST): pointing pushed back by thrusters about every 6 hours
   * (Van Cleve et al. 2016, PASP 128, 075002, from memory); 5.88 h +- 0.03 h by Astropy and by the
   * spacing of the firings.
   */
  @Test
  @Tag("published")
  void thrusterPeriodOfASpacecraftIsFound() throws IOException {
    List<double[]> good =
        rows("k2_c05_211436265.csv")
            .skip(1)
            .map(line -> numbers(line.split(",")))
            .filter(row -> row[3] == 0)
            .toList();
    Series series = series(good.toArray(double[][]::new), 0, 1);
    assertThat(series.size()).isEqualTo(3253);
    LineTrend trend = LineTrend.of(series).orElseThrow();
    assertThat(trend.slopePerSecond()).isCloseTo(-3.98372707e-4, within(5e-13));
    double[] rest = series.values();
    for (int i = 0; i < rest.length; i++) {
      rest[i] -= trend.valueAtZero() + trend.slopePerSecond() * series.seconds(i);
    }
    Periodogram perHour =
        Periodogram.of(
            Series.of(series.seconds(), rest), FrequencyGrid.between(1 / 48.0, 1, 40_000));
    assertThat(perHour.peak().periodSeconds()).isCloseTo(5.88, within(0.03));
  }

  private static int highest(Periodogram periodogram, double fromHz, double toHz) {
    double step = periodogram.frequencyHz(1) - periodogram.frequencyHz(0);
    int from = (int) ((fromHz - periodogram.frequencyHz(0)) / step);
    return periodogram.highest(from, (int) ((toHz - periodogram.frequencyHz(0)) / step));
  }

  private static Series series(double[][] rows, int time, int value) {
    return Series.of(
        Stream.of(rows).mapToDouble(row -> row[time]).toArray(),
        Stream.of(rows).mapToDouble(row -> row[value]).toArray());
  }

  private static double[] numbers(String[] fields) {
    return Stream.of(fields).mapToDouble(Double::parseDouble).toArray();
  }

  private static Stream<String> rows(String name) throws IOException {
    return Files.readAllLines(folder().resolve(name)).stream().filter(line -> !line.isBlank());
  }

  private static Path folder() {
    String named = System.getenv("ROUNDSTAR_REFERENCE_DATA");
    if (named != null) {
      return Path.of(named);
    }
    return Stream.iterate(Path.of("").toAbsolutePath(), at -> at != null, Path::getParent)
        .map(at -> at.resolveSibling("shared").resolve("data"))
        .filter(Files::isDirectory)
        .findFirst()
        .orElseThrow();
  }
}
