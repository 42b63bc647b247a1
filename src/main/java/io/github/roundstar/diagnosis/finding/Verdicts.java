package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.model.Sentences;
import io.github.roundstar.results.Decision;
import io.github.roundstar.results.Finding;
import io.github.roundstar.results.Judgement;
import io.github.roundstar.results.Level;
import io.github.roundstar.results.Rung;
import io.github.roundstar.results.Step;
import io.github.roundstar.results.Verdict;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * The decision in one sentence, in steps, and by what it is about; all of it is read off the
 * ladder. Without a ladder, with a false star or with too short a log there is none, and the
 * sentence says what is missing.
 */
final class Verdicts {
  private static final int MOST_STEPS = 3;

  private final Facts facts;
  private final List<Finding> findings;
  private final Optional<LadderReading> ladder;

  private Verdicts(Facts facts, List<Finding> findings) {
    this.facts = facts;
    this.findings = findings;
    boolean silent =
        level(FindingCode.LOG_TOO_SHORT) == Level.WATCH
            || level(FindingCode.STUCK_STAR).atLeast(Level.WATCH)
            || facts.radialRmsArcsec().isEmpty();
    this.ladder = silent ? Optional.empty() : facts.ladder();
  }

  static Verdict of(Facts facts, List<Finding> findings) {
    return new Verdicts(facts, findings).verdict();
  }

  /** What to do next; nothing where nothing is to be done or the log cannot tell. */
  static List<Step> steps(Facts facts, List<Finding> findings) {
    return new Verdicts(facts, findings).steps();
  }

  private Verdict verdict() {
    return new Verdict(
        decision(),
        ladder.map(LadderReading::rung).orElse(null),
        judgement(FindingCode.About.MOUNT),
        judgement(FindingCode.About.AXIS),
        judgement(FindingCode.About.SETTINGS),
        judgement(FindingCode.About.SKY),
        judgement(FindingCode.About.OPTICS),
        summary());
  }

  private Level level(FindingCode code) {
    return findings.stream()
        .filter(finding -> finding.code().equals(code.word()))
        .map(Finding::level)
        .findFirst()
        .orElseThrow();
  }

  private boolean falseStar() {
    return level(FindingCode.STUCK_STAR).atLeast(Level.WATCH);
  }

  private Decision decision() {
    if (ladder.isEmpty()) {
      return falseStar() ? Decision.CHANGE_SETTINGS : Decision.CANNOT_TELL;
    }
    List<LadderReading.Chosen> cures = ladder.get().cures();
    return cures.isEmpty() ? Decision.LEAVE_ALONE : decision(leading(cures));
  }

  /** The cure that carries the decision: of the rung decided on; else the first that wins. */
  private LadderReading.Chosen leading(List<LadderReading.Chosen> cures) {
    return cures.stream()
        .filter(c -> c.rung().equals(ladder.get().rung()))
        .findFirst()
        .orElse(cures.get(0));
  }

  private static Decision decision(LadderReading.Chosen chosen) {
    return switch (chosen.cure().cure()) {
      case "polar-axis" -> Decision.ADJUST_POLAR_AXIS;
      case "balance", "jolts" -> Decision.REBALANCE;
      case "exposure-length" -> Decision.EXPOSE_SHORTER;
      case "flexure", "optics" -> Decision.MEND_OPTICS;
      case "training", "play", "sticking", "gears" -> Decision.ADJUST_MOUNT;
      default -> Decision.CHANGE_SETTINGS;
    };
  }

  private List<Step> steps() {
    if (ladder.isEmpty()) {
      return List.of();
    }
    return ladder.get().cures().stream()
        .limit(MOST_STEPS)
        .map(chosen -> CureWords.step(chosen, ladder.get(), facts.equipment()))
        .toList();
  }

  // --- the sentence ---

