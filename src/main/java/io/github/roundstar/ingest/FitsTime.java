package io.github.roundstar.ingest;

import io.github.roundstar.formats.IsoTime;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Optional;

/**
 * Dates of FITS headers: {@code CCYY-MM-DDThh:mm:ss[.s...]} without a zone. A zone at the end,
 * which the standard forbids and some programs write, is respected; a date alone is no time.
 *
 * @see "FITS Standard 4.0, section 4.4.2.2"
 */
final class FitsTime {
  private static final double EPOCH_MJD = 40_587;

  private FitsTime() {}

  /** The instant, taken for UTC without a zone; nothing when the text is anything else. */
  static Optional<Instant> instant(String text) {
    return IsoTime.withOffset(text)
        .or(() -> IsoTime.withOffset(text + "Z"))
        .map(OffsetDateTime::toInstant);
  }

  /** To the microsecond, which is what a double can hold. */
  static Instant ofModifiedJulianDate(double days) {
    double seconds = (days - EPOCH_MJD) * 86_400;
    long micros = Math.round(seconds * 1e6);
    return Instant.EPOCH.plusNanos(micros * 1000);
  }
}
