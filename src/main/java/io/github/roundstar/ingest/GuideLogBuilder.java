package io.github.roundstar.ingest;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.model.GuideLog;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.model.RowCounts;
import io.github.roundstar.model.SourceFile;
import java.io.IOException;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Reads the rows of one log into runs. */
final class GuideLogBuilder {
  private static final int MOST_ROWS = 10_000_000;
  private static final int MOST_RUNS = 10_000;

  /** A gap in a run is worth a warning from here on, if it also is many frames long. */
  private static final double LONG_GAP_SECONDS = 600;

  private static final double LONG_GAP_STEPS = 100;

  /** Nobody waits longer for a star: as long as the gap that ends a night. */
  private static final double LONGEST_GAP_SECONDS = 6 * 3600;

  private final RowSource table;
  private final HeaderMeta meta;
  private final Problems problems;
  private final TableRow row;
  private final RunClock starts;
  private final RunStarter starter;
  private final RowClock clock = new RowClock();
  private final List<GuideRun> runs = new ArrayList<>();
  private RunBuilder run;
  private int rows;
  private int unusableBeforeFirstRun;
  private boolean raEverGiven;
  private boolean decEverGiven;
  private int backwards;
  private long backwardsLine;
  private double backwardsSeconds;

  GuideLogBuilder(RowSource table, ColumnTable columns, HeaderMeta meta, Problems problems) {
    this.table = table;
    this.meta = meta;
    this.problems = problems;
    this.row = new TableRow(columns, problems);
    this.starts = new RunClock(columns, meta);
    this.starter = new RunStarter(table.file(), columns, meta, starts, problems);
  }

  GuideLog read() throws IOException, FormatException {
    while (table.next()) {
      rows++;
      if (rows > MOST_ROWS) {
        throw new FormatException(
            table.file(), table.lineNumber(), "more than " + MOST_ROWS + " rows", "split the file");
      }
      if (table.take(row)) {
        raEverGiven |= !Double.isNaN(row.ra);
        decEverGiven |= !Double.isNaN(row.dec);
        place();
      } else {
        countUnusable();
      }
    }
    closeStretch();
    closeRun();
    return finish();
  }

  private void place() throws FormatException {
    boolean otherNumber = starter.isOtherRun(row.run);
    double seconds = starts.fileSeconds(row, starter.numberOf(row.run));
    boolean ownClock = otherNumber && !starts.isDated();
    switch (clock.take(seconds, row.valueHash(), row.line, ownClock)) {
      case NEW -> accept(seconds, otherNumber);
      case DUPLICATE -> run.duplicate();
      case CONFLICT -> {
        problems.unusable(
            row.line,
            RowProblem.SAME_TIME,
            () -> "same time as line " + clock.earlierLine() + ", but other values");
        countUnusable();
      }
      case BACKWARDS -> {
        noteBackwards(seconds);
        countUnusable();
      }
    }
  }

  private void accept(double seconds, boolean otherNumber) throws FormatException {
    closeStretch();
    boolean flip = row.event == GuideEvent.FLIP && run != null;
    boolean same = run != null && !otherNumber && !flip;
    if (!same || jumpsAway(seconds)) {
      closeRun();
      if (runs.size() == MOST_RUNS) {
        throw new FormatException(
            table.file(),
            row.line,
            "more than " + MOST_RUNS + " runs",
            "number the runs in the column run, one number for each");
      }
      run = starter.start(row, seconds, flip);
      run.unusable(unusableBeforeFirstRun);
      unusableBeforeFirstRun = 0;
    }
    run.add(seconds, row);
  }

  /** Warns of a gap that no cloud explains; true if it is too long for one run. */
  private boolean jumpsAway(double seconds) {
    double gap = run.gapBefore(seconds);
    double step = run.meanStepSeconds();
    double least =
        step == 0 ? LONGEST_GAP_SECONDS : Math.max(LONG_GAP_SECONDS, LONG_GAP_STEPS * step);
    if (gap < least) {
      return false;
    }
    boolean away = gap >= LONGEST_GAP_SECONDS;
    problems.warn(
        row.line,
        String.format(
            Locale.ROOT,
            "the time jumps ahead by %.0f s%s",
            gap,
            away ? ", so a new run begins here" : " within a run"),
        "correct the times if the clock was set, or number the runs in the column run");
    return away;
  }

  private void closeRun() {
    if (run != null) {
      runs.add(run.build(runs.size() + 1));
      run = null;
    }
  }

  private void countUnusable() {
    if (run == null) {
      unusableBeforeFirstRun++;
    } else {
      run.unusable(1);
    }
  }

  private void noteBackwards(double seconds) {
    double back = clock.lastSeconds() - seconds;
    problems.unusable(
        row.line,
        RowProblem.TIME_BACKWARDS,
        () -> String.format(Locale.ROOT, "%.3f s before the last good row", back));
    if (backwards == 0) {
      backwardsLine = row.line;
      backwardsSeconds = back;
    }
    backwards++;
  }

  private void closeStretch() {
    if (backwards > 0) {
      problems.warn(
          backwardsLine,
          String.format(
              Locale.ROOT,
              "the time steps back by %.3f s, and %d rows cannot be used until it has caught up",
              backwardsSeconds,
              backwards),
          RowProblem.TIME_BACKWARDS.remedy());
      backwards = 0;
    }
  }

  private GuideLog finish() throws IOException, FormatException {
    Optional<String> damage = table.damage();
    if (rows == 0) {
      throw new FormatException(
          table.file(),
          table.lineNumber(),
          damage.orElse("no rows below the column names"),
          "give a log that holds frames");
    }
    damage.ifPresent(
        what ->
            problems.warn(
                table.lineNumber(),
                what + ", the rows up to here are used",
                "copy the file again"));
    RowCounts total = runs.stream().map(GuideRun::counts).reduce(RowCounts.NONE, RowCounts::plus);
    if (total.used() == 0) {
      throw noUsableFrame(total);
    }
    starter.warnOfRunsNotSeen();
    return new GuideLog(source(total), offset(), runs, problems.warnings());
  }

  private FormatException noUsableFrame(RowCounts total) {
    int unusable = total.unusable() + unusableBeforeFirstRun;
    String what =
        String.format(
            Locale.ROOT,
            "no usable frame in %d rows (%d lost, %d settling, %d dither, %d idle, %d rejected, %d"
                + " unusable)",
            rows,
            total.lost(),
            total.settling(),
            total.dither(),
            total.idle(),
            total.rejected(),
            unusable);
    if (!problems.first().isEmpty()) {
      return new FormatException(
          table.file(), problems.first().get(0).line(), what, problems.first().get(0).reason());
    }
    String empty = raEverGiven == decEverGiven ? "" : raEverGiven ? "dec_offset" : "ra_offset";
    return empty.isEmpty()
        ? new FormatException(
            table.file(), 0, what, "give a log in which the guide star was measured")
        : new FormatException(
            table.file(), 0, what + ", since " + empty + " is empty in every row", "log both axes");
  }

  private SourceFile source(RowCounts total) throws IOException {
    return new SourceFile(
        table.file(),
        table.sha256(),
        table.bytes(),
        table.layout(),
        rows,
        total.used(),
        problems.byReason(),
        problems.first());
  }

  private Optional<ZoneOffset> offset() {
    return meta.common()
        .start()
        .or(() -> meta.firstStart())
        .map(start -> start.getOffset())
        .filter(offset -> !offset.equals(ZoneOffset.UTC));
  }
}
