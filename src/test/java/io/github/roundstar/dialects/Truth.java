package io.github.roundstar.dialects;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * What an invented log says, in the project's conventions; rounded as the log rounds, so that a
 * perfect reading gives the same numbers.
 *
 * @param start instant from which the frames' seconds count; empty where the text does not tell
 *     date or zone
 * @param frames one for each row of the log that belongs to a frame, in order
 * @param raSignTold whether the text (names, words, sentences) tells that east, or west, is
 *     positive; else a reading with both RA offsets and RA pulses negated is as good
 * @param decSignTold the same for north and south
 * @param hasPulses whether the log holds pulses
 * @param pulsesInNextRow whether the log's rows hold the pulse sent before their frame; frames here
 *     hold the pulse that answers their offset, whatever the log does
 * @param arcsecPerPixel scale of the guide camera; present when the log tells it or when it is the
 *     open fact
 * @param declinationDegrees as told by the log, else empty
 * @param guideRate times sidereal, as told by the log, else empty
 * @param exposureSeconds as told by the log, else empty
 * @param raGain share of an RA offset that a pulse takes away, as told, else empty
 * @param pierSide side of the pier the tube is on, {@code east} or {@code west}, as told, else
 *     empty
 * @param toldEvents kinds of event that the log tells in any way; frames carry no others
 * @param guideTable the same night as guide table (ECSV) with all open facts answered
 */
public record Truth(
    Optional<Instant> start,
    List<Frame> frames,
    boolean raSignTold,
    boolean decSignTold,
    boolean hasPulses,
    boolean pulsesInNextRow,
    OptionalDouble arcsecPerPixel,
    OptionalDouble declinationDegrees,
    OptionalDouble guideRate,
    OptionalDouble exposureSeconds,
    OptionalDouble raGain,
    Optional<String> pierSide,
    Set<Event> toldEvents,
    String guideTable) {

  /** Takes copies. */
  public Truth {
    frames = List.copyOf(frames);
    toldEvents = Set.copyOf(toldEvents);
  }

  /** What happened around a frame. */
  public enum Event {
    /** First frame measured against a new set point. */
    DITHER,
    /** Between a dither and calm; also on the dither's own frame where the log says so. */
    SETTLING,
    /** The star was not measured. */
    LOST,
    /** First frame after the mount turned over. */
    FLIP
  }

  /**
   * One row's frame.
   *
   * @param seconds since {@link Truth#start()}, or since the same unknown instant
   * @param raArcsec star minus set point on the sky, east positive; NaN when not measured
   * @param decArcsec the same, north positive
   * @param raPulseMillis positive when the mount is pushed east, which makes the offset fall; NaN
   *     when the log has none for this frame
   * @param decPulseMillis the same, north
   * @param run number of the run, from 1
   * @param events as told by the log
   */
  public record Frame(
      double seconds,
      double raArcsec,
      double decArcsec,
      double raPulseMillis,
      double decPulseMillis,
      int run,
      Set<Event> events) {
    /** Whether the star was not measured. */
    public boolean missing() {
      return Double.isNaN(raArcsec);
    }
  }

  /**
   * Root mean square of the RA offsets about each run's own mean, over all measured frames that
   * carry no event [arcsec].
   */
  public double raRmsArcsec() {
    return rms(true);
  }

  /** The same in declination. */
  public double decRmsArcsec() {
    return rms(false);
  }

  private double rms(boolean ra) {
    double squares = 0;
    int count = 0;
    int runs = frames.stream().mapToInt(Frame::run).max().orElse(0);
    for (int r = 1; r <= runs; r++) {
      int wanted = r;
      double[] values =
          frames.stream()
              .filter(
                  f ->
                      f.run() == wanted
                          && !f.missing()
                          && f.events().stream().allMatch(e -> e == Event.FLIP))
              .mapToDouble(f -> ra ? f.raArcsec() : f.decArcsec())
              .toArray();
      double mean = java.util.Arrays.stream(values).average().orElse(0);
      for (double value : values) {
        squares += (value - mean) * (value - mean);
      }
      count += values.length;
    }
    return Math.sqrt(squares / count);
  }
}
