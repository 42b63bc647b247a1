package io.github.roundstar.diagnosis.exposures;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.ExposureFrame;
import io.github.roundstar.model.ExposureFrame.Optics;
import io.github.roundstar.model.ExposureFrame.ScaleFrom;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

/** Which scale counts when header and equipment file both speak, and that it is said. */
class ImageScaleTest {
  private static ExposureFrame frame(OptionalDouble scale, ScaleFrom from) {
    Optics no = Optics.UNKNOWN;
    OptionalDouble none = OptionalDouble.empty();
    return new ExposureFrame(
        "a.fits",
        Instant.EPOCH,
        ExposureFrame.CameraClock.UTC,
        60,
        new Optics(scale, none, no.mirrored(), none, none, no.pierSide(), no.rows(), from),
        Optional.empty(),
        Optional.empty());
  }

  /** 4 um at 412.53 mm are 2.00 arcsec. */
  private static Equipment declared() {
    Equipment no = Equipment.UNKNOWN;
    return new Equipment(
        no.site(),
        no.mount(),
        no.guide(),
        new Equipment.ImagingOptics(
            OptionalDouble.of(412.53),
            OptionalDouble.of(4),
            OptionalInt.empty(),
            OptionalInt.empty(),
            OptionalInt.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            false),
        no.seeingFwhmArcsec(),
        no.limits());
  }

  private static String words(ExposureFrame frame, Equipment equipment) {
    return ImageScale.words(List.of(frame), equipment);
  }

  @Test
  void headerWinsOverEquipmentAndThatOverExif() {
    ExposureFrame header = frame(OptionalDouble.of(1.5), ScaleFrom.FOCAL_LENGTH);
    ExposureFrame exif = frame(OptionalDouble.of(1.5), ScaleFrom.EXIF);
    ExposureFrame silent = frame(OptionalDouble.empty(), ScaleFrom.NOWHERE);
    assertThat(words(header, declared()))
        .isEqualTo(
            "Scale of the images: 1.50 arcsec per pixel, from focal length and pixel size in the"
                + " headers.");
    assertThat(words(exif, declared())).contains("2.00 arcsec per pixel, from the equipment file");
    assertThat(words(exif, Equipment.UNKNOWN)).contains("1.50 arcsec per pixel").contains("Exif");
    assertThat(words(silent, declared())).contains("2.00").contains("the equipment file");
    assertThat(words(silent, Equipment.UNKNOWN)).contains("not known: give focal_length_mm");
  }
}
