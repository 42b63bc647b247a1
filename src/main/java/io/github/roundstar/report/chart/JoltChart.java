package io.github.roundstar.report.chart;

import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.Event;
import io.github.roundstar.results.NightEvidence;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.RunResult;
import io.github.roundstar.results.RunTrace;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleInsets;

/**
 * What befell the star against time: moves by their size, each kind with its own mark, and below
 * them clouds by the light they took. The largest of each kind is named.
 */
public final class JoltChart {
  /** So that moves without size, as stars that never moved have them, still have an axis. */
  private static final double LOWEST_TOP_ARCSEC = 0.1;

  private static final int SIZES = 170;
  private static final int LIGHT = 70;
  private static final int BELOW = 42;
  private static final int GAP = 32;
  private static final List<String> MOVES =
      List.of("gust", "knock", "lasting-shift", "star-switch");

  /** An event with its time since the night's first frame. */
  private record Placed(Event event, double from, double to) {
    double size() {
      return event.sizeArcsec();
    }
  }

  private JoltChart() {}

  /**
   * Draws it; empty without an event of known size or loss of light.
   *
   * @throws ChartsUnavailable if Java cannot load a font
   */
  public static Optional<Svg> draw(NightResult result, NightEvidence evidence)
      throws ChartsUnavailable {
    List<Placed> moves =
        placed(result, evidence).stream()
            .filter(p -> MOVES.contains(p.event.kind()) && p.event.sizeArcsec() != null)
            .toList();
    List<Placed> clouds =
        placed(result, evidence).stream()
            .filter(p -> p.event.kind().equals("cloud") && p.event.lightLost() != null)
            .toList();
    if (moves.isEmpty() && clouds.isEmpty()) {
      return Optional.empty();
    }
    ChartStyle style = ChartStyle.load();
    TimeScale time = TimeScale.of(result, evidence, Sheet.HALF);
    ListedAxis horizontal = time.axis(style);
    CombinedDomainXYPlot all = new CombinedDomainXYPlot(horizontal);
    all.setGap(GAP);
    all.setInsets(new RectangleInsets(ChartStyle.HEADROOM, 2, 2, 14));
    int height = ChartStyle.HEADROOM + BELOW;
    if (!moves.isEmpty()) {
      all.add(sizes(style, horizontal, moves), SIZES);
      height += SIZES;
    }
    if (!clouds.isEmpty()) {
      all.add(light(style, horizontal, clouds), LIGHT);
      height += LIGHT + (moves.isEmpty() ? 0 : GAP);
    }
    String title =
        moves.isEmpty()
            ? "Clouds by the light they took"
            : clouds.isEmpty()
                ? "Jolts by size"
                : "Jolts by size, and clouds by the light they took";
    Sheet sheet = new Sheet("jolt", Sheet.HALF, height, title, words(moves, clouds));
    return Optional.of(style.draw(all, sheet).with(table(time, moves, clouds)));
  }

  private static List<Placed> placed(NightResult result, NightEvidence evidence) {
    List<Placed> placed = new ArrayList<>();
    for (RunTrace trace : evidence.timeline()) {
      for (RunResult run : result.runs()) {
        if (run.id() == trace.run()) {
          double start = trace.startSeconds();
          run.events()
              .forEach(e -> placed.add(new Placed(e, start + e.time(), start + e.endTime())));
        }
      }
    }
    return placed;
  }

