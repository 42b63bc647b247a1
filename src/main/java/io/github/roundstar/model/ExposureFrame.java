package io.github.roundstar.model;

import java.nio.file.Path;
import java.time.Instant;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One exposure of the main camera, as its file or a list tells.
 *
 * @param file file name without folders
 * @param start when the shutter opened, by the clock of the camera's computer; a local time is
 *     taken for UTC until the clocks are compared
 * @param clock what that clock was set to
 * @param seconds from opening to closing [s]
 * @param optics the main camera, as far as the file tells
 * @param listed star shapes that the list tells; nothing when there is an image to measure
 * @param image the image itself, where its pixels can be read
 */
public record ExposureFrame(
    String file,
    Instant start,
    CameraClock clock,
    double seconds,
    Optics optics,
    Optional<ListedShape> listed,
    Optional<Path> image) {
  /** Checks. */
  public ExposureFrame {
    Objects.requireNonNull(start, "start");
    if (!(seconds > 0 && Double.isFinite(seconds))) {
      throw new IllegalArgumentException("an exposure of " + seconds + " s");
    }
  }

  /** What a camera's clock was set to. */
  public enum CameraClock {
    /** UTC, or local time with its offset given. */
    UTC,
    /** Local time whose offset is not told. */
    LOCAL
  }

  /**
   * The main camera of one exposure.
   *
   * @param arcsecPerPixel sky per pixel as stored [arcsec]
   * @param upPositionAngleDegrees position angle of the picture's up direction [deg]
   * @param mirrored whether the picture shows the sky mirrored
   * @param declinationDegrees where it looked [deg]
   * @param rightAscensionHours where it looked [h]
   * @param pierSide side of the pier the tube was on
   * @param rows which way later rows lie in the picture whose angle and mirroring are told
   * @param scaleFrom where the scale is from
   */
  public record Optics(
      OptionalDouble arcsecPerPixel,
      OptionalDouble upPositionAngleDegrees,
      Optional<Boolean> mirrored,
      OptionalDouble declinationDegrees,
      OptionalDouble rightAscensionHours,
      Optional<PierSide> pierSide,
      RowOrder rows,
      ScaleFrom scaleFrom) {
    /** Nothing known. */
    public static final Optics UNKNOWN =
        new Optics(
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            Optional.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            Optional.empty(),
            RowOrder.BOTTOM_UP,
            ScaleFrom.NOWHERE);
  }

  /** What in a file told its scale. */
  public enum ScaleFrom {
    /** Nothing did. */
    NOWHERE(""),
    /** A solved picture. */
    WORLD_COORDINATES("the world coordinates in the headers"),
    /** The capturing program. */
    KEYWORD("the scale in the headers"),
    /** The capturing program, in two keywords. */
    FOCAL_LENGTH("focal length and pixel size in the headers"),
    /** The camera, which knows only a lens that talks to it. */
    EXIF("focal length and focal-plane resolution in the Exif headers");

    private final String words;

    ScaleFrom(String words) {
      this.words = words;
    }

    /** In words. */
    public String words() {
      return words;
    }
  }

  /** In which order the rows of a picture stand in its file. */
  public enum RowOrder {
    /** The lowest row of the picture first. */
    BOTTOM_UP,
    /** The highest row of the picture first. */
    TOP_DOWN
  }

  /**
   * Star shapes that another program or the simulator measured.
   *
   * @param elongation long axis over short, with its interval
   * @param fwhmArcsec width of the stars [arcsec]
   * @param angleDegrees position angle of the long axis on the sky, north through east [deg]
   * @param shift move of the stars since the exposure before
   * @param corner long axis over short in the worst corner, with its interval
   * @param pattern how the shapes change over the field: none, uniform, rotation, radial, one-sided
   */
  public record ListedShape(
      Estimate elongation,
      OptionalDouble fwhmArcsec,
      OptionalDouble angleDegrees,
      Optional<SkyShift> shift,
      Optional<Estimate> corner,
      Optional<String> pattern) {}

  /**
   * Move of the stars on the sensor.
   *
   * @param eastArcsec to the east [arcsec]
   * @param northArcsec to the north [arcsec]
   * @param sigmaArcsec standard error of either [arcsec]
   */
  public record SkyShift(double eastArcsec, double northArcsec, double sigmaArcsec) {}
}