  private String summary() {
    if (ladder.isEmpty()) {
      return cannotTell();
    }
    LadderReading read = ladder.get();
    List<LadderReading.Chosen> cures = read.cures();
    return switch (read.rung()) {
      case Rung.AS_IT_WAS -> "Leave everything as it is: " + asItWas(read) + doubt(read) + ".";
      case Rung.AIR_LIMIT -> air(read);
      default -> {
        String rest =
            read.rung().equals(Rung.MECHANICS)
                ? "; nothing cheaper is enough: "
                : read.rung().equals(Rung.SETTINGS) || read.rung().equals(Rung.SHORTER_EXPOSURES)
                    ? "; the mount can stay as it is: "
                    : read.rung().equals(Rung.TRAINING)
                        ? "; the gears can stay closed: "
                        : "; the gears can stay as they are: ";
        yield leadingWords(cures) + rest + CureWords.outcome(read) + doubt(read) + ".";
      }
    };
  }

  /** The cure that carries the decision, with the one before it. */
  private String leadingWords(List<LadderReading.Chosen> cures) {
    LadderReading.Chosen leading = leading(cures);
    String first = CureWords.shortly(leading.cure());
    int others = cures.size() - 1;
    return others == 0
        ? first
        : first + " (" + (others == 1 ? "one more step" : others + " more steps") + " below)";
  }

  private static String doubt(LadderReading read) {
    return read.surely() ? "" : ", most likely";
  }

  private String asItWas(LadderReading read) {
    Rung now = read.asItWas();
    Optional<ExposureTally> listed =
        facts
            .exposures()
            .filter(tally -> read.need().ofStars() && tally.judged() == now.units())
            .filter(tally -> tally.borderline() > 0);
    if (listed.isPresent()) {
      return String.format(
          Locale.ROOT,
          "%d of %d exposures are round, %d borderline",
          listed.get().round(),
          now.units(),
          listed.get().borderline());
    }
    return read.need().ofStars()
        ? String.format(
            Locale.ROOT, "%.0f of %d exposures are round", now.round().value(), now.units())
        : String.format(
            Locale.ROOT,
            "%.2f arcsec RMS keeps within your %.2f",
            now.loggedRadialRmsArcsec().value(),
            read.need().limit());
  }

  private static String air(LadderReading read) {
    Rung best = read.after();
    String reach =
        read.need().ofStars()
            ? String.format(
                Locale.ROOT,
                "%.0f of %d exposures round at best",
                best.round().value(),
                best.units())
            : String.format(
                Locale.ROOT, "%.2f arcsec RMS at best", best.loggedRadialRmsArcsec().value());
    return read.cures().isEmpty()
        ? "The air set the limit; no change of mount or settings helps: " + reach + "."
        : "The air sets the limit, "
            + reach
            + "; on the way there: "
            + Wording.small(CureWords.shortly(read.cures().get(0).cure()))
            + ".";
  }

  private String cannotTell() {
    if (falseStar()) {
      return findings.stream()
          .filter(finding -> finding.code().equals(FindingCode.STUCK_STAR.word()))
          .map(finding -> finding.title() + ": guide on another star first.")
          .findFirst()
          .orElseThrow();
    }
    double more = LogTooShortRule.moreMinutes(facts);
    if (more > 0) {
      return "This log cannot tell; record "
          + Wording.counted((int) Math.ceil(more), "minute")
          + " more of guiding on one star, with pulses logged.";
    }
    Optional<String> torn = LogTooShortRule.runsTooShort(facts);
    if (torn.isPresent()) {
      return "This log cannot tell, since its runs are too short: "
          + torn.get()
          + ": join them if guiding went on without a break.";
    }
    return "This log cannot tell: " + facts.because("/ladder", "/night/guided") + ".";
  }

  // --- by what it is about ---

  private static final Set<String> MOUNT = Set.of("training", "gears", "play", "sticking", "jolts");
  private static final Set<String> AXIS = Set.of("polar-axis", "balance");
  private static final Set<String> OPTICS = Set.of("flexure", "optics");

