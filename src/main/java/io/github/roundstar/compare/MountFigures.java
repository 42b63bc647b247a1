package io.github.roundstar.compare;

import io.github.roundstar.compare.Figure.Kind;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.results.Backlash;
import io.github.roundstar.results.DecResponse;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.Periodic;
import io.github.roundstar.results.PolarAxis;
import io.github.roundstar.results.RaResponse;
import io.github.roundstar.results.Response;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** Figures of the mount itself, at the axis: the air only makes them less certain. */
final class MountFigures {
  /** How far the same gear comes out apart on two nights: load, balance and temperature. */
  static final Tolerance GEAR_SCATTER =
      new Tolerance(
          0.05, 0.07, "load, balance and temperature of a gear; common practice, no source");

  private static final String ARCSEC = "arcsec at the axis";
  private static final String NOT_SEEN =
      "less than a tenth, or than a guide loop lets through, is not seen";
  private static final Tolerance POLAR_SCATTER =
      new Tolerance(0.3, 0, "a tripod settles and bends by so much; common practice, no source");
  private static final Tolerance POLAR_MARGIN =
      new Tolerance(0.5, 0, "half an arcmin drifts by less than 0.14 arcsec per minute");
  private static final Tolerance RATE_SCATTER =
      new Tolerance(0, 0.02, "temperature and supply; common practice, no source");

  private MountFigures() {}

  static List<Figure> all() {
    return List.of(
        new Figure(
            "periodic-peak-to-peak",
            "periodic error, peak to peak",
            Kind.PERIODIC,
            ARCSEC,
            Aim.LOWER,
            new Tolerance(0.3, 0.10, NOT_SEEN),
            new Tolerance(0.1, GEAR_SCATTER.share(), GEAR_SCATTER.because()),
            MountFigures::peakToPeak),
        new Figure(
            "periodic-steepest-rate",
            "periodic error, steepest rate",
            Kind.PERIODIC,
            "arcsec/s at the axis",
            Aim.LOWER,
            new Tolerance(0.005, 0.10, NOT_SEEN),
            new Tolerance(0.002, GEAR_SCATTER.share(), GEAR_SCATTER.because()),
            MountFigures::steepest),
        polar("polar-total", "polar axis, distance from the pole", PolarAxis::totalArcmin),
        polar("polar-azimuth", "polar axis, error in azimuth", PolarAxis::azimuthArcmin),
        polar("polar-altitude", "polar axis, error in altitude", PolarAxis::altitudeArcmin),
        new Figure(
            "backlash-dec",
            "backlash in Dec",
            Kind.GEARS,
            ARCSEC,
            Aim.LOWER,
            new Tolerance(0.4, 0.10, "a pulse or two takes up so much"),
            new Tolerance(0.15, 0.10, "grease and balance; common practice, no source"),
            MountFigures::backlash),
        response("response-ra", "response in RA, off the declared rate", MountFigures::raResponse),
        response(
            "response-dec", "response in Dec, off the declared rate", MountFigures::decResponse));
  }

  private static Figure polar(String key, String name, Function<PolarAxis, Estimate> part) {
    return new Figure(
        key,
        name,
        Kind.POLAR,
        "arcmin",
        Aim.nearer(0),
        POLAR_MARGIN,
        POLAR_SCATTER,
        night ->
            Reading.of(
                Optional.ofNullable(night.polarAxis()).map(part),
                Why.missing(night, "/polarAxis")));
  }

  private static Figure response(String key, String name, Function<NightResult, Reading> reading) {
    return new Figure(
        key,
        name,
        Kind.GEARS,
        "%",
        Aim.nearer(100),
        new Tolerance(3, 0, "the guide loop does not feel less"),
        new Tolerance(100 * RATE_SCATTER.share(), 0, RATE_SCATTER.because()),
        reading);
  }

  private static Reading peakToPeak(NightResult night) {
    Periodic periodic = night.night().periodic();
    if (periodic == null) {
      return Reading.none(Why.missing(night, "/night/periodic"));
    }
    if (periodic.peakToPeakArcsecAxis() != null) {
      return Reading.of(periodic.peakToPeakArcsecAxis());
    }
    return periodic.detectable() == null
        ? Reading.none(Why.missing(night, "/night/periodic/detectable"))
        : Reading.of(
            periodic.detectable().amplitudeArcsecAxis(),
            periodic.detectable().amplitudeArcsecAxis());
  }

  /** Known within the night as well, in proportion, as the curve that it is the slope of. */
  private static Reading steepest(NightResult night) {
    Periodic periodic = night.night().periodic();
    if (periodic == null
        || periodic.maxRateArcsecPerSecondAxis() == null
        || periodic.peakToPeakArcsecAxis() == null) {
      return Reading.none(Why.missing(night, "/night/periodic/maxRateArcsecPerSecondAxis"));
    }
    Estimate size = periodic.peakToPeakArcsecAxis();
    double rate = periodic.maxRateArcsecPerSecondAxis();
    return Reading.of(rate, rate * Reading.error(size) / Math.max(size.value(), 1e-9));
  }

  private static Reading backlash(NightResult night) {
    return Reading.of(
        OverRuns.of(
            night,
            summary -> dec(summary.backlashArcsecAxis()),
            run -> dec(run.backlashArcsecAxis())),
        Why.missing(night, "/runs/*/backlashArcsecAxis/dec"));
  }

  private static Estimate dec(Backlash backlash) {
    return backlash == null ? null : backlash.dec();
  }

  private static Reading raResponse(NightResult night) {
    return Reading.of(
        OverRuns.of(
            night,
            summary -> ra(summary.responseArcsecPerSecond()),
            run -> ra(run.responseArcsecPerSecond())),
        Why.missing(night, "/runs/*/responseArcsecPerSecond/ra"));
  }

  private static Reading decResponse(NightResult night) {
    return Reading.of(
        OverRuns.of(
            night,
            summary -> dec(summary.responseArcsecPerSecond()),
            run -> dec(run.responseArcsecPerSecond())),
        Why.missing(night, "/runs/*/responseArcsecPerSecond/dec"));
  }

  private static Estimate ra(Response response) {
    RaResponse ra = response == null ? null : response.ra();
    return ra == null || ra.axis() == null || ra.declaredAxis() == null
        ? null
        : ra.axis().times(100 / ra.declaredAxis());
  }

  private static Estimate dec(Response response) {
    DecResponse dec = response == null ? null : response.dec();
    return dec == null || dec.axis() == null || dec.declaredAxis() == null
        ? null
        : dec.axis().times(100 / dec.declaredAxis());
  }
}
