package io.github.roundstar.simulate;

import io.github.roundstar.formats.TomlWriter;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Writes the true figures of a night as TOML, short enough to read. */
public final class TruthWriter {
  private static final int PLACES = 4;

  private TruthWriter() {}

  /**
   * Writes the truth.
   *
   * @param out where to; stays open
   */
  public static void write(SimulatedNight night, Appendable out) throws IOException {
    Scenario scenario = night.scenario();
    Map<String, Object> truth = new LinkedHashMap<>();
    truth.put("seed", scenario.evening().seed());
    Map<String, Object> axis = new LinkedHashMap<>();
    put(axis, "azimuth_arcmin", scenario.polarAxis().azimuthArcmin());
    put(axis, "altitude_arcmin", scenario.polarAxis().altitudeArcmin());
    truth.put("polar_axis", axis);
    truth.put("mount", mount(scenario.mount()));
    Map<String, Object> runs = new LinkedHashMap<>();
    for (SimulatedRun run : night.runs()) {
      runs.put(Integer.toString(run.truth().id()), run(run.truth()));
    }
    truth.put("run", runs);
    TomlWriter.write(out, truth);
  }

  private static Map<String, Object> mount(MountPlan mount) {
    Map<String, Object> keys = new LinkedHashMap<>();
    put(keys, "worm_period_s", mount.worm().periodSeconds());
    Map<String, Object> harmonics = new LinkedHashMap<>();
    for (MountPlan.Harmonic harmonic : mount.worm().harmonics()) {
      put(harmonics, Integer.toString(harmonic.order()), harmonic.amplitudeArcsec());
    }
    keys.put("harmonic_amplitude_arcsec_axis", harmonics);
    put(keys, "ra_backlash_arcsec_axis", mount.slack().raBacklashArcsec());
    put(keys, "dec_backlash_arcsec_axis", mount.slack().decBacklashArcsec());
    put(keys, "ra_wander_arcsec_per_root_s", mount.wanderRa());
    put(keys, "dec_wander_arcsec_per_root_s", mount.wanderDec());
    put(keys, "camera_angle_deg", mount.cameraAngleDegrees());
    return keys;
  }

  private static Map<String, Object> run(RunTruth run) {
    Map<String, Object> keys = new LinkedHashMap<>();
    put(keys, "declination_deg", run.declinationDegrees());
    put(keys, "hour_angle_h", run.hourAngleHours());
    keys.put("pier_side", run.pierSide().name().toLowerCase(Locale.ROOT));
    keys.put("guided", run.guided());
    put(keys, "worm_phase_rad", run.wormPhaseRadians());
    put(keys, "rotation_deg_per_hour", run.rotationDegreesPerHour());
    keys.put("dithers", run.dithers());
    keys.put("ra", axis(run.ra(), "east", "west"));
    keys.put("dec", axis(run.dec(), "north", "south"));
    List<Object> events = new ArrayList<>();
    for (RunTruth.Event event : run.events()) {
      Map<String, Object> entry = new LinkedHashMap<>();
      put(entry, "time_s", event.timeSeconds());
      entry.put("kind", event.kind());
      put(entry, "size", event.size());
      events.add(entry);
    }
    if (!events.isEmpty()) {
      keys.put("event", events);
    }
    return keys;
  }

  private static Map<String, Object> axis(RunTruth.Axis axis, String positive, String negative) {
    Map<String, Object> keys = new LinkedHashMap<>();
    put(keys, "drift_arcsec_per_min_sky", axis.driftArcsecPerMinute());
    put(keys, "drift_with_wander_arcsec_per_min_sky", axis.driftWithWanderArcsecPerMinute());
    put(keys, "noise_arcsec", axis.noiseArcsec());
    put(keys, "response_" + positive + "_arcsec_per_s_sky", axis.responsePositiveArcsecPerSecond());
    put(keys, "response_" + negative + "_arcsec_per_s_sky", axis.responseNegativeArcsecPerSecond());
    return keys;
  }

  private static void put(Map<String, Object> keys, String key, double value) {
    keys.put(key, FixedDecimal.shortest(value, PLACES));
  }
}
