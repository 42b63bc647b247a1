package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.Sentences;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.results.Finding;
import io.github.roundstar.results.Level;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A finding being written: its words, and the measures that give it a level. A measure is the share
 * of the trailing, the exposures lost, or the share of each correction that it spoils; the
 * weightiest counts.
 */
final class Draft {
  /** Where the figures cannot tell by themselves and a cure for it wins exposures all the same. */
  private static final Measure UNDECIDED = new Measure(Optional.of(Level.WATCH), 0.5);

  private final FindingCode code;
  private final Facts facts;
  private final List<String> evidence = new ArrayList<>();
  private final List<String> actions = new ArrayList<>();
  private final List<Measure> measures = new ArrayList<>();
  private String title = "";
  private String fineTitle = "";
  private String caution = Cautions.NONE;
  private String unknown = "";
  private Optional<Estimate> share = Optional.empty();
  private Optional<Double> removedArcsec2 = Optional.empty();
  private Optional<ExposureTally.Lost> lost = Optional.empty();
  private Optional<Double> hours = Optional.empty();
  private double mostTrust = Measure.MOST_CONFIDENCE;

  Draft(FindingCode code, Facts facts) {
    this.code = code;
    this.facts = facts;
  }

  /** The heading: what is wrong, and the heading when it is not. */
  Draft title(String found, String fine) {
    title = found;
    fineTitle = fine;
    return this;
  }

  /** One sentence of evidence. */
  Draft say(String sentence) {
    evidence.add(sentence);
    return this;
  }

  /** Steps in the order to take them. */
  Draft act(String... steps) {
    actions.addAll(List.of(steps));
    return this;
  }

  Draft caution(String text) {
    caution = text;
    return this;
  }

  /** Parts of the budget, with the square of the figure behind them. */
  Draft part(TrailingBudget.Part part, Estimate ofFigure) {
    TrailingBudget budget = facts.budget().orElseThrow();
    return share(
        budget.shareOfSquare(part, ofFigure), budget.trailingArcsec2(), part.meanSquareArcsec2());
  }

  /**
   * A share of the trailing. It gives the level as it was found; what is written of it, value and
   * interval, keeps to 0..1, since other parts may be negative and leave it more than the whole.
   *
   * @param ofTrailing the share
   * @param wholeArcsec2 mean square that it is a share of [arcsec^2]
   * @param removable what its removal takes from the logged mean square [arcsec^2]
   */
  Draft share(Estimate ofTrailing, double wholeArcsec2, double removable) {
    Estimate possible = Measure.possible(ofTrailing);
    share = Optional.of(possible);
    removedArcsec2 = Optional.of(removable);
    measures.add(Measure.trailing(ofTrailing, Math.sqrt(Math.max(0, wholeArcsec2))));
    evidence.add("This makes " + Wording.shareOf(possible, "the star's trailing") + ".");
    return this;
  }

  /** Why no share of the trailing can be had. */
  Draft shareUnknown(String because) {
    unknown = because;
    return this;
  }

  /** Exposures lost to some causes, where there are exposures. */
  Draft lostTo(String... causes) {
    facts.exposures().ifPresent(tally -> lost(tally.lostTo(causes)));
    return this;
  }

  private void lost(ExposureTally.Lost loss) {
    lost = Optional.of(loss);
    hours = Optional.of(Math.max(loss.hours(), hours.orElse(0.0)));
    measures.add(Measure.exposures(loss));
    if (loss.trailed() > 0) {
      evidence.add(
          Wording.counted(loss.trailed(), "exposure")
              + " of "
              + loss.of()
              + (loss.trailed() == 1 ? " was" : " were")
              + " lost to it.");
    }
  }

  /** Share of the night's time that it takes. */
  Draft timeLost(Estimate ofTime, double hoursLost) {
    measures.add(Measure.time(ofTime));
    hours = Optional.of(Math.max(hoursLost, hours.orElse(0.0)));
    return this;
  }

  /** Share of each correction, or of each figure, that it spoils. */
  Draft spoils(Estimate ofCorrection) {
    measures.add(Measure.spoiled(ofCorrection));
    return this;
  }

