package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.results.Decision;
import io.github.roundstar.results.Finding;
import io.github.roundstar.results.Level;
import io.github.roundstar.results.Verdict;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * From findings to one decision. The weightiest finding that is worth fixing decides. Tools come
 * last: where the user's limit is met and no exposure was lost, gears are left alone. Without such
 * a finding the night is fine, or the air set the limit, or the log cannot tell.
 */
final class Verdicts {
  /** Without these nothing can be said about the mount; two of them missing is too many. */
  private static final Set<FindingCode> NEEDED =
      EnumSet.of(
          FindingCode.PERIODIC_ERROR,
          FindingCode.DEC_BACKLASH,
          FindingCode.OVER_CORRECTION,
          FindingCode.JOLTS);

  private static final int MOST_UNKNOWN = 1;

  private final Facts facts;
  private final List<Finding> findings;

  private Verdicts(Facts facts, List<Finding> findings) {
    this.facts = facts;
    this.findings = findings;
  }

  static Verdict of(Facts facts, List<Finding> findings) {
    Verdicts verdicts = new Verdicts(facts, findings);
    Optional<Finding> leading =
        findings.stream().filter(f -> f.level().atLeast(Level.WORTH_FIXING)).findFirst();
    Decision decision = leading.map(verdicts::decision).orElseGet(verdicts::withoutLeading);
    return new Verdict(
        decision,
        Judgements.of(FindingCode.About.MOUNT, facts, findings),
        Judgements.of(FindingCode.About.SKY, facts, findings),
        Judgements.of(FindingCode.About.SETTINGS, facts, findings),
        leading.isPresent()
            ? verdicts.summary(decision, leading.get())
            : verdicts.summary(decision));
  }

  private Decision decision(Finding leading) {
    FindingCode code = FindingCode.of(leading.code());
    boolean wind = code == FindingCode.JOLTS && facts.events().mostlyGusts();
    return wind || (isTools(leading) && roundAlready()) ? Decision.LEAVE_ALONE : code.decision();
  }

  private static boolean isTools(Finding finding) {
    return FindingCode.of(finding.code()).decision() == Decision.ADJUST_MOUNT;
  }

  private Decision withoutLeading() {
    if (level(FindingCode.LOG_TOO_SHORT) == Level.WATCH || facts.radialRmsArcsec().isEmpty()) {
      return Decision.CANNOT_TELL;
    }
    long unknown = NEEDED.stream().filter(code -> level(code) == Level.CANNOT_TELL).count();
    boolean explained = unknown <= MOST_UNKNOWN && Unexplained.words(facts).isEmpty();
    return roundAlready() || airBound() || explained ? Decision.LEAVE_ALONE : Decision.CANNOT_TELL;
  }

  /** Whether guiding keeps within the user's limit and no exposure is known to have trailed. */
  private boolean roundAlready() {
    boolean lost = facts.exposures().map(tally -> tally.trailed() > 0).orElse(false);
    return !lost
        && facts.limit().isPresent()
        && facts.result().night().guided() != null
        && facts.limit().get().metBy(facts.result().night().guided(), facts.usedFrames());
  }

  private boolean airBound() {
    return level(FindingCode.SEEING_BOUND) == Level.WATCH;
  }

  private Level level(FindingCode code) {
    return findings.stream()
        .filter(finding -> finding.code().equals(code.word()))
        .map(Finding::level)
        .findFirst()
        .orElseThrow();
  }

  private String summary(Decision decision, Finding leading) {
    String what = Wording.small(leading.title());
    return switch (decision) {
      case ADJUST_MOUNT -> "The mount needs work: " + what + Worth.clause(facts, leading) + ".";
      case ADJUST_POLAR_AXIS ->
          "Align the polar axis, not the gears: " + what + Worth.clause(facts, leading) + ".";
      case CHANGE_SETTINGS ->
          "Change a setting and leave the mount alone: "
              + what
              + Worth.clause(facts, leading)
              + ".";
      case REBALANCE ->
          "See to balance and cables before anything else: "
              + what
              + Worth.clause(facts, leading)
              + ".";
      case LEAVE_ALONE ->
          isTools(leading) && roundAlready()
              ? "Leave the mount alone: stars are round within your limit of "
                  + facts.limit().orElseThrow().words()
                  + "; the largest part left is this: "
                  + what
                  + "."
              : "Leave the mount alone: " + what + Worth.clause(facts, leading) + ".";
      case CANNOT_TELL -> cannotTell();
    };
  }

  private String summary(Decision decision) {
    if (decision == Decision.CANNOT_TELL) {
      return cannotTell();
    }
    String rms = Wording.number(facts.radialRmsArcsec().orElseThrow());
    if (airBound()) {
      return "Nothing to adjust: the air set the limit, at " + rms + " arcsec RMS.";
    }
    return roundAlready()
        ? "Nothing to adjust: guiding held the star to "
            + rms
            + " arcsec RMS, within your limit of "
            + facts.limit().orElseThrow().words()
            + "."
        : "Nothing to adjust: no single cause makes a tenth of the " + rms + " arcsec RMS.";
  }

  private String cannotTell() {
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
    Optional<String> unexplained = Unexplained.words(facts);
    if (unexplained.isPresent()) {
      return "This log cannot tell what moves the star: " + unexplained.get() + ".";
    }
    List<String> unknown =
        findings.stream()
            .filter(finding -> finding.level() == Level.CANNOT_TELL)
            .map(finding -> FindingCode.of(finding.code()))
            .filter(NEEDED::contains)
            .map(FindingCode::subject)
            .toList();
    return "This log cannot tell about "
        + Wording.list(unknown)
        + "; the page says what is missing.";
  }
}
