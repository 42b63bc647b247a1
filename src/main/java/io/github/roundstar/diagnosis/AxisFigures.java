package io.github.roundstar.diagnosis;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.AxisResidual;
import io.github.roundstar.motion.PolarAlignment;
import io.github.roundstar.results.AxisTrace;
import io.github.roundstar.results.BesideAxis;
import io.github.roundstar.results.KnownDirection;
import io.github.roundstar.results.PolarAxis;
import io.github.roundstar.results.TrackingRate;
import io.github.roundstar.sky.KingRate;
import io.github.roundstar.sky.SiderealRate;
import java.util.DoubleSummaryStatistics;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/** Polar axis, tracking rate and field rotation as the result shows them. */
final class AxisFigures {
  /** Wider half intervals say too little to turn a screw by [arcmin]. */
  private static final double WIDEST_ARCMIN = 3;

  /** Unless the error is much larger than that. */
  private static final double WIDEST_SHARE = 1.0 / 3;

  /** Pointings so far apart tell more together than the bend of a single run [h]. */
  private static final double APART_HOURS = 1;

  /** A quarter turn away from what is known. */
  private static final double QUARTER_HOURS = 6;

  /** Beyond this hour angle a star of middle declination stands low. */
  private static final double FARTHEST_HOURS = 5;

  /** A tracking rate less well known cannot tell the sidereal rate from the refracted one. */
  private static final double WIDEST_RATE = 0.3;

  /** Largest drift that an axis one arcminute off makes [arcsec/min]. */
  static final double ARCSEC_PER_MINUTE_PER_ARCMIN =
      Math.toRadians(SiderealRate.ARCSEC_PER_SECOND / 3600) * 60 * 60;

  private final Answer<AxisSearch.Found> search;
  private final Equipment equipment;
  private final boolean siteShown;

  AxisFigures(Answer<AxisSearch.Found> search, Equipment equipment, boolean siteShown) {
    this.search = search;
    this.equipment = equipment;
    this.siteShown = siteShown;
  }

  /** The axis, whatever it is worth. */
  Optional<AxisSearch.Found> found() {
    return search.value();
  }

  /** The axis, where both its directions are known well enough to be told. */
  Optional<AxisSearch.Found> whole() {
    return search
        .value()
        .filter(found -> !tooWide(found.fit().known().arcmin()))
        .filter(found -> both(found.fit()).value().isPresent());
  }

  /** The record; null, with the reason, when no direction is known well enough. */
  PolarAxis of(Reasons.Scope scope) {
    Answer<AxisSearch.Found> sharp =
        search.then(
            found ->
                tooWide(found.fit().known().arcmin())
                    ? Answer.none(
                        String.format(
                            Locale.ROOT,
                            "the drifts tell the axis only to within %.0f arcmin: record longer runs",
                            half(found.fit().known().arcmin())))
                    : Answer.of(found));
    return sharp.value().isPresent()
        ? record(sharp.value().get(), scope)
        : scope.orNull("", Answer.none(sharp.because()));
  }

  private PolarAxis record(AxisSearch.Found found, Reasons.Scope scope) {
    PolarAlignment fit = found.fit();
    Answer<PolarAlignment> both = both(fit);
    Optional<FieldTurn> turn = both.value().map(known -> FieldTurn.of(found, equipment));
    Answer<FieldTurn> turning = turn.map(Answer::of).orElseGet(() -> Answer.none(both.because()));
    PolarAlignment.Combination known = fit.known();
    return new PolarAxis(
        scope.orNull("/azimuthArcmin", both.map(p -> shown(p.azimuthArcmin(), 0.1))),
        scope.orNull("/altitudeArcmin", both.map(p -> shown(p.altitudeArcmin(), 0.1))),
        scope.orNull("/totalArcmin", both.map(p -> shown(p.totalArcmin(), 0.5))),
        scope.orNull("/altitudeFromRefractedPoleArcmin", both.then(p -> fromRefracted(found))),
        basis(fit, both.value().isPresent()),
        scope.orNull("/fieldRotationDegPerHour", turning.map(FieldTurn::degreesPerHour)),
        scope.orNull("/exposureSeconds", given(turning, FieldTurn::exposureSeconds)),
        scope.orNull("/cornerTrailArcsec", given(turning, FieldTurn::cornerTrailArcsec)),
        scope.orNull("/longestExposureSeconds", given(turning, FieldTurn::longestExposureSeconds)),
        scope.orNull("/cornerDistanceArcmin", given(turning, FieldTurn::cornerArcmin)),
        new KnownDirection(known.arcmin(), share(known.eastShare()), share(known.highShare())),
        scope.orNull(
            "/secondPointingHourAngleHours",
            both.value().isPresent()
                ? Answer.none("both parts of the error are known")
                : Answer.of(secondPointing(fit))),
        scope.orNull("/consistent", consistent(fit.residual())),
        fit.residual().misfitArcsecPerMinute(),
        scope.orNull("/beside", beside(fit)),
        scope.orNull(
            "/driftAfterArcsecPerMinute",
            both.map(p -> p.leftArcmin() * ARCSEC_PER_MINUTE_PER_ARCMIN)),
        scope.orNull("/trackingRate", rate(found)),
        scope.orNull("/assumed", Answer.none("the latitude is known: nothing was assumed")));
  }

