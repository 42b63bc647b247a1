package io.github.roundstar.diagnosis.exposures;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.diagnosis.exposures.SeenImage.Maker;
import io.github.roundstar.diagnosis.exposures.Units.Mended;
import io.github.roundstar.signal.Stretch;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("identity")
class SeenImageTest {
  private static final Stretch NONE = new Stretch(0, 0);
  private static final Mended ROUND_OPTICS = new Mended(1, false, true, true, false);

  private static SeenImage image(
      double shown, double told, double sigma, Stretch beyond, double perTold, Maker maker) {
    return new SeenImage(
        new Stretch(shown, 0),
        new Stretch(told, 0),
        sigma,
        beyond,
        1,
        perTold,
        0,
        maker,
        false,
        true);
  }

  private static double played(SeenImage image, double now, double before, Mended mended) {
    return image
        .played(new Stretch(now, 0), new Stretch(before, 0), mended, new SplittableRandom(1))
        .along();
  }

  /** Whatever is made of it, a night played as it was shows what was measured. */
  @Test
  void nightAsItWasShowsWhatWasMeasured() {
    for (Maker maker : Maker.values()) {
      SeenImage image = image(0.31, 0.2, 0, new Stretch(0.05, 0.02), 1.1, maker);
      assertThat(played(image, 0.2, 0.2, Mended.NOTHING)).isCloseTo(0.31, within(1e-12));
    }
  }

  /** Optics of 0.2 stay when the motion goes, and go when they are mended. */
  @Test
  void opticsStayWithoutMotionAndGoWhenMended() {
    SeenImage image = image(0.5, 0.3, 0, new Stretch(0.2, 0), 1, Maker.OPTICS);

    assertThat(played(image, 0, 0.3, Mended.NOTHING)).isCloseTo(0.2, within(1e-12));
    assertThat(played(image, 0, 0.3, ROUND_OPTICS)).isCloseTo(0, within(1e-12));
  }

  /**
   * The log told 0.4 where the image shows 0.46: with twice 15 % of 0.4 to be wrong by, all of the
   * 0.06 goes with the motion. Of 0.52 beyond the 0.12 it may be wrong by stays: by hand 0.52 -
   * 0.12.
   */
  @Test
  void whatTheLogMayHaveToldWronglyGoesWithTheMotion() {
    assertThat(played(image(0.46, 0.4, 0, NONE, 1, Maker.OPTICS), 0, 0.4, Mended.NOTHING))
        .isCloseTo(0, within(1e-12));
    assertThat(played(image(0.92, 0.4, 0, NONE, 1, Maker.OPTICS), 0, 0.4, Mended.NOTHING))
        .isCloseTo(0.4, within(1e-12));
  }

  /**
   * An image ten percent longer than round: of flexure a fifth of the time leaves a twenty-fifth of
   * the added variance, (1.1^2 - 1) / 25 = 0.0084, which is a logarithm of 0.00418; dispersion
   * stays.
   */
  @Test
  void shortPartsLoseWhatGrowsWithTime() {
    Stretch beyond = new Stretch(Math.log(1.1), 0);
    SeenImage bent = image(beyond.along(), 0, 0, beyond, 1, Maker.FLEXURE).part(0.2);
    SeenImage spread = image(beyond.along(), 0, 0, beyond, 1, Maker.DISPERSION).part(0.2);

    assertThat(played(bent, 0, 0, Mended.NOTHING)).isCloseTo(Math.log1p(0.0084) / 2, within(1e-12));
    assertThat(played(spread, 0, 0, Mended.NOTHING)).isCloseTo(beyond.along(), within(1e-12));
  }

  /** Images of motion alone, ten percent longer than told: no optics are seen in them. */
  @Test
  void motionToldTooShortIsNotTakenForOptics() {
    for (long seed = 1; seed <= 40; seed++) {
      Random random = new Random(new SplittableRandom(seed).nextLong());
      double factor = 1 + 0.1 * random.nextGaussian();
      ImagesByLog images = images(random, factor, NONE, 0.6 * random.nextDouble());
      assertThat(images.always()).as("seed %d", seed).isEqualTo(NONE);
      assertThat(images.perTold()).as("seed %d", seed).isCloseTo(factor, within(0.1));
    }
  }

  /** Optics are found beside motion that changes from image to image. */
  @Test
  void opticsAreToldFromMotionThatChanges() {
    for (long seed = 1; seed <= 40; seed++) {
      Random random = new Random(new SplittableRandom(seed).nextLong());
      double angle = 2 * Math.PI * random.nextDouble();
      Stretch optics = new Stretch(0.25 * Math.cos(angle), 0.25 * Math.sin(angle));
      ImagesByLog images = images(random, 1, optics, 0.3 * random.nextDouble());
      assertThat(images.always().less(optics).size()).as("seed %d", seed).isLessThan(0.08);
    }
  }

  @Test
  void fewImagesTellNothingOfOptics() {
    assertThat(
            ImagesByLog.fit(
                    List.of(NONE, NONE, NONE),
                    List.of(new Stretch(1, 0), new Stretch(1, 0), new Stretch(1, 0)),
                    new double[] {0.01, 0.01, 0.01})
                .always())
        .isEqualTo(NONE);
  }

  /** Thirty images whose motion is along one direction, as a worm's, and varies. */
  private static ImagesByLog images(Random random, double factor, Stretch always, double least) {
    List<Stretch> told = new ArrayList<>();
    List<Stretch> shown = new ArrayList<>();
    double[] sigmas = new double[30];
    for (int i = 0; i < sigmas.length; i++) {
      sigmas[i] = 0.015;
      Stretch tells = new Stretch(least + 0.2 * random.nextDouble(), 0.02 * random.nextGaussian());
      told.add(tells);
      shown.add(
          tells
              .times(factor)
              .plus(always)
              .plus(new Stretch(0.015 * random.nextGaussian(), 0.015 * random.nextGaussian())));
    }
    return ImagesByLog.fit(told, shown, sigmas);
  }
}
