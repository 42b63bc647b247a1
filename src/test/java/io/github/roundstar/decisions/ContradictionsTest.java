package io.github.roundstar.decisions;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Every check finds the contradiction that it is for, and none in a night that has none. */
@Tag("identity")
class ContradictionsTest {
  private static final String JSON =
      """
      {"need": {"kind": "elongation", "limit": 1.15, "from": "tool"},
       "ladder": [
        {"rung": "as-it-was", "offered": true, "reason": null, "cures": [], "units": 20, "unitKind": "exposures",
         "round": {"value": 11, "low": 9, "high": 13}, "meetsNeed": 0.01},
        {"rung": "settings", "offered": true, "reason": null,
         "cures": [{"cure": "ra-gain", "numbers": {"fromGain": 0.4, "toGain": 0.8}}], "units": 20, "unitKind": "exposures",
         "round": {"value": 20, "low": 19, "high": 20}, "meetsNeed": 0.98},
        {"rung": "alignment-balance", "offered": false, "reason": "the axis is good", "units": 20},
        {"rung": "shorter-exposures", "offered": false, "reason": "settings do it", "units": 20},
        {"rung": "training", "offered": false, "reason": "no period is known", "units": 20},
        {"rung": "mechanics", "offered": true, "reason": null, "cures": [{"cure": "play", "numbers": {}}],
         "alone": [{"cure": "play", "round": {"value": 11}}], "units": 20, "unitKind": "exposures",
         "round": {"value": 20, "low": 19, "high": 20}, "meetsNeed": 0.98},
        {"rung": "loop-limit", "offered": false, "reason": "no model", "units": 20},
        {"rung": "air-limit", "offered": true, "reason": null, "cures": [], "units": 20, "unitKind": "exposures",
         "round": {"value": 20, "low": 20, "high": 20}, "meetsNeed": 1}],
       "exposures": [%s],
       "findings": [
        {"code": "under-correction", "level": "fix-first", "expectedRoundExposures": 20, "action": ["Raise the gain of RA from 0.40 to 0.80"],
         "caution": ""},
        {"code": "dec-backlash", "level": "watch", "expectedRoundExposures": 11, "action": [], "caution": ""}],
       "verdict": {"decision": "change-settings", "rung": "settings",
        "mount": {"level": "fine", "text": "-"}, "settings": {"level": "fix-first", "text": "-"},
        "summary": "Change a setting."}}
      """;

  private static final String ROUND = "{\"seconds\": 300, \"verdict\": \"round\"}";
  private static final String TRAILED = "{\"seconds\": 300, \"verdict\": \"trailed\"}";

  private static final String PAGE =
      """
      <html><head><title>x</title></head><body><h1>Raise the gain of RA from 0.40 to 0.80 and leave the mount alone.</h1>
      <p>Needed: stars round to 1.15, which is the tool's limit.</p>
      <p>11 of 20 exposures are round. With the setting 20 of 20 exposures would be round, not 11.</p>
      <h2>Do this next</h2><ol><li>Raise the gain of RA from 0.40 to 0.80. That wins back 9 exposures.</li></ol>
      <p>Play in Dec is not needed to be seen to.</p></body></html>
      """;

  private static final List<String> TERMINAL =
      List.of("  verdict  Change a setting.", "  levels   mount: fine, settings: fix first");

  private static final String ROW = "<tr><td>change settings</td></tr>";

  /** A night, bent: what of its JSON or page is replaced by what. */
  private record Bent(String json, String page, List<String> terminal, String row) {
    static Bent not() {
      List<String> exposures = new ArrayList<>();
      for (int i = 0; i < 20; i++) {
        exposures.add(i < 11 ? ROUND : TRAILED);
      }
      return new Bent(String.format(JSON, String.join(",", exposures)), PAGE, TERMINAL, ROW);
    }

    Bent json(String old, String by) {
      assertThat(json).contains(old);
      return new Bent(json.replace(old, by), page, terminal, row);
    }

    Bent page(String old, String by) {
      assertThat(page).contains(old);
      return new Bent(json, page.replace(old, by), terminal, row);
    }

    Bent says(String sentence) {
      return page("<p>Play", "<p>" + sentence + "</p><p>Play");
    }

    Bent decided(String rung, String word) {
      return json(
              "\"rung\": \"settings\",\n  \"mount\"", "\"rung\": \"" + rung + "\",\n  \"mount\"")
          .json("\"change-settings\"", "\"" + word + "\"");
    }

    Bent asItWas() {
      return decided("as-it-was", "leave-alone");
    }

    NightTexts texts() throws IOException {
      return new NightTexts(ToldLadder.parse(json), page, terminal, row);
    }
  }

