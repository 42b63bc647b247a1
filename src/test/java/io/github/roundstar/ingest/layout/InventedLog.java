package io.github.roundstar.ingest.layout;

import io.github.roundstar.model.GuideRun;
import io.github.roundstar.simulate.SimulatedNight;
import io.github.roundstar.simulate.SimulatedRun;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * Eight invented ways to write a night, as unlike each other as could be thought of. Each writes a
 * simulated night and knows the layout file that belongs to it.
 */
public enum InventedLog {
  /** Semicolons, decimal commas, a clock without date, arcsec, signed milliseconds, words. */
  CRANE {
    @Override
    String header(SimulatedNight night) {
      return "# Evening of 14.03.2026, clock one hour ahead of UTC\n"
          + "# Guide speed: 0,5 x sidereal; exposure 2,0 s; latitude 47,2\n"
          + "# Scale 2,43 arcsec/px\n";
    }

    @Override
    String runHead(GuideRun run) {
      return String.format(
                  Locale.ROOT,
                  "## star acquired, declination %.2f, hour angle %.3f h, tube %s\n",
                  declination(run),
                  hourAngle(run),
                  side(run))
              .replace('.', ',')
          + "Clock;Star East [arcsec];Star North [arcsec];Push East [ms];Push North [ms];SNR;State\n";
    }

    @Override
    String row(LogPen pen) {
      return String.join(
          ";",
          pen.clock("HH:mm:ss,SSS", 1),
          pen.number(pen.ra(), 3, ""),
          pen.number(pen.dec(), 3, ""),
          pen.number(pen.raPulse(), 0, ""),
          pen.number(pen.decPulse(), 0, ""),
          pen.number(pen.snr(), 1, ""),
          pen.dither() ? "dither" : pen.settling() ? "settling" : pen.lost() ? "lost" : "ok");
    }

    @Override
    boolean comma() {
      return true;
    }

    @Override
    public String layout() {
      return """
          [text]
          delimiter = "semicolon"
          decimal = "comma"
          remark = '^#'
          names = '^Clock;'
          [runs]
          begins = '^## star acquired'
          [time]
          form = "clock"
          date_order = "dmy"
          utc_offset = "+01:00"
          [[column]]
          name = "Clock"
          means = "time"
          [[column]]
          name = "Star East [arcsec]"
          means = "ra-offset"
          unit = "arcsec"
          positive = "east"
          [[column]]
          name = "Star North [arcsec]"
          means = "dec-offset"
          unit = "arcsec"
          positive = "north"
          [[column]]
          name = "Push East [ms]"
          means = "ra-pulse"
          unit = "ms"
          positive = "east"
          [[column]]
          name = "Push North [ms]"
          means = "dec-pulse"
          unit = "ms"
          positive = "north"
          [[column]]
          name = "SNR"
          means = "snr"
          [[column]]
          name = "State"
          means = "event"
          [[event]]
          means = "guiding"
          words = "ok"
          [[event]]
          means = "dither"
          words = "dither"
          [[event]]
          means = "settling"
          words = "settling"
          [[event]]
          means = "lost"
          words = "lost"
          [[setting]]
          means = "date"
          line = 'Evening of (?<value>[0-9.]+),'
          [[setting]]
          means = "guide-rate"
          line = 'Guide speed: (?<value>[0-9,]+) x'
          [[setting]]
          means = "exposure"
          line = 'exposure (?<value>[0-9,]+) s'
          [[setting]]
          means = "latitude"
          line = 'latitude (?<value>[0-9,-]+)'
          [[setting]]
          means = "scale"
          line = 'Scale (?<value>[0-9,]+) arcsec'
          [[setting]]
          means = "declination"
          line = 'declination (?<value>-?[0-9,]+),'
          [[setting]]
          means = "hour-angle"
          line = 'hour angle (?<value>-?[0-9,]+) h'
          [[setting]]
          means = "pier-side"
          line = 'tube (?<value>east|west)'
          """;
    }
  },
  /** Tabulators, seconds since the run began, camera axes at 33 degrees, letter and duration. */
  BARGE {
    @Override
    String header(SimulatedNight night) {
      return "focal length = 240 mm\npixel size = 2.9 um\nbinning = 1\nguide rate = 0.5\n"
          + "exposure = 2000 ms\n";
    }

    @Override
    String runHead(GuideRun run) {
      return String.format(
          Locale.ROOT,
          "\nBEGIN %s\ndeclination\t%s\nhour angle\t%.4f h\npier\t%s\n"
              + "elapsed/s\tx/px\ty/px\tRA dir\tRA ms\tDec dir\tDec ms\tbrightness\n",
          run.start().orElseThrow(),
          dms(declination(run)),
          hourAngle(run),
          side(run));
    }

    @Override
    String row(LogPen pen) {
      double c = Math.cos(Math.toRadians(33));
      double s = Math.sin(Math.toRadians(33));
      double scale = 206.264806 * 2.9 / 240;
      String mark =
          pen.dither()
              ? String.format(
                  Locale.ROOT, "* set point moved %.3f E %.3f N\n", pen.ditherRa(), pen.ditherDec())
              : pen.settling() ? "* settling\n" : "* guiding\n";
      return mark
          + String.join(
              "\t",
              pen.number(pen.seconds(), 3, ""),
              pen.number(pen.camera(c, -s) / scale, 4, "--"),
              pen.number(pen.camera(s, c) / scale, 4, "--"),
              pen.raPulse() > 0 ? "E" : pen.raPulse() < 0 ? "W" : "",
              pen.number(Math.abs(pen.raPulse()), 0, ""),
              pen.decPulse() > 0 ? "N" : pen.decPulse() < 0 ? "S" : "",
              pen.number(Math.abs(pen.decPulse()), 0, ""),
              pen.number(pen.flux(), 0, ""));
    }

    @Override
    String runFoot() {
      return "END\n";
    }

    @Override
    public String layout() {
      return """
          [text]
          delimiter = "tab"
          names = '^elapsed/s'
          [runs]
          begins = '^BEGIN (?<start>\\S+)'
          ends = '^END'
          [time]
          form = "elapsed-s"
          [camera]
          ra_deg = 33
          dec_deg = 123
          pier_side = "west"
          [[column]]
          name = "elapsed/s"
          means = "time"
          [[column]]
          name = "x/px"
          means = "x-offset"
          unit = "px"
          missing = "--"
          [[column]]
          name = "y/px"
          means = "y-offset"
          unit = "px"
          missing = "--"
          [[column]]
          name = "RA dir"
          means = "ra-letter"
          [[column]]
          name = "RA ms"
          means = "ra-pulse"
          unit = "ms"
          [[column]]
          name = "Dec dir"
          means = "dec-letter"
          [[column]]
          name = "Dec ms"
          means = "dec-pulse"
          unit = "ms"
          [[column]]
          name = "brightness"
          means = "flux"
          [[event]]
          means = "dither"
          line = 'set point moved (?<east>\\S+) E (?<north>\\S+) N'
          [[event]]
          means = "settling"
          line = '^\\* settling'
          [[event]]
          means = "guiding"
          line = '^\\* guiding'
          [[setting]]
          means = "focal-length"
          line = '^focal length = (?<value>\\S+)'
          [[setting]]
          means = "pixel-size"
          line = '^pixel size = (?<value>\\S+)'
          [[setting]]
          means = "binning"
          line = '^binning = (?<value>\\S+)'
          [[setting]]
          means = "guide-rate"
          line = '^guide rate = (?<value>\\S+)'
          [[setting]]
          means = "exposure"
          unit = "ms"
          line = '^exposure = (?<value>\\S+) ms'
          [[setting]]
          means = "declination"
          line = '^declination\\t(?<value>\\S+)'
          [[setting]]
          means = "hour-angle"
          line = '^hour angle\\t(?<value>\\S+) h'
          [[setting]]
          means = "pier-side"
          line = '^pier\\t(?<value>\\S+)'
          """
          + SITE;
    }
  },
  /** Blanks, Julian dates, pixels, two columns per axis, seconds. */
  QUAY {
    @Override
    String header(SimulatedNight night) {
      return "! scale 2.43\n! rate 50 percent\n! exposure 2\n";
    }

    @Override
    String runHead(GuideRun run) {
      return String.format(
          Locale.ROOT,
          "! dec %.3f  ha %.4f deg  side %s\n  jd   dra  ddec   e  w  n  s  snr  note\n",
          declination(run),
          hourAngle(run) * 15,
          side(run));
    }

    @Override
    String row(LogPen pen) {
      double day = 2440587.5;
      return String.format(
          Locale.ROOT,
          "%.9f  %8s %8s  %.3f %.3f %.3f %.3f  %s %s",
          pen.epochSeconds() / 86_400 + day,
          pen.number(pen.ra() / 2.43, 4, "-"),
          pen.number(pen.dec() / 2.43, 4, "-"),
          Math.max(0, pen.raPulse()) / 1000,
          Math.max(0, -pen.raPulse()) / 1000,
          Math.max(0, pen.decPulse()) / 1000,
          Math.max(0, -pen.decPulse()) / 1000,
          pen.number(pen.snr(), 1, "-"),
          pen.dither() ? "moved" : pen.settling() ? "moving" : ".");
    }

    @Override
    public String layout() {
      return """
          [text]
          delimiter = "blanks"
          remark = '^!'
          names = '^ *jd '
          [time]
          form = "jd"
          [[column]]
          name = "jd"
          means = "time"
          [[column]]
          name = "dra"
          means = "ra-offset"
          unit = "px"
          positive = "east"
          missing = "-"
          [[column]]
          name = "ddec"
          means = "dec-offset"
          unit = "px"
          positive = "north"
          missing = "-"
          [[column]]
          name = "e"
          means = "east-pulse"
          unit = "s"
          [[column]]
          name = "w"
          means = "west-pulse"
          unit = "s"
          [[column]]
          name = "n"
          means = "north-pulse"
          unit = "s"
          [[column]]
          name = "s"
          means = "south-pulse"
          unit = "s"
          [[column]]
          name = "snr"
          means = "snr"
          missing = "-"
          [[column]]
          name = "note"
          means = "event"
          missing = "."
          [[event]]
          means = "dither"
          words = "moved"
          [[event]]
          means = "settling"
          words = "moving"
          [[setting]]
          means = "scale"
          line = '^! scale (?<value>\\S+)'
          [[setting]]
          means = "guide-rate"
          unit = "percent"
          line = '^! rate (?<value>\\S+) percent'
          [[setting]]
          means = "exposure"
          line = '^! exposure (?<value>\\S+)'
          [[setting]]
          means = "declination"
          line = '^! dec (?<value>\\S+)'
          [[setting]]
          means = "hour-angle"
          unit = "deg"
          line = 'ha (?<value>\\S+) deg'
          [[setting]]
          means = "pier-side"
          line = 'side (?<value>\\S+)'
          """
          + SITE;
    }
  },
  /** Vertical bars, ISO 8601, a mirrored camera, pulses as arcseconds. */
  MILL {
    @Override
    String header(SimulatedNight night) {
      return "image scale: 2.43 arcsec per pixel | speed: 0.5 | exposure: 2.0\n";
    }

    @Override
    String runHead(GuideRun run) {
      return String.format(
          Locale.ROOT,
          "target dec: %.2f | ha: %.4f | pier: %s\nwhen | across | up | ra push | dec push\n",
          declination(run),
          hourAngle(run),
          side(run));
    }

    @Override
    String row(LogPen pen) {
      double c = Math.cos(Math.toRadians(200));
      double s = Math.sin(Math.toRadians(200));
      double speed = pen.guideRate() * LogPen.SIDEREAL / 1000;
      String mark =
          pen.dither()
              ? String.format(
                  Locale.ROOT, "dither | %.3f | %.3f\n", pen.ditherRa(), pen.ditherDec())
              : pen.settling() ? "settling\n" : "steady\n";
      return mark
          + String.join(
              " | ",
              pen.clock("yyyy-MM-dd'T'HH:mm:ss.SSS", 0) + "Z",
              pen.number(pen.camera(c, s) / 2.43, 4, "none"),
              pen.number(pen.camera(s, -c) / 2.43, 4, "none"),
              pen.number(pen.raPulse() * speed * pen.cosDec(), 4, ""),
              pen.number(pen.decPulse() * speed, 4, ""));
    }

    @Override
    public String layout() {
      return """
          [text]
          delimiter = "pipe"
          names = '^when '
          [time]
          form = "date-time"
          [camera]
          ra_deg = 200
          dec_deg = 110
          pier_side = "west"
          [[column]]
          name = "when"
          means = "time"
          [[column]]
          name = "across"
          means = "x-offset"
          unit = "px"
          missing = "none"
          [[column]]
          name = "up"
          means = "y-offset"
          unit = "px"
          missing = "none"
          [[column]]
          name = "ra push"
          means = "ra-pulse"
          unit = "arcsec"
          positive = "east"
          [[column]]
          name = "dec push"
          means = "dec-pulse"
          unit = "arcsec"
          positive = "north"
          [[event]]
          means = "dither"
          line = '^dither \\| (?<east>\\S+) \\| (?<north>\\S+)'
          [[event]]
          means = "settling"
          line = '^settling'
          [[event]]
          means = "guiding"
          line = '^steady'
          [[setting]]
          means = "scale"
          line = 'image scale: (?<value>\\S+)'
          [[setting]]
          means = "guide-rate"
          line = 'speed: (?<value>\\S+)'
          [[setting]]
          means = "exposure"
          line = 'exposure: (?<value>\\S+)'
          [[setting]]
          means = "declination"
          line = 'dec: (?<value>\\S+)'
          [[setting]]
          means = "hour-angle"
          line = 'ha: (?<value>\\S+)'
          [[setting]]
          means = "pier-side"
          line = 'pier: (?<value>\\S+)'
          """
          + SITE;
    }
  },
  /** Fixed width without names, milliseconds, letters in the field. */
  LOFT {
    @Override
    String header(SimulatedNight night) {
      return "";
    }

    @Override
    String runHead(GuideRun run) {
      return String.format(
          Locale.ROOT,
          "=== %s DEC%+.2f HA%+.4f %s\n",
          run.start().orElseThrow(),
          declination(run),
          hourAngle(run),
          side(run));
    }

    @Override
    String row(LogPen pen) {
      return String.format(
          Locale.ROOT,
          "%10.0f%9s%9s%6s%6s%2s",
          pen.seconds() * 1000,
          pen.number(pen.ra(), 3, ""),
          pen.number(pen.dec(), 3, ""),
          letters(pen.raPulse(), "E", "W"),
          letters(pen.decPulse(), "N", "S"),
          pen.dither() ? "D" : pen.settling() ? "S" : "");
    }

    private String letters(double pulse, String toward, String away) {
      return pulse == 0
          ? "0"
          : (pulse > 0 ? toward : away) + String.format(Locale.ROOT, "%.0f", Math.abs(pulse));
    }

    @Override
    public String layout() {
      return """
          [text]
          delimiter = "fixed"
          widths = [10, 9, 9, 6, 6, 2]
          [runs]
          begins = '^=== (?<start>\\S+) DEC(?<declination>\\S+) HA(?<hourangle>\\S+) (?<pierside>\\S+)'
          [time]
          form = "elapsed-ms"
          [[column]]
          at = 1
          means = "time"
          [[column]]
          at = 2
          means = "ra-offset"
          unit = "arcsec"
          positive = "east"
          [[column]]
          at = 3
          means = "dec-offset"
          unit = "arcsec"
          positive = "north"
          [[column]]
          at = 4
          means = "ra-pulse"
          unit = "ms"
          [[column]]
          at = 5
          means = "dec-pulse"
          unit = "ms"
          [[column]]
          at = 6
          means = "event"
          [[event]]
          means = "dither"
          words = "D"
          [[event]]
          means = "settling"
          words = "S"
          [[setting]]
          means = "scale"
          value = "2.43"
          [[setting]]
          means = "guide-rate"
          value = "0.5"
          [[setting]]
          means = "exposure"
          value = "2"
          """
          + SITE;
    }
  },
  /** Commas, American date and clock in two columns, west positive, pulse in the next row. */
  FORGE {
    @Override
    String header(SimulatedNight night) {
      return "scale,2.43\nguide rate,0.5\nexposure,2\n";
    }

    @Override
    String runHead(GuideRun run) {
      return String.format(
          Locale.ROOT,
          "declination,%.2f\nhour angle,%.4f\npier side,%s\n"
              + "date,time,west,south,pulse west,pulse south,snr,flux,quality\n",
          declination(run),
          hourAngle(run),
          side(run));
    }

    @Override
    String row(LogPen pen) {
      return String.join(
          ",",
          pen.clock("MM/dd/yyyy", 1),
          pen.clock("h:mm:ss.SSS a", 1),
          pen.number(-pen.ra(), 3, ""),
          pen.number(-pen.dec(), 3, ""),
          pen.number(-pen.raPulseBefore(), 0, ""),
          pen.number(-pen.decPulseBefore(), 0, ""),
          pen.number(pen.snr(), 1, ""),
          pen.number(pen.flux(), 0, ""),
          pen.dither() ? "2" : pen.settling() ? "1" : "0");
    }

    @Override
    public String layout() {
      return """
          [text]
          delimiter = "comma"
          names = '^date,time'
          [time]
          form = "date-time"
          date_order = "mdy"
          utc_offset = "+01:00"
          [pulses]
          row = "next"
          [[column]]
          name = "date"
          means = "date"
          [[column]]
          name = "time"
          means = "time"
          [[column]]
          name = "west"
          means = "ra-offset"
          unit = "arcsec"
          positive = "west"
          [[column]]
          name = "south"
          means = "dec-offset"
          unit = "arcsec"
          positive = "south"
          [[column]]
          name = "pulse west"
          means = "ra-pulse"
          unit = "ms"
          positive = "west"
          [[column]]
          name = "pulse south"
          means = "dec-pulse"
          unit = "ms"
          positive = "south"
          [[column]]
          name = "snr"
          means = "snr"
          [[column]]
          name = "flux"
          means = "flux"
          [[column]]
          name = "quality"
          means = "event"
          [[event]]
          means = "guiding"
          words = "0"
          [[event]]
          means = "settling"
          words = "1"
          [[event]]
          means = "dither"
          words = "2"
          [[setting]]
          means = "scale"
          line = '^scale,(?<value>.+)'
          [[setting]]
          means = "guide-rate"
          line = '^guide rate,(?<value>.+)'
          [[setting]]
          means = "exposure"
          line = '^exposure,(?<value>.+)'
          [[setting]]
          means = "declination"
          line = '^declination,(?<value>.+)'
          [[setting]]
          means = "hour-angle"
          line = '^hour angle,(?<value>.+)'
          [[setting]]
          means = "pier-side"
          line = '^pier side,(?<value>.+)'
          """
          + SITE;
    }
  },
  /** Latin-1, Unix seconds, pulses as pixels, declination that swaps with the pier side. */
  KILN {
    @Override
    String header(SimulatedNight night) {
      return "% échelle 2.43, speed 7.5205335 arcsec/s, exposure 2\n"
          + "% trial moves follow\ntrial 1 2 3\ntrial 4 5 6\n% trial moves end\n";
    }

    @Override
    String runHead(GuideRun run) {
      return String.format(
          Locale.ROOT,
          "%% %.2f° hour %.4f tube %s\nunix dRA dDec pRA pDec mark\n",
          declination(run),
          hourAngle(run),
          side(run));
    }

    @Override
    String row(LogPen pen) {
      double speed = 7.5205335 / 1000 / 2.43;
      int turn = pen.tubeEast() ? -1 : 1;
      return String.join(
          " ",
          String.format(Locale.ROOT, "%.3f", pen.epochSeconds()),
          pen.number(pen.ra() / 2.43, 4, "x"),
          pen.number(turn * pen.dec() / 2.43, 4, "x"),
          pen.number(pen.raPulse() * speed * pen.cosDec(), 5, ""),
          pen.number(turn * pen.decPulse() * speed, 5, ""),
          pen.dither() ? "d" : pen.settling() ? "s" : "-");
    }

    @Override
    public Charset charset() {
      return StandardCharsets.ISO_8859_1;
    }

    @Override
    public String layout() {
      return """
          [text]
          encoding = "latin-1"
          delimiter = "blanks"
          remark = '^%'
          names = '^unix'
          [[leave_out]]
          from = '^% trial moves follow'
          to = '^% trial moves end'
          [time]
          form = "unix-s"
          [camera]
          pier_side = "west"
          [[column]]
          name = "unix"
          means = "time"
          [[column]]
          name = "dRA"
          means = "ra-offset"
          unit = "px"
          positive = "east"
          missing = "x"
          [[column]]
          name = "dDec"
          means = "dec-offset"
          unit = "px"
          positive = "north"
          turns_with_pier = true
          missing = "x"
          [[column]]
          name = "pRA"
          means = "ra-pulse"
          unit = "px"
          positive = "east"
          [[column]]
          name = "pDec"
          means = "dec-pulse"
          unit = "px"
          positive = "north"
          turns_with_pier = true
          [[column]]
          name = "mark"
          means = "event"
          missing = "-"
          [[event]]
          means = "dither"
          words = "d"
          [[event]]
          means = "settling"
          words = "s"
          [[setting]]
          means = "scale"
          line = 'échelle (?<value>[0-9.]+)'
          [[setting]]
          means = "guide-rate"
          unit = "arcsec/s"
          line = 'speed (?<value>[0-9.]+) arcsec/s'
          [[setting]]
          means = "exposure"
          line = 'exposure (?<value>[0-9.]+)'
          [[setting]]
          means = "declination"
          line = '^% (?<value>[0-9.-]+)° '
          [[setting]]
          means = "hour-angle"
          line = 'hour (?<value>\\S+)'
          [[setting]]
          means = "pier-side"
          line = 'tube (?<value>\\S+)'
          """
          + SITE;
    }
  },
  /** UTF-16, carriage returns, modified Julian dates with decimal commas, and a remark column. */
  WEIR {
    @Override
    String header(SimulatedNight night) {
      return "Scale\t2,43\nSpeed\t0,5\nExposure\t2\n";
    }

    @Override
    String runHead(GuideRun run) {
      return String.format(
              Locale.ROOT,
              "Star\t%.2f\t%.4f\t%s\nMJD\tEast\tNorth\tEW\tNS\tWhat\n",
              declination(run),
              hourAngle(run),
              side(run))
          .replace('.', ',');
    }

    @Override
    String row(LogPen pen) {
      return String.join(
          "\t",
          String.format(Locale.ROOT, "%.9f", pen.epochSeconds() / 86_400 + 40587).replace('.', ','),
          pen.number(pen.ra(), 3, ""),
          pen.number(pen.dec(), 3, ""),
          pen.number(pen.raPulse(), 0, ""),
          pen.number(pen.decPulse(), 0, ""),
          pen.dither() ? "new place" : pen.settling() ? "calming" : "");
    }

    @Override
    boolean comma() {
      return true;
    }

    @Override
    public Charset charset() {
      return StandardCharsets.UTF_16;
    }

    @Override
    public String layout() {
      return """
          [text]
          encoding = "utf-16"
          delimiter = "tab"
          decimal = "comma"
          names = '^MJD'
          [time]
          form = "mjd"
          [[column]]
          name = "MJD"
          means = "time"
          [[column]]
          name = "East"
          means = "ra-offset"
          unit = "arcsec"
          positive = "east"
          [[column]]
          name = "North"
          means = "dec-offset"
          unit = "arcsec"
          positive = "north"
          [[column]]
          name = "EW"
          means = "ra-pulse"
          unit = "ms"
          positive = "east"
          [[column]]
          name = "NS"
          means = "dec-pulse"
          unit = "ms"
          positive = "north"
          [[column]]
          name = "What"
          means = "event"
          [[event]]
          means = "dither"
          words = "new place"
          [[event]]
          means = "settling"
          words = "calming"
          [[setting]]
          means = "scale"
          line = '^Scale\\t(?<value>.+)'
          [[setting]]
          means = "guide-rate"
          line = '^Speed\\t(?<value>.+)'
          [[setting]]
          means = "exposure"
          line = '^Exposure\\t(?<value>.+)'
          [[setting]]
          means = "declination"
          line = '^Star\\t(?<value>[^\\t]+)'
          [[setting]]
          means = "hour-angle"
          line = '^Star\\t[^\\t]+\\t(?<value>[^\\t]+)'
          [[setting]]
          means = "pier-side"
          line = '^Star\\t[^\\t]+\\t[^\\t]+\\t(?<value>.+)'
          """
          + SITE;
    }
  };

