package io.github.roundstar.motion;

import io.github.roundstar.signal.AmplitudeSpectrum;
import io.github.roundstar.signal.EvenResampling;
import io.github.roundstar.signal.FrequencyGrid;
import io.github.roundstar.signal.Series;
import io.github.roundstar.signal.Window;
import java.util.Comparator;
import java.util.List;

/**
 * Amplitude of the motion in right ascension against period, by FFT: the longest run, unknown steps
 * closed, drift removed, resampled evenly at its cadence, Hann window, normalised so that a line
 * shows its amplitude. Immutable.
 */
public final class AmplitudeTrace {
  /** Equivalent noise bandwidth of the Hann window in bins: Harris (1978), Proc. IEEE 66, 51. */
  private static final double HANN_NOISE_BINS = 1.5;

  private static final double ONE_IN_A_HUNDRED = 0.01;

  /** So that bursts of frames with hours between them do not exhaust the memory. */
  private static final int MOST_STEPS = 1 << 20;

  private final AmplitudeSpectrum spectrum;
  private final double[] onePercent;

  private AmplitudeTrace(AmplitudeSpectrum spectrum, double[] onePercent) {
    this.spectrum = spectrum;
    this.onePercent = onePercent;
  }

  static AmplitudeTrace of(ToneSearch.Found found) {
    List<LevelledMotion> levelled = LevelledMotion.of(found.fit());
    LevelledMotion longest =
        levelled.stream()
            .max(Comparator.comparingDouble(l -> l.run().motion().spanSeconds()))
            .orElseThrow();
    RunBackground background = found.fit().model().backgrounds().get(levelled.indexOf(longest));
    double span = longest.run().motion().spanSeconds();
    double step = Math.max(longest.run().cadenceSeconds(), span / MOST_STEPS);
    AmplitudeSpectrum spectrum = spectrum(longest, step);
    SummedSpectrum summed = found.spectrum();
    FrequencyGrid grid = summed.grid();
    double height = summed.heightOfOneRunAt(ONE_IN_A_HUNDRED);
    double[] onePercent = new double[spectrum.size()];
    for (int k = 1; k < onePercent.length; k++) {
      int nearest = (int) Math.rint((spectrum.frequencyHz(k) - grid.startHz()) / grid.stepHz());
      double above = summed.background(Math.max(0, Math.min(grid.count() - 1, nearest)));
      double density = background.wanderNoise().density(spectrum.frequencyHz(k), step) * above;
      onePercent[k] = Math.sqrt(2 * density * HANN_NOISE_BINS * height / span);
    }
    return new AmplitudeTrace(spectrum, onePercent);
  }

  /** Number of frequencies, zero included. */
  public int size() {
    return onePercent.length;
  }

  /** Period of bin {@code k}, from 1 [s]. */
  public double periodSeconds(int k) {
    return 1 / spectrum.frequencyHz(k);
  }

  /** Amplitude in bin {@code k} [arcsec at the axis]. */
  public double amplitudeArcsec(int k) {
    return spectrum.amplitude(k);
  }

  /**
   * Amplitude that wander and noise alone reach anywhere in one night of a hundred [arcsec at the
   * axis].
   */
  public double onePercentArcsec(int k) {
    return onePercent[k];
  }

  private static AmplitudeSpectrum spectrum(LevelledMotion motion, double step) {
    double[] arcsec = new double[motion.size()];
    for (int i = 0; i < arcsec.length; i++) {
      arcsec[i] = motion.arcsec(i) - motion.driftArcsec(i);
    }
    Series even = EvenResampling.of(Series.of(motion.run().motion().seconds(), arcsec), step);
    return AmplitudeSpectrum.of(even, Window.HANN);
  }
}