  private Integer costs(FindingCode.About about) {
    if (ladder.isEmpty() || !ladder.get().need().ofStars()) {
      return null;
    }
    LadderReading read = ladder.get();
    return switch (about) {
      case MOUNT -> read.costs(MOUNT);
      case AXIS -> read.costs(AXIS);
      case SETTINGS -> read.settingsCost();
      case OPTICS -> read.costs(OPTICS);
      case SKY -> read.airCosts();
    };
  }

  private Judgement judgement(FindingCode.About about) {
    List<Finding> these = findings.stream().filter(finding -> about(finding) == about).toList();
    Optional<Finding> worst =
        these.stream().filter(finding -> finding.level().atLeast(Level.WATCH)).findFirst();
    Integer costs = costs(about);
    String cost = cost(costs, about);
    if (worst.isPresent()) {
      Finding finding = worst.get();
      return new Judgement(finding.level(), finding.title() + "." + cost, costs);
    }
    List<String> unknown =
        these.stream()
            .filter(finding -> finding.level() == Level.CANNOT_TELL)
            .map(finding -> FindingCode.of(finding.code()).subject())
            .toList();
    boolean nothingKnown = !these.isEmpty() && unknown.size() == these.size();
    if (ladder.isEmpty() || nothingKnown) {
      return new Judgement(
          Level.CANNOT_TELL,
          unknown.isEmpty()
              ? "This log cannot tell."
              : "This log cannot tell about " + Sentences.list(unknown) + ".",
          null);
    }
    boolean takes = costs != null && costs > 0;
    return takes
        ? new Judgement(Level.WATCH, wouldWin(about, costs), costs)
        : new Judgement(Level.FINE, quiet(about) + "." + cost, costs);
  }

  private String cost(Integer costs, FindingCode.About about) {
    if (costs == null) {
      return "";
    }
    if (costs == 0) {
      return " It costs no exposure.";
    }
    String some = costs + " of " + ladder.get().asItWas().units() + " exposures";
    return about == FindingCode.About.SKY || about == FindingCode.About.SETTINGS || decided(about)
        ? " It costs " + some + "."
        : " Mended, it would win " + some + ", but that is not needed.";
  }

  private boolean decided(FindingCode.About about) {
    return ladder.get().cures().stream()
        .anyMatch(
            c ->
                about == FindingCode.About.SETTINGS
                    ? c.rung().equals(Rung.SETTINGS)
                    : group(about).contains(c.cure().cure()));
  }

  /** Where nothing stands out by itself, and yet something would win exposures. */
  private String wouldWin(FindingCode.About about, int costs) {
    String some = costs + " of " + ladder.get().asItWas().units() + " exposures";
    return switch (about) {
          case MOUNT -> "Gears, play and cables, mended, would win " + some;
          case AXIS -> "A better axis or balance would win " + some;
          case SETTINGS -> "Other settings would win " + some;
          case OPTICS -> "Better optics, or telescopes that keep together, would win " + some;
          case SKY -> "Nothing within reach wins back " + some;
        }
        + (about == FindingCode.About.SKY || decided(about) ? "." : ", but that is not needed.");
  }

  private static Set<String> group(FindingCode.About about) {
    return switch (about) {
      case MOUNT -> MOUNT;
      case AXIS -> AXIS;
      case OPTICS -> OPTICS;
      case SETTINGS, SKY -> Set.of();
    };
  }

  private static String quiet(FindingCode.About about) {
    return switch (about) {
      case MOUNT -> "No gear, play or jolt stands out";
      case AXIS -> "Axis and balance are good enough";
      case SKY -> "The air was not the trouble";
      case SETTINGS -> "The settings suit the mount";
      case OPTICS -> "Nothing is seen of optics or flexure";
    };
  }

  /** Gusts are the sky's doing, though it is the mount that they shake. */
  private FindingCode.About about(Finding finding) {
    FindingCode code = FindingCode.of(finding.code());
    return code == FindingCode.JOLTS && facts.events().mostlyGusts()
        ? FindingCode.About.SKY
        : code.about();
  }
}
