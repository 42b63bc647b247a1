package io.github.roundstar.diagnosis.finding;

import static io.github.roundstar.diagnosis.finding.MadeUpNight.about;
import static io.github.roundstar.diagnosis.finding.MadeUpNight.sound;
import static io.github.roundstar.results.Level.CANNOT_TELL;
import static io.github.roundstar.results.Level.FINE;
import static io.github.roundstar.results.Level.FIX_FIRST;
import static io.github.roundstar.results.Level.WATCH;
import static io.github.roundstar.results.Level.WORTH_FIXING;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.offset;

import io.github.roundstar.motion.Axis;
import io.github.roundstar.results.BesideAxis;
import io.github.roundstar.results.Finding;
import org.junit.jupiter.api.Test;

/** A misaligned axis matters by the drift that gets through and by the turning field. */
class PolarAxisRuleTest {
  private static final PolarAxisRule RULE = new PolarAxisRule();
  private static final String OPTICS =
      "[imaging]\nfocal_length_mm = 750\npixel_um = 3.8\n[sky]\nseeing_fwhm_arcsec = 2.5\n";

  @Test
  void driftThatGetsThroughComesFirst() {
    Finding found =
        sound()
            .axis(about(20, 1), 0.1, "two-pointings")
            .part(Axis.DEC, "drift-lag", 0.8)
            .judgedBy(RULE);

    assertThat(found.level()).isEqualTo(FIX_FIRST);
    assertThat(found.action().get(0))
        .isEqualTo("Turn the raised end of the axis to the west by 20.0 arcmin.");
    assertThat(found.caution()).contains("adjusters", "counterweights");
  }

  @Test
  void tenthOfTheTrailingIsTheLimit() {
    MadeUpNight night = sound().axis(about(20, 0), 0.1, "two-pointings");
    assertThat(night.part(Axis.DEC, "drift-lag", 0.110).levelBy(RULE)).isEqualTo(WORTH_FIXING);
    assertThat(night.part(Axis.DEC, "drift-lag", 0.104).levelBy(RULE)).isEqualTo(WATCH);
  }

  /**
   * By hand: seeing 2.5 arcsec, limit 1.15: sigma 1.0617, longest trail sqrt(12) * 1.0617 *
   * sqrt(0.3225) = 2.089 arcsec; a tenth of interval on the axis is a tenth on the trail.
   */
  @Test
  void trailInTheCornerCountsAtItsLowerBound() {
    assertThat(corner(2.33).levelBy(RULE)).isEqualTo(FIX_FIRST);
    assertThat(corner(2.31).levelBy(RULE)).isEqualTo(WORTH_FIXING);
  }

  /** Half a pixel is 0.5 * 206.265 * 3.8 / 750 = 0.5225 arcsec. */
  @Test
  void halfAPixelIsWorthSeeingTo() {
    assertThat(corner(0.59).levelBy(RULE)).isEqualTo(WORTH_FIXING);
    assertThat(corner(0.46).levelBy(RULE)).isEqualTo(FINE);
  }

  private static MadeUpNight corner(double trail) {
    return sound().equipment(OPTICS).axis(about(100, 10), trail, "two-pointings");
  }

  @Test
  void oneDirectionAsksForASecondPointing() {
    Finding found =
        sound()
            .axis(about(20, 1), null, "one-direction")
            .part(Axis.DEC, "drift-lag", 0.8)
            .judgedBy(RULE);

    assertThat(found.action().get(0)).contains("meridian");
    assertThat(found.confidence()).isLessThanOrEqualTo(0.7);
  }

  @Test
  void followsTheFieldRotationThatAloneSpoiltTheImages() {
    MadeUpNight drifting = corner(3).part(Axis.DEC, "drift-lag", 0.8);

    assertThat(drifting.diagnosis().findings())
        .extracting(Finding::code)
        .startsWith("polar-axis", "field-rotation");
    assertThat(drifting.exposures(5, 5, "field-rotation").diagnosis().findings())
        .extracting(Finding::code)
        .startsWith("field-rotation", "polar-axis");
  }

  @Test
  void axisThatExplainsAllDriftsIsBelievedMore() {
    Finding tested = drift(true, null).judgedBy(RULE);
    Finding untested = drift(null, null).judgedBy(RULE);

    assertThat(tested.confidence()).isGreaterThan(0.9);
    assertThat(tested.evidence()).contains("those of an axis");
    assertThat(untested.confidence()).isLessThanOrEqualTo(0.7);
    assertThat(untested.evidence()).contains("a telescope that bends");
  }

  /** By hand: 20 arcmin drift 5.25 arcsec/min, as much as what stands beside: a quarter is left. */
  @Test
  void driftBesideTheAxisIsNotLaidToIt() {
    Finding beside = drift(false, new BesideAxis("nothing", about(5.25, 0.1))).judgedBy(RULE);

    assertThat(beside.shareOfTrailing())
        .isCloseTo(drift(true, null).judgedBy(RULE).shareOfTrailing() / 4, offset(1e-9));
    assertThat(beside.evidence()).contains("5.25 (5.15 .. 5.35)", "none of the axis's");
  }

  @Test
  void driftsThatNoAxisMakesTurnNoAdjuster() {
    MadeUpNight bent = drift(false, null).seconds(3000).raDrift(about(3, 0.1));

    assertThat(bent.levelBy(RULE)).isEqualTo(CANNOT_TELL);
    assertThat(bent.judgedBy(RULE).evidence()).contains("flexure", "0.50 arcsec a minute");
    assertThat(bent.levelBy(new FieldRotationRule())).isEqualTo(CANNOT_TELL);
    assertThat(bent.levelBy(new TrackingRateRule())).isEqualTo(CANNOT_TELL);
  }

  private static MadeUpNight drift(Boolean consistent, BesideAxis beside) {
    return sound()
        .axis(about(20, 1), 3.0, "two-pointings", consistent, beside)
        .part(Axis.DEC, "drift-lag", 0.8);
  }

  @Test
  void cannotTellWithoutAxisOrBudget() {
    assertThat(sound().because("/polarAxis", "no latitude").judgedBy(RULE).evidence())
        .isEqualTo("No latitude.");
    assertThat(sound().axis(about(20, 1), null, "curvature").withoutBudget("none").levelBy(RULE))
        .isEqualTo(CANNOT_TELL);
  }
}
