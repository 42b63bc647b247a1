package io.github.roundstar.ingest;

import io.github.roundstar.model.GuideRun;
import java.time.Instant;

/** First and last frame of a run with absolute time. */
record RunSpan(Instant first, Instant last) {
  static RunSpan of(GuideRun run) {
    int end = run.frames().size() - 1;
    return new RunSpan(
        run.instantAt(run.frames().timeSeconds(0)).orElseThrow(),
        run.instantAt(run.frames().timeSeconds(end)).orElseThrow());
  }

  boolean overlaps(RunSpan other) {
    return !last.isBefore(other.first) && !other.last.isBefore(first);
  }
}
