package io.github.roundstar.report;

import io.github.roundstar.report.Page.Block;
import io.github.roundstar.report.Page.Cell;
import io.github.roundstar.report.Page.Column;
import io.github.roundstar.report.Page.Section;
import io.github.roundstar.report.Page.Table;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.AxisLoopResult;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.RunResult;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/** How the guide loop answered the offsets. */
final class LoopSection {
  /** An autocorrelation beyond this is told; nearer to zero the gain is as good as right. */
  private static final double TOLD = 0.1;

  /** Below this share the fitted law does not describe the loop. */
  private static final double DESCRIBES = 0.9;

  private static final List<Column> COLUMNS =
      List.of(
          Column.numbers("run", ""),
          Column.words("axis"),
          Column.numbers("gain", ""),
          Column.numbers("gain by the log", ""),
          Column.numbers("deadband", "arcsec"),
          Column.numbers("delay", "frames"),
          Column.numbers("memory", ""),
          Column.numbers("longest pulse", "ms"),
          Column.numbers("one frame to the next", ""),
          Column.numbers("explained", ""));

  private LoopSection() {}

  static Section of(NightResult result) {
    List<Block> blocks = new ArrayList<>();
    List<List<Cell>> rows = new ArrayList<>();
    for (RunResult run : result.runs()) {
      add(rows, run, "RA", ra(run));
      add(rows, run, "Dec", dec(run));
    }
    if (rows.isEmpty()) {
      String reason = new Reasons(result.notComputed()).sentence("/runs/*/loop/ra", "/runs/*/loop");
      return new Section("loop", "How the loop guided cannot be told", List.of(Block.text(reason)));
    }
    blocks.add(
        Block.text(sentences(result).toArray(String[]::new))
            .with(
                new Table("The guide loop, as its pulses show it", COLUMNS, rows)
                    .withoutEmptyColumns()));
    return new Section("loop", heading(result), blocks);
  }

  private static AxisLoopResult ra(RunResult run) {
    return run.loop() == null ? null : run.loop().ra();
  }

  private static AxisLoopResult dec(RunResult run) {
    return run.loop() == null ? null : run.loop().dec();
  }

  private static String heading(NightResult result) {
    String ra = share(first(result, LoopSection::ra));
    String dec = share(first(result, LoopSection::dec));
    if (ra.isEmpty() && dec.isEmpty()) {
      return "How the loop guided";
    }
    String axes =
        ra.isEmpty()
            ? dec + " in Dec"
            : dec.isEmpty() ? ra + " in RA" : ra + " in RA, " + dec + " in Dec";
    return "A pulse takes away " + axes + " of an offset";
  }

  private static String share(AxisLoopResult loop) {
    return loop == null || loop.gain() == null ? "" : Numbers.percent(loop.gain().value());
  }

  private static AxisLoopResult first(
      NightResult result, Function<RunResult, AxisLoopResult> axis) {
    return result.runs().stream().map(axis).filter(l -> l != null).findFirst().orElse(null);
  }

  private static List<String> sentences(NightResult result) {
    List<String> sentences = new ArrayList<>();
    AxisLoopResult ra = first(result, LoopSection::ra);
    AxisLoopResult dec = first(result, LoopSection::dec);
    declared(sentences, "RA", ra);
    declared(sentences, "Dec", dec);
    sentences.add(
        "Offsets that turn their sign from one frame to the next (below zero in the table) show a"
            + " loop that answers noise too strongly; offsets that keep it (above zero) one that"
            + " follows too slowly.");
    behaviour(sentences, "RA", ra);
    behaviour(sentences, "Dec", dec);
    return sentences;
  }

  private static void declared(List<String> sentences, String axis, AxisLoopResult loop) {
    if (loop == null || loop.gain() == null || loop.declaredGain() == null) {
      return;
    }
    if (!loop.gain().covers(loop.declaredGain())) {
      sentences.add(
          axis
              + ": the log declares a gain of "
              + Numbers.plain(loop.declaredGain())
              + ", but its pulses take away "
              + Numbers.both(loop.gain())
              + " of an offset.");
    }
  }

  private static void behaviour(List<String> sentences, String axis, AxisLoopResult loop) {
    if (loop == null) {
      return;
    }
    if (loop.explainedShare() < DESCRIBES) {
      sentences.add(
          axis
              + ": the fitted law explains only "
              + Numbers.percent(loop.explainedShare())
              + " of the pulses, so the loop does something else besides.");
    }
    double lag1 = loop.lag1Autocorrelation();
    if (Math.abs(lag1) > TOLD) {
      sentences.add(
          axis
              + ": here it is "
              + Numbers.fixed(lag1, 2)
              + (lag1 < 0 ? ", on the side of too strong." : ", on the side of too slow."));
    }
  }

  private static void add(List<List<Cell>> rows, RunResult run, String axis, AxisLoopResult loop) {
    if (loop == null) {
      return;
    }
    rows.add(
        List.of(
            Cell.count(run.id()),
            Cell.of(axis),
            Cell.of(loop.gain()),
            Cell.of(loop.declaredGain()),
            Cell.of(loop.deadbandArcsec()),
            Cell.count(loop.delayFrames()),
            Cell.of(loop.memory()),
            Cell.of(loop.pulseLimitMillis()),
            Cell.of(Numbers.fixed(loop.lag1Autocorrelation(), 2)),
            Cell.of(Numbers.percent(loop.explainedShare()))));
  }
}
