package io.github.roundstar.report;

import io.github.roundstar.report.Page.Block;
import io.github.roundstar.report.Page.Cell;
import io.github.roundstar.report.Page.Column;
import io.github.roundstar.report.Page.Section;
import io.github.roundstar.report.Page.Table;
import java.util.List;

/** The words of a page, one line each. */
final class Glossary {
  private static final List<String[]> WORDS =
      List.of(
          word("arcsec", "One 3600th of a degree on the sky."),
          word(
              "alias",
              "A false slow motion that sampling makes of a fast one; suspected below four cadences."),
          word(
              "at the axis",
              "RA motion as the mount's axis turns; on the sky it is smaller by the cosine of the declination."),
          word(
              "backlash",
              "Play in the gears that a motor must take up before the mount follows a reversal."),
          word("cadence", "Time from one guide frame to the next."),
          word("Dec", "Declination: north and south on the sky."),
          word(
              "dither",
              "A wanted small move between exposures, so that sensor faults do not add up."),
          word("drift", "Steady creep of the mount when nothing corrects it."),
          word(
              "field rotation",
              "Slow turn of the image about the guide star when the polar axis is off."),
          word("false alarm", "Chance that wander and noise alone show a peak this strong."),
          word("FWHM", "Full width of a star's image at half of its peak."),
          word("flip", "The change of a German mount from one side of its pier to the other."),
          word("frame", "One exposure of the guide camera."),
          word("hour angle", "How long ago the star crossed the meridian; negative before."),
          word("idle", "Rows during which nothing was guided."),
          word("imaging pixel", "A pixel of the main camera, as it covers the sky."),
          word(
              "interval",
              "The two numbers in brackets: the true value lies between them in 95 cases of 100."),
          word("lost", "Frames in which the star could not be measured."),
          word("noise floor", "Error of measuring the star: air and camera, not the mount."),
          word("offset", "Where the star was, less where it should have been."),
          word(
              "periodic error",
              "Motion that repeats with each turn of a gear, mostly of the worm."),
          word("pier side", "The side of the pier the tube is on; it changes at a flip."),
          word(
              "polar axis",
              "The axis the mount turns about; it should point at the pole of the sky."),
          word("position angle", "Direction on the sky from north through east, 0 to 180 degrees."),
          word("pulse", "A correction sent to the mount."),
          word("RA", "Right ascension: east and west on the sky."),
          word("radial", "RA and Dec together, as a distance."),
          word(
              "refracted pole",
              "Where the air lifts the pole to: an arcminute or so above the true one."),
          word(
              "repeatability",
              "Share of the periodic error that comes back every turn; that part can be trained out."),
          word("response", "How far one second of pulse moves the star."),
          word("RMS", "Root of the mean square: the usual size of a scatter."),
          word("run", "Unbroken guiding on one star."),
          word("scatter elongation", "Longest over shortest spread of the offsets; 1 is round."),
          word("seeing", "Unrest of the air, as the width it gives to a star's image."),
          word("settling", "Time after a dither until the star rests again."),
          word("true pole", "The point that the sky turns about, refraction left out."),
          word("UTC", "Coordinated Universal Time, the time of day without zones."),
          word("unlabelled", "A period that no gear in the equipment file has."),
          word("wander", "Slow motion without a period: flexure, gears, cables, air."),
          word("worm", "The screw that turns the mount's RA gear; one turn takes some minutes."));

  private Glossary() {}

  static Section section() {
    List<List<Cell>> rows =
        WORDS.stream().map(word -> List.of(Cell.of(word[0]), Cell.of(word[1]))).toList();
    Table table = new Table("", List.of(Column.words("word"), Column.words("meaning")), rows);
    return new Section("words", "Words on this page", List.of(Block.text().with(table)));
  }

  private static String[] word(String name, String meaning) {
    return new String[] {name, meaning};
  }
}
