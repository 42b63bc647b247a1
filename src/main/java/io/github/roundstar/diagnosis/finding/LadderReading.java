package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.results.Cure;
import io.github.roundstar.results.Level;
import io.github.roundstar.results.Need;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.Rung;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * The decision that a ladder carries, and what it makes of a finding. The lowest rung that is
 * likelier to meet the need than not is decided on: so a step that is not needed is as rare as one
 * that is not enough, and nothing dear or risky is named where something cheaper will more likely
 * do. Of what is changed up to it, no more than it takes. A finding is worth fixing where a cure
 * for it is among that, and never above watch where none is.
 */
final class LadderReading {
  /** Rungs that a user can climb. */
  private static final List<String> CLIMBED =
      List.of(
          Rung.SETTINGS,
          Rung.ALIGNMENT_BALANCE,
          Rung.SHORTER_EXPOSURES,
          Rung.TRAINING,
          Rung.MECHANICS);

  private final NightResult night;
  private final Need need;
  private final Rung asItWas;
  private final String rung;
  private final boolean surely;
  private final List<Chosen> chosen;

  /** A cure with its rung. */
  record Chosen(Cure cure, String rung) {}

  private LadderReading(NightResult night) {
    this.night = night;
    this.need = night.need();
    this.asItWas = night.rung(Rung.AS_IT_WAS).orElseThrow();
    String lowest = lowest();
    this.rung = lowest == null ? Rung.AIR_LIMIT : lowest;
    this.surely = lowest != null && rung(lowest).meetsNeed() >= Thresholds.SURELY;
    this.chosen = chosen();
  }

  /** The reading; nothing where the night was not played again. */
  static Optional<LadderReading> of(NightResult night) {
    return night.ladder() == null || night.need() == null
        ? Optional.empty()
        : Optional.of(new LadderReading(night));
  }

  private Rung rung(String name) {
    return night.rung(name).orElseThrow();
  }

  private String lowest() {
    if (asItWas.meetsNeed() >= Thresholds.LIKELIER) {
      return Rung.AS_IT_WAS;
    }
    return CLIMBED.stream()
        .map(this::rung)
        .filter(Rung::offered)
        .filter(r -> r.meetsNeed() >= Thresholds.LIKELIER)
        .map(Rung::rung)
        .findFirst()
        .orElse(null);
  }

  /** Of what was changed up to the rung decided on, no more than it takes. */
  private List<Chosen> chosen() {
    if (rung.equals(Rung.AS_IT_WAS)) {
      return List.of();
    }
    if (rung.equals(Rung.AIR_LIMIT)) {
      return below(Rung.MECHANICS).stream().filter(c -> wins(c.cure())).toList();
    }
    double enough = surely ? Thresholds.SURELY : Thresholds.LIKELIER;
    Rung decided = rung(rung);
    Optional<Cure> single =
        decided.cures().stream().filter(cure -> cure.meetsAlone() >= enough).findFirst();
    if (single.isPresent()) {
      return List.of(new Chosen(single.get(), rung));
    }
    if (rung.equals(Rung.SHORTER_EXPOSURES)) {
      return decided.cures().stream().map(c -> new Chosen(c, rungOf(c))).toList();
    }
    List<Chosen> winning = below(rung).stream().filter(c -> wins(c.cure())).toList();
    return winning.stream().anyMatch(c -> c.rung().equals(rung))
        ? winning
        : below(rung).stream().filter(c -> wins(c.cure()) || c.rung().equals(rung)).toList();
  }

  private String rungOf(Cure cure) {
    return CLIMBED.stream()
        .filter(name -> !name.equals(Rung.SHORTER_EXPOSURES))
        .filter(name -> rung(name).cures().stream().anyMatch(c -> c.cure().equals(cure.cure())))
        .findFirst()
        .orElse(Rung.SHORTER_EXPOSURES);
  }

  /** Cures of a rung and of those below it, shorter exposures left out on the way. */
  private List<Chosen> below(String top) {
    List<Chosen> all = new ArrayList<>();
    for (String name : CLIMBED) {
      if (!name.equals(Rung.SHORTER_EXPOSURES)) {
        rung(name).cures().forEach(c -> all.add(new Chosen(c, name)));
      }
      if (name.equals(top)) {
        break;
      }
    }
    return all;
  }

  /** Whether a cure surely wins something, alone or on top of what is cheaper. */
  private boolean wins(Cure cure) {
    return need.ofStars()
        ? Math.max(cure.winsAlone().value(), cure.winsOnTop().value()) >= 1
            && Math.max(cure.winsAlone().low(), cure.winsOnTop().low()) >= 0
        : Math.max(cure.lessRmsArcsecAlone().low(), cure.lessRmsArcsecOnTop().low()) > 0;
  }

  /** Whether what was decided on meets the need with little doubt. */
  boolean surely() {
    return surely;
  }

  /** The rung decided on; the air's where none below it meets the need. */
  String rung() {
    return rung;
  }

  /** What to change, the cheapest first. */
  List<Chosen> cures() {
    return chosen;
  }

