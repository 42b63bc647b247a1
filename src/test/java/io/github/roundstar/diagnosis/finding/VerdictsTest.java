package io.github.roundstar.diagnosis.finding;

import static io.github.roundstar.diagnosis.finding.MadeUpNight.about;
import static io.github.roundstar.diagnosis.finding.MadeUpNight.sound;
import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.results.Decision;
import io.github.roundstar.results.Level;
import io.github.roundstar.results.Verdict;
import org.junit.jupiter.api.Test;

/** One decision, which a newcomer understands; tools come last, and doubt is said. */
class VerdictsTest {
  private static Verdict of(MadeUpNight night) {
    return night.diagnosis().verdict();
  }

  @Test
  void airMaySetTheLimit() {
    Verdict verdict =
        of(sound().noise(Axis.RA, 0.35, 0.01).noise(Axis.DEC, 0.35, 0.01).equipment(""));

    assertThat(verdict.decision()).isEqualTo(Decision.LEAVE_ALONE);
    assertThat(verdict.summary())
        .isEqualTo("Nothing to adjust: the air set the limit, at 0.57 arcsec RMS.");
    assertThat(verdict.sky().level()).isEqualTo(Level.WATCH);
    assertThat(verdict.mount().level()).isEqualTo(Level.FINE);
  }

  /** One and the same page must not ask to leave the mount alone and to mend it. */
  @Test
  void windIsTheSkysAndKnocksAreTheMounts() {
    Verdict wind = of(sound().events("gust", 40, 3.0).part(Axis.RA, "jolts", 0.8));
    Verdict knocks = of(sound().events("knock", 40, 3.0).part(Axis.RA, "jolts", 0.8));

    assertThat(wind.decision()).isEqualTo(Decision.LEAVE_ALONE);
    assertThat(wind.mount().level()).isEqualTo(Level.FINE);
    assertThat(wind.sky().level()).isEqualTo(Level.FIX_FIRST);
    assertThat(wind.sky().text()).startsWith("Wind jolted the star 40 times");
    assertThat(knocks.decision()).isEqualTo(Decision.REBALANCE);
    assertThat(knocks.mount().level()).isEqualTo(Level.FIX_FIRST);
    assertThat(knocks.sky().level()).isEqualTo(Level.FINE);
  }

  @Test
  void shareThatIsNearlyNoneIsSaidInWords() {
    assertThat(Wording.shareOf(new Estimate(0.004, 0, 0.02), "it"))
        .isEqualTo("next to nothing of it, at most 2 %");
    assertThat(Wording.shareOf(new Estimate(0.001, 0, 0.003), "it"))
        .isEqualTo("less than half a percent of it");
    assertThat(Wording.shareOf(new Estimate(0.43, 0.38, 0.47), "it"))
        .isEqualTo("43 % (38 .. 47) of it");
  }

  @Test
  void shortLogAsksForMinutes() {
    Verdict verdict = of(sound().seconds(600).settling(1, 10.0, 10.0, 0.003));

    assertThat(verdict.decision()).isEqualTo(Decision.CANNOT_TELL);
    assertThat(verdict.summary())
        .isEqualTo(
            "This log cannot tell; record 14 minutes more of guiding on one star, with pulses"
                + " logged.");
  }

  @Test
  void missingBudgetIsSaidToBeMissing() {
    Verdict verdict = of(sound().withoutBudget("no loop").worm(6, 0.1).rmsTimes(3));

    assertThat(verdict.decision()).isEqualTo(Decision.CANNOT_TELL);
    assertThat(verdict.summary()).contains("cannot tell about", "periodic error");
    assertThat(verdict.mount().text()).contains("cannot tell about", "backlash in Dec");
  }

  /** By hand: 1 of 1.32 arcsec^2, give or take 0.16. */
  @Test
  void wanderAndDriftWithoutACauseAreOwnedUpTo() {
    Verdict wander = of(sound().part(Axis.DEC, "wander", 1));
    Verdict drift = of(sound().part(Axis.DEC, "drift-lag", 1));

    assertThat(wander.decision()).isEqualTo(Decision.CANNOT_TELL);
    assertThat(wander.summary()).contains("76 % (64 .. 88) of the trailing is wander", "an hour");
    assertThat(drift.decision()).isEqualTo(Decision.CANNOT_TELL);
    assertThat(drift.summary()).contains("drift that no known cause explains", "second star");
    assertThat(of(sound().part(Axis.DEC, "wander", 0.02)).decision())
        .isEqualTo(Decision.LEAVE_ALONE);
  }

  @Test
  void wormBeyondTheLimitIsWorkWithItsGain() {
    Verdict verdict = of(sound().worm(6, 0.1).part(Axis.RA, "periodic:worm", 1));

    assertThat(verdict.decision()).isEqualTo(Decision.ADJUST_MOUNT);
    assertThat(verdict.summary())
        .isEqualTo(
            "The mount needs work: the worm's swing of 12.0 arcsec every 7 min 59 s gets"
                + " through guiding; without it the star's RMS would fall from 1.15 to 0.57 arcsec RMS at best, against"
                + " your limit of 0.60 arcsec RMS in either axis.");
  }

  @Test
  void gearsAreLeftAloneWhileStarsAreRound() {
    String wide = "[limits]\nrms_arcsec = 2\n";
    Verdict verdict = of(sound().worm(6, 0.1).part(Axis.RA, "periodic:worm", 1).equipment(wide));

    assertThat(verdict.decision()).isEqualTo(Decision.LEAVE_ALONE);
    assertThat(verdict.summary()).contains("round within your limit of 2.00 arcsec RMS");
  }

  @Test
  void lostExposuresOutweighTheLimit() {
    Verdict verdict =
        of(
            sound()
                .worm(6, 0.1)
                .part(Axis.RA, "periodic:worm", 1)
                .exposures(6, 4, "periodic-error")
                .equipment("[limits]\nrms_arcsec = 2\n"));

    assertThat(verdict.decision()).isEqualTo(Decision.ADJUST_MOUNT);
    assertThat(verdict.summary()).contains("about 10 of 10 exposures would be round, not 6");
  }

  @Test
  void settingComesBeforeTools() {
    Verdict verdict =
        of(sound().worm(6, 0.1).part(Axis.RA, "periodic:worm", 1).gain(Axis.RA, 0.15, 0.02, 0.7));

    assertThat(verdict.decision()).isEqualTo(Decision.CHANGE_SETTINGS);
    assertThat(verdict.settings().level()).isEqualTo(Level.FIX_FIRST);
  }

  @Test
  void axisIsTurnedBeforeGears() {
    Verdict verdict =
        of(sound().axis(about(20, 1), 0.1, "two-pointings").part(Axis.DEC, "drift-lag", 0.8));

    assertThat(verdict.decision()).isEqualTo(Decision.ADJUST_POLAR_AXIS);
    assertThat(verdict.summary()).startsWith("Align the polar axis, not the gears:");
  }

  @Test
  void nightWithoutFramesCannotBeJudged() {
    assertThat(of(sound().frames(0, 0)).decision()).isEqualTo(Decision.CANNOT_TELL);
  }
}
