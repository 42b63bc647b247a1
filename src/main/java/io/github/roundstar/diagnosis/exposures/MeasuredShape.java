package io.github.roundstar.diagnosis.exposures;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.ExposureFrame;
import io.github.roundstar.model.ExposureFrame.RowOrder;
import io.github.roundstar.model.ExposureFrame.SkyShift;
import io.github.roundstar.stars.FieldPattern;
import io.github.roundstar.stars.ImageShape;
import io.github.roundstar.stars.StarMatch;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The stars of an exposure as they were measured, on the sky.
 *
 * @param elongation long axis over short
 * @param fwhmArcsec width [arcsec]; empty where the scale is not known
 * @param angleDegrees position angle of the long axis [deg]; empty where the stars may be round, or
 *     the sensor's angle is not known
 * @param shift move since the exposure before
 * @param pattern how the shapes change over the field
 * @param corner long axis over short in the worst corner; nothing where too few stars tell
 * @param patternStands whether the shapes differ over the field by at least half of the stretch in
 *     that corner, so that the pattern and not what all stars share makes them long
 */
record MeasuredShape(
    Estimate elongation,
    OptionalDouble fwhmArcsec,
    OptionalDouble angleDegrees,
    Optional<SkyShift> shift,
    String pattern,
    Optional<Estimate> corner,
    boolean patternStands) {
  private static final double HALF = 0.5;

  /** How a sensor, in the order of its stored rows, lies on the sky. */
  private record Sensor(OptionalDouble scale, OptionalDouble up, boolean mirrored) {
    static Sensor of(ExposureFrame frame, Equipment equipment) {
      OptionalDouble scale =
          ImageScale.of(frame, equipment)
              .map(s -> OptionalDouble.of(s.arcsecPerPixel()))
              .orElse(OptionalDouble.empty());
      OptionalDouble up = frame.optics().upPositionAngleDegrees();
      return new Sensor(
              scale,
              up.isPresent() ? up : equipment.imaging().positionAngleDegrees(),
              frame.optics().mirrored().orElse(equipment.imaging().mirrored()))
          .stored(frame.optics().rows());
    }

    /** A picture stored from its highest row down is turned by half a turn and mirrored. */
    private Sensor stored(RowOrder rows) {
      OptionalDouble down =
          up.isPresent() ? OptionalDouble.of(up.getAsDouble() + 180) : OptionalDouble.empty();
      return rows == RowOrder.TOP_DOWN ? new Sensor(scale, down, !mirrored) : this;
    }

    /** Position angle of a direction from +x towards +y. */
    double positionAngle(double angle) {
      double fromUp = angle - 90;
      double onSky = up.getAsDouble() + (mirrored ? -fromUp : fromUp);
      return ((onSky % 180) + 180) % 180;
    }

    SkyShift onSky(StarMatch match) {
      double turn = Math.toRadians(up.getAsDouble());
      double right = match.dxPixels() * scale.getAsDouble() * (mirrored ? -1 : 1);
      double above = match.dyPixels() * scale.getAsDouble();
      return new SkyShift(
          -right * Math.cos(turn) + above * Math.sin(turn),
          right * Math.sin(turn) + above * Math.cos(turn),
          match.sigmaPixels() * scale.getAsDouble());
    }
  }

  /** Position angle as an angle on the sensor, from +x towards +y [deg]. */
  static OptionalDouble onSensor(ExposureFrame frame, Equipment equipment, double angleDegrees) {
    Sensor sensor = Sensor.of(frame, equipment);
    if (sensor.up().isEmpty()) {
      return OptionalDouble.empty();
    }
    double fromUp = angleDegrees - sensor.up().getAsDouble();
    double angle = 90 + (sensor.mirrored() ? -fromUp : fromUp);
    return OptionalDouble.of(((angle % 180) + 180) % 180);
  }

  /**
   * The shape of an exposure.
   *
   * @param image its stars, where the image was measured
   * @param before the stars of the exposure before it
   */
  static Optional<MeasuredShape> of(
      ExposureFrame frame,
      Optional<ImageShape> image,
      Optional<ImageShape> before,
      Equipment equipment) {
    if (image.isEmpty() || image.get().elongation().isEmpty()) {
      return frame
          .listed()
          .map(
              listed ->
                  new MeasuredShape(
                      listed.elongation(),
                      listed.fwhmArcsec(),
                      listed.elongation().lo95() > 1
                          ? listed.angleDegrees()
                          : OptionalDouble.empty(),
                      listed.shift(),
                      listed.pattern().orElse("unknown"),
                      listed.corner(),
                      true));
    }
    ImageShape shape = image.get();
    Sensor sensor = Sensor.of(frame, equipment);
    OptionalDouble angle = shape.angleDegrees();
    boolean directed = angle.isPresent() && sensor.up().isPresent();
    boolean placed = sensor.up().isPresent() && sensor.scale().isPresent();
    double fwhm = shape.fwhmPixels().orElseThrow().value();
    return Optional.of(
        new MeasuredShape(
            shape.elongation().get(),
            sensor.scale().isPresent()
                ? OptionalDouble.of(fwhm * sensor.scale().getAsDouble())
                : OptionalDouble.empty(),
            directed
                ? OptionalDouble.of(sensor.positionAngle(angle.getAsDouble()))
                : OptionalDouble.empty(),
            placed
                ? before.flatMap(b -> StarMatch.of(b.stars(), shape.stars())).map(sensor::onSky)
                : Optional.empty(),
            shape.pattern().kind().name().toLowerCase(Locale.ROOT).replace('_', '-'),
            shape.pattern().cornerElongation(),
            stands(shape.pattern())));
  }

  private static boolean stands(FieldPattern pattern) {
    return pattern
        .cornerElongation()
        .map(corner -> pattern.cornerDifference() >= HALF * Math.log(corner.value()))
        .orElse(false);
  }
}
