package io.github.roundstar.ingest;

import io.github.roundstar.model.AxisLoop;
import io.github.roundstar.model.DecDirection;
import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.FramesBuilder;
import io.github.roundstar.model.GuideCamera;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.model.LoopSettings;
import io.github.roundstar.model.Note;
import io.github.roundstar.model.Pointing;
import io.github.roundstar.model.RowCounts;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** Builds one run, row by row. */
final class RunBuilder {
  private static final int LONGEST_NOTE = 200;
  private static final int MOST_NOTES = 10_000;

  private final ColumnTable table;
  private final HeaderMeta.Values meta;
  private final Pointing pointing;
  private final Optional<Instant> start;
  private final double zeroSeconds;
  private final double scale;
  private final boolean pulseOfRowBefore;
  private final FramesBuilder frames = new FramesBuilder();
  private final List<Note> notes = new ArrayList<>();
  private boolean settlingLogged;
  private int duplicate;
  private int unusable;

  /**
   * Begins a run.
   *
   * @param start the instant of time zero
   * @param zeroSeconds time zero of the run on the file's clock
   */
  RunBuilder(
      ColumnTable table,
      HeaderMeta.Values meta,
      Pointing pointing,
      Optional<Instant> start,
      double zeroSeconds) {
    this.table = table;
    this.meta = meta;
    this.pointing = pointing;
    this.start = start;
    this.zeroSeconds = zeroSeconds;
    this.scale = meta.number(MetaKey.GUIDE_SCALE).orElse(Double.NaN);
    this.pulseOfRowBefore = meta.word(MetaKey.PULSE_ROW).filter("next"::equals).isPresent();
  }

  Pointing pointing() {
    return pointing;
  }

  /** Time from the last frame to a time on the file's clock [s]. */
  double gapBefore(double fileSeconds) {
    return fileSeconds - zeroSeconds - frames.timeSeconds(frames.size() - 1);
  }

  /** Mean time from frame to frame so far; zero for a single frame [s]. */
  double meanStepSeconds() {
    int steps = frames.size() - 1;
    return steps == 0 ? 0 : (frames.timeSeconds(steps) - frames.timeSeconds(0)) / steps;
  }

  void duplicate() {
    duplicate++;
  }

  void unusable(int rows) {
    unusable += rows;
  }

  /** Adds a row at a time on the file's clock. */
  void add(double fileSeconds, TableRow row) {
    double ra = arcsec(row.ra, GuideColumn.RA_OFFSET);
    double dec = arcsec(row.dec, GuideColumn.DEC_OFFSET);
    double shiftRa = arcsec(row.ditherRa, GuideColumn.DITHER_RA);
    double shiftDec = arcsec(row.ditherDec, GuideColumn.DITHER_DEC);
    boolean dither = row.event == GuideEvent.DITHER || isShift(shiftRa) || isShift(shiftDec);
    if (pulseOfRowBefore && frames.size() > 0) {
      pulses(row.raPulseMillis, row.decPulseMillis);
    }
    frames.add(fileSeconds - zeroSeconds, finiteOrNaN(ra), finiteOrNaN(dec));
    frames.state(state(ra, dec, row.event, dither));
    if (!pulseOfRowBefore) {
      pulses(row.raPulseMillis, row.decPulseMillis);
    }
    if (table.has(GuideColumn.SNR) || table.has(GuideColumn.FLUX)) {
      frames.star(row.snr, row.flux);
    }
    if (dither) {
      frames.dither(shiftRa, shiftDec);
    }
    settlingLogged |= row.event == GuideEvent.SETTLING;
    if (row.event == GuideEvent.NOTE && notes.size() < MOST_NOTES) {
      notes.add(new Note(fileSeconds - zeroSeconds, note(row.eventText)));
    }
  }

  private void pulses(double raMillis, double decMillis) {
    if (table.has(GuideColumn.RA_PULSE) || table.has(GuideColumn.DEC_PULSE)) {
      frames.pulses(raMillis, decMillis);
    }
  }

  private double arcsec(double logged, GuideColumn column) {
    double factor = table.factor(column);
    return logged * (Double.isNaN(factor) ? scale : factor);
  }

  private static boolean isShift(double arcsec) {
    return !Double.isNaN(arcsec) && arcsec != 0;
  }

  /** NaN is the one value by which frames say that a number cannot be had. */
  private static double finiteOrNaN(double value) {
    return Double.isFinite(value) ? value : Double.NaN;
  }

  private static FrameState state(double ra, double dec, GuideEvent event, boolean dither) {
    if (event == GuideEvent.IDLE) {
      return FrameState.IDLE;
    }
    if (Double.isNaN(ra) || Double.isNaN(dec) || event == GuideEvent.LOST) {
      return FrameState.LOST;
    }
    if (Double.isInfinite(ra) || Double.isInfinite(dec)) {
      return FrameState.REJECTED;
    }
    if (dither) {
      return FrameState.DITHER;
    }
    return event == GuideEvent.SETTLING ? FrameState.SETTLING : FrameState.USED;
  }

  private static String note(String event) {
    String text = event.substring(GuideEvent.NOTE_MARK.length()).strip();
    if (text.length() <= LONGEST_NOTE) {
      return text;
    }
    boolean pair = Character.isHighSurrogate(text.charAt(LONGEST_NOTE - 1));
    return text.substring(0, pair ? LONGEST_NOTE - 1 : LONGEST_NOTE);
  }

  /** The finished run. */
  GuideRun build(int id) {
    if (pulseOfRowBefore) {
      pulses(0, 0);
    }
    if (!settlingLogged) {
      Settling.mark(frames);
    }
    var columns = frames.build();
    return new GuideRun(
        id,
        start,
        pointing,
        new GuideCamera(meta.number(MetaKey.GUIDE_SCALE), meta.number(MetaKey.GUIDE_EXPOSURE)),
        loop(),
        columns,
        RowCounts.of(columns, duplicate, unusable),
        notes,
        meta.sense());
  }

  private LoopSettings loop() {
    return new LoopSettings(
        meta.number(MetaKey.GUIDE_RATE),
        axis(MetaKey.GAIN_RA, MetaKey.DEADBAND_RA),
        axis(MetaKey.GAIN_DEC, MetaKey.DEADBAND_DEC),
        meta.number(MetaKey.PULSE_LIMIT),
        meta.word(MetaKey.DEC_DIRECTION)
            .map(word -> DecDirection.valueOf(word.toUpperCase(Locale.ROOT))));
  }

  private AxisLoop axis(MetaKey gain, MetaKey deadband) {
    OptionalDouble share = meta.number(gain);
    return new AxisLoop(share, meta.number(deadband));
  }
}
