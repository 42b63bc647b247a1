package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Sentences;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.results.Decision;
import io.github.roundstar.results.Faults;
import io.github.roundstar.results.Finding;
import io.github.roundstar.results.Judgement;
import io.github.roundstar.results.Level;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.NotComputed;
import io.github.roundstar.results.Step;
import io.github.roundstar.results.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * What a night's figures mean.
 *
 * @param findings one per code, the weightiest first; what cannot be told comes last with its
 *     reason
 * @param verdict what to do
 * @param steps the same, step by step; empty where nothing is to be done
 * @param notComputed why some of their figures are null
 */
public record Diagnosis(
    List<Finding> findings, Verdict verdict, List<Step> steps, List<NotComputed> notComputed) {
  /** One per code, in no order of weight. */
  private static final List<Rule> RULES =
      List.of(
          new StuckStarRule(),
          new LogTooShortRule(),
          new PixelScaleRule(),
          new CameraAngleRule(),
          new PulseStrengthRule(),
          new UnderCorrectionRule(),
          new OverCorrectionRule(),
          new SlowSettlingRule(),
          new TrackingRateRule(),
          new SeeingBoundRule(),
          new CloudsRule(),
          new AxisImbalanceRule(),
          new JoltsRule(),
          new PolarAxisRule(),
          new FieldRotationRule(),
          new DifferentialRefractionRule(),
          new AtmosphericDispersionRule(),
          new OpticsRule(),
          new DifferentialFlexureRule(),
          new PeriodicErrorRule(),
          new DecBacklashRule());

  private static final Judgement NOT_JUDGED =
      new Judgement(Level.CANNOT_TELL, "Not judged, by a fault of roundstar.");

  private static final Verdict LOST =
      new Verdict(
          Decision.CANNOT_TELL,
          null,
          NOT_JUDGED,
          NOT_JUDGED,
          NOT_JUDGED,
          NOT_JUDGED,
          NOT_JUDGED,
          "A fault of roundstar keeps this night from being judged; the figures stand.");

  /** Copies the lists. */
  public Diagnosis {
    findings = List.copyOf(findings);
    steps = List.copyOf(steps);
    notComputed = List.copyOf(notComputed);
  }

  /**
   * Judges a night.
   *
   * @param figures everything but findings and verdict, which are not read
   * @param equipment what the user says of site, mount and optics
   * @param faults hears of findings that a fault of the tool took
   */
  public static Diagnosis of(NightResult figures, Equipment equipment, Faults faults) {
    Optional<Facts> facts =
        faults.within(
            "facts of all findings",
            () -> Optional.of(Facts.of(figures, equipment)),
            Optional.<Facts>empty());
    List<Finding> findings =
        RULES.stream()
            .map(rule -> finding(rule, facts, faults))
            .sorted(new ByWeight(facts.flatMap(Facts::exposures)))
            .toList();
    Verdict verdict =
        faults.within("verdict", () -> facts.map(f -> Verdicts.of(f, findings)).orElse(LOST), LOST);
    List<Step> steps =
        faults.within(
            "steps",
            () -> facts.map(f -> Verdicts.steps(f, findings)).orElse(List.of()),
            List.<Step>of());
    List<NotComputed> reasons = reasons(findings);
    reasons.addAll(LadderReasons.of(figures.ladder(), verdict));
    return new Diagnosis(findings, verdict, steps, reasons);
  }

  /** The figures with what they mean, and how that was made. */
  public NightResult addedTo(NightResult figures) {
    return new NightResult(
        figures.schema(),
        figures.version(),
        figures.inputs(),
        figures.night(),
        figures.runs(),
        figures.polarAxis(),
        figures.seeing(),
        figures.exposures(),
        figures.replay(),
        figures.planning(),
        findings,
        verdict,
        figures.need(),
        figures.ladder(),
        steps,
        figures.promised(),
        figures.kept(),
        figures.usual(),
        joined(figures.notComputed(), notComputed),
        joined(figures.methods(), JudgingMethods.ALL),
        figures.faults());
  }

  private static <T> List<T> joined(List<T> first, List<T> then) {
    return Stream.concat(first.stream(), then.stream()).toList();
  }

  private static Finding finding(Rule rule, Optional<Facts> facts, Faults faults) {
    Answer<Finding> lost = Answer.none(Faults.BECAUSE);
    Answer<Finding> answer =
        faults.within(
            "finding " + rule.code().word(), () -> facts.map(rule::judge).orElse(lost), lost);
    return answer
        .value()
        .orElseGet(
            () ->
                new Finding(
                    rule.code().word(),
                    Level.CANNOT_TELL,
                    Sentences.capital(rule.code().subject()) + ": cannot be told",
                    null,
                    Sentences.whole(answer.because()),
                    List.of(),
                    Cautions.NONE,
                    null,
                    null,
                    null,
                    null));
  }

  private static List<NotComputed> reasons(List<Finding> findings) {
    List<NotComputed> reasons = new ArrayList<>();
    note(reasons, findings, Finding::confidence, "confidence", "what cannot be told has none");
    note(
        reasons,
        findings,
        Finding::shareOfTrailing,
        "shareOfTrailing",
        "only causes that are parts of the budget have a share");
    note(
        reasons,
        findings,
        Finding::expectedRmsRadialArcsec,
        "expectedRmsRadialArcsec",
        "only for parts of the budget that are worth removing");
    note(
        reasons,
        findings,
        Finding::expectedRoundExposures,
        "expectedRoundExposures",
        "only where exposures are known and can be laid to the cause");
    note(
        reasons,
        findings,
        Finding::hoursPerNight,
        "hoursPerNight",
        "only where exposures or times can be laid to the cause");
    return reasons;
  }

  private static void note(
      List<NotComputed> reasons,
      List<Finding> findings,
      Function<Finding, Object> figure,
      String name,
      String because) {
    if (findings.stream().anyMatch(finding -> figure.apply(finding) == null)) {
      reasons.add(new NotComputed("/findings/*/" + name, because));
    }
  }
}
