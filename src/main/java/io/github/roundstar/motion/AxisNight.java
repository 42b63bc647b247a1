package io.github.roundstar.motion;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.model.PierSide;
import io.github.roundstar.motion.AxisKnowledge.Part;
import io.github.roundstar.signal.WanderNoise;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/**
 * One axis of the mount over a night.
 *
 * <p>What has to be searched comes first: in right ascension the gears ({@link ToneSearch}), in
 * both axes the jolts ({@link JoltSearch}). The posterior then tells everything at once, and the
 * motion is made out anew with what it says of the pulses.
 *
 * @param runs what each run tells, in the night's order
 * @param periodic drift and periodic error of right ascension, over all runs; none in declination
 */
public record AxisNight(List<Answer<AxisMotion>> runs, Answer<PeriodicError> periodic) {
  /** Orders that a worm always is taken to have. */
  private static final int HARMONICS = 4;

  /** Why declination has no periodic error. */
  public static final String NOT_TURNING = "declination is not turned by a worm while it is guided";

  /** Copies. */
  public AxisNight {
    runs = List.copyOf(runs);
  }

  /** No run tells anything. */
  public static AxisNight none(int runs, String because) {
    return new AxisNight(Collections.nCopies(runs, Answer.none(because)), Answer.none(because));
  }

  /** Right ascension: at the axis where a run's declination is known, else on the sky. */
  public static AxisNight ra(List<GuideRun> runs, Equipment equipment) {
    Gears gears = Gears.of(equipment);
    Parts parts = Parts.of(runs, Axis.RA, equipment);
    if (parts.fit.isEmpty()) {
      return parts.nothing();
    }
    List<AxisRun> plain = parts.fit.stream().map(AxisNight::plain).toList();
    Answer<PeriodicError> found = PeriodicError.of(plain, gears);
    List<Family> families = found.value().map(PeriodicError::families).orElse(List.of());
    List<Optional<JoltFree>> jolts =
        plain.stream().parallel().map(run -> jolts(run, families)).toList();
    if (anyJolts(jolts)) {
      List<AxisRun> quiet = new ArrayList<>();
      for (int i = 0; i < plain.size(); i++) {
        AxisRun run = plain.get(i);
        quiet.add(jolts.get(i).map(run::without).orElse(run));
      }
      found = PeriodicError.of(quiet, gears);
    }
    AxisKnowledge known =
        AxisKnowledge.Peaks.of(parts.without(jolts), Axis.RA, families(found, gears)).known();
    List<AxisMotion> motions = parts.motions(plain, jolts, known);
    Answer<PeriodicError> periodic =
        found.then(
            error ->
                error.in(
                    motions.stream().map(AxisMotion::quiet).toList(),
                    motions.stream().map(m -> m.jolts().wanderNoise()).toList(),
                    known));
    return new AxisNight(parts.answers(motions), periodic);
  }

  /** Declination. */
  public static AxisNight dec(List<GuideRun> runs, Equipment equipment) {
    Parts parts = Parts.of(runs, Axis.DEC, equipment);
    if (parts.fit.isEmpty()) {
      return parts.nothing();
    }
    AxisKnowledge.Peaks peaks = AxisKnowledge.Peaks.of(parts.fit, Axis.DEC, List.of());
    List<PulseEffect> likeliest = peaks.effects();
    List<AxisRun> behind = new ArrayList<>();
    for (int i = 0; i < likeliest.size(); i++) {
      Part part = parts.fit.get(i);
      behind.add(plain(part).with(part.made().sky(likeliest.get(i))));
    }
    List<Optional<JoltFree>> jolts =
        behind.stream().parallel().map(run -> jolts(run, List.of())).toList();
    AxisKnowledge known =
        (anyJolts(jolts)
                ? AxisKnowledge.Peaks.of(parts.without(jolts), Axis.DEC, List.of())
                : peaks)
            .known();
    return new AxisNight(
        parts.answers(parts.motions(behind, jolts, known)), Answer.none(NOT_TURNING));
  }

  private static AxisRun plain(Part part) {
    return AxisRun.of(part.run(), part.made().sky(), part.cosine());
  }

  private static boolean anyJolts(List<Optional<JoltFree>> jolts) {
    return jolts.stream().flatMap(Optional::stream).anyMatch(j -> !j.jolts().isEmpty());
  }

  /** What is left without jolts; nothing where there are too few frames to tell. */
  private static Optional<JoltFree> jolts(AxisRun run, List<Family> families) {
    double[][] columns = ToneColumns.withPulses(run, families);
    MotionSeries motion = run.motion();
    if (motion.size() - motion.pieces() < RunBackground.FEWEST_STEPS + columns.length) {
      return Optional.empty();
    }
    return motion.wanderNoise(columns).map(start -> JoltSearch.of(motion, columns, start));
  }

