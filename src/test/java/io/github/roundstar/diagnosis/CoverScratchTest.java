package io.github.roundstar.diagnosis;

import io.github.roundstar.model.*;
import io.github.roundstar.results.*;
import io.github.roundstar.simulate.*;
import java.util.*;
import org.junit.jupiter.api.Test;

class CoverScratchTest {
  @Test
  void scan() throws Exception {
    for (double[] c :
        new double[][] {
          {0.6, 0.45, 0, 0}, {0.6, 0.45, 0.02, 1.5}, {0.3, 0.8, 0.02, 3}, {0.9, 0.2, -0.02, 1}
        }) {
      int n = 40,
          ra = 0,
          dec = 0,
          amp = 0,
          per = 0,
          raR = 0,
          decR = 0,
          play = 0,
          nra = 0,
          ndec = 0,
          inf = 0,
          infd = 0;
      double hra = 0, hdec = 0, ab = 0, hamp = 0;
      double de = 0, de2 = 0, dw = 0, dw2 = 0, pe = 0;
      long t = System.nanoTime();
      for (int seed = 1; seed <= n; seed++) {
        SimulatedNight night =
            Simulation.run(
                ScenarioReader.parse(
                    "t",
                    KnownTruthTest.scenario(seed, c[0], c[1], c[2])
                            .replace(
                                "guide_rate = 0.5",
                                "guide_rate = 0.5\ndec_backlash_arcsec = "
                                    + c[3]
                                    + "\nresponse_north = 0.98\nresponse_south = 1.0")
                        + KnownTruthTest.WORM));
        RunResult r =
            NightAnalysis.of(
                    new Night(
                        "t", night.runs().stream().map(SimulatedRun::log).toList(), List.of()),
                    Equipment.UNKNOWN,
                    "t",
                    true)
                .result()
                .runs()
                .get(0);
        RunTruth tr = night.runs().get(0).truth();
        Estimate dr = r.driftArcsecPerMinuteSky().ra(), dd = r.driftArcsecPerMinuteSky().dec();
        ra += dr.covers(tr.ra().driftArcsecPerMinute()) ? 1 : 0;
        dec += dd.covers(tr.dec().driftArcsecPerMinute()) ? 1 : 0;
        de += (dd.value() - tr.dec().driftArcsecPerMinute()) / n;
        de2 += Math.pow(dd.value() - tr.dec().driftArcsecPerMinute(), 2) / n;
        dw += (dd.value() - tr.dec().driftWithWanderArcsecPerMinute()) / n;
        dw2 += Math.pow(dd.value() - tr.dec().driftWithWanderArcsecPerMinute(), 2) / n;
        pe +=
            r.backlashArcsecAxis().dec() == null
                ? 0
                : (r.backlashArcsecAxis().dec().value() - c[3]) / n;
        hra += (dr.hi95() - dr.lo95()) / 2 / n;
        hdec += (dd.hi95() - dd.lo95()) / 2 / n;
        Component w = r.periodic().components().get(0);
        amp += w.amplitudeArcsecAxis().covers(6) ? 1 : 0;
        ab += (w.amplitudeArcsecAxis().value() / 6 - 1) / n;
        hamp += (w.amplitudeArcsecAxis().hi95() / w.amplitudeArcsecAxis().value() - 1) / n;
        per += w.periodSeconds().covers(479) ? 1 : 0;
        if (r.responseArcsecPerSecond().ra() != null) {
          inf++;
          raR += r.responseArcsecPerSecond().ra().axis().covers(0.5 * 15.041067) ? 1 : 0;
        }
        if (r.responseArcsecPerSecond().dec() != null) {
          infd++;
          decR += r.responseArcsecPerSecond().dec().axis().covers(0.99 * 0.5 * 15.041067) ? 1 : 0;
        }
        if (r.backlashArcsecAxis().dec() != null)
          play += r.backlashArcsecAxis().dec().covers(c[3]) ? 1 : 0;
        nra += r.noiseFloorArcsec().ra().covers(tr.ra().noiseArcsec()) ? 1 : 0;
        ndec += r.noiseFloorArcsec().dec().covers(tr.dec().noiseArcsec()) ? 1 : 0;
      }
      System.out.printf(
          Locale.ROOT,
          "%s of %d: drift ra %d (half %.3f) dec %d (half %.3f); amp %d bias %.4f half %.3f per %d; response ra %d/%d dec %d/%d; play %d; noise %d %d; %.0f ms%n",
          Arrays.toString(c),
          n,
          ra,
          hra,
          dec,
          hdec,
          amp,
          ab,
          hamp,
          per,
          raR,
          inf,
          decR,
          infd,
          play,
          nra,
          ndec,
          (System.nanoTime() - t) / 1e6 / n);
    }
  }
}
