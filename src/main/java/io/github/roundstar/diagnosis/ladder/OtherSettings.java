package io.github.roundstar.diagnosis.ladder;

import io.github.roundstar.diagnosis.exposures.Scatter;
import io.github.roundstar.diagnosis.exposures.Units;
import io.github.roundstar.diagnosis.ladder.PlayedNight.Moved;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.motion.PlayedAxis;
import io.github.roundstar.motion.PlayedAxis.Change;
import io.github.roundstar.results.Need;
import io.github.roundstar.results.Replay;
import io.github.roundstar.signal.Quantile;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;

/**
 * The night guided again over a grid of settings, axis by axis, all runs together, each setting in
 * the same draws of what moved the star. A setting is as good as the exposures that it is expected
 * to lose over all draws, so that one which would swing the star if pulses push more strongly than
 * they seem to is not taken for the best.
 */
public final class OtherSettings {
  private static final double[] GAINS = {0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1};

  /** Gains tried with what changes less, or costs more to set up. */
  private static final double[] FEW_GAINS = {0.1, 0.2, 0.3, 0.5, 0.7};

  /** Frames averaged for one pulse besides one. */
  private static final double[] AVERAGED = {2, 4};

  /** Shorter guide exposures, by what they are now. */
  private static final double[] QUICKER = {0.5, 0.25};

  /** A setting that moves the star so many times farther lets the loop swing ever wider. */
  private static final double RUNAWAY = 100;

  /** Settings that lose so few more exposures are as good; the nearest to today's is taken. */
  private static final double AS_GOOD = 0.001;

  /** So much worse than the best, as a share, is as good. */
  private static final double AS_GOOD_SHARE = 0.01;

  /** A setting that moves the star by so little less is not worth a word. */
  private static final double LEAST_LESS = 0.03;

  /** Other guide exposures are worth their while where they save so much more of the loss. */
  private static final double CADENCE_SAVES = 0.02;

  /** A law read off rounded offsets and pulses is off by this share of the motion. */
  private static final double LAW_OFF = 0.01;

  private final PlayedNight night;
  private final double bearable;

  private OtherSettings(PlayedNight night, double bearable) {
    this.night = night;
    this.bearable = bearable;
  }

  /**
   * Plays.
   *
   * @return a row for each setting of either axis whose law is known, those in use first
   */
  public static List<Replay> of(PlayedNight night, Need need) {
    Units units = night.units();
    double bearable =
        need.ofStars()
            ? units.bearableArcsec2(night.roundFwhm().value())
            : need.limit() * need.limit() / 2;
    OtherSettings settings = new OtherSettings(night, bearable);
    boolean within = need.ofStars() && units.size() > 0;
    List<Trial> ra = settings.trials(true, within);
    List<Trial> dec = settings.trials(false, within);
    double cadence = settings.cadence(ra, dec);
    List<Replay> rows = new ArrayList<>(settings.rows("ra", ra, cadence));
    rows.addAll(settings.rows("dec", dec, cadence));
    return rows;
  }

