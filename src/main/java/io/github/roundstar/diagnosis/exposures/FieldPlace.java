package io.github.roundstar.diagnosis.exposures;

import io.github.roundstar.model.Equipment;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A place in the main camera's field, from its centre.
 *
 * @param eastArcsec east [arcsec]
 * @param northArcsec north [arcsec]
 */
record FieldPlace(double eastArcsec, double northArcsec) {
  private static final double ARCSEC_PER_ARCMIN = 60;

  /** The field's centre. */
  static final FieldPlace CENTRE = new FieldPlace(0, 0);

  /** The guide star, where its place was told; a sensor whose angle was not told stands upright. */
  static Optional<FieldPlace> guideStar(Equipment equipment) {
    Equipment.GuideOptics guide = equipment.guide();
    return guide.starXArcmin().isEmpty() || guide.starYArcmin().isEmpty()
        ? Optional.empty()
        : Optional.of(
            of(
                equipment,
                guide.starXArcmin().getAsDouble() * ARCSEC_PER_ARCMIN,
                guide.starYArcmin().getAsDouble() * ARCSEC_PER_ARCMIN));
  }

  /**
   * Where the guide star likely is, where its place was not told: in the middle, where a guide
   * scope looks, or beside the field's upper edge, where the prism of an off-axis guider stands;
   * common practice, no source.
   */
  static FieldPlace likelyGuideStar(Equipment equipment, Optional<ImageScale> scale) {
    boolean offAxis =
        equipment.guide().arrangement().filter(Equipment.Arrangement.OFF_AXIS::equals).isPresent();
    List<FieldPlace> corners = offAxis ? corners(equipment, scale) : List.of();
    return guideStar(equipment)
        .orElseGet(
            () ->
                corners.isEmpty()
                    ? CENTRE
                    : new FieldPlace(
                        (corners.get(0).eastArcsec() + corners.get(1).eastArcsec()) / 2,
                        (corners.get(0).northArcsec() + corners.get(1).northArcsec()) / 2));
  }

  /** The four corners; none where scale or size were not told. */
  static List<FieldPlace> corners(Equipment equipment, Optional<ImageScale> scale) {
    Equipment.ImagingOptics imaging = equipment.imaging();
    List<FieldPlace> corners = new ArrayList<>();
    if (scale.isPresent()
        && imaging.widthPixels().isPresent()
        && imaging.heightPixels().isPresent()) {
      double unbinned = scale.get().arcsecPerPixel() / imaging.binning().orElse(1);
      double right = imaging.widthPixels().getAsInt() * unbinned / 2;
      double above = imaging.heightPixels().getAsInt() * unbinned / 2;
      corners.add(of(equipment, right, above));
      corners.add(of(equipment, -right, above));
      corners.add(of(equipment, right, -above));
      corners.add(of(equipment, -right, -above));
    }
    return corners;
  }

  private static FieldPlace of(Equipment equipment, double right, double above) {
    double up = Math.toRadians(equipment.imaging().positionAngleDegrees().orElse(0));
    double west = right * (equipment.imaging().mirrored() ? -1 : 1);
    return new FieldPlace(
        -west * Math.cos(up) + above * Math.sin(up), west * Math.sin(up) + above * Math.cos(up));
  }

  /** What a turn of the field about another place adds here: (ee, nn, en) [arcsec2]. */
  double[] turned(FieldPlace pivot, double radians) {
    return PredictedShape.trail(
        radians * (northArcsec - pivot.northArcsec), -radians * (eastArcsec - pivot.eastArcsec));
  }
}
