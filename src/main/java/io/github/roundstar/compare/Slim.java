package io.github.roundstar.compare;

import io.github.roundstar.results.RunResult;

/** A run without what only its own night's page needs. */
final class Slim {
  private Slim() {}

  static RunResult run(RunResult run) {
    return new RunResult(
        run.id(),
        run.startUtc(),
        run.durationSeconds(),
        run.mode(),
        run.frames(),
        run.counts(),
        run.cadenceSeconds(),
        run.guideScaleArcsecPerPixel(),
        run.declinationDeg(),
        run.hourAngleHours(),
        run.pierSide(),
        run.guided(),
        run.driftArcsecPerMinuteSky(),
        run.responseArcsecPerSecond(),
        run.loop(),
        run.noiseFloorArcsec(),
        null,
        run.backlashArcsecAxis(),
        run.stickingArcsecAxis(),
        null,
        null,
        run.events());
  }
}