  private static Map<Contradictions, Bent> bent() {
    Bent night = Bent.not();
    Map<Contradictions, Bent> all = new EnumMap<>(Contradictions.class);
    all.put(Contradictions.NO_LADDER, night.json("\"ladder\"", "\"steps\""));
    all.put(
        Contradictions.LADDER_OUT_OF_ORDER_OR_INCOMPLETE,
        night.json("\"rung\": \"training\"", "\"rung\": \"exercise\""));
    all.put(
        Contradictions.RUNG_NOT_OFFERED_WITHOUT_A_REASON,
        night.json("\"no period is known\"", "null"));
    all.put(
        Contradictions.COUNT_OUTSIDE_ITS_INTERVAL_OR_ITS_UNITS,
        night.json("{\"value\": 11, \"low\"", "{\"value\": 14, \"low\""));
    all.put(
        Contradictions.CHANCE_OUTSIDE_NOUGHT_AND_ONE,
        night.json("\"meetsNeed\": 0.01", "\"meetsNeed\": 1.2"));
    all.put(
        Contradictions.DECIDED_RUNG_IS_NOT_THE_LOWEST_THAT_MEETS_THE_NEED,
        night.decided("mechanics", "adjust-mount"));
    all.put(
        Contradictions.DECISION_IN_A_WORD_IS_NOT_THE_RUNG, night.decided("settings", "rebalance"));
    all.put(
        Contradictions.DEARER_RUNG_IS_SURELY_WORSE_THAN_AS_IT_WAS,
        night.json(
            "{\"value\": 20, \"low\": 19, \"high\": 20}",
            "{\"value\": 5, \"low\": 4, \"high\": 6}"));
    all.put(
        Contradictions.OFFERED_WITHOUT_A_CURE,
        night.json("[{\"cure\": \"play\", \"numbers\": {}}]", "[]"));
    all.put(
        Contradictions.CURE_THAT_CHANGES_NOTHING, night.json("\"toGain\": 0.8", "\"toGain\": 0.4"));
    all.put(
        Contradictions.MECHANICAL_WORK_RECOMMENDED_WHERE_NONE_IS_NEEDED,
        night.says("Adjust the mesh of the worm by a quarter turn."));
    all.put(
        Contradictions.MOUNT_NEEDS_WORK_WHERE_NONE_IS_NEEDED, night.says("The mount needs work."));
    all.put(
        Contradictions.LEAVE_ALONE_WHERE_THE_MOUNT_NEEDS_WORK,
        night.decided("mechanics", "adjust-mount"));
    all.put(Contradictions.FIX_FIRST_BESIDE_LEAVE_ALONE, night.asItWas());
    all.put(Contradictions.FINDING_ABOVE_WATCH_BESIDE_LEAVE_ALONE, night.asItWas());
    all.put(
        Contradictions.MOUNT_ABOVE_WATCH_WHERE_SETTINGS_DO,
        night.json("\"mount\": {\"level\": \"fine\"", "\"mount\": {\"level\": \"fix-first\""));
    all.put(
        Contradictions.SETTINGS_FINE_WHERE_SETTINGS_ARE_THE_CURE,
        night.json(
            "\"settings\": {\"level\": \"fix-first\"", "\"settings\": {\"level\": \"fine\""));
    all.put(
        Contradictions.MECHANICAL_FINDING_ABOVE_WATCH_WHERE_NOTHING_MECHANICAL_IS_NEEDED,
        night.json("\"level\": \"watch\"", "\"level\": \"worth-fixing\""));
    all.put(
        Contradictions.TILE_FINE_ABOVE_A_FINDING_TO_FIX_FIRST,
        night.json(
            "\"settings\": {\"level\": \"fix-first\"", "\"settings\": {\"level\": \"watch\""));
    all.put(
        Contradictions.FINDINGS_OUT_OF_ORDER_OF_THEIR_LEVELS,
        night.json("\"level\": \"fix-first\", \"exp", "\"level\": \"fine\", \"exp"));
    Bent winsNothing =
        night.json(
            "\"cures\": [{\"cure\": \"play\", \"numbers\": {}}]",
            "\"cures\": [{\"cure\": \"play\", \"winsAlone\": {\"value\": 0}, \"winsOnTop\":"
                + " {\"value\": 0}}]");
    all.put(
        Contradictions.CURE_WINS_NOTHING_YET_ITS_FINDING_IS_ABOVE_WATCH,
        winsNothing.json("\"level\": \"watch\"", "\"level\": \"worth-fixing\""));
    all.put(Contradictions.OFFERED_THOUGH_NOTHING_IS_WON, winsNothing);
    all.put(
        Contradictions.GAIN_RAISED_THOUGH_CORRECTIONS_ARE_NOT_TOO_WEAK,
        night.json("\"level\": \"fix-first\", \"exp", "\"level\": \"fine\", \"exp"));
    all.put(
        Contradictions.FIX_FIRST_THOUGH_NO_MORE_THAN_POSSIBLE,
        night.json(
            "\"level\": \"fix-first\", \"exp",
            "\"level\": \"fix-first\", \"confidence\": 0.5, \"exp"));
    all.put(
        Contradictions.MOUNT_ABOVE_WATCH_WHERE_THE_AIR_SETS_THE_LIMIT,
        night
            .decided("air-limit", "leave-alone")
            .json("\"mount\": {\"level\": \"fine\"", "\"mount\": {\"level\": \"worth-fixing\""));
    all.put(Contradictions.COUNT_OF_NO_EXPOSURES, night.says("0 of 0 exposures round."));
    all.put(
        Contradictions.INSTEAD_OF_A_COUNT_THAT_STANDS_NOWHERE_ELSE,
        night.says("20 of 20 exposures round instead of 12."));
    all.put(
        Contradictions.NOTHING_WON_YET_ABOVE_WATCH,
        night.json("\"level\": \"watch\"", "\"level\": \"worth-fixing\""));
    all.put(
        Contradictions.MECHANICAL_CURE_ALONE_WINS_NOTHING_YET_ABOVE_WATCH,
        night.json("\"level\": \"watch\"", "\"level\": \"worth-fixing\""));
    all.put(
        Contradictions.HEADLINE_LONGER_THAN_25_WORDS,
        night.page("alone.</h1>", "alone" + " and more".repeat(8) + ".</h1>"));
    all.put(
        Contradictions.MORE_THAN_THREE_STEPS,
        night.page("</ol>", "<li>One.</li><li>Two.</li><li>Three.</li></ol>"));
    all.put(Contradictions.STEPS_WHERE_NOTHING_IS_TO_BE_DONE, night.asItWas());
    all.put(
        Contradictions.NO_STEP_WHERE_SOMETHING_IS_TO_BE_DONE, night.page("Do this next", "Next"));
    all.put(
        Contradictions.STEP_WITHOUT_A_NUMBER_WHERE_A_SETTING_IS_THE_CURE,
        night.page("</ol>", "<li>Try the gain that does better.</li></ol>"));
    all.put(
        Contradictions.GAIN_ON_THE_PAGE_THAT_NO_RUNG_KNOWS, night.page("0.80. That", "0.70. That"));
    all.put(
        Contradictions.RAISED_TO_LESS_OR_LOWERED_TO_MORE,
        night.says("Lower the deadband from 0.10 to 0.30 arcsec."));
    all.put(
        Contradictions.SAME_GAIN_RAISED_AND_LOWERED, night.says("Lower the gain of RA a little."));
    all.put(
        Contradictions.GAIN_TURNED_AGAINST_THE_LADDER,
        night.says("Reduce the gain of RA a little."));
    all.put(
        Contradictions.ROUND_COUNT_THAT_THE_LADDER_DOES_NOT_KNOW,
        night.says("15 of 20 exposures came out round."));
    all.put(
        Contradictions.AS_IT_WAS_IS_NOT_WHAT_WAS_MEASURED,
        night
            .json("\"seconds\": 300", "\"seconds\": 300, \"measuredElongation\": {\"value\": 1.1}")
            .json(
                TRAILED.replace("300", "300, \"measuredElongation\": {\"value\": 1.1}"),
                ROUND.replace("300", "300, \"measuredElongation\": {\"value\": 1.1}")));
    all.put(
        Contradictions.ALL_MEASURED_ROUND_YET_SOMETHING_TO_DO,
        all.get(Contradictions.AS_IT_WAS_IS_NOT_WHAT_WAS_MEASURED));
    all.put(
        Contradictions.ALL_ROUND_IN_WORDS_BUT_NOT_IN_NUMBERS,
        night.says("All exposures are round."));
    all.put(
        Contradictions.NOTHING_LOST_IN_WORDS_BUT_IN_NUMBERS, night.says("No exposures were lost."));
    all.put(
        Contradictions.NO_MORE_TO_EXPECT_THAN_THERE_IS,
        night.says("Without it about 11 of 20 exposures would be round, not 11."));
    all.put(
        Contradictions.WON_BACK_IS_NOT_THE_DIFFERENCE, night.says("That wins back 4 exposures."));
    all.put(
        Contradictions.RADIAL_RMS_AGAINST_A_LIMIT_OF_AN_AXIS,
        night.says("Radial RMS is 0.67, within the limit of 0.60 in either axis."));
    all.put(Contradictions.YOUR_LIMIT_THAT_THE_USER_NEVER_SET, night.says("Your limit is met."));
    all.put(
        Contradictions.LIMIT_OF_THE_TOOL_THAT_THE_USER_SET,
        night
            .json("\"from\": \"tool\"", "\"from\": \"user\"")
            .says("The limit is roundstar's own."));
    all.put(
        Contradictions.LIMIT_ON_THE_PAGE_IS_NOT_THE_NEED, night.says("Above the limit of 1.20."));
    all.put(Contradictions.NEED_IS_NOT_ON_THE_PAGE, night.page("1.15", "so"));
    all.put(
        Contradictions.AIR_IS_THE_LIMIT_WHERE_SOMETHING_HELPS,
        night.says("The air set the limit."));
    all.put(
        Contradictions.CANNOT_TELL_BESIDE_A_DECISION,
        night.json("Change a setting.", "This log cannot tell."));
    all.put(
        Contradictions.DECISION_BESIDE_CANNOT_TELL,
        night.json("\"rung\": \"settings\",\n  \"mount\"", "\"rung\": null, \"mount\""));
    all.put(Contradictions.HEADLINE_OF_ANOTHER_RUNG, night.asItWas());
    all.put(
        Contradictions.TERMINAL_SAYS_ANOTHER_DECISION,
        new Bent(night.json, night.page, List.of("The mount needs work."), ROW));
    all.put(
        Contradictions.INDEX_SAYS_ANOTHER_DECISION,
        new Bent(night.json, night.page, TERMINAL, "<tr><td>The mount needs work.</td></tr>"));
    all.put(
        Contradictions.TERMINAL_SAYS_ANOTHER_LEVEL,
        new Bent(night.json, night.page, List.of("levels  mount: worth fixing"), ROW));
    all.put(
        Contradictions.WORK_ON_THE_MOUNT_WITHOUT_CAUTION,
        night.decided("mechanics", "adjust-mount"));
    all.put(
        Contradictions.MECHANICAL_FINDING_WITHOUT_CAUTION,
        night
            .json("\"level\": \"watch\"", "\"level\": \"fix-first\"")
            .json("\"action\": []", "\"action\": [\"Adjust the mesh of the worm\"]"));
    all.put(
        Contradictions.TOOLS_FIRST,
        night.page("</ol>", "<li>Adjust the mesh of the worm by 1 turn.</li></ol>"));
    all.put(
        Contradictions.POLAR_AXIS_GOOD_ENOUGH_YET_TO_BE_TURNED,
        night
            .decided("alignment-balance", "adjust-polar-axis")
            .json(
                "\"reason\": \"the axis is good\"",
                "\"cures\": [{\"cure\": \"polar-axis\", \"numbers\": {}}]")
            .says("The polar axis is good enough."));
    all.put(
        Contradictions.LONGEST_EXPOSURE_SHORTER_THAN_ONE_THAT_COMES_OUT_ROUND,
        night
            .asItWas()
            .json("\"meetsNeed\": 0.01", "\"meetsNeed\": 1")
            .says("Exposures stay round up to 120 s."));
    all.put(Contradictions.WORDS_OF_A_PROGRAM, night.says("The gain is NaN."));
    return all;
  }

