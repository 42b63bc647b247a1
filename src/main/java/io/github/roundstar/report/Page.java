package io.github.roundstar.report;

import io.github.roundstar.report.chart.Svg;
import io.github.roundstar.report.words.Clock;
import io.github.roundstar.report.words.Numbers;
import java.time.Instant;
import java.util.List;
import java.util.stream.IntStream;

/**
 * A page as the template takes it: texts in plain characters, charts ready to insert.
 *
 * @param title of the browser window
 * @param line night, mount, hours guided
 * @param headline the one sentence to remember
 * @param judgements what to think of mount, sky and settings; may be empty
 * @param figures the few figures that decide
 * @param warnings what to know about the input
 * @param timeline the night at a glance; null on a page of several nights
 * @param sections the evidence in order
 * @param folded sections that open on demand
 * @param foot how the page was made
 * @param first what to do next and what it buys; null on pages that decide nothing
 */
record Page(
    String title,
    String line,
    String headline,
    List<Judged> judgements,
    List<KeyFigure> figures,
    List<String> warnings,
    Block timeline,
    List<Section> sections,
    List<Section> folded,
    String foot,
    First first) {
  /** A page that decides nothing. */
  Page(
      String title,
      String line,
      String headline,
      List<Judged> judgements,
      List<KeyFigure> figures,
      List<String> warnings,
      Block timeline,
      List<Section> sections,
      List<Section> folded,
      String foot) {
    this(
        title,
        line,
        headline,
        judgements,
        figures,
        warnings,
        timeline,
        sections,
        folded,
        foot,
        null);
  }

  /**
   * What to do next, and what each thing buys.
   *
   * @param need what was asked of the night, and whose limit it is
   * @param steps in the order to take them
   * @param rest what stands below the steps
   * @param ladder what each cure buys
   */
  record First(String need, List<Next> steps, String rest, Svg ladder) {}

  /**
   * A step.
   *
   * @param what what to do
   * @param gain what it wins and takes
   * @param sign how the next log will show it
   * @param caution what to take care of; may be empty
   */
  record Next(String what, String gain, String sign, String caution) {}

  /** One sentence about mount, sky or settings with its level as a word. */
  record Judged(String about, String level, String text) {}

  /** A figure that decides, with what it means. */
  record KeyFigure(String value, String interval, String unit, String meaning) {}

  /** A heading and what stands under it. */
  record Section(String id, String heading, List<Block> blocks) {}

  /** Sentences, then a chart, a table, what to do in order, a caution; each may be missing. */
  record Block(List<String> sentences, Svg chart, Table table, List<String> steps, String note) {
    static Block text(String... sentences) {
      return new Block(List.of(sentences), null, null, null, null);
    }

    Block with(Svg svg) {
      return new Block(sentences, svg, table, steps, note);
    }

    Block with(Table shown) {
      return new Block(sentences, chart, shown, steps, note);
    }

    /** Whether a small chart leaves room for the rest at its side on a wide screen. */
    boolean beside() {
      return chart != null && chart.small();
    }
  }

  /** Columns and rows; every row has a cell per column. */
  record Table(String caption, List<Column> columns, List<List<Cell>> rows) {
    /** Without the columns in which no figure is known or nothing is said. */
    Table withoutEmptyColumns() {
      List<Integer> kept =
          IntStream.range(0, columns.size())
              .filter(c -> rows.stream().anyMatch(row -> row.get(c).says()))
              .boxed()
              .toList();
      return new Table(
          caption,
          kept.stream().map(columns::get).toList(),
          rows.stream().map(row -> kept.stream().map(row::get).toList()).toList());
    }
  }

  /**
   * Heading of a column.
   *
   * @param name what it holds
   * @param unit of its numbers; may be empty
   * @param numbers whether it holds numbers
   * @param unbroken whether its words stand in one line, as names of files do
   */
  record Column(String name, String unit, boolean numbers, boolean unbroken) {
    /** Name and unit, for a place without a heading. */
    String wording() {
      return unit.isEmpty() ? name : name + ", " + unit;
    }

    static Column words(String name) {
      return new Column(name, "", false, false);
    }

    static Column numbers(String name, String unit) {
      return new Column(name, unit, true, false);
    }

    static Column files(String name) {
      return new Column(name, "", false, true);
    }
  }

  /**
   * A value and, in quiet ink, its interval; a link where {@code href} is not empty; or a picture.
   */
  record Cell(String text, String quiet, String href, Svg picture) {
    Cell(String text, String quiet) {
      this(text, quiet, "", null);
    }

    static Cell of(Svg picture) {
      return new Cell("", "", "", picture);
    }

    private boolean says() {
      return this != NOT_KNOWN && this != NONE;
    }

    static Cell link(String text, String href) {
      return new Cell(text, "", href, null);
    }

    /** Stands for a null figure. */
    static final Cell NOT_KNOWN = new Cell("", Numbers.NOT_KNOWN);

    /** Nothing to say. */
    static final Cell NONE = new Cell("", "");

    static Cell of(String text) {
      return new Cell(text, "");
    }

    /** A time of day in UTC, the local one in quiet ink. */
    static Cell of(Instant instant, Clock clock) {
      return new Cell(clock.utc(instant), clock.inBrackets(instant).strip());
    }

    static Cell of(Double value) {
      return value == null ? NOT_KNOWN : of(Numbers.plain(value));
    }

    static Cell of(io.github.roundstar.model.Estimate estimate) {
      return estimate == null
          ? NOT_KNOWN
          : new Cell(Numbers.value(estimate), Numbers.interval(estimate));
    }

    static Cell count(long value) {
      return of(Numbers.count(value));
    }
  }
}
