package io.github.roundstar.report;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.report.Page.Block;
import io.github.roundstar.report.Page.Section;
import io.github.roundstar.report.chart.AirChart;
import io.github.roundstar.report.chart.Svg;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.AirmassGrowth;
import io.github.roundstar.results.NightResult;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Whether the star's height shows in the guiding; what to do about it only where it does. */
final class HeightSection {
  private HeightSection() {}

  /** The section; nothing where the night cannot tell. */
  static Optional<Section> of(NightResult result, Charts charts) {
    AirmassGrowth growth =
        result.night().pointings() == null ? null : result.night().pointings().airmass();
    if (growth == null) {
      return Optional.empty();
    }
    List<String> sentences = new ArrayList<>();
    sentences.add(
        through(growth)
            + " the noise of a frame was "
            + times(growth.noisePerDoubling())
            + " as large and the radial RMS "
            + times(growth.rmsPerDoubling())
            + ", of one star and beside what the air did by itself. Of the air alone 1.4 times is to"
            + " be expected.");
    sentences.add(verdict(growth));
    Svg chart =
        result.seeing() == null
            ? null
            : charts.of("the air by airmass", () -> AirChart.byAirmass(result));
    List<String> steps =
        growth.shows()
            ? List.of(
                "Take a field while it is near the meridian, where it stands highest.",
                "Leave what stays low for a calmer night, or for a month in which it stands higher.")
            : null;
    return Optional.of(
        new Section(
            "height",
            growth.shows()
                ? "Lower stars were guided less steadily"
                : "The star's height did not show in the guiding",
            List.of(new Block(sentences, chart, null, steps, null))));
  }

  private static String through(AirmassGrowth growth) {
    return growth.leastAirmass() == null
        ? "Through twice the air"
        : "The stars were seen through "
            + Numbers.fixed(growth.leastAirmass(), 1)
            + " to "
            + Numbers.fixed(growth.mostAirmass(), 1)
            + " times the air of the zenith. Through twice the air";
  }

  private static String verdict(AirmassGrowth growth) {
    if (growth.shows()) {
      return "Both intervals lie above 1: the height shows.";
    }
    return growth.noisePerDoubling().lo95() > 1
        ? "More air made the star more unsteady, but the guiding surely no worse: nothing follows"
            + " from it."
        : "An interval that holds 1 tells nothing of the height: nothing follows from it.";
  }

  private static String times(Estimate factor) {
    return Numbers.both(factor) + " times";
  }
}
