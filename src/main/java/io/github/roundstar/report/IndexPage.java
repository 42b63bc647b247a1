package io.github.roundstar.report;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.report.Page.Block;
import io.github.roundstar.report.Page.Cell;
import io.github.roundstar.report.Page.Column;
import io.github.roundstar.report.Page.Section;
import io.github.roundstar.report.Page.Table;
import io.github.roundstar.report.chart.RowPicture;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.Decision;
import io.github.roundstar.results.Faults;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.NightSummary;
import io.github.roundstar.results.NoiseFloor;
import io.github.roundstar.results.SeasonNight;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;

/** Several nights on one page: what to do after each, and the way to its report. */
public final class IndexPage {
  private static final List<Column> COLUMNS =
      List.of(
          Column.words("night"),
          Column.words("offsets in the night"),
          Column.words("decision"),
          Column.words("what to do first"),
          Column.numbers("round exposures", ""),
          Column.numbers("radial RMS", "arcsec"),
          Column.numbers("periodic error", "arcsec, peak to peak"),
          Column.numbers("noise floor, RA", "arcsec"),
          Column.numbers("polar axis off", "arcmin"));

  private IndexPage() {}

  /**
   * One night on the page.
   *
   * @param report file of its report, beside the page
   * @param outline the night in a line: greatest offsets one after the other [arcsec]
   */
  public record Entry(NightResult result, String report, double[] outline) {}

  /**
   * The page of some nights in order of time.
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
        + (calm == 0
            ? ""
            : "; " + Numbers.counted(calm, "night asks", "nights ask") + " for nothing")
        + (unclear == 0 ? "" : "; " + unclear + " cannot tell")
        + (lost.isEmpty() ? "" : "; " + lost.size() + " without a report by a fault of roundstar")
        + ".";
  }

  private static Table table(List<Entry> nights, List<String> lost) {
    List<List<Cell>> rows = new ArrayList<>();
    double highest =
        nights.stream()
            .flatMapToDouble(night -> Arrays.stream(night.outline()))
            .filter(offset -> !Double.isNaN(offset))
            .max()
            .orElse(1);
    nights.forEach(night -> rows.add(row(night, highest)));
    for (String night : lost) {
      List<Cell> row = new ArrayList<>(Collections.nCopies(COLUMNS.size(), Cell.NOT_KNOWN));
      row.set(0, Cell.of(night));
      row.set(3, Cell.of("No report, by a fault of roundstar."));
      rows.add(row);
    }
    rows.sort(Comparator.comparing(row -> row.get(0).text()));
    return new Table("", COLUMNS, rows);
  }

  private static List<Cell> row(Entry entry, double highest) {
    NightResult result = entry.result();
    NightSummary night = result.night();
    SeasonNight told = SeasonNight.of(result, "", entry.report());
    NoiseFloor floor = night.noiseFloorArcsec();
    return List.of(
        Cell.link(night.date(), entry.report()),
        Cell.of(RowPicture.night(entry.outline(), highest)),
        Cell.of(NightWords.decision(told)),
        Cell.of(told.first()),
        NightWords.round(told),
        Cell.of(told.rmsRadialArcsec()),
        night.periodic() == null ? Cell.NOT_KNOWN : value(night.periodic().peakToPeakArcsecAxis()),
        floor == null ? Cell.NOT_KNOWN : value(floor.ra()),
        result.polarAxis() == null ? Cell.NOT_KNOWN : value(result.polarAxis().totalArcmin()));
  }

  /**
   * Its interval stands in the night's own report; without it the number is written as one alone.
   */
  private static Cell value(Estimate estimate) {
    return estimate == null ? Cell.NOT_KNOWN : Cell.of(Numbers.plain(estimate.value()));
  }
}
