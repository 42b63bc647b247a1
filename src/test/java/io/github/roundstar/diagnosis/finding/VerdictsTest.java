package io.github.roundstar.diagnosis.finding;

import static io.github.roundstar.diagnosis.finding.MadeUpNight.about;
import static io.github.roundstar.diagnosis.finding.MadeUpNight.sound;
import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.results.Decision;
import io.github.roundstar.results.Level;
import io.github.roundstar.results.Rung;
import io.github.roundstar.results.Step;
import io.github.roundstar.results.Verdict;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * One decision, which a newcomer understands, read off the ladder: the lowest rung that meets the
 * need, and of it no more than it takes. Counts by hand: 23 of 24 exposures have to be round.
 */
class VerdictsTest {
  private static final Map<String, Double> SWING = Map.of("swingArcsec", 12.0);
  private static final Map<String, Double> AXIS =
      Map.of("fromArcmin", 20.0, "toArcmin", 1.0, "azimuthArcmin", -20.0);

  private static Verdict of(MadeUpNight night) {
    return night.diagnosis().verdict();
  }

  private static MadeUpNight wormy() {
    return sound().worm(6, 0.1).part(Axis.RA, "periodic:worm", 1);
  }

  @Test
  void nightThatMeetsTheNeedIsLeftAloneWhateverTheGearsDo() {
    MadeUpNight night =
        wormy()
            .ladder(
                MadeUpLadder.was(23)
                    .gain("ra", 0.4, 0.8, 24)
                    .cure(Rung.MECHANICS, "gears", SWING, 24, 24));

    assertThat(of(night).decision()).isEqualTo(Decision.LEAVE_ALONE);
    assertThat(of(night).rung()).isEqualTo(Rung.AS_IT_WAS);
    assertThat(of(night).summary())
        .isEqualTo("Leave everything as it is: 23 of 24 exposures are round.");
    assertThat(night.diagnosis().steps()).isEmpty();
    assertThat(night.diagnosis().findings())
        .noneMatch(finding -> finding.level().atLeast(Level.WORTH_FIXING));
  }

  @Test
  void settingThatIsEnoughComesBeforeEverythingElse() {
    MadeUpNight night =
        wormy()
            .ladder(
                MadeUpLadder.was(13)
                    .gain("ra", 0.4, 0.8, 24)
                    .cure(Rung.TRAINING, "training", SWING, 24, 24)
                    .cure(Rung.MECHANICS, "gears", SWING, 24, 24));

    assertThat(of(night).decision()).isEqualTo(Decision.CHANGE_SETTINGS);
    assertThat(of(night).settings().level()).isEqualTo(Level.FIX_FIRST);
    assertThat(of(night).mount().level()).isEqualTo(Level.WATCH);
    assertThat(of(night).mount().costs()).isEqualTo(11);
    assertThat(of(night).mount().text()).endsWith("but that is not needed.");
    assertThat(of(night).summary())
        .isEqualTo(
            "Raise the RA gain from 0.40 to 0.80; the mount can stay as it is: 24 of 24 exposures"
                + " round instead of 13.");
    assertThat(night.diagnosis().steps())
        .singleElement()
        .extracting(Step::cure, Step::wins, Step::caution)
        .containsExactly("ra-gain", "wins 11 of 24 exposures", "");
  }

  @Test
  void onlyWhatItTakesIsAskedFor() {
    MadeUpNight night =
        sound()
            .axis(about(20, 1), 0.1, "two-pointings")
            .part(Axis.DEC, "drift-lag", 0.8)
            .ladder(
                MadeUpLadder.was(5)
                    .gain("dec", 0.4, 0.6, 9)
                    .cure(Rung.ALIGNMENT_BALANCE, "polar-axis", AXIS, 24, 24));

    assertThat(of(night).decision()).isEqualTo(Decision.ADJUST_POLAR_AXIS);
    assertThat(of(night).axis().level()).isEqualTo(Level.FIX_FIRST);
    assertThat(night.diagnosis().steps()).extracting(Step::cure).containsExactly("polar-axis");
    assertThat(night.diagnosis().steps().get(0).caution()).contains("adjusters");
  }

  @Test
  void whatIsNotEnoughAloneIsDoneOnTheWayUp() {
    MadeUpNight night =
        wormy()
            .ladder(
                MadeUpLadder.was(5)
                    .gain("ra", 0.4, 0.8, 15)
                    .cure(Rung.MECHANICS, "gears", SWING, 20, 24));

    assertThat(of(night).decision()).isEqualTo(Decision.ADJUST_MOUNT);
    assertThat(of(night).mount().level()).isEqualTo(Level.FIX_FIRST);
    assertThat(of(night).settings().level()).isEqualTo(Level.FIX_FIRST);
    assertThat(night.diagnosis().steps())
        .extracting(Step::cure)
        .containsExactly("ra-gain", "gears");
    assertThat(night.diagnosis().steps().get(1).caution())
        .contains("unplug", "maker's manual", "never force a gear mesh");
  }

