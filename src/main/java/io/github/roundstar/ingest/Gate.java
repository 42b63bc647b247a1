package io.github.roundstar.ingest;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.ingest.layout.Layout;
import io.github.roundstar.ingest.layout.evidence.Relation;
import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.Frames;
import io.github.roundstar.model.GuideLog;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.model.RowCounts;
import io.github.roundstar.model.UnusableRow;
import io.github.roundstar.signal.Quantile;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.IntToDoubleFunction;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/**
 * What a text log must show before any figure is taken from it, whoever wrote its layout: a wrong
 * layout gives numbers as readily as a right one, but not numbers that hang together. What fails
 * stops with what was seen; thresholds leave room for every night that mounts and air can make.
 */
final class Gate {
  /** Rows that may be unreadable: a torn end, some garbled lines. */
  private static final double MOST_UNREADABLE = 0.02;

  /** Short logs may have a few, whatever their share. */
  private static final int FEW_ROWS = 3;

  /** No gust, dither or kick is as rare and as far as a number that stands for no star. */
  private static final double FAR_MEDIANS = 30;

  /** How much farther than every ordinary reading a lone one is. */
  private static final double LONE_FACTOR = 5;

  private static final int FEWEST_READINGS = 50;

  /** Longer than any night that a telescope guides through. */
  private static final double LONGEST_RUN_SECONDS = 20 * 3600;

  private static final double SHORT_RUN_SECONDS = 600;
  private static final double SEAMLESS_STEPS = 3;

  /** Share of the measured frames that settling and waiting may take. */
  private static final double MOST_PASSED = 0.6;

  private static final int FEWEST_CUTS = 3;
  private static final int FEWEST_PULSES = 30;

  /** A correlation beyond which a sign is sure, and one below which there is no relation. */
  private static final double CLEAR = 0.5;

  private static final double NONE = 0.15;

  /** A relation so close that its slope is known to some percent. */
  private static final double TIGHT = 0.95;

  /** Logarithm of a change of scale within a run that is no chance. */
  private static final double SCALE_JUMP = Math.log(1.8);

  /** A stretch of a run that otherwise answers clearly. */
  private static final double LOST_RELATION = 0.1;

  /** Half of the pulses longer than this many frames are in another unit. */
  private static final double LONGEST_PULSE_STEPS = 1.5;

  private static final double SHORTEST_PULSE_MILLIS = 0.5;

  /** Offsets scatter about a place near the set point; positions lie this many scatters off it. */
  private static final double FAR_FROM_SET_POINT = 10;

  private final GuideLog log;
  private final Layout layout;

  private Gate(GuideLog log, Layout layout) {
    this.log = log;
    this.layout = layout;
  }

  /**
   * The log, if it hangs together; with a warning where rows could not be read.
   *
   * @throws FormatException with what was seen and where
   */
  static GuideLog passed(GuideLog log, Layout layout) throws FormatException {
    Gate gate = new Gate(log, layout);
    gate.rows();
    gate.clock();
    gate.cuts();
    gate.quietFrames();
    gate.lonelyReadings();
    gate.pulses();
    return gate.withShareToldOf();
  }

  private FormatException stop(long line, String what, String remedy) {
    return new FormatException(
        log.source().name(),
        line,
        what,
        remedy + "; see how the log was understood with roundstar layout " + log.source().name());
  }

  private String reasons() {
    return log.source().unusableByReason().entrySet().stream()
        .map(entry -> entry.getKey() + " " + entry.getValue())
        .reduce((one, other) -> one + ", " + other)
        .orElse("");
  }

  private void rows() throws FormatException {
    int bad = log.source().unusable();
    int rows = log.source().rows();
    if (bad > FEW_ROWS && bad > MOST_UNREADABLE * rows) {
      UnusableRow first = log.source().firstUnusable().get(0);
      throw stop(
          first.line(),
          String.format(
              Locale.ROOT,
              "%d of %d rows cannot be read (%s), so figures would come from a choice of rows;"
                  + " the first: %s",
              bad,
              rows,
              reasons(),
              first.reason()),
          "correct the layout, or remove what is no frame");
    }
  }

  private GuideLog withShareToldOf() {
    int bad = log.source().unusable();
    if (bad == 0) {
      return log;
    }
    UnusableRow first = log.source().firstUnusable().get(0);
    List<String> warnings = new ArrayList<>(log.warnings());
    warnings.add(
        FormatException.located(
            log.source().name(),
            first.line(),
            String.format(
                Locale.ROOT,
                "%d of %d rows cannot be read (%s)",
                bad,
                log.source().rows(),
                reasons()),
            first.reason()));
    return new GuideLog(log.source(), log.utcOffset(), log.runs(), warnings);
  }