  /** A level that the evidence gives by itself. */
  Draft level(Level level, double confidence) {
    measures.add(new Measure(Optional.of(level), confidence));
    return this;
  }

  /** A limit to the confidence, since something else looks the same. */
  Draft trustAtMost(double confidence) {
    mostTrust = confidence;
    return this;
  }

  /** The finding, or why it cannot be had. */
  Answer<Finding> judged() {
    Optional<Measure> weightiest =
        measures.stream()
            .filter(measure -> measure.level().isPresent())
            .min(java.util.Comparator.comparing(measure -> measure.level().get()));
    Optional<LadderReading.Chosen> chosen = facts.ladder().flatMap(l -> l.chosenFor(code));
    boolean undecided = weightiest.isEmpty() || openBelow(weightiest.get().level().get());
    if (undecided && chosen.isEmpty()) {
      return Answer.none(unknown.isEmpty() ? whyUndecided() : unknown);
    }
    return Answer.of(at(weightiest.filter(m -> !undecided).orElse(UNDECIDED)));
  }

  /** Whether all is fine by one measure while another cannot exclude a tenth, or is missing. */
  private boolean openBelow(Level level) {
    return level == Level.FINE
        && (!unknown.isEmpty() && lost.isEmpty()
            || measures.stream().anyMatch(measure -> measure.level().isEmpty()));
  }

  private String whyUndecided() {
    return share
        .map(
            estimate ->
                "its share of the trailing may be anything from "
                    + Wording.percent(estimate.lo95())
                    + " to "
                    + Wording.percent(estimate.hi95())
                    + ": record longer")
        .orElse("the figures for it are missing");
  }

  private Finding at(Measure measure) {
    Level found = measure.level().orElseThrow();
    Level level = facts.ladder().map(l -> l.level(code, found)).orElse(found);
    boolean fine = level == Level.FINE;
    if (!fine) {
      facts.ladder().flatMap(l -> l.chosenFor(code)).ifPresent(this::sayWhatItWins);
    }
    return new Finding(
        code.word(),
        level,
        fine ? fineTitle : title,
        Math.min(mostTrust, measure.confidence()),
        String.join(" ", evidence),
        fine ? List.of() : actions,
        fine ? Cautions.NONE : caution,
        share.map(Estimate::value).orElse(null),
        fine ? null : expectedRmsArcsec(),
        expectedRound(),
        hours.orElse(null));
  }

  private void sayWhatItWins(LadderReading.Chosen chosen) {
    String wins = CureWords.step(chosen, facts.ladder().orElseThrow(), facts.equipment()).wins();
    if (!wins.isEmpty()) {
      evidence.add(
          Sentences.whole(
              CureWords.shortly(chosen.cure()) + ", played through the night again, " + wins));
    }
  }

  /** What the ladder decided on comes to; by the exposures' causes where it did not decide. */
  private Integer expectedRound() {
    return facts
        .ladder()
        .filter(ladder -> ladder.need().ofStars())
        .flatMap(ladder -> ladder.chosenFor(code).map(c -> ladder.withAlone(c.cure())))
        .map(round -> (int) Math.round(round))
        .or(() -> lost.map(loss -> facts.exposures().orElseThrow().round() + loss.trailed()))
        .orElse(null);
  }

  private Double expectedRmsArcsec() {
    Optional<LadderReading.Chosen> chosen = facts.ladder().flatMap(l -> l.chosenFor(code));
    if (chosen.isPresent()) {
      double now = facts.ladder().orElseThrow().asItWas().loggedRadialRmsArcsec().value();
      return Math.max(0, now - chosen.get().cure().lessRmsArcsecAlone().value());
    }
    if (removedArcsec2.isEmpty() || facts.radialRmsArcsec().isEmpty()) {
      return null;
    }
    double now = facts.radialRmsArcsec().get();
    double left = now * now - Math.max(0, removedArcsec2.get());
    return Math.sqrt(Math.max(0, left));
  }
}