  /** The night as it was. */
  Rung asItWas() {
    return asItWas;
  }

  /** The night with what was decided on; where nothing is enough, with all that can be done. */
  Rung after() {
    return rung(rung.equals(Rung.AIR_LIMIT) ? Rung.MECHANICS : rung);
  }

  /** What is asked. */
  Need need() {
    return need;
  }

  /** Exposures that some cures cost, by the one that wins most back. */
  int costs(Set<String> cures) {
    return (int)
        Math.round(
            night.ladder().stream()
                .flatMap(r -> r.cures().stream())
                .filter(cure -> cures.contains(cure.cure()))
                .mapToDouble(cure -> cure.winsAlone().value())
                .max()
                .orElse(0));
  }

  /** Round exposures with this cure alone. */
  double withAlone(Cure cure) {
    return Math.max(0, asItWas.round().value() + cure.winsAlone().value());
  }

  /** Exposures that the settings cost together. */
  int settingsCost() {
    Rung settings = rung(Rung.SETTINGS);
    return settings.offered()
        ? (int) Math.round(Math.max(0, settings.round().value() - asItWas.round().value()))
        : 0;
  }

  /** Exposures that nothing within reach wins back. */
  int airCosts() {
    Rung most = rung(Rung.MECHANICS);
    double best = Math.max(most.round().value(), asItWas.round().value());
    return (int) Math.round(Math.max(0, most.units() - best));
  }

  /** Whether a cure sees to a finding. */
  private static boolean sees(FindingCode code, Cure cure) {
    String name = cure.cure();
    boolean setting = name.startsWith("ra-") || name.startsWith("dec-");
    boolean up =
        cure.numbers().containsKey("toGain")
            && cure.numbers().get("toGain") > cure.numbers().get("fromGain");
    return switch (code) {
      case UNDER_CORRECTION -> setting && up;
      case OVER_CORRECTION -> setting && !up || name.equals("guide-exposure");
      case PULSE_STRENGTH, PIXEL_SCALE -> setting;
      case SLOW_SETTLING -> name.equals("settling-wait");
      case TRACKING_RATE -> name.equals("tracking-rate");
      case POLAR_AXIS, FIELD_ROTATION -> name.equals("polar-axis");
      case AXIS_IMBALANCE -> name.equals("balance");
      case JOLTS -> name.equals("jolts");
      case PERIODIC_ERROR -> name.equals("training") || name.equals("gears");
      case DEC_BACKLASH -> name.equals("play") || name.equals("sticking");
      case DIFFERENTIAL_FLEXURE -> name.equals("flexure");
      case OPTICS -> name.equals("optics");
      case STUCK_STAR,
          LOG_TOO_SHORT,
          CAMERA_ANGLE,
          SEEING_BOUND,
          CLOUDS,
          DIFFERENTIAL_REFRACTION,
          ATMOSPHERIC_DISPERSION ->
          false;
    };
  }

  /** What is decided on that sees to a finding. */
  Optional<Chosen> chosenFor(FindingCode code) {
    return chosen.stream().filter(c -> sees(code, c.cure())).findFirst();
  }

  /** Whether a gain of this axis is to be raised, or what else weakens or strengthens it. */
  boolean changes(FindingCode code, String axis) {
    return chosen.stream()
        .anyMatch(
            c ->
                sees(code, c.cure())
                    && (c.cure().cure().startsWith(axis)
                        || c.cure().cure().equals("guide-exposure")));
  }

  /**
   * The level of a finding.
   *
   * @param found what was found by itself: below watch where nothing is there
   */
  Level level(FindingCode code, Level found) {
    if (code == FindingCode.STUCK_STAR || code == FindingCode.LOG_TOO_SHORT) {
      return found;
    }
    boolean there = found.atLeast(Level.WATCH);
    if (!there && code.about() == FindingCode.About.SETTINGS && !carriesGain(code)) {
      return found;
    }
    return chosen.stream()
        .filter(c -> sees(code, c.cure()))
        .map(c -> weight(c.cure()))
        .min(Comparator.naturalOrder())
        .orElse(there ? Level.WATCH : found);
  }

  /** A gain is too low or too high by what the ladder says; a wrong scale shows by itself. */
  private static boolean carriesGain(FindingCode code) {
    return code == FindingCode.UNDER_CORRECTION || code == FindingCode.OVER_CORRECTION;
  }

  /** What is done first wins back a fifth of the exposures, or a quarter of the RMS. */
  private Level weight(Cure cure) {
    boolean first =
        need.ofStars()
            ? Math.max(cure.winsAlone().value(), cure.winsOnTop().value())
                >= Thresholds.FIX_FIRST_EXPOSURES * asItWas.units()
            : Math.max(cure.lessRmsArcsecAlone().value(), cure.lessRmsArcsecOnTop().value())
                >= Thresholds.FIX_FIRST_CUT * asItWas.loggedRadialRmsArcsec().value();
    return first ? Level.FIX_FIRST : Level.WORTH_FIXING;
  }
}
