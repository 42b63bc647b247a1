package io.github.roundstar.report;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.report.Page.Cell;
import io.github.roundstar.report.Page.Table;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.RunResult;
import java.util.List;
import org.junit.jupiter.api.Test;

class PierSidesTest {
  private static final List<RunResult> RUNS = SampleNight.twoHours().result().runs();

  @Test
  void bothSidesStandBesideEachOther() {
    List<RunResult> runs = List.of(RUNS.get(0), RUNS.get(1));

    Table table = PierSides.table(runs).orElseThrow();

    assertThat(table.rows()).hasSize(4);
    assertThat(table.rows().get(2))
        .containsExactly(
            Cell.of("RMS, RA"),
            Cell.of(Double.valueOf(RUNS.get(0).guided().ra().rmsArcsec())),
            Cell.of(Double.valueOf(RUNS.get(1).guided().ra().rmsArcsec())));
  }

  @Test
  void runsOfOneSideCountAsLongAsTheyLast() {
    Table table = PierSides.table(List.of(RUNS.get(0), RUNS.get(1), RUNS.get(1))).orElseThrow();

    assertThat(table.rows().get(0).get(2).text()).isEqualTo(Numbers.plain(0.31));
  }

  @Test
  void oneSideAloneNeedsNoTable() {
    assertThat(PierSides.table(List.of(RUNS.get(0)))).isEmpty();
    assertThat(PierSides.table(SampleNight.sparseResult().runs())).isEmpty();
  }
}
