package io.github.roundstar.ingest.layout;

import io.github.roundstar.ingest.layout.Decision.Sureness;
import java.util.List;

/**
 * A layout worked out from a log's text.
 *
 * @param layout the layout as far as it is known
 * @param decisions what was decided, and why
 * @param firstRows fields of the first rows
 * @param samples each column of the log with its first values, for people
 */
public record Inference(
    Layout layout, List<Decision> decisions, List<List<String>> firstRows, List<String> samples) {
  /** Copies. */
  public Inference {
    decisions = List.copyOf(decisions);
    firstRows = List.copyOf(firstRows);
    samples = List.copyOf(samples);
  }

  /** Whether nothing that a figure depends on is open. */
  public boolean isCertain() {
    return open().isEmpty();
  }

  /** What must be answered before the log can be analysed. */
  public List<Decision> open() {
    return decisions.stream().filter(decision -> decision.sure() == Sureness.OPEN).toList();
  }

  /** What is not known, though no figure comes out wrong by it. */
  public List<Decision> noted() {
    return decisions.stream().filter(decision -> decision.sure() == Sureness.NOTED).toList();
  }
}
