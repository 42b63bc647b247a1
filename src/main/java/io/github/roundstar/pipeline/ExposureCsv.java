package io.github.roundstar.pipeline;

import io.github.roundstar.formats.CsvWriter;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.results.Exposure;
import io.github.roundstar.results.ExposureHours;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
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
          "predicted_corner_elongation",
          "predicted_corner_elongation_lo",
          "predicted_corner_elongation_hi",
          "measured_corner_elongation",
          "measured_corner_elongation_lo",
          "measured_corner_elongation_hi",
          "measured_pattern",
          "evidence",
          "keep");

  private ExposureCsv() {}

  static byte[] of(List<Exposure> exposures) {
    StringBuilder text = new StringBuilder();
    try {
      CsvWriter table = new CsvWriter(text, NAMES);
      for (Exposure e : exposures) {
        table.row(row(e));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return text.toString().getBytes(StandardCharsets.UTF_8);
  }

  private static List<Object> row(Exposure e) {
    List<Object> row = new ArrayList<>();
    Collections.addAll(row, e.file(), e.verdict(), e.cause(), e.startUtc());
    Collections.addAll(row, e.seconds(), e.coverage());
    add(row, e.predictedElongation());
    row.add(e.predictedAngleDeg());
    add(row, e.measuredElongation());
    Collections.addAll(row, e.measuredFwhmArcsec(), e.measuredAngleDeg());
    Collections.addAll(row, e.shiftEastArcsec(), e.shiftNorthArcsec());
    add(row, e.predictedCornerElongation());
    add(row, e.measuredCornerElongation());
    Collections.addAll(row, e.measuredPattern(), e.evidence());
    row.add(ExposureHours.Keep.of(e).word());
    return row;
  }

  private static void add(List<Object> row, Estimate estimate) {
    row.add(estimate == null ? null : estimate.value());
    row.add(estimate == null ? null : estimate.lo95());
    row.add(estimate == null ? null : estimate.hi95());
  }
}
