package io.github.roundstar.report;

import io.github.roundstar.report.Page.Block;
import io.github.roundstar.report.Page.Section;
import io.github.roundstar.report.chart.Svg;
import io.github.roundstar.report.chart.TimelineChart;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.report.words.Times;
import io.github.roundstar.results.NightEvidence;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.NightSummary;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A night as one self-contained HTML page: no request, the same bytes for the same input whatever
 * the locale, time zone and installed fonts.
 */
public final class NightPage {
  private static final String EXPOSURES =
      "Exposures stand in the last row: high and filled where stars trailed, half as high where"
          + " that is borderline, low and hollow where they are round, a dashed line where the log"
          + " does not cover them.";

  private NightPage() {}

  /**
   * A page.
   *
   * @param html UTF-8 text of the whole file
   * @param withoutCharts why the charts are missing and what to install; empty when they are there
   */
  public record Rendered(String html, Optional<String> withoutCharts) {}

  /** The night's page. Without a usable font system it comes without charts and says so. */
  public static Rendered render(NightResult result, NightEvidence evidence) {
    return render(result, evidence, SiteDetail.ROUNDED);
  }

  /** As {@link #render(NightResult, NightEvidence)}, telling the site as asked. */
  public static Rendered render(NightResult result, NightEvidence evidence, SiteDetail site) {
    Charts charts = new Charts();
    Block timeline = timeline(result, evidence, charts);
    CauseSections causes = CauseSections.of(result, measured(result, evidence, charts, site));
    List<Section> folded = new ArrayList<>(causes.folded());
    folded.addAll(FoldedSections.of(result, evidence));
    List<String> warnings = new ArrayList<>(evidence.warnings());
    charts.failure().ifPresent(warnings::add);
    Page page =
        new Page(
            "Night of " + result.night().date(),
            line(result, evidence),
            Times.unbroken(Headline.of(result)),
            FindingSections.judgements(result),
            KeyFigures.of(result),
            warnings,
            timeline,
            causes.open(),
            folded,
            "Made by roundstar " + result.version() + ".");
    return new Rendered(PageTemplate.fill(page), charts.failure());
  }

  private static List<Section> measured(
      NightResult result, NightEvidence evidence, Charts charts, SiteDetail site) {
    List<Section> sections = new ArrayList<>();
    ExposureSection.of(result, evidence, charts).ifPresent(sections::add);
    sections.add(BudgetSection.of(result, charts));
    sections.add(MovementSection.of(result, evidence, charts));
    sections.add(PeriodicSection.of(result, evidence, charts));
    sections.add(DriftSection.of(result, evidence, charts, site));
    sections.add(PolarSection.of(result, evidence, charts, site));
    SeeingSection.of(result, evidence, charts).ifPresent(sections::add);
    sections.add(LoopSection.of(result));
    sections.add(ReplaySection.of(result, charts));
    sections.add(PulseSection.of(result));
    JoltSection.of(result, evidence, charts).ifPresent(sections::add);
    sections.add(RowsSection.of(result));
    return sections;
  }

  /**
   * Renders a blank night and throws it away, so that a later page is quick: to be run on a thread
   * beside the reading of the logs.
   */
  public static void warmUp() {
    render(BlankNight.result(), BlankNight.evidence());
  }

  private static Block timeline(NightResult result, NightEvidence evidence, Charts charts) {
    Svg chart = charts.of(() -> TimelineChart.draw(result, evidence));
    if (chart == null) {
      return Block.text();
    }
    boolean exposures = evidence.exposures().filter(e -> !e.spans().isEmpty()).isPresent();
    return (exposures ? Block.text(EXPOSURES) : Block.text()).with(chart);
  }

  private static String line(NightResult result, NightEvidence evidence) {
    NightSummary night = result.night();
    List<String> parts = new ArrayList<>();
    parts.add(night.date().startsWith("undated") ? "Undated night" : "Night of " + night.date());
    if (night.startUtc() != null && night.endUtc() != null) {
      parts.add(
          Times.clock(Instant.parse(night.startUtc()))
              + " to "
              + Times.clock(Instant.parse(night.endUtc()))
              + " UTC");
    }
    evidence.mountName().ifPresent(parts::add);
    parts.add(duration(Guiding.loggedSeconds(result), night.guidedHours() * 3600));
    parts.add(Numbers.counted(night.runs(), "run", "runs"));
    return String.join(" \u00b7 ", parts);
  }

  private static String duration(double loggedSeconds, double guidedSeconds) {
    if (guidedSeconds == 0 && loggedSeconds > 0) {
      return Times.duration(loggedSeconds) + " without guiding";
    }
    return guidedSeconds > 0.999 * loggedSeconds || loggedSeconds == 0
        ? Times.duration(guidedSeconds) + " guided"
        : Times.duration(loggedSeconds) + ", " + Times.duration(guidedSeconds) + " of it guided";
  }
}
