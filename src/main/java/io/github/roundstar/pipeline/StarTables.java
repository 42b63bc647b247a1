package io.github.roundstar.pipeline;

import io.github.roundstar.formats.EcsvWriter;
import io.github.roundstar.formats.EcsvWriter.Column;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.stars.ImageShape;
import io.github.roundstar.stars.Star;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Writes what was measured of images: one table of images, and one table of stars per image. */
public final class StarTables {
  private StarTables() {}

  /**
   * Writes {@code images.ecsv} and {@code IMAGE.stars.ecsv} into a folder.
   *
   * @return the files, the images' table first
   */
  public static List<Path> write(Path folder, List<StarImages.Measured> images)
      throws UnwritableOutputException {
    Map<Path, byte[]> files = new LinkedHashMap<>();
    try {
      files.put(folder.resolve("images.ecsv"), bytes(images(images)));
      for (StarImages.Measured image : images) {
        if (image.shape().isPresent()) {
          files.put(
              folder.resolve(image.file() + ".stars.ecsv"), bytes(stars(image.shape().get())));
        }
      }
    } catch (IOException e) {
      throw new UnwritableOutputException(folder, e);
    }
    FileInPlace.write(files);
    return List.copyOf(files.keySet());
  }

  private static byte[] bytes(StringBuilder text) {
    return text.toString().getBytes(StandardCharsets.UTF_8);
  }

  private static StringBuilder images(List<StarImages.Measured> images) throws IOException {
    StringBuilder text = new StringBuilder();
    EcsvWriter table =
        new EcsvWriter(
            text,
            List.of(
                new Column("file", "string", ""),
                new Column("stars", "int64", ""),
                new Column("fwhm", "float64", "pix"),
                new Column("elongation", "float64", ""),
                new Column("elongation_lo", "float64", ""),
                new Column("elongation_hi", "float64", ""),
                new Column("angle", "float64", "deg"),
                new Column("pattern", "string", ""),
                new Column("background", "float64", "adu"),
                new Column("noise", "float64", "adu"),
                new Column("problem", "string", "")),
            Map.of("angle_from", "+x towards +y"));
    for (StarImages.Measured image : images) {
      table.row(image.shape().map(s -> row(image.file(), s)).orElseGet(() -> row(image)));
    }
    return text;
  }

  private static List<String> row(StarImages.Measured unusable) {
    return List.of(unusable.file(), "", "", "", "", "", "", "", "", "", unusable.problem());
  }

  private static List<String> row(String file, ImageShape shape) {
    List<String> row = new ArrayList<>();
    row.add(file);
    row.add(Integer.toString(shape.stars().size()));
    row.add(shape.fwhmPixels().map(e -> number(e.value())).orElse(""));
    row.add(shape.elongation().map(e -> number(e.value())).orElse(""));
    row.add(shape.elongation().map(Estimate::lo95).map(StarTables::number).orElse(""));
    row.add(shape.elongation().map(Estimate::hi95).map(StarTables::number).orElse(""));
    row.add(shape.angleDegrees().isPresent() ? number(shape.angleDegrees().getAsDouble()) : "");
    row.add(shape.pattern().kind().name().toLowerCase(Locale.ROOT).replace('_', '-'));
    row.add(number(shape.backgroundAdu()));
    row.add(number(shape.noiseAdu()));
    row.add("");
    return row;
  }

  private static StringBuilder stars(ImageShape shape) throws IOException {
    StringBuilder text = new StringBuilder();
    EcsvWriter table =
        new EcsvWriter(
            text,
            List.of(
                new Column("x", "float64", "pix"),
                new Column("y", "float64", "pix"),
                new Column("flux", "float64", "adu"),
                new Column("snr", "float64", ""),
                new Column("fwhm_major", "float64", "pix"),
                new Column("fwhm_minor", "float64", "pix"),
                new Column("elongation", "float64", ""),
                new Column("elongation_lo", "float64", ""),
                new Column("elongation_hi", "float64", ""),
                new Column("angle", "float64", "deg")),
            Map.of("angle_from", "+x towards +y", "first_pixel", 1));
    for (Star star : shape.stars()) {
      table.row(
          List.of(
              number(star.x()),
              number(star.y()),
              number(star.flux()),
              number(star.snr()),
              number(star.majorFwhmPixels()),
              number(star.minorFwhmPixels()),
              number(star.elongation().value()),
              number(star.elongation().lo95()),
              number(star.elongation().hi95()),
              number(star.angleDegrees())));
    }
    return text;
  }

  /** Four decimals; tables of thousands of stars would spend a tenth of a second on formats. */
  private static String number(double value) {
    return Double.isFinite(value)
        ? BigDecimal.valueOf(value).setScale(4, RoundingMode.HALF_UP).toPlainString()
        : Double.toString(value);
  }
}