  /**
   * A setting tried.
   *
   * @param gain share of a lasting offset that one pulse takes away
   * @param moved what came of it, in each draw
   */
  private record Trial(
      double gain, double deadbandArcsec, double cadenceSeconds, Change change, List<Moved> moved) {
    boolean trained() {
      return change.trainedShare() > 0;
    }

    boolean current() {
      return change.equals(Change.NONE);
    }

    double rms(ToDoubleFunction<Moved> square) {
      return Quantile.median(
          moved.stream().mapToDouble(m -> Math.sqrt(square.applyAsDouble(m))).toArray());
    }

    double motionArcsec() {
      return rms(Moved::motionArcsec2);
    }

    /**
     * How much less the star moves than with the settings in use, as a difference of RMS [arcsec]:
     * over the draws, and over other stretches of the same air and mount.
     *
     * @see "Kuensch (1989), Ann. Stat. 17, 1217, for the jackknife of dependent data"
     */
    Estimate less(Trial current) {
      double[] less = less(current, -1);
      double value = Quantile.median(less);
      double beside =
          Math.hypot(
              Estimate.SIGMAS_95 * Math.sqrt(jackknife(current)), LAW_OFF * current.motionArcsec());
      return new Estimate(
          value,
          value - Math.hypot(value - Quantile.of(less, 0.025), beside),
          value + Math.hypot(Quantile.of(less, 0.975) - value, beside));
    }

    private double[] less(Trial current, int without) {
      double[] less = new double[moved.size()];
      for (int d = 0; d < less.length; d++) {
        less[d] =
            Math.sqrt(current.moved.get(d).motion().meanSquareWithout(without))
                - Math.sqrt(moved.get(d).motion().meanSquareWithout(without));
      }
      return less;
    }

    private double jackknife(Trial current) {
      int n = 0;
      double sum = 0;
      double squares = 0;
      for (int stretch = 0; stretch < Scatter.STRETCHES; stretch++) {
        if (moved.get(0).motion().covers(stretch)) {
          double without = Quantile.median(less(current, stretch));
          n++;
          sum += without;
          squares += without * without;
        }
      }
      return n < 2 ? 0 : (n - 1.0) / n * Math.max(0, squares - sum * sum / n);
    }
  }

  private List<Trial> trials(boolean ra, boolean within) {
    List<PlayedAxis> axes =
        night.runs().stream()
            .flatMap(run -> (ra ? run.ra() : run.dec()).stream())
            .filter(PlayedAxis::lawKnown)
            .toList();
    if (axes.isEmpty()) {
      return List.of();
    }
    double gain = mean(axes, PlayedAxis::gain);
    double deadband = mean(axes, PlayedAxis::deadbandArcsec);
    double cadence = axes.get(0).cadenceSeconds();
    Map<Change, Trial> trials = new LinkedHashMap<>();
    for (Change change : changes(axes, gain, deadband)) {
      trials.put(
          change,
          new Trial(
              change.gainFactor() * gain,
              Double.isNaN(change.deadbandArcsec()) ? deadband : change.deadbandArcsec(),
              cadence * change.cadenceFactor(),
              change,
              new ArrayList<>()));
    }
    night
        .moved(ra, List.copyOf(trials.keySet()), within)
        .forEach(
            draw -> {
              int at = 0;
              for (Trial trial : trials.values()) {
                trial.moved().add(draw.get(at++));
              }
            });
    double now = trials.get(Change.NONE).motionArcsec();
    return trials.values().stream().filter(t -> t.motionArcsec() <= RUNAWAY * now).toList();
  }

  private static double mean(List<PlayedAxis> axes, ToDoubleFunction<PlayedAxis> figure) {
    return axes.stream().mapToDouble(figure).average().orElseThrow();
  }

  private static Set<Change> changes(List<PlayedAxis> axes, double gain, double deadband) {
    Set<Change> changes = new LinkedHashSet<>();
    changes.add(Change.NONE);
    if (deadband > 0) {
      changes.add(Change.NONE.settings(1, 0, 1));
    }
    for (double other : GAINS) {
      changes.add(Change.NONE.settings(other / gain, Double.NaN, 1));
      if (deadband > 0) {
        changes.add(Change.NONE.settings(other / gain, 0, 1));
      }
    }
    double[] cadences =
        DoubleStream.concat(
                Arrays.stream(QUICKER).map(share -> axes.get(0).quicker(share)),
                Arrays.stream(AVERAGED))
            .filter(cadence -> cadence > 0)
            .toArray();
    double noise = mean(axes, PlayedAxis::noiseArcsec);
    boolean trainable = axes.stream().allMatch(axis -> axis.trainableArcsec() > 0);
    for (double other : FEW_GAINS) {
      changes.add(Change.NONE.settings(other / gain, noise, 1));
      for (double cadence : cadences) {
        changes.add(Change.NONE.settings(other / gain, Double.NaN, cadence));
      }
      if (trainable) {
        changes.add(Change.NONE.settings(other / gain, Double.NaN, 1).trained(1));
      }
    }
    return changes;
  }

