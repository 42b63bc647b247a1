package io.github.roundstar.formats;

import com.drew.imaging.ImageMetadataReader;
import com.drew.imaging.ImageProcessingException;
import com.drew.metadata.Directory;
import com.drew.metadata.Metadata;
import com.drew.metadata.exif.ExifDirectoryBase;
import com.drew.metadata.exif.ExifIFD0Directory;
import com.drew.metadata.exif.ExifSubIFDDirectory;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a camera wrote beside a photograph (raw or JPEG) by the Exif standard.
 *
 * @param taken date and time by the camera's clock, {@code yyyy:MM:dd HH:mm:ss}, with fractions of
 *     a second where given
 * @param offset offset of that clock from UTC such as {@code +02:00}
 * @param exposureSeconds exposure time [s]
 * @param focalLengthMillimetres focal length [mm]
 * @param pixelMicrometres pixel pitch by the resolution in the focal plane [um]
 * @see "CIPA DC-008 / JEITA CP-3451 (Exif 2.32): DateTimeOriginal, OffsetTimeOriginal,
 *     SubSecTimeOriginal, ExposureTime, FocalLength, FocalPlaneXResolution,
 *     FocalPlaneResolutionUnit"
 */
public record PhotoHeader(
    Optional<String> taken,
    Optional<String> offset,
    OptionalDouble exposureSeconds,
    OptionalDouble focalLengthMillimetres,
    OptionalDouble pixelMicrometres) {
  private static final int INCH = 2;

  /** Micrometres in the units of FocalPlaneResolutionUnit; 4 and 5 are beyond the standard. */
  private static final Map<Integer, Double> UNIT_MICROMETRES =
      Map.of(INCH, 25_400.0, 3, 10_000.0, 4, 1000.0, 5, 1.0);

  /**
   * Reads a file's header.
   *
   * @throws FormatException if it is no photograph, or its header is damaged
   */
  public static PhotoHeader read(Path path) throws IOException, FormatException {
    String file = String.valueOf(path.getFileName());
    try (InputStream in = new BufferedInputStream(Files.newInputStream(path))) {
      Metadata metadata = ImageMetadataReader.readMetadata(in, Files.size(path));
      List<Directory> parts = new ArrayList<>();
      metadata.getDirectoriesOfType(ExifSubIFDDirectory.class).forEach(parts::add);
      metadata.getDirectoriesOfType(ExifIFD0Directory.class).forEach(parts::add);
      return of(parts);
    } catch (ImageProcessingException | RuntimeException e) {
      FormatException fault =
          new FormatException(
              file, 0, "is no photograph that can be read", "give raw or JPEG files of a camera");
      fault.initCause(e);
      throw fault;
    }
  }

  private static PhotoHeader of(List<Directory> parts) {
    Optional<String> fraction = text(parts, ExifDirectoryBase.TAG_SUBSECOND_TIME_ORIGINAL);
    Optional<String> taken = text(parts, ExifDirectoryBase.TAG_DATETIME_ORIGINAL);
    return new PhotoHeader(
        taken.map(t -> t + fraction.filter(f -> f.matches("\\d+")).map(f -> "." + f).orElse("")),
        text(parts, ExifDirectoryBase.TAG_TIME_ZONE_ORIGINAL)
            .or(() -> text(parts, ExifDirectoryBase.TAG_TIME_ZONE)),
        number(parts, ExifDirectoryBase.TAG_EXPOSURE_TIME),
        number(parts, ExifDirectoryBase.TAG_FOCAL_LENGTH),
        pitch(parts));
  }

  private static OptionalDouble pitch(List<Directory> parts) {
    OptionalDouble perUnit = number(parts, ExifDirectoryBase.TAG_FOCAL_PLANE_X_RESOLUTION);
    int unit = (int) number(parts, ExifDirectoryBase.TAG_FOCAL_PLANE_RESOLUTION_UNIT).orElse(INCH);
    return perUnit.isPresent() && perUnit.getAsDouble() > 0 && UNIT_MICROMETRES.containsKey(unit)
        ? OptionalDouble.of(UNIT_MICROMETRES.get(unit) / perUnit.getAsDouble())
        : OptionalDouble.empty();
  }

  private static Optional<String> text(List<Directory> parts, int tag) {
    return parts.stream()
        .map(part -> part.getString(tag))
        .filter(value -> value != null && !value.isBlank())
        .map(String::strip)
        .findFirst();
  }

  private static OptionalDouble number(List<Directory> parts, int tag) {
    return parts.stream()
        .map(part -> part.getDoubleObject(tag))
        .filter(value -> value != null && Double.isFinite(value))
        .mapToDouble(Double::doubleValue)
        .findFirst();
  }
}
