package io.github.roundstar.report;

import io.github.roundstar.model.RepeatedLines;
import io.github.roundstar.model.Sentences;
import io.github.roundstar.report.NightPage.Rendered;
import io.github.roundstar.report.Page.Block;
import io.github.roundstar.report.Page.KeyFigure;
import io.github.roundstar.report.Page.Section;
import io.github.roundstar.report.chart.HourAngleChart;
import io.github.roundstar.report.chart.OverlayChart;
import io.github.roundstar.report.chart.Svg;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.CompareEvidence;
import io.github.roundstar.results.CompareResult;
import io.github.roundstar.results.ComparedNight;
import io.github.roundstar.results.Faults;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** Two sets of nights on one page: the sentence, the table, then the charts. */
public final class ComparePage {
  private ComparePage() {}

  /** The comparison's page. Without a usable font system it comes without charts and says so. */
  public static Rendered render(CompareResult result, CompareEvidence evidence) {
    return render(result, evidence, new Faults());
  }

  /**
   * As {@link #render(CompareResult, CompareEvidence)}.
   *
   * @param faults those met so far; hears of charts that a fault of the tool took
   */
  public static Rendered render(CompareResult result, CompareEvidence evidence, Faults faults) {
    Charts charts = new Charts(faults);
    List<Section> sections = new ArrayList<>();
    if (result.promise() != null) {
      sections.add(PromiseSection.of(result.promise()));
    }
    sections.add(CompareTables.glance(result));
    chart(
        sections,
        "spectra",
        "Spectra on one axis",
        "What repeats stands up as a peak; the worm's and its harmonics should be lower after.",
        charts.of("spectra", () -> OverlayChart.spectra(evidence)));
    chart(
        sections,
        "turns",
        "One turn of the gear, brought to one phase",
        "Sum of the fitted harmonics of each night, begun where the first crosses zero upwards.",
        charts.of("turns of the worm", () -> OverlayChart.turns(evidence)));
    drifts(sections, evidence, charts);
    chart(
        sections,
        "distances",
        "How far the star was from its place",
        "A line farther left is a star held closer.",
        charts.of("distances", () -> OverlayChart.distances(evidence)));
    if (!result.notDrawn().isEmpty()) {
      sections.add(CompareTables.notDrawn(result));
    }
    List<String> warnings = new ArrayList<>();
    FaultWords.of(result.faults(), faults).ifPresent(warnings::add);
    warnings.addAll(RepeatedLines.shortened(result.noticed()));
    charts.failure().ifPresent(warnings::add);
    Page page =
        new Page(
            "Before and after",
            line(result),
            result.summary(),
            List.of(),
            keyFigures(result),
            warnings,
            null,
            sections,
            CompareTables.folded(result),
            "Made by roundstar " + result.version() + ".");
    return new Rendered(PageTemplate.fill(page), charts.failure());
  }

  private static void drifts(List<Section> sections, CompareEvidence evidence, Charts charts) {
    Svg ra = charts.of("drift in right ascension", () -> HourAngleChart.ra(evidence));
    Svg dec = charts.of("drift in declination", () -> HourAngleChart.dec(evidence));
    List<Block> blocks = new ArrayList<>();
    String compared =
        "A polar axis that is off drifts a star differently at every hour angle, so only points"
            + " above one another compare.";
    if (ra != null) {
      blocks.add(Block.text(compared).with(ra));
    }
    if (dec != null) {
      blocks.add(Block.text(ra == null ? compared : "The same in declination.").with(dec));
    }
    if (!blocks.isEmpty()) {
      sections.add(new Section("drifts", "Drift against hour angle", blocks));
    }
  }

  private static void chart(
      List<Section> sections, String id, String heading, String sentence, Svg chart) {
    if (chart != null) {
      sections.add(new Section(id, heading, List.of(Block.text(sentence).with(chart))));
    }
  }

  private static String line(CompareResult result) {
    return "Before: " + side(result.before()) + " \u00b7 After: " + side(result.after());
  }

  private static String side(List<ComparedNight> nights) {
    double hours = nights.stream().mapToDouble(ComparedNight::guidedHours).sum();
    String from = nights.get(0).night();
    String to = nights.get(nights.size() - 1).night();
    return Numbers.counted(nights.size(), "night", "nights")
        + ", "
        + (nights.size() == 1 ? from : from + " to " + to)
        + ", "
        + Numbers.fixed(hours, 1)
        + "\u00a0h guided";
  }

  /** One figure of each kind: roundness, scatter, gear, axis. */
  private static List<KeyFigure> keyFigures(CompareResult result) {
    return List.of(
        tile(result, "round exposures", "round-exposures"),
        tile(result, "radial RMS as logged", "rms-radial-equal-air", "rms-radial"),
        tile(result, "periodic error, peak to peak", "periodic-peak-to-peak"),
        tile(result, "polar axis, distance from the pole", "polar-total"));
  }

  private static KeyFigure tile(CompareResult result, String name, String... keys) {
    return Stream.of(keys)
        .flatMap(key -> result.figures().stream().filter(f -> f.key().equals(key)))
        .findFirst()
        .map(
            figure ->
                new KeyFigure(
                    Numbers.fixed(figure.before().value(), figure.decimals())
                        + " to "
                        + Numbers.fixed(figure.after().value(), figure.decimals()),
                    "",
                    figure.unit(),
                    Sentences.capital(figure.name())
                        + ", change "
                        + Numbers.signed(figure.changed())
                        + ". "
                        + Sentences.whole(figure.verdict())))
        .orElseGet(() -> notCompared(result, name));
  }

  private static KeyFigure notCompared(CompareResult result, String name) {
    String because =
        result.notCompared().stream()
            .filter(gap -> gap.figure().equals(name))
            .map(gap -> ": " + gap.because())
            .findFirst()
            .orElse("");
    return new KeyFigure("not compared", "", "", Sentences.whole(name + because));
  }
}
