package io.github.roundstar.ingest;

import io.github.roundstar.model.GuideRun;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;

/** Drops from the runs of one file what earlier files have. */
final class DuplicateRows {
  private final List<PlacedRun> earlier;
  private PlacedRun holder;
  private int droppedUsed;
  private int homelessDuplicate;
  private int homelessUnusable;

  DuplicateRows(List<PlacedRun> earlier) {
    this.earlier = earlier;
  }

  List<GuideRun> drop(List<GuideRun> runs) {
    List<GuideRun> rest = new ArrayList<>();
    for (GuideRun run : runs) {
      Optional<GuideRun> left = drop(run);
      droppedUsed += run.counts().used() - left.map(some -> some.counts().used()).orElse(0);
      if (left.isEmpty()) {
        homelessDuplicate += run.counts().rows() - run.counts().unusable();
        homelessUnusable += run.counts().unusable();
      } else {
        rest.add(RunRows.withMore(left.get(), homelessDuplicate, homelessUnusable));
        homelessDuplicate = 0;
        homelessUnusable = 0;
      }
    }
    if (!rest.isEmpty() && homelessDuplicate > 0) {
      int last = rest.size() - 1;
      rest.set(last, RunRows.withMore(rest.get(last), homelessDuplicate, homelessUnusable));
    }
    return rest;
  }

  private Optional<GuideRun> drop(GuideRun run) {
    RunSpan span = RunSpan.of(run);
    BitSet dropped = new BitSet();
    for (PlacedRun other : earlier) {
      if (other.span().overlaps(span)) {
        BitSet same = RunRows.alsoIn(other.run(), run);
        if (!same.isEmpty() && holder == null) {
          holder = other;
        }
        dropped.or(same);
      }
    }
    return dropped.isEmpty() ? Optional.of(run) : RunRows.without(run, dropped);
  }

  /** Rows that counted as used and no longer do. */
  int droppedUsed() {
    return droppedUsed;
  }

  /** Gives the counts of a file of which nothing is left to the run that has its frames. */
  PlacedRun giveCountsToHolder() {
    holder.takeOver(homelessDuplicate, homelessUnusable);
    return holder;
  }
}
