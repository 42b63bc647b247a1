package io.github.roundstar.report;

import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.Fault;
import io.github.roundstar.results.Faults;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;

/** What a page says of parts that a fault of the tool took, and how to report it. */
final class FaultWords {
  private static final int MOST_NAMED = 3;

  private FaultWords() {}

  /**
   * One line; nothing where there was no fault.
   *
   * @param told those that the result holds
   * @param met those met since
   */
  static Optional<String> of(List<Fault> told, Faults met) {
    List<Fault> all = Stream.concat(told.stream(), met.told().stream()).distinct().toList();
    if (all.isEmpty()) {
      return Optional.empty();
    }
    List<String> named = all.stream().map(fault -> name(fault.part())).distinct().toList();
    int more = Math.max(0, named.size() - MOST_NAMED);
    return Optional.of(
        "Missing by a fault of roundstar itself: "
            + String.join("; ", named.subList(0, named.size() - more))
            + (more == 0
                ? ""
                : "; and " + Numbers.count(more) + " more, all named in the JSON file")
            + ". Everything else on this page stands. To report it, run the same command with"
            + " --verbose and send what it prints.");
  }

  /** {@code night 2026-10-03: /runs/0/periodic} becomes words, the night before them. */
  private static String name(String part) {
    int colon = part.indexOf(": ");
    if (colon >= 0) {
      return part.substring(0, colon + 2) + name(part.substring(colon + 2));
    }
    if (!part.startsWith("/")) {
      return part;
    }
    int space = (part + " ").indexOf(' ');
    String pointer = part.substring(0, space);
    String words = part.substring(space).strip();
    String figure = words.isEmpty() ? FigureNames.of(pointer) : words;
    OptionalInt run = FigureNames.run(words.isEmpty() ? pointer : pointer + "/any");
    return figure + (run.isPresent() ? " of run " + run.getAsInt() : "");
  }
}
