package io.github.roundstar.report;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.results.BudgetPart;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The heading names the cause of most of the trailing. */
class BudgetSectionTest {
  private static BudgetPart part(String cause, double share) {
    return new BudgetPart(cause, share, share);
  }

  @Test
  void periodsOfOneGearTrainCountTogether() {
    assertThat(
            BudgetSection.largest(
                List.of(
                    part("noise", 0.36),
                    part("periodic:worm", 0.25),
                    part("periodic:worm/2", 0.23),
                    part("periodic:worm/3", 0.17))))
        .isEqualTo("periodic error");
  }

  @Test
  void singleCauseKeepsItsName() {
    assertThat(BudgetSection.largest(List.of(part("noise", 0.6), part("drift-lag", 0.4))))
        .isEqualTo("noise");
    assertThat(BudgetSection.largest(null)).isEmpty();
  }
}