  private void clock() throws FormatException {
    for (GuideRun run : log.runs()) {
      Frames frames = run.frames();
      double length = frames.timeSeconds(frames.size() - 1) - frames.timeSeconds(0);
      if (length > LONGEST_RUN_SECONDS) {
        throw stop(
            0,
            String.format(
                Locale.ROOT,
                "run %d is %.0f h long by its times, more than a night can be",
                run.id(),
                length / 3600),
            "correct [time] form, now \"" + layout.time().kind().word() + "\", in the layout");
      }
      if (frames.size() >= FEWEST_READINGS && !(cadence(run) > 0.01)) {
        throw stop(
            0,
            String.format(
                Locale.ROOT,
                "run %d has %d frames in %.3g s, faster than a guide camera can be",
                run.id(),
                frames.size(),
                length),
            "correct [time] form, now \"" + layout.time().kind().word() + "\", in the layout");
      }
    }
  }

  private static double cadence(GuideRun run) {
    Frames frames = run.frames();
    double[] steps =
        IntStream.range(1, frames.size())
            .mapToDouble(i -> frames.timeSeconds(i) - frames.timeSeconds(i - 1))
            .toArray();
    return steps.length == 0 ? Double.NaN : Quantile.median(steps);
  }

  /** A night spent settling or waiting is one whose end of settling was not understood. */
  private void quietFrames() throws FormatException {
    RowCounts all =
        log.runs().stream().map(GuideRun::counts).reduce(RowCounts.NONE, RowCounts::plus);
    int passed = all.settling() + all.dither() + all.idle();
    int measured = all.used() + passed;
    if (measured >= FEWEST_READINGS && passed > MOST_PASSED * measured) {
      throw stop(
          0,
          String.format(
              Locale.ROOT,
              "%d of %d frames are told to be settling, dithers or idle, so figures would come"
                  + " from the few others",
              passed,
              measured),
          "correct the [[event]] entries of the layout, above all what ends settling");
    }
  }

  /** Runs cut where nothing happened: pages of a print, names repeated every so many rows. */
  private void cuts() throws FormatException {
    int cuts = 0;
    for (int r = 1; r < log.runs().size(); r++) {
      GuideRun one = log.runs().get(r - 1);
      GuideRun next = log.runs().get(r);
      boolean brief = Math.min(seconds(one), seconds(next)) < SHORT_RUN_SECONDS;
      if (brief && seamless(one, next)) {
        cuts++;
      }
    }
    if (cuts >= FEWEST_CUTS) {
      throw stop(
          0,
          cuts + " runs of less than ten minutes follow each other without a gap in the clock",
          "correct [runs] begins in the layout, so that only a true beginning begins a run");
    }
  }

  private static double seconds(GuideRun run) {
    Frames frames = run.frames();
    return frames.timeSeconds(frames.size() - 1) - frames.timeSeconds(0);
  }

  private boolean seamless(GuideRun one, GuideRun next) {
    double step = cadence(one);
    Frames frames = one.frames();
    double gap;
    if (one.start().isPresent() && next.start().isPresent()) {
      Duration between =
          Duration.between(
              one.instantAt(frames.timeSeconds(frames.size() - 1)).orElseThrow(),
              next.instantAt(next.frames().timeSeconds(0)).orElseThrow());
      gap = between.toMillis() / 1000.0;
    } else {
      gap = next.frames().timeSeconds(0) - frames.timeSeconds(frames.size() - 1);
    }
    boolean same =
        one.pointing().pierSide().equals(next.pointing().pierSide())
            && one.pointing().declinationDegrees().equals(next.pointing().declinationDegrees());
    return same && gap > 0 && gap <= SEAMLESS_STEPS * step;
  }

  /** Numbers that stand for no star, such as 999.99, taken for offsets. */
  private void lonelyReadings() throws FormatException {
    for (boolean dec : new boolean[] {false, true}) {
      double[] sizes =
          log.runs().stream()
              .flatMapToDouble(run -> used(run, dec))
              .map(Math::abs)
              .sorted()
              .toArray();
      double median = sizes.length < FEWEST_READINGS ? Double.NaN : Quantile.median(sizes);
      if (!(median > 0) || sizes[sizes.length - 1] <= FAR_MEDIANS * median) {
        continue;
      }
      double largest = sizes[sizes.length - 1];
      Map<Double, Integer> times = new HashMap<>();
      Arrays.stream(sizes)
          .filter(size -> size > FAR_MEDIANS * median)
          .forEach(size -> times.merge(size, 1, Integer::sum));
      double rest = Arrays.stream(sizes).filter(size -> size < largest).max().orElse(largest);
      int often = times.getOrDefault(largest, 0);
      if (often > 2 || largest > LONE_FACTOR * Math.max(rest, FAR_MEDIANS / LONE_FACTOR * median)) {
        throw stop(
            0,
            String.format(
                Locale.ROOT,
                "%s is %.6g arcsec in %d frames, %.0f times the median, and no word tells why",
                dec ? "the offset in declination" : "the offset in right ascension",
                largest,
                often,
                largest / median),
            "if the number stands for a star that was not measured, write it as missing = \"...\""
                + " in the layout; else remove these rows");
      }
    }
  }

