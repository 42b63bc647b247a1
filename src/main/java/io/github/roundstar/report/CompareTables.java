package io.github.roundstar.report;

import io.github.roundstar.model.Sentences;
import io.github.roundstar.report.Page.Block;
import io.github.roundstar.report.Page.Cell;
import io.github.roundstar.report.Page.Column;
import io.github.roundstar.report.Page.Section;
import io.github.roundstar.report.Page.Table;
import io.github.roundstar.report.chart.RowPicture;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.CompareResult;
import io.github.roundstar.results.ComparedFigure;
import io.github.roundstar.results.ComparedNight;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Stream;

/** The tables of a comparison. */
final class CompareTables {
  private CompareTables() {}

  private static final List<String> GROUPS = List.of("mount", "guiding", "air");
  private static final List<String> CAPTIONS =
      List.of("The mount, at its axes", "How the star was guided", "The air");

  /** Every figure before and after in one picture, then what to make of it. */
  static Section glance(CompareResult result) {
    RowPicture scale = RowPicture.of(result.figures());
    List<Block> blocks = new ArrayList<>();
    blocks.add(
        Block.text(
            "Hollow: before. Filled: after, farther left is better. The band is how far nights"
                + " differ by themselves, twice either way; far out the scale gets closer."));
    grouped(
        blocks,
        result,
        List.of(
            Column.words("figure"),
            Column.words("better to the left"),
            Column.words("before to after"),
            Column.words("verdict")),
        figure ->
            List.of(
                Cell.of(Sentences.capital(figure.name())),
                Cell.of(scale.changed(figure)),
                Cell.of(Numbers.signed(figure.fromTo())),
                Cell.of(figure.verdict())));
    blocks.add(
        Block.text(
            Stream.of(result.air(), result.need(), result.next())
                .filter(Objects::nonNull)
                .toArray(String[]::new)));
    return new Section("glance", "Every figure, before and after", blocks);
  }

  private static void grouped(
      List<Block> blocks,
      CompareResult result,
      List<Column> columns,
      Function<ComparedFigure, List<Cell>> row) {
    for (int i = 0; i < GROUPS.size(); i++) {
      String group = GROUPS.get(i);
      List<List<Cell>> rows =
          result.figures().stream().filter(f -> f.group().equals(group)).map(row).toList();
      if (!rows.isEmpty()) {
        blocks.add(Block.text().with(new Table(CAPTIONS.get(i), columns, rows)));
      }
    }
  }

  /** The same in numbers. */
  private static Section figures(CompareResult result) {
    List<Block> blocks = new ArrayList<>();
    grouped(
        blocks,
        result,
        List.of(
            Column.words("figure"),
            Column.words("verdict"),
            Column.numbers("before", ""),
            Column.numbers("after", ""),
            Column.numbers("change", "with the interval that the verdict rests on"),
            Column.numbers("more nights", "on each side, to tell")),
        CompareTables::row);
    adjustment(result).forEach(text -> blocks.add(Block.text(text)));
    return new Section("figures", "Every figure in numbers", blocks);
  }

  private static List<String> adjustment(CompareResult result) {
    return result.figures().stream()
        .flatMap(figure -> Stream.ofNullable(figure.adjustment()))
        .distinct()
        .map(text -> "In equal air: " + text + ".")
        .toList();
  }

  private static List<Cell> row(ComparedFigure figure) {
    int decimals = figure.decimals();
    return List.of(
        new Cell(Sentences.capital(figure.name()), figure.unit()),
        Cell.of(figure.verdict()),
        Cell.of(Numbers.fixed(figure.before().value(), decimals)),
        Cell.of(Numbers.fixed(figure.after().value(), decimals)),
        new Cell(
            Numbers.fixed(figure.change().value(), decimals),
            Numbers.interval(figure.change(), decimals)),
        moreNights(figure));
  }

  private static Cell moreNights(ComparedFigure figure) {
    if (figure.moreNights() != null) {
      return Cell.count(figure.moreNights());
    }
    boolean open = figure.verdict().equals(ComparedFigure.CANNOT_TELL);
    return new Cell("", open ? "more than 30" : "");
  }

  static Section notDrawn(CompareResult result) {
    return new Section(
        "not-drawn",
        "Charts left out",
        List.of(
            Block.text(
                result.notDrawn().stream()
                    .map(gap -> Sentences.whole(gap.figure() + ": " + gap.because()))
                    .toArray(String[]::new))));
  }

  static List<Section> folded(CompareResult result) {
    List<Section> sections = new ArrayList<>(List.of(figures(result)));
    if (!result.notCompared().isEmpty()) {
      sections.add(
          section(
              "not-compared",
              "What could not be compared",
              List.of(Column.words("figure"), Column.words("because")),
              result.notCompared().stream()
                  .map(gap -> words(gap.figure(), Sentences.whole(gap.because())))
                  .toList()));
    }
    sections.add(
        section(
            "why",
            "What each verdict rests on",
            List.of(Column.words("figure"), Column.words("verdict"), Column.words("because")),
            result.figures().stream().map(CompareTables::why).toList()));
    sections.add(
        section(
            "limits",
            "Margins, and how far nights differ by themselves",
            List.of(
                Column.words("figure"),
                Column.words("better"),
                Column.numbers("margin", ""),
                Column.words("because"),
                Column.numbers("night to night", "1 standard deviation"),
                Column.words("because")),
            result.figures().stream().map(CompareTables::limits).toList()));
    sections.add(nights(result));
    sections.add(
        section(
            "methods",
            "How it was compared",
            List.of(Column.words("what"), Column.words("how")),
            result.methods().stream()
                .map(method -> words(Sentences.capital(method.figure()), method.how()))
                .toList()));
    sections.add(Glossary.section());
    return sections;
  }

  private static List<Cell> why(ComparedFigure figure) {
    return List.of(
        Cell.of(Sentences.capital(figure.name())),
        Cell.of(figure.verdict()),
        Cell.of(Sentences.whole(figure.because())));
  }

  private static List<Cell> limits(ComparedFigure figure) {
    return List.of(
        Cell.of(Sentences.capital(figure.name())),
        Cell.of(figure.better()),
        Cell.of(figure.margin()),
        Cell.of(figure.marginBecause()),
        Cell.of(figure.nightToNight()),
        Cell.of(figure.nightToNightBecause()));
  }

  private static Section nights(CompareResult result) {
    List<List<Cell>> rows = new ArrayList<>();
    result.before().forEach(night -> rows.add(night("before", night)));
    result.after().forEach(night -> rows.add(night("after", night)));
    return section(
        "nights",
        "Nights compared",
        List.of(
            Column.words("side"),
            Column.words("night"),
            Column.words("from"),
            Column.numbers("guided", "h")),
        rows);
  }

  private static List<Cell> night(String side, ComparedNight night) {
    return List.of(
        Cell.of(side),
        Cell.of(night.night()),
        Cell.of(night.file()),
        Cell.of(Numbers.fixed(night.guidedHours(), 1)));
  }

  static Section section(String id, String heading, List<Column> columns, List<List<Cell>> rows) {
    return new Section(id, heading, List.of(Block.text().with(new Table("", columns, rows))));
  }

  private static List<Cell> words(String one, String other) {
    return List.of(Cell.of(Sentences.capital(one)), Cell.of(other));
  }
}
