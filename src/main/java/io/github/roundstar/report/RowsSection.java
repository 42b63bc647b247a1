package io.github.roundstar.report;

import io.github.roundstar.model.RowCounts;
import io.github.roundstar.model.UnusableRow;
import io.github.roundstar.report.Page.Block;
import io.github.roundstar.report.Page.Cell;
import io.github.roundstar.report.Page.Column;
import io.github.roundstar.report.Page.Section;
import io.github.roundstar.report.Page.Table;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.Input;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.RunResult;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** Where every row of the log went. */
final class RowsSection {
  private static final int MOST_LINES = 20;

  private static final List<Column> COLUMNS =
      Stream.of(
              "run",
              "rows",
              "used",
              "settling",
              "lost",
              "dither",
              "idle",
              "duplicate",
              "rejected",
              "unusable")
          .map(name -> Column.numbers(name, ""))
          .toList();

  private RowsSection() {}

  static Section of(NightResult result) {
    List<Block> blocks = new ArrayList<>();
    Table table =
        new Table(
                "Rows of the log, run by run",
                COLUMNS,
                result.runs().stream().map(RowsSection::row).toList())
            .withoutEmptyColumns();
    blocks.add(
        Block.text(
                "Only frames taken while the star was guided steadily count in the RMS. The others"
                    + " are listed here; none is left out for being far off.")
            .with(table));
    List<Block> unusable =
        result.inputs().stream()
            .filter(input -> input.unusable().count() > 0)
            .map(RowsSection::unusable)
            .toList();
    blocks.addAll(unusable);
    if (unusable.isEmpty()) {
      blocks.add(Block.text("Every row could be read."));
    }
    return new Section("rows", "Rows left out, and why", blocks);
  }

  /** A line for each log of which rows could not be read, for the first screen. */
  static List<String> unread(NightResult result) {
    return result.inputs().stream()
        .filter(input -> input.unusable().count() > 0)
        .map(
            input ->
                Numbers.counted(input.unusable().count(), "row", "rows")
                    + " of "
                    + input.file()
                    + " ("
                    + share(input)
                    + ") could not be read; which and why stands under \"Rows left out\".")
        .toList();
  }

  private static String share(Input input) {
    double share = (double) input.unusable().count() / Math.max(1, input.rows());
    return share < 0.01 ? "less than 1 %" : Numbers.percent(share);
  }

  private static List<Cell> row(RunResult run) {
    RowCounts counts = run.counts();
    return Stream.of(
            run.id(),
            counts.rows(),
            counts.used(),
            counts.settling(),
            counts.lost(),
            counts.dither(),
            counts.idle(),
            counts.duplicate(),
            counts.rejected(),
            counts.unusable())
        .map(count -> count == 0 ? Cell.NONE : Cell.count(count))
        .toList();
  }

  private static Block unusable(Input input) {
    List<String> kinds = new ArrayList<>();
    input.unusable().byReason().forEach((why, n) -> kinds.add(why + ": " + Numbers.count(n)));
    List<UnusableRow> first = input.unusable().first();
    List<UnusableRow> shown = first.subList(0, Math.min(MOST_LINES, first.size()));
    String sentence =
        Numbers.counted(input.unusable().count(), "row", "rows")
            + " of "
            + input.file()
            + " could not be read ("
            + String.join("; ", kinds)
            + ").";
    Table table =
        new Table(
            shown.size() < input.unusable().count()
                ? "The first " + shown.size() + " of them; more are in the JSON file"
                : "All of them",
            List.of(Column.numbers("line", ""), Column.words("what is wrong, and how to mend it")),
            shown.stream()
                .map(row -> List.of(Cell.of(Long.toString(row.line())), Cell.of(row.reason())))
                .toList());
    return Block.text(sentence).with(table);
  }
}
