package io.github.roundstar.compare;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.results.AxisLoopResult;
import io.github.roundstar.results.Backlash;
import io.github.roundstar.results.Cure;
import io.github.roundstar.results.Event;
import io.github.roundstar.results.Loop;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.Periodic;
import io.github.roundstar.results.PromiseKept;
import io.github.roundstar.results.Response;
import io.github.roundstar.results.RunResult;
import io.github.roundstar.results.Rung;
import io.github.roundstar.results.Sticking;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/**
 * Whether a step was done, by the number that it changes: how much of the way from where it stood
 * to where it was to go it has gone, by the later nights' own settings and figures. A setting that
 * the log declares is known exactly; all else has its interval, and where that holds both ends of
 * the way nothing is told.
 */
final class StepDone {
  /** Of the way that it was to go; less than this is no move, nor as good as all of it. */
  private static final double A_QUARTER = 0.25;

  private static final double HALF = 0.5;

  /** A setting that went on by more than half of the way again is another one. */
  private static final double BEYOND = 1.5;

  /** A measured deadband is known to about a quarter of itself; common practice, no source. */
  private static final double DEADBAND_SHARE = 0.25;

  /** Exposures of one length differ by no more. */
  static final double SAME_LENGTH = 0.1;

  /** Periods nearer than this are of one gear. */
  private static final double SAME_PERIOD = 0.01;

  private static final Set<String> JOLTS = Set.of("gust", "knock", "lasting-shift");
  private static final String IMAGES_ALONE = "the log does not show it";

  private final Cure cure;
  private final NightResult earlier;
  private final List<NightResult> later;

  private StepDone(Cure cure, NightResult earlier, List<NightResult> later) {
    this.cure = cure;
    this.earlier = earlier;
    this.later = later;
  }

  /** What became of a step that a night recommended. */
  static PromiseKept.Step of(Cure cure, NightResult earlier, List<NightResult> later) {
    return new StepDone(cure, earlier, later).step();
  }

  private PromiseKept.Step step() {
    return switch (cure.cure()) {
      case "ra-gain" -> gain("RA gain", Loop::ra);
      case "dec-gain" -> gain("Dec gain", Loop::dec);
      case "ra-deadband" -> deadband("RA deadband", Loop::ra);
      case "dec-deadband" -> deadband("Dec deadband", Loop::dec);
      case "guide-exposure" -> cadence();
      case "settling-wait" -> untold("wait after dithers");
      case "tracking-rate" ->
          fault(
              "drift in RA",
              "arcsec/min",
              number("driftArcsecPerMinute"),
              0,
              over(
                  night ->
                      night.night().driftArcsecPerMinuteSky() == null
                          ? null
                          : night.night().driftArcsecPerMinuteSky().ra()));
      case "polar-axis" ->
          fault(
              "polar axis off by",
              "arcmin",
              number("fromArcmin"),
              number("toArcmin"),
              over(night -> night.polarAxis() == null ? null : night.polarAxis().totalArcmin()));
      case "balance" -> balance();
      case "exposure-length" -> exposure();
      case "training" -> swing(1 - number("share"));
      case "gears" -> swing(0);
      case "play" -> fault("play in Dec", "arcsec", number("fromArcsec"), 0, over(StepDone::play));
      case "sticking" ->
          fault("sticking in Dec", "arcsec", number("fromArcsec"), 0, over(StepDone::sticking));
      case "jolts" -> jolts();
      case "flexure" -> untold("bending between guide scope and telescope");
      case "optics" -> untold("optics");
      default -> untold(cure.cure());
    };
  }

  private double number(String key) {
    return cure.numbers().getOrDefault(key, 0.0);
  }

  private PromiseKept.Step untold(String name) {
    return new PromiseKept.Step(
        cure.cure(), name, "", null, null, null, PromiseKept.CANNOT_TELL, IMAGES_ALONE);
  }

  // --- settings ---

  private PromiseKept.Step gain(String name, Function<Loop, AxisLoopResult> axis) {
    Optional<Estimate> declared = declared(axis, AxisLoopResult::declaredGain);
    Optional<Estimate> measured =
        over(night -> OverRuns.mean(night, of(axis, AxisLoopResult::gain)).orElse(null));
    Optional<Estimate> then = OverRuns.mean(earlier, of(axis, AxisLoopResult::gain));
    // Where not both logs declare it, what was measured tells by which factor it changed.
    Optional<Estimate> now =
        declared.isPresent()
            ? declared
            : then.flatMap(
                was ->
                    measured.map(is -> is.times(number("fromGain") / Math.max(1e-6, was.value()))));
    return setting(name, "", number("fromGain"), number("toGain"), now);
  }

  private PromiseKept.Step deadband(String name, Function<Loop, AxisLoopResult> axis) {
    Optional<Estimate> now = declared(axis, AxisLoopResult::declaredDeadbandArcsec);
    if (now.isEmpty()) {
      now =
          span(night -> OverRuns.setting(night, of(axis, AxisLoopResult::deadbandArcsec)))
              .map(
                  found ->
                      new Estimate(
                          found.value(),
                          found.lo95() * (1 - DEADBAND_SHARE),
                          found.hi95() * (1 + DEADBAND_SHARE)));
    }
    return setting(name, "arcsec", number("fromArcsec"), number("toArcsec"), now);
  }

