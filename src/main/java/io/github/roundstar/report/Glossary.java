package io.github.roundstar.report;

import io.github.roundstar.report.Page.Block;
import io.github.roundstar.report.Page.Cell;
import io.github.roundstar.report.Page.Column;
import io.github.roundstar.report.Page.Section;
import io.github.roundstar.report.Page.Table;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** The words of a page, one line each. */
final class Glossary {
  private static final List<String[]> WORDS =
      List.of(
          word(
              "alias",
              "A false slow motion that sampling makes of a fast one; suspected below four cadences."),
          word("arcsec", "One 3600th of a degree on the sky."),
          word("airmass", "How much air the star is seen through; 1 in the zenith."),
          word(
              "at the axis",
              "RA motion as the mount's axis turns; on the sky it is smaller by the cosine of the declination."),
          word(
              "atmospheric dispersion",
              "Colours of one star spread along the vertical by the air; more of it near the horizon."),
          word(
              "backlash",
              "Play in the gears that a motor must take up before the mount follows a reversal."),
          word(
              "budget",
              "The mean square of the offsets by cause: what adds up to the square of the RMS."),
          word("cadence", "Time from one guide frame to the next."),
          word("clutch", "What couples an axis to its gear; opened, the axis swings freely."),
          word("counterweight", "The weight that balances the telescope about the RA axis."),
          word("deadband", "Offsets smaller than this are left alone by the loop."),
          word("Dec", "Declination: north and south on the sky."),
          word(
              "differential flexure",
              "Guide and main telescope bend unlike, so that the picture trails while the guide star rests."),
          word(
              "dispersion",
              "The air bends blue more than red, which draws stars out towards the horizon."),
          word(
              "dither",
              "A wanted small move between exposures, so that sensor faults do not add up."),
          word("drift", "Steady creep of the mount when nothing corrects it."),
          word("elongation", "Longest over shortest width of a star in the picture; 1 is round."),
          word("exposure", "One picture of the main camera."),
          word("false alarm", "Chance that wander and noise alone show a peak this strong."),
          word("field", "A place in the sky that was guided on; runs on one star belong together."),
          word(
              "field rotation",
              "The picture turns about the guide star when the polar axis is off."),
          word("flip", "The change of a German mount from one side of its pier to the other."),
          word("frame", "One exposure of the guide camera."),
          word("FWHM", "Full width of a star's image at half of its peak."),
          word(
              "gain",
              "Share of a lasting offset that one pulse takes away; 1 is all of it, which answers noise too."),
          word("guide rate", "How fast a pulse moves the mount, in units of the turn of the sky."),
          word("gust", "A jolt that goes away by itself."),
          word("hour angle", "How long ago the star crossed the meridian; negative before."),
          word("idle", "Rows during which nothing was guided."),
          word("imaging pixel", "A pixel of the main camera, as it covers the sky."),
          word(
              "interval",
              "The two numbers in brackets: the true value lies between them in 95 cases of 100."),
          word("jolt", "A movement too sudden for wander and noise: a gust, a knock, a cable."),
          word("knock", "A jolt that stays, from one frame to the next."),
          word(
              "lasting shift",
              "A jolt that stays and took several frames: a cable that pulls, say."),
          word(
              "limit",
              "What the user can bear: the RMS wished for, or what leaves a star of the usual seeing round."),
          word("loop", "Measuring the star and pushing the mount, over and over."),
          word(
              "local time",
              "Time of day at the site: by the log's offset from UTC, else mean solar time."),
          word("lost", "Frames in which the star could not be measured."),
          word(
              "memory",
              "Share of the answered offset that comes from the frames before; 0 is the last frame only."),
          word(
              "mean solar time",
              "Time by the Sun's mean course; noon when it stands in the south, or the north."),
          word("mesh", "How closely a worm sits in its wheel."),
          word("noise floor", "Error of measuring the star: air and camera, not the mount."),
          word("offset", "Where the star was, less where it should have been."),
          word("one flank", "Gears that always push the same way do not cross their play."),
          word("over-correction", "Guiding that pushes too far and swings back and forth."),
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
          word("refraction", "The air lifts stars, more so when they are low."),
          word(
              "repeatability",
              "Share of the periodic error that comes back every turn; that part can be trained out."),
          word("replay", "The night's mount and air run again through a loop with other settings."),
          word("response", "How far one second of pulse moves the star."),
          word("RMS", "Root of the mean square: the usual size of a scatter."),
          word("run", "Unbroken guiding on one star."),
          word("scatter elongation", "Longest over shortest spread of the offsets; 1 is round."),
          word("seeing", "How far the air spreads a star; its width at half of its brightness."),
          word("settling", "Time after a dither until the star rests again."),
          word("sidereal", "At the rate of the turning sky."),
          word(
              "star motion",
              "Where the star really was: the offsets without the error of measuring them."),
          word("star switch", "The camera went over to another star."),
          word(
              "sticking",
              "An axis that stays put until pulses add up, then lets go and makes up for all at once."),
          word(
              "strain-wave",
              "The gear of a strain-wave drive: a wave bends a toothed cup; its error comes several"
                  + " times a turn."),
          word("stuck star", "A bright fault of the camera's chip that is taken for a star."),
          word(
              "trailing", "Motion of the star within an exposure; a steady offset trails nothing."),
          word("trained out", "Known to the mount's drive, which then undoes it by itself."),
          word("training", "The mount's own memory of its periodic error, played back against it."),
          word("true pole", "The point that the sky turns about, refraction left out."),
          word("unlabelled", "A period that no gear in the equipment file has."),
          word("UTC", "Coordinated Universal Time, the time of day without zones."),
          word("wander", "Slow motion without a period: flexure, gears, cables, air."),
          word("worm", "The screw that turns the mount's RA gear; one turn takes some minutes."));

  private Glossary() {}

  static Section section() {
    List<List<Cell>> rows =
        WORDS.stream()
            .sorted(Comparator.comparing(word -> word[0].toLowerCase(Locale.ROOT)))
            .map(word -> List.of(Cell.of(word[0]), Cell.of(word[1])))
            .toList();
    Table table = new Table("", List.of(Column.words("word"), Column.words("meaning")), rows);
    return new Section("words", "Words on this page", List.of(Block.text().with(table)));
  }

  private static String[] word(String name, String meaning) {
    return new String[] {name, meaning};
  }
}
