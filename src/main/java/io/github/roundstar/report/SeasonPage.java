package io.github.roundstar.report;

import io.github.roundstar.model.RepeatedLines;
import io.github.roundstar.report.NightPage.Rendered;
import io.github.roundstar.report.Page.Block;
import io.github.roundstar.report.Page.Cell;
import io.github.roundstar.report.Page.Column;
import io.github.roundstar.report.Page.Section;
import io.github.roundstar.report.Page.Table;
import io.github.roundstar.report.chart.Svg;
import io.github.roundstar.report.chart.TrendChart;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.report.words.Sentences;
import io.github.roundstar.results.ComparedFigure;
import io.github.roundstar.results.Faults;
import io.github.roundstar.results.SeasonChange;
import io.github.roundstar.results.SeasonNight;
import io.github.roundstar.results.SeasonResult;
import io.github.roundstar.results.Trend;
import java.util.ArrayList;
import java.util.List;

/** A season on one page that links its nights: the sentence, the tables, then the charts. */
public final class SeasonPage {
  private static final int MOST_CHARTS = 12;

  private SeasonPage() {}

  /** The season's page. Without a usable font system it comes without charts and says so. */
  public static Rendered render(SeasonResult result) {
    return render(result, new Faults());
  }

  /**
   * As {@link #render(SeasonResult)}.
   *
   * @param faults those met so far; hears of charts that a fault of the tool took
   */
  public static Rendered render(SeasonResult result, Faults faults) {
    Charts charts = new Charts(faults);
    List<Section> sections = new ArrayList<>();
    sections.add(trends(result));
    if (!result.changes().isEmpty()) {
      sections.add(changes(result));
    }
    charts(result, charts, sections);
    sections.add(nights(result));
    List<String> warnings = new ArrayList<>();
    FaultWords.of(result.faults(), faults).ifPresent(warnings::add);
    warnings.addAll(firstLines(result.unusable()));
    warnings.addAll(RepeatedLines.shortened(result.noticed()));
    charts.failure().ifPresent(warnings::add);
    Page page =
        new Page(
            "Season",
            line(result.nights()),
            result.summary(),
            List.of(),
            List.of(),
            warnings,
            null,
            sections,
            List.of(
                CompareTables.section(
                    "methods",
                    "How it was worked out",
                    List.of(Column.words("what"), Column.words("how")),
                    result.methods().stream()
                        .map(
                            method ->
                                List.of(
                                    Cell.of(Sentences.capital(method.figure())),
                                    Cell.of(method.how())))
                        .toList()),
                Glossary.section()),
            "Made by roundstar " + result.version() + ".");
    return new Rendered(PageTemplate.fill(page), charts.failure());
  }

  /** A log whose layout is not clear is followed by questions, which belong to the terminal. */
  private static List<String> firstLines(List<String> messages) {
    return messages.stream().flatMap(message -> message.lines().limit(1)).toList();
  }

  private static String line(List<SeasonNight> nights) {
    double hours = nights.stream().mapToDouble(SeasonNight::guidedHours).sum();
    String span =
        nights.isEmpty()
            ? ""
            : nights.get(0).night() + " to " + nights.get(nights.size() - 1).night() + " \u00b7 ";
    return span
        + Numbers.counted(nights.size(), "night", "nights")
        + " \u00b7 "
        + Numbers.fixed(hours, 1)
        + "\u00a0h guided";
  }

  private static Section trends(SeasonResult result) {
    List<List<Cell>> rows = result.trends().stream().map(SeasonPage::trend).toList();
    Block table =
        Block.text("A slope whose interval reaches across zero may be nothing.")
            .with(
                new Table(
                        "",
                        List.of(
                            Column.words("figure"),
                            Column.numbers("nights", ""),
                            Column.numbers("first", ""),
                            Column.numbers("last", ""),
                            Column.numbers("slope", "per 30 days, between changes"),
                            Column.words("")),
                        rows)
                    .withoutEmptyColumns());
    return new Section(
        "trends",
        "What moves along the season",
        List.of(rows.isEmpty() ? Block.text("No night has a figure with a date.") : table));
  }

  private static List<Cell> trend(Trend trend) {
    List<Trend.Point> points = trend.points();
    return List.of(
        new Cell(Sentences.capital(trend.name()), trend.unit()),
        Cell.count(points.size()),
        Cell.of(points.get(0).value().value()),
        Cell.of(points.get(points.size() - 1).value().value()),
        Cell.of(trend.perMonth()),
        trend.because() == null ? Cell.NONE : new Cell("", Sentences.whole(trend.because())));
  }

  private static Section changes(SeasonResult result) {
    List<Block> blocks = new ArrayList<>();
    for (int i = 0; i < result.changes().size(); i++) {
      SeasonChange change = result.changes().get(i);
      String head =
          (i + 1)
              + ". "
              + change.date()
              + ": "
              + Sentences.whole(
                  change.what().isEmpty() ? "no word of what was done" : change.what())
              + " "
              + Numbers.counted(change.nightsBefore(), "night", "nights")
              + " before, "
              + change.nightsAfter()
              + " after. "
              + change.summary();
      List<List<Cell>> rows = change.figures().stream().map(figure -> row(figure, change)).toList();
      Block block = Block.text(head);
      blocks.add(rows.isEmpty() ? block : block.with(new Table("", COLUMNS, rows)));
    }
    return new Section("changes", "What the work on the mount did", blocks);
  }

  private static final List<Column> COLUMNS =
      List.of(
          Column.words("figure"),
          Column.numbers("before", ""),
          Column.numbers("after", ""),
          Column.numbers("change", "with its 95 % interval"),
          Column.words("verdict"),
          Column.numbers("rank test", "probability"));

  private static List<Cell> row(ComparedFigure figure, SeasonChange change) {
    Cell rank =
        change.ranks().stream()
            .filter(r -> r.key().equals(figure.key()))
            .findFirst()
            .map(r -> Cell.of(Numbers.chance(r.probability())))
            .orElseGet(() -> new Cell("", "too few nights"));
    return List.of(
        new Cell(Sentences.capital(figure.name()), figure.unit()),
        Cell.of(Numbers.value(figure.before())),
        Cell.of(Numbers.value(figure.after())),
        Cell.of(figure.change()),
        Cell.of(figure.verdict()),
        rank);
  }

  private static void charts(SeasonResult result, Charts charts, List<Section> sections) {
    List<Block> blocks = new ArrayList<>();
    String first =
        result.trends().stream()
            .flatMap(trend -> trend.points().stream())
            .filter(point -> point.days() == 0)
            .map(Trend.Point::night)
            .findFirst()
            .orElse("the first night");
    for (Trend trend : result.trends().stream().limit(MOST_CHARTS).toList()) {
      Svg chart = charts.of(trend.name(), () -> TrendChart.draw(trend, result.changes(), first));
      if (chart != null) {
        blocks.add(Block.text().with(chart));
      }
    }
    if (!blocks.isEmpty()) {
      blocks.add(
          0,
          Block.text(
              "A dot is a night, its line what the night is uncertain within itself; numbered lines"
                  + " are the changes."));
      sections.add(new Section("charts", "Night by night", blocks));
    }
  }

  private static Section nights(SeasonResult result) {
    return CompareTables.section(
        "nights",
        "All nights",
        List.of(Column.words("night"), Column.words("result"), Column.numbers("guided", "h")),
        result.nights().stream()
            .map(
                night ->
                    List.of(
                        Cell.link(night.night(), night.report()),
                        Cell.link(night.result(), night.result()),
                        Cell.of(Numbers.fixed(night.guidedHours(), 1))))
            .toList());
  }
}
