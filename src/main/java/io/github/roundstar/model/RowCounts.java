package io.github.roundstar.model;

/**
 * Where every row of a run went.
 *
 * @param used frames in the RMS
 * @param settling frames after a dither, before the star rested
 * @param lost frames without a measurement
 * @param dither first frames against a new set point
 * @param idle frames logged while not guiding
 * @param duplicate rows already read, from this file or another
 * @param rejected measured but not finite or saturated
 * @param unusable rows that could not be read
 */
public record RowCounts(
    int used,
    int settling,
    int lost,
    int dither,
    int idle,
    int duplicate,
    int rejected,
    int unusable) {
  /** No rows. */
  public static final RowCounts NONE = new RowCounts(0, 0, 0, 0, 0, 0, 0, 0);

  /** The counts that the states of some frames give, and rows that are no frames. */
  public static RowCounts of(Frames frames, int duplicate, int unusable) {
    int[] byState = new int[FrameState.values().length];
    for (int i = 0; i < frames.size(); i++) {
      byState[frames.state(i).ordinal()]++;
    }
    return new RowCounts(
        byState[FrameState.USED.ordinal()],
        byState[FrameState.SETTLING.ordinal()],
        byState[FrameState.LOST.ordinal()],
        byState[FrameState.DITHER.ordinal()],
        byState[FrameState.IDLE.ordinal()],
        duplicate,
        byState[FrameState.REJECTED.ordinal()],
        unusable);
  }

  /** All rows: the sum of the parts. */
  public int rows() {
    return used + settling + lost + dither + idle + duplicate + rejected + unusable;
  }

  /** Part by part sum. */
  public RowCounts plus(RowCounts other) {
    return new RowCounts(
        used + other.used,
        settling + other.settling,
        lost + other.lost,
        dither + other.dither,
        idle + other.idle,
        duplicate + other.duplicate,
        rejected + other.rejected,
        unusable + other.unusable);
  }
}