  /**
   * The sinusoids, the worm or else the largest first. A worm whose period is known stands among
   * them whether it shows or not: then what it may have is bounded.
   */
  private static List<Family> families(Answer<PeriodicError> found, Gears gears) {
    List<Family> families = new ArrayList<>();
    found
        .value()
        .ifPresent(
            error -> {
              families.addAll(error.families());
              error.mainFamily().ifPresent(main -> families.add(0, families.remove(main)));
            });
    gears
        .wormPeriodSeconds()
        .ifPresent(
            period -> {
              if (families.stream().noneMatch(f -> f.source().equals(Family.WORM))) {
                families.add(0, Family.ofPeriod(period, 1, Family.WORM));
              }
            });
    if (!families.isEmpty()) {
      // Harmonics too small to stand out pass for wander else, and a loop for stronger pulses.
      Family first = families.get(0);
      for (int harmonic = 1; harmonic <= HARMONICS; harmonic++) {
        first = first.withHarmonic(harmonic);
      }
      families.set(0, first);
    }
    return families;
  }

  /** The runs that tell something, and why the others do not. */
  private static final class Parts {
    final List<Part> fit = new ArrayList<>();
    final List<String> because = new ArrayList<>();

    static Parts of(List<GuideRun> runs, Axis axis, Equipment equipment) {
      Parts parts = new Parts();
      for (GuideRun run : runs) {
        Answer<Part> part =
            Reconstruction.of(run, axis, equipment)
                .map(
                    made ->
                        new Part(
                            run,
                            made,
                            Optional.empty(),
                            axis == Axis.DEC ? 1 : CosDec.of(run).value().orElse(1.0),
                            axis == Axis.DEC ? sense(run) : 1,
                            GuideRate.declaredAxis(run, equipment).value().isPresent()));
        String unfit =
            part.value().isEmpty() ? part.because() : part.value().get().unfit().orElse("");
        if (unfit.isEmpty()) {
          parts.fit.add(part.value().orElseThrow());
        }
        parts.because.add(unfit);
      }
      return parts;
    }

    /** A tube east of the pier turns the motor's north into the sky's south. */
    private static int sense(GuideRun run) {
      return run.pointing().pierSide().filter(side -> side == PierSide.EAST).isPresent() ? -1 : 1;
    }

    List<Part> without(List<Optional<JoltFree>> jolts) {
      List<Part> quiet = new ArrayList<>();
      for (int i = 0; i < fit.size(); i++) {
        Part without = fit.get(i).without(jolts.get(i));
        quiet.add(without.unfit().isPresent() ? fit.get(i) : without);
      }
      return quiet;
    }

    /** The motions made out anew. */
    List<AxisMotion> motions(
        List<AxisRun> searched, List<Optional<JoltFree>> jolts, AxisKnowledge known) {
      List<AxisMotion> motions = new ArrayList<>();
      for (int i = 0; i < fit.size(); i++) {
        Part part = fit.get(i);
        int id = part.run().id();
        PulseEffect effect = known.effect(id);
        AxisRun run = run(part, effect, known.others(id));
        WanderNoise all = known.wanderNoise(id);
        AxisRun before = searched.get(i);
        JoltFree quiet =
            jolts
                .get(i)
                .orElseGet(
                    () ->
                        JoltFree.all(
                            before.motion(), ToneColumns.withPulses(before, List.of()), all));
        double share = fit.size() == 1 ? 1 : noiseShare(run.without(quiet), known.families(), all);
        WanderNoise own =
            new WanderNoise(
                share * share * all.noiseVariance(), all.ratioPerSecond(), all.memorySeconds());
        motions.add(new AxisMotion(run, run.without(quiet), quiet.with(own), effect, share, known));
      }
      return motions;
    }

    /** The motion where pulses do this, and how else they may. */
    private static AxisRun run(Part part, PulseEffect effect, List<PulseEffect> otherwise) {
      double cosine = part.cosine();
      MotionSeries sky = part.made().sky(effect);
      double[][] others = new double[part.made().pushed() ? otherwise.size() : 0][];
      for (int k = 0; k < others.length; k++) {
        others[k] = part.made().sky(otherwise.get(k)).arcsec();
        for (int i = 0; i < others[k].length; i++) {
          others[k][i] = (others[k][i] - sky.arcsec(i)) / cosine;
        }
      }
      return plain(part).with(sky.times(1 / cosine), others);
    }

    /** How much larger a run's noise is than that of all, by what its filter leaves. */
    private static double noiseShare(AxisRun quiet, List<Family> families, WanderNoise all) {
      return RunBackground.of(quiet, families, all)
          .map(
              b ->
                  Math.sqrt(
                      b.fit().sumOfSquares() / b.fit().degreesOfFreedom() / all.noiseVariance()))
          .filter(share -> share > 0)
          .orElse(1.0);
    }

    List<Answer<AxisMotion>> answers(List<AxisMotion> motions) {
      List<Answer<AxisMotion>> answers = new ArrayList<>();
      int next = 0;
      for (String unfit : because) {
        answers.add(unfit.isEmpty() ? Answer.of(motions.get(next++)) : Answer.none(unfit));
      }
      return answers;
    }

    AxisNight nothing() {
      List<Answer<AxisMotion>> none = new ArrayList<>();
      because.forEach(reason -> none.add(Answer.none(reason)));
      return new AxisNight(
          none, Answer.none(because.isEmpty() ? "there is no run" : because.get(0)));
    }
  }
}
