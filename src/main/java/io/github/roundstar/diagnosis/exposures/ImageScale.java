package io.github.roundstar.diagnosis.exposures;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.ExposureFrame;
import io.github.roundstar.model.ExposureFrame.ScaleFrom;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * Sky per pixel of an exposure. A FITS header speaks of the image it stands in, binning included,
 * and wins over the equipment file; that wins over an Exif header, which knows no telescope.
 *
 * @param arcsecPerPixel the scale [arcsec]
 * @param from where it is from, in words
 */
record ImageScale(double arcsecPerPixel, String from) {

  /** The scale; nothing where neither file tells. */
  static Optional<ImageScale> of(ExposureFrame frame, Equipment equipment) {
    OptionalDouble own = frame.optics().arcsecPerPixel();
    OptionalDouble declared = equipment.imaging().arcsecPerPixel();
    ScaleFrom from = frame.optics().scaleFrom();
    boolean header = own.isPresent() && (from != ScaleFrom.EXIF || declared.isEmpty());
    if (header) {
      return Optional.of(new ImageScale(own.getAsDouble(), from.words()));
    }
    return declared.isPresent()
        ? Optional.of(new ImageScale(declared.getAsDouble(), "the equipment file"))
        : Optional.empty();
  }

  /** The scale that all exposures share; nothing where they differ or one has none. */
  static OptionalDouble shared(List<ExposureFrame> frames, Equipment equipment) {
    double[] scales =
        frames.stream()
            .map(frame -> of(frame, equipment))
            .mapToDouble(scale -> scale.map(ImageScale::arcsecPerPixel).orElse(Double.NaN))
            .distinct()
            .toArray();
    return scales.length == 1 && scales[0] > 0
        ? OptionalDouble.of(scales[0])
        : OptionalDouble.empty();
  }

  /** Which scales a night's exposures have, and where from. */
  static String words(List<ExposureFrame> frames, Equipment equipment) {
    Map<String, Integer> counts = new TreeMap<>();
    for (ExposureFrame frame : frames) {
      String scale =
          of(frame, equipment)
              .map(
                  s ->
                      String.format(
                          Locale.ROOT, "%.2f arcsec per pixel, from %s", s.arcsecPerPixel, s.from))
              .orElse("not known: give focal_length_mm and pixel_um in the equipment file");
      counts.merge(scale, 1, Integer::sum);
    }
    StringBuilder text = new StringBuilder("Scale of the images: ");
    counts.forEach(
        (scale, count) ->
            text.append(text.charAt(text.length() - 1) == ' ' ? "" : "; ")
                .append(scale)
                .append(counts.size() > 1 ? " (" + count + ")" : ""));
    return text.append('.').toString();
  }
}
