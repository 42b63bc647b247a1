package io.github.roundstar.report;

import io.github.roundstar.report.Page.Block;
import io.github.roundstar.report.Page.Cell;
import io.github.roundstar.report.Page.Column;
import io.github.roundstar.report.Page.Section;
import io.github.roundstar.report.Page.Table;
import io.github.roundstar.report.words.Times;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * A page as nested maps. The template engine reads plain paths into maps without its expression
 * language, whose start alone takes longer than the rest of the page. Empty texts and lists are
 * left out, so that the template can ask for them by name.
 */
final class PageModel {
  /** From so many columns on, rows become cards with names on a narrow screen, else plain ones. */
  private static final int LEAST_CARD_COLUMNS = 4;

  /** A table of more breadth stands with less space between its columns. */
  private static final double MOST_WITH_SPACE = 13;

  /** A table of more breadth may be wider than a window of a tablet turned on its side. */
  private static final double MOST_ON_A_TABLET = 10;

  private PageModel() {}

  static Map<String, Object> of(Page page) {
    return map(
        "title", page.title(),
        "line", page.line(),
        "headline", Times.unbroken(page.headline()),
        "first", page.first() == null ? null : first(page.first()),
        "judgements",
            list(
                page.judgements(),
                j -> map("about", j.about(), "level", j.level(), "text", Times.unbroken(j.text()))),
        "warnings", unbroken(page.warnings()),
        "figures",
            list(
                page.figures(),
                f ->
                    map(
                        "value", f.value(),
                        "interval", Times.unbroken(f.interval()),
                        "unit", f.unit(),
                        "meaning", Times.unbroken(f.meaning()))),
        "timeline", page.timeline() == null ? null : block(page.timeline()),
        "sections", list(page.sections(), PageModel::section),
        "folded", list(page.folded(), PageModel::section),
        "foot", page.foot());
  }

  private static Map<String, Object> first(Page.First first) {
    return map(
        "need",
        Times.unbroken(first.need()),
        "steps",
        list(
            first.steps(),
            step ->
                map(
                    "what", Times.unbroken(step.what()),
                    "gain", Times.unbroken(step.gain()),
                    "sign", Times.unbroken(step.sign()),
                    "caution", step.caution())),
        "rest",
        Times.unbroken(first.rest()),
        "last",
        unbroken(first.last()),
        "ladder",
        first.ladder() == null ? null : first.ladder().markup(),
        "shows",
        first.ladder() == null ? null : first.ladder().title(),
        "numbers",
        first.ladder() == null ? null : first.ladder().table());
  }

  private static Map<String, Object> section(Section section) {
    return map(
        "id", section.id(),
        "link", "#" + section.id(),
        "heading", Times.unbroken(section.heading()),
        "blocks", list(section.blocks(), PageModel::block));
  }

  private static Map<String, Object> block(Block block) {
    return map(
        "kind",
        block.layout(),
        "sentences",
        unbroken(block.sentences()),
        "chart",
        block.chart() == null ? null : block.chart().markup(),
        "shows",
        block.chart() == null ? null : block.chart().title(),
        "sideways",
        block.chart() == null || block.chart().fits() ? null : "sideways " + block.chart().shape(),
        "numbers",
        block.chart() == null ? null : block.chart().table(),
        "table",
        block.table() == null ? null : table(block.table()),
        "tableBox",
        block.tableFitsBeside() ? "scroll" : "scroll below",
        "broad",
        block.table() != null && broad(block.table()) ? "sideways table" : null,
        "todo",
        block.steps() == null && block.note() == null ? null : "todo",
        "steps",
        unbroken(block.steps()),
        "note",
        block.note() == null ? null : Times.unbroken(block.note()),
        "listing",
        block.listing() == null
            ? null
            : map(
                "label", block.listing().label(),
                "text", block.listing().text(),
                "lines", Integer.toString(block.listing().lines())));
  }

  private static List<String> unbroken(List<String> texts) {
    return texts == null ? null : texts.stream().map(Times::unbroken).toList();
  }

  private static Map<String, Object> table(Table table) {
    List<Column> columns = table.columns();
    List<Object> rows = new ArrayList<>();
    for (List<Cell> row : table.rows()) {
      List<Object> cells = new ArrayList<>();
      for (int i = 0; i < row.size(); i++) {
        Cell cell = row.get(i);
        cells.add(
            map(
                cell.href().isEmpty() ? "text" : "linked",
                Times.unbroken(cell.text()),
                "href",
                cell.href(),
                "quiet",
                Times.unbroken(cell.quiet()),
                "picture",
                cell.picture() == null ? null : cell.picture().markup(),
                "of",
                columns.get(i).wording(),
                "kind",
                kind(columns.get(i))));
      }
      rows.add(cells);
    }
    return map(
        "caption",
        table.caption(),
        "shape",
        shape(table),
        "columns",
        list(columns, c -> map("name", c.name(), "unit", c.unit(), "kind", kind(c))),
        "rows",
        rows);
  }

  /** Whether a table may be wider than a page of middling width, where it is no list of cards. */
  private static boolean broad(Table table) {
    return !table.pairs() && table.breadth() > MOST_ON_A_TABLET;
  }

  /** A table of things that have pages of their own is one to sort. */
  private static String shape(Table table) {
    if (table.pairs()) {
      return "pairs";
    }
    String cards = table.columns().size() >= LEAST_CARD_COLUMNS ? "cards" : "plain";
    return cards
        + (table.linked() ? " sortable" : "")
        + (table.breadth() > MOST_WITH_SPACE ? " dense" : "");
  }

  private static String kind(Column column) {
    return column.numbers() ? "n" : column.unbroken() ? "w whole" : "w";
  }

  private static <T> List<Object> list(
      List<T> items, java.util.function.Function<T, Map<String, Object>> each) {
    List<Object> result = new ArrayList<>(items.size());
    items.forEach(item -> result.add(each.apply(item)));
    return result;
  }

  private static Map<String, Object> map(Object... namesAndValues) {
    Map<String, Object> result = new HashMap<>();
    for (int i = 0; i < namesAndValues.length; i += 2) {
      Object value = namesAndValues[i + 1];
      boolean empty = value == null || value.equals("") || value.equals(List.of());
      if (!empty) {
        result.put((String) namesAndValues[i], value);
      }
    }
    return result;
  }
}
