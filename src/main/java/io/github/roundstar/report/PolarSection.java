package io.github.roundstar.report;

import io.github.roundstar.report.Page.Block;
import io.github.roundstar.report.Page.Cell;
import io.github.roundstar.report.Page.Column;
import io.github.roundstar.report.Page.Section;
import io.github.roundstar.report.Page.Table;
import io.github.roundstar.report.chart.AxisDriftChart;
import io.github.roundstar.report.chart.TrailMap;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.report.words.Times;
import io.github.roundstar.results.AxisTrace;
import io.github.roundstar.results.KnownDirection;
import io.github.roundstar.results.NightEvidence;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.PolarAxis;
import io.github.roundstar.results.TrackingRate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Where the mount's axis points, how fast it turns, and what that does to the field. */
final class PolarSection {
  private static final String CAUTION =
      "Adjust with the telescope parked and nobody below it: a loosened base can slip or tip. Hold the"
          + " weights, loosen one screw at a time and tighten it again.";

  private PolarSection() {}

  static Section of(NightResult result, NightEvidence evidence, Charts charts, SiteDetail site) {
    PolarAxis axis = result.polarAxis();
    List<Block> blocks = new ArrayList<>();
    Optional<AxisTrace> trace = evidence.axis();
    List<String> sentences = axis == null ? missing(result) : sentences(axis);
    blocks.add(
        new Block(
            sentences,
            trace.isEmpty()
                ? null
                : charts.of("drift against hour angle", () -> AxisDriftChart.draw(trace.get())),
            axis == null || axis.totalArcmin() == null ? null : table(axis, site),
            null,
            null));
    if (axis != null && axis.totalArcmin() != null) {
      List<String> steps = AdjusterWords.steps(axis);
      if (!steps.isEmpty()) {
        blocks.add(new Block(List.of(), null, null, steps, CAUTION));
      }
      blocks.add(
          new Block(
              field(axis, trace),
              trace.isEmpty()
                  ? null
                  : charts.of("trails over the field", () -> TrailMap.draw(trace.get())),
              null,
              null,
              null));
    }
    return new Section("polar-axis", heading(axis), blocks);
  }

  private static String heading(PolarAxis axis) {
    if (axis == null) {
      return "The polar axis cannot be told from this log";
    }
    if (Boolean.FALSE.equals(axis.consistent())) {
      return "The polar axis does not explain the drift";
    }
    if (axis.assumed() != null) {
      return "Without the latitude one direction of the polar axis can be told";
    }
    return axis.totalArcmin() == null
        ? "One run tells one direction of the polar axis only"
        : "The polar axis is off by " + Numbers.value(axis.totalArcmin()) + " arcmin";
  }

  private static List<String> missing(NightResult result) {
    return List.of(new Reasons(result.notComputed()).sentence("/polarAxis"));
  }

  private static List<String> sentences(PolarAxis axis) {
    List<String> sentences = new ArrayList<>();
    if (axis.totalArcmin() == null) {
      sentences.addAll(oneDirection(axis));
    } else if ("curvature".equals(axis.basis())) {
      sentences.add(
          "Both parts come from the bend of the drift within one pointing: flexure that changes as the"
              + " telescope turns would look the same. A second pointing some hours away would prove it.");
    }
    if (axis.assumed() != null) {
      sentences.addAll(SitelessWords.of(axis.assumed()));
    }
    sentences.addAll(beside(axis));
    rate(axis.trackingRate()).ifPresent(sentences::add);
    return sentences;
  }

