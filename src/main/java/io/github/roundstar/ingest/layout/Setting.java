package io.github.roundstar.ingest.layout;

import java.util.List;
import java.util.Locale;

/** What a line of a log may tell besides rows; the first unit of each is the one assumed. */
public enum Setting {
  /** When a run or the log began; elapsed times count from it. */
  START,
  /** Date of the evening or of the first row, for clock times. */
  DATE,
  /** Scale of the logged pixels. */
  SCALE("arcsec/px"),
  /** Binning, for the scale. */
  BINNING("px"),
  /** Focal length, for the scale. */
  FOCAL_LENGTH("mm"),
  /** Size of an unbinned pixel, for the scale. */
  PIXEL_SIZE("um"),
  /** Declination of the star. */
  DECLINATION("deg"),
  /** Hour angle at the run's first frame. */
  HOUR_ANGLE("h", "deg"),
  /** Right ascension, for the hour angle. */
  RIGHT_ASCENSION("h", "deg"),
  /** Latitude of the site. */
  LATITUDE("deg"),
  /** Longitude of the site, east positive, for the hour angle. */
  LONGITUDE("deg"),
  /** Side of the pier. */
  PIER_SIDE,
  /** Speed of a pulse. */
  GUIDE_RATE("sidereal", "percent", "arcsec/s"),
  /** Exposure of a guide frame. */
  EXPOSURE("s", "ms"),
  /** Set point along the camera's rows, in the unit of the places. */
  SET_X,
  /** Set point along the camera's columns. */
  SET_Y,
  /** Direction of positive right ascension on the camera, from X through Y. */
  CAMERA_ANGLE("deg");

  private final List<String> units;

  Setting(String... units) {
    this.units = List.of(units);
  }

  /** The units it may be given in. */
  public List<String> units() {
    return units;
  }

  /** The word for it in a layout file. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