  private static Answer<Double> given(
      Answer<FieldTurn> turning, Function<FieldTurn, Optional<Double>> figure) {
    return turning.then(
        turn ->
            figure
                .apply(turn)
                .map(Answer::of)
                .orElseGet(
                    () ->
                        Answer.none(
                            "exposure, scale or size of the sensor is not known: fill [imaging] in"
                                + " the equipment file")));
  }

  static Answer<PolarAlignment> both(PolarAlignment fit) {
    double total = fit.totalArcmin().value();
    double widest = Math.max(half(fit.eastArcmin()), half(fit.altitudeArcmin()));
    return widest <= Math.max(WIDEST_ARCMIN, WIDEST_SHARE * total)
        ? Answer.of(fit)
        : Answer.none(
            String.format(
                Locale.ROOT,
                "the runs tell one direction of the error only; the other is known to within %.0f"
                    + " arcmin at best: record another run some hours of hour angle away",
                widest));
  }

  private Answer<Double> fromRefracted(AxisSearch.Found found) {
    if (!siteShown) {
      return Answer.none("left out on request, since it tells the site");
    }
    OptionalDouble lift = found.place().air().poleLiftArcsec(found.place().site());
    return lift.isEmpty()
        ? Answer.none("the pole stands too low for the refraction model")
        : Answer.of(found.fit().altitudeArcmin().value() - lift.getAsDouble() / 60);
  }

  private String basis(PolarAlignment fit, boolean both) {
    if (!both) {
      return "one-direction";
    }
    DoubleSummaryStatistics hours =
        fit.runs().stream()
            .mapToDouble(run -> run.middle().hourAngleDegrees() / 15)
            .summaryStatistics();
    return hours.getMax() - hours.getMin() >= APART_HOURS ? "two-pointings" : "curvature";
  }

  /** A quarter turn from the direction that is known; in half hours, so that it tells no site. */
  static double secondPointing(PolarAlignment fit) {
    double hours =
        fit.runs().stream()
            .mapToDouble(run -> run.middle().hourAngleDegrees() / 15)
            .average()
            .orElseThrow();
    double there = hours > 0 ? hours - QUARTER_HOURS : hours + QUARTER_HOURS;
    double seen = Math.max(-FARTHEST_HOURS, Math.min(FARTHEST_HOURS, there));
    return Math.rint(2 * seen) / 2;
  }

  static Answer<Boolean> consistent(AxisResidual residual) {
    return Double.isNaN(residual.chance())
        ? Answer.none("a single run has nothing left to test the axis with: record a second one")
        : Answer.of(residual.pattern() == AxisResidual.Pattern.NONE);
  }

  private static Answer<BesideAxis> beside(PolarAlignment fit) {
    String follows =
        fit.residual().pattern() == AxisResidual.Pattern.PIER_SIDE ? "pier-side" : "nothing";
    return fit.besideArcsecPerMinute()
        .map(drift -> Answer.of(new BesideAxis(follows, drift)))
        .orElseGet(
            () ->
                Answer.none(
                    fit.residual().pattern() == AxisResidual.Pattern.NONE
                        ? "no drift is needed beside that of the axis"
                        : "what the axis leaves follows neither hour angle nor pier side"));
  }

  private static Answer<TrackingRate> rate(AxisSearch.Found found) {
    Optional<Estimate> error = found.fit().rateErrorArcsecPerMinute();
    if (error.isEmpty() || half(error.get()) > WIDEST_RATE) {
      return Answer.none(
          "the drift in right ascension does not tell the rate from the axis: record a second run"
              + " some hours of hour angle away");
    }
    double king =
        found.fit().runs().stream()
            .mapToDouble(
                run ->
                    KingRate.aboutTruePole(found.place().site(), found.place().air(), run.middle()))
            .average()
            .orElseThrow();
    return Answer.of(new TrackingRate(error.get(), 60 * (king - SiderealRate.ARCSEC_PER_SECOND)));
  }

  /** What the chart of drifts and the map of the sensor show. */
  Optional<AxisTrace> trace() {
    return search.value().map(found -> AxisTraces.of(found, drawn(found.fit()), equipment));
  }

  private static boolean drawn(PolarAlignment fit) {
    return both(fit).value().isPresent() && !tooWide(fit.known().arcmin());
  }

  private double share(double value) {
    return siteShown ? value : Math.rint(10 * value) / 10;
  }

  /** Azimuth, altitude and total together tell the latitude: rounded where that is not wanted. */
  private Estimate shown(Estimate figure, double step) {
    return siteShown
        ? figure
        : new Estimate(
            step * Math.rint(figure.value() / step),
            step * Math.floor(figure.lo95() / step),
            step * Math.ceil(figure.hi95() / step));
  }

  static boolean tooWide(Estimate figure) {
    return half(figure) > Math.max(WIDEST_ARCMIN, WIDEST_SHARE * Math.abs(figure.value()));
  }

  static double half(Estimate figure) {
    return (figure.hi95() - figure.lo95()) / 2;
  }
}
