package io.github.roundstar.motion;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.signal.WanderNoise;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.IntStream;

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

  private static final String TOO_FEW =
      "too few measured frames, or offsets that never change: record at least a few minutes of"
          + " guiding";

  private final ToneSearch.Found found;
  private final Gears gears;
  private final double totalSeconds;
  private final List<Tone> tones;
  private final OptionalInt mainFamily;

  /** Wanted by figures and charts, or by neither. */
  private final Lazy<AmplitudeTrace> amplitudes;

  private final Optional<AxisKnowledge> known;

  private PeriodicError(ToneSearch.Found found, Gears gears, Optional<AxisKnowledge> known) {
    List<AxisRun> runs =
        found.fit().model().backgrounds().stream().map(RunBackground::run).toList();
    this.found = found;
    this.gears = gears;
    this.totalSeconds = runs.stream().mapToDouble(r -> r.motion().spanSeconds()).sum();
    double cadence = runs.stream().mapToDouble(AxisRun::cadenceSeconds).max().orElse(0);
    this.known = known;
    this.tones = ToneReading.tones(found, cadence, known);
    this.mainFamily = mainFamily(found.fit());
    this.amplitudes = new Lazy<>(() -> AmplitudeTrace.of(found));
  }

  /** Fits; no figure when no run has enough frames, or the star never moved. */
  public static Answer<PeriodicError> of(List<AxisRun> runs, Gears gears) {
    return ToneSearch.of(runs, gears)
        .map(found -> Answer.of(new PeriodicError(found, gears, Optional.empty())))
        .orElseGet(() -> Answer.none(TOO_FEW));
  }

  /**
   * The same gears in motion made out anew, with what the night tells of their amplitudes.
   *
   * @param runs the runs that took part
   * @param noises wander and noise of each
   */
  Answer<PeriodicError> in(List<AxisRun> runs, List<WanderNoise> noises, AxisKnowledge ofNight) {
    List<RunBackground> backgrounds = new ArrayList<>();
    for (int r = 0; r < runs.size(); r++) {
      RunBackground.of(runs.get(r), families(), noises.get(r)).ifPresent(backgrounds::add);
    }
    return (backgrounds.isEmpty()
            ? Optional.<ToneSearch.Found>empty()
            : ToneSearch.again(found, backgrounds))
        .map(again -> Answer.of(new PeriodicError(again, gears, Optional.of(ofNight))))
        .orElseGet(() -> Answer.none(TOO_FEW));
  }

  /** Number of runs that took part. */
  public int runs() {
    return found.fit().model().backgrounds().size();
  }

  /** Which of the fit's runs this is; nothing when it was too short to take part. */
  public OptionalInt index(int runId) {
    return IntStream.range(0, found.fit().model().backgrounds().size())
        .filter(r -> found.fit().model().backgrounds().get(r).run().runId() == runId)
        .findFirst();
  }

  /** Motion of a run that took part, unknown steps closed, and what the fit says. */
  public Optional<LevelledMotion> levelled(int runId) {
    OptionalInt at = index(runId);
    return at.isEmpty() ? Optional.empty() : Optional.of(levelled().get(at.getAsInt()));
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
    return main().map(family -> peakToPeak(found, family, known));
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

  private static Estimate peakToPeak(
      ToneSearch.Found found, int family, Optional<AxisKnowledge> known) {
    Family of = found.fit().families().get(family);
    return known
        .flatMap(k -> k.family(of).map(f -> k.peakToPeakArcsecAxis(f, of.harmonics()).estimate()))
        .orElseGet(() -> ToneReading.peakToPeak(found.fit(), family));
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
