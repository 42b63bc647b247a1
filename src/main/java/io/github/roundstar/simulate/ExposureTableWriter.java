package io.github.roundstar.simulate;

import io.github.roundstar.formats.EcsvWriter;
import io.github.roundstar.formats.EcsvWriter.Column;
import io.github.roundstar.simulate.SimulatedExposure.Image;
import io.github.roundstar.sky.GuideTolerance;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Writes exposures as a list with star shapes, measured with a little noise as a program would. */
public final class ExposureTableWriter {
  /** Noise of either part of the logarithm of the elongation: that of some sixty stars. */
  private static final double STRETCH_SIGMA = 0.008;

  private static final double SHIFT_SIGMA_ARCSEC = 0.05;
  private static final double GAUSSIAN_95 = 1.96;

  /** Noise in a corner, where few stars tell. */
  private static final double CORNER_SIGMA = 0.016;

  private static final double WORST_OF_FOUR_95 = 2.5;

  private ExposureTableWriter() {}

  /**
   * Writes the list.
   *
   * @param out where to; stays open
   */
  public static void write(SimulatedNight night, List<SimulatedExposure> exposures, Appendable out)
      throws IOException {
    Map<String, Object> meta = new LinkedHashMap<>();
    meta.put("note", "invented exposures of a simulated night");
    EcsvWriter table =
        new EcsvWriter(
            out,
            List.of(
                new Column("file", "string", ""),
                new Column("start", "string", ""),
                new Column("seconds", "float64", "s"),
                new Column("elongation", "float64", ""),
                new Column("elongation_lo", "float64", ""),
                new Column("elongation_hi", "float64", ""),
                new Column("fwhm", "float64", "arcsec"),
                new Column("angle", "float64", "deg"),
                new Column("shift_east", "float64", "arcsec"),
                new Column("shift_north", "float64", "arcsec"),
                new Column("shift_error", "float64", "arcsec"),
                new Column("corner_elongation", "float64", ""),
                new Column("corner_elongation_lo", "float64", ""),
                new Column("corner_elongation_hi", "float64", ""),
                new Column("pattern", "string", "")),
            meta);
    NoiseStream noise = NoiseStream.of(night.scenario().evening().seed(), "exposures", 0);
    SimulatedExposure before = null;
    for (SimulatedExposure exposure : exposures) {
      table.row(row(night, exposure, before, noise));
      before = exposure;
    }
  }

  private static List<String> row(
      SimulatedNight night,
      SimulatedExposure exposure,
      SimulatedExposure before,
      NoiseStream noise) {
    Image image = exposure.image();
    double size = StrictMath.log(image.elongation());
    double angle = StrictMath.toRadians(2 * image.angleDegrees());
    double along = size * StrictMath.cos(angle) + STRETCH_SIGMA * noise.gaussian();
    double aslant = size * StrictMath.sin(angle) + STRETCH_SIGMA * noise.gaussian();
    double measured = StrictMath.hypot(along, aslant);
    double low = Math.max(0, measured - GAUSSIAN_95 * STRETCH_SIGMA);
    double degrees = StrictMath.toDegrees(StrictMath.atan2(aslant, along)) / 2;
    List<String> row = new ArrayList<>();
    row.add(exposure.file());
    row.add(exposure.start().toString());
    row.add(FixedDecimal.text(exposure.seconds(), 1));
    row.add(FixedDecimal.text(StrictMath.exp(measured), 4));
    row.add(FixedDecimal.text(StrictMath.exp(low), 4));
    row.add(FixedDecimal.text(StrictMath.exp(measured + GAUSSIAN_95 * STRETCH_SIGMA), 4));
    row.add(FixedDecimal.text(image.fwhmArcsec(), 3));
    row.add(FixedDecimal.text(degrees < 0 ? degrees + 180 : degrees, 1));
    boolean follows = before != null && before.run() == exposure.run();
    for (int axis = 0; axis < 2; axis++) {
      double jitter = SHIFT_SIGMA_ARCSEC * noise.gaussian();
      row.add(
          follows
              ? FixedDecimal.text(exposure.meanPlace()[axis] - before.meanPlace()[axis] + jitter, 3)
              : "");
    }
    row.add(follows ? FixedDecimal.text(SHIFT_SIGMA_ARCSEC, 3) : "");
    String pattern = pattern(night, exposure);
    List<String> corner = corner(exposure, noise);
    boolean changes = !pattern.equals("none") && !pattern.equals("uniform");
    row.addAll(changes ? corner : row.subList(3, 6));
    row.add(pattern);
    return row;
  }

  private static List<String> corner(SimulatedExposure exposure, NoiseStream noise) {
    double size = StrictMath.log(exposure.corner().elongation());
    double measured =
        StrictMath.hypot(size + CORNER_SIGMA * noise.gaussian(), CORNER_SIGMA * noise.gaussian());
    double low = Math.max(0, measured - WORST_OF_FOUR_95 * CORNER_SIGMA);
    return List.of(
        FixedDecimal.text(StrictMath.exp(measured), 4),
        FixedDecimal.text(StrictMath.exp(low), 4),
        FixedDecimal.text(StrictMath.exp(measured + WORST_OF_FOUR_95 * CORNER_SIGMA), 4));
  }

  /** The pattern that stars over the whole field would show. */
  private static String pattern(SimulatedNight night, SimulatedExposure exposure) {
    ExposurePlan plan = night.scenario().camera();
    ExposurePlan.Optics optics = plan.optics();
    double corner =
        optics.arcsecPerPixel() * StrictMath.hypot(optics.widthPixels(), optics.heightPixels()) / 2;
    double turned =
        StrictMath.toRadians(
            exposure.turns().get(exposure.turns().size() - 1) - exposure.turns().get(0));
    double variance = turned * turned * corner * corner / 12;
    double width = optics.fwhmArcsec() / GuideTolerance.FWHM_PER_SIGMA;
    if (variance > 0.08 * width * width) {
      return "rotation";
    }
    if (optics.growth() != ExposurePlan.Growth.EVEN && optics.elongation() > 1.04) {
      return optics.growth() == ExposurePlan.Growth.RADIAL ? "radial" : "one-sided";
    }
    return exposure.image().elongation() > 1.03 ? "uniform" : "none";
  }
}
