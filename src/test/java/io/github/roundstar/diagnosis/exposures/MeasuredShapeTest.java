package io.github.roundstar.diagnosis.exposures;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.ExposureFrame;
import io.github.roundstar.model.ExposureFrame.Optics;
import io.github.roundstar.model.ExposureFrame.RowOrder;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Angles on the sky as angles on the sensor. */
class MeasuredShapeTest {
  private static double onSensor(RowOrder rows, Optional<Boolean> mirrored, double skyAngle) {
    OptionalDouble no = OptionalDouble.empty();
    Optics optics =
        new Optics(
            OptionalDouble.of(1),
            OptionalDouble.of(30),
            mirrored,
            no,
            no,
            Optional.empty(),
            rows,
            ExposureFrame.ScaleFrom.KEYWORD);
    ExposureFrame frame =
        new ExposureFrame(
            "a.fits",
            Instant.EPOCH,
            ExposureFrame.CameraClock.UTC,
            60,
            optics,
            Optional.empty(),
            Optional.empty());
    return MeasuredShape.onSensor(frame, Equipment.UNKNOWN, skyAngle).orElseThrow();
  }

  /** The picture's up is 30 degrees from north; east lies 90 degrees on, to the left. */
  @Test
  void picturesFromTheLowestRowUpTurnAgainstTheSky() {
    assertThat(onSensor(RowOrder.BOTTOM_UP, Optional.empty(), 30)).isCloseTo(90, within(1e-9));
    assertThat(onSensor(RowOrder.BOTTOM_UP, Optional.empty(), 40)).isCloseTo(100, within(1e-9));
    assertThat(onSensor(RowOrder.BOTTOM_UP, Optional.of(true), 40)).isCloseTo(80, within(1e-9));
  }

  /**
   * Turned upside down in the file, an axis 10 degrees left of up is one 10 degrees left of down.
   */
  @Test
  void picturesFromTheHighestRowDownAreSeenUpsideDown() {
    assertThat(onSensor(RowOrder.TOP_DOWN, Optional.empty(), 30)).isCloseTo(90, within(1e-9));
    assertThat(onSensor(RowOrder.TOP_DOWN, Optional.empty(), 40)).isCloseTo(80, within(1e-9));
  }
}
