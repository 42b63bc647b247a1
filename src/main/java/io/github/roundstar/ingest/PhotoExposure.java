package io.github.roundstar.ingest;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.formats.PhotoHeader;
import io.github.roundstar.model.ExposureFrame;
import io.github.roundstar.model.ExposureFrame.CameraClock;
import io.github.roundstar.model.ExposureFrame.Optics;
import io.github.roundstar.model.ExposureFrame.ScaleFrom;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;

/** What the Exif header of a photograph says of its exposure. */
final class PhotoExposure {
  private PhotoExposure() {}

  /**
   * The exposure.
   *
   * @throws FormatException if start or duration are missing or wrong
   */
  static ExposureFrame of(Path path, PhotoHeader header) throws FormatException {
    String file = String.valueOf(path.getFileName());
    Optional<String> taken =
        header.taken().map(t -> t.replaceFirst("^(\\d{4}):(\\d\\d):(\\d\\d)", "$1-$2-$3"));
    Optional<Instant> zoned =
        taken.flatMap(t -> header.offset().flatMap(offset -> FitsTime.instant(t + offset)));
    Optional<Instant> start = zoned.or(() -> taken.flatMap(FitsTime::instant));
    if (start.isEmpty()) {
      throw new FormatException(
          file, 0, "tells no DateTimeOriginal", "list it with its start in a table");
    }
    if (header.exposureSeconds().isEmpty() || header.exposureSeconds().getAsDouble() <= 0) {
      throw new FormatException(
          file, 0, "tells no ExposureTime", "list it with its seconds in a table");
    }
    return new ExposureFrame(
        file,
        start.get(),
        zoned.isPresent() ? CameraClock.UTC : CameraClock.LOCAL,
        header.exposureSeconds().getAsDouble(),
        optics(header),
        Optional.empty(),
        Optional.empty());
  }

  private static Optics optics(PhotoHeader header) {
    OptionalDouble focal = header.focalLengthMillimetres();
    OptionalDouble pixel = header.pixelMicrometres();
    if (focal.isEmpty() || !(focal.getAsDouble() > 0) || pixel.isEmpty()) {
      return Optics.UNKNOWN;
    }
    Optics no = Optics.UNKNOWN;
    return new Optics(
        OptionalDouble.of(Math.toDegrees(3600 * pixel.getAsDouble() * 1e-3 / focal.getAsDouble())),
        no.upPositionAngleDegrees(),
        no.mirrored(),
        no.declinationDegrees(),
        no.rightAscensionHours(),
        no.pierSide(),
        no.rows(),
        ScaleFrom.EXIF);
  }
}