  private PromiseKept.Step cadence() {
    double from = OverRuns.setting(earlier, RunResult::cadenceSeconds).orElse(0.0);
    return setting(
        "time between guide exposures",
        "s",
        from,
        number("toCadenceSeconds"),
        span(night -> OverRuns.setting(night, RunResult::cadenceSeconds)));
  }

  private PromiseKept.Step exposure() {
    double from = number("fromSeconds");
    double to = number("toSeconds");
    Optional<Estimate> now =
        span(night -> night.rung(Rung.AS_IT_WAS).map(Rung::unitSeconds).filter(s -> s > 0));
    boolean listed =
        later.stream()
            .allMatch(
                night ->
                    night
                        .rung(Rung.AS_IT_WAS)
                        .filter(r -> r.unitKind().equals("exposures"))
                        .isPresent());
    if (now.isPresent() && !listed && now.get().hi95() > to * (1 + SAME_LENGTH)) {
      return new PromiseKept.Step(
          cure.cure(),
          "exposures",
          "s",
          from,
          to,
          null,
          PromiseKept.CANNOT_TELL,
          "no exposures were named: give --exposures, or exposure_s in the equipment file");
    }
    return setting("exposures", "s", from, to, now);
  }

  /** Both logs have to declare it, else it is not the same number. */
  private Optional<Estimate> declared(
      Function<Loop, AxisLoopResult> axis, Function<AxisLoopResult, Double> figure) {
    boolean then = OverRuns.setting(earlier, of(axis, figure)).isPresent();
    return then ? span(night -> OverRuns.setting(night, of(axis, figure))) : Optional.empty();
  }

  private static <T> Function<RunResult, T> of(
      Function<Loop, AxisLoopResult> axis, Function<AxisLoopResult, T> figure) {
    return run -> Optional.ofNullable(run.loop()).map(axis).map(figure).orElse(null);
  }

  /** A setting over the later nights, from the least to the greatest; they all have to tell it. */
  private Optional<Estimate> span(Function<NightResult, Optional<Double>> of) {
    List<Double> values = later.stream().flatMap(night -> of.apply(night).stream()).toList();
    if (values.size() < later.size()) {
      return Optional.empty();
    }
    double low = values.stream().mapToDouble(v -> v).min().orElseThrow();
    double high = values.stream().mapToDouble(v -> v).max().orElseThrow();
    double mean = values.stream().mapToDouble(v -> v).average().orElseThrow();
    return Optional.of(new Estimate(Math.max(low, Math.min(high, mean)), low, high));
  }

  private PromiseKept.Step setting(
      String name, String unit, double from, double to, Optional<Estimate> now) {
    return step(name, unit, from, to, now, true);
  }

  // --- figures ---

