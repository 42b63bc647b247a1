package io.github.roundstar.ingest.layout;

import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.Frames;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.model.PierSide;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** What an invented log may write of one frame of a simulated night. */
final class LogPen {
  static final double SIDEREAL = 15.041067;

  private final GuideRun run;
  private final int i;
  private final boolean comma;

  LogPen(GuideRun run, int i, boolean comma) {
    this.run = run;
    this.i = i;
    this.comma = comma;
  }

  Frames frames() {
    return run.frames();
  }

  FrameState state() {
    return frames().state(i);
  }

  double seconds() {
    return frames().timeSeconds(i);
  }

  Instant instant() {
    return run.instantAt(seconds()).orElseThrow();
  }

  String clock(String pattern, int offsetHours) {
    LocalDateTime local =
        LocalDateTime.ofInstant(instant().plusNanos(500), ZoneOffset.ofHours(offsetHours));
    return DateTimeFormatter.ofPattern(pattern, Locale.ENGLISH).format(local);
  }

  double epochSeconds() {
    return instant().getEpochSecond() + instant().getNano() * 1e-9;
  }

  /** A decimal number; {@code missing} for NaN. */
  String number(double value, int decimals, String missing) {
    if (Double.isNaN(value)) {
      return missing;
    }
    String text = String.format(Locale.ROOT, "%." + decimals + "f", value + 0.0);
    return comma ? text.replace('.', ',') : text;
  }

  double ra() {
    return frames().raArcsec(i);
  }

  double dec() {
    return frames().decArcsec(i);
  }

  double raPulse() {
    return frames().raPulseMillis(i);
  }

  double decPulse() {
    return frames().decPulseMillis(i);
  }

  double raPulseBefore() {
    return i == 0 ? 0 : frames().raPulseMillis(i - 1);
  }

  double decPulseBefore() {
    return i == 0 ? 0 : frames().decPulseMillis(i - 1);
  }

  double snr() {
    return frames().snr(i);
  }

  double flux() {
    return frames().fluxAdu(i);
  }

  boolean dither() {
    return frames().ditherStart(i);
  }

  double ditherRa() {
    return frames().ditherRaArcsec(i);
  }

  double ditherDec() {
    return frames().ditherDecArcsec(i);
  }

  boolean tubeEast() {
    return run.pointing().pierSide().orElseThrow() == PierSide.EAST;
  }

  /** The offset along a direction of the camera that turns with the pier. */
  double camera(double east, double north) {
    return (tubeEast() ? -1 : 1) * (ra() * east + dec() * north);
  }

  double guideRate() {
    return run.loop().guideRateSidereal().orElseThrow();
  }

  double cosDec() {
    return Math.cos(Math.toRadians(run.pointing().declinationDegrees().orElseThrow()));
  }

  boolean settling() {
    return state() == FrameState.SETTLING;
  }

  boolean lost() {
    return state() == FrameState.LOST;
  }
}
