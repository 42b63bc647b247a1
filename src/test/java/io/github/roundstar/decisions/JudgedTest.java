package io.github.roundstar.decisions;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.decisions.Judged.Grade;
import io.github.roundstar.decisions.TrueLadder.Count;
import io.github.roundstar.worlds.Kind;
import java.io.IOException;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Told ladders made by hand against nights whose truth is played. */
@Tag("identity")
class JudgedTest {
  private static final TrueLadder SOUND = new TrueLadder(Kind.SOUND.night(3));
  private static final TrueLadder WORM = new TrueLadder(Kind.WORM_GAIN_LOW.night(2));

  private static ToldLadder told(String rung, String cures) throws IOException {
    return ToldLadder.parse(
        String.format(
            "{\"ladder\": [{\"rung\": \"%s\", \"offered\": true, \"cures\": [%s], \"units\": 2,"
                + " \"round\": {\"value\": 1, \"low\": 0, \"high\": 2}, \"meetsNeed\": 1}],"
                + " \"verdict\": {\"rung\": \"%s\"}}",
            rung, cures, rung));
  }

  private static String gain(double to) {
    return "{\"cure\": \"ra-gain\", \"numbers\": {\"fromGain\": 0.25, \"toGain\": " + to + "}}";
  }

  private static Grade grade(TrueLadder truth, String rung, String cures) throws IOException {
    return Judged.of(told(rung, cures), truth).grade();
  }

  @Test
  void soundNightNeedsNothing() throws IOException {
    assertThat(SOUND.cheapest()).isEqualTo(Rung.AS_IT_WAS);
    assertThat(grade(SOUND, "as-it-was", "")).isEqualTo(Grade.RIGHT);
    assertThat(grade(SOUND, "settings", gain(0.5))).isEqualTo(Grade.NEIGHBOUR);
    assertThat(grade(SOUND, "mechanics", "{\"cure\": \"play\", \"numbers\": {}}"))
        .isEqualTo(Grade.TOO_DEAR);
    assertThat(grade(SOUND, "air-limit", "")).isEqualTo(Grade.TOO_DEAR);
    assertThat(Judged.of(ToldLadder.parse("{}"), SOUND).grade()).isEqualTo(Grade.CANNOT_TELL);
  }

  @Test
  void weakCorrectionsNeedAGainThatReallyDoes() throws IOException {
    assertThat(WORM.of(Rung.AS_IT_WAS).meets()).isFalse();
    assertThat(WORM.cheapest()).isEqualTo(Rung.SETTINGS);
    assertThat(grade(WORM, "as-it-was", "")).isNotEqualTo(Grade.RIGHT);
    assertThat(Judged.of(told("settings", gain(0.26)), WORM).named().orElseThrow().meets())
        .isFalse();
    assertThat(grade(WORM, "settings", gain(0.26))).isNotEqualTo(Grade.RIGHT);
    assertThat(grade(WORM, "mechanics", "{\"cure\": \"gears\", \"numbers\": {}}"))
        .isNotEqualTo(Grade.RIGHT);
  }

  @Test
  void nineTenthsOfTheImagesAreNeeded() {
    assertThat(new Count(18, 20).meets()).isTrue();
    assertThat(new Count(17, 20).meets()).isFalse();
    assertThat(new Count(17, 20).close()).isTrue();
    assertThat(new Count(18, 20).close()).isTrue();
    assertThat(new Count(19, 20).close()).isFalse();
    assertThat(new Count(16, 20).close()).isFalse();
  }

  @Test
  void windowsOfTheToolsOwnAreComparedByShares() throws IOException {
    ToldLadder.Step step = told("as-it-was", "").step(Rung.AS_IT_WAS).orElseThrow();
    assertThat(DecisionNight.held(step, new Count(2, 2))).contains(true);
    ToldLadder.Step sure =
        ToldLadder.parse(
                "{\"ladder\": [{\"rung\": \"as-it-was\", \"offered\": true, \"units\": 10,"
                    + " \"round\": {\"value\": 9, \"low\": 8, \"high\": 10}}]}")
            .step(Rung.AS_IT_WAS)
            .orElseThrow();
    assertThat(DecisionNight.held(sure, new Count(15, 20))).contains(true);
    assertThat(DecisionNight.held(sure, new Count(13, 20))).contains(false);
    assertThat(DecisionNight.held(sure, new Count(7, 10))).contains(false);
    assertThat(DecisionNight.held(sure, new Count(8, 10))).contains(true);
  }
}