  /** Share of exposures that a setting is expected to lose, about. */
  private double loss(Trial trial) {
    return trial.moved().stream()
        .mapToDouble(m -> m.motionArcsec2() / (m.motionArcsec2() + bearable))
        .average()
        .orElseThrow();
  }

  /** What to set of these: the settings in use where nothing is better by more than a trifle. */
  private Optional<Trial> best(List<Trial> trials, double cadence) {
    Optional<Trial> now = trials.stream().filter(Trial::current).findFirst();
    List<Trial> alike =
        trials.stream().filter(t -> !t.trained() && t.change().cadenceFactor() == cadence).toList();
    if (now.isEmpty() || alike.isEmpty()) {
      return Optional.empty();
    }
    double least = alike.stream().mapToDouble(this::loss).min().orElseThrow();
    Trial best =
        alike.stream()
            .filter(t -> loss(t) <= least * (1 + AS_GOOD_SHARE) + AS_GOOD)
            .min(
                Comparator.comparing((Trial t) -> t.deadbandArcsec() != now.get().deadbandArcsec())
                    .thenComparing(t -> Math.abs(Math.log(t.gain() / now.get().gain()))))
            .orElseThrow();
    boolean worth =
        cadence != 1
            || best.less(now.get()).value() >= LEAST_LESS * now.get().motionArcsec()
                && loss(best) < loss(now.get());
    return Optional.of(worth ? best : now.get());
  }

  /** Times the time from pulse to pulse: another one where that surely saves more, in both axes. */
  private double cadence(List<Trial> ra, List<Trial> dec) {
    List<List<Trial>> axes = List.of(ra, dec).stream().filter(axis -> !axis.isEmpty()).toList();
    double chosen = 1;
    double least = axes.stream().mapToDouble(axis -> loss(best(axis, 1).orElseThrow())).sum();
    double[] others =
        axes.stream()
            .flatMap(List::stream)
            .mapToDouble(trial -> trial.change().cadenceFactor())
            .filter(cadence -> cadence != 1)
            .distinct()
            .toArray();
    for (double cadence : others) {
      List<Optional<Trial>> best = axes.stream().map(axis -> best(axis, cadence)).toList();
      if (best.stream().allMatch(Optional::isPresent)) {
        double loss = best.stream().mapToDouble(trial -> loss(trial.get())).sum();
        boolean surely = false;
        for (int i = 0; i < axes.size(); i++) {
          Trial now = axes.get(i).stream().filter(Trial::current).findFirst().orElseThrow();
          surely |= best.get(i).orElseThrow().less(now).lo95() > 0;
        }
        if (surely && loss < least - CADENCE_SAVES * axes.size()) {
          least = loss;
          chosen = cadence;
        }
      }
    }
    return chosen;
  }

  private List<Replay> rows(String axis, List<Trial> trials, double cadence) {
    if (trials.isEmpty()) {
      return List.of();
    }
    Trial now = trials.stream().filter(Trial::current).findFirst().orElseThrow();
    Trial best = best(trials, cadence).orElse(now);
    Optional<Trial> trained =
        trials.stream().filter(Trial::trained).min(Comparator.comparingDouble(this::loss));
    return trials.stream()
        .map(
            trial ->
                new Replay(
                    axis,
                    trial.gain(),
                    trial.deadbandArcsec(),
                    trial.cadenceSeconds(),
                    trial.rms(Moved::loggedArcsec2),
                    trial.motionArcsec(),
                    trial.trained(),
                    trial.current(),
                    trial == best || trained.filter(t -> t == trial).isPresent(),
                    trial.current() ? Estimate.symmetric(0, 0) : trial.less(now)))
        .toList();
  }
}
