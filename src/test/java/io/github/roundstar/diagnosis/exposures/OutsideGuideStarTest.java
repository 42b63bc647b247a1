package io.github.roundstar.diagnosis.exposures;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.ingest.UnusableInputException;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.results.Exposure;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The guide star stands two degrees outside the image and the polar axis is far off: the field
 * turns about the guide star, so that the whole image trails alike. The axis is measured from the
 * log's two pointings; the images trail as it says.
 */
class OutsideGuideStarTest {
  private static final String SCENARIO =
      """
      [night]
      seed = 5
      cadence_s = 3
      latitude_deg = 48
      [noise]
      white_arcsec = 0.35
      [dither]
      every_min = 11
      size_arcsec = 6
      [polar_axis]
      azimuth_arcmin = 28
      altitude_arcmin = 16
      [[run]]
      duration_min = 60
      declination_deg = 62
      hour_angle_h = -3
      [[run]]
      duration_min = 60
      declination_deg = 62
      hour_angle_h = -1
      [exposures]
      seconds = 480
      scale = 1.2
      guide_star_east_arcmin = -120
      guide_star_north_arcmin = 30
      """;

  private static FaultNight.Taken night;

  /**
   * One night for both: what the analysis is told of the guide star changes neither log nor images.
   */
  @BeforeAll
  static void simulate(@TempDir Path temporary)
      throws FormatException, IOException, UnusableInputException {
    night = FaultNight.taken(SCENARIO, temporary);
  }

  /** East is to the left in an upright picture. */
  private static Equipment told(double eastArcmin, double northArcmin) {
    Equipment no = Equipment.UNKNOWN;
    OptionalDouble none = OptionalDouble.empty();
    return new Equipment(
        no.site(),
        no.mount(),
        new Equipment.GuideOptics(
            none,
            none,
            OptionalInt.empty(),
            none,
            false,
            OptionalDouble.of(-eastArcmin),
            OptionalDouble.of(northArcmin),
            Optional.of(Equipment.Arrangement.GUIDE_SCOPE)),
        new Equipment.ImagingOptics(
            none,
            none,
            OptionalInt.empty(),
            OptionalInt.empty(),
            OptionalInt.empty(),
            none,
            OptionalDouble.of(0),
            false),
        no.seeingFwhmArcsec(),
        no.limits());
  }

  @Tag("identity")
  @Test
  void turnAboutTheGuideStarIsPredictedAndNamed() {
    List<Exposure> exposures = night.judged(told(-120, 30));
    assertThat(exposures).hasSizeGreaterThan(8);
    assertThat(exposures)
        .allSatisfy(
            e -> {
              assertThat(e.verdict()).isEqualTo("trailed");
              assertThat(e.cause()).isEqualTo("field-rotation");
              assertThat(e.evidence()).contains("about the guide star, 124 arcmin from the image");
              assertThat(e.predictedElongation().value() / e.measuredElongation().value())
                  .isCloseTo(1, within(0.1));
            });
  }

  /** Told to stand in the image's centre, the guide star holds the centre still. */
  @Tag("identity")
  @Test
  void guideStarInTheCentreExplainsNoTrail() {
    List<Exposure> exposures = night.judged(told(0, 0));
    assertThat(exposures).allMatch(e -> e.verdict().equals("trailed"));
    assertThat(exposures).noneMatch(e -> "field-rotation".equals(e.cause()));
    assertThat(exposures).allMatch(e -> e.predictedElongation().value() < 1.1);
  }
}
