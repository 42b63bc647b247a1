package io.github.roundstar.dialects;

import io.github.roundstar.dialects.Truth.Event;
import io.github.roundstar.dialects.Truth.Frame;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Writes what a log says as the project's own guide table (ECSV), so that figures of both readings
 * can be compared.
 */
final class NativeTable {
  private NativeTable() {}

  static String write(Truth truth) {
    boolean pulses = truth.hasPulses();
    StringBuilder out = new StringBuilder("# %ECSV 1.0\n# ---\n# delimiter: ','\n# datatype:\n");
    out.append("# - {name: time, unit: s, datatype: float64}\n");
    out.append("# - {name: ra_offset, unit: arcsec, datatype: float64}\n");
    out.append("# - {name: dec_offset, unit: arcsec, datatype: float64}\n");
    if (pulses) {
      out.append("# - {name: ra_pulse, unit: ms, datatype: float64}\n");
      out.append("# - {name: dec_pulse, unit: ms, datatype: float64}\n");
    }
    out.append("# - {name: run, datatype: int64}\n");
    out.append("# - {name: event, datatype: string}\n");
    List<String> meta = new ArrayList<>();
    truth.start().ifPresent(v -> meta.add("start: '" + v + "'"));
    truth.arcsecPerPixel().ifPresent(v -> meta.add("guide_scale: " + v));
    truth.declinationDegrees().ifPresent(v -> meta.add("declination: " + v));
    truth.pierSide().ifPresent(v -> meta.add("pier_side: " + v));
    truth.guideRate().ifPresent(v -> meta.add("guide_rate: " + v));
    truth.exposureSeconds().ifPresent(v -> meta.add("guide_exposure: " + v));
    truth.raGain().ifPresent(v -> meta.add("gain_ra: " + v));
    meta.add("time_mark: middle");
    meta.add("pulse_row: same");
    out.append("# meta: {").append(String.join(", ", meta)).append("}\n# schema: astropy-2.0\n");
    out.append(
        pulses
            ? "time,ra_offset,dec_offset,ra_pulse,dec_pulse,run,event\n"
            : "time,ra_offset,dec_offset,run,event\n");
    for (Frame f : truth.frames()) {
      out.append(Digits.fixed(f.seconds(), 6)).append(',');
      out.append(f.missing() ? "" : Digits.fixed(f.raArcsec(), 9)).append(',');
      out.append(f.missing() ? "" : Digits.fixed(f.decArcsec(), 9)).append(',');
      if (pulses) {
        out.append(pulse(f.raPulseMillis()))
            .append(',')
            .append(pulse(f.decPulseMillis()))
            .append(',');
      }
      out.append(f.run()).append(',').append(event(f)).append('\n');
    }
    return out.toString();
  }

  private static String pulse(double millis) {
    return Double.isNaN(millis) ? "" : "" + Math.round(millis);
  }

  private static String event(Frame frame) {
    for (Event event : List.of(Event.LOST, Event.DITHER, Event.SETTLING, Event.FLIP)) {
      if (frame.events().contains(event)) {
        return event.name().toLowerCase(Locale.ROOT);
      }
    }
    return "";
  }
}
