package io.github.roundstar.diagnosis;

import io.github.roundstar.diagnosis.finding.Thresholds;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.results.AxisScatter;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.Periodic;
import io.github.roundstar.results.Planning.Recording;
import io.github.roundstar.results.PolarAxis;
import io.github.roundstar.results.Response;
import io.github.roundstar.results.RunResult;
import io.github.roundstar.results.Rung;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What to record where the decision is open: where a rung on the way to the one decided on meets
 * the need with a probability of 0.1 to 0.9. Each recording comes with the half width to expect of
 * the figure that it narrows, as in the design of experiments for a linear model with Gaussian
 * errors: information adds up, that of a recording is one over the variance of what it measures,
 * and the scatter is this night's.
 *
 * @see "Chaloner and Verdinelli (1995), Statistical Science 10, 273, for designs by the variance to
 *     expect"
 */
final class RecordNext {
  private static final int MOST = 2;
  private static final double SURELY_NOT = 1 - Thresholds.SURELY;

  /** A recording that leaves more than this share of a half width changes no decision. */
  private static final double NARROWS_TO = 0.67;

  /** Pulses whose strength is known worse than this may be behind other settings. */
  private static final double LOOSE_RESPONSE = 0.1;

  private static final double DITHER_ARCSEC = 5;
  private static final int DITHERS = 20;
  private static final double MINUTES_PER_DITHER = 3;
  private static final double POINTING_MINUTES = 30;

  /** Images of a dozen exposures give the width of stars to so much, whatever they show. */
  private static final double IMAGED_WIDTH = 5;

  /** Not more is asked of an axis [arcmin]; as close as a careful owner sets it. */
  private static final double CLOSE_ARCMIN = 1;

  /** A swing is known well enough to within this share. */
  private static final double LOOSE_SWING = 0.25;

  private static final int MORE_TURNS = 2;

  private final NightResult night;

  private RecordNext(NightResult night) {
    this.night = night;
  }

  /**
   * At most two recordings, the least trouble first.
   *
   * @param night judged, with its ladder
   * @param listed whether exposures were listed
   * @param widthPercent half width of how wide the round image is [%]
   */
  static List<Recording> of(NightResult night, boolean listed, double widthPercent) {
    RecordNext next = new RecordNext(night);
    List<Rung> open = next.open();
    if (open.isEmpty()) {
      return List.of();
    }
    List<Recording> all = new ArrayList<>();
    if (!listed && night.need().ofStars()) {
      images(widthPercent).ifPresent(all::add);
    }
    if (open.stream().anyMatch(rung -> cures(rung, "ra-", "dec-"))) {
      next.dithers().ifPresent(all::add);
    }
    if (open.stream()
        .anyMatch(rung -> rung.rung().equals(Rung.AS_IT_WAS) || cures(rung, "polar"))) {
      next.pointing().ifPresent(all::add);
    }
    if (open.stream().anyMatch(rung -> cures(rung, "training", "gears"))) {
      next.turns().ifPresent(all::add);
    }
    return all.stream().filter(RecordNext::narrows).limit(MOST).toList();
  }

  private static boolean narrows(Recording recording) {
    return recording.halfWidthNow() == null
        || recording.halfWidthThen() <= NARROWS_TO * recording.halfWidthNow();
  }

  private static boolean cures(Rung rung, String... codes) {
    return rung.cures().stream()
        .anyMatch(cure -> List.of(codes).stream().anyMatch(code -> cure.cure().startsWith(code)));
  }

  /**
   * Rungs that may or may not do, up to the one decided on; none where the night was surely enough.
   */
  private List<Rung> open() {
    if (night.ladder() == null || night.need() == null || night.verdict() == null) {
      return List.of();
    }
    String decided = night.verdict().rung();
    List<Rung> open = new ArrayList<>();
    for (Rung rung : night.ladder()) {
      boolean limit = rung.rung().equals(Rung.LOOP_LIMIT) || rung.rung().equals(Rung.AIR_LIMIT);
      if (!limit
          && rung.offered()
          && rung.meetsNeed() > SURELY_NOT
          && rung.meetsNeed() < Thresholds.SURELY) {
        open.add(rung);
      }
      if (rung.rung().equals(decided)) {
        break;
      }
    }
    return open;
  }

  /** The width of stars, which the round image is judged by. */
  private static Optional<Recording> images(double widthPercent) {
    return Optional.of(
        new Recording(
            "exposures-listed",
            "Name the exposures of the night with --exposures: images tell how wide stars are and"
                + " which of them trailed.",
            "width of a round star",
            "%",
            widthPercent,
            IMAGED_WIDTH,
            0,
            "rule of thumb: a dozen images give the width to 5 %"));
  }

