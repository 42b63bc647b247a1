package io.github.roundstar.results;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A night's result: the JSON document, key for key and in this order.
 *
 * @param schema {@link #SCHEMA}
 * @param version version of the tool
 * @param inputs files that went in
 * @param night figures over all runs
 * @param runs figures run by run
 * @param polarAxis where the mount's axis points
 * @param seeing what the guide star tells of the air
 * @param exposures exposures of the main camera
 * @param replay what other settings would have done; null when it cannot be told
 * @param planning how to take the next night; null where this one cannot be judged, and in results
 *     of earlier versions
 * @param findings what the numbers mean; null when this version does not judge
 * @param verdict what to do
 * @param need what is asked of the night; null in results of earlier versions
 * @param ladder what each cure would have done, the cheapest first; null where the night cannot be
 *     played again, and in results of earlier versions
 * @param steps what to do next, at most three things; null in results of earlier versions
 * @param promised what these steps together should bring; null where nothing is to be done or the
 *     night cannot be played again, and in results of earlier versions
 * @param kept whether what the night before promised was kept; null where no earlier night of the
 *     same telescope promised anything
 * @param usual the night beside the user's own earlier nights; null with fewer than three of them
 * @param notComputed why figures are null
 * @param methods how figures and intervals were made
 * @param faults what is missing by a fault of the tool itself; empty on any sound night
 */
public record NightResult(
    String schema,
    String version,
    List<Input> inputs,
    NightSummary night,
    List<RunResult> runs,
    PolarAxis polarAxis,
    Seeing seeing,
    List<Exposure> exposures,
    List<Replay> replay,
    Planning planning,
    List<Finding> findings,
    Verdict verdict,
    Need need,
    List<Rung> ladder,
    List<Step> steps,
    Promise promised,
    PromiseKept kept,
    Usual usual,
    List<NotComputed> notComputed,
    List<Method> methods,
    List<Fault> faults) {
  /** Copies the lists. */
  public NightResult {
    inputs = List.copyOf(inputs);
    runs = List.copyOf(runs);
    notComputed = List.copyOf(notComputed);
    methods = List.copyOf(methods);
    faults = faults == null ? List.of() : List.copyOf(faults);
    ladder = ladder == null ? null : List.copyOf(ladder);
    steps = steps == null ? null : List.copyOf(steps);
  }

  /** Figures of a night before it is judged. */
  public NightResult(
      String schema,
      String version,
      List<Input> inputs,
      NightSummary night,
      List<RunResult> runs,
      PolarAxis polarAxis,
      Seeing seeing,
      List<Exposure> exposures,
      List<Replay> replay,
      List<Finding> findings,
      Verdict verdict,
      List<NotComputed> notComputed,
      List<Method> methods,
      List<Fault> faults) {
    this(
        schema,
        version,
        inputs,
        night,
        runs,
        polarAxis,
        seeing,
        exposures,
        replay,
        null,
        findings,
        verdict,
        null,
        null,
        null,
        null,
        null,
        null,
        notComputed,
        methods,
        faults);
  }

  /** A rung of the ladder; nothing where the night was not played again. */
  public Optional<Rung> rung(String name) {
    return ladder == null
        ? Optional.empty()
        : ladder.stream().filter(rung -> rung.rung().equals(name)).findFirst();
  }

  /**
   * The same with what its cures would have done.
   *
   * @param played the rungs; null where the night cannot be played again
   * @param because why not
   */
  public NightResult withLadder(Need asked, List<Rung> played, String because) {
    List<NotComputed> missing = new ArrayList<>(notComputed);
    if (played == null) {
      missing.add(new NotComputed("/ladder", because));
    }
    return new NightResult(
        schema, version, inputs, night, runs, polarAxis, seeing, exposures, replay, planning,
        findings, verdict, asked, played, steps, promised, kept, usual, missing, methods, faults);
  }

  /**
   * The same with how to take the next night.
   *
   * @param next null where this night cannot be judged
   * @param reasons why it, or figures of it, are null
   */
  public NightResult withPlanning(Planning next, List<NotComputed> reasons) {
    List<NotComputed> missing = new ArrayList<>(notComputed);
    missing.addAll(reasons);
    return new NightResult(
        schema, version, inputs, night, runs, polarAxis, seeing, exposures, replay, next, findings,
        verdict, need, ladder, steps, promised, kept, usual, missing, methods, faults);
  }

  /** The same with what a fault of the tool took. */
  public NightResult withFaults(List<Fault> met) {
    return new NightResult(
        schema,
        version,
        inputs,
        night,
        runs,
        polarAxis,
        seeing,
        exposures,
        replay,
        planning,
        findings,
        verdict,
        need,
        ladder,
        steps,
        promised,
        kept,
        usual,
        notComputed,
        methods,
        met);
  }

  /** The same with what its steps together should bring; null where they should bring nothing. */
  public NightResult withPromise(Promise together) {
    List<NotComputed> missing = new ArrayList<>(notComputed);
    if (together == null) {
      missing.add(
          new NotComputed("/promised", "no step is recommended, or it cannot be played again"));
    }
    return new NightResult(
        schema, version, inputs, night, runs, polarAxis, seeing, exposures, replay, planning,
        findings, verdict, need, ladder, steps, together, kept, usual, missing, methods, faults);
  }

  /**
   * The same beside the user's earlier nights.
   *
   * @param promise whether what was promised last was kept; null where nothing was
   * @param own what is usual for the user; null with few nights
   */
  public NightResult beside(PromiseKept promise, Usual own) {
    List<NotComputed> missing = new ArrayList<>(notComputed);
    if (promise == null) {
      missing.add(new NotComputed("/kept", "no earlier night beside this one recommended a step"));
    }
    if (own == null) {
      missing.add(
          new NotComputed(
              "/usual", "fewer than three earlier nights of half an hour stand beside"));
    }
    return new NightResult(
        schema, version, inputs, night, runs, polarAxis, seeing, exposures, replay, planning,
        findings, verdict, need, ladder, steps, promised, promise, own, missing, methods, faults);
  }

  /** Name and major version of this document's layout. */
  public static final String SCHEMA = "roundstar.night/1";
}
