package io.github.roundstar.diagnosis.finding;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.motion.Axis;
import io.github.roundstar.results.Finding;
import io.github.roundstar.results.Level;
import java.util.EnumSet;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/** What holds for the finding of every code: what it is worth, how sure, and what to mind. */
class EveryFindingTest {
  /** The air and a short log take no exposure that mending would give back. */
  private static final Set<FindingCode> WORTH_NOTHING =
      EnumSet.of(FindingCode.SEEING_BOUND, FindingCode.LOG_TOO_SHORT);

  private static final Pattern GEARS = Pattern.compile("mesh|worm seen to|grease");
  private static final Pattern LOOSE =
      Pattern.compile("(?i)balance (both|ra|dec)|clutch|belt|pinion");
  private static final Pattern ADJUSTERS =
      Pattern.compile("(?i)raised end|align the (polar )?axis");
  private static final Pattern TUBE = Pattern.compile("(?i)rings?\\b|collimate|dew shield|tilt of");
  private static final Pattern PLUGS = Pattern.compile("(?i)supply voltage|guide cable");

  @ParameterizedTest
  @EnumSource
  void saysWhatItIsWorth(FindingCode code) {
    Finding found = FoundNights.found(code);

    assertThat(found.level().atLeast(Level.WATCH)).isTrue();
    if (WORTH_NOTHING.contains(code)) {
      assertThat(found.hoursPerNight()).isNull();
      assertThat(found.expectedRoundExposures()).isNull();
    } else {
      assertThat(found.hoursPerNight()).isPositive();
      boolean byTime = code == FindingCode.STUCK_STAR;
      assertThat(found.expectedRoundExposures()).isEqualTo(byTime ? null : roundWithout(code));
    }
  }

  /** All ten of ten; the loss of a star behind a cloud has another name. */
  private static Integer roundWithout(FindingCode code) {
    return code == FindingCode.CLOUDS ? 6 : 10;
  }

  @ParameterizedTest
  @EnumSource
  void saysHowSureItIsAndWhatToDo(FindingCode code) {
    Finding found = FoundNights.found(code);

    assertThat(found.confidence()).isBetween(0.5, 0.99);
    assertThat(found.evidence()).endsWith(".").doesNotContain("null", "NaN");
    assertThat(found.action()).isNotEmpty().allMatch(step -> step.endsWith("."));
  }

  static Stream<Finding> drafts() {
    return Stream.concat(
        Stream.of(FindingCode.values()).map(FoundNights::found),
        Stream.of(
            MadeUpNight.sound()
                .events("lasting-shift", 40, 3.0)
                .part(Axis.RA, "jolts", 0.8)
                .judgedBy(new JoltsRule())));
  }

  @ParameterizedTest
  @MethodSource("drafts")
  void whatNeedsToolsOrPowerHasItsCaution(Finding found) {
    String steps = String.join(" ", found.action());
    String caution = found.caution();

    mind(GEARS, steps, caution, "maker's manual", "unplug", "never force a gear mesh", "Sun");
    mind(LOOSE, steps, caution, "unplug", "counterweight|slide weights", "Sun");
    mind(ADJUSTERS, steps, caution, "opposite one first", "counterweights", "pinch points", "Sun");
    mind(TUBE, steps, caution, "Support tube", "Sun");
    mind(PLUGS, steps, caution, "(?i)switch", "residual-current", "licensed electrician");
  }

  private static void mind(Pattern work, String steps, String caution, String... words) {
    if (work.matcher(steps).find()) {
      for (String word : words) {
        assertThat(caution).as(steps).containsPattern(word);
      }
    }
  }

  @Test
  void cautionsAreLookedForWhereTheyBelong() {
    long withCaution = drafts().filter(found -> !found.caution().isEmpty()).count();

    assertThat(withCaution).isEqualTo(13);
    assertThat(drafts().filter(found -> GEARS.matcher(steps(found)).find())).hasSize(2);
    assertThat(drafts().filter(found -> ADJUSTERS.matcher(steps(found)).find()))
        .hasSizeGreaterThanOrEqualTo(2);
  }

  private static String steps(Finding found) {
    return String.join(" ", found.action());
  }
}
