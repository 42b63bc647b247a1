package io.github.roundstar.results;

import io.github.roundstar.model.Estimate;
import java.util.List;

/**
 * Whether what a night's steps promised came true on later nights.
 *
 * @param night name of the night whose steps these are
 * @param judgedOn names of the later nights
 * @param word {@link #KEPT}, {@link #PARTLY}, {@link #NOT_KEPT}, {@link #NOT_DONE} or {@link
 *     #CANNOT_TELL}
 * @param text the same in a sentence, with numbers
 * @param steps what became of each step
 * @param figures what came of it: round exposures, RMS of the log; those that can be compared
 * @param notCompared figures that cannot be compared, each with the reason
 */
public record PromiseKept(
    String night,
    List<String> judgedOn,
    String word,
    String text,
    List<Step> steps,
    List<Figure> figures,
    List<NotComputed> notCompared) {
  /** As promised. */
  public static final String KEPT = "kept";

  /** Better than before, but less than promised. */
  public static final String PARTLY = "partly";

  /** Done, and nothing won that stands out. */
  public static final String NOT_KEPT = "not-kept";

  /** What the steps change has not moved. */
  public static final String NOT_DONE = "not-done";

  /** None of the others is known. */
  public static final String CANNOT_TELL = "cannot-tell";

  /** Copies the lists. */
  public PromiseKept {
    judgedOn = List.copyOf(judgedOn);
    steps = List.copyOf(steps);
    figures = List.copyOf(figures);
    notCompared = List.copyOf(notCompared);
  }

  /**
   * What became of a step.
   *
   * @param cure which, as on the ladder
   * @param name what it changes, in words
   * @param unit unit of the numbers; may be empty
   * @param from where it stood; null where it has no number
   * @param to where it was to go; null likewise
   * @param now where it stands, with interval; null where the later nights do not tell
   * @param done {@link #DONE}, {@link PromiseKept#PARTLY}, {@link PromiseKept#NOT_DONE} or {@link
   *     PromiseKept#CANNOT_TELL}
   * @param because why it cannot be told; empty where it is
   */
  public record Step(
      String cure,
      String name,
      String unit,
      Double from,
      Double to,
      Estimate now,
      String done,
      String because) {
    /** It was done. */
    public static final String DONE = "done";
  }

  /**
   * A figure as it was, as promised, and as it came. The intervals hold for another night: they
   * carry how far nights differ by themselves.
   *
   * @param key round-share or rms-radial
   * @param unit unit of the values
   * @param before on the night that promised
   * @param promised with its steps done
   * @param came on the later nights
   * @param won by how much it is better than before; negative where worse
   * @param missing by how much it is worse than promised; negative where better
   * @param word kept, partly, not-kept or cannot-tell, by this figure alone
   */
  public record Figure(
      String key,
      String unit,
      Estimate before,
      Estimate promised,
      Estimate came,
      Estimate won,
      Estimate missing,
      String word) {}
}
