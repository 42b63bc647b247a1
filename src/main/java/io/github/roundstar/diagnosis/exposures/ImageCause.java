package io.github.roundstar.diagnosis.exposures;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.signal.Stretch;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What trailed an exposure whose stars are longer than the guide log explains. The rules, in order:
 *
 * <ol>
 *   <li>The pattern over the field, where the shapes differ between its corners by at least half of
 *       the worst corner's stretch. {@code field-rotation}: the stars lie along circles about a
 *       point.
 *   <li>{@code optics}: they point outwards from the centre, or grow towards one side.
 *   <li>{@code differential-refraction}: the air moves the field against the guide star, and the
 *       trail of that explains at least half of what is missing, along the measured axis.
 *   <li>{@code differential-flexure}: the two cameras surely move apart, and the trail of that
 *       leaves at most half of what is missing, the angle counted in.
 *   <li>{@code atmospheric-dispersion}: the long axis points to the zenith, here and in the median
 *       of all such exposures of the night, the star is at least 35 degrees from it, and the growth
 *       with zenith distance ({@link ZenithGrowth}) is not surely too small for half of it. Since a
 *       fixed angle may lie near the vertical by chance, either that growth is seen, or that the
 *       axis turns with the zenith's direction ({@link ZenithTurn}).
 *   <li>{@code focus}: the stars are at least 1.4 times as wide as in the night's best tenth.
 *   <li>{@code optics}: the long axis keeps its angle over all such exposures, three or more.
 * </ol>
 *
 * <p>Limits: common practice, no source; simulated nights with one fault confirm them.
 */
final class ImageCause {
  private static final double HALF = 0.5;
  private static final double SAME_ANGLE_DEGREES = 25;
  private static final double ZENITH_ANGLE_DEGREES = 15;
  private static final double LEAST_ZENITH_DISTANCE_DEGREES = 35;
  private static final double WIDE = 1.4;
  private static final int FEWEST_ALIKE = 3;

  /**
   * What the night's unexplained exposures have in common.
   *
   * @param flexure how the cameras move apart
   * @param bestFwhmArcsec width that a tenth of the night's exposures stay below [arcsec]
   * @param offZenithDegrees median angle between long axis and zenith direction over them [deg]
   * @param angleScatterDegrees largest angle between any long axis and their mean [deg]
   * @param alike how many they are
   * @param growth how images get longer towards the zenith with zenith distance
   * @param turn how the long axis turns with the zenith's direction
   */
  record NightContext(
      Optional<Flexure> flexure,
      OptionalDouble bestFwhmArcsec,
      OptionalDouble offZenithDegrees,
      OptionalDouble angleScatterDegrees,
      int alike,
      Optional<ZenithGrowth> growth,
      Optional<ZenithTurn> turn) {
    /** Whether anything but its angle shows that the air makes the stars long. */
    boolean airShows() {
      return growth.filter(ZenithGrowth::certain).isPresent()
          || turn.filter(ZenithTurn::certain).isPresent();
    }
  }

  private final NightContext night;
  private final Equipment equipment;

  ImageCause(NightContext night, Equipment equipment) {
    this.night = night;
    this.equipment = equipment;
  }

  /**
   * The cause; its code is null when no rule holds.
   *
   * @param window the exposure on the log
   * @param measured what its stars tell
   * @param zenith where the zenith was, if that can be known
   * @param seeing width of the round image [arcsec]
   */
  Cause find(
      Window window, MeasuredShape measured, Optional<ZenithDirection> zenith, double seeing) {
    return pattern(measured)
        .or(() -> refraction(window, measured, seeing))
        .or(() -> flexure(window, measured, seeing))
        .or(() -> dispersion(window, measured, zenith, seeing))
        .or(() -> focus(measured))
        .or(() -> fixedAngle(measured))
        .orElse(
            new Cause(
                null, "the stars are longer than the guide log explains, and nothing tells why"));
  }

  private static Optional<Cause> pattern(MeasuredShape measured) {
    if (!measured.patternStands()) {
      return Optional.empty();
    }
    String corner =
        measured
            .corner()
            .map(
                c ->
                    format(
                        ": elongation %.2f (%.2f .. %.2f) in the worst corner",
                        c.value(), c.lo95(), c.hi95()))
            .orElse("");
    return switch (measured.pattern()) {
      case "rotation" ->
          Optional.of(
              new Cause(
                  "field-rotation",
                  "the stars lie along circles about a point of the field" + corner));
      case "radial" ->
          Optional.of(
              new Cause(
                  "optics", "the stars point outwards from the centre of the field" + corner));
      case "one-sided" ->
          Optional.of(new Cause("optics", "the stars grow towards one side of the field" + corner));
      default -> Optional.empty();
    };
  }

  private Optional<Cause> refraction(Window window, MeasuredShape measured, double seeing) {
    double from = window.startSeconds();
    double to = from + window.frame().seconds();
    return window
        .air(equipment)
        .value()
        .flatMap(air -> air.shift(from, to))
        .flatMap(
            shift ->
                explaining(window, measured, seeing, shift.eastArcsec(), shift.northArcsec())
                    .map(
                        elongation ->
                            new Cause(
                                "differential-refraction",
                                format(
                                    "the air moves the field by %.2f arcsec east and %.2f north"
                                        + " against the guide star, which gives an elongation of"
                                        + " %.2f",
                                    shift.eastArcsec(), shift.northArcsec(), elongation))));
  }

