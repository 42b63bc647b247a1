package io.github.roundstar.diagnosis.finding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.offset;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.results.Budget;
import io.github.roundstar.results.BudgetPart;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Shares of the trailing mean square, checked by hand. */
class TrailingBudgetTest {
  /** Noise 0.2 trails whole, of a drift's 1.0 only 0.3 does: shares 0.4 and 0.6 of 0.5. */
  private static TrailingBudget budget() {
    return TrailingBudget.of(
        new Budget(
            List.of(
                new BudgetPart("steady-offset", 4, 0),
                new BudgetPart("noise", 0.2, 0.4),
                new BudgetPart("drift-lag", 1, 0.6)),
            List.of(new BudgetPart("noise", 0.5, 1)),
            0.5,
            0.5));
  }

  @Test
  void partsAreSharesOfTheTrailingMeanSquare() {
    assertThat(budget().trailingArcsec2(Axis.RA)).isCloseTo(0.5, offset(1e-12));
    assertThat(budget().trailingArcsec2()).isCloseTo(1, offset(1e-12));
    assertThat(budget().part(Axis.RA, "drift-lag"::equals))
        .isEqualTo(new TrailingBudget.Part(0.3, 1));
  }

  @Test
  void figureBehindAPartWidensItsShare() {
    TrailingBudget.Part drift = budget().part("drift-lag"::equals);

    Estimate exact = budget().shareOfSquare(drift, new Estimate(2, 2, 2));
    Estimate rough = budget().shareOfSquare(drift, new Estimate(2, 1, 3));

    assertThat(exact.value()).isCloseTo(0.3, offset(1e-12));
    assertThat(exact.lo95()).isCloseTo(0.3 - 0.055, offset(1e-12));
    assertThat(rough.lo95()).isCloseTo(0.3 - Math.hypot(0.3 * 0.75, 0.055), offset(1e-12));
    assertThat(rough.hi95()).isCloseTo(0.3 + Math.hypot(0.3 * 1.25, 0.055), offset(1e-12));
  }

  @Test
  void stillStarHasNoShares() {
    TrailingBudget nothing = TrailingBudget.of(new Budget(List.of(), List.of(), 0.0, 0.0));

    assertThat(nothing.trailingArcsec2()).isZero();
    assertThat(nothing.share(TrailingBudget.Part.NOTHING, 1, 1)).isEqualTo(new Estimate(0, 0, 0));
  }
}
