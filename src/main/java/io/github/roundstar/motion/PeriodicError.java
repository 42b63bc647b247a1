package io.github.roundstar.motion;

import io.github.roundstar.model.Estimate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * Drift and periodic error of the mount in right ascension, over one run or over all runs of a
 * night; immutable.
 *
 * <p>The motion with the corrections taken out is modelled as a level per piece, a drift per run,
 * random wander, white noise and sinusoids common to all runs. Lines are looked for in the spectrum
 * of what wander and noise leave white ({@link ToneSearch}) and refined on the original times by
 * generalised least squares ({@link SharedFit}).
 */
public final class PeriodicError {
  /** Fewer turns than this cannot tell a turn from drift and wander, so no amplitude is given. */
  public static final double FEWEST_CYCLES = 3;

  private final ToneSearch.Found found;
  private final Gears gears;
  private final double totalSeconds;
  private final List<Tone> tones;
  private final OptionalInt mainFamily;

  /** Wanted by figures and charts, or by neither. */
  private final Lazy<AmplitudeTrace> amplitudes;

  /** Drift and bend of each run, in the fit's order; nothing of a run without slow swings. */
  private final List<Lazy<Optional<SteadyPart>>> steady;

  private PeriodicError(ToneSearch.Found found, Gears gears) {
    List<AxisRun> runs =
        found.fit().model().backgrounds().stream().map(RunBackground::run).toList();
    this.found = found;
    this.gears = gears;
    this.totalSeconds = runs.stream().mapToDouble(r -> r.motion().spanSeconds()).sum();
    double cadence = runs.stream().mapToDouble(AxisRun::cadenceSeconds).max().orElse(0);
    this.tones = ToneReading.tones(found, cadence);
    this.mainFamily = mainFamily(found.fit());
    this.amplitudes = new Lazy<>(() -> AmplitudeTrace.of(found));
    this.steady = runs.stream().map(run -> new Lazy<>(() -> steady(run))).toList();
  }

  /** Fits; no figure when no run has enough frames, or the star never moved. */
  public static Answer<PeriodicError> of(List<AxisRun> runs, Gears gears) {
    return ToneSearch.of(SlowSwing.together(runs), gears)
        .map(found -> Answer.of(new PeriodicError(found, gears)))
        .orElseGet(
            () ->
                Answer.none(
                    "too few measured frames, or offsets that never change: record at least a few"
                        + " minutes of guiding"));
  }

  /** Drift of a run at the axis [arcsec/min]; nothing when the run was too short to take part. */
  public Optional<Estimate> driftArcsecPerMinuteAxis(int runId) {
    List<RunBackground> backgrounds = found.fit().model().backgrounds();
    for (int r = 0; r < backgrounds.size(); r++) {
      AxisRun run = backgrounds.get(r).run();
      if (run.runId() == runId) {
        Optional<Estimate> drift =
            run.swings() > 0
                ? steady.get(r).get().map(SteadyPart::driftPerSecond)
                : Optional.of(ToneReading.driftPerSecond(found.fit(), r));
        return drift.map(perSecond -> perSecond.times(60));
      }
    }
    return Optional.empty();
  }

  /** Drift and bend apart from the slow swing of the first run; nothing where it has none. */
  Optional<SteadyPart> steady() {
    return steady.get(0).get();
  }

  private Optional<SteadyPart> steady(AxisRun run) {
    return run.swings() > 0 ? SteadyPart.of(run, families()) : Optional.empty();
  }

  /** The gears that were found. */
  List<Family> families() {
    return found.fit().families();
  }

  /** The fit itself. */
  SharedFit fit() {
    return found.fit();
  }

  /** Index of the family that {@link #curve} shows. */
  OptionalInt mainFamily() {
    return mainFamily;
  }

  /** The sinusoids that stand out, largest first. */
  public List<Tone> tones() {
    return tones;
  }

  /**
   * Turns in the data of what {@link #curve} shows; of the worm where nothing was found or too few
   * of its turns are there.
   */
  public OptionalDouble cycles() {
    OptionalDouble worm = wormTurns();
    boolean tooFew = worm.isPresent() && worm.getAsDouble() < FEWEST_CYCLES;
    if (mainFamily.isEmpty() || tooFew) {
      return worm;
    }
    double period = found.fit().families().get(mainFamily.getAsInt()).periodSeconds();
    return OptionalDouble.of(totalSeconds / period);
  }

  /** One turn of the worm or, where none was found, of the largest family. */
  public Answer<TurnCurve> curve() {
    return main().map(family -> TurnCurve.of(found.fit(), family));
  }

  /** Peak to peak of that curve [arcsec at the axis]. */
  public Answer<Estimate> peakToPeakArcsecAxis() {
    return main().map(family -> ToneReading.peakToPeak(found.fit(), family));
  }

  /** All turns laid over each other. */
  public Answer<FoldedTurns> folded() {
    return main().map(family -> FoldedTurns.of(found.fit(), family));
  }

  /**
   * Share of the mean square of that curve that comes back every turn; what wander and noise add
   * from turn to turn does not count against it.
   */
  public Answer<Double> repeatability() {
    return main()
        .then(
            family ->
                TurnLikeness.of(found.fit(), family)
                    .map(parts -> Answer.of(parts.repeatability()))
                    .orElseGet(
                        () ->
                            Answer.none(
                                "fewer than "
                                    + TurnLikeness.FEWEST_TURNS
                                    + " complete turns: record for longer")));
  }

  /** Motion of each run that took part, unknown steps closed, and what the fit says. */
  public List<LevelledMotion> levelled() {
    return LevelledMotion.of(found.fit());
  }

  /** What stands out of wander and noise, and how high wander and noise alone would reach. */
  public AmplitudeTrace amplitudes() {
    return amplitudes.get();
  }

  private OptionalDouble wormTurns() {
    OptionalDouble period = gears.wormPeriodSeconds();
    return period.isPresent() ? OptionalDouble.of(totalSeconds / period.getAsDouble()) : period;
  }

  private Answer<Integer> main() {
    OptionalDouble worm = wormTurns();
    if (worm.isPresent() && worm.getAsDouble() < FEWEST_CYCLES) {
      double missing = FEWEST_CYCLES * gears.wormPeriodSeconds().getAsDouble() - totalSeconds;
      return Answer.none(
          String.format(
              Locale.ROOT,
              "the runs hold %.1f turns of the worm and at least %.0f are needed to tell it from"
                  + " drift and wander: record %.0f more minutes",
              worm.getAsDouble(),
              FEWEST_CYCLES,
              Math.ceil(missing / 60)));
    }
    return mainFamily.isPresent()
        ? Answer.of(mainFamily.getAsInt())
        : Answer.none("no period stands out of wander and noise");
  }

  private static OptionalInt mainFamily(SharedFit fit) {
    List<Family> families = fit.families();
    int main = -1;
    double largest = 0;
    for (int f = 0; f < families.size(); f++) {
      if (families.get(f).source().equals(Family.WORM)) {
        return OptionalInt.of(f);
      }
      double peakToPeak = ToneReading.peakToPeak(fit, f).value();
      if (peakToPeak > largest) {
        largest = peakToPeak;
        main = f;
      }
    }
    return main < 0 ? OptionalInt.empty() : OptionalInt.of(main);
  }
}
