package io.github.roundstar.report;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.PierSide;
import io.github.roundstar.report.Page.Block;
import io.github.roundstar.report.Page.Section;
import io.github.roundstar.report.words.Clock;
import io.github.roundstar.results.AirmassGrowth;
import io.github.roundstar.results.AxisDrift;
import io.github.roundstar.results.Faults;
import io.github.roundstar.results.Flip;
import io.github.roundstar.results.Flip.Change;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.NightSummary;
import io.github.roundstar.results.Pointings;
import io.github.roundstar.results.Target;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Fields, flip and height on the page, of figures that are made up. */
class PointingSectionsTest {
  private static final Clock UTC = new Clock(Optional.empty());
  private static final Estimate HALF = new Estimate(0.5, 0.45, 0.55);
  private static final Change NONE = new Change(HALF, HALF, new Estimate(1.02, 0.9, 1.15), 1);
  private static final Change GREW =
      new Change(HALF, HALF.times(2), new Estimate(2.0, 1.7, 2.35), 1);

  @Test
  void aNightWithOneFieldHasNoTableOfFields() {
    assertThat(FieldsSection.of(night(List.of(target(1)), List.of(), null), SiteDetail.ROUNDED))
        .isEmpty();
  }

  @Test
  void fieldsStandWithHeightScatterDriftAndRoundExposures() {
    Section section =
        FieldsSection.of(night(List.of(target(1), target(2)), List.of(), null), SiteDetail.ROUNDED)
            .orElseThrow();

    assertThat(names(section))
        .contains("field", "altitude", "RMS, RA", "RMS, Dec", "drift, RA", "drift, Dec");
    assertThat(section.blocks().get(0).table().rows().get(0).get(2).text()).isEqualTo("45 to 60");
  }

  @Test
  void altitudesAreToldToTheDegreeOnlyWhereTheSiteMayBeTold() {
    Section section =
        FieldsSection.of(night(List.of(target(1), target(2)), List.of(), null), SiteDetail.FULL)
            .orElseThrow();

    assertThat(section.blocks().get(0).table().rows().get(0).get(2).text()).isEqualTo("44 to 62");
  }

  @Test
  void aFlipThatChangedNothingSaysSoInItsHeading() {
    Section section =
        FlipSection.of(night(List.of(target(1)), List.of(flip(NONE, true)), null), UTC)
            .orElseThrow();

    assertThat(section.heading()).isEqualTo("At the flip nothing changed that this night can tell");
    assertThat(verdicts(section)).containsOnly("no change told");
  }

  @Test
  void whatSurelyChangedIsNamedAndNothingElse() {
    Section section =
        FlipSection.of(night(List.of(target(1)), List.of(flip(GREW, true)), null), UTC)
            .orElseThrow();

    assertThat(section.heading()).isEqualTo("At the flip changed: RMS in Dec");
    assertThat(verdicts(section)).containsExactly("no change told", "grew");
  }

  @Test
  void anotherFieldAfterTheFlipIsSaidToBePossiblyTheCause() {
    Section section =
        FlipSection.of(night(List.of(target(1)), List.of(flip(GREW, false)), null), UTC)
            .orElseThrow();

    assertThat(String.join(" ", section.blocks().get(0).sentences()))
        .contains("a change may be the field's");
  }

  @Test
  void heightGivesAdviceOnlyWhereBothIntervalsLieAboveOne() {
    Estimate above = new Estimate(1.4, 1.2, 1.6);
    Estimate across = new Estimate(1.1, 0.9, 1.3);

    assertThat(steps(above, above)).isNotEmpty();
    assertThat(steps(above, across)).isEmpty();
    assertThat(steps(across, above)).isEmpty();
    assertThat(HeightSection.of(night(List.of(target(1)), List.of(), null), charts())).isEmpty();
  }

  private static List<String> steps(Estimate noise, Estimate rms) {
    NightResult night =
        night(List.of(target(1)), List.of(), new AirmassGrowth(1.0, 2.0, noise, rms));
    return HeightSection.of(night, charts()).orElseThrow().blocks().stream()
        .map(Block::steps)
        .flatMap(steps -> Optional.ofNullable(steps).stream().flatMap(List::stream))
        .toList();
  }

  private static Charts charts() {
    return new Charts(new Faults());
  }

  private static List<String> names(Section section) {
    return section.blocks().get(0).table().columns().stream().map(Page.Column::name).toList();
  }

  private static List<String> verdicts(Section section) {
    return section.blocks().get(0).table().rows().stream()
        .map(row -> row.get(row.size() - 1).text())
        .toList();
  }

  private static Target target(int number) {
    return new Target(
        number,
        List.of(number),
        20.0 + number,
        null,
        43.6,
        61.8,
        HALF,
        HALF,
        new AxisDrift(HALF, HALF));
  }

  private static Flip flip(Change dec, boolean sameTarget) {
    return new Flip(
        "2026-10-15T19:36:00Z",
        2,
        PierSide.EAST,
        sameTarget,
        NONE,
        dec,
        null,
        null,
        null,
        null,
        null,
        null);
  }

  private static NightResult night(List<Target> targets, List<Flip> flips, AirmassGrowth air) {
    NightResult sample = SampleNight.twoHours().result();
    NightSummary n = sample.night();
    NightSummary with =
        new NightSummary(
            n.date(),
            n.startUtc(),
            n.endUtc(),
            n.runs(),
            n.frames(),
            n.guidedHours(),
            n.guided(),
            n.driftArcsecPerMinuteSky(),
            n.responseArcsecPerSecond(),
            n.noiseFloorArcsec(),
            n.periodic(),
            n.backlashArcsecAxis(),
            n.stickingArcsecAxis(),
            n.settling(),
            n.comparison(),
            n.learned(),
            new Pointings(targets, flips, air));
    return new NightResult(
        sample.schema(),
        sample.version(),
        sample.inputs(),
        with,
        sample.runs(),
        sample.polarAxis(),
        sample.seeing(),
        sample.exposures(),
        sample.replay(),
        sample.findings(),
        sample.verdict(),
        sample.notComputed(),
        sample.methods(),
        sample.faults());
  }
}