  private Optional<Cause> flexure(Window window, MeasuredShape measured, double seeing) {
    if (night.flexure().isEmpty() || !night.flexure().get().certain()) {
      return Optional.empty();
    }
    Flexure flexure = night.flexure().get();
    double hours = window.frame().seconds() / 3600;
    double east = flexure.eastArcsecPerHour().value() * hours;
    double north = flexure.northArcsecPerHour().value() * hours;
    String because = window.air(equipment).because();
    String air =
        because.isEmpty()
            ? "; refraction between guide star and field is taken off"
            : "; refraction between guide star and field is not taken off, since " + because;
    return explaining(window, measured, seeing, east, north)
        .map(
            elongation ->
                new Cause(
                    "differential-flexure",
                    format(
                            "the cameras move apart by %.1f (%.1f .. %.1f) arcsec/h east and %.1f"
                                + " (%.1f .. %.1f) north, which gives an elongation of %.2f",
                            flexure.eastArcsecPerHour().value(),
                            flexure.eastArcsecPerHour().lo95(),
                            flexure.eastArcsecPerHour().hi95(),
                            flexure.northArcsecPerHour().value(),
                            flexure.northArcsecPerHour().lo95(),
                            flexure.northArcsecPerHour().hi95(),
                            elongation)
                        + air));
  }

  /**
   * Elongation with a steady drift added to the star's path, where that leaves at most half of what
   * the log alone leaves between the predicted and the measured stretch, angle and all.
   */
  private static Optional<Double> explaining(
      Window window, MeasuredShape measured, double seeing, double east, double north) {
    Stretch alone = PredictedShape.stretch(window.core(i -> true, new double[3], seeing));
    Stretch with =
        PredictedShape.stretch(window.drifting(east, north).core(i -> true, new double[3], seeing));
    boolean explains = away(measured, with) <= HALF * away(measured, alone);
    return explains ? Optional.of(with.elongation()) : Optional.empty();
  }

  /**
   * Distance between two stretches as vectors of length ln(elongation) at twice their angle; of the
   * lengths alone where the measured angle is not known.
   */
  private static double away(MeasuredShape measured, Stretch predicted) {
    double found = Math.log(measured.elongation().value());
    double told = Math.log(predicted.elongation());
    double turn =
        measured.angleDegrees().isPresent()
            ? Math.toRadians(2 * (measured.angleDegrees().getAsDouble() - predicted.angleDegrees()))
            : 0;
    return Math.hypot(found - told * Math.cos(turn), told * Math.sin(turn));
  }

  private Optional<Cause> dispersion(
      Window window, MeasuredShape measured, Optional<ZenithDirection> zenith, double seeing) {
    if (zenith.isEmpty()
        || measured.angleDegrees().isEmpty()
        || night.offZenithDegrees().isEmpty()) {
      return Optional.empty();
    }
    double off = apart(measured.angleDegrees().getAsDouble(), zenith.get().positionAngleDegrees());
    boolean low = zenith.get().distanceDegrees() >= LEAST_ZENITH_DISTANCE_DEGREES;
    boolean towards =
        off < ZENITH_ANGLE_DEGREES && night.offZenithDegrees().getAsDouble() < ZENITH_ANGLE_DEGREES;
    boolean denied =
        night.growth().isPresent()
            && ZenithGrowth.point(window, equipment, seeing)
                .map(night.growth().get()::deniesHalfOf)
                .orElse(false);
    return low && towards && !denied && night.airShows()
        ? Optional.of(
            new Cause(
                "atmospheric-dispersion",
                format(
                        "the long axis lies within %.0f deg of the zenith direction, at %.0f deg zenith"
                            + " distance",
                        off, zenith.get().distanceDegrees())
                    + growing()))
        : Optional.empty();
  }

  /** The growth where it is seen, else the turn. */
  private String growing() {
    return night
        .growth()
        .filter(ZenithGrowth::certain)
        .map(
            growth ->
                format(
                    "; over %d exposures it grows as the tangent of that distance, to a spread of"
                        + " %.2f (%.2f .. %.2f) arcsec at 45 deg",
                    growth.exposures(),
                    growth.spreadArcsec().value(),
                    growth.spreadArcsec().lo95(),
                    growth.spreadArcsec().hi95()))
        .orElseGet(
            () -> {
              ZenithTurn turn = night.turn().orElseThrow();
              return format(
                  "; over %d exposures it turns by %.1f (%.1f .. %.1f) of what the zenith's"
                      + " direction does; whether it grows with that distance cannot be told from"
                      + " them",
                  turn.exposures(), turn.slope().value(), turn.slope().lo95(), turn.slope().hi95());
            });
  }

  private Optional<Cause> focus(MeasuredShape measured) {
    if (measured.fwhmArcsec().isEmpty() || night.bestFwhmArcsec().isEmpty()) {
      return Optional.empty();
    }
    double ratio = measured.fwhmArcsec().getAsDouble() / night.bestFwhmArcsec().getAsDouble();
    return ratio >= WIDE
        ? Optional.of(
            new Cause(
                "focus", format("the stars are %.1f times as wide as in the best images", ratio)))
        : Optional.empty();
  }

  private Optional<Cause> fixedAngle(MeasuredShape measured) {
    boolean same =
        night.alike() >= FEWEST_ALIKE
            && measured.angleDegrees().isPresent()
            && night.angleScatterDegrees().isPresent()
            && night.angleScatterDegrees().getAsDouble() < SAME_ANGLE_DEGREES;
    return same
        ? Optional.of(
            new Cause(
                "optics",
                format(
                    "the stars of %d exposures are long at one angle, whatever the guiding did",
                    night.alike())))
        : Optional.empty();
  }

  /** Angle between two axes [deg, 0..90]. */
  static double apart(double one, double other) {
    double apart = Math.abs(one - other) % 180;
    return Math.min(apart, 180 - apart);
  }

  private static String format(String pattern, Object... values) {
    return String.format(Locale.ROOT, pattern, values);
  }
}
