package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.simulate.FrameTruth;
import io.github.roundstar.simulate.FrameTruth.Column;
import io.github.roundstar.simulate.SimulatedRun;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The smoothed path is where the star really was, as the simulator knows it. */
@Tag("identity")
class SmoothedStarTest {
  private static final double COSINE = Math.cos(Math.toRadians(35));

  private static Answer<SmoothedStar> smoothed(SimulatedRun run) {
    return SmoothedStar.of(
        run.log(),
        Equipment.UNKNOWN,
        AxisNight.ra(List.of(run.log()), Equipment.UNKNOWN).runs().get(0),
        AxisNight.dec(List.of(run.log()), Equipment.UNKNOWN).runs().get(0));
  }

  private static double truth(FrameTruth frames, Axis axis, int i) {
    return axis == Axis.RA
        ? frames.at(Column.MOTION_RA, i)
            - frames.at(Column.CORRECTION_RA, i)
            - frames.at(Column.SET_POINT_RA, i)
        : frames.at(Column.MOTION_DEC, i)
            - frames.at(Column.CORRECTION_DEC, i)
            - frames.at(Column.SET_POINT_DEC, i);
  }

  /** Mean square of the truth about its mean over two minutes, less what the path says. */
  private static double excess(SmoothedStar star, FrameTruth frames, Axis axis, int from, int to) {
    double mean = 0;
    for (int i = from; i < to; i++) {
      mean += truth(frames, axis, i) / (to - from);
    }
    double square = 0;
    for (int i = from; i < to; i++) {
      square += Math.pow(truth(frames, axis, i) - mean, 2) / (to - from);
    }
    SmoothedStar.Spread spread = star.spread(from, to);
    return (axis == Axis.RA ? spread.raArcsec2() : spread.decArcsec2()) / square - 1;
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          worm        |
          play        | dec_backlash_arcsec = 1.5
          wrong rate  | response_east = 0.9\\nresponse_west = 0.85\\nresponse_north = 1.1
          gusts       | [gusts]\\nper_hour = 6\\namplitude_arcsec = 4
          """)
  void truthLiesInsideItsErrorsAndMovesAsMuch(String name, String more) throws Exception {
    int inside = 0;
    int frames = 0;
    double excess = 0;
    for (int seed = 1; seed <= 2; seed++) {
      SimulatedRun run =
          SimulatedRuns.of(seed, (more == null ? "" : more.replace("\\n", "\n")) + "\n");
      SmoothedStar star = smoothed(run).value().orElseThrow();
      assertThat(star.size()).isEqualTo(run.log().frames().size());
      for (int i = 0; i < star.size(); i++) {
        double ra = star.raArcsec(i) - truth(run.frames(), Axis.RA, i);
        double dec = star.decArcsec(i) - truth(run.frames(), Axis.DEC, i);
        inside += ra * ra < 3.8415 * star.raVariance(i) ? 1 : 0;
        inside += dec * dec < 3.8415 * star.decVariance(i) ? 1 : 0;
        frames += 2;
      }
      for (int from = 0; from + 40 <= star.size(); from += 40) {
        for (Axis axis : Axis.values()) {
          excess += excess(star, run.frames(), axis, from, from + 40) / (star.size() / 40) / 4;
        }
      }
    }
    assertThat((double) inside / frames).isBetween(0.92, 0.98);
    // The mean ratio of mean squares, hence twice the error of an RMS.
    assertThat(excess).isCloseTo(0, within(0.1));
  }

  @Test
  void framesWithoutTheStarAreGivenWithMoreDoubt() throws Exception {
    SimulatedRun run =
        SimulatedRuns.of(
            4, "[[cloud]]\nat_min = 30\nminutes = 6\ndepth = 1\n[[cloud]]\nat_min = 50\n");
    SmoothedStar star = smoothed(run).value().orElseThrow();
    int lost = 0;
    for (int i = 1; i < star.size(); i++) {
      if (!run.log().frames().measured(i) && run.log().frames().measured(i - 1)) {
        lost++;
        assertThat(star.raVariance(i)).isGreaterThan(star.raVariance(i - 1)).isFinite();
        assertThat(star.raArcsec(i)).isFinite();
      }
    }
    assertThat(lost).isPositive();
  }

  @Test
  void emptySpreadIsRefused() throws Exception {
    SmoothedStar star = smoothed(SimulatedRuns.of(1, "")).value().orElseThrow();
    assertThatThrownBy(() -> star.spread(5, 5)).hasMessageContaining("5 to 5");
  }
}
