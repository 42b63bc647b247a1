package io.github.roundstar.model;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What the user says of site, mount and optics; every part may be missing.
 *
 * @param site where the mount stands
 * @param mount the mount and its gears
 * @param guide the guide camera's optics
 * @param imaging the main camera's optics
 * @param seeingFwhmArcsec the user's usual seeing, full width at half maximum [arcsec]
 * @param limits what the user calls round
 */
public record Equipment(
    Site site,
    Mount mount,
    GuideOptics guide,
    ImagingOptics imaging,
    OptionalDouble seeingFwhmArcsec,
    Limits limits) {
  private static final OptionalDouble NO = OptionalDouble.empty();

  /** Nothing known. */
  public static final Equipment UNKNOWN =
      new Equipment(
          new Site(NO, NO, NO, NO, NO),
          new Mount(Optional.empty(), NO, NO, Optional.empty(), List.of()),
          new GuideOptics(NO, NO, OptionalInt.empty(), NO, false, NO, NO, Optional.empty()),
          new ImagingOptics(
              NO, NO, OptionalInt.empty(), OptionalInt.empty(), OptionalInt.empty(), NO, NO, false),
          NO,
          new Limits(Limits.USUAL_ELONGATION, NO));

  /** Latitude of a run, north positive [deg]: what its log says, else the site's. */
  public OptionalDouble latitudeDegrees(Pointing pointing) {
    return pointing.latitudeDegrees().isPresent()
        ? pointing.latitudeDegrees()
        : site.latitudeDegrees();
  }

  /** Longitude of a run, east positive [deg]: what its log says, else the site's. */
  public OptionalDouble longitudeDegrees(Pointing pointing) {
    return pointing.longitudeDegrees().isPresent()
        ? pointing.longitudeDegrees()
        : site.longitudeDegrees();
  }

  /**
   * The site.
   *
   * @param latitudeDegrees north positive [deg]
   * @param longitudeDegrees east positive [deg]
   * @param elevationMetres height above the sea [m]
   * @param pressureHectopascal air pressure at the site [hPa]
   * @param temperatureCelsius air temperature [deg C]
   */
  public record Site(
      OptionalDouble latitudeDegrees,
      OptionalDouble longitudeDegrees,
      OptionalDouble elevationMetres,
      OptionalDouble pressureHectopascal,
      OptionalDouble temperatureCelsius) {}

  /** How the right-ascension axis is driven. */
  public enum Drive {
    WORM,
    STRAIN_WAVE,
    FRICTION
  }

  /** Where the guide camera gets its light from. */
  public enum Arrangement {
    OFF_AXIS,
    GUIDE_SCOPE,
    SECOND_SENSOR
  }

  /**
   * The mount.
   *
   * @param name what the user calls it
   * @param wormPeriodSeconds one turn of the right-ascension worm at the sidereal rate [s]
   * @param guideRateSidereal declared guide rate, times sidereal
   * @param drive kind of drive
   * @param gears further gears whose period should be labelled
   * @param azimuthArcminPerTurn what a turn of the azimuth adjuster moves the axis by [arcmin]
   * @param altitudeArcminPerTurn the same of the altitude adjuster [arcmin]
   */
  public record Mount(
      Optional<String> name,
      OptionalDouble wormPeriodSeconds,
      OptionalDouble guideRateSidereal,
      Optional<Drive> drive,
      List<Gear> gears,
      OptionalDouble azimuthArcminPerTurn,
      OptionalDouble altitudeArcminPerTurn) {
    /** Copies. */
    public Mount {
      gears = List.copyOf(gears);
    }

    /** A mount whose adjusters are not known. */
    public Mount(
        Optional<String> name,
        OptionalDouble wormPeriodSeconds,
        OptionalDouble guideRateSidereal,
        Optional<Drive> drive,
        List<Gear> gears) {
      this(name, wormPeriodSeconds, guideRateSidereal, drive, gears, NO, NO);
    }
  }

  /**
   * A gear.
   *
   * @param name what the user calls it
   * @param periodSeconds one turn at the sidereal rate [s]
   */
  public record Gear(String name, double periodSeconds) {}

  /**
   * The guide camera's optics.
   *
   * @param focalLengthMillimetres focal length [mm]
   * @param pixelMicrometres pixel size [um]
   * @param binning pixels binned per side
   * @param apertureMillimetres free aperture [mm]
   * @param mirrored whether the image is mirrored
   * @param starXArcmin place of the guide star, right of the imaging centre [arcmin]
   * @param starYArcmin place of the guide star, above the imaging centre [arcmin]
   * @param arrangement where the light comes from
   */
  public record GuideOptics(
      OptionalDouble focalLengthMillimetres,
      OptionalDouble pixelMicrometres,
      OptionalInt binning,
      OptionalDouble apertureMillimetres,
      boolean mirrored,
      OptionalDouble starXArcmin,
      OptionalDouble starYArcmin,
      Optional<Arrangement> arrangement) {}

  /**
   * The main camera's optics.
   *
   * @param focalLengthMillimetres focal length [mm]
   * @param pixelMicrometres pixel size [um]
   * @param widthPixels sensor width
   * @param heightPixels sensor height
   * @param binning pixels binned per side
   * @param exposureSeconds usual exposure [s]
   * @param positionAngleDegrees position angle of the sensor's up direction, north through east
   *     [deg]
   * @param mirrored whether the image is mirrored
   */
  public record ImagingOptics(
      OptionalDouble focalLengthMillimetres,
      OptionalDouble pixelMicrometres,
      OptionalInt widthPixels,
      OptionalInt heightPixels,
      OptionalInt binning,
      OptionalDouble exposureSeconds,
      OptionalDouble positionAngleDegrees,
      boolean mirrored) {
    /** Arcseconds on the sky per binned pixel, where focal length and pixel size are known. */
    public OptionalDouble arcsecPerPixel() {
      if (focalLengthMillimetres.isEmpty() || pixelMicrometres.isEmpty()) {
        return OptionalDouble.empty();
      }
      double radians =
          pixelMicrometres.getAsDouble()
              * binning.orElse(1)
              * 1e-3
              / focalLengthMillimetres.getAsDouble();
      return OptionalDouble.of(Math.toDegrees(radians) * 3600);
    }
  }

  /**
   * What the user calls round.
   *
   * @param elongation largest major over minor axis of a star image still called round
   * @param rmsArcsec largest guide RMS wished for, both axes together, as the log shows it [arcsec]
   * @param usersElongation whether the elongation is the user's and not the usual one
   */
  public record Limits(double elongation, OptionalDouble rmsArcsec, boolean usersElongation) {
    /** A star of axis ratio 1.15 still passes for round; common practice, no source. */
    public static final double USUAL_ELONGATION = 1.15;

    /** The user's, where it is another one than usual. */
    public Limits(double elongation, OptionalDouble rmsArcsec) {
      this(elongation, rmsArcsec, elongation != USUAL_ELONGATION);
    }
  }
}
