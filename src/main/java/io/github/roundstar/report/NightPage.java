package io.github.roundstar.report;

import io.github.roundstar.model.RepeatedLines;
import io.github.roundstar.report.Page.Block;
import io.github.roundstar.report.Page.Section;
import io.github.roundstar.report.chart.Svg;
import io.github.roundstar.report.chart.TimelineChart;
import io.github.roundstar.report.words.Clock;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.report.words.Times;
import io.github.roundstar.results.Faults;
import io.github.roundstar.results.LocalTime;
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

  private static final String NO_HEADLINE =
      "A fault of roundstar keeps the sentence back that belongs here; the figures stand.";

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
    return render(result, evidence, site, new Faults());
  }

  /**
   * As {@link #render(NightResult, NightEvidence, SiteDetail)}.
   *
   * @param faults those met so far; hears of charts and sections that a fault of the tool took
   */
  public static Rendered render(
      NightResult result, NightEvidence shown, SiteDetail site, Faults faults) {
    NightEvidence evidence =
        site == SiteDetail.FULL
            ? shown
            : shown.withLocalTime(shown.localTime().map(LocalTime::rounded));
    Charts charts = new Charts(faults);
    Block timeline =
        faults.within(
            "section timeline", () -> timeline(result, evidence, charts), SectionGuard.LOST);
    List<Section> measured = measured(result, evidence, charts, site, new SectionGuard(faults));
    CauseSections causes =
        faults.withinOrElse(
            "order of the sections",
            () -> CauseSections.of(result, measured),
            () -> new CauseSections(measured, List.of()));
    List<Section> folded = new ArrayList<>(causes.folded());
    folded.addAll(
        faults.within(
            "folded sections", () -> FoldedSections.of(result, evidence), List.<Section>of()));
    String line = faults.within("line of the night", () -> line(result, evidence), "");
    String headline = faults.within("headline", () -> Headline.of(result), NO_HEADLINE);
    Page.First first =
        faults.within("what to do next", () -> FirstScreen.of(result, charts), (Page.First) null);
    List<Page.Judged> judgements =
        faults.within(
            "judgements", () -> FindingSections.judgements(result), List.<Page.Judged>of());
    List<Page.KeyFigure> figures =
        faults.within("key figures", () -> KeyFigures.of(result), List.<Page.KeyFigure>of());
    List<String> unread =
        faults.within("unread rows", () -> RowsSection.unread(result), List.<String>of());
    List<String> warnings = new ArrayList<>();
    FaultWords.of(result.faults(), faults).ifPresent(warnings::add);
    warnings.addAll(unread);
    warnings.addAll(RepeatedLines.shortened(evidence.warnings()));
    charts.failure().ifPresent(warnings::add);
    Page page =
        new Page(
            "Night of " + result.night().date(),
            line,
            headline,
            judgements,
            figures,
            warnings,
            timeline,
            causes.open(),
            folded,
            "Made by roundstar " + result.version() + ".",
            first);
    return new Rendered(PageTemplate.fill(page), charts.failure());
  }

  private static List<Section> measured(
      NightResult result,
      NightEvidence evidence,
      Charts charts,
      SiteDetail site,
      SectionGuard guard) {
    guard.optional("exposures", () -> ExposureSection.of(result, evidence, charts));
    guard.optional("planning", () -> PlanningSection.of(result));
    guard.optional("fields", () -> FieldsSection.of(result, site));
    guard.optional("flip", () -> FlipSection.of(result, new Clock(evidence.localTime())));
    guard.optional("usual", () -> UsualSection.of(result));
    guard.optional("promise", () -> Optional.ofNullable(result.kept()).map(PromiseSection::of));
    guard.add("budget", () -> BudgetSection.of(result, charts));
    guard.add("star", () -> MovementSection.of(result, evidence, charts));
    guard.add("periodic", () -> PeriodicSection.of(result, evidence, charts));
    guard.add("drift", () -> DriftSection.of(result, evidence, charts, site));
    guard.add("polar-axis", () -> PolarSection.of(result, evidence, charts, site));
    guard.optional("seeing", () -> SeeingSection.of(result, evidence, charts));
    guard.optional("height", () -> HeightSection.of(result, charts));
    guard.add("loop", () -> LoopSection.of(result));
    guard.add("replay", () -> ReplaySection.of(result, charts));
    guard.add("pulses", () -> PulseSection.of(result));
    guard.optional("jolts", () -> JoltSection.of(result, evidence, charts));
    guard.add("rows", () -> RowsSection.of(result));
    return guard.sections();
  }

  /**
   * Renders a blank night and throws it away, so that a later page is quick: to be run on a thread
   * beside the reading of the logs.
   */
  public static void warmUp() {
    render(BlankNight.result(), BlankNight.evidence());
  }

  private static Block timeline(NightResult result, NightEvidence evidence, Charts charts) {
    Svg chart = charts.of("the night", () -> TimelineChart.draw(result, evidence));
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
          new Clock(evidence.localTime())
              .span(Instant.parse(night.startUtc()), Instant.parse(night.endUtc())));
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
