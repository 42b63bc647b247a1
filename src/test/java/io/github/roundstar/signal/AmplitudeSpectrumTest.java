package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Amplitudes and densities are those of scipy.signal.periodogram, for any number of samples. */
class AmplitudeSpectrumTest {
  /** SciPy 1.10.1 and NumPy 1.24.2 on the shared even series less its mean. */
  @Tag("published")
  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          # k, f [Hz],    A rect,      A Hann,      PSD rect,       PSD Hann
          3,   0.003906250, 0.050110421, 0.981490340, 0.964244856,    246.610761761
          4,   0.005208333, 1.959862725, 1.953094255, 1474.967770568, 976.531754994
          5,   0.006510417, 0.051415283, 0.978432730, 1.015116041,    245.076635232
          16,  0.020833333, 0.754436296, 0.767263402, 218.562863644,  150.705440925
          100, 0.130208333, 0.038229547, 0.040341054, 0.561215325,    0.416614572
          128, 0.166666667, 0.030744098, 0.030221862, 0.725913240,    0.467640797
          """)
  void agreesWithScipy(
      int k, double hertz, double plain, double hann, double plainDensity, double hannDensity) {
    Series series = centred(KnownSeries.evenlySampled());
    AmplitudeSpectrum rectangular = AmplitudeSpectrum.of(series, Window.RECTANGULAR);
    AmplitudeSpectrum windowed = AmplitudeSpectrum.of(series, Window.HANN);
    assertThat(rectangular.frequencyHz(k)).isCloseTo(hertz, within(6e-10));
    assertThat(rectangular.amplitude(k)).isCloseTo(plain, within(6e-10));
    assertThat(windowed.amplitude(k)).isCloseTo(hann, within(6e-10));
    assertThat(rectangular.density(k)).isCloseTo(plainDensity, within(6e-10));
    assertThat(windowed.density(k)).isCloseTo(hannDensity, within(6e-10));
  }

  /** Parseval: the density adds up to the variance, weighted by the window's square. */
  @Test
  @Tag("published")
  void densityAddsUpToTheVariance() {
    Series series = centred(KnownSeries.evenlySampled());
    assertThat(total(AmplitudeSpectrum.of(series, Window.RECTANGULAR)))
        .isCloseTo(2.365290169525669, within(1e-13));
    assertThat(total(AmplitudeSpectrum.of(series, Window.HANN)))
        .isCloseTo(2.377036450670399, within(1e-13));
  }

  /** NumPy: largest amplitude of 2 cos(2 pi k n / 256 + 0.3) on and off the bins. */
  @Tag("published")
  @ParameterizedTest
  @CsvSource({
    "10,    2.000000000, 2.000000000, 10",
    "10.25, 1.793091276, 1.920705485, 10",
    "10.5,  1.301505117, 1.697713845, 11"
  })
  void scallopingIsAsPublished(double cycles, double plain, double hann, int plainBin) {
    double[] values = new double[256];
    Arrays.setAll(values, n -> 2 * Math.cos(2 * Math.PI * cycles * n / 256 + 0.3));
    AmplitudeSpectrum rectangular = AmplitudeSpectrum.of(even(values), Window.RECTANGULAR);
    AmplitudeSpectrum windowed = AmplitudeSpectrum.of(even(values), Window.HANN);
    assertThat(highest(rectangular)).isEqualTo(plainBin);
    assertThat(rectangular.amplitude(plainBin)).isCloseTo(plain, within(6e-10));
    assertThat(highest(windowed)).isEqualTo(10);
    assertThat(windowed.amplitude(10)).isCloseTo(hann, within(6e-10));
  }

  /** NIST StRD Lew, 200 values: NumPy's strongest bin 60 and its amplitude. */
  @Test
  @Tag("published")
  void beamOscillationIsFound() {
    AmplitudeSpectrum spectrum =
        AmplitudeSpectrum.of(centred(even(NumberFile.read("nist-lew.csv"))), Window.RECTANGULAR);
    assertThat(highest(spectrum)).isEqualTo(60);
    assertThat(spectrum.amplitude(60)).isCloseTo(286.55571871458926, within(1e-10));
  }

  /** Sunspot numbers 1700-2008 (NOAA/NGDC), 309 values: NumPy's strongest bin and its amplitude. */
  @Test
  @Tag("published")
  void sunspotCycleIsFoundForAnOddNumberOfSamples() {
    double[] numbers = NumberFile.read("sunspots-1700-2008.csv");
    AmplitudeSpectrum spectrum = AmplitudeSpectrum.of(centred(even(numbers)), Window.RECTANGULAR);
    assertThat(spectrum.size()).isEqualTo(155);
    assertThat(highest(spectrum)).isEqualTo(28);
    assertThat(1 / spectrum.frequencyHz(28)).isCloseTo(11.0357, within(5e-5));
    assertThat(spectrum.amplitude(28)).isCloseTo(29.56129168, within(6e-9));
  }

  @Tag("identity")
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 5, 64, 97, 100})
  void transformOfAnyLengthIsTheDefiningSum(int n) {
    double[] values = KnownSeries.unitNoise(n);
    double[][] half = Dft.half(values);
    assertThat(half[0]).hasSize(n / 2 + 1);
    for (int k = 0; k <= n / 2; k++) {
      double real = 0;
      double imaginary = 0;
      for (int i = 0; i < n; i++) {
        real += values[i] * Math.cos(2 * Math.PI * k * i / n);
        imaginary -= values[i] * Math.sin(2 * Math.PI * k * i / n);
      }
      assertThat(half[0][k]).isCloseTo(real, within(1e-12));
      assertThat(half[1][k]).isCloseTo(imaginary, within(1e-12));
    }
  }

  @Test
  void unevenStepsAreRefused() {
    Series series = Series.of(new double[] {0, 1, 2.1}, new double[3]);
    assertThatThrownBy(() -> AmplitudeSpectrum.of(series, Window.HANN))
        .hasMessageContaining("step to time [1] is 1.0 s, expected an even 1.05 s");
    assertThatThrownBy(() -> AmplitudeSpectrum.of(shifted(100, 2e-4), Window.HANN))
        .hasMessageContaining("expected an even 100.0 s");
    assertThatThrownBy(() -> AmplitudeSpectrum.of(shifted(0.01, 2e-8), Window.HANN))
        .hasMessageContaining("expected an even 0.01 s");
    Series lone = Series.of(new double[1], new double[1]);
    assertThatThrownBy(() -> AmplitudeSpectrum.of(lone, Window.HANN))
        .hasMessageContaining("at least 2");
  }

  @Test
  void stepsEvenToAMillionthAreTaken() {
    double step = AmplitudeSpectrum.of(shifted(100, 5e-5), Window.RECTANGULAR).stepHz();
    assertThat(step).isCloseTo(1 / 400.0, within(1e-12));
    assertThat(AmplitudeSpectrum.of(shifted(0.01, 5e-9), Window.RECTANGULAR).size()).isEqualTo(3);
  }

  /** Four samples, the third late by {@code late}. */
  private static Series shifted(double step, double late) {
    return Series.of(new double[] {0, step, 2 * step + late, 3 * step}, new double[4]);
  }

  private static Series even(double[] values) {
    double[] seconds = new double[values.length];
    Arrays.setAll(seconds, i -> i);
    return Series.of(seconds, values);
  }

  private static Series centred(Series series) {
    return Series.of(series.seconds(), Autocorrelation.centred(series.values()));
  }

  private static int highest(AmplitudeSpectrum spectrum) {
    int best = 0;
    for (int k = 1; k < spectrum.size(); k++) {
      best = spectrum.amplitude(k) > spectrum.amplitude(best) ? k : best;
    }
    return best;
  }

  private static double total(AmplitudeSpectrum spectrum) {
    double sum = 0;
    for (int k = 0; k < spectrum.size(); k++) {
      sum += spectrum.density(k) * spectrum.stepHz();
    }
    return sum;
  }
}
