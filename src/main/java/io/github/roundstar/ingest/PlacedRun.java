package io.github.roundstar.ingest;

import io.github.roundstar.model.GuideRun;

/** A run in its night; the run is replaced when it takes over the counts of an emptied one. */
final class PlacedRun {
  private final String night;
  private final RunSpan span;
  private GuideRun run;

  PlacedRun(String night, GuideRun run) {
    this.night = night;
    this.run = run;
    this.span = RunSpan.of(run);
  }

  String night() {
    return night;
  }

  RunSpan span() {
    return span;
  }

  GuideRun run() {
    return run;
  }

  void takeOver(int duplicate, int unusable) {
    run = RunRows.withMore(run, duplicate, unusable);
  }
}
