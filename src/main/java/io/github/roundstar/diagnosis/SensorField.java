package io.github.roundstar.diagnosis;

import io.github.roundstar.model.Equipment;
import java.util.Optional;

/**
 * The main camera's field and the guide star's place in it or beside it.
 *
 * @param widthArcmin width [arcmin]
 * @param heightArcmin height [arcmin]
 * @param starXArcmin guide star, right of the middle [arcmin]
 * @param starYArcmin guide star, above the middle [arcmin]
 * @param starKnown whether that was given; else the star is put in a corner, the worst place within
 *     the field
 * @param arcsecPerPixel scale [arcsec per binned pixel]
 */
record SensorField(
    double widthArcmin,
    double heightArcmin,
    double starXArcmin,
    double starYArcmin,
    boolean starKnown,
    double arcsecPerPixel) {
  /** Nothing without scale and size. */
  static Optional<SensorField> of(Equipment equipment) {
    Equipment.ImagingOptics imaging = equipment.imaging();
    if (imaging.arcsecPerPixel().isEmpty()
        || imaging.widthPixels().isEmpty()
        || imaging.heightPixels().isEmpty()) {
      return Optional.empty();
    }
    double scale = imaging.arcsecPerPixel().getAsDouble();
    double unbinned = scale / imaging.binning().orElse(1) / 60;
    double width = imaging.widthPixels().getAsInt() * unbinned;
    double height = imaging.heightPixels().getAsInt() * unbinned;
    Equipment.GuideOptics guide = equipment.guide();
    boolean known = guide.starXArcmin().isPresent() && guide.starYArcmin().isPresent();
    return Optional.of(
        new SensorField(
            width,
            height,
            known ? guide.starXArcmin().getAsDouble() : -width / 2,
            known ? guide.starYArcmin().getAsDouble() : -height / 2,
            known,
            scale));
  }

  /** From the guide star to the corner farthest from it [arcmin]. */
  double farthestArcmin() {
    return Math.hypot(
        widthArcmin / 2 + Math.abs(starXArcmin), heightArcmin / 2 + Math.abs(starYArcmin));
  }
}
