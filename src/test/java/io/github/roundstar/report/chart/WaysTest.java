package io.github.roundstar.report.chart;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.model.SkySense;
import io.github.roundstar.results.Band;
import io.github.roundstar.results.NightEvidence;
import io.github.roundstar.results.OffsetCloud;
import io.github.roundstar.results.Polyline;
import io.github.roundstar.results.WormTrace;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** No chart names a direction that the log does not tell. */
class WaysTest {
  private static final double[] X = {0, 0.5, 1};
  private static final double[] Y = {-1, 2, 1};

  private static NightEvidence evidence(SkySense sense) {
    return new NightEvidence(
        Optional.empty(),
        OptionalDouble.empty(),
        List.of(),
        new OffsetCloud(Polyline.of(X, Y), 3, 2, 1, 40),
        List.of(),
        List.of(),
        Optional.empty(),
        Optional.of(new WormTrace(480, 5, Band.of(X, Y, Y, Y), Polyline.EMPTY, List.of())),
        Optional.empty(),
        List.of(),
        sense,
        Optional.empty(),
        Optional.empty());
  }

  private static String cloud(SkySense sense) throws ChartsUnavailable {
    return ScatterChart.draw(evidence(sense)).orElseThrow().markup();
  }

  @Test
  void knownDirectionsAreNamed() throws ChartsUnavailable {
    assertThat(cloud(SkySense.KNOWN))
        .contains("(east left)", "(north up)", ">N</text>", ">E</text>", "position angle 40");
    assertThat(WormChart.draw(evidence(SkySense.KNOWN), false).orElseThrow().markup())
        .contains("(east up)");
  }

  @Test
  void unknownDirectionsHaveTheReasonInTheirPlace() throws ChartsUnavailable {
    assertThat(cloud(new SkySense(false, false)))
        .contains("which way is east)", "which way is north)", "directions not told by the log")
        .doesNotContain("(east left)", "(north up)", ">N</text>", ">E</text>", "position angle");
    assertThat(WormChart.draw(evidence(new SkySense(false, true)), false).orElseThrow().markup())
        .contains("RA at the axis, arcsec (the log does not tell which way is east)");
  }

  @Test
  void oneUnknownAxisLeavesTheOtherItsName() throws ChartsUnavailable {
    assertThat(cloud(new SkySense(true, false)))
        .contains("(east left)", "which way is north)", ">E</text>")
        .doesNotContain(">N</text>");
    Ways ways = new Ways(new SkySense(true, false));
    assertThat(ways.upInWords(Ink.RA)).isEqualTo("east up");
    assertThat(ways.upInWords(Ink.DEC)).contains("the log does not tell which of them is north");
  }
}
