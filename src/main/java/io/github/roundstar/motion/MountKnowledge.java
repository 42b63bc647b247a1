package io.github.roundstar.motion;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.motion.AxisKnowledge.Part;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a night tells of both axes of the mount.
 *
 * @param ra right ascension, over all runs
 * @param dec declination, run by run
 */
public record MountKnowledge(Answer<AxisKnowledge> ra, List<Answer<AxisKnowledge>> dec) {
  /** Orders that a worm always is taken to have. */
  private static final int HARMONICS = 4;

  /** Finds out. */
  public static MountKnowledge of(List<GuideRun> runs, Equipment equipment) {
    return new MountKnowledge(
        ra(runs, equipment), runs.stream().map(run -> dec(run, equipment)).toList());
  }

  private static Answer<AxisKnowledge> ra(List<GuideRun> runs, Equipment equipment) {
    Gears gears = Gears.of(equipment);
    List<Part> parts = new ArrayList<>();
    List<AxisRun> quiet = new ArrayList<>();
    for (GuideRun run : runs) {
      double cosine = CosDec.of(run).value().orElse(1.0);
      Answer<RaMotion> motion = RaMotion.of(run, equipment, cosine, gears);
      parts.add(new Part(run, motion.value().flatMap(RaMotion::response).map(Response::quiet)));
      motion.value().ifPresent(m -> quiet.add(m.quiet()));
    }
    List<Family> families = families(quiet, gears);
    return AxisKnowledge.of(parts, Axis.RA, equipment, families);
  }

  /**
   * The sinusoids, the worm or else the largest first. A worm whose period is known stands among
   * them whether it shows or not: then what it may have is bounded.
   */
  private static List<Family> families(List<AxisRun> runs, Gears gears) {
    List<Family> families = new ArrayList<>();
    if (!runs.isEmpty()) {
      PeriodicError.of(runs, gears)
          .value()
          .ifPresent(
              found -> {
                families.addAll(found.families());
                found.mainFamily().ifPresent(main -> families.add(0, families.remove(main)));
              });
    }
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

  private static Answer<AxisKnowledge> dec(GuideRun run, Equipment equipment) {
    Optional<JoltFree> quiet =
        DecMotion.of(run, equipment).value().flatMap(DecMotion::response).map(Response::quiet);
    return AxisKnowledge.of(List.of(new Part(run, quiet)), Axis.DEC, equipment, List.of());
  }
}
