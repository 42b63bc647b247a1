package io.github.roundstar.report;

import io.github.roundstar.report.Page.Block;
import io.github.roundstar.report.Page.Section;
import io.github.roundstar.results.Faults;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/** Sections of a page one by one; a fault of the tool in one leaves a sentence in its place. */
final class SectionGuard {
  /** Stands in the place of what a fault took. */
  static final Block LOST = Block.text("This part is missing by a fault of roundstar itself.");

  private final Faults faults;
  private final List<Section> sections = new ArrayList<>();

  SectionGuard(Faults faults) {
    this.faults = faults;
  }

  void add(String id, Supplier<Section> section) {
    optional(id, () -> Optional.of(section.get()));
  }

  void optional(String id, Supplier<Optional<Section>> section) {
    faults
        .withinOrElse("section " + id, section, () -> Optional.of(lost(id)))
        .ifPresent(sections::add);
  }

  private static Section lost(String id) {
    return new Section(id, "Missing: " + id.replace('-', ' '), List.of(LOST));
  }

  /** All so far, in their order. */
  List<Section> sections() {
    return sections;
  }
}
