package io.github.roundstar.motion;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.simulate.ScenarioReader;
import io.github.roundstar.simulate.SimulatedRun;
import io.github.roundstar.simulate.Simulation;
import java.util.List;
import java.util.Locale;

/** An hour and a half of guiding at declination 35, with a worm of 479 s, dithers, usual noise. */
final class SimulatedRuns {
  private SimulatedRuns() {}

  /** Motion in right ascension of a night of this run alone. */
  static AxisMotion ra(GuideRun run) {
    return AxisNight.ra(List.of(run), Equipment.UNKNOWN).runs().get(0).value().orElseThrow();
  }

  /** Motion in declination of a night of this run alone. */
  static AxisMotion dec(GuideRun run) {
    return AxisNight.dec(List.of(run), Equipment.UNKNOWN).runs().get(0).value().orElseThrow();
  }

  /**
   * A run.
   *
   * @param more further keys of {@code [mount]} and further tables
   */
  static SimulatedRun of(int seed, String more) throws FormatException {
    return of(seed, more, "");
  }

  /**
   * A run.
   *
   * @param more further keys of {@code [mount]} and further tables
   * @param ofRun further keys of {@code [[run]]}
   */
  static SimulatedRun of(int seed, String more, String ofRun) throws FormatException {
    String scenario =
        String.format(
            Locale.ROOT,
            """
            [night]
            seed = %d
            cadence_s = 3
            guide_exposure_s = 2
            [noise]
            white_arcsec = 0.4
            [star]
            snr = 1000
            [loop]
            pulse_limit_ms = 1000
            [loop.ra]
            gain = 0.6
            deadband_arcsec = 0.1
            [loop.dec]
            gain = 0.6
            deadband_arcsec = 0.1
            [dither]
            every_min = 12
            size_arcsec = 4
            [[run]]
            duration_min = 90
            declination_deg = 35
            hour_angle_h = -1
            %s
            [[mount.harmonic]]
            order = 1
            amplitude_arcsec = 6
            [mount]
            guide_rate = 0.5
            worm_period_s = 479
            ra_wander_arcsec_per_root_s = 0.015
            dec_wander_arcsec_per_root_s = 0.015
            """,
            seed,
            ofRun);
    return Simulation.run(ScenarioReader.parse("run", scenario + more)).runs().get(0);
  }
}
