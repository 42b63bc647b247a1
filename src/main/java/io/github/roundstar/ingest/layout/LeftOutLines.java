package io.github.roundstar.ingest.layout;

import java.util.Optional;
import java.util.stream.Stream;

/** Follows which lines belong to a block that the layout leaves out. */
final class LeftOutLines {
  private final Layout layout;
  private Optional<RunMarks.Block> open = Optional.empty();

  LeftOutLines(Layout layout) {
    this.layout = layout;
  }

  /** Whether the next line of the log is left out. */
  boolean holds(String line) {
    if (open.isPresent() && open.get().to().isEmpty() && isOfOtherKind(line)) {
      open = Optional.empty(); // and the line is a line like others
    }
    if (open.isEmpty()) {
      open =
          layout.runs().leftOut().stream()
              .filter(block -> block.from().find(line).isPresent())
              .findFirst();
      return open.isPresent();
    }
    if (open.get().to().flatMap(to -> to.find(line)).isPresent()) {
      open = Optional.empty();
    }
    return true;
  }

  private boolean isOfOtherKind(String line) {
    return line.isBlank()
        || Stream.of(layout.text().remark(), layout.text().names(), layout.runs().begins())
            .anyMatch(pattern -> pattern.flatMap(p -> p.find(line)).isPresent());
  }
}
