package io.github.roundstar.results;

import java.util.List;

/**
 * How much the log taught of what its figures tell, beside what stood before it: a declared guide
 * rate, and what mounts and air usually are.
 *
 * @param ra right ascension; null where the axis tells nothing
 * @param dec declination; null where the axis tells nothing
 */
public record Learned(Axis ra, Axis dec) {
  /** Below this a log adds little to what was known before. */
  public static final double LITTLE = 0.2;

  /** A second explanation that is less likely than this is not told. */
  public static final double TOLD = 0.05;

  /**
   * One axis. Shares are one minus the width of the figure's interval over that of what was known
   * before: 0 for nothing learned, 1 for everything.
   *
   * @param response of the strength of pulses
   * @param noise of the noise of a frame
   * @param periodic of the amplitude of the worm, or of the largest sinusoid; null where there is
   *     none
   * @param backlash of the play; null in right ascension
   * @param backlashProbability how likely there is any play or sticking; null in right ascension
   * @param residual whether what the model of the axis leaves is random, as it should be
   * @param explanations what may be behind the log, likeliest first
   */
  public record Axis(
      Double response,
      Double noise,
      Double periodic,
      Double backlash,
      Double backlashProbability,
      Residual residual,
      List<Explanation> explanations) {
    /** Copies the list. */
    public Axis {
      explanations = List.copyOf(explanations);
    }
  }

  /**
   * What the model of an axis leaves of the frames.
   *
   * @param chance chance of autocorrelations at least so large if the model were right (Ljung and
   *     Box)
   * @param correlation the largest autocorrelation
   * @param lagSeconds between which frames it stands [s]
   */
  public record Residual(double chance, double correlation, double lagSeconds) {
    /** A chance below this is none, a smaller correlation changes no figure much. */
    private static final double NO_CHANCE = 1e-3;

    private static final double MATTERS = 0.1;

    /** Whether the model fits well enough. */
    public boolean fits() {
      return chance >= NO_CHANCE || Math.abs(correlation) < MATTERS;
    }
  }

  /**
   * One explanation of the same log.
   *
   * @param probability how likely it is
   * @param responseArcsecPerSecondAxis strength of pulses by it [arcsec/s]
   * @param noiseMemorySeconds time in which the noise forgets all but 1/e of itself [s]
   */
  public record Explanation(
      double probability, double responseArcsecPerSecondAxis, double noiseMemorySeconds) {}
}
