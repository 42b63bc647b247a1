package io.github.roundstar.report;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.Sentences;
import io.github.roundstar.report.Page.Block;
import io.github.roundstar.report.Page.Cell;
import io.github.roundstar.report.Page.Column;
import io.github.roundstar.report.Page.Section;
import io.github.roundstar.report.Page.Table;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.NotComputed;
import io.github.roundstar.results.PromiseKept;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What the steps of an earlier night brought: each step, then the figures of both sides. */
final class PromiseSection {
  private PromiseSection() {}

  static Section of(PromiseKept kept) {
    List<Block> blocks = new ArrayList<>();
    blocks.add(Block.text(FindingSections.signed(kept.text())));
    if (!kept.steps().isEmpty()) {
      blocks.add(
          Block.text()
              .with(
                  new Table(
                      "What became of each step",
                      List.of(
                          Column.words("what it changes"),
                          Column.words("step"),
                          Column.numbers("now", ""),
                          Column.words("done")),
                      kept.steps().stream().map(PromiseSection::row).toList())));
    }
    if (!kept.figures().isEmpty()) {
      blocks.add(
          Block.text(
                  "Intervals hold for another night: they carry how far nights differ by themselves.")
              .with(
                  new Table(
                      "What came of it",
                      List.of(
                          Column.words("figure"),
                          Column.numbers("before", ""),
                          Column.numbers("promised", ""),
                          Column.numbers("came", ""),
                          Column.words("by this figure")),
                      kept.figures().stream().map(PromiseSection::row).toList())));
    }
    if (!kept.notCompared().isEmpty()) {
      blocks.add(
          Block.text(
              kept.notCompared().stream().map(PromiseSection::notCompared).toArray(String[]::new)));
    }
    return new Section("promise", "What the steps of " + kept.night() + " brought", blocks);
  }

  private static String notCompared(NotComputed gap) {
    return Sentences.capital(gap.figure()) + ": not compared, since " + gap.because() + ".";
  }

  private static List<Cell> row(PromiseKept.Step step) {
    return List.of(
        new Cell(Sentences.capital(step.name()), step.unit()),
        step.from() == null
            ? Cell.NONE
            : Cell.of(Numbers.plain(step.from()) + " to " + Numbers.plain(step.to())),
        now(step.now()),
        new Cell(word(step.done()), step.because()));
  }

  /** A declared setting is known exactly. */
  private static Cell now(Estimate now) {
    return now != null && now.lo95() == now.hi95() ? Cell.of(now.value()) : Cell.of(now);
  }

  private static List<Cell> row(PromiseKept.Figure figure) {
    boolean share = figure.unit().equals("%");
    int decimals = share ? 0 : 2;
    return List.of(
        new Cell(share ? "Round exposures" : "Radial RMS in equal air", figure.unit()),
        cell(figure.before(), decimals),
        cell(figure.promised(), decimals),
        cell(figure.came(), decimals),
        Cell.of(word(figure.word())));
  }

  private static Cell cell(Estimate estimate, int decimals) {
    return new Cell(
        Numbers.fixed(estimate.value(), decimals), Numbers.interval(estimate, decimals));
  }

  /** {@code not-kept} becomes {@code not kept}. */
  static String word(String word) {
    return word.replace('-', ' ').toLowerCase(Locale.ROOT);
  }
}