  private static DoubleStream used(GuideRun run, boolean dec) {
    Frames frames = run.frames();
    return IntStream.range(0, frames.size())
        .filter(i -> frames.state(i) == FrameState.USED)
        .mapToDouble(i -> dec ? frames.decArcsec(i) : frames.raArcsec(i));
  }

  /** Pulses answer the offset of their own axis, in the direction that makes it fall. */
  private void pulses() throws FormatException {
    boolean[] answered = new boolean[2];
    boolean[] sent = new boolean[2];
    for (GuideRun run : log.runs()) {
      if (!run.frames().hasPulses()) {
        continue;
      }
      for (int axis = 0; axis < 2; axis++) {
        Relation own = answer(run.frames(), axis == 1, axis == 1, 0);
        if (own.pairs() < FEWEST_PULSES) {
          continue;
        }
        sent[axis] = true;
        Relation other = answer(run.frames(), axis == 1, axis == 0, 0);
        Relation late =
            answer(run.frames(), axis == 1, axis == 1, layout.pulseInNextRow() ? -1 : 1);
        String word = axis == 1 ? "declination" : "right ascension";
        answered[axis] |= Math.abs(own.correlation()) > NONE;
        requireOwn(run, word, own, other, late);
        requireOneSign(run, word, axis == 1, own.correlation());
        requireOneScale(run, word, axis == 1);
        requireLength(run, word, axis == 1);
      }
    }
    for (int axis = 0; axis < 2; axis++) {
      if (sent[0] && sent[1] && !answered[0] && !answered[1]) {
        throw stop(
            0,
            "pulses have no relation to the offsets of either axis",
            "correct which columns are offsets and which are pulses: averages, totals and"
                + " positions are no offsets");
      }
    }
    requireNearSetPoint(answered);
  }

  private void requireOwn(GuideRun run, String word, Relation own, Relation other, Relation late)
      throws FormatException {
    if (own.correlation() < -CLEAR) {
      throw stop(
          0,
          String.format(
              Locale.ROOT,
              "in run %d, %d pulses in %s push the star away (correlation with the offset %.2f)",
              run.id(),
              own.pairs(),
              word,
              own.correlation()),
          "turn positive of the offset or of the pulse round, to the opposite direction");
    }
    if (Math.abs(other.correlation()) > 0.7 && Math.abs(own.correlation()) < NONE) {
      throw stop(
          0,
          String.format(
              Locale.ROOT,
              "in run %d, pulses in %s follow the other axis's offset (correlation %.2f, with"
                  + " their own %.2f)",
              run.id(),
              word,
              other.correlation(),
              own.correlation()),
          "exchange the two offset columns, or the two pulse columns, in the layout");
    }
    if (Math.abs(own.correlation()) < CLEAR && Math.abs(late.correlation()) > CLEAR + NONE) {
      throw stop(
          0,
          String.format(
              Locale.ROOT,
              "in run %d, pulses in %s follow the offset of the row %s (correlation %.2f),"
                  + " not of their own row (%.2f)",
              run.id(),
              word,
              layout.pulseInNextRow() ? "after" : "before",
              late.correlation(),
              own.correlation()),
          "write row = \"" + (layout.pulseInNextRow() ? "same" : "next") + "\" under [pulses]");
    }
  }

  /** A pulse ends before the next frame, and is longer than a relay needs to close. */
  private void requireLength(GuideRun run, String word, boolean dec) throws FormatException {
    Frames frames = run.frames();
    double[] sizes =
        IntStream.range(0, frames.size())
            .mapToDouble(i -> Math.abs(dec ? frames.decPulseMillis(i) : frames.raPulseMillis(i)))
            .filter(size -> size > 0 && Double.isFinite(size))
            .toArray();
    double median = Quantile.median(sizes);
    double step = cadence(run) * 1000;
    if (median > LONGEST_PULSE_STEPS * step || median < SHORTEST_PULSE_MILLIS) {
      throw stop(
          0,
          String.format(
              Locale.ROOT,
              "in run %d, half of the pulses in %s last more than %.4g ms, with %.4g ms from frame"
                  + " to frame",
              run.id(),
              word,
              median,
              step),
          "correct the unit of the pulses in the layout");
    }
  }

