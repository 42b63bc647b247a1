package io.github.roundstar.worlds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.worlds.NightPlan.Pointing;
import io.github.roundstar.worlds.WorldNight.Exposure;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Shapes of images against closed forms and an image drawn pixel by pixel. */
@Tag("identity")
class ImagesTest {
  private static final double FWHM_PER_SIGMA = 2.3548200450309493;

  /**
   * Variances of 0.36 and 0.16 arcsec^2 beside an FWHM of 2: sqrt((c + 0.36) / (c + 0.16)) by the
   * algebra of Gaussians, 1.107666576 with NumPy's eigh.
   */
  @Test
  void gaussianScatterAddsItsVariance() {
    int side = 200;
    double[] east = new double[side * side];
    double[] north = new double[side * side];
    NormalDistribution normal = new NormalDistribution(null, 0, 1);
    for (int i = 0; i < side; i++) {
      for (int j = 0; j < side; j++) {
        east[i * side + j] = 0.6 * normal.inverseCumulativeProbability((i + 0.5) / side);
        north[i * side + j] = 0.4 * normal.inverseCumulativeProbability((j + 0.5) / side);
      }
    }
    double core = Math.pow(2.0 / FWHM_PER_SIGMA, 2);
    Images.Star star = Images.adaptive(east, north, new double[] {core, core, 0});
    assertThat(star.elongation()).isCloseTo(1.107666576, within(0.0015));
    assertThat(star.angleDeg()).isCloseTo(90, within(0.1));
    assertThat(star.longSigma()).isCloseTo(1.039878609, within(0.003));
    assertThat(star.shortSigma()).isCloseTo(0.938801108, within(0.003));
  }

  /** An even trail and a jump, drawn on pixels and weighed there until the weight fits. */
  @Test
  void trailAndJumpAreWeighedAsAnImageIs() {
    double[] east = new double[120];
    double[] north = new double[120];
    for (int i = 0; i < 120; i++) {
      east[i] = i < 100 ? i * 0.02 : 4;
      north[i] = i < 100 ? -i * 0.01 : 1;
    }
    double[] core = {1.1, 1.3, 0.1};
    Images.Star star = Images.adaptive(east, north, core);
    double[] drawn = drawn(east, north, core);
    assertThat(star.elongation()).isCloseTo(drawn[0], within(0.002));
    assertThat(star.longSigma()).isCloseTo(drawn[1], within(0.003));
  }

  private static double[] drawn(double[] east, double[] north, double[] c) {
    int half = 120;
    double pixel = 0.1;
    double[][] image = new double[2 * half + 1][2 * half + 1];
    double determinant = c[0] * c[1] - c[2] * c[2];
    for (int i = -half; i <= half; i++) {
      for (int j = -half; j <= half; j++) {
        for (int k = 0; k < east.length; k++) {
          double x = i * pixel - east[k];
          double y = j * pixel - north[k];
          image[i + half][j + half] +=
              Math.exp(-0.5 * (x * x * c[1] + y * y * c[0] - 2 * x * y * c[2]) / determinant);
        }
      }
    }
    double[] m = {2, 2, 0};
    double[] at = new double[2];
    for (int turn = 0; turn < 80; turn++) {
      double d = m[0] * m[1] - m[2] * m[2];
      double[] s = new double[6];
      for (int i = -half; i <= half; i++) {
        for (int j = -half; j <= half; j++) {
          double x = i * pixel - at[0];
          double y = j * pixel - at[1];
          double w =
              image[i + half][j + half]
                  * Math.exp(-0.5 * (x * x * m[1] + y * y * m[0] - 2 * x * y * m[2]) / d);
          s[0] += w;
          s[1] += w * x;
          s[2] += w * y;
          s[3] += w * x * x;
          s[4] += w * y * y;
          s[5] += w * x * y;
        }
      }
      double x = s[1] / s[0];
      double y = s[2] / s[0];
      at[0] += 2 * x;
      at[1] += 2 * y;
      m[0] = 2 * (s[3] / s[0] - x * x);
      m[1] = 2 * (s[4] / s[0] - y * y);
      m[2] = 2 * (s[5] / s[0] - x * y);
    }
    double middle = (m[0] + m[1]) / 2;
    double spread = Math.hypot((m[0] - m[1]) / 2, m[2]);
    return new double[] {
      Math.sqrt((middle + spread) / (middle - spread)), Math.sqrt(middle + spread)
    };
  }

