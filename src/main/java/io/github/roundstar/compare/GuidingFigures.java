package io.github.roundstar.compare;

import io.github.roundstar.compare.Figure.Kind;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.results.Exposure;
import io.github.roundstar.results.Guided;
import io.github.roundstar.results.GuidedIntervals;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.NoiseFloor;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** How the star was guided, as logged and as it would have been in equal air. */
final class GuidingFigures {
  /** Ends the key of a figure that was brought to equal air. */
  static final String EQUAL_AIR = "-equal-air";

  private static final String ARCSEC = "arcsec";
  static final Tolerance MARGIN =
      new Tolerance(0.03, 0.05, "less than a twentieth is not seen in an image");
  static final Tolerance ROUND_MARGIN = new Tolerance(5, 0, "one exposure in twenty");
  static final Tolerance ROUND_SCATTER =
      new Tolerance(10, 0, "air and wind; common practice, no source");
  private static final Tolerance SHAPE =
      new Tolerance(0.05, 0, "half of what makes a star look round or not");
  private static final Tolerance LOGGED =
      new Tolerance(0.02, 0.15, "air, wind and altitude; common practice, no source");
  static final Tolerance ADJUSTED =
      new Tolerance(0.02, 0.08, "wind and balance, the noise floor taken out; common practice");
  static final Tolerance AIR =
      new Tolerance(0.02, 0.20, "air changes from night to night; common practice, no source");

  private GuidingFigures() {}

  static List<Figure> logged() {
    return List.of(
        rms(
            "rms-radial",
            "radial RMS as logged",
            g -> g.rmsRadialArcsec(),
            GuidedIntervals::rmsRadialArcsec),
        rms("rms-ra", "RMS in RA as logged", g -> g.ra().rmsArcsec(), GuidedIntervals::raRmsArcsec),
        rms(
            "rms-dec",
            "RMS in Dec as logged",
            g -> g.dec().rmsArcsec(),
            GuidedIntervals::decRmsArcsec),
        new Figure(
            "elongation",
            "elongation of the scatter, beyond round",
            Kind.GUIDING,
            "",
            Aim.nearer(1),
            SHAPE,
            new Tolerance(0.08, 0, "wind and direction; common practice, no source"),
            night -> guided(night, Guided::scatterElongation, GuidedIntervals::scatterElongation)),
        new Figure(
            "round-exposures",
            "round exposures",
            Kind.GUIDING,
            "%",
            Aim.HIGHER,
            ROUND_MARGIN,
            ROUND_SCATTER,
            GuidingFigures::round));
  }

  static List<Figure> inEqualAir(EqualAir air) {
    return List.of(
        adjusted("rms-radial", "radial RMS in equal air", air::radial),
        adjusted("rms-ra", "RMS in RA in equal air", night -> air.ra(night).map(Reading::root)),
        adjusted("rms-dec", "RMS in Dec in equal air", night -> air.dec(night).map(Reading::root)));
  }

  static List<Figure> air() {
    return List.of(
        floor("noise-floor-ra", "noise floor in RA", NoiseFloor::ra),
        floor("noise-floor-dec", "noise floor in Dec", NoiseFloor::dec));
  }

  private static Figure rms(
      String key,
      String name,
      Function<Guided, Double> value,
      Function<GuidedIntervals, Estimate> interval) {
    return new Figure(
        key,
        name,
        Kind.GUIDING,
        ARCSEC,
        Aim.LOWER,
        MARGIN,
        LOGGED,
        night -> guided(night, value, interval));
  }

  private static Reading guided(
      NightResult night,
      Function<Guided, Double> value,
      Function<GuidedIntervals, Estimate> interval) {
    Guided guided = night.night().guided();
    if (guided == null || value.apply(guided) == null) {
      return Reading.none(Why.missing(night, "/night/guided"));
    }
    GuidedIntervals intervals = AirOfNight.intervals(night);
    Estimate known = intervals == null ? null : interval.apply(intervals);
    return Reading.of(value.apply(guided), known == null ? 0 : Reading.error(known));
  }

  private static Figure adjusted(
      String key, String name, Function<NightResult, Optional<Reading>> rms) {
    return new Figure(
        key + EQUAL_AIR,
        name,
        Kind.GUIDING,
        ARCSEC,
        Aim.LOWER,
        MARGIN,
        ADJUSTED,
        night ->
            rms.apply(night)
                .orElseGet(() -> Reading.none(Why.missing(night, "/runs/*/noiseFloorArcsec/ra"))));
  }

  /** Share of round ones among the exposures that the log covers, with its binomial error. */
  private static Reading round(NightResult night) {
    List<Exposure> judged =
        night.exposures() == null
            ? List.of()
            : night.exposures().stream()
                .filter(e -> e.verdict() != null && !e.verdict().equals("not covered"))
                .toList();
    if (judged.isEmpty()) {
      return Reading.none(Why.missing(night, "/exposures"));
    }
    double n = judged.size();
    double round = judged.stream().filter(e -> e.verdict().equals("round")).count();
    // One success and one failure more keep the error of all or none from being zero.
    double share = (round + 1) / (n + 2);
    return Reading.of(100 * round / n, 100 * Math.sqrt(share * (1 - share) / n));
  }

  private static Figure floor(String key, String name, Function<NoiseFloor, Estimate> axis) {
    return new Figure(
        key,
        name,
        Kind.AIR,
        ARCSEC,
        Aim.LOWER,
        MARGIN,
        AIR,
        night ->
            Reading.of(
                AirOfNight.floor(night, axis), Why.missing(night, "/runs/*/noiseFloorArcsec")));
  }
}
