package io.github.roundstar.ingest.layout;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.formats.TomlTable;
import java.util.EnumSet;
import java.util.Set;

/** What a layout must say before a log can be read by it. */
final class LayoutNeeds {
  private LayoutNeeds() {}

  static void require(Layout layout, TomlTable file) throws FormatException {
    if (!layout.has(Meaning.TIME)) {
      throw file.fault(
          "column", "no column means the time", "add a [[column]] with means = \"time\"");
    }
    if (layout.time().kind() == TimeForm.Kind.FRAMES && layout.time().stepSeconds().isEmpty()) {
      throw file.fault(
          "time.step_s",
          "missing, but times are numbers of frames",
          "give the seconds from frame to frame: step_s = 3.0");
    }
    boolean sky = layout.has(Meaning.RA_OFFSET) && layout.has(Meaning.DEC_OFFSET);
    boolean camera =
        layout.has(Meaning.X_OFFSET) && layout.has(Meaning.Y_OFFSET)
            || layout.has(Meaning.X_PLACE) && layout.has(Meaning.Y_PLACE);
    if (sky == camera) {
      throw file.fault(
          "column",
          "the offsets must be given along one pair of axes",
          "give one column each for ra-offset and dec-offset, or for x-offset and y-offset, or for"
              + " x-place and y-place");
    }
    if (camera) {
      requireCamera(layout, file);
    }
    Set<Meaning> seen = EnumSet.noneOf(Meaning.class);
    for (ColumnRule column : layout.columns()) {
      requireOnce(column, seen, file);
      requireUnit(column, file);
      requireDirection(column, layout, file);
    }
    requireOneSense(layout, file);
  }

  private static void requireCamera(Layout layout, TomlTable file) throws FormatException {
    boolean angle =
        layout.settings().stream().anyMatch(rule -> rule.means() == Setting.CAMERA_ANGLE);
    if (!angle && layout.camera().raDegrees().isEmpty()) {
      throw file.fault(
          "camera.ra_deg",
          "missing, so x and y cannot be turned into right ascension and declination",
          "give the direction of positive right ascension on the camera, from X through Y");
    }
    double ra = layout.camera().raDegrees().orElse(0);
    double dec = layout.camera().decDegrees().orElse(ra + 90);
    if (Math.abs(Math.cos(Math.toRadians(dec - ra))) > 0.1) {
      throw file.fault(
          "camera.dec_deg",
          "not at a right angle to camera.ra_deg",
          "give ra_deg + 90 or ra_deg - 90");
    }
  }

  private static void requireOnce(ColumnRule column, Set<Meaning> seen, TomlTable file)
      throws FormatException {
    if (column.means() != Meaning.NOTHING && !seen.add(column.means())) {
      throw file.fault(
          "column",
          "two columns mean " + column.means().word(),
          "give the other one means = \"nothing\"");
    }
  }

  private static void requireUnit(ColumnRule column, TomlTable file) throws FormatException {
    if (!column.means().units().isEmpty() && column.unit().isEmpty()) {
      String units =
          column.means().isPulse() ? "\"ms\", \"s\", \"px\" or \"arcsec\"" : "\"px\" or \"arcsec\"";
      throw file.fault("column", column.called() + " has no unit", "add unit = " + units);
    }
  }

  private static void requireDirection(ColumnRule column, Layout layout, TomlTable file)
      throws FormatException {
    boolean letters =
        column.means() == Meaning.RA_PULSE
            || column.means() == Meaning.DEC_PULSE; // a letter in the field or beside it will do
    boolean dec = column.means().isDec();
    if (column.means().isSigned() && column.positive().isEmpty() && !letters) {
      String words = dec ? "\"north\" or \"south\"" : "\"east\" or \"west\"";
      throw file.fault(
          "column",
          column.called() + " does not say where a positive number points",
          "add positive = " + words);
    }
    boolean right =
        column
            .positive()
            .map(d -> !d.isNamed() || dec == (d == Direction.NORTH || d == Direction.SOUTH))
            .orElse(true);
    if (!right) {
      throw file.fault(
          "column",
          column.called() + " points along the other axis",
          "east and west belong to right ascension, north and south to declination");
    }
    if (column.turnsWithPier() && layout.camera().pierSide().isEmpty()) {
      throw file.fault(
          "camera.pier_side",
          "missing, but " + column.called() + " turns with the pier side",
          "say for which side the directions are given: pier_side = \"west\"");
    }
  }

  private static void requireOneSense(Layout layout, TomlTable file) throws FormatException {
    for (boolean dec : new boolean[] {false, true}) {
      boolean named =
          layout.columns().stream()
              .filter(column -> column.means().isDec() == dec)
              .anyMatch(column -> column.positive().map(Direction::isNamed).orElse(false));
      if (named && !layout.senseKnown(dec)) {
        throw file.fault(
            "column",
            "some directions are named and some are one-way or other-way",
            "write all of an axis the same way; replacing one-way by east and other-way by west,"
                + " or the reverse, names them");
      }
    }
  }
}
