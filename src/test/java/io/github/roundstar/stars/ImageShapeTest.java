package io.github.roundstar.stars;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Known ellipses come back from rendered fields, whatever noise and sky lie over them. Of 60 stars
 * at SNR 30 the angle of an elongation of 1.1 has a standard error of 2.5 degrees, the least that
 * any estimator can have (2 / SNR per star); it is checked from SNR 60 up.
 */
class ImageShapeTest {
  private static final double NOISE = 20;

  @Tag("identity")
  @ParameterizedTest(name = "FWHM {0} px, elongation {1} at {2} deg, SNR {3}")
  @CsvSource(
      textBlock =
          """
          # FWHM, elongation, angle, SNR
          2.4,    1.0,        0,     30
          2.4,    1.1,        75,    60
          3.5,    1.1,        150,   60
          3.5,    1.3,        20,    30
          5.0,    1.5,        45,    100
          7.0,    1.2,        110,   30
          5.0,    2.5,        160,   60
          """)
  void meanOfAnImageIsThatOfItsStars(double fwhm, double elongation, double angle, double snr) {
    double[] ellipse = StarField.ellipse(fwhm, elongation, angle);
    StarField field = new StarField(640, 560, NOISE, 3).stars(9, 8, snr, (x, y) -> ellipse);
    ImageShape image = ImageShape.of(field.underSky(900, 300));
    assertThat(image.stars()).hasSizeBetween(50, 72);
    assertThat(image.elongation().orElseThrow().value())
        .isCloseTo(elongation, within(0.02 * elongation + 0.01));
    assertThat(image.elongation().orElseThrow().lo95()).isLessThanOrEqualTo(elongation * 1.005);
    assertThat(image.fwhmPixels().orElseThrow().value()).isCloseTo(fwhm, within(0.02 * fwhm));
    if (elongation >= 1.1) {
      assertThat(angleApart(image.angleDegrees().orElseThrow(), angle)).isLessThan(3);
    }
    assertThat(image.noiseAdu()).isCloseTo(NOISE, within(0.05 * NOISE));
  }

  @Tag("identity")
  @Test
  void singleStarsAreInsideTheirIntervals() {
    double[] ellipse = StarField.ellipse(3.5, 1.25, 30);
    StarField field = new StarField(800, 800, NOISE, 1).stars(16, 16, 30, (x, y) -> ellipse);
    List<Star> stars = ImageShape.of(field.underSky(500, 0)).stars();
    long inside = stars.stream().filter(star -> star.elongation().covers(1.25)).count();
    assertThat(stars).hasSizeGreaterThan(190);
    assertThat(100.0 * inside / stars.size()).isBetween(88.0, 99.0);
  }

  @Tag("identity")
  @Test
  void starsWithPhotonNoiseOfTheirOwnAreInsideTheirIntervals() {
    double[] ellipse = StarField.ellipse(3.5, 1.1, 30);
    StarField field = new StarField(600, 600, NOISE, 11).stars(10, 10, 200, (x, y) -> ellipse);
    java.util.Random random = new java.util.Random(5);
    for (int i = 0; i < field.pixels.length; i++) {
      field.pixels[i] += (float) (Math.sqrt(field.pixels[i]) * random.nextGaussian());
    }
    List<Star> stars = ImageShape.of(field.underSky(500, 0)).stars();
    long inside = stars.stream().filter(star -> star.elongation().covers(1.1)).count();
    assertThat(100.0 * inside / stars.size()).isBetween(88.0, 100.0);
  }

  @Test
  void greenPixelsOfAMosaicGiveTheSameShape() {
    double[] ellipse = StarField.ellipse(4, 1.3, 60);
    StarField field = new StarField(640, 560, NOISE, 4).stars(9, 8, 80, (x, y) -> ellipse);
    float[] image = field.exposed(900, 100);
    for (int y = 0; y < field.height; y++) {
      for (int x = 0; x < field.width; x++) {
        if ((x + y) % 2 == 0) {
          image[y * field.width + x] *= y % 2 == 0 ? 0.5f : 0.7f; // red and blue see less
        }
      }
    }
    Sampling green = Sampling.green(field.width, field.height, image, "GRBG");
    assertThat(green).isEqualTo(Sampling.ODD);
    ImageShape shape = ImageShape.of(Plane.ofMosaic(field.width, field.height, image, green));
    assertThat(shape.stars()).hasSizeGreaterThan(50);
    assertThat(shape.elongation().orElseThrow().value()).isCloseTo(1.3, within(0.036));
    assertThat(angleApart(shape.angleDegrees().orElseThrow(), 60)).isLessThan(3);
  }

  @Test
  void imageWithoutStarsHasNoFigures() {
    ImageShape image = ImageShape.of(new StarField(400, 300, NOISE, 5).underSky(500, 0));
    assertThat(image.stars()).isEmpty();
    assertThat(image.elongation()).isEmpty();
    assertThat(image.fwhmPixels()).isEmpty();
    assertThat(image.pattern().kind()).isEqualTo(FieldPattern.Kind.UNKNOWN);
  }

  @Test
  void hotPixelsAreNoStars() {
    StarField field = new StarField(400, 300, NOISE, 6);
    for (int i = 0; i < 200; i++) {
      field.pixels[(i * 7919) % field.pixels.length] += 3000;
    }
    ImageShape image = ImageShape.of(field.underSky(500, 0));
    assertThat(image.stars()).isEmpty();
    assertThat(image.rejected().getOrDefault(Rejection.HOT_PIXEL, 0)).isGreaterThan(150);
  }

  @Test
  void saturatedBlendedAndEdgeStarsAreLeftOut() {
    double[] round = StarField.ellipse(4, 1, 0);
    StarField field = new StarField(500, 500, NOISE, 7).stars(5, 5, 100, (x, y) -> round);
    field.star(55, 100, 90_000, round);
    field.star(302, 345, 1500, round).star(308, 345, 1200, round);
    field.star(498, 200, 3000, round);
    for (int i = 0; i < field.pixels.length; i++) {
      field.pixels[i] = Math.min(field.pixels[i], 60_000);
    }
    ImageShape image = ImageShape.of(field.underSky(500, 0));
    assertThat(image.rejected())
        .containsKeys(Rejection.SATURATED, Rejection.BLENDED, Rejection.AT_EDGE);
    assertThat(image.elongation().orElseThrow().covers(1)).isTrue();
  }

  @Test
  void linesAreMeasuredAsLines() {
    StarField field = new StarField(700, 700, NOISE, 8);
    double[] round = StarField.ellipse(3, 1, 0);
    for (int s = 0; s < 30; s++) {
      double x = 80 + 100 * (s % 6) + 7 * (s / 6);
      double y = 60 + 120 * (s / 6) + 5 * (s % 6);
      for (int step = 0; step <= 80; step++) {
        field.star(x + step * 0.5, y + step * 0.25, 60, round);
      }
    }
    ImageShape image = ImageShape.of(field.underSky(500, 0));
    assertThat(image.stars()).hasSizeGreaterThan(15);
    assertThat(image.elongation().orElseThrow().lo95()).isGreaterThan(4);
    assertThat(angleApart(image.angleDegrees().orElseThrow(), Math.toDegrees(Math.atan(0.5))))
        .isLessThan(3);
  }

  static double angleApart(double one, double other) {
    double apart = Math.abs(one - other) % 180;
    return Math.min(apart, 180 - apart);
  }
}
