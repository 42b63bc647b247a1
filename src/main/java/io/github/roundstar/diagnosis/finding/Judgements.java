package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.results.Finding;
import io.github.roundstar.results.Judgement;
import io.github.roundstar.results.Level;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Mount, sky or settings in one sentence, with the level of the weightiest finding about it. */
final class Judgements {
  /** What must be known for a word about the whole; the rest is told where it is found. */
  private static final Set<FindingCode> DECIDING =
      EnumSet.of(
          FindingCode.PERIODIC_ERROR,
          FindingCode.DEC_BACKLASH,
          FindingCode.POLAR_AXIS,
          FindingCode.JOLTS,
          FindingCode.SEEING_BOUND,
          FindingCode.CLOUDS,
          FindingCode.UNDER_CORRECTION,
          FindingCode.OVER_CORRECTION,
          FindingCode.PULSE_STRENGTH);

  private Judgements() {}

  static Judgement of(FindingCode.About about, Facts facts, List<Finding> findings) {
    List<Finding> these =
        findings.stream().filter(finding -> about(finding, facts) == about).toList();
    Optional<Finding> worst =
        these.stream().filter(finding -> finding.level().atLeast(Level.WATCH)).findFirst();
    if (worst.isPresent()) {
      Finding finding = worst.get();
      return new Judgement(finding.level(), finding.title() + Worth.clause(facts, finding) + ".");
    }
    return quiet(about, these);
  }

  /** Gusts are the sky's doing, though it is the mount that they shake. */
  private static FindingCode.About about(Finding finding, Facts facts) {
    FindingCode code = FindingCode.of(finding.code());
    return code == FindingCode.JOLTS && facts.events().mostlyGusts()
        ? FindingCode.About.SKY
        : code.about();
  }

  private static Judgement quiet(FindingCode.About about, List<Finding> these) {
    List<Finding> deciding =
        these.stream().filter(f -> DECIDING.contains(FindingCode.of(f.code()))).toList();
    List<String> unknown =
        deciding.stream()
            .filter(finding -> finding.level() == Level.CANNOT_TELL)
            .map(finding -> FindingCode.of(finding.code()).subject())
            .toList();
    if (unknown.size() == deciding.size()) {
      return new Judgement(
          Level.CANNOT_TELL, "This log cannot tell about " + Wording.list(unknown) + ".");
    }
    String fine =
        switch (about) {
          case MOUNT -> "Nothing about the mount asks for work";
          case SKY -> "The air was not the trouble";
          case SETTINGS -> "The settings suit the mount";
          case OPTICS -> "Optics are fine";
        };
    return new Judgement(
        Level.FINE,
        unknown.isEmpty()
            ? fine + "."
            : fine
                + ", as far as this log tells; it cannot tell about "
                + Wording.list(unknown)
                + ".");
  }
}
