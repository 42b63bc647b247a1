package io.github.roundstar.report.chart;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.results.Band;
import io.github.roundstar.results.NightEvidence;
import io.github.roundstar.results.OffsetCloud;
import io.github.roundstar.results.Polyline;
import io.github.roundstar.results.SpectrumTrace;
import io.github.roundstar.results.WormTrace;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Charts of data without any spread still have axes that can be read. */
class FlatDataTest {
  private static final double[] X = {0, 0.5, 1};
  private static final double[] LEVEL = {2, 2, 2};

  @Test
  void constantCurveHasAVisibleAxis() throws ChartsUnavailable {
    WormTrace worm =
        new WormTrace(480, 5, Band.of(X, LEVEL, LEVEL, LEVEL), Polyline.EMPTY, List.of());

    String svg = WormChart.draw(evidence(NO_CLOUD, worm), false).orElseThrow().markup();

    assertThat(svg).contains(">1.8</text>", ">2.2</text>", "4\u00a0min").doesNotContain("NaN");
  }

  @Test
  void singlePointCloudHasVisibleAxes() throws ChartsUnavailable {
    OffsetCloud one = new OffsetCloud(Polyline.of(new double[] {0}, new double[] {0}), 1, 0, 0, 0);

    String svg = ScatterChart.draw(evidence(one, null)).orElseThrow().markup();

    assertThat(svg).contains(">0.10</text>", "h0").doesNotContain("NaN", "1 standard deviation");
  }

  @Test
  void flatSpectrumHasVisibleAxes() throws ChartsUnavailable {
    Polyline flat = Polyline.of(new double[] {5, 50, 500}, new double[3]);
    NightEvidence evidence = evidence(NO_CLOUD, null, new SpectrumTrace(flat, flat, List.of()));

    String svg = SpectrumChart.draw(evidence).orElseThrow().markup();

    assertThat(svg).contains(">0.001</text>", "1\u00a0min").doesNotContain("NaN");
  }

  @Test
  void noDataGivesNoChart() throws ChartsUnavailable {
    assertThat(WormChart.draw(evidence(NO_CLOUD, null), false)).isEmpty();
    assertThat(ScatterChart.draw(evidence(NO_CLOUD, null))).isEmpty();
    assertThat(SpectrumChart.draw(evidence(NO_CLOUD, null))).isEmpty();
  }

  private static final OffsetCloud NO_CLOUD = new OffsetCloud(Polyline.EMPTY, 0, 0, 0, 0);

  private static NightEvidence evidence(OffsetCloud cloud, WormTrace worm) {
    return evidence(cloud, worm, null);
  }

  private static NightEvidence evidence(OffsetCloud cloud, WormTrace worm, SpectrumTrace spectrum) {
    return new NightEvidence(
        Optional.empty(),
        OptionalDouble.empty(),
        List.of(),
        cloud,
        List.of(),
        List.of(),
        Optional.ofNullable(spectrum),
        Optional.ofNullable(worm),
        Optional.empty(),
        List.of());
  }
}