  /**
   * With the pole displaced by e along the meridian, the angle at a star between both poles is e
   * sin H / cos dec (sine rule). Its change turns the field; a corner trails by its distance times
   * that.
   */
  @Test
  void cornerTrailsByTheTurnOfTheField() {
    NightPlan plan = NightPlan.still(1);
    plan.runs = new ArrayList<>(List.of(new Pointing(0, 900, 40, -2.5, true)));
    plan.pressureHpa = 0;
    plan.latitudeDeg = 48;
    plan.altitudeArcmin = 60;
    plan.ra.gain = 0.9;
    plan.dec.gain = 0.9;
    plan.imagingFocalMm = 600;
    WorldNight night = WorldNight.play(World.PLAIN, 0, plan);
    Images.Shape shape = night.images().shape(new Exposure(300, 300));
    double scale = 206.264806247 * 3.8 / 600;
    double corner = scale * Math.hypot(3000, 2000);
    double from = Math.toRadians(-2.5 + 300 * 15.041067 / 3600);
    double to = Math.toRadians(-2.5 + 600 * 15.041067 / 3600);
    double turn =
        Math.toRadians(1) * (Math.sin(to) - Math.sin(from)) / Math.cos(Math.toRadians(40));
    double trail = corner * turn;
    double[] east = new double[300];
    double[] north = new double[300];
    for (int i = 0; i < 300; i++) {
      east[i] = trail * (i + 0.5) / 300;
    }
    double core = Math.pow(plan.seeingFwhmArcsec / FWHM_PER_SIGMA, 2);
    double expected = Images.adaptive(east, north, new double[] {core, core, 0}).elongation();
    assertThat(trail).isGreaterThan(2);
    assertThat(shape.worstCorner().elongation()).isCloseTo(expected, within(0.04 * expected));
    assertThat(shape.middle().elongation()).isLessThan(1.05);
  }

  @Test
  void axisOnThePoleTurnsNoField() {
    NightPlan plan = NightPlan.still(1);
    plan.runs = new ArrayList<>(List.of(new Pointing(0, 900, 60, 20, true)));
    plan.pressureHpa = 0;
    WorldNight night = WorldNight.play(World.PLAIN, 0, plan);
    Images.Shape shape = night.images().shape(new Exposure(100, 600));
    assertThat(shape.elongation()).isCloseTo(1, within(0.002));
  }

  @Test
  void cureTakesItsOwnTroubleOff() {
    Kind.Drawn optics = Kind.OPTICS.night(1);
    assertThat(round(optics, optics.night())).isZero();
    assertThat(round(optics, optics.night().again(Cure.roundOptics())))
        .isEqualTo(optics.night().exposures().size());
    for (long seed = 1; seed <= 3; seed++) {
      Kind.Drawn worm = Kind.WORM_GAIN_LOW.night(seed);
      int before = round(worm, worm.night());
      int trained = round(worm, worm.night().again(Cure.wormTrained()));
      assertThat(trained).as("%s", worm).isGreaterThanOrEqualTo(before);
      WorldNight perfect = worm.night().again(Cure.perfectMount());
      assertThat(round(worm, perfect)).as("%s", worm).isEqualTo(perfect.exposures().size());
    }
  }

  private static int round(Kind.Drawn drawn, WorldNight night) {
    return night.images().round(drawn.night().exposures(), drawn.limit());
  }

  /** A worm that shivers is not wholly trained away; one that does not is. */
  @Test
  void trainingLeavesWhatDoesNotRepeat() {
    NightPlan plan = NightPlan.still(5);
    plan.runs = new ArrayList<>(List.of(new Pointing(0, 3000, 0, -20, true)));
    plan.pressureHpa = 0;
    plan.gears.add(new NightPlan.Gear("worm", 300, new double[] {8, 2}, new double[] {1, 2}));
    plan.ra.direction = Double.NaN;
    plan.dec.direction = Double.NaN;
    Exposure all = new Exposure(10, 2900);
    WorldNight steady = WorldNight.play(World.PLAIN, 0, plan.copy());
    plan.shiverRad = 0.3;
    WorldNight shivering = WorldNight.play(World.PLAIN, 0, plan);
    assertThat(variance(steady, all)).isCloseTo((64 + 4) / 2.0, within(3.0));
    assertThat(variance(steady.again(Cure.wormTrained()), all)).isLessThan(1e-9);
    assertThat(variance(shivering.again(Cure.wormTrained()), all)).isBetween(0.5, 30.0);
  }

  private static double variance(WorldNight night, Exposure exposure) {
    return night.mainCamera().covariance(exposure.startSeconds(), exposure.seconds())[0];
  }

  @Test
  void pauseAfterADitherIsKept() {
    Kind.Drawn drawn = Kind.SETTLING_TOO_SHORT.night(2);
    WorldNight waiting = drawn.night().again(Cure.pauseAfterDither(60));
    int patient = waiting.images().round(waiting.exposures(), drawn.limit());
    double all = waiting.exposures().size();
    assertThat(patient / all)
        .isGreaterThan((double) round(drawn, drawn.night()) / drawn.night().exposures().size());
  }
}
