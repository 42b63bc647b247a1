package io.github.roundstar.diagnosis.exposures;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.ExposureFrame.SkyShift;
import io.github.roundstar.results.Exposure;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One exposure with its verdict.
 *
 * @param window the exposure on the log
 * @param predicted what the log implies; nothing when it does not cover the exposure
 * @param corner elongation in the corner where the log and the field's turn imply most; nothing
 *     where the turn, the guide star's place or the sensor are not known
 * @param verdict round, borderline, trailed or not covered
 * @param cause what trailed it
 * @param equipment for the sensor's angle
 */
public record JudgedExposure(
    Window window,
    Optional<PredictedShape> predicted,
    Optional<Estimate> corner,
    String verdict,
    Cause cause,
    Equipment equipment) {
  /** When it started, by the log's clock. */
  public Instant start() {
    return window.start();
  }

  /** How long it took [s]. */
  public double seconds() {
    return window.frame().seconds();
  }

  /** The exposure as the result shows it. */
  public Exposure result() {
    Optional<MeasuredShape> measured = window.measured();
    OptionalDouble angle =
        predicted.map(PredictedShape::angleDegrees).orElse(OptionalDouble.empty());
    Optional<SkyShift> shift = measured.flatMap(MeasuredShape::shift);
    return new Exposure(
        window.frame().file(),
        start().plusNanos(500_000).truncatedTo(ChronoUnit.MILLIS).toString(),
        seconds(),
        window.coverage(),
        predicted.map(PredictedShape::elongation).orElse(null),
        orNull(angle),
        measured.map(MeasuredShape::elongation).orElse(null),
        measured.map(m -> orNull(m.fwhmArcsec())).orElse(null),
        measured.map(m -> orNull(m.angleDegrees())).orElse(null),
        shift.map(SkyShift::eastArcsec).orElse(null),
        shift.map(SkyShift::northArcsec).orElse(null),
        verdict,
        cause.code(),
        predicted.map(PredictedShape::majorFwhmArcsec).orElse(null),
        predicted.map(PredictedShape::minorFwhmArcsec).orElse(null),
        angle.isPresent()
            ? orNull(MeasuredShape.onSensor(window.frame(), equipment, angle.getAsDouble()))
            : null,
        measured.map(MeasuredShape::pattern).filter(p -> !p.equals("unknown")).orElse(null),
        cause.evidence().isEmpty() ? null : cause.evidence(),
        corner.orElse(null),
        measured.flatMap(MeasuredShape::corner).orElse(null));
  }

  /** Why figures of {@link #result} are null, by their place below it. */
  public Map<String, String> missing() {
    Exposure shown = result();
    Map<String, String> missing = new LinkedHashMap<>();
    // What is not covered says why in place of a cause's evidence.
    String log = cause.evidence();
    note(missing, "predictedElongation", shown.predictedElongation(), log);
    note(missing, "predictedMajorFwhmArcsec", shown.predictedMajorFwhmArcsec(), log);
    note(missing, "predictedMinorFwhmArcsec", shown.predictedMinorFwhmArcsec(), log);
    String direction = predicted.isEmpty() ? log : "by the log the star may be round";
    note(missing, "predictedAngleDeg", shown.predictedAngleDeg(), direction);
    note(
        missing,
        "predictedSensorAngleDeg",
        shown.predictedSensorAngleDeg(),
        shown.predictedAngleDeg() == null
            ? direction
            : "how the camera is turned on the sky is not known");
    note(
        missing,
        "predictedCornerElongation",
        shown.predictedCornerElongation(),
        predicted.isEmpty()
            ? log
            : "the turn of the field, the place of the guide star or the size of the sensor is not"
                + " known");
    boolean seen = window.measured().isPresent();
    String image = "no shape of it is listed, and no image of it was measured";
    note(missing, "measuredElongation", shown.measuredElongation(), image);
    note(
        missing,
        "measuredFwhmArcsec",
        shown.measuredFwhmArcsec(),
        seen ? "the scale of its pixels is not known" : image);
    note(
        missing,
        "measuredAngleDeg",
        shown.measuredAngleDeg(),
        seen ? "its stars may be round, or how the camera is turned is not known" : image);
    String shift =
        seen
            ? "no exposure before it shows its stars again, or where the camera points is not known"
            : image;
    note(missing, "shiftEastArcsec", shown.shiftEastArcsec(), shift);
    note(missing, "shiftNorthArcsec", shown.shiftNorthArcsec(), shift);
    String field =
        seen ? "too few of its stars were measured, or the list of exposures does not say" : image;
    note(missing, "measuredPattern", shown.measuredPattern(), field);
    note(missing, "measuredCornerElongation", shown.measuredCornerElongation(), field);
    String why =
        switch (verdict) {
          case "trailed" -> "nothing that is looked for explains it";
          case "not covered" -> log;
          default -> "it is not trailed";
        };
    note(missing, "cause", shown.cause(), why);
    note(missing, "evidence", shown.evidence(), why);
    return missing;
  }

  private static void note(
      Map<String, String> missing, String figure, Object value, String because) {
    if (value == null) {
      missing.put("/" + figure, because);
    }
  }

  private static Double orNull(OptionalDouble value) {
    return value.isPresent() ? value.getAsDouble() : null;
  }
}
