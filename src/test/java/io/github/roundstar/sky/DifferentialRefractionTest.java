package io.github.roundstar.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What the air does between a guide star and the field's centre. */
class DifferentialRefractionTest {
  private static final Site SITE = new Site(48);
  private static final Refraction AIR = new Refraction(1010, 10);

  /**
   * First order: the vertical part of a separation shrinks by dR/dz, the horizontal one by R cot z,
   * and the lifted guide star's north points more to the west the farther east it is lifted, by its
   * shift in right ascension times sin(dec), which adds that to all position angles.
   */
  private static double[] firstOrder(StarPlace star, double east, double north) {
    double zenith = 90 - SITE.altitudeDegrees(star);
    double angle = Math.toRadians(SITE.parallacticAngleDegrees(star));
    double slope = (AIR.arcsec(90 - zenith - 0.01) - AIR.arcsec(90 - zenith + 0.01)) / 0.02 / 3600;
    double lift = Math.toRadians(AIR.arcsec(90 - zenith) / 3600);
    double across = lift / Math.tan(Math.toRadians(zenith));
    double up = east * Math.sin(angle) + north * Math.cos(angle);
    double aside = east * Math.cos(angle) - north * Math.sin(angle);
    double turn = lift * Math.sin(angle) * Math.tan(Math.toRadians(star.declinationDegrees()));
    return new double[] {
      east - slope * up * Math.sin(angle) - across * aside * Math.cos(angle) + turn * north,
      north - slope * up * Math.cos(angle) + across * aside * Math.sin(angle) - turn * east
    };
  }

  /** Smart and Green, Textbook on Spherical Astronomy: refraction of a small separation. */
  @Tag("identity")
  @Test
  void smallFieldsShrinkTowardsTheZenith() {
    for (double hourAngle : new double[] {-4, -1, 2, 4.2}) {
      for (double declination : new double[] {-5, 30, 60}) {
        StarPlace star = StarPlace.ofHours(hourAngle, declination);
        double[] before = firstOrder(star, 300, -500);
        double[] after = firstOrder(star.later(1800), 300, -500);
        var moved =
            new DifferentialRefraction(SITE, AIR, star, 300, -500).shift(0, 1800).orElseThrow();
        double size = Math.hypot(after[0] - before[0], after[1] - before[1]);
        double near = 0.02 * size + 0.002;
        assertThat(moved.eastArcsec()).isCloseTo(after[0] - before[0], within(near));
        assertThat(moved.northArcsec()).isCloseTo(after[1] - before[1], within(near));
      }
    }
  }

  @Test
  void nothingMovesWithoutAirOrWithTheGuideStarInTheCentre() {
    StarPlace star = StarPlace.ofHours(3, 20);
    var noAir = new DifferentialRefraction(SITE, new Refraction(0, 10), star, 900, 300);
    assertThat(noAir.shift(0, 3600).orElseThrow().eastArcsec()).isCloseTo(0, within(1e-6));
    assertThat(noAir.shift(0, 3600).orElseThrow().northArcsec()).isCloseTo(0, within(1e-6));
    var centred = new DifferentialRefraction(SITE, AIR, star, 0, 0);
    assertThat(centred.shift(0, 3600).orElseThrow().northArcsec()).isCloseTo(0, within(1e-6));
  }

  @Test
  void nothingIsSaidNearTheHorizon() {
    var low = new DifferentialRefraction(SITE, AIR, StarPlace.ofHours(6.4, 0), 900, 300);
    assertThat(low.shift(0, 60)).isEmpty();
  }
}
