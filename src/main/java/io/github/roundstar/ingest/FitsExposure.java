package io.github.roundstar.ingest;

import io.github.roundstar.formats.FitsHeader;
import io.github.roundstar.formats.FormatException;
import io.github.roundstar.model.ExposureFrame;
import io.github.roundstar.model.ExposureFrame.CameraClock;
import io.github.roundstar.model.ExposureFrame.Optics;
import io.github.roundstar.model.ExposureFrame.RowOrder;
import io.github.roundstar.model.ExposureFrame.ScaleFrom;
import io.github.roundstar.model.PierSide;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the keywords of a FITS image say of its exposure.
 *
 * <p>Start: MJD-BEG or DATE-BEG; DATE-OBS or MJD-OBS, which is the start unless its comment speaks
 * of the middle; DATE-AVG less half of the exposure; DATE-END less all of it. TIMESYS other than
 * UTC is turned into UTC. Duration: TELAPSE or XPOSURE in TIMEUNIT, then EXPTIME and EXPOSURE in
 * seconds.
 *
 * @see "FITS Standard 4.0, sections 4.4.2.2 and 9 (time), 8 (WCS); Rots et al. 2015, A&amp;A 574,
 *     A36. EXPTIME, FOCALLEN, XPIXSZ, OBJCTRA, PIERSIDE, ROWORDER and the like: common practice, no
 *     source"
 */
public final class FitsExposure {
  /** Seconds to take off for the scales that run ahead of UTC by a constant since 2017. */
  private static final Map<String, Double> AHEAD_OF_UTC =
      Map.of("UTC", 0.0, "TAI", 37.0, "TT", 69.184, "GPS", 18.0);

  private static final Map<String, Double> UNIT_SECONDS =
      Map.of("s", 1.0, "min", 60.0, "h", 3600.0, "d", 86_400.0);

  private static final double ARCSEC_PER_RADIAN = Math.toDegrees(1) * 3600;

  private FitsExposure() {}

  /**
   * The exposure.
   *
   * @throws FormatException if start or duration are missing or wrong
   */
  static ExposureFrame of(Path path, FitsHeader header) throws FormatException {
    String file = String.valueOf(path.getFileName());
    double seconds = seconds(header);
    if (!(seconds > 0)) {
      throw new FormatException(
          file,
          0,
          "tells no exposure time",
          "write EXPTIME, in seconds, into its header, or list it in a table");
    }
    Optional<Start> start = start(header, seconds);
    if (start.isEmpty()) {
      throw new FormatException(
          file,
          0,
          "tells no start: DATE-OBS is missing or no date with time",
          "write DATE-OBS = 'CCYY-MM-DDThh:mm:ss' in UTC, or list it in a table");
    }
    return new ExposureFrame(
        file,
        start.get().instant(),
        start.get().clock(),
        seconds,
        optics(header),
        Optional.empty(),
        Optional.of(path));
  }

  private record Start(Instant instant, CameraClock clock) {}

  private static double seconds(FitsHeader header) {
    double unit = UNIT_SECONDS.getOrDefault(header.text("TIMEUNIT").orElse("s"), 1.0);
    OptionalDouble standard = header.number("TELAPSE", "XPOSURE");
    return standard.isPresent()
        ? standard.getAsDouble() * unit
        : header.number("EXPTIME", "EXPOSURE", "EXP_TIME", "ITIME").orElse(Double.NaN);
  }

  private static Optional<Start> start(FitsHeader header, double seconds) {
    double half = header.comment("DATE-OBS").toLowerCase(Locale.ROOT).contains("mid") ? 0.5 : 0;
    String system = header.text("TIMESYS").orElse("UTC").toUpperCase(Locale.ROOT);
    double ahead = AHEAD_OF_UTC.getOrDefault(system, 0.0);
    return instant(header, "MJD-BEG", "DATE-BEG", 0, seconds)
        .or(() -> instant(header, "MJD-OBS", "DATE-OBS", half, seconds))
        .or(() -> instant(header, "MJD-AVG", "DATE-AVG", 0.5, seconds))
        .or(() -> instant(header, "MJD-END", "DATE-END", 1, seconds))
        .map(at -> new Start(minus(at, ahead), CameraClock.UTC))
        .or(
            () ->
                header
                    .text("DATE-LOC", "DATELOC", "LOCTIME")
                    .flatMap(FitsTime::instant)
                    .map(at -> new Start(at, CameraClock.LOCAL)));
  }