  @Test
  void airIsTheAnswerWhereNothingBelowItIsEnough() {
    MadeUpNight night = sound().ladder(MadeUpLadder.was(10).gain("ra", 0.8, 0.5, 14));

    assertThat(of(night).rung()).isEqualTo(Rung.AIR_LIMIT);
    assertThat(of(night).sky().costs()).isEqualTo(10);
    assertThat(of(night).summary())
        .isEqualTo(
            "The air sets the limit, 14 of 24 exposures round at best; on the way there: lower the"
                + " RA gain from 0.80 to 0.50.");
    assertThat(of(sound().ladder(MadeUpLadder.was(10))).decision()).isEqualTo(Decision.LEAVE_ALONE);
  }

  @Test
  void cureThatWinsNoExposureIsNeverAboveWatch() {
    MadeUpNight night =
        wormy()
            .play(about(8, 0.5))
            .part(Axis.DEC, "backlash", 1)
            .ladder(
                MadeUpLadder.was(10)
                    .cure(Rung.MECHANICS, "play", Map.of("fromArcsec", 8.0), 10, 10)
                    .cure(Rung.MECHANICS, "gears", SWING, 24, 24));

    assertThat(night.levelBy(new PeriodicErrorRule())).isEqualTo(Level.FIX_FIRST);
    assertThat(night.levelBy(new DecBacklashRule())).isEqualTo(Level.WATCH);
  }

  @Test
  void sentencesKeepToTwentyFiveWords() {
    List<MadeUpLadder> ladders =
        List.of(
            MadeUpLadder.was(23),
            MadeUpLadder.was(3),
            MadeUpLadder.was(13).gain("ra", 0.4, 0.8, 24),
            MadeUpLadder.was(3).gain("ra", 0.4, 0.8, 12),
            MadeUpLadder.was(5)
                .gain("ra", 0.4, 0.8, 15)
                .cure(Rung.ALIGNMENT_BALANCE, "polar-axis", AXIS, 7, 17)
                .cure(Rung.MECHANICS, "play", Map.of("fromArcsec", 8.0), 9, 24)
                .cure(Rung.MECHANICS, "gears", SWING, 15, 24),
            MadeUpLadder.was(5)
                .cure(
                    Rung.SHORTER_EXPOSURES,
                    "exposure-length",
                    Map.of("fromSeconds", 300.0, "toSeconds", 180.0),
                    24,
                    24),
            MadeUpLadder.was(5).cure(Rung.MECHANICS, "flexure", Map.of(), 24, 24));

    for (MadeUpLadder ladder : ladders) {
      String summary = of(wormy().ladder(ladder)).summary();
      assertThat(summary.split("\\s+").length).as(summary).isLessThanOrEqualTo(25);
      assertThat(summary).endsWith(".");
    }
  }

  @Test
  void turnsOfTheAdjusterAreToldWhereTheyAreKnown() {
    MadeUpNight night =
        sound()
            .equipment("[mount]\narcmin_per_turn_azimuth = 16\n")
            .ladder(MadeUpLadder.was(5).cure(Rung.ALIGNMENT_BALANCE, "polar-axis", AXIS, 24, 24));

    assertThat(night.diagnosis().steps().get(0).text())
        .isEqualTo(
            "Move the raised end of the polar axis: turn it west by 20.0 arcmin (1.25 turns of the"
                + " azimuth adjuster).");
  }

  @Test
  void falseStarGoesBeforeAnyLadder() {
    MadeUpNight night = wormy().events("stuck-star", 1, null).ladder(MadeUpLadder.was(24));

    assertThat(of(night).decision()).isEqualTo(Decision.CHANGE_SETTINGS);
    assertThat(of(night).rung()).isNull();
    assertThat(of(night).summary()).contains("another star");
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
    Verdict verdict =
        of(sound().seconds(600).settling(1, 10.0, 10.0, 0.003).ladder(MadeUpLadder.was(24)));

    assertThat(verdict.decision()).isEqualTo(Decision.CANNOT_TELL);
    assertThat(verdict.summary())
        .isEqualTo(
            "This log cannot tell; record 14 minutes more of guiding on one star, with pulses"
                + " logged.");
  }

  @Test
  void nightThatCannotBePlayedSaysWhy() {
    Verdict verdict = of(sound().because("/ladder", "no stretch is long enough"));

    assertThat(verdict.decision()).isEqualTo(Decision.CANNOT_TELL);
    assertThat(verdict.summary()).isEqualTo("This log cannot tell: no stretch is long enough.");
  }

  @Test
  void nightWithoutFramesCannotBeJudged() {
    assertThat(of(sound().frames(0, 0)).decision()).isEqualTo(Decision.CANNOT_TELL);
  }
}
