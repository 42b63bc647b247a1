package io.github.roundstar.report;

import io.github.roundstar.model.Sentences;
import io.github.roundstar.report.Page.Block;
import io.github.roundstar.report.Page.Cell;
import io.github.roundstar.report.Page.Column;
import io.github.roundstar.report.Page.Section;
import io.github.roundstar.report.Page.Table;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.NotComputed;
import java.util.ArrayList;
import java.util.List;

/** Which figures are missing and why, each reason said once. */
final class MissingFigures {
  private MissingFigures() {}

  static Section section(NightResult result) {
    List<FigureGroup> groups =
        FigureGroup.of(result.notComputed(), NotComputed::figure, NotComputed::because);
    List<List<Cell>> rows = new ArrayList<>();
    List<Block> blocks = new ArrayList<>();
    for (FigureGroup group : groups) {
      if (!group.text().equals(NotComputed.NOT_YET)) {
        rows.add(
            List.of(
                Cell.of(Sentences.capital(String.join("; ", group.names()))),
                Cell.of(Sentences.whole(group.text()))));
      }
    }
    if (!rows.isEmpty()) {
      List<Column> columns = List.of(Column.words("what is missing"), Column.words("why"));
      blocks.add(Block.text().with(new Table("", columns, rows)));
    }
    for (FigureGroup group : groups) {
      if (group.text().equals(NotComputed.NOT_YET)) {
        blocks.add(
            Block.text(
                "This version of roundstar does not work out: "
                    + String.join("; ", group.names())
                    + "."));
      }
    }
    if (blocks.isEmpty()) {
      blocks.add(Block.text("Every figure could be worked out."));
    }
    return new Section("missing", "What could not be worked out, and why", blocks);
  }
}
