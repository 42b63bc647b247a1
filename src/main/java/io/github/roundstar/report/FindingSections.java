package io.github.roundstar.report;

import io.github.roundstar.model.Sentences;
import io.github.roundstar.report.Page.Block;
import io.github.roundstar.report.Page.Cell;
import io.github.roundstar.report.Page.Column;
import io.github.roundstar.report.Page.Judged;
import io.github.roundstar.report.Page.Section;
import io.github.roundstar.report.Page.Table;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.report.words.Times;
import io.github.roundstar.results.Finding;
import io.github.roundstar.results.Judgement;
import io.github.roundstar.results.Level;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * The verdict's sentences, evidence and advice of a finding, and a table of what was looked at and
 * found fine; empty in a result that does not judge.
 */
final class FindingSections {
  /** A finding surer than this is called sure, then likely; common usage, no source. */
  private static final double SURE = 0.95;

  private static final double LIKELY = 0.8;

  private static final double LEAST_HOURS = 0.05;

  private FindingSections() {}

  static List<Judged> judgements(NightResult result) {
    Verdict verdict = result.verdict();
    List<Judged> judged = new ArrayList<>();
    if (verdict != null) {
      add(judged, "Mount", verdict.mount());
      add(judged, "Axis and balance", verdict.axis());
      add(judged, "Settings", verdict.settings());
      add(judged, "Air", verdict.sky());
      add(judged, "Optics and flexure", verdict.optics());
    }
    return judged;
  }

  /** What was looked at and is fine, and what the log cannot tell. */
  static Optional<Section> others(NightResult result) {
    List<List<Cell>> rows =
        findings(result).stream()
            .filter(finding -> !finding.level().atLeast(Level.WATCH))
            .map(FindingSections::row)
            .toList();
    if (rows.isEmpty()) {
      return Optional.empty();
    }
    Table table =
        new Table(
            "",
            List.of(Column.words("looked at"), Column.files("level"), Column.words("why")),
            rows);
    return Optional.of(
        new Section(
            "looked-at",
            "Looked at and found fine, or not to be told",
            List.of(Block.text().with(table))));
  }

  /** The weightiest first; none in a result that does not judge. */
  static List<Finding> findings(NightResult result) {
    return result.findings() == null ? List.of() : result.findings();
  }

  private static List<Cell> row(Finding finding) {
    return List.of(
        Cell.of(finding.title()),
        Cell.of(words(finding.level())),
        Cell.of(signed(finding.evidence())));
  }

  /** How much a finding matters, and why. */
  static Block evidence(Finding finding) {
    List<String> sentences = new ArrayList<>();
    sentences.add(words(finding.level()) + sure(finding) + ". " + signed(finding.evidence()));
    expected(finding).ifPresent(sentences::add);
    return Block.text(sentences.toArray(String[]::new));
  }

  /** What to do, in order, and what to take care of; nothing where there is nothing to do. */
  static Optional<Block> advice(Finding finding) {
    String caution = finding.caution().isEmpty() ? null : "Take care. " + finding.caution();
    return finding.action().isEmpty() && caution == null
        ? Optional.empty()
        : Optional.of(new Block(List.of("What to do:"), null, null, finding.action(), caution));
  }

  private static Optional<String> expected(Finding finding) {
    List<String> parts = new ArrayList<>();
    if (finding.expectedRmsRadialArcsec() != null) {
      parts.add(
          "a radial RMS of "
              + Numbers.plain(finding.expectedRmsRadialArcsec())
              + " arcsec at best");
    }
    if (finding.expectedRoundExposures() != null && finding.expectedRoundExposures() > 0) {
      parts.add(
          "about "
              + Numbers.counted(
                  finding.expectedRoundExposures(), "round exposure", "round exposures"));
    }
    if (finding.hoursPerNight() != null && finding.hoursPerNight() >= LEAST_HOURS) {
      parts.add(Times.duration(finding.hoursPerNight() * 3600) + " more of use a night");
    }
    return parts.isEmpty()
        ? Optional.empty()
        : Optional.of("To expect without it: " + Sentences.list(parts) + ".");
  }

  /** {@code , sure (97 %)}: in words and number. */
  private static String sure(Finding finding) {
    Double confidence = finding.confidence();
    if (confidence == null) {
      return "";
    }
    String word = confidence >= SURE ? "sure" : confidence >= LIKELY ? "likely" : "possible";
    return ", " + word + " (" + Numbers.percent(confidence) + ")";
  }

  private static void add(List<Judged> judged, String about, Judgement judgement) {
    if (judgement != null) {
      judged.add(new Judged(about, words(judgement.level()), judgement.text()));
    }
  }

  /** Negative numbers with the sign that the rest of the page uses. */
  static String signed(String text) {
    return text.replaceAll("(?<=[ (])-(?=\\d)", "\u2212");
  }

  /** {@code FIX_FIRST} becomes {@code Fix first}. */
  private static String words(Level level) {
    return Sentences.capital(level.name().toLowerCase(Locale.ROOT).replace('_', ' '));
  }
}