  private static XYPlot sizes(ChartStyle style, ListedAxis horizontal, List<Placed> moves) {
    double highest = moves.stream().mapToDouble(Placed::size).max().orElse(0);
    double top = Math.max(1.12 * highest, LOWEST_TOP_ARCSEC);
    ListedAxis vertical = style.vertical(new ListedAxis(0, top, Ticks.linear(0, top, 5)));
    XYPlot plot = style.plot(null, vertical);
    style.rules(plot, horizontal, vertical, "move of the star, arcsec", Ink.INK);
    Path2D stems = new Path2D.Double();
    moves.forEach(move -> stems.append(Paths.segment(move.from, 0, move.from, move.size()), false));
    plot.addAnnotation(DataPath.stroked(stems, Ink.QUIET.color(), ChartStyle.HAIR));
    DataLabels names = DataLabels.beside(style.font());
    for (String kind : MOVES) {
      List<Placed> these = moves.stream().filter(m -> m.event.kind().equals(kind)).toList();
      plot.addAnnotation(
          new DataMarks(
              these.stream().mapToDouble(Placed::from).toArray(),
              these.stream().mapToDouble(Placed::size).toArray(),
              shape(kind),
              Ink.INK.color(),
              kind.equals("knock")));
      these.stream()
          .max(Comparator.comparingDouble(Placed::size))
          .ifPresent(largest -> name(names, horizontal, largest, kind));
    }
    plot.addAnnotation(names);
    return plot;
  }

  /** To the right of its mark, or to the left where the chart ends. */
  private static void name(DataLabels names, ListedAxis time, Placed largest, String kind) {
    double across =
        (largest.from - time.getLowerBound()) / (time.getUpperBound() - time.getLowerBound());
    boolean late = across > 0.85;
    names.add(
        largest.from,
        largest.size(),
        late ? -9 : 9,
        5,
        late ? DataLabels.Anchor.END : DataLabels.Anchor.START,
        plain(kind),
        Ink.INK.color());
  }

  private static Path2D shape(String kind) {
    return switch (kind) {
      case "gust" -> MarkShapes.zigzag();
      case "knock" -> MarkShapes.diamond();
      case "lasting-shift" -> MarkShapes.square();
      default -> MarkShapes.cross();
    };
  }

  private static XYPlot light(ChartStyle style, ListedAxis horizontal, List<Placed> clouds) {
    ListedAxis vertical = style.vertical(new ListedAxis(0, 100, Ticks.linear(0, 100, 2)));
    XYPlot plot = style.plot(null, vertical);
    style.rules(plot, horizontal, vertical, "light lost to clouds, %", Ink.INK);
    Path2D bars = new Path2D.Double();
    clouds.forEach(
        cloud ->
            bars.append(Paths.box(cloud.from, 0, cloud.to, 100 * cloud.event.lightLost()), false));
    plot.addAnnotation(DataPath.filled(bars, Ink.QUIET.color(0.22)));
    plot.addAnnotation(DataPath.stroked(bars, Ink.QUIET.color(), ChartStyle.HAIR));
    return plot;
  }

  private static String words(List<Placed> moves, List<Placed> clouds) {
    List<String> parts = new ArrayList<>();
    for (String kind : MOVES) {
      moves.stream()
          .filter(move -> move.event.kind().equals(kind))
          .mapToDouble(Placed::size)
          .max()
          .ifPresent(
              most ->
                  parts.add(
                      "The largest " + plain(kind) + ": " + Numbers.fixed(most, 1) + " arcsec."));
    }
    clouds.stream()
        .mapToDouble(cloud -> cloud.event.lightLost())
        .max()
        .ifPresent(most -> parts.add("The thickest cloud took " + Numbers.percent(most) + "."));
    return "Against time. " + String.join(" ", parts);
  }

  private static ChartTable table(TimeScale time, List<Placed> moves, List<Placed> clouds) {
    List<Placed> all = new ArrayList<>(moves);
    all.addAll(clouds);
    all.sort(Comparator.comparingDouble(Placed::from));
    return ChartTable.rows(
        "Every mark and bar.",
        List.of(time.name(), "kind", "size, arcsec", "light lost, %"),
        all.stream()
            .map(
                p ->
                    List.of(
                        time.text(p.from),
                        plain(p.event.kind()),
                        p.event.sizeArcsec() == null ? "" : Numbers.fixed(p.size(), 1),
                        p.event.lightLost() == null
                            ? ""
                            : Numbers.fixed(100 * p.event.lightLost(), 0)))
            .toList());
  }

  private static String plain(String kind) {
    return kind.replace('-', ' ');
  }
}