  /**
   * The strength of pulses: each dither is a move of known size that the loop has to answer, told
   * as well as its two ends are measured, so that n of size D leave sqrt(2 / n) rms / D.
   */
  private Optional<Recording> dithers() {
    Response response = night.night().responseArcsecPerSecond();
    if (response == null || night.night().guided() == null) {
      return Optional.empty();
    }
    OptionalDouble ra =
        response.ra() == null ? OptionalDouble.empty() : share(response.ra().axis());
    OptionalDouble dec =
        response.dec() == null ? OptionalDouble.empty() : share(response.dec().axis());
    boolean worseRa = ra.orElse(0) >= dec.orElse(0);
    double now = Math.max(ra.orElse(0), dec.orElse(0));
    if (now < LOOSE_RESPONSE) {
      return Optional.empty();
    }
    AxisScatter scatter = worseRa ? night.night().guided().ra() : night.night().guided().dec();
    double then =
        Estimate.SIGMAS_95 * Math.sqrt(2.0 / DITHERS) * scatter.rmsArcsec() / DITHER_ARCSEC;
    return Optional.of(
        new Recording(
            "larger-dithers",
            String.format(
                Locale.ROOT,
                "Guide for an hour with a dither of %.0f arcsec in both axes every %.0f minutes.",
                DITHER_ARCSEC,
                MINUTES_PER_DITHER),
            "strength of pulses in " + (worseRa ? "RA" : "Dec"),
            "%",
            100 * now,
            100 * Math.hypot(then, then * now),
            DITHERS * MINUTES_PER_DITHER,
            "a dither is a known move, as well told as its two ends: with this night's scatter,"
                + " twenty leave the root of 2/20 of it"));
  }

  private static OptionalDouble share(Estimate response) {
    return response == null || response.value() == 0
        ? OptionalDouble.empty()
        : OptionalDouble.of(AxisFigures.half(response) / Math.abs(response.value()));
  }

  /** The polar axis, by the drift in declination at another hour angle. */
  private Optional<Recording> pointing() {
    PolarAxis axis = night.polarAxis();
    if (axis == null || axis.known() == null) {
      return Optional.empty();
    }
    OptionalDouble drift = driftOfAPointing();
    Double hourAngle = axis.secondPointingHourAngleHours();
    if (drift.isEmpty() || hourAngle == null) {
      return Optional.empty();
    }
    double apart = Math.toRadians(15 * (hourAngle - meanHourAngle()));
    double across = Math.max(0.3, Math.abs(Math.sin(apart)));
    double measured = drift.getAsDouble() / Thresholds.DRIFT_PER_ARCMIN / across;
    Double now = axis.totalArcmin() == null ? null : (Double) AxisFigures.half(axis.totalArcmin());
    if (now != null && now < CLOSE_ARCMIN) {
      return Optional.empty();
    }
    double then =
        now == null
            ? Math.max(measured, AxisFigures.half(axis.known().arcmin()))
            : 1 / Math.sqrt(1 / (now * now) + 1 / (measured * measured));
    return Optional.of(
        new Recording(
            "other-hour-angle",
            String.format(
                Locale.ROOT,
                "Record half an hour at an hour angle near %.1f h (west positive).",
                hourAngle),
            "polar axis",
            "arcmin",
            now,
            then,
            POINTING_MINUTES,
            "drift in Dec as well told as in this night's runs, by the root of the time, 0.2625"
                + " arcsec/min to an arcmin"));
  }

  private double meanHourAngle() {
    return night.runs().stream()
        .filter(run -> run.hourAngleHours() != null)
        .mapToDouble(RunResult::hourAngleHours)
        .average()
        .orElse(0);
  }

  /**
   * Half width of the drift in declination of half an hour, by the best of the runs [arcsec/min].
   */
  private OptionalDouble driftOfAPointing() {
    return night.runs().stream()
        .filter(run -> run.driftArcsecPerMinuteSky() != null)
        .filter(run -> run.driftArcsecPerMinuteSky().dec() != null)
        .mapToDouble(
            run ->
                AxisFigures.half(run.driftArcsecPerMinuteSky().dec())
                    * Math.sqrt(run.durationSeconds() / 60 / POINTING_MINUTES))
        .min();
  }

  /** The worm's swing: each turn tells it once more. */
  private Optional<Recording> turns() {
    Periodic periodic = night.night().periodic();
    if (periodic == null
        || periodic.peakToPeakArcsecAxis() == null
        || periodic.cycles() == null
        || periodic.components().isEmpty()) {
      return Optional.empty();
    }
    Estimate swing = periodic.peakToPeakArcsecAxis();
    double now = AxisFigures.half(swing);
    if (now < LOOSE_SWING * swing.value()) {
      return Optional.empty();
    }
    double turn = periodic.components().get(0).periodSeconds().value() / 60;
    double cycles = periodic.cycles();
    double minutes = (cycles + MORE_TURNS) * turn;
    return Optional.of(
        new Recording(
            "more-worm-turns",
            String.format(
                Locale.ROOT,
                "Record %d turns longer in one go: %.0f minutes in all.",
                MORE_TURNS,
                Math.ceil(minutes)),
            "swing of the worm",
            "arcsec",
            now,
            now * Math.sqrt(cycles / (cycles + MORE_TURNS)),
            minutes,
            "each turn tells the swing once more: by the root of their number"));
  }
}