  /**
   * A figure over the later nights that have it. What one night does not know of a mount the next
   * does not know either, so intervals are averaged.
   */
  private Optional<Estimate> over(Function<NightResult, Estimate> of) {
    List<Estimate> known = new ArrayList<>();
    for (NightResult night : later) {
      Optional.ofNullable(of.apply(night)).ifPresent(known::add);
    }
    return known.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Estimate(
                known.stream().mapToDouble(Estimate::value).average().orElseThrow(),
                known.stream().mapToDouble(Estimate::lo95).average().orElseThrow(),
                known.stream().mapToDouble(Estimate::hi95).average().orElseThrow()));
  }

  private static Estimate play(NightResult night) {
    return OverRuns.of(
            night,
            summary -> dec(summary.backlashArcsecAxis()),
            run -> dec(run.backlashArcsecAxis()))
        .orElse(null);
  }

  private static Estimate dec(Backlash backlash) {
    return backlash == null ? null : backlash.dec();
  }

  private static Estimate sticking(NightResult night) {
    return OverRuns.of(
            night,
            summary -> dec(summary.stickingArcsecAxis()),
            run -> dec(run.stickingArcsecAxis()))
        .orElse(null);
  }

  private static Estimate dec(Sticking sticking) {
    return sticking == null ? null : sticking.dec();
  }

  /** The worm's curve at the axis; one that does not stand out is below what would. */
  private PromiseKept.Step swing(double left) {
    Estimate then = swing(earlier);
    if (then == null) {
      return untold("periodic error");
    }
    double scatter = Estimate.SIGMAS_95 * MountFigures.GEAR_SCATTER.combined(then.value());
    Optional<Estimate> now =
        over(StepDone::swing)
            .map(e -> new Estimate(e.value(), e.lo95() - scatter, e.hi95() + scatter).ofSize());
    PromiseKept.Step step =
        fault(
            "periodic error, peak to peak",
            "arcsec at the axis",
            then.value(),
            left * then.value(),
            now);
    boolean another = later.stream().anyMatch(this::anotherGear);
    return another && step.done().equals(PromiseKept.NOT_DONE)
        ? new PromiseKept.Step(
            step.cure(),
            step.name(),
            step.unit(),
            step.from(),
            step.to(),
            step.now(),
            PromiseKept.CANNOT_TELL,
            "a gear of another period leads now")
        : step;
  }

  /** Whether what swings most has another period than on the night that gave the step. */
  private boolean anotherGear(NightResult night) {
    Optional<Double> one = leadingPeriod(earlier);
    Optional<Double> other = leadingPeriod(night);
    return one.isPresent()
        && other.isPresent()
        && Math.abs(other.get() / one.get() - 1) > SAME_PERIOD;
  }

  private static Optional<Double> leadingPeriod(NightResult night) {
    return Optional.ofNullable(night.night().periodic())
        .flatMap(periodic -> periodic.components().stream().findFirst())
        .map(component -> component.periodSeconds().value());
  }

  private static Estimate swing(NightResult night) {
    Periodic periodic = night.night().periodic();
    if (periodic == null) {
      return null;
    }
    if (periodic.peakToPeakArcsecAxis() != null) {
      return periodic.peakToPeakArcsecAxis();
    }
    return periodic.detectable() == null
        ? null
        : Estimate.symmetric(
            periodic.detectable().amplitudeArcsecAxis(),
            periodic.detectable().amplitudeArcsecAxis());
  }

  /** Of the axis whose pulses differ more. */
  private PromiseKept.Step balance() {
    boolean ra = Math.abs(number("eastLessWest")) >= Math.abs(number("northLessSouth"));
    double from = 100 * (ra ? number("eastLessWest") : number("northLessSouth"));
    return fault(
        ra ? "pulses east less west" : "pulses north less south",
        "%",
        from,
        0,
        over(
            night ->
                OverRuns.mean(night, run -> difference(run.responseArcsecPerSecond(), ra))
                    .map(e -> e.times(100))
                    .orElse(null)));
  }

  private static Estimate difference(Response response, boolean ra) {
    if (response == null || (ra ? response.ra() == null : response.dec() == null)) {
      return null;
    }
    Estimate one = ra ? response.ra().east() : response.dec().north();
    Estimate other = ra ? response.ra().west() : response.dec().south();
    if (one == null || other == null || one.value() + other.value() <= 0) {
      return null;
    }
    double mean = (one.value() + other.value()) / 2;
    double error = Math.hypot(Reading.error(one), Reading.error(other));
    return Estimate.symmetric(
        (one.value() - other.value()) / mean, Estimate.SIGMAS_95 * error / mean);
  }

  /** Jolts an hour, counted: a count of n is known to about its root. */
  private PromiseKept.Step jolts() {
    double before = jolts(List.of(earlier)) / hours(List.of(earlier));
    double count = jolts(later);
    double hours = hours(later);
    // One more than were seen, so that none is not known exactly.
    double half = Estimate.SIGMAS_95 * Math.sqrt(count + 1) / hours;
    return fault(
        "jolts",
        "an hour",
        before,
        0,
        Optional.of(Estimate.symmetric(count / hours, half).ofSize()));
  }

  private static double jolts(List<NightResult> nights) {
    return nights.stream()
        .flatMap(night -> night.runs().stream())
        .flatMap(run -> run.events().stream())
        .map(Event::kind)
        .filter(JOLTS::contains)
        .count();
  }

  private static double hours(List<NightResult> nights) {
    return Math.max(0.1, nights.stream().mapToDouble(n -> n.night().guidedHours()).sum());
  }

  private PromiseKept.Step fault(
      String name, String unit, double from, double to, Optional<Estimate> now) {
    return step(name, unit, from, to, now, false);
  }

  // --- how far it has gone ---

  private PromiseKept.Step step(
      String name, String unit, double from, double to, Optional<Estimate> now, boolean setting) {
    if (now.isEmpty()) {
      return new PromiseKept.Step(
          cure.cure(),
          name,
          unit,
          from,
          to,
          null,
          PromiseKept.CANNOT_TELL,
          later.size() == 1
              ? "the later night does not tell it"
              : "the later nights do not tell it");
    }
    String done = done(from, to, now.get(), setting);
    return new PromiseKept.Step(
        cure.cure(),
        name,
        unit,
        from,
        to,
        now.get(),
        done,
        done.equals(PromiseKept.CANNOT_TELL) ? "its interval holds both" : "");
  }

  /** The word for how much of a way has been gone. */
  static String done(double from, double to, Estimate now, boolean setting) {
    double way = to - from;
    if (way == 0) {
      return PromiseKept.CANNOT_TELL;
    }
    double one = (now.lo95() - from) / way;
    double other = (now.hi95() - from) / way;
    double least = Math.min(one, other);
    double most = Math.max(one, other);
    if (least <= A_QUARTER) {
      return most <= HALF ? PromiseKept.NOT_DONE : PromiseKept.CANNOT_TELL;
    }
    if (most < 1 - A_QUARTER) {
      return PromiseKept.PARTLY;
    }
    return setting && least > BEYOND ? PromiseKept.PARTLY : PromiseKept.Step.DONE;
  }
}
