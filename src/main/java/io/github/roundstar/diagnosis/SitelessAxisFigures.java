package io.github.roundstar.diagnosis;

import io.github.roundstar.diagnosis.exposures.FieldTurn;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.PolarAlignment;
import io.github.roundstar.results.AssumedSite;
import io.github.roundstar.results.AxisTrace;
import io.github.roundstar.results.KnownDirection;
import io.github.roundstar.results.PolarAxis;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The polar axis as the result shows it when nobody told the latitude. */
final class SitelessAxisFigures {
  private static final List<String> NEED_LATITUDE =
      List.of(
          "/azimuthArcmin",
          "/altitudeArcmin",
          "/totalArcmin",
          "/altitudeFromRefractedPoleArcmin",
          "/fieldRotationDegPerHour",
          "/exposureSeconds",
          "/cornerTrailArcsec",
          "/longestExposureSeconds",
          "/cornerDistanceArcmin",
          "/beside",
          "/driftAfterArcsecPerMinute",
          "/trackingRate");

  private final Answer<SitelessAxis> search;
  private final Equipment equipment;
  private final boolean siteShown;

  /** The figures where neither log nor equipment file tell the latitude. */
  static Optional<SitelessAxisFigures> wanted(
      List<RunStudy> studies, Equipment equipment, boolean siteShown) {
    List<GuideRun> runs = studies.stream().map(RunStudy::run).toList();
    return Observatory.latitudeDegrees(runs, equipment).isPresent()
        ? Optional.empty()
        : Optional.of(
            new SitelessAxisFigures(SitelessAxis.of(studies, equipment), equipment, siteShown));
  }

  private SitelessAxisFigures(Answer<SitelessAxis> search, Equipment equipment, boolean siteShown) {
    this.search = search;
    this.equipment = equipment;
    this.siteShown = siteShown;
  }

  /** The record; null, with the reason, when not even one direction is known well enough. */
  PolarAxis of(Reasons.Scope scope) {
    Answer<SitelessAxis> sharp =
        search.then(
            found ->
                AxisFigures.tooWide(found.known().arcmin())
                    ? Answer.none(
                        String.format(
                            Locale.ROOT,
                            "without the latitude refraction cannot be taken out, and the drifts tell"
                                + " the axis only to within %.0f arcmin: add site_latitude to the"
                                + " log's header or latitude_deg under [site] in the equipment file",
                            AxisFigures.half(found.known().arcmin())))
                    : Answer.of(found));
    return sharp.value().isPresent()
        ? record(sharp.value().get(), scope)
        : scope.orNull("", Answer.none(sharp.because()));
  }

  private PolarAxis record(SitelessAxis found, Reasons.Scope scope) {
    NEED_LATITUDE.forEach(figure -> scope.note(figure, Observatory.NO_LATITUDE));
    PolarAlignment fit = found.leastMisfit().fit();
    PolarAlignment.Combination known = found.known();
    return new PolarAxis(
        null,
        null,
        null,
        null,
        "one-direction",
        null,
        null,
        null,
        null,
        null,
        new KnownDirection(known.arcmin(), share(known.eastShare()), share(known.highShare())),
        scope.orNull("/secondPointingHourAngleHours", secondPointing(fit)),
        scope.orNull("/consistent", AxisFigures.consistent(fit.residual())),
        fit.residual().misfitArcsecPerMinute(),
        null,
        null,
        null,
        assumed(found.latitudes(), scope));
  }

  private static Answer<Double> secondPointing(PolarAlignment fit) {
    return AxisFigures.both(fit).value().isPresent()
        ? Answer.none("the runs tell both parts of the error once the latitude is known")
        : Answer.of(AxisFigures.secondPointing(fit));
  }

  private AssumedSite assumed(LatitudeRange latitudes, Reasons.Scope scope) {
    String end = latitudes.raisedEnd().equals(LatitudeRange.UNKNOWN) ? "north" : "raised";
    if (!siteShown) {
      scope.note("/assumed/latitudeFromDeg", "left out on request, since it tells of the site");
      scope.note("/assumed/latitudeToDeg", "left out on request, since it tells of the site");
      return new AssumedSite(null, null, end);
    }
    return new AssumedSite(latitudes.fromDegrees(), latitudes.toDegrees(), end);
  }

  /** Drifts of the runs without a model. */
  Optional<AxisTrace> trace() {
    return search.value().map(found -> AxisTraces.of(found.leastMisfit(), false, equipment));
  }

  /** How the axis may turn the field: at the latitude where it leaves least of the drifts. */
  Optional<FieldTurn> turn() {
    return search.value().map(found -> ExposureTurn.of(found.leastMisfit(), false));
  }

  private double share(double value) {
    return siteShown ? value : Math.rint(10 * value) / 10;
  }
}
