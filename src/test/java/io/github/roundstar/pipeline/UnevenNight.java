package io.github.roundstar.pipeline;

import java.util.Locale;
import java.util.Random;

/** Four hours at fifteen seconds, give or take, with dithers: its span is no round number. */
final class UnevenNight {
  private static final int FRAMES = 960;
  private static final double CADENCE_SECONDS = 15;

  private UnevenNight() {}

  static String log(long seed) {
    Random random = new Random(seed);
    StringBuilder text =
        new StringBuilder(
            """
            # %ECSV 1.0
            # ---
            # delimiter: ','
            # datatype:
            # - {name: time, unit: s, datatype: float64}
            # - {name: ra_offset, unit: arcsec, datatype: float64}
            # - {name: dec_offset, unit: arcsec, datatype: float64}
            # - {name: ra_pulse, unit: ms, datatype: int64}
            # - {name: dec_pulse, unit: ms, datatype: int64}
            # - {name: event, datatype: string}
            # meta: {start: '2026-11-04T19:12:41Z', guide_rate: 0.5, declination: 22.3,
            #   hour_angle: -2.1, site_latitude: 48.7, pier_side: west, guide_exposure: 4}
            time,ra_offset,dec_offset,ra_pulse,dec_pulse,event
            """);
    double ra = 0;
    double dec = 0;
    for (int i = 0; i < FRAMES; i++) {
      double time = i == 0 ? 0 : CADENCE_SECONDS * i + 2.4 * random.nextGaussian();
      boolean dither = i % 61 == 60;
      ra += 0.2 * random.nextGaussian() + (dither ? 4 * random.nextGaussian() : 0);
      dec += 0.15 + 0.1 * random.nextGaussian() + (dither ? 4 * random.nextGaussian() : 0);
      double seenRa = ra + 0.4 * random.nextGaussian();
      double seenDec = dec + 0.4 * random.nextGaussian();
      long raPulse = Math.round(1000 * 0.6 * seenRa / 7.5);
      long decPulse = Math.round(1000 * 0.6 * seenDec / 7.5);
      text.append(
          String.format(
              Locale.ROOT,
              "%.3f,%.3f,%.3f,%d,%d,%s%n",
              time,
              seenRa,
              seenDec,
              raPulse,
              decPulse,
              dither ? "dither" : ""));
      ra -= raPulse * 7.5 / 1000;
      dec -= decPulse * 7.5 / 1000;
    }
    return text.toString();
  }
}