  private static List<String> oneDirection(PolarAxis axis) {
    KnownDirection known = axis.known();
    List<String> sentences = new ArrayList<>();
    sentences.add(
        (axis.assumed() == null
                ? "Known is "
                : "Known of its " + axis.assumed().axisEnd() + " end is ")
            + Numbers.fixed(known.eastShare(), 1)
            + " times the error to the east plus "
            + Numbers.fixed(known.highShare(), 1)
            + " times the error above the pole, both on the sky: "
            + Numbers.both(known.arcmin())
            + " arcmin.");
    if (axis.secondPointingHourAngleHours() != null) {
      sentences.add(
          "A second run near hour angle "
              + Numbers.fixed(axis.secondPointingHourAngleHours(), 1)
              + " h would settle the rest.");
    }
    return sentences;
  }

  private static List<String> beside(PolarAxis axis) {
    if (!Boolean.FALSE.equals(axis.consistent())) {
      return List.of();
    }
    String left =
        "An axis in error leaves "
            + Numbers.plain(axis.residualArcsecPerMinute())
            + " arcsec a minute of the runs' drifts.";
    if (axis.beside() == null) {
      return List.of(
          left,
          "What is left follows neither hour angle nor pier side: look for something loose,"
              + " for cables and for a guide scope that bends.");
    }
    boolean side = "pier-side".equals(axis.beside().follows());
    return List.of(
        left,
        "It is explained by a further drift of "
            + Numbers.both(axis.beside().arcsecPerMinute())
            + " arcsec a minute "
            + (side
                ? "that turns its sign with the pier side: the Dec drive, or something that slips along"
                    + " the tube."
                : "that is the same wherever the telescope looks: a guide scope that slips or bends"
                    + " steadily."));
  }

  private static Optional<String> rate(TrackingRate rate) {
    return Optional.ofNullable(rate)
        .map(
            known ->
                "Air and axis taken out, the mount's rate differs from the sidereal one by "
                    + Numbers.both(known.errorArcsecPerMinuteAxis())
                    + " arcsec a minute at the axis, plus running ahead of the stars; the"
                    + " refraction-slowed rate of these stars differs by "
                    + Numbers.plain(known.kingArcsecPerMinuteAxis())
                    + ".");
  }

  private static Table table(PolarAxis axis, SiteDetail site) {
    Double refracted = axis.altitudeFromRefractedPoleArcmin();
    return new Table(
            "Where the raised end of the axis points",
            List.of(
                Column.numbers("azimuth, east positive", "arcmin"),
                Column.numbers("above the true pole", "arcmin"),
                Column.numbers("above the refracted pole", "arcmin"),
                Column.numbers("total on the sky", "arcmin"),
                Column.words("basis")),
            List.of(
                List.of(
                    Cell.of(axis.azimuthArcmin()),
                    Cell.of(axis.altitudeArcmin()),
                    refracted == null
                        ? Cell.NOT_KNOWN
                        : Cell.of(Numbers.fixed(refracted, site.decimals())),
                    Cell.of(axis.totalArcmin()),
                    Cell.of(axis.basis().replace('-', ' ')))))
        .withoutEmptyColumns();
  }

  private static List<String> field(PolarAxis axis, Optional<AxisTrace> trace) {
    List<String> sentences = new ArrayList<>();
    sentences.add(
        "Guiding holds one star; the field turns about it by up to "
            + Numbers.plain(Math.abs(axis.fieldRotationDegPerHour()))
            + " degrees an hour.");
    if (axis.cornerTrailArcsec() != null) {
      sentences.add(
          "In an exposure of "
              + Numbers.plain(axis.exposureSeconds())
              + " s the corner farthest from the guide star trails by "
              + Numbers.plain(axis.cornerTrailArcsec())
              + " arcsec.");
    }
    if (axis.longestExposureSeconds() != null) {
      sentences.add(
          "It trails by half a pixel in " + Times.duration(axis.longestExposureSeconds()) + ".");
    }
    boolean known = trace.map(t -> t.sensor() != null && t.sensor().starKnown()).orElse(true);
    if (!known) {
      sentences.add(
          "The guide star's place is not known, so it is put in the opposite corner, the worst place"
              + " in the field.");
    }
    return sentences;
  }
}
