package io.github.roundstar.compare;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.results.Need;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.NotComputed;
import io.github.roundstar.results.Promise;
import io.github.roundstar.results.PromiseKept;
import io.github.roundstar.results.Range;
import io.github.roundstar.results.Rung;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What came of a promise, figure by figure: the share of round exposures, and the RMS of the log
 * brought to the air of the night that promised.
 *
 * <p>A promise was made of one night and is judged on another. So each side's variance is what its
 * own interval says, and how far nights differ by themselves; that of a share, besides, how far so
 * few exposures differ by chance. As promised is what is surely better than before, nearer to the
 * promise than to that, and not surely short of it.
 */
final class PromisedFigure {
  static final String ROUND_SHARE = "round-share";
  static final String RMS = "rms-radial";

  /** Shares of round exposures scatter by this from night to night where half of them are round. */
  private static final double SHARE_SCATTER = 0.10;

  /** A promised share that is greater by less is not worth judging: one exposure in twenty. */
  private static final double SHARE_MARGIN = 0.05;

  /** Nights' noise floors differ by 1.96 times the root of 2 times 20 % anyway. */
  private static final double MUCH_WORSE_AIR = 1.5;

  private static final double SAME_SCALE = 0.02;

  /** A value with its standard error. */
  private record Known(double value, double error) {
    Estimate estimate() {
      return Estimate.symmetric(value, Estimate.SIGMAS_95 * error);
    }

    Estimate estimate(double least, double most) {
      Estimate free = estimate();
      return new Estimate(
          Math.max(least, Math.min(most, value)),
          Math.max(least, free.lo95()),
          Math.min(most, free.hi95()));
    }

    Estimate less(Known other) {
      return new Known(value - other.value, Math.hypot(error, other.error)).estimate();
    }
  }

  private final NightResult earlier;
  private final Promise promise;
  private final List<NightResult> later;
  private final boolean averaged;
  private final List<NotComputed> notCompared = new ArrayList<>();

  /**
   * Of a promise.
   *
   * @param averaged whether guide exposures are longer by one of the steps
   */
  PromisedFigure(NightResult earlier, List<NightResult> later, boolean averaged) {
    this.earlier = earlier;
    this.promise = earlier.promised();
    this.later = later;
    this.averaged = averaged;
  }

  /** Those that can be compared; what is asked of the night first. */
  List<PromiseKept.Figure> all() {
    boolean stars = earlier.need() == null || earlier.need().ofStars();
    Optional<PromiseKept.Figure> round = round();
    Optional<PromiseKept.Figure> rms = rms();
    return (stars ? Stream.of(round, rms) : Stream.of(rms, round))
        .flatMap(Optional::stream)
        .toList();
  }

  /** Why others cannot. */
  List<NotComputed> notCompared() {
    return List.copyOf(notCompared);
  }

  /** Why the air of the later nights lets nothing be blamed on the steps; empty where it does. */
  Optional<String> muchWorseAir() {
    EqualAir air = EqualAir.asOn(List.of(earlier), later);
    return air.known() && air.floorArcsec(true) > MUCH_WORSE_AIR * air.floorArcsec(false)
        ? Optional.of(
            String.format(
                Locale.ROOT,
                "the air was much worse, noise floor %.2f instead of %.2f arcsec",
                air.floorArcsec(true),
                air.floorArcsec(false)))
        : Optional.empty();
  }

  private Optional<PromiseKept.Figure> without(String figure, String because) {
    notCompared.add(new NotComputed(figure, because));
    return Optional.empty();
  }

  // --- round exposures ---

  private Optional<PromiseKept.Figure> round() {
    Optional<Rung> was = earlier.rung(Rung.AS_IT_WAS);
    List<Rung> came = later.stream().flatMap(n -> n.rung(Rung.AS_IT_WAS).stream()).toList();
    if (was.isEmpty() || came.size() < later.size()) {
      return without("round exposures", "a night could not be played again");
    }
    Optional<String> other = otherThanPromised(came);
    if (other.isPresent()) {
      return without("round exposures", other.get());
    }
    Known before = share(was.get().round(), was.get().units());
    Known promised = share(promise.round(), promise.units());
    Known now = share(came);
    if (promised.value() - before.value() <= SHARE_MARGIN) {
      return without("round exposures", "the promised gain is too small to be seen");
    }
    return Optional.of(
        new PromiseKept.Figure(
            ROUND_SHARE,
            "%",
            before.estimate(0, 1).times(100),
            promised.estimate(0, 1).times(100),
            now.estimate(0, 1).times(100),
            now.less(before).times(100),
            promised.less(now).times(100),
            word(before, promised, now, 1, SHARE_MARGIN)));
  }