  private static final String SITE =
      """
      [[setting]]
      means = "latitude"
      value = "47.2"
      """;

  abstract String header(SimulatedNight night);

  abstract String runHead(GuideRun run);

  abstract String row(LogPen pen);

  String runFoot() {
    return "";
  }

  boolean comma() {
    return false;
  }

  /** Whether it tells how far the set point was moved. */
  public boolean tellsShifts() {
    return this == BARGE || this == MILL;
  }

  /** Encoding of the log. */
  public Charset charset() {
    return StandardCharsets.UTF_8;
  }

  /** The layout file. */
  public abstract String layout();

  /** The night as this log has it. */
  public String text(SimulatedNight night) {
    String text =
        header(night)
            + night.runs().stream()
                .map(SimulatedRun::log)
                .map(this::run)
                .collect(Collectors.joining());
    return this == WEIR ? text.replace('\n', '\r') : text;
  }

  /** The night as the bytes of this log. */
  public byte[] bytes(SimulatedNight night) {
    return text(night).getBytes(charset());
  }

  private String run(GuideRun run) {
    StringBuilder text = new StringBuilder(runHead(run));
    for (int i = 0; i < run.frames().size(); i++) {
      text.append(row(new LogPen(run, i, comma()))).append('\n');
    }
    return text.append(runFoot()).toString();
  }

  private static double declination(GuideRun run) {
    return run.pointing().declinationDegrees().orElseThrow();
  }

  private static double hourAngle(GuideRun run) {
    return run.pointing().hourAngleHours().orElseThrow();
  }

  private static String side(GuideRun run) {
    return run.pointing().pierSide().orElseThrow().name().toLowerCase(Locale.ROOT);
  }

  private static String dms(double degrees) {
    long seconds = Math.round(Math.abs(degrees) * 3600);
    return String.format(
        Locale.ROOT,
        "%s%02d:%02d:%02d",
        degrees < 0 ? "-" : "+",
        seconds / 3600,
        seconds / 60 % 60,
        seconds % 60);
  }
}
