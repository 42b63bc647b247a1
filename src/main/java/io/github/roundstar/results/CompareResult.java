package io.github.roundstar.results;

import java.util.List;

/**
 * Two sets of nights compared: the JSON document, key for key and in this order.
 *
 * @param schema {@link #SCHEMA}
 * @param version version of the tool
 * @param before nights before
 * @param after nights after
 * @param summary what came of it, in a sentence or a few
 * @param air whether better or worse guiding came from the air; null when that cannot be told
 * @param need whether the nights after meet the need; null in results of earlier versions
 * @param next how many nights more would tell what is open; null when nothing is open
 * @param promise whether what the steps of the last night before promised was kept on the nights
 *     after; null where it had none, and in results of earlier versions
 * @param figures figure by figure
 * @param notCompared figures that could not be compared
 * @param noticed what differs between the nights, or was wrong with them, and what was done
 * @param notDrawn charts that are left out
 * @param methods how differences and intervals were made
 * @param faults nights, or parts, that are missing by a fault of the tool itself
 */
public record CompareResult(
    String schema,
    String version,
    List<ComparedNight> before,
    List<ComparedNight> after,
    String summary,
    String air,
    String need,
    String next,
    PromiseKept promise,
    List<ComparedFigure> figures,
    List<NotComputed> notCompared,
    List<String> noticed,
    List<NotComputed> notDrawn,
    List<Method> methods,
    List<Fault> faults) {
  /** Copies the lists. */
  public CompareResult {
    before = List.copyOf(before);
    after = List.copyOf(after);
    figures = List.copyOf(figures);
    notCompared = List.copyOf(notCompared);
    noticed = List.copyOf(noticed);
    notDrawn = List.copyOf(notDrawn);
    methods = List.copyOf(methods);
    faults = faults == null ? List.of() : List.copyOf(faults);
  }

  /** The same with what a fault of the tool took. */
  public CompareResult withFaults(List<Fault> met) {
    return new CompareResult(
        schema,
        version,
        before,
        after,
        summary,
        air,
        need,
        next,
        promise,
        figures,
        notCompared,
        noticed,
        notDrawn,
        methods,
        met);
  }

  /** Name and major version of this document's layout. */
  public static final String SCHEMA = "roundstar.compare/1";
}
