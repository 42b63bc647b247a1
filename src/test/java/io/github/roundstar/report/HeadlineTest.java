package io.github.roundstar.report;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.results.AxisDrift;
import io.github.roundstar.results.Detectable;
import io.github.roundstar.results.Periodic;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The headline says only what the intervals support. */
class HeadlineTest {
  @Test
  void namesStarAndWorm() {
    assertThat(Headline.of(SampleNight.twoHours().result()).replace('\u00a0', ' '))
        .isEqualTo(
            "Guiding held the star to 0.63 arcsec RMS; the worm swings the mount by 11.8 arcsec"
                + " every 7 min 59 s.");
  }

  @Test
  void driftThatMayBeNothingIsNotSaid() {
    AxisDrift drift =
        new AxisDrift(Estimate.symmetric(-0.11, 0.16), Estimate.symmetric(-0.4, 0.05));

    assertThat(Headline.drift(drift)).isEqualTo("the mount drifts south by 0.40 arcsec a minute");
    assertThat(Headline.drift(new AxisDrift(drift.ra(), null))).isNull();
  }

  @Test
  void swingWithoutPeriodIsNotSaid() {
    Estimate swing = Estimate.symmetric(3, 1);

    assertThat(Headline.swing(new Periodic(swing, null, 2.0, null, List.of(), null))).isNull();
    assertThat(
            Headline.swing(
                new Periodic(
                    Estimate.symmetric(1, 1.2),
                    null,
                    2.0,
                    null,
                    SampleNight.components("unlabelled"),
                    null)))
        .isNull();
  }

  @Test
  void searchInVainSaysWhatItWouldHaveTaken() {
    Periodic none = new Periodic(null, null, null, null, List.of(), new Detectable(478.7, 0.117));

    assertThat(PeriodicWords.searchedInVain(none)).isTrue();
    assertThat(PeriodicWords.needed(none.detectable()))
        .contains("0.23 arcsec peak to peak", "7\u00a0min\u00a059\u00a0s (478.7\u00a0s)");
  }

  @Test
  void nightWithoutFramesSaysSo() {
    assertThat(Headline.of(SampleNight.sparseResult())).startsWith("No frame of this night");
  }
}
