package io.github.roundstar.stars;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.formats.FitsImage;
import io.github.roundstar.formats.FormatException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A frame of the ESO NTT with a Source Extractor catalogue, background and noise maps, shipped with
 * the sep library: nobody of this project made any of them.
 */
@Tag("reference-data")
@Tag("published")
class OpenFrameTest {
  private static final Path DATA =
      Path.of(System.getenv().getOrDefault("ROUNDSTAR_REFERENCE_DATA", "../../shared/data"))
          .toAbsolutePath();

  @TempDir private Path temporary;

  private record Listed(double[] columns) {
    double at(int column) {
      return columns[column - 1];
    }
  }

  private static Path data(String name) {
    Path beside = Path.of("../shared/data").toAbsolutePath().resolve(name);
    return Files.exists(beside) ? beside : DATA.resolve(name);
  }

  private float[] pixels(String name) throws IOException, FormatException {
    Path file = data(name);
    if (name.endsWith(".gz")) {
      Path plain = temporary.resolve(name.replace(".gz", ""));
      try (InputStream in = new GZIPInputStream(Files.newInputStream(file))) {
        Files.copy(in, plain);
      }
      file = plain;
    }
    try (FitsImage image = FitsImage.open(file)) {
      assertThat(image.width()).isEqualTo(256);
      return image.pixels();
    }
  }

  private static List<Listed> catalogue() throws IOException {
    List<Listed> listed = new ArrayList<>();
    for (String line : Files.readAllLines(data("sep_image.cat"))) {
      if (!line.startsWith("#")) {
        String[] words = line.strip().split("\\s+");
        double[] columns = new double[words.length];
        for (int i = 0; i < words.length; i++) {
          columns[i] = Double.parseDouble(words[i]);
        }
        listed.add(new Listed(columns));
      }
    }
    return listed;
  }

  private Plane flat() throws IOException, FormatException {
    float[] image = pixels("sep_image.fits");
    float[] back = pixels("sep_back.fits.gz");
    for (int i = 0; i < image.length; i++) {
      image[i] -= back[i];
    }
    return Plane.of(256, 256, image);
  }

  @Test
  void isophotalMomentsAreThoseOfTheCatalogue() throws IOException, FormatException {
    Plane plane = flat();
    double[] noise = new double[256 * 256];
    float[] map = pixels("sep_rms.fits.gz");
    for (int i = 0; i < map.length; i++) {
      noise[i] = map[i];
    }
    float threshold = (float) (1.5 * io.github.roundstar.signal.Quantile.median(noise));
    List<Segment> segments =
        Segments.of(plane, (y, line) -> java.util.Arrays.fill(line, threshold), 5);
    int agree = 0;
    for (Listed listed : catalogue()) {
      if (listed.at(21) != 0) {
        continue;
      }
      Segment nearest =
          segments.stream()
              .min(
                  Comparator.comparingDouble(
                      s -> Math.hypot(s.x() + 1 - listed.at(2), s.y() + 1 - listed.at(3))))
              .orElseThrow();
      boolean same =
          Math.abs(nearest.x() + 1 - listed.at(2)) < 2e-4
              && Math.abs(nearest.y() + 1 - listed.at(3)) < 2e-4
              && Math.abs(nearest.xx() - listed.at(6)) < 2e-4 * listed.at(6)
              && Math.abs(nearest.yy() - listed.at(7)) < 2e-4 * listed.at(7)
              && Math.abs(nearest.xy() - listed.at(8)) < 2e-4 * Math.max(1, listed.at(6));
      agree += same ? 1 : 0;
    }
    assertThat(agree).isGreaterThanOrEqualTo(20);
  }

  @Test
  void halfLightRadiiAreThoseOfTheCatalogue() throws IOException, FormatException {
    Plane plane = flat();
    int agree = 0;
    int isolated = 0;
    for (Listed listed : catalogue()) {
      boolean bright = listed.at(21) == 0 && listed.at(16) > 3000;
      if (!bright) {
        continue;
      }
      isolated++;
      double radius =
          HalfLight.radius(plane, listed.at(2) - 1, listed.at(3) - 1, listed.at(16), 20)
              .orElse(Double.NaN);
      agree += Math.abs(radius - listed.at(19)) < 0.02 * listed.at(19) ? 1 : 0;
    }
    assertThat(isolated).isGreaterThan(10);
    assertThat(agree).isGreaterThanOrEqualTo((int) (0.9 * isolated));
  }

  @Test
  void brightStarsHaveTheWidthsOfAnIndependentFit() throws IOException, FormatException {
    ImageShape image = ImageShape.of(Plane.of(256, 256, pixels("sep_image.fits")));
    assertStar(image, 149.2026, 33.4995, 2.402, 2.102, 4.8);
    assertStar(image, 81.4266, 12.2372, 2.372, 2.078, 4.7);
  }

  /**
   * Widths and ellipticity within 5 % and the angle within a degree. The reference fits a Gaussian
   * and a constant to 11 x 11 pixels; our weight has no constant, since the sky comes from a ring.
   * That and the size of the window are the reference's own doubt, as these stars are no exact
   * Gaussians: fits of our own with 7 to 15 pixels a side, with and without the constant, gave FWHM
   * 3 % apart, ellipticities 2.6 % and angles 0.12 degrees. The place is the catalogue's windowed
   * one, XWIN and YWIN, which is nearest in kind.
   */
  private static void assertStar(
      ImageShape image, double x, double y, double major, double minor, double angle) {
    Star star =
        image.stars().stream()
            .min(Comparator.comparingDouble(s -> Math.hypot(s.x() - x, s.y() - y)))
            .orElseThrow();
    assertThat(Math.hypot(star.x() - x, star.y() - y)).isLessThan(0.003);
    assertThat(star.majorFwhmPixels()).isCloseTo(major, within(0.05 * major));
    assertThat(star.minorFwhmPixels()).isCloseTo(minor, within(0.05 * minor));
    assertThat(1 - star.minorFwhmPixels() / star.majorFwhmPixels())
        .isCloseTo(1 - minor / major, within(0.05 * (1 - minor / major)));
    assertThat(ImageShapeTest.angleApart(star.stretch().angleDegrees(), angle)).isLessThan(1);
  }

  @Test
  void saturatedStarIsLeftOut() throws IOException, FormatException {
    Listed saturated = catalogue().stream().filter(l -> l.at(1) == 16).findFirst().orElseThrow();
    ImageShape image = ImageShape.of(Plane.of(256, 256, pixels("sep_image.fits")));
    assertThat(image.stars())
        .noneMatch(s -> Math.hypot(s.x() - saturated.at(2), s.y() - saturated.at(3)) < 3);
  }
}
