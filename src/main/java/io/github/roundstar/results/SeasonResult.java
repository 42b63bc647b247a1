package io.github.roundstar.results;

import java.util.List;

/**
 * A season of nights: the JSON document, key for key and in this order.
 *
 * @param schema {@link #SCHEMA}
 * @param version version of the tool
 * @param settingsSha256 hash of what else the results depend on: equipment and layout file, clock
 *     offset
 * @param nights the nights in order of their names
 * @param summary what came of it, in a sentence
 * @param trends figures along the season
 * @param promises night by night, whether its steps brought what they promised on the next one;
 *     empty in results of earlier versions
 * @param changes what the work on the mount did
 * @param unusable inputs that could not be used
 * @param noticed what the reader should know
 * @param methods how figures and intervals were made
 * @param faults nights, or parts, that are missing by a fault of the tool itself
 */
public record SeasonResult(
    String schema,
    String version,
    String settingsSha256,
    List<SeasonNight> nights,
    String summary,
    List<Trend> trends,
    List<PromiseKept> promises,
    List<SeasonChange> changes,
    List<String> unusable,
    List<String> noticed,
    List<Method> methods,
    List<Fault> faults) {
  /** Copies the lists. */
  public SeasonResult {
    nights = List.copyOf(nights);
    trends = List.copyOf(trends);
    promises = promises == null ? List.of() : List.copyOf(promises);
    changes = List.copyOf(changes);
    unusable = List.copyOf(unusable);
    noticed = List.copyOf(noticed);
    methods = List.copyOf(methods);
    faults = faults == null ? List.of() : List.copyOf(faults);
  }

  /** The same with what a fault of the tool took. */
  public SeasonResult withFaults(List<Fault> met) {
    return new SeasonResult(
        schema,
        version,
        settingsSha256,
        nights,
        summary,
        trends,
        promises,
        changes,
        unusable,
        noticed,
        methods,
        met);
  }

  /** Name and major version of this document's layout. */
  public static final String SCHEMA = "roundstar.season/1";
}
