package io.github.roundstar.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;

/** Plain names for the result's JSON Pointers. */
final class FigureNames {
  private static final Map<String, String> PARTS =
      Map.ofEntries(
          Map.entry("guided", "star motion"),
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
          Map.entry("gain", "gain"),
          Map.entry("pulseLimitMillis", "longest pulse"),
          Map.entry("declaredGain", "declared gain"),
          Map.entry("declaredDeadbandArcsec", "declared deadband"),
          Map.entry("noiseAmplification", "noise amplification"),
          Map.entry("noiseFloorArcsec", "noise floor"),
          Map.entry("periodic", "periodic error"),
          Map.entry("peakToPeakArcsecAxis", "peak to peak"),
          Map.entry("maxRateArcsecPerSecondAxis", "steepest slope"),
          Map.entry("components", "components"),
          Map.entry("repeatability", "repeatability"),
          Map.entry("detectable", "what would have stood out"),
          Map.entry("backlashArcsecAxis", "backlash"),
          Map.entry("stickingArcsecAxis", "sticking"),
          Map.entry("lag1", "likeness from frame to frame"),
          Map.entry("raBySecondDifferences", "RA by second differences"),
          Map.entry("decBySecondDifferences", "Dec by second differences"),
          Map.entry("events", "events"),
          Map.entry("sizeArcsec", "size"),
          Map.entry("lightLost", "light lost"),
          Map.entry("budget", "budget of the motion"),
          Map.entry("raTrailingArcsec2", "what trails in RA"),
          Map.entry("decTrailingArcsec2", "what trails in Dec"),
          Map.entry("settling", "settling"),
          Map.entry("learned", "what all runs teach together"),
          Map.entry("ladder", "what each cure buys"),
          Map.entry("promised", "what the steps bring together"),
          Map.entry("kept", "whether the steps before brought what they promised"),
          Map.entry("usual", "what is usual for you"),
          Map.entry("planning", "how to take the next night"),
          Map.entry("polarAxis", "polar axis"),
          Map.entry("azimuthArcmin", "azimuth"),
          Map.entry("altitudeArcmin", "altitude"),
          Map.entry("totalArcmin", "total on the sky"),
          Map.entry("altitudeFromRefractedPoleArcmin", "altitude above the refracted pole"),
          Map.entry("fieldRotationDegPerHour", "field rotation"),
          Map.entry("cornerTrailArcsec", "trail in the corner"),
          Map.entry("longestExposureSeconds", "longest exposure for the corners"),
          Map.entry("consistent", "whether the axis explains the drifts"),
          Map.entry("trackingRate", "tracking rate"),
          Map.entry("seeing", "seeing"),
          Map.entry("exposures", "exposures"),
          Map.entry("predictedElongation", "elongation from the log"),
          Map.entry("measuredElongation", "elongation in the image"),
          Map.entry("cause", "cause"),
          Map.entry("replay", "what other settings would have done"),
          Map.entry("findings", "findings"),
          Map.entry("verdict", "verdict"),
          Map.entry("level", "level"),
          Map.entry("confidence", "confidence"),
          Map.entry("shareOfTrailing", "share of the trailing"),
          Map.entry("expectedRmsRadialArcsec", "RMS to expect"),
          Map.entry("expectedRoundExposures", "round exposures to expect"),
          Map.entry("hoursPerNight", "hours a night"),
          Map.entry("comparison", "for comparisons"),
          Map.entry("mountName", "name of the mount"),
          Map.entry("imagingArcsecPerPixel", "scale of the main camera"),
          Map.entry("hemisphere", "hemisphere"),
          Map.entry("guidedIntervals", "intervals of the scatter"),
          Map.entry("pointings", "fields, flips and airmass"),
          Map.entry("targets", "fields"),
          Map.entry("flips", "flips"),
          Map.entry("airmass", "what more air does"),
          Map.entry("ra", "RA"),
          Map.entry("dec", "Dec"),
          Map.entry("startUtc", "start"),
          Map.entry("cadenceSeconds", "cadence"),
          Map.entry("guideScaleArcsecPerPixel", "guide scale"),
          Map.entry("declinationDeg", "declination"),
          Map.entry("hourAngleHours", "hour angle"),
          Map.entry("pierSide", "pier side"));

  private static final Map<String, String> AXES = Map.of("ra", "RA", "dec", "Dec");

  /** What only holds figures that have names of their own. */
  private static final Set<String> HOLDERS = Set.of("learned", "pointings", "comparison");

  private FigureNames() {}

  /**
   * {@code /runs/2/periodic/components} becomes {@code periodic error, components}, {@code
   * /night/learned/dec/backlash} becomes {@code backlash in Dec}.
   */
  static String of(String pointer) {
    String[] parts = pointer.split("/");
    List<String> names = new ArrayList<>();
    String axis = "";
    for (int i = depth(parts); i < parts.length; i++) {
      boolean last = i == parts.length - 1;
      if (AXES.containsKey(parts[i]) && !(last && names.isEmpty())) {
        axis = " in " + AXES.get(parts[i]);
      } else if (!parts[i].equals("*") && (last || !HOLDERS.contains(parts[i]))) {
        names.add(PARTS.getOrDefault(parts[i], words(parts[i])));
      }
    }
    return names.isEmpty() ? pointer : String.join(", ", names) + axis;
  }

  /** A key that has no name of its own as words: {@code cornerTrailArcsec}, "corner trail". */
  private static String words(String key) {
    return key.replaceAll("(Arcsec|Arcmin|Deg|Hours|Seconds|Millis|Axis|Sky)+$", "")
        .replaceAll("(?<=[a-z])(?=[A-Z])", " ")
        .toLowerCase(Locale.ROOT);
  }

  /** Number of the run when the figure is that of one run. */
  static OptionalInt run(String pointer) {
    String[] parts = pointer.split("/");
    return depth(parts) == 3 && parts[2].matches("\\d{1,6}")
        ? OptionalInt.of(Integer.parseInt(parts[2]) + 1)
        : OptionalInt.empty();
  }

  /** Whether the figure is that of the whole night. */
  static boolean ofNight(String pointer) {
    return pointer.startsWith("/night/");
  }

  /** Where the figure's own name begins: after the night, or after the run. */
  private static int depth(String[] parts) {
    if (parts.length > 3 && parts[1].equals("runs")) {
      return 3;
    }
    return parts.length > 2 && parts[1].equals("night") ? 2 : 1;
  }
}
