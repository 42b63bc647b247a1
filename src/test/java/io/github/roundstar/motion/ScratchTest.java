package io.github.roundstar.motion;

import io.github.roundstar.model.*;
import io.github.roundstar.simulate.*;
import java.util.*;
import org.junit.jupiter.api.Test;

class ScratchTest {
  @Test
  void scan() throws Exception {
    for (double[] c :
        new double[][] {
          {0.2, 0.45}, {0.5, 0.1}, {0.5, 0.45}, {0.5, 1.5}, {0.9, 0.2}, {0.9, 0.8}, {1.2, 0.45}
        }) {
      int n = 30;
      double[] bias = new double[3], half = new double[3];
      int[] cover = new int[3];
      double nb = 0, nh = 0;
      int nc = 0;
      for (int seed = 1; seed <= n; seed++) {
        SimulatedNight night =
            Simulation.run(ScenarioReader.parse("t", scenario(seed, c[0], c[1], 0)));
        GuideRun run = night.runs().get(0).log();
        var cos = CosDec.of(run).value().get();
        AxisRun ar =
            new AxisRun(
                1,
                Reconstruction.of(run, Axis.RA, Equipment.UNKNOWN)
                    .value()
                    .get()
                    .sky()
                    .times(1 / cos),
                2,
                3,
                cos,
                0);
        var found = ToneSearch.of(List.of(ar), new Gears(OptionalDouble.of(479), List.of())).get();
        Response r = Response.of(ar, found.fit().families()).get();
        Estimate[] es = {r.oneWay().get(), r.otherWay().get(), r.both().get()};
        double[] ts = {0.97, 1.04, 1.005};
        for (int k = 0; k < 3; k++) {
          bias[k] += (es[k].value() - ts[k]) / n;
          half[k] += (es[k].hi95() - es[k].value()) / n;
          cover[k] += es[k].covers(ts[k]) ? 1 : 0;
        }
        double tn = night.runs().get(0).truth().ra().noiseArcsec() / cos;
        nb += (r.noiseArcsec().value() / tn - 1) / n;
        nh += (r.noiseArcsec().hi95() / r.noiseArcsec().value() - 1) / n;
        nc += r.noiseArcsec().covers(tn) ? 1 : 0;
      }
      System.out.printf(
          Locale.ROOT,
          "RA gain %.1f noise %.2f: bias %.3f %.3f %.3f half %.3f %.3f %.3f cover %s; noise bias %.3f half %.3f cover %d%n",
          c[0],
          c[1],
          bias[0],
          bias[1],
          bias[2],
          half[0],
          half[1],
          half[2],
          Arrays.toString(cover),
          nb,
          nh,
          nc);
    }
  }

  @Test
  void play() throws Exception {
    for (double[] c :
        new double[][] {
          {0.5, 0.45, 0}, {0.5, 0.45, 1}, {0.5, 0.45, 3}, {0.7, 0.3, 6}, {0.4, 0.8, 4}
        }) {
      int n = 20;
      double bias = 0, half = 0, rb = 0, rh = 0, nb = 0;
      int cover = 0, rc = 0, nc = 0;
      long t = System.nanoTime();
      for (int seed = 1; seed <= n; seed++) {
        SimulatedNight night =
            Simulation.run(ScenarioReader.parse("t", scenario(seed, c[0], c[1], c[2])));
        GuideRun run = night.runs().get(0).log();
        Reconstruction made = Reconstruction.of(run, Axis.DEC, Equipment.UNKNOWN).value().get();
        AxisRun ar = new AxisRun(1, made.sky(), 2, 3, 1, 0);
        Backlash b = Backlash.of(made, ar).get();
        Response r = Response.of(b.run(), List.of()).get();
        double truth = c[2];
        Estimate w = b.arcsec(r).get();
        bias += (w.value() - truth) / n;
        half += (w.hi95() - w.lo95()) / 2 / n;
        cover += w.covers(truth) ? 1 : 0;
        rb += (r.both().get().value() - 1.005) / n;
        rh += (r.both().get().hi95() - r.both().get().value()) / n;
        rc += r.both().get().covers(1.005) ? 1 : 0;
        double tn = night.runs().get(0).truth().dec().noiseArcsec();
        nb += (r.noiseArcsec().value() / tn - 1) / n;
        nc += r.noiseArcsec().covers(tn) ? 1 : 0;
      }
      System.out.printf(
          Locale.ROOT,
          "DEC gain %.1f noise %.2f play %.1f: width bias %.3f half %.3f cover %d/%d; response bias %.3f half %.3f cover %d; noise bias %.3f cover %d; %.0f ms each%n",
          c[0],
          c[1],
          c[2],
          bias,
          half,
          cover,
          n,
          rb,
          rh,
          rc,
          nb,
          nc,
          (System.nanoTime() - t) / 1e6 / n);
    }
  }

  private static String scenario(int seed, double gain, double noise, double play) {
    return String.format(
        Locale.ROOT,
        """
        [night]
        seed = %d
        start = "2026-10-08T20:10:00+02:00"
        latitude_deg = 47.2
        longitude_deg = 11.6
        cadence_s = 2.5
        guide_exposure_s = 2.0
        guide_scale = 2.43
        [polar_axis]
        azimuth_arcmin = 3
        altitude_arcmin = -2
        [noise]
        white_arcsec = %.2f
        [star]
        snr = 1000
        [loop]
        pulse_limit_ms = 2000
        [loop.ra]
        gain = %.2f
        deadband_arcsec = 0.1
        [loop.dec]
        gain = %.2f
        deadband_arcsec = 0.1
        [dither]
        every_min = 12
        size_arcsec = 4
        logs_shift = true
        logs_settling = true
        [[run]]
        duration_min = 150
        declination_deg = 35
        hour_angle_h = -1
        pier_side = "west"
        [mount]
        guide_rate = 0.5
        dec_backlash_arcsec = %.2f
        worm_period_s = 479
        ra_wander_arcsec_per_root_s = 0.02
        dec_wander_arcsec_per_root_s = 0.01
        response_east = 0.97
        response_west = 1.04
        response_north = 0.97
        response_south = 1.04
        [[mount.harmonic]]
        order = 1
        amplitude_arcsec = 6
        [[mount.harmonic]]
        order = 2
        amplitude_arcsec = 1
        phase_rad = 1.1
        """,
        seed,
        noise,
        gain,
        gain,
        play);
  }
}
