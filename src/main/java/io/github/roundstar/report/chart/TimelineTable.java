package io.github.roundstar.report.chart;

import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.RunTrace;
import java.util.List;

/** The numbers of a night's timeline: both offsets against time. */
final class TimelineTable {
  private TimelineTable() {}

  static ChartTable of(TimeScale time, List<RunTrace> runs) {
    ChartTable.Spans spans = new ChartTable.Spans(time.name(), time::text, Numbers::plain);
    runs.forEach(run -> spans.band("RA offset, arcsec", run.ra()));
    runs.forEach(run -> spans.band("Dec offset, arcsec", run.dec()));
    return spans.table();
  }
}
