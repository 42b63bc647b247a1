package io.github.roundstar.motion;

import io.github.roundstar.model.Equipment;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Gears whose period is known beforehand, and the rule by which a line in the spectrum is given to
 * one of them.
 *
 * @param wormPeriodSeconds one turn of the worm [s]
 * @param others further gears
 * @param drive kind of drive
 */
public record Gears(
    OptionalDouble wormPeriodSeconds,
    List<Equipment.Gear> others,
    Optional<Equipment.Drive> drive) {
  /** Highest harmonic of the worm that is looked for; higher ones are gear teeth of their own. */
  private static final int HIGHEST_WORM_HARMONIC = 12;

  private static final int HIGHEST_GEAR_HARMONIC = 4;
  private static final int HIGHEST_UNLABELLED_HARMONIC = 6;
  private static final int SLOWEST_FUNDAMENTAL = 4;

  /** Gear periods are known to this share, beside the resolution of the run. */
  static final double TOLERANCE = 0.01;

  /** Copies. */
  public Gears {
    others = List.copyOf(others);
  }

  /** Gears of a drive of unknown kind. */
  public Gears(OptionalDouble wormPeriodSeconds, List<Equipment.Gear> others) {
    this(wormPeriodSeconds, others, Optional.empty());
  }

  /** The gears that the equipment file names. */
  public static Gears of(Equipment equipment) {
    Equipment.Mount mount = equipment.mount();
    return new Gears(mount.wormPeriodSeconds(), mount.gears(), mount.drive());
  }

  /**
   * The families with one more line in them: a harmonic of a known gear, else of the strongest
   * unlabelled family, else a family of its own. In a strain-wave drive the first such family that
   * shows a harmonic is the drive's own: its error comes several times a turn, where a plain gear
   * or a belt hardly shows more than its own period (common practice, no source).
   *
   * @param families families so far, strongest first
   * @param hertz frequency of the line
   * @param resolutionHertz half of one over the longest run
   */
  List<Family> place(List<Family> families, double hertz, double resolutionHertz) {
    if (wormPeriodSeconds.isPresent()) {
      double worm = 1 / wormPeriodSeconds.getAsDouble();
      int harmonic = harmonic(hertz, worm, 1, HIGHEST_WORM_HARMONIC, resolutionHertz);
      if (harmonic > 0) {
        return with(families, Family.WORM, hertz, harmonic);
      }
    }
    for (Equipment.Gear gear : others) {
      int harmonic =
          harmonic(hertz, 1 / gear.periodSeconds(), 1, HIGHEST_GEAR_HARMONIC, resolutionHertz);
      if (harmonic > 0) {
        return with(families, "gear:" + gear.name(), hertz, harmonic);
      }
    }
    return placeUnlabelled(families, hertz, resolutionHertz);
  }

  private List<Family> placeUnlabelled(
      List<Family> families, double hertz, double resolutionHertz) {
    List<Family> placed = new ArrayList<>(families);
    for (int f = 0; f < placed.size(); f++) {
      Family family = placed.get(f);
      String source = family.source();
      if (!source.equals(Family.UNLABELLED) && !source.equals(Family.STRAIN_WAVE)) {
        continue;
      }
      double fundamental = family.hertz(1);
      int faster = harmonic(hertz, fundamental, 2, HIGHEST_UNLABELLED_HARMONIC, resolutionHertz);
      int slower = harmonic(fundamental, hertz, 2, SLOWEST_FUNDAMENTAL, resolutionHertz);
      if (faster > 0) {
        placed.set(f, withSeveral(placed, family.withHarmonic(faster)));
        return placed;
      }
      if (slower > 0) {
        placed.set(f, withSeveral(placed, family.slower(slower).withHarmonic(1)));
        return placed;
      }
    }
    placed.add(Family.ofPeriod(1 / hertz, 1, Family.UNLABELLED));
    return placed;
  }

  /** A family with harmonics, which is the drive's own where that is a strain wave. */
  private Family withSeveral(List<Family> families, Family family) {
    boolean first = families.stream().noneMatch(f -> f.source().equals(Family.STRAIN_WAVE));
    boolean strainWave = drive.filter(Equipment.Drive.STRAIN_WAVE::equals).isPresent();
    return strainWave && first ? family.named(Family.STRAIN_WAVE) : family;
  }

  private static List<Family> with(
      List<Family> families, String source, double hertz, int harmonic) {
    List<Family> placed = new ArrayList<>(families);
    Optional<Family> known = families.stream().filter(f -> f.source().equals(source)).findFirst();
    if (known.isPresent()) {
      placed.set(families.indexOf(known.get()), known.get().withHarmonic(harmonic));
    } else {
      placed.add(Family.ofPeriod(harmonic / hertz, harmonic, source));
    }
    return placed;
  }

  /** Which multiple of {@code fundamental} a frequency is, within the tolerance; 0 for none. */
  private static int harmonic(
      double hertz, double fundamental, int lowest, int highest, double resolutionHertz) {
    int nearest = (int) Math.rint(hertz / fundamental);
    double off = Math.abs(hertz - nearest * fundamental);
    boolean fits = off <= Math.max(TOLERANCE * nearest * fundamental, resolutionHertz);
    return nearest >= lowest && nearest <= highest && fits ? nearest : 0;
  }
}
