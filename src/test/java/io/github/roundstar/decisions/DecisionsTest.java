package io.github.roundstar.decisions;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.decisions.Judged.Grade;
import io.github.roundstar.worlds.Kind;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * A few nights through the whole tool: {@link DecisionTable} and {@link SentenceTable} play many.
 */
@Tag("identity")
@Tag("slow")
class DecisionsTest {
  @Test
  void nothingIsRecommendedOnASoundNight() throws Exception {
    DecisionNight night = DecisionNight.of(Kind.SOUND, 3);
    assertThat(night.judged().decided()).as(night.line()).contains(Rung.AS_IT_WAS);
    assertThat(night.judged().grade()).as(night.line()).isEqualTo(Grade.RIGHT);
    assertThat(night.asItWasHeld()).as(night.line()).contains(true);
  }

  @Test
  void weakCorrectionsAreRaisedAndNotTurnedBack() throws Exception {
    DecisionNight night = DecisionNight.of(Kind.WORM_GAIN_LOW, 5);
    assertThat(night.judged().truth()).as(night.line()).isEqualTo(Rung.SETTINGS);
    assertThat(night.judged().decided()).as(night.line()).contains(Rung.SETTINGS);
    assertThat(night.judged().grade()).as(night.line()).isIn(Grade.RIGHT, Grade.NEIGHBOUR);
    assertThat(night.back()).as(night.line()).contains(false);
  }

  /** The worm is too quick for the guide exposures, and would be for any gain at this length. */
  @Test
  void shorterGuideExposuresAreToldWhereTheyWin() throws Exception {
    DecisionNight night = DecisionNight.of(Kind.WORM_GAIN_MIDDLING, 6002);
    assertThat(night.judged().truth()).as(night.line()).isEqualTo(Rung.SETTINGS);
    assertThat(night.judged().grade()).as(night.line()).isEqualTo(Grade.RIGHT);
    assertThat(night.line()).contains("guide-exposure");
    assertThat(night.namedHeld()).as(night.line()).contains(true);
  }

  /** Nobody told where the guide star was, nor did the images tell how the field turned. */
  @Test
  void fieldTurnsWhereTheGuideStarsPlaceWasNotTold() throws Exception {
    DecisionNight night = DecisionNight.of(Kind.AXIS_FAR_OFF, 6106);
    assertThat(night.judged().decided()).as(night.line()).contains(Rung.ALIGNMENT_BALANCE);
    assertThat(night.asItWasHeld()).as(night.line()).contains(true);
  }

  /** Shapes were measured over whole images only; a part of one is judged by its own motion. */
  @Test
  void shorterImagesOfAMeasuredNightAreRounder() throws Exception {
    DecisionNight night = DecisionNight.of(Kind.WORM_GAIN_RIGHT, 5004);
    assertThat(night.judged().truth()).as(night.line()).isEqualTo(Rung.SHORTER_EXPOSURES);
    assertThat(night.line()).contains("true shorter-exposures 84/84 told 84.0 (84.0..84.0)/84");
    // Quicker guiding leaves one image of 28 too many.
    assertThat(night.judged().grade()).as(night.line()).isIn(Grade.RIGHT, Grade.NEIGHBOUR);
  }

  @Test
  void noSentenceContradictsTheLadder() throws Exception {
    assertThat(SentenceTable.read(5, 2)).isEmpty();
  }
}
