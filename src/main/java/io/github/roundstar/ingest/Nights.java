package io.github.roundstar.ingest;

import io.github.roundstar.model.Night;
import java.util.List;

/**
 * Logs sorted into nights.
 *
 * @param nights nights in order of their names, undated ones last
 * @param warnings what the user should know, each {@code file: what: how to mend it}
 */
public record Nights(List<Night> nights, List<String> warnings) {
  /** Copies. */
  public Nights {
    nights = List.copyOf(nights);
    warnings = List.copyOf(warnings);
  }
}
