package io.github.roundstar.worlds;

import io.github.roundstar.worlds.NightPlan.Dithering;
import io.github.roundstar.worlds.NightPlan.Pointing;
import io.github.roundstar.worlds.WorldNight.Precision;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Writes the log as a guide table in ECSV 1.0 (Astropy Proposal for Enhancement 6). */
final class GuideTableText {
  private GuideTableText() {}

  static String of(NightPlan plan, LogRows rows, Precision precision) {
    boolean rounded = precision == Precision.ROUNDED;
    boolean shifts = plan.dithering != Dithering.NONE && plan.ditherShiftLogged;
    StringBuilder out = new StringBuilder(rows.size * 60 + 4000);
    out.append("# %ECSV 1.0\n# ---\n# delimiter: ','\n# datatype:\n");
    List<String> names = new ArrayList<>();
    String pulse = rounded ? "int64" : "float64";
    column(out, names, "time", "s", "float64");
    column(out, names, "run", null, "int64");
    column(out, names, "ra_offset", "arcsec", "float64");
    column(out, names, "dec_offset", "arcsec", "float64");
    column(out, names, "ra_pulse", "ms", pulse);
    column(out, names, "dec_pulse", "ms", pulse);
    column(out, names, "snr", null, "float64");
    if (shifts) {
      column(out, names, "dither_ra", "arcsec", "float64");
      column(out, names, "dither_dec", "arcsec", "float64");
    }
    column(out, names, "event", null, "string");
    head(out, plan);
    out.append("# schema: astropy-2.0\n").append(String.join(",", names)).append('\n');
    int offset = rounded ? plan.offsetDecimals : -1;
    for (int i = 0; i < rows.size; i++) {
      number(out, rows.timeSeconds[i], rounded ? plan.timeDecimals : -1);
      out.append(',').append(rows.run[i]).append(',');
      number(out, rows.raOffset[i], offset);
      out.append(',');
      number(out, rows.decOffset[i], offset);
      out.append(',');
      number(out, rows.raPulseMs[i], rounded ? 0 : -1);
      out.append(',');
      number(out, rows.decPulseMs[i], rounded ? 0 : -1);
      out.append(',');
      number(out, rows.signalToNoise[i], 1);
      out.append(',');
      if (shifts) {
        number(out, rows.ditherEast[i], offset);
        out.append(',');
        number(out, rows.ditherNorth[i], offset);
        out.append(',');
      }
      out.append(rows.event[i]).append('\n');
    }
    return out.toString();
  }

  private static void column(
      StringBuilder out, List<String> names, String name, String unit, String datatype) {
    names.add(name);
    out.append("# - {name: ").append(name);
    if (unit != null) {
      out.append(", unit: ").append(unit);
    }
    out.append(", datatype: ").append(datatype).append("}\n");
  }

  private static void head(StringBuilder out, NightPlan plan) {
    double scale = 206.264806247 * 3.75 / plan.guideFocalMm;
    out.append("# meta:\n");
    key(out, "start", "'" + plan.start + "'");
    key(out, "guide_scale", text(scale, 4));
    key(out, "guide_exposure", text(plan.exposureSeconds, 4));
    key(out, "time_mark", plan.timeMark);
    key(out, "pulse_row", "same");
    key(out, "guide_rate", text(plan.declaredGuideRate, 4));
    key(out, "gain_ra", text(plan.ra.gain, 4));
    key(out, "gain_dec", text(plan.dec.gain, 4));
    key(out, "deadband_ra", text(plan.ra.deadbandArcsec, 4));
    key(out, "deadband_dec", text(plan.dec.deadbandArcsec, 4));
    if (plan.ra.longestMs == plan.dec.longestMs) {
      key(out, "pulse_limit", text(plan.ra.longestMs, 1));
    }
    key(out, "site_latitude", text(plan.latitudeDeg, 4));
    out.append("#   runs:\n");
    for (int r = 0; r < plan.runs.size(); r++) {
      Pointing run = plan.runs.get(r);
      out.append("#   - {run: ")
          .append(r + 1)
          .append(", declination: ")
          .append(text(run.declinationDeg(), 4))
          .append(", hour_angle: ")
          .append(text(firstHourAngle(plan, run), 5))
          .append(", pier_side: ")
          .append(run.tubeWest() ? "west" : "east")
          .append(", dec_direction: ")
          .append(direction(plan, r))
          .append("}\n");
    }
  }

  /** At the middle of the first exposure. */
  private static double firstHourAngle(NightPlan plan, Pointing run) {
    double middle = 0.3 + plan.exposureSeconds / 2;
    return (run.hourAngleDeg() + middle * SkyPath.SIDEREAL_ARCSEC_PER_SECOND / 3600) / 15;
  }

  private static String direction(NightPlan plan, int run) {
    double direction =
        plan.dec.direction != 0
            ? plan.dec.direction
            : plan.decDirections[Math.min(run, plan.decDirections.length - 1)];
    if (Double.isNaN(direction)) {
      return "\"off\"";
    }
    return direction == 0 ? "both" : direction > 0 ? "north" : "south";
  }

  private static void key(StringBuilder out, String name, String value) {
    out.append("#   ").append(name).append(": ").append(value).append('\n');
  }

  static String text(double value, int decimals) {
    return String.format(Locale.ROOT, "%." + decimals + "f", value);
  }

  /** Appends a number with so many decimals, all digits for -1, nothing for NaN. */
  private static void number(StringBuilder out, double value, int decimals) {
    if (Double.isNaN(value)) {
      return;
    }
    if (decimals < 0) {
      out.append(value);
      return;
    }
    long power = 1;
    for (int i = 0; i < decimals; i++) {
      power *= 10;
    }
    long scaled = Math.round(value * power);
    if (scaled < 0) {
      out.append('-');
      scaled = -scaled;
    }
    out.append(scaled / power);
    if (decimals > 0) {
      String digits = Long.toString(scaled % power);
      out.append('.').append("0".repeat(decimals - digits.length())).append(digits);
    }
  }
}
