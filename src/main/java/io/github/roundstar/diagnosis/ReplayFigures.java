package io.github.roundstar.diagnosis;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.Cadence;
import io.github.roundstar.motion.LoopReplay;
import io.github.roundstar.motion.LoopReplay.Setting;
import io.github.roundstar.motion.ReplayedRun;
import io.github.roundstar.results.Replay;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;

/** The night guided again over a grid of settings, axis by axis, all runs together. */
final class ReplayFigures {
  private static final double[] GAINS = {0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1};

  /** Gains tried with what changes less, or costs more to set up. */
  private static final double[] FEW_GAINS = {0.1, 0.2, 0.3, 0.5, 0.7};

  /** Frames averaged for one pulse besides one. */
  private static final int[] AVERAGED = {2, 4};

  /** A setting that moves the star so many times farther lets the loop swing ever wider. */
  private static final double RUNAWAY = 100;

  private ReplayFigures() {}

  /** The rows of both axes; without any, why a guided axis has none. */
  static Answer<List<Replay>> of(List<RunStudy> studies, List<LoopStudy> ra, List<LoopStudy> dec) {
    List<Replay> rows = new ArrayList<>(rows("ra", studies, ra));
    rows.addAll(rows("dec", studies, dec));
    if (!rows.isEmpty()) {
      return Answer.of(rows);
    }
    return Stream.concat(ra.stream(), dec.stream())
        .map(study -> Answer.<List<Replay>>none(study.replay().because()))
        .findFirst()
        .orElseGet(() -> Answer.none("there is no run"));
  }

  /** Why one axis has no rows while the other has some. */
  static Optional<String> missing(List<Replay> rows, List<LoopStudy> ra, List<LoopStudy> dec) {
    return rows == null
        ? Optional.empty()
        : missing(rows, "ra", "right ascension", ra)
            .or(() -> missing(rows, "dec", "declination", dec));
  }

  private static Optional<String> missing(
      List<Replay> rows, String axis, String name, List<LoopStudy> loops) {
    return rows.stream().anyMatch(row -> row.axis().equals(axis))
        ? Optional.empty()
        : loops.stream().map(loop -> name + " has no rows: " + loop.replay().because()).findFirst();
  }

  private static List<Replay> rows(String axis, List<RunStudy> studies, List<LoopStudy> loops) {
    List<LoopReplay> runs = new ArrayList<>();
    double cadence = 0;
    for (int i = 0; i < loops.size(); i++) {
      Optional<LoopReplay> replay = loops.get(i).replay().value();
      if (replay.isPresent()) {
        runs.add(replay.get());
        cadence =
            cadence == 0 ? Cadence.medianSeconds(studies.get(i).run().frames()).orElse(0) : cadence;
      }
    }
    return runs.isEmpty()
        ? List.of()
        : new Grid(axis, cadence, runs, Brief.of(runs, 0), Brief.of(runs, 1)).rows();
  }

  /** A setting tried; nothing stands for each run's own. */
  private record Trial(Optional<Setting> setting, boolean trained, List<ReplayedRun> runs) {
    double motion() {
      return ReplayedRun.motionRmsArcsec(runs);
    }
  }

  /** How much less the star moves under a setting than it did, with other strengths of pulses. */
  private record Brief(List<LoopReplay> excerpts, double current) {
    static Brief of(List<LoopReplay> runs, double standardErrors) {
      List<LoopReplay> excerpts = runs.stream().map(run -> run.excerpt(standardErrors)).toList();
      return new Brief(
          excerpts,
          ReplayedRun.motionRmsArcsec(
              excerpts.stream().map(run -> run.run(run.current())).toList()));
    }

    double lessArcsec(Setting setting) {
      return current
          - ReplayedRun.motionRmsArcsec(excerpts.stream().map(run -> run.run(setting)).toList());
    }
  }

  private record Grid(
      String axis, double cadenceSeconds, List<LoopReplay> runs, Brief found, Brief stronger) {
    List<Replay> rows() {
      Trial current =
          new Trial(
              Optional.empty(), false, runs.stream().map(run -> run.run(run.current())).toList());
      List<Trial> trials = new ArrayList<>(List.of(current));
      settings()
          .map(this::trial)
          .filter(trial -> trial.motion() <= RUNAWAY * current.motion())
          .forEach(trials::add);
      List<Trial> best =
          Stream.of(false, true)
              .flatMap(
                  trained ->
                      trials.stream()
                          .filter(trial -> trial.trained() == trained)
                          .min(Comparator.comparingDouble(Trial::motion))
                          .stream())
              .toList();
      return trials.stream()
          .map(trial -> row(trial, current, best.stream().anyMatch(b -> b == trial)))
          .toList();
    }

    private Stream<Setting> settings() {
      double deadband = mean(run -> run.current().deadbandArcsec());
      double noise = mean(LoopReplay::noiseArcsec);
      List<Setting> settings = new ArrayList<>();
      boolean trainable = runs.stream().allMatch(LoopReplay::trainable);
      for (double gain : GAINS) {
        settings.add(new Setting(gain, deadband, 1, false));
        if (deadband > 0) {
          settings.add(new Setting(gain, 0, 1, false));
        }
      }
      for (double gain : FEW_GAINS) {
        settings.add(new Setting(gain, noise, 1, false));
        for (int averaged : AVERAGED) {
          settings.add(new Setting(gain, deadband, averaged, false));
        }
        if (trainable) {
          settings.add(new Setting(gain, deadband, 1, true));
        }
      }
      return settings.stream();
    }

    private double mean(ToDoubleFunction<LoopReplay> figure) {
      return runs.stream().mapToDouble(figure).average().orElseThrow();
    }

    private Trial trial(Setting setting) {
      return new Trial(
          Optional.of(setting),
          setting.trained(),
          runs.stream().map(run -> run.run(setting)).toList());
    }

    /** By other frames of the same air, and by what is not known of the strength of pulses. */
    private Estimate less(Trial trial, Trial current) {
      Estimate byFrames = ReplayedRun.gainArcsec(trial.runs(), current.runs());
      Setting setting = trial.setting().orElseThrow();
      double byStrength = stronger.lessArcsec(setting) - found.lessArcsec(setting);
      return Estimate.symmetric(
          byFrames.value(),
          Math.hypot(
              byFrames.hi95() - byFrames.value(),
              Estimate.SIGMAS_95 * (Double.isFinite(byStrength) ? byStrength : 0)));
    }

    private Replay row(Trial trial, Trial current, boolean best) {
      Setting shown =
          trial
              .setting()
              .orElseGet(
                  () ->
                      new Setting(
                          mean(run -> run.current().gain()),
                          mean(run -> run.current().deadbandArcsec()),
                          1,
                          false));
      Estimate less = trial == current ? Estimate.symmetric(0, 0) : less(trial, current);
      return new Replay(
          axis,
          shown.gain(),
          shown.deadbandArcsec(),
          cadenceSeconds * shown.framesAveraged(),
          ReplayedRun.loggedRmsArcsec(trial.runs()),
          trial.motion(),
          trial.trained(),
          trial == current,
          best,
          less);
    }
  }
}