  /** What makes counts of round exposures those of something else. */
  private Optional<String> otherThanPromised(List<Rung> came) {
    Rung other =
        came.stream()
            .filter(
                rung ->
                    Math.abs(rung.unitSeconds() / promise.unitSeconds() - 1) > StepDone.SAME_LENGTH)
            .findFirst()
            .orElse(null);
    if (other != null) {
      return Optional.of(
          String.format(
              Locale.ROOT,
              "the promise is for exposures of %.0f s, and these are of %.0f s",
              promise.unitSeconds(),
              other.unitSeconds()));
    }
    if (came.stream().anyMatch(rung -> !rung.unitKind().equals(promise.unitKind()))) {
      return Optional.of("exposures were named on one side only");
    }
    double[] scales = new Setup(List.of(earlier)).imagingScales();
    double[] then = new Setup(later).imagingScales();
    for (double scale : then) {
      if (scales.length > 0 && Math.abs(scale / scales[0] - 1) > SAME_SCALE) {
        return Optional.of("the promise is for another scale of the main camera");
      }
    }
    boolean otherLimit =
        later.stream()
            .anyMatch(
                night ->
                    night.need() != null
                        && earlier.need() != null
                        && limit(night.need()) != limit(earlier.need()));
    return otherLimit ? Optional.of("another limit was set for round stars") : Optional.empty();
  }

  private static double limit(Need need) {
    return need.ofStars() ? need.limit() : 0;
  }

  /** A share of round ones with its draws, chance among so few, and nights; one night's. */
  private static Known share(Range round, int units) {
    return share(round.value(), units, drawsError(round) / units, 1);
  }

  private static Known share(List<Rung> nights) {
    double round = nights.stream().mapToDouble(rung -> rung.round().value()).sum();
    int units = nights.stream().mapToInt(Rung::units).sum();
    double draws = nights.stream().mapToDouble(rung -> Math.pow(drawsError(rung.round()), 2)).sum();
    return share(round, units, Math.sqrt(draws) / units, nights.size());
  }

  private static Known share(double round, int units, double draws, int nights) {
    double spread = spread(round, units);
    double chance = spread / units;
    // All or none leave no room to differ.
    double between = 4 * spread * SHARE_SCATTER * SHARE_SCATTER / nights;
    return new Known(round / units, Math.sqrt(draws * draws + chance + between));
  }

  /** Standard error of what draws differ by. */
  static double drawsError(Range draws) {
    return (draws.high() - draws.low()) / (2 * Estimate.SIGMAS_95);
  }

  /**
   * Variance of one exposure's being round or not; one success and one failure more keep that of
   * all or none from being zero.
   */
  static double spread(double round, int units) {
    double usual = (round + 1) / (units + 2);
    return usual * (1 - usual);
  }

  // --- RMS ---

  private Optional<PromiseKept.Figure> rms() {
    if (averaged) {
      return without("radial RMS", "longer guide exposures average the offsets otherwise");
    }
    Optional<Rung> was = earlier.rung(Rung.AS_IT_WAS);
    EqualAir air = EqualAir.asOn(List.of(earlier), later);
    List<Reading> came = later.stream().flatMap(night -> air.radial(night).stream()).toList();
    Optional<Reading> then = air.radial(earlier);
    if (was.isEmpty() || then.isEmpty() || came.size() < later.size()) {
      return without("radial RMS", "the noise floor is not known on both sides");
    }
    double logged = was.get().loggedRadialRmsArcsec().value();
    double within = then.get().withinError() / Math.max(1e-9, then.get().value());
    Range range = promise.loggedRadialRmsArcsec();
    double to = range.value();
    double draws = drawsError(range);
    Known before = new Known(logged, error(logged, within * logged));
    Known promised = new Known(to, Math.hypot(draws, error(to, within * to)));
    double value = came.stream().mapToDouble(Reading::value).average().orElseThrow();
    double own =
        came.stream().mapToDouble(r -> Math.pow(error(r.value(), r.withinError()), 2)).sum();
    double common = (air.raCommonError() + air.decCommonError()) / (2 * value);
    Known now = new Known(value, Math.hypot(Math.sqrt(own) / came.size(), common));
    double margin = GuidingFigures.MARGIN.greater(to);
    if (before.value() - promised.value() <= margin) {
      return without("radial RMS", "the promised gain is too small to be seen");
    }
    return Optional.of(
        new PromiseKept.Figure(
            RMS,
            "arcsec",
            before.estimate(0, Double.MAX_VALUE),
            promised.estimate(0, Double.MAX_VALUE),
            now.estimate(0, Double.MAX_VALUE),
            before.less(now),
            now.less(promised),
            word(before, promised, now, -1, margin)));
  }

  private static double error(double value, double within) {
    return Math.hypot(within, GuidingFigures.ADJUSTED.combined(value));
  }

  // --- the word ---

  /**
   * The word for a figure.
   *
   * @param better 1 where more is better, else -1
   * @param margin a difference within it is none in practice
   */
  private static String word(Known before, Known promised, Known came, int better, double margin) {
    boolean isBetter = came.less(before).times(better).lo95() > 0;
    Estimate missing = promised.less(came).times(better);
    boolean isShort = missing.lo95() > 0 && missing.value() > margin;
    if (isShort) {
      return isBetter ? PromiseKept.PARTLY : PromiseKept.NOT_KEPT;
    }
    double middle = (before.value() + promised.value()) / 2;
    return isBetter && better * (came.value() - middle) > 0
        ? PromiseKept.KEPT
        : PromiseKept.CANNOT_TELL;
  }
}
