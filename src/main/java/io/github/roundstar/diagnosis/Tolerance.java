package io.github.roundstar.diagnosis;

import io.github.roundstar.diagnosis.exposures.RoundTrail;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.sky.FieldRotation;
import io.github.roundstar.sky.GuideTolerance;
import io.github.roundstar.sky.ImageScale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What optics demand of a mount, without any log. Each figure has its value or the reason for which
 * it is missing.
 *
 * @param arcsecPerPixel scale of the main camera
 * @param starFwhmArcsec width of a star, air and diffraction together [arcsec]
 * @param pixelsPerFwhm sampling
 * @param axisRmsArcsec guide RMS of one axis at the limit of elongation, the other perfect [arcsec]
 * @param sharedRmsArcsec the same of the worse axis with both scattering as asked [arcsec];
 *     infinite when so even a scatter never makes stars oval
 * @param driftArcsec even drift over an exposure at the limit of elongation [arcsec]
 * @param polarArcmin polar-axis error with half a pixel of trail in the corner [arcmin]
 * @param unguidedSeconds exposure without guiding that the periodic error allows [s]; infinite when
 *     its whole swing is small enough
 * @param guideScaleRatio guide camera's scale over the main camera's
 */
public record Tolerance(
    Answer<Double> arcsecPerPixel,
    Answer<Double> starFwhmArcsec,
    Answer<Double> pixelsPerFwhm,
    Answer<Double> axisRmsArcsec,
    Answer<Double> sharedRmsArcsec,
    Answer<Double> driftArcsec,
    Answer<Double> polarArcmin,
    Answer<Double> unguidedSeconds,
    Answer<Double> guideScaleRatio) {
  private static final double HALF_PIXEL = 0.5;
  private static final String NO_DECLINATION =
      "the declination of the field is not given: add --declination";

  /** Works them out. */
  public static Tolerance of(ToleranceQuestion question) {
    Equipment equipment = question.equipment();
    double limit = equipment.limits().elongation();
    Answer<Double> scale =
        known(equipment.imaging().arcsecPerPixel(), "focal length and pixel size are not given");
    Answer<Double> star =
        known(equipment.seeingFwhmArcsec(), "the usual seeing is not given")
            .map(air -> withDiffraction(air, question.imagingApertureMillimetres()));
    Answer<Double> drift = star.map(fwhm -> RoundTrail.arcsec(fwhm, limit));
    return new Tolerance(
        scale,
        star,
        scale.then(pixel -> star.map(fwhm -> fwhm / pixel)),
        star.map(fwhm -> GuideTolerance.axisRmsArcsec(fwhm, limit)),
        known(question.otherShare(), "the ratio of the two axes is not given")
            .then(share -> star.map(f -> GuideTolerance.axisRmsArcsec(f, limit, share))),
        drift,
        polar(question),
        drift.then(length -> unguided(question, length)),
        guideScale(equipment));
  }

  private static double withDiffraction(double air, OptionalDouble aperture) {
    return aperture.isEmpty()
        ? air
        : Math.hypot(air, ImageScale.diffractionFwhmArcsec(aperture.getAsDouble()));
  }

  private static Answer<Double> polar(ToleranceQuestion question) {
    Optional<SensorField> sensor = SensorField.of(question.equipment());
    OptionalDouble exposure = question.equipment().imaging().exposureSeconds();
    if (sensor.isEmpty() || exposure.isEmpty()) {
      return Answer.none("scale, sensor size or exposure are not given");
    }
    if (question.declinationDegrees().isEmpty()) {
      return Answer.none(NO_DECLINATION);
    }
    SensorField field = sensor.get();
    return Answer.of(
        FieldRotation.axisErrorArcmin(
            60 * field.farthestArcmin(),
            exposure.getAsDouble(),
            HALF_PIXEL * field.arcsecPerPixel(),
            question.declinationDegrees().getAsDouble()));
  }

  private static Answer<Double> unguided(ToleranceQuestion question, double driftArcsec) {
    if (question.periodicArcsec().isEmpty() || question.periodSeconds().isEmpty()) {
      return Answer.none("the periodic error or its period are not given");
    }
    if (question.declinationDegrees().isEmpty()) {
      return Answer.none(NO_DECLINATION);
    }
    double sky =
        question.periodicArcsec().getAsDouble()
            * Math.cos(Math.toRadians(question.declinationDegrees().getAsDouble()));
    return Answer.of(
        GuideTolerance.exposureSeconds(question.periodSeconds().getAsDouble(), sky, driftArcsec));
  }

  private static Answer<Double> guideScale(Equipment equipment) {
    Equipment.GuideOptics guide = equipment.guide();
    OptionalDouble imaging = equipment.imaging().arcsecPerPixel();
    if (guide.focalLengthMillimetres().isEmpty()
        || guide.pixelMicrometres().isEmpty()
        || imaging.isEmpty()) {
      return Answer.none("the guide camera's focal length and pixel size are not given");
    }
    return Answer.of(
        ImageScale.arcsecPerPixel(
                guide.focalLengthMillimetres().getAsDouble(),
                guide.pixelMicrometres().getAsDouble(),
                guide.binning().orElse(1))
            / imaging.getAsDouble());
  }

  private static Answer<Double> known(OptionalDouble value, String because) {
    return value.isPresent() ? Answer.of(value.getAsDouble()) : Answer.none(because);
  }
}
