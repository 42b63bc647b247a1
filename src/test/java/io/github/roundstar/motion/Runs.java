package io.github.roundstar.motion;

import io.github.roundstar.model.Frames;
import io.github.roundstar.model.GuideCamera;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.model.LoopSettings;
import io.github.roundstar.model.Pointing;
import io.github.roundstar.model.RowCounts;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Runs around given frames, with the settings that reconstruction asks for. */
record Runs(OptionalDouble declination, OptionalDouble guideRate, OptionalDouble exposure) {
  static final Runs NOTHING_KNOWN =
      new Runs(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());

  Runs declination(double degrees) {
    return new Runs(OptionalDouble.of(degrees), guideRate, exposure);
  }

  Runs guideRate(double sidereal) {
    return new Runs(declination, OptionalDouble.of(sidereal), exposure);
  }

  Runs exposure(double seconds) {
    return new Runs(declination, guideRate, OptionalDouble.of(seconds));
  }

  GuideRun of(Frames frames) {
    LoopSettings unknown = LoopSettings.UNKNOWN;
    return new GuideRun(
        1,
        Optional.empty(),
        new Pointing(declination, OptionalDouble.empty(), Optional.empty(), OptionalDouble.empty()),
        new GuideCamera(OptionalDouble.empty(), exposure),
        new LoopSettings(
            guideRate,
            unknown.ra(),
            unknown.dec(),
            unknown.pulseLimitMillis(),
            unknown.decDirection()),
        frames,
        RowCounts.NONE,
        List.of());
  }
}
