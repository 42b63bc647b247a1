package io.github.roundstar.diagnosis;

import io.github.roundstar.model.*;
import io.github.roundstar.motion.*;
import io.github.roundstar.simulate.*;
import java.util.*;

class Explore {
  static String sc(int seed, double gain, double noise, String more) {
    return KnownTruthTest.scenario(seed, gain, noise, 0.02)
        + "dec_backlash_arcsec = "
        + System.getProperty("play", "0")
        + "\n"
        + KnownTruthTest.WORM
        + more;
  }

  public static void main(String[] a) throws Exception {
    double dead = Double.parseDouble(System.getProperty("dead", "0.1"));
    for (double gain : new double[] {0.3, 0.6, 0.9})
      for (double noise : new double[] {0.2, 0.45, 0.8})
        for (int seed = 1; seed <= 2; seed++) {
          SimulatedNight night =
              Simulation.run(
                  ScenarioReader.parse(
                      "x",
                      sc(seed, gain, noise, "")
                          .replace("deadband_arcsec = 0.1", "deadband_arcsec = " + dead)));
          SimulatedRun sim = night.runs().get(0);
          GuideRun run = sim.log();
          RunStudy study = RunStudy.of(run, Equipment.UNKNOWN);
          for (Axis axis : Axis.values()) {
            long t0 = System.nanoTime();
            LoopFit fit = LoopFit.of(run.frames(), axis).value().get();
            long t1 = System.nanoTime();
            MotionSplit split =
                (axis == Axis.RA
                        ? MotionSplit.ra(
                            run, study.ra().value().get(), Equipment.UNKNOWN, Optional.empty())
                        : MotionSplit.dec(
                            run,
                            study.dec().value().get(),
                            study.decDriftFit().value().get(),
                            Equipment.UNKNOWN,
                            Optional.empty()))
                    .value()
                    .get();
            long t2 = System.nanoTime();
            var budget = ErrorBudget.of(split, Optional.of(fit.law()), 300);
            long t3 = System.nanoTime();
            System.out.printf(
                "gain %.1f noise %.2f seed %d %s fit gain/limit %s expl %.4f lag1 %.3f  us %d %d %d%n",
                gain,
                noise,
                seed,
                axis,
                fit.law(),
                fit.explainedShare(),
                fit.lag1Autocorrelation(),
                (t1 - t0) / 1000,
                (t2 - t1) / 1000,
                (t3 - t2) / 1000);
            Map<String, Double> truth = BudgetTruth.of(sim, axis, night.scenario(), gain);
            double tot = 0;
            if (budget.value().isEmpty()) {
              System.out.println(budget.because());
              continue;
            }
            for (var p : budget.value().get().parts()) tot += p.meanSquareArcsec2();
            for (var p : budget.value().get().parts()) {
              double t = truth.getOrDefault(p.cause(), Double.NaN);
              System.out.printf(
                  "    %-18s %8.4f  true %8.4f  share %.3f %s%n",
                  p.cause(),
                  p.meanSquareArcsec2(),
                  t,
                  p.shareOfTrailing(),
                  Math.abs(p.meanSquareArcsec2() - t) > 0.15 * Math.abs(t) + 0.01 ? "<<<<<" : "");
            }
            var rep = LoopReplay.of(split, fit);
            if (rep.value().isEmpty()) {
              System.out.println(rep.because());
              continue;
            }
            LoopReplay r = rep.value().get();
            System.out.printf(
                "    total %.4f; current %s: logged %.4f log has; motion %.4f noise %.3f%n",
                tot,
                r.current(),
                ReplayedRun.loggedRmsArcsec(List.of(r.run(r.current()))),
                ReplayedRun.motionRmsArcsec(List.of(r.run(r.current()))),
                r.noiseArcsec());
            for (double g : new double[] {0.3, 0.5, 0.7, 1.0}) {
              t0 = System.nanoTime();
              var o = r.run(new LoopReplay.Setting(g, dead, 1, false));
              t1 = System.nanoTime();
              SimulatedRun other =
                  Simulation.run(
                          ScenarioReader.parse(
                              "x",
                              sc(seed, g, noise, "")
                                  .replace("deadband_arcsec = 0.1", "deadband_arcsec = " + dead)))
                      .runs()
                      .get(0);
              double[] tr = BudgetTruth.rms(other, axis);
              System.out.printf(
                  "       g %.1f logged %.4f true %.4f  motion %.4f true %.4f  %d us %s%n",
                  g,
                  ReplayedRun.loggedRmsArcsec(List.of(o)),
                  tr[0],
                  ReplayedRun.motionRmsArcsec(List.of(o)),
                  tr[1],
                  (t1 - t0) / 1000,
                  Math.abs(ReplayedRun.motionRmsArcsec(List.of(o)) / tr[1] - 1) > 0.1 ? "<<<" : "");
            }
          }
        }
  }
}
