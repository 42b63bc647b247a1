package io.github.roundstar.report;

import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.Fault;
import io.github.roundstar.results.Faults;
import java.util.List;
import java.util.Optional;
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
    List<String> named =
        all.stream()
            .limit(MOST_NAMED)
            .map(fault -> fault.part() + " (" + fault.what() + ")")
            .toList();
    int more = all.size() - named.size();
    return Optional.of(
        "Missing by a fault of roundstar itself: "
            + String.join("; ", named)
            + (more == 0
                ? ""
                : "; and " + Numbers.count(more) + " more, all named in the JSON file")
            + ". Everything else on this page stands. To report it, run the same command with"
            + " --verbose and send what it prints.");
  }
}
