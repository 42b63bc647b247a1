package io.github.roundstar.report;

import io.github.roundstar.report.Page.Block;
import io.github.roundstar.report.Page.Cell;
import io.github.roundstar.report.Page.Column;
import io.github.roundstar.report.Page.Section;
import io.github.roundstar.report.Page.Table;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.Decision;
import io.github.roundstar.results.ExposureCounts;
import io.github.roundstar.results.Faults;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.NightSummary;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Several nights on one page: what to do after each, and the way to its report. */
public final class IndexPage {
  private static final List<Column> COLUMNS =
      List.of(
          Column.words("night"),
          Column.numbers("guided", "h"),
          Column.numbers("radial RMS", "arcsec"),
          Column.numbers("periodic error, peak to peak", "arcsec"),
          Column.words("round exposures"),
          Column.words("what to do"));

  private IndexPage() {}

  /**
   * One night on the page.
   *
   * @param report file of its report, beside the page
   */
  public record Entry(NightResult result, String report) {}

  /**
   * The page of some nights in order of time; it has no charts.
   *
   * @param nights at least one
   * @param lost names of nights without a report
   * @param faults what took them
   */
  public static String render(List<Entry> nights, List<String> lost, Faults faults) {
    Page page =
        new Page(
            "Nights",
            Numbers.counted(nights.size() + lost.size(), "night", "nights"),
            headline(nights, lost),
            List.of(),
            List.of(),
            FaultWords.of(List.of(), faults).stream().toList(),
            null,
            List.of(
                new Section(
                    "nights",
                    "Night by night",
                    List.of(Block.text().with(table(nights, lost).withoutEmptyColumns())))),
            List.of(),
            "Made by roundstar " + nights.get(0).result().version() + ".");
    return PageTemplate.fill(page);
  }

  private static String headline(List<Entry> nights, List<String> lost) {
    long calm =
        nights.stream()
            .filter(night -> night.result().verdict().decision() == Decision.LEAVE_ALONE)
            .count();
    long unclear =
        nights.stream()
            .filter(night -> night.result().verdict().decision() == Decision.CANNOT_TELL)
            .count();
    long work = nights.size() - calm - unclear;
    return (work == 0
            ? "No night asks for work"
            : Numbers.counted(work, "night asks", "nights ask") + " for something to be done")
        + (calm == 0 ? "" : "; " + Numbers.counted(calm, "night is", "nights are") + " fine as is")
        + (unclear == 0 ? "" : "; " + unclear + " cannot tell")
        + (lost.isEmpty() ? "" : "; " + lost.size() + " without a report by a fault of roundstar")
        + ".";
  }

  private static Table table(List<Entry> nights, List<String> lost) {
    List<List<Cell>> rows = new ArrayList<>();
    nights.forEach(night -> rows.add(row(night)));
    for (String night : lost) {
      List<Cell> row = new ArrayList<>(Collections.nCopies(COLUMNS.size(), Cell.NOT_KNOWN));
      row.set(0, Cell.of(night));
      row.set(COLUMNS.size() - 1, Cell.of("No report, by a fault of roundstar."));
      rows.add(row);
    }
    rows.sort(Comparator.comparing(row -> row.get(0).text()));
    return new Table("", COLUMNS, rows);
  }

  private static List<Cell> row(Entry entry) {
    NightResult result = entry.result();
    NightSummary night = result.night();
    return List.of(
        Cell.link(night.date(), entry.report()),
        Cell.of(Numbers.fixed(night.guidedHours(), 1)),
        night.guided() == null ? Cell.NOT_KNOWN : Cell.of(night.guided().rmsRadialArcsec()),
        night.periodic() == null
            ? Cell.NOT_KNOWN
            : Cell.of(night.periodic().peakToPeakArcsecAxis()),
        Optional.ofNullable(result.exposures())
            .map(ExposureCounts::of)
            .map(counts -> Cell.of(counts.round() + " of " + counts.all()))
            .orElse(Cell.NOT_KNOWN),
        Cell.of(result.verdict().summary()));
  }
}