  /** A sign that turns round within a run, as columns that are swapped half way make it. */
  private void requireOneSign(GuideRun run, String word, boolean dec, double whole)
      throws FormatException {
    Frames frames = run.frames();
    int from = 0;
    int sent = 0;
    for (int i = 0; i < frames.size(); i++) {
      double pulse = dec ? frames.decPulseMillis(i) : frames.raPulseMillis(i);
      sent += Double.isFinite(pulse) && pulse != 0 ? 1 : 0;
      if (sent == 2 * FEWEST_PULSES) {
        Frames part = frames.slice(from, i + 1);
        Relation own = answer(part, dec, dec, 0);
        Relation other = answer(part, dec, !dec, 0);
        boolean swapped = Math.abs(other.correlation()) > 0.9 && Math.abs(own.correlation()) < 0.3;
        boolean lost = Math.abs(whole) > CLEAR && Math.abs(own.correlation()) < LOST_RELATION;
        if (own.correlation() < -CLEAR - NONE || swapped || lost) {
          throw stop(
              0,
              String.format(
                  Locale.ROOT,
                  "in run %d, %.0f to %.0f s, pulses in %s %s: the relation changes within the run",
                  run.id(),
                  frames.timeSeconds(from),
                  frames.timeSeconds(i),
                  word,
                  swapped
                      ? "follow the other axis"
                      : lost ? "have no relation to the offset" : "push the star away"),
              "cut the log where its columns or its signs change, and give each part its layout");
        }
        from = i + 1;
        sent = 0;
      }
    }
  }

  private void requireNearSetPoint(boolean[] answered) throws FormatException {
    for (GuideRun run : log.runs()) {
      boolean[] off = new boolean[2];
      double[] place = new double[2];
      for (int axis = 0; axis < 2 && run.frames().hasPulses(); axis++) {
        double[] all = used(run, axis == 1).toArray();
        if (all.length >= FEWEST_READINGS) {
          double median = Quantile.median(all);
          place[axis] = median;
          double scatter =
              1.4826 * Quantile.median(Arrays.stream(all).map(v -> Math.abs(v - median)).toArray());
          off[axis] = Math.abs(median) > FAR_FROM_SET_POINT * scatter;
        }
      }
      if (off[0] && off[1]) {
        throw stop(
            0,
            String.format(
                Locale.ROOT,
                "in run %d the offsets lie about %.4g and %.4g arcsec, far from the set point by"
                    + " their own scatter: they look like positions",
                run.id(),
                place[0],
                place[1]),
            "give the columns that hold star minus set point");
      }
    }
  }

  /** Numbers that grow or shrink at once by what pulses do not: columns in another unit. */
  private void requireOneScale(GuideRun run, String word, boolean dec) throws FormatException {
    Frames frames = run.frames();
    Relation before = null;
    double usualBefore = 0;
    int from = 0;
    int sent = 0;
    for (int i = 0; i < frames.size(); i++) {
      double pulse = dec ? frames.decPulseMillis(i) : frames.raPulseMillis(i);
      sent += Double.isFinite(pulse) && pulse != 0 ? 1 : 0;
      if (sent < 2 * FEWEST_PULSES) {
        continue;
      }
      Relation part = answer(frames.slice(from, i + 1), dec, dec, 0);
      double usual = part.otherScatter();
      if (before != null && before.correlation() > TIGHT && part.correlation() > TIGHT) {
        double response = Math.log(part.slope() / before.slope());
        double size = Math.log(usual / usualBefore);
        if (Math.abs(response) > SCALE_JUMP && Math.abs(response + size) < SCALE_JUMP / 2) {
          throw stop(
              0,
              String.format(
                  Locale.ROOT,
                  "in run %d, from %.0f s on, offsets in %s are %.3g times as large and answered by"
                      + " as long pulses as before: their unit changes within the run",
                  run.id(),
                  frames.timeSeconds(from),
                  word,
                  Math.exp(size)),
              "cut the log where its columns change, and give each part its layout");
        }
      }
      before = part;
      usualBefore = usual;
      from = i + 1;
      sent = 0;
    }
  }

  /** How the pulses of an axis go with an offset, over the frames that have both. */
  private static Relation answer(Frames frames, boolean decPulse, boolean decOffset, int lag) {
    IntToDoubleFunction pulse = decPulse ? frames::decPulseMillis : frames::raPulseMillis;
    IntToDoubleFunction offset = decOffset ? frames::decArcsec : frames::raArcsec;
    return Relation.of(
        pulse, offset, frames.size(), lag, i -> pulse.applyAsDouble(i) != 0, Integer.MAX_VALUE);
  }
}
