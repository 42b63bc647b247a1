package io.github.roundstar.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.model.GuideLog;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.model.RowCounts;

/** What must hold of every log that was read. */
final class Rows {
  private Rows() {}

  /** Every row is in one of the counts. */
  static void areAccountedFor(GuideLog log) {
    RowCounts total =
        log.runs().stream().map(GuideRun::counts).reduce(RowCounts.NONE, RowCounts::plus);
    assertThat(total.rows()).isEqualTo(log.source().rows());
    assertThat(total.unusable()).isEqualTo(log.source().unusable());
  }
}
