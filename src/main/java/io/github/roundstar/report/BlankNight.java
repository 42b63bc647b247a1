package io.github.roundstar.report;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.results.Band;
import io.github.roundstar.results.Component;
import io.github.roundstar.results.Mark;
import io.github.roundstar.results.MotionTrace;
import io.github.roundstar.results.NightEvidence;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.NightSummary;
import io.github.roundstar.results.OffsetCloud;
import io.github.roundstar.results.Polyline;
import io.github.roundstar.results.Replay;
import io.github.roundstar.results.RunTrace;
import io.github.roundstar.results.SpectrumTrace;
import io.github.roundstar.results.WormTrace;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** A night of two frames that has one of everything a page draws: for warming up only. */
final class BlankNight {
  private static final double[] ENDS = {5, 60};
  private static final Polyline LINE = Polyline.of(ENDS, ENDS);
  private static final Band BAND = Band.of(ENDS, ENDS, ENDS, ENDS);

  private BlankNight() {}

  static NightResult result() {
    return new NightResult(
        NightResult.SCHEMA,
        "",
        List.of(),
        new NightSummary(
            "",
            "2000-01-01T00:00:00Z",
            null,
            0,
            0,
            0,
            null,
            null,
            null,
            null,
            null,
            null,
            null,
            null,
            null),
        List.of(),
        null,
        null,
        List.of(),
        List.of(replay(0.3, true), replay(0.6, false)),
        null,
        null,
        List.of(),
        List.of(),
        List.of());
  }

  private static Replay replay(double gain, boolean current) {
    return new Replay("ra", gain, 0, 3, 1, 1, false, current, !current, Estimate.symmetric(0, 1));
  }

  static NightEvidence evidence() {
    Estimate one = Estimate.symmetric(10, 1);
    List<Mark> marks = List.of(new Mark(Mark.Kind.DITHER, 30, 30, "x"));
    List<MotionTrace> motion = List.of(new MotionTrace(1, LINE, LINE, one));
    List<Component> components = List.of(new Component(one, one, null, 0, "worm", false));
    return new NightEvidence(
        Optional.empty(),
        OptionalDouble.of(1),
        List.of(new RunTrace(1, 0, 60, BAND, BAND, marks)),
        new OffsetCloud(LINE, 2, 2, 1, 0),
        motion,
        motion,
        Optional.of(new SpectrumTrace(LINE, LINE, components)),
        Optional.of(new WormTrace(60, 1, BAND, LINE, List.of(LINE))),
        Optional.empty(),
        List.of());
  }
}