  private static Optional<Instant> instant(
      FitsHeader header, String julian, String date, double share, double seconds) {
    OptionalDouble days = header.number(julian);
    Optional<Instant> found =
        days.isPresent()
            ? Optional.of(FitsTime.ofModifiedJulianDate(days.getAsDouble()))
            : header.text(date).flatMap(text -> dated(header, text));
    return found.map(at -> minus(at, share * seconds));
  }

  /** Some programs split date and time over two keywords. */
  private static Optional<Instant> dated(FitsHeader header, String date) {
    return FitsTime.instant(date)
        .or(
            () ->
                header
                    .text("TIME-OBS", "UT", "UTSTART", "UTC")
                    .flatMap(time -> FitsTime.instant(date + "T" + time)));
  }

  private static Instant minus(Instant at, double seconds) {
    return at.minus(Duration.ofNanos(Math.round(seconds * 1e9)));
  }

  /** The main camera as the keywords tell. */
  public static Optics optics(FitsHeader header) {
    Optional<SkyMap> map = SkyMap.of(header);
    OptionalDouble focal = header.number("FOCALLEN", "FOCAL", "FOCALLENGTH", "TELFOCUS");
    OptionalDouble pixel = header.number("XPIXSZ", "PIXSIZE1", "PIXSZ", "PIXSIZE");
    OptionalDouble scale = header.number("PIXSCALE", "SECPIX", "SECPIX1");
    ScaleFrom from = positive(scale) ? ScaleFrom.KEYWORD : ScaleFrom.NOWHERE;
    if (map.isPresent()) {
      scale = OptionalDouble.of(map.get().arcsecPerPixel());
      from = ScaleFrom.WORLD_COORDINATES;
    } else if (scale.isEmpty() && positive(focal) && positive(pixel)) {
      scale =
          OptionalDouble.of(pixel.getAsDouble() * 1e-3 / focal.getAsDouble() * ARCSEC_PER_RADIAN);
      from = ScaleFrom.FOCAL_LENGTH;
    }
    return new Optics(
        positive(scale) ? scale : OptionalDouble.empty(),
        map.isPresent()
            ? OptionalDouble.of(map.get().upPositionAngleDegrees())
            : header.number("POSANGLE", "OBJCTROT"),
        map.map(SkyMap::mirrored),
        SkyAngle.degrees(header.text("DEC", "OBJCTDEC", "TELDEC")),
        SkyAngle.hours(header.text("RA", "OBJCTRA", "TELRA")),
        header.text("PIERSIDE").flatMap(FitsExposure::pierSide),
        map.isPresent() ? RowOrder.BOTTOM_UP : rows(header),
        positive(scale) ? from : ScaleFrom.NOWHERE);
  }

  /** World coordinates speak of the rows as stored; an angle alone, of the picture as shown. */
  private static RowOrder rows(FitsHeader header) {
    String order = header.text("ROWORDER").orElse("").toUpperCase(Locale.ROOT).replace('_', '-');
    return order.equals("TOP-DOWN") ? RowOrder.TOP_DOWN : RowOrder.BOTTOM_UP;
  }

  private static boolean positive(OptionalDouble value) {
    return value.isPresent() && value.getAsDouble() > 0;
  }

  private static Optional<PierSide> pierSide(String word) {
    return switch (word.toUpperCase(Locale.ROOT)) {
      case "EAST", "E" -> Optional.of(PierSide.EAST);
      case "WEST", "W" -> Optional.of(PierSide.WEST);
      default -> Optional.empty();
    };
  }
}
