package io.github.roundstar.report;

import io.github.roundstar.report.chart.Svg;
import io.github.roundstar.report.words.Clock;
import io.github.roundstar.report.words.Numbers;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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
   * @param last what came of the steps before, and what is not usual; may be empty
   * @param ladder what each cure buys
   */
  record First(String need, List<Next> steps, String rest, List<String> last, Svg ladder) {}

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

  /** A heading and what stands under it; sentences before a chart stand at its side. */
  record Section(String id, String heading, List<Block> blocks) {
    Section {
      List<Block> joined = new ArrayList<>();
      for (Block block : blocks) {
        int last = joined.size() - 1;
        boolean joins =
            last >= 0
                && joined.get(last).onlySentences()
                && (block.chart() != null || block.onlySentences());
        joined.add(joins ? block.after(joined.remove(last)) : block);
      }
      blocks = List.copyOf(joined);
    }
  }

  /** Sentences, then a chart, a table, what to do in order, a caution; each may be missing. */
  record Block(
      List<String> sentences,
      Svg chart,
      Table table,
      List<String> steps,
      String note,
      Listing listing) {
    Block(List<String> sentences, Svg chart, Table table, List<String> steps, String note) {
      this(sentences, chart, table, steps, note, null);
    }

    static Block text(String... sentences) {
      return new Block(List.of(sentences), null, null, null, null);
    }

    private boolean onlySentences() {
      return chart == null && table == null && steps == null && note == null && listing == null;
    }

    private Block after(Block before) {
      List<String> all = new ArrayList<>(before.sentences);
      all.addAll(sentences);
      return new Block(List.copyOf(all), chart, table, steps, note, listing);
    }

    /** With one more sentence, where there is one. */
    Block and(Optional<String> sentence) {
      return sentence
          .map(said -> new Block(List.of(said), null, null, null, null).after(this))
          .orElse(this);
    }

    Block with(Svg svg) {
      return new Block(sentences, svg, table, steps, note, listing);
    }

    Block with(Table shown) {
      return new Block(sentences, chart, shown, steps, note, listing);
    }

    Block with(Listing copied) {
      return new Block(sentences, chart, table, steps, note, copied);
    }

    /**
     * How the style sheet lays it out: where a chart leaves room, the rest stands at its side on a
     * wide screen.
     */
    String layout() {
      return chart == null || chart.shape().equals("wide")
          ? "block"
          : "block beside " + chart.shape();
    }

    /** Whether a table is narrow enough to stand at the side of the chart. */
    boolean tableFitsBeside() {
      int most = chart != null && chart.shape().equals("half") ? 5 : 9;
      return table != null && (table.breadth() <= most || table.pairs());
    }
  }

  /**
   * Plain text to be copied.
   *
   * @param label what it is
   * @param text its lines
   */
  record Listing(String label, String text) {
    private static final int MOST_LINES = 14;

    /** Lines shown at a time. */
    int lines() {
      return Math.min(MOST_LINES, 1 + (int) text.chars().filter(c -> c == '\n').count());
    }
  }

  /** Columns and rows; every row has a cell per column. */
  record Table(String caption, List<Column> columns, List<List<Cell>> rows) {
    /** From so many columns on, a single row is shown as pairs of name and value. */
    private static final int LEAST_PAIRS = 5;

    /** So many numbers with intervals stand in no row of a page. */
    private static final int MOST_INTERVALS = 5;

    private static final int MOST_WITH_INTERVALS = 8;

    /** Whether it is a list of named values more than a table. */
    boolean pairs() {
      boolean broad = columns.size() > MOST_WITH_INTERVALS && intervals() >= MOST_INTERVALS;
      return (rows.size() == 1 && columns.size() >= LEAST_PAIRS || broad) && !linked();
    }

    /** How much room it takes, in columns of bare numbers. */
    double breadth() {
      long words = columns.stream().filter(column -> !column.numbers()).count();
      return columns.size() + words + 1.5 * intervals();
    }

    private long intervals() {
      return IntStream.range(0, columns.size())
          .filter(c -> columns.get(c).numbers())
          .filter(c -> rows.stream().anyMatch(row -> row.get(c).interval()))
          .count();
    }

    /** Whether its rows have pages of their own. */
    boolean linked() {
      return rows.stream().anyMatch(row -> !row.get(0).href().isEmpty());
    }

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

    private boolean interval() {
      return this != NOT_KNOWN && !quiet.isEmpty();
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
