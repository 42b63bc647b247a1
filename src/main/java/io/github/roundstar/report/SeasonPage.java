package io.github.roundstar.report;

import io.github.roundstar.model.RepeatedLines;
import io.github.roundstar.model.Sentences;
import io.github.roundstar.report.NightPage.Rendered;
import io.github.roundstar.report.Page.Block;
import io.github.roundstar.report.Page.Cell;
import io.github.roundstar.report.Page.Column;
import io.github.roundstar.report.Page.Section;
import io.github.roundstar.report.Page.Table;
import io.github.roundstar.report.chart.SeasonChart;
import io.github.roundstar.report.chart.Svg;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.ComparedFigure;
import io.github.roundstar.results.Faults;
import io.github.roundstar.results.SeasonChange;
import io.github.roundstar.results.SeasonNight;
import io.github.roundstar.results.SeasonResult;
import io.github.roundstar.results.Trend;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** A season on one page that links its nights: the sentence, the tables, then the charts. */
public final class SeasonPage {
  private static final int DATE_LETTERS = 10;

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
    charts(result, charts, sections);
    sections.add(nights(result));
    if (!result.promises().isEmpty()) {
      sections.add(promises(result));
    }
    if (!result.changes().isEmpty()) {
      sections.add(changes(result));
    }
    List<String> warnings = new ArrayList<>();
    FaultWords.of(result.faults(), faults).ifPresent(warnings::add);
    warnings.addAll(RepeatedLines.shortened(result.unusable()));
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
            folded(result),
            "Made by roundstar " + result.version() + ".");
    return new Rendered(PageTemplate.fill(page), charts.failure());
  }

  private static List<Section> folded(SeasonResult result) {
    List<Section> sections = new ArrayList<>(List.of(trends(result)));
    if (!result.noticed().isEmpty()) {
      sections.add(
          new Section(
              "noticed",
              "What was noticed in the logs",
              List.of(
                  Block.text(RepeatedLines.shortened(result.noticed()).toArray(String[]::new)))));
    }
    sections.add(
        CompareTables.section(
            "methods",
            "How it was worked out",
            List.of(Column.words("what"), Column.words("how")),
            result.methods().stream()
                .map(
                    method ->
                        List.of(Cell.of(Sentences.capital(method.figure())), Cell.of(method.how())))
                .toList()));
    sections.add(Glossary.section());
    return sections;
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
        Block.text(
                "A slope whose interval reaches across zero may be nothing; the intervals hold for all"
                    + " figures together.")
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
        "Slopes along the season",
        List.of(rows.isEmpty() ? Block.text("No night has a figure with a date.") : table));
  }

  private static List<Cell> trend(Trend trend) {
    List<Trend.Point> points = trend.points();
    return List.of(
        new Cell(
            Sentences.capital(trend.name()),
            String.join(
                ", ",
                Stream.of(trend.unit(), trend.telescope()).filter(t -> !t.isEmpty()).toList())),
        Cell.count(points.size()),
        Cell.of(points.get(0).value().value()),
        Cell.of(points.get(points.size() - 1).value().value()),
        Cell.of(trend.perMonth()),
        trend.because() == null ? Cell.NONE : new Cell("", Sentences.whole(trend.because())));
  }

  private static Section promises(SeasonResult result) {
    return CompareTables.section(
        "promises",
        "What the steps of each night brought on the next",
        List.of(
            Column.files("steps of"),
            Column.files("judged on"),
            Column.files("promise"),
            Column.words("what came of it")),
        result.promises().stream()
            .map(
                kept ->
                    List.of(
                        Cell.of(kept.night()),
                        Cell.of(String.join(", ", kept.judgedOn())),
                        Cell.of(PromiseSection.word(kept.word())),
                        Cell.of(FindingSections.signed(kept.text()))))
            .toList());
  }

  private static Section changes(SeasonResult result) {
    List<Block> blocks = new ArrayList<>();
    for (SeasonChange change : result.changes()) {
      String head =
          change.date()
              + (change.telescope().isEmpty() ? "" : ", " + change.telescope())
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
          Column.numbers("change", "with the interval that the verdict rests on"),
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
        Cell.of(Numbers.fixed(figure.before().value(), figure.decimals())),
        Cell.of(Numbers.fixed(figure.after().value(), figure.decimals())),
        new Cell(
            Numbers.fixed(figure.change().value(), figure.decimals()),
            Numbers.interval(figure.change(), figure.decimals())),
        Cell.of(figure.verdict()),
        rank);
  }

  /** One chart a telescope, all on dates that count from the season's first night. */
  private static void charts(SeasonResult result, Charts charts, List<Section> sections) {
    Optional<LocalDate> first =
        result.nights().stream()
            .filter(night -> night.startUtc() != null)
            .map(SeasonNight::night)
            .filter(night -> night.matches("\\d{4}-\\d\\d-\\d\\d.*"))
            .map(night -> LocalDate.parse(night.substring(0, DATE_LETTERS)))
            .min(Comparator.naturalOrder());
    if (first.isEmpty()) {
      return;
    }
    Map<String, List<Trend>> byTelescope =
        result.trends().stream()
            .collect(
                Collectors.groupingBy(Trend::telescope, LinkedHashMap::new, Collectors.toList()));
    List<Block> blocks = new ArrayList<>();
    byTelescope.forEach(
        (telescope, trends) -> {
          String id = "season-" + (blocks.size() + 1);
          Svg chart =
              charts.of(
                  "figures of the season",
                  () -> SeasonChart.draw(id, trends, result.changes(), first.get()));
          if (chart != null) {
            Block block = telescope.isEmpty() ? Block.text() : Block.text(telescope + ":");
            blocks.add(block.with(chart));
          }
        });
    if (!blocks.isEmpty()) {
      sections.add(new Section("charts", "Night by night", blocks));
    }
  }

  private static Section nights(SeasonResult result) {
    List<List<Cell>> rows =
        result.nights().stream()
            .sorted(Comparator.comparing(SeasonNight::night))
            .map(
                night ->
                    List.of(
                        Cell.link(night.night(), night.report()),
                        Cell.of(NightWords.decision(night)),
                        Cell.of(night.first()),
                        NightWords.round(night),
                        Cell.of(night.rmsRadialArcsec()),
                        Cell.of(Numbers.fixed(night.guidedHours(), 1)),
                        Cell.link("data file", night.result())))
            .toList();
    return new Section(
        "nights",
        "All nights",
        List.of(
            Block.text()
                .with(
                    new Table(
                            "",
                            List.of(
                                Column.words("night"),
                                Column.words("decision"),
                                Column.words("what to do first"),
                                Column.numbers("round exposures", ""),
                                Column.numbers("radial RMS", "arcsec"),
                                Column.numbers("guided", "h"),
                                Column.words("all its figures")),
                            rows)
                        .withoutEmptyColumns())));
  }
}