  @ParameterizedTest
  @EnumSource
  void checkFindsWhatItIsFor(Contradictions check) throws IOException {
    assertThat(bent()).containsKey(check);
    assertThat(check.in(bent().get(check).texts())).isNotEmpty();
  }

  @ParameterizedTest
  @EnumSource
  void checkFindsNothingInANightThatAgreesWithItself(Contradictions check) throws IOException {
    assertThat(check.in(Bent.not().texts())).isEmpty();
  }

  @Test
  void wordsThatExplainAreNoRecommendation() throws IOException {
    Bent night =
        Bent.not()
            .says("Adjusting the worm would win nothing, and is not needed.")
            .says("If play were the trouble, adjust the mesh.")
            .says("A gear that turns unevenly shows as a peak.");
    Set<Contradictions> found = new TreeSet<>();
    for (Contradictions check : Contradictions.values()) {
      if (!check.in(night.texts()).isEmpty()) {
        found.add(check);
      }
    }
    assertThat(found).isEmpty();
  }

  @Test
  void sentencesAreWhatTheEyeParts() throws IOException {
    NightTexts texts =
        new NightTexts(
            ToldLadder.parse("{}"),
            "<h1>One &amp; two.</h1><style>p{}</style><ul><li>A first. A"
                + " second!</li><li>b</li></ul><svg><title>not read</title></svg>",
            List.of("  verdict  broken over", "           two lines"),
            "<tr><td>leave alone</td><td>0.5</td></tr>");
    assertThat(texts.page()).containsExactly("One & two.", "A first.", "A second!", "b");
    assertThat(texts.terminal()).containsExactly("verdict broken over two lines");
    assertThat(texts.index()).containsExactly("leave alone", "0.5");
    assertThat(texts.headline()).isEqualTo("One & two.");
  }
}
