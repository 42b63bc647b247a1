package io.github.roundstar.pipeline;

import io.github.roundstar.formats.CsvWriter;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.results.Exposure;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;

/** Exposures as plain CSV, for scripts that choose what to stack. */
final class ExposureCsv {
  private static final List<String> NAMES =
      List.of(
          "file",
          "verdict",
          "cause",
          "start_utc",
          "seconds",
          "coverage",
          "predicted_elongation",
          "predicted_elongation_lo",
          "predicted_elongation_hi",
          "predicted_angle_deg",
          "measured_elongation",
          "measured_elongation_lo",
          "measured_elongation_hi",
          "measured_fwhm_arcsec",
          "measured_angle_deg",
          "shift_east_arcsec",
          "shift_north_arcsec",
          "evidence");

  private ExposureCsv() {}

  static byte[] of(List<Exposure> exposures) {
    StringBuilder text = new StringBuilder();
    try {
      CsvWriter table = new CsvWriter(text, NAMES);
      for (Exposure e : exposures) {
        Estimate predicted = e.predictedElongation();
        Estimate measured = e.measuredElongation();
        table.row(
            Arrays.asList(
                e.file(),
                e.verdict(),
                e.cause(),
                e.startUtc(),
                e.seconds(),
                e.coverage(),
                predicted == null ? null : predicted.value(),
                predicted == null ? null : predicted.lo95(),
                predicted == null ? null : predicted.hi95(),
                e.predictedAngleDeg(),
                measured == null ? null : measured.value(),
                measured == null ? null : measured.lo95(),
                measured == null ? null : measured.hi95(),
                e.measuredFwhmArcsec(),
                e.measuredAngleDeg(),
                e.shiftEastArcsec(),
                e.shiftNorthArcsec(),
                e.evidence()));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return text.toString().getBytes(StandardCharsets.UTF_8);
  }
}
