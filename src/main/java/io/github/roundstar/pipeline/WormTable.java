package io.github.roundstar.pipeline;

import io.github.roundstar.formats.EcsvWriter;
import io.github.roundstar.formats.EcsvWriter.Column;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.WormTrace;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * The periodic error of one turn as a table (ECSV 1.0), for training a mount or for comparing:
 * phase from 0 to 1 of the turn, right ascension at the axis with east positive, how much single
 * turns spread, and the fitted curve.
 */
final class WormTable {
  /** A thousandth of an arcsec is far below any error. */
  private static final int PLACES = 4;

  private WormTable() {}

  /** The bytes of the file; a bin without a frame has neither mean nor spread. */
  static byte[] of(WormTrace worm, NightResult result) {
    Map<String, Object> meta = new LinkedHashMap<>();
    meta.put("night", result.night().date());
    meta.put("period_s", number(worm.periodSeconds()));
    meta.put("turns", number(worm.cycles()));
    meta.put("phase_zero", "where the first run's first used frame stands");
    StringBuilder text = new StringBuilder();
    try {
      EcsvWriter table =
          new EcsvWriter(
              text,
              List.of(
                  new Column("phase", "float64", ""),
                  new Column("ra_axis", "float64", "arcsec"),
                  new Column("spread", "float64", "arcsec"),
                  new Column("fit", "float64", "arcsec")),
              meta);
      for (int i = 0; i < worm.curve().size(); i++) {
        table.row(
            List.of(
                text(worm.curve().x(i)),
                text(worm.curve().middle(i)),
                text((worm.curve().high(i) - worm.curve().low(i)) / 2),
                i < worm.model().size() ? text(worm.model().y(i)) : ""));
      }
    } catch (IOException e) {
      throw new IllegalStateException("text that cannot be written to", e);
    }
    return text.toString().getBytes(StandardCharsets.UTF_8);
  }

  private static BigDecimal number(double value) {
    return new BigDecimal(String.format(Locale.ROOT, "%.3f", value)).stripTrailingZeros();
  }

  private static String text(double value) {
    return Double.isFinite(value) ? String.format(Locale.ROOT, "%." + PLACES + "f", value) : "";
  }
}
