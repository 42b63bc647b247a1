package io.github.roundstar.ingest.layout;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.simulate.GuideTableWriter;
import io.github.roundstar.simulate.ScenarioReader;
import io.github.roundstar.simulate.SimulatedNight;
import io.github.roundstar.simulate.Simulation;
import java.io.IOException;

/** A night that crosses midnight, with a run on either side of the pier, dithers and lost stars. */
public final class InventedNight {
  private InventedNight() {}

  /** Plays it. */
  public static SimulatedNight play(int seed, int minutes) throws FormatException {
    return Simulation.run(
        ScenarioReader.parse(
            "invented",
            """
            [night]
            seed = %d
            start = "2026-03-14T23:20:00+01:00"
            latitude_deg = 47.2
            longitude_deg = 11.6
            cadence_s = 3.0
            guide_exposure_s = 2.0
            guide_scale = 2.43
            [polar_axis]
            azimuth_arcmin = 3
            altitude_arcmin = -2
            [mount]
            guide_rate = 0.5
            worm_teeth = 180
            dec_backlash_arcsec = 1.5
            ra_wander_arcsec_per_root_s = 0.014
            dec_wander_arcsec_per_root_s = 0.010
            [[mount.harmonic]]
            order = 1
            amplitude_arcsec = 5
            [noise]
            white_arcsec = 0.3
            [star]
            snr = 42
            flux_adu = 19500
            variation = 0.06
            lost_below_snr = 20
            [[cloud]]
            at_min = 20
            minutes = 2
            depth = 0.95
            [loop]
            pulse_limit_ms = 1000
            [loop.ra]
            gain = 0.6
            deadband_arcsec = 0.15
            minimum_pulse_ms = 10
            [loop.dec]
            gain = 0.5
            deadband_arcsec = 0.3
            minimum_pulse_ms = 10
            [dither]
            every_min = 12
            size_arcsec = 5
            settle_arcsec = 2.0
            [[run]]
            duration_min = %d
            declination_deg = 38.2
            hour_angle_h = -1.9
            pier_side = "west"
            [[run]]
            start_min = %d
            duration_min = %d
            declination_deg = 12.5
            hour_angle_h = 0.9
            pier_side = "east"
            """
                .replaceFirst("%d", Integer.toString(seed))
                .replaceFirst("%d", Integer.toString(minutes))
                .replaceFirst("%d", Integer.toString(minutes + 5))
                .replaceFirst("%d", Integer.toString(minutes))));
  }

  /** A guide table that tells of dithers, but not how far they went. */
  public static String withoutShifts(String table) {
    StringBuilder text = new StringBuilder();
    for (String line : table.split("\n")) {
      String[] cells = line.split(",", -1);
      if (!line.startsWith("#")) {
        cells[8] = "";
        cells[9] = "";
        boolean names = line.startsWith("run,");
        text.append(names ? line : String.join(",", cells)).append('\n');
      } else {
        text.append(line).append('\n');
      }
    }
    return text.toString();
  }

  /** The night as a guide table. */
  public static String table(SimulatedNight night) {
    StringBuilder text = new StringBuilder();
    try {
      GuideTableWriter.write(night, text);
    } catch (IOException e) {
      throw new IllegalStateException("a StringBuilder takes all text", e);
    }
    return text.toString();
  }
}
