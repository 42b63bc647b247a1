package io.github.roundstar.compare;

import io.github.roundstar.compare.Figure.Kind;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.Rung;
import io.github.roundstar.results.Usual;
import io.github.roundstar.signal.Quantile;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/**
 * What is usual for a user: the median of the user's own nights, and between what half of them lie.
 * A night is called better or worse than that only where its whole interval lies beyond that half,
 * and by more than makes a difference in practice.
 */
public final class OwnNights {
  /** Of fewer nights it is too early to say what is usual. */
  static final int LEAST = 3;

  /** Before that many, nothing is called far off. */
  private static final int LEAST_FOR_FAR_OFF = 5;

  /**
   * Beyond the quartiles by so many interquartile ranges: Tukey (1977), Exploratory Data Analysis.
   */
  private static final double FENCE = 1.5;

  /** Shorter nights say little of what is usual. */
  static final double LEAST_GUIDED_HOURS = 0.5;

  private static final List<String> KEYS =
      List.of(
          PromisedFigure.ROUND_SHARE,
          "rms-radial",
          "periodic-peak-to-peak",
          "polar-total",
          "noise-floor",
          "drift-ra",
          "drift-dec");

  private OwnNights() {}

  /** Whether two nights are of one mount and optics, as far as they tell. */
  public static boolean sameTelescope(NightResult one, NightResult other) {
    return Telescope.same(one, other);
  }

  /**
   * Median and quartiles (type 7, Hyndman and Fan 1996) of nights' values, the quartiles as the
   * ends of the interval; nothing of too few.
   */
  static Optional<Estimate> band(double[] values) {
    return values.length < LEAST
        ? Optional.empty()
        : Optional.of(
            new Estimate(
                Quantile.median(values), Quantile.of(values, 0.25), Quantile.of(values, 0.75)));
  }

  /**
   * A night beside earlier ones; nothing with too few of them.
   *
   * @param night the night
   * @param earlier nights of the same telescope, in order of time
   */
  public static Optional<Usual> of(NightResult night, List<NightResult> earlier) {
    List<NightResult> whole =
        earlier.stream()
            .filter(other -> other.night().guidedHours() >= LEAST_GUIDED_HOURS)
            .toList();
    if (whole.size() < LEAST) {
      return Optional.empty();
    }
    List<Usual.Figure> figures =
        figures(night).flatMap(figure -> beside(figure, night, whole).stream()).toList();
    return figures.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Usual(
                whole.size(),
                whole.get(0).night().date(),
                whole.get(whole.size() - 1).night().date(),
                figures));
  }

  private static Stream<Figure> figures(NightResult night) {
    List<Figure> all =
        Stream.of(
                List.of(round(night), NOISE_FLOOR),
                MountFigures.all(),
                DriftFigures.all(),
                GuidingFigures.logged())
            .flatMap(List::stream)
            .toList();
    return KEYS.stream()
        .map(key -> all.stream().filter(f -> f.key().equals(key)).findFirst().orElseThrow());
  }

  /** Of both axes together: what the air and the star's light leave unknown of its place. */
  private static final Figure NOISE_FLOOR =
      new Figure(
          "noise-floor",
          "noise floor",
          Kind.AIR,
          "arcsec",
          Aim.LOWER,
          GuidingFigures.MARGIN,
          GuidingFigures.AIR,
          night ->
              AirOfNight.of(night)
                  .map(
                      air ->
                          Reading.of(
                                  air.ra().noise() + air.dec().noise(),
                                  Math.hypot(air.ra().noiseError(), air.dec().noiseError()))
                              .root())
                  .orElseGet(() -> Reading.none(Why.missing(night, "/runs/*/noiseFloorArcsec"))));

  /** Exposures, or windows of their length, that are round; only where both are the same. */
  private static Figure round(NightResult night) {
    double seconds = night.rung(Rung.AS_IT_WAS).map(Rung::unitSeconds).orElse(0.0);
    String kind = night.rung(Rung.AS_IT_WAS).map(Rung::unitKind).orElse("");
    return new Figure(
        PromisedFigure.ROUND_SHARE,
        "round exposures",
        Kind.GUIDING,
        "%",
        Aim.HIGHER,
        GuidingFigures.ROUND_MARGIN,
        GuidingFigures.ROUND_SCATTER,
        other ->
            other
                .rung(Rung.AS_IT_WAS)
                .filter(rung -> rung.units() > 0 && rung.unitKind().equals(kind))
                .filter(
                    rung ->
                        Math.abs(rung.unitSeconds() - seconds) <= StepDone.SAME_LENGTH * seconds)
                .map(OwnNights::share)
                .orElseGet(() -> Reading.none("exposures of another length")));
  }

  private static Reading share(Rung rung) {
    double n = rung.units();
    double round = rung.round().value();
    double draws = PromisedFigure.drawsError(rung.round()) / n;
    double chance = PromisedFigure.spread(round, rung.units()) / n;
    return Reading.of(100 * round / n, 100 * Math.hypot(draws, Math.sqrt(chance)));
  }

  private static Optional<Usual.Figure> beside(
      Figure figure, NightResult night, List<NightResult> earlier) {
    Reading reading = figure.reading().apply(night);
    double[] others =
        earlier.stream()
            .map(figure.reading())
            .filter(Reading::known)
            .mapToDouble(other -> figure.aim().compared(other.value()))
            .toArray();
    Optional<Estimate> band = band(others);
    if (!reading.known() || band.isEmpty()) {
      return Optional.empty();
    }
    double value = figure.aim().compared(reading.value());
    double half = Estimate.SIGMAS_95 * reading.withinError();
    // All of these are sizes, and no share is more than all.
    double most = figure.unit().equals("%") ? Math.max(100, value) : Double.MAX_VALUE;
    Estimate own =
        new Estimate(
            value, Math.max(Math.min(0, value), value - half), Math.min(most, value + half));
    return Optional.of(told(figure, own, band.get(), others));
  }

  private static Usual.Figure told(Figure figure, Estimate own, Estimate band, double[] others) {
    boolean above = own.lo95() > band.hi95();
    boolean below = own.hi95() < band.lo95();
    boolean matters = Math.abs(own.value() - band.value()) > figure.margin().greater(band.value());
    boolean usual = !matters || !above && !below;
    boolean better = figure.aim().improves(own.value() - band.value());
    int beyond =
        usual
            ? 0
            : (int)
                DoubleStream.of(others)
                    .filter(other -> above ? other < own.lo95() : other > own.hi95())
                    .count();
    double range = band.hi95() - band.lo95();
    boolean farOff =
        !usual
            && !better
            && others.length >= LEAST_FOR_FAR_OFF
            && (above
                ? own.lo95() > band.hi95() + FENCE * range
                : own.hi95() < band.lo95() - FENCE * range);
    String word = usual ? Usual.USUAL : better ? Usual.BETTER : Usual.WORSE;
    return new Usual.Figure(
        figure.key(),
        figure.name(),
        figure.unit(),
        own,
        band.value(),
        band.lo95(),
        band.hi95(),
        others.length,
        word,
        beyond,
        farOff,
        usual ? "usual for you" : word + " than " + count(beyond, others.length));
  }

  private static String count(int beyond, int nights) {
    return beyond == nights
        ? "all of your " + nights + " nights"
        : beyond + " of your " + nights + " nights";
  }
}
