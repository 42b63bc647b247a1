package io.github.roundstar.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Plain names for the result's JSON Pointers. */
final class FigureNames {
  private static final Map<String, String> PARTS =
      Map.ofEntries(
          Map.entry("guided", "star motion while guided"),
          Map.entry("rmsRadialImagingPixels", "in imaging pixels"),
          Map.entry("rmsRadialArcsec", "radial RMS"),
          Map.entry("rmsArcsec", "RMS"),
          Map.entry("scatterElongation", "scatter elongation"),
          Map.entry("positionAngleDeg", "position angle"),
          Map.entry("driftArcsecPerMinute", "slope of the offsets"),
          Map.entry("driftArcsecPerMinuteSky", "drift of the mount"),
          Map.entry("responseArcsecPerSecond", "response to pulses"),
          Map.entry("crossAxisDeg", "angle between the axes"),
          Map.entry("declaredAxis", "declared guide rate"),
          Map.entry("loop", "guide loop"),
          Map.entry("noiseFloorArcsec", "noise floor"),
          Map.entry("periodic", "periodic error"),
          Map.entry("peakToPeakArcsecAxis", "peak to peak"),
          Map.entry("maxRateArcsecPerSecondAxis", "steepest slope"),
          Map.entry("components", "components"),
          Map.entry("backlashArcsecAxis", "backlash"),
          Map.entry("budget", "budget of the motion"),
          Map.entry("settling", "settling"),
          Map.entry("polarAxis", "polar axis"),
          Map.entry("exposures", "exposures"),
          Map.entry("replay", "other settings tried on the same night"),
          Map.entry("findings", "findings"),
          Map.entry("verdict", "verdict"),
          Map.entry("ra", "RA"),
          Map.entry("dec", "Dec"),
          Map.entry("startUtc", "start"),
          Map.entry("cadenceSeconds", "cadence"),
          Map.entry("guideScaleArcsecPerPixel", "guide scale"),
          Map.entry("declinationDeg", "declination"),
          Map.entry("hourAngleHours", "hour angle"),
          Map.entry("pierSide", "pier side"));

  private FigureNames() {}

  /** {@code /runs/2/periodic/components} becomes {@code Run 2: periodic error, components}. */
  static String of(String pointer) {
    String[] parts = pointer.split("/");
    String scope = "";
    int from = 1;
    if (parts.length > 2 && parts[1].equals("runs")) {
      scope = parts[2].equals("*") ? "Each run: " : "Run " + (number(parts[2]) + 1) + ": ";
      from = 3;
    } else if (parts.length > 2 && parts[1].equals("night")) {
      scope = "Night: ";
      from = 2;
    }
    List<String> names = new ArrayList<>();
    for (int i = from; i < parts.length; i++) {
      if (!parts[i].equals("*")) {
        names.add(PARTS.getOrDefault(parts[i], parts[i]));
      }
    }
    String name = scope + String.join(", ", names);
    return name.isEmpty() ? pointer : Character.toUpperCase(name.charAt(0)) + name.substring(1);
  }

  private static int number(String index) {
    return index.matches("\\d{1,6}") ? Integer.parseInt(index) : -1;
  }
}
