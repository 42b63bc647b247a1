package io.github.roundstar.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.results.Finding;
import io.github.roundstar.results.Level;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A few nights of the benchmark {@link DecisionBenchmark}: the played fault leads. */
@Tag("identity")
class PlayedFaultsTest {
  @ParameterizedTest
  @EnumSource(
      value = Fault.class,
      names = {
        "PULSE_STRENGTH",
        "PIXEL_SCALE",
        "SLOW_SETTLING",
        "LOG_TOO_SHORT",
        "TRACKING_RATE",
        "DIFFERENTIAL_FLEXURE",
        "ATMOSPHERIC_DISPERSION"
      })
  void playedFaultLeads(Fault fault) throws Exception {
    List<Finding> findings = DecisionBenchmark.findings(1, fault);

    assertThat(DecisionBenchmark.leading(fault, findings)).isEqualTo(fault.code());
  }

  /** On this night a linear step towards the noise's memory led to a period below zero. */
  @Test
  void stuckStarLeadsWhereTheFitIsFarFromLinear() throws Exception {
    List<Finding> findings = DecisionBenchmark.findings(2, Fault.STUCK_STAR);

    assertThat(DecisionBenchmark.leading(Fault.STUCK_STAR, findings)).isEqualTo("stuck-star");
  }

  @Test
  void soundNightHasNothingToFixFirst() throws Exception {
    assertThat(DecisionBenchmark.findings(1, Fault.HEALTHY))
        .noneMatch(finding -> finding.level() == Level.FIX_FIRST);
  }
}
