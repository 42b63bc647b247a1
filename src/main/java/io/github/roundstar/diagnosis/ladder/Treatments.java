package io.github.roundstar.diagnosis.ladder;

import io.github.roundstar.diagnosis.exposures.Units;
import io.github.roundstar.diagnosis.finding.AxisReading;
import io.github.roundstar.diagnosis.finding.EventTally;
import io.github.roundstar.diagnosis.finding.PulseReading;
import io.github.roundstar.diagnosis.finding.Thresholds;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.motion.PlayedAxis;
import io.github.roundstar.motion.PlayedAxis.Change;
import io.github.roundstar.motion.PlayedAxis.Trouble;
import io.github.roundstar.results.AxisLoopResult;
import io.github.roundstar.results.Component;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.Periodic;
import io.github.roundstar.results.PolarAxis;
import io.github.roundstar.results.Replay;
import io.github.roundstar.results.RunResult;
import io.github.roundstar.results.Rung;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;

/** What could be changed of a night, by its figures: the cheapest and least risky first. */
final class Treatments {
  /** To this a careful owner brings an axis; common practice, no source [arcmin]. */
  private static final double BROUGHT_TO_ARCMIN = 1;

  /** Pulses that differ by less between the directions do no harm; common practice, no source. */
  private static final double ALIKE = 0.1;

  /** A curve of which less comes back is not worth training; common practice, no source. */
  private static final double LEAST_REPEATED = 0.3;

  private final NightResult night;
  private final List<PlayedRun> runs;
  private final Units units;
  private final List<Treatment> all = new ArrayList<>();
  private final Map<String, String> reasons = new LinkedHashMap<>();

  Treatments(NightResult night, List<PlayedRun> runs, Units units) {
    this.night = night;
    this.runs = runs;
    this.units = units;
    settings();
    alignment();
    training();
    mechanics();
  }

  /** Those of a rung, the least risky first. */
  List<Treatment> of(String rung) {
    return all.stream().filter(treatment -> treatment.rung().equals(rung)).toList();
  }

  /** Those with these codes, in the order in which a user climbs. */
  List<Treatment> coded(List<String> codes) {
    return Ladder.CLIMBED.stream()
        .flatMap(rung -> of(rung).stream())
        .filter(treatment -> codes.contains(treatment.code()))
        .toList();
  }

  /** Leaves a treatment out that changes nothing to speak of. */
  void leaveOut(Treatment treatment) {
    all.remove(treatment);
    reasons.putIfAbsent(treatment.rung(), "nothing on it that was played makes stars rounder");
  }

  /** Why a rung has nothing to offer. */
  String reason(String rung) {
    return reasons.getOrDefault(rung, "nothing on it would change anything");
  }

  private Stream<PlayedAxis> axes(Function<PlayedRun, Optional<PlayedAxis>> axis) {
    return runs.stream().flatMap(run -> axis.apply(run).stream());
  }

  // --- settings ---

  private void settings() {
    boolean known =
        axes(PlayedRun::ra).anyMatch(PlayedAxis::lawKnown)
            || axes(PlayedRun::dec).anyMatch(PlayedAxis::lawKnown);
    List<Replay> rows = night.replay() == null ? List.of() : night.replay();
    if (!known || rows.isEmpty()) {
      reasons.put(
          Rung.SETTINGS,
          night.notComputed().stream()
              .filter(reason -> reason.figure().startsWith("/replay"))
              .map(reason -> reason.because())
              .findFirst()
              .orElse("the law of the loop is not known well enough to play it again"));
    } else {
      choose(rows);
    }
    rate();
    if (units.waitSeconds() > 0) {
      all.add(
          new Treatment(
              "settling-wait",
              Rung.SETTINGS,
              Map.of("toSeconds", units.waitSeconds()),
              Playing::settled));
    }
  }

  /** What the grid of settings found best, of either axis. */
  private void choose(List<Replay> rows) {
    double times = 1;
    for (String axis : List.of("ra", "dec")) {
      List<Replay> own =
          rows.stream().filter(row -> row.axis().equals(axis) && !row.trained()).toList();
      Optional<Replay> now = own.stream().filter(Replay::current).findFirst();
      Optional<Replay> then = own.stream().filter(row -> row.best() && !row.current()).findFirst();
      if (now.isPresent() && then.isPresent()) {
        add(now.get(), then.get().gain(), then.get().deadbandArcsec());
        times = then.get().cadenceSeconds() / Math.max(1e-9, now.get().cadenceSeconds());
      }
    }
    if (Math.abs(times - 1) > 0.1) {
      exposed(times, rows.get(0).cadenceSeconds());
    }
  }

  /** Guide exposures of another length. */
  private void exposed(double times, double cadence) {
    double now =
        played()
            .mapToDouble(PlayedAxis::exposureSeconds)
            .filter(seconds -> seconds > 0)
            .findFirst()
            .orElse(cadence);
    double then =
        times > 1
            ? now + (times - 1) * cadence
            : played().mapToDouble(axis -> axis.exposedSeconds(times)).max().orElseThrow();
    all.add(
        new Treatment(
            "guide-exposure",
            Rung.SETTINGS,
            Map.of("fromSeconds", now, "toSeconds", then, "toCadenceSeconds", times * cadence),
            playing -> exposed(playing, times)));
  }

  private Stream<PlayedAxis> played() {
    return Stream.concat(axes(PlayedRun::ra), axes(PlayedRun::dec));
  }

  private static Playing exposed(Playing playing, double times) {
    Change ra = playing.ra();
    Change dec = playing.dec();
    return playing
        .ra(ra.settings(ra.gainFactor(), ra.deadbandArcsec(), times))
        .dec(dec.settings(dec.gainFactor(), dec.deadbandArcsec(), times));
  }

  private void add(Replay now, double gain, double toDeadband) {
    double factor = gain / Math.max(1e-6, now.gain());
    boolean ra = now.axis().equals("ra");
    boolean otherDeadband = Math.abs(toDeadband - now.deadbandArcsec()) > 1e-9;
    boolean otherGain = Math.abs(factor - 1) > 0.02;
    if (otherGain) {
      double declared = declaredGain(ra).orElse(now.gain());
      all.add(
          new Treatment(
              (ra ? "ra-" : "dec-") + "gain",
              Rung.SETTINGS,
              Map.of("fromGain", declared, "toGain", declared * factor),
              of(
                  ra,
                  change ->
                      change.settings(factor, change.deadbandArcsec(), change.cadenceFactor()))));
    }
    if (otherDeadband) {
      all.add(
          new Treatment(
              (ra ? "ra-" : "dec-") + "deadband",
              Rung.SETTINGS,
              Map.of("fromArcsec", now.deadbandArcsec(), "toArcsec", toDeadband),
              of(
                  ra,
                  change ->
                      change.settings(change.gainFactor(), toDeadband, change.cadenceFactor()))));
    }
  }

  private static UnaryOperator<Playing> of(boolean ra, UnaryOperator<Change> change) {
    return playing ->
        ra ? playing.ra(change.apply(playing.ra())) : playing.dec(change.apply(playing.dec()));
  }

  private Optional<Double> declaredGain(boolean ra) {
    return night.runs().stream()
        .filter(run -> run.loop() != null)
        .map(run -> ra ? run.loop().ra() : run.loop().dec())
        .filter(loop -> loop != null && loop.declaredGain() != null)
        .map(AxisLoopResult::declaredGain)
        .findFirst();
  }

  private void rate() {
    Estimate drift =
        night.night().driftArcsecPerMinuteSky() == null
            ? null
            : night.night().driftArcsecPerMinuteSky().ra();
    Optional<AxisReading> axis = AxisReading.of(night);
    if (drift == null || drift.covers(0) || axis.isEmpty() || axis.get().refuted()) {
      return;
    }
    double least = Math.min(Math.abs(drift.lo95()), Math.abs(drift.hi95()));
    double allowed =
        Thresholds.REFRACTION_RA_ARCSEC_PER_MINUTE
            + Thresholds.DRIFT_PER_ARCMIN * axis.get().totalArcmin().hi95();
    if (least > allowed) {
      all.add(
          new Treatment(
              "tracking-rate",
              Rung.SETTINGS,
              Map.of("driftArcsecPerMinute", drift.value()),
              playing -> playing.ra(playing.ra().drift(1))));
    }
  }

  // --- alignment and balance ---

  private void alignment() {
    Optional<AxisReading> axis = AxisReading.of(night);
    if (axis.isPresent() && axis.get().refuted()) {
      reasons.put(Rung.ALIGNMENT_BALANCE, axis.get().whyRefuted());
    } else {
      axis.map(AxisReading::totalArcmin)
          .or(() -> AxisReading.leastArcmin(night))
          .filter(total -> total.lo95() > BROUGHT_TO_ARCMIN)
          .ifPresent(total -> align(total, axis.map(AxisReading::shareOfDrift).orElse(1.0)));
    }
    PulseReading pulses = PulseReading.of(night);
    boolean ra = unlike(pulses.eastLessWest());
    boolean dec = unlike(pulses.northLessSouth()) && !loses();
    if (ra || dec) {
      Map<String, Double> numbers = new TreeMap<>();
      pulses.eastLessWest().filter(x -> ra).ifPresent(x -> numbers.put("eastLessWest", x.value()));
      pulses
          .northLessSouth()
          .filter(x -> dec)
          .ifPresent(x -> numbers.put("northLessSouth", x.value()));
      all.add(
          new Treatment(
              "balance",
              Rung.ALIGNMENT_BALANCE,
              numbers,
              playing ->
                  (ra ? playing.ra(playing.ra().without(Trouble.UNLIKE_PULSES)) : playing)
                      .dec(dec ? playing.dec().without(Trouble.UNLIKE_PULSES) : playing.dec())));
    }
    reasons.putIfAbsent(
        Rung.ALIGNMENT_BALANCE,
        axis.isEmpty()
            ? "where the axis points is not known, and pulses act alike both ways"
            : "the axis is as good as it can be set, and pulses act alike both ways");
  }

  /**
   * The axis brought to the pole.
   *
   * @param total how far off it is, or at least is [arcmin]
   * @param ofDrift share of the drift that it makes
   */
  private void align(Estimate total, double ofDrift) {
    double unsure = (total.hi95() - total.lo95()) / 2;
    double left = Math.min(1, Math.hypot(BROUGHT_TO_ARCMIN, unsure) / total.value());
    double share = (1 - left) * ofDrift;
    Map<String, Double> numbers = new TreeMap<>();
    numbers.put("fromArcmin", total.value());
    numbers.put("toArcmin", left * total.value());
    PolarAxis axis = night.polarAxis();
    if (axis != null && axis.azimuthArcmin() != null) {
      numbers.put("azimuthArcmin", -axis.azimuthArcmin().value());
    }
    if (axis != null && axis.altitudeArcmin() != null) {
      numbers.put("altitudeArcmin", -axis.altitudeArcmin().value());
    }
    all.add(
        new Treatment(
            "polar-axis",
            Rung.ALIGNMENT_BALANCE,
            numbers,
            playing -> playing.dec(playing.dec().drift(share)).turned(left)));
  }

  private static boolean unlike(Optional<Estimate> difference) {
    return difference.isPresent()
        && (difference.get().lo95() > ALIKE || difference.get().hi95() < -ALIKE);
  }

  private boolean loses() {
    return axes(PlayedRun::dec).anyMatch(axis -> axis.lostArcsec() > 0);
  }

  // --- training ---

  private boolean turns() {
    Periodic periodic = night.night().periodic();
    return periodic != null && periodic.components().stream().anyMatch(Treatments::stands);
  }

  private static boolean stands(Component component) {
    return component.falseAlarm() < Thresholds.FALSE_ALARM
        && component.amplitudeArcsecAxis().lo95() > 0
        && !component.mayBeAlias();
  }

  private void training() {
    Periodic periodic = night.night().periodic();
    double most = axes(PlayedRun::ra).mapToDouble(PlayedAxis::trainableArcsec).max().orElse(0);
    if (!turns() || most == 0) {
      reasons.put(Rung.TRAINING, "no curve of a gear stands out that could be trained");
      return;
    }
    double repeated = periodic.repeatability() == null ? 1 : periodic.repeatability();
    if (repeated < LEAST_REPEATED) {
      reasons.put(Rung.TRAINING, "too little of the worm's curve comes back every turn");
      return;
    }
    double share = Math.min(1, repeated);
    all.add(
        new Treatment(
            "training",
            Rung.TRAINING,
            Map.of("share", share, "swingArcsec", 2 * most),
            playing -> playing.ra(playing.ra().trained(share))));
  }

  // --- mechanics ---

  private void mechanics() {
    EventTally events = EventTally.of(night);
    if (events.jolts() > 0 && !events.mostlyGusts()) {
      all.add(
          new Treatment(
              "jolts",
              Rung.MECHANICS,
              Map.of("jolts", (double) events.jolts()),
              playing ->
                  playing
                      .ra(playing.ra().without(Trouble.JOLTS))
                      .dec(playing.dec().without(Trouble.JOLTS))));
    }
    if (units.bends()) {
      all.add(new Treatment("flexure", Rung.MECHANICS, Map.of(), Playing::keptTogether));
    }
    if (units.opticsOff()) {
      all.add(new Treatment("optics", Rung.MECHANICS, Map.of(), Playing::collimated));
    }
    double lost = axes(PlayedRun::dec).mapToDouble(PlayedAxis::lostArcsec).max().orElse(0);
    if (lost > 0 && surelyLost()) {
      boolean sticks = axes(PlayedRun::dec).anyMatch(PlayedAxis::sticks);
      all.add(
          new Treatment(
              sticks ? "sticking" : "play",
              Rung.MECHANICS,
              Map.of("fromArcsec", lost),
              playing -> playing.dec(playing.dec().without(Trouble.LOST_MOTION))));
    }
    double swing = axes(PlayedRun::ra).mapToDouble(PlayedAxis::gearsArcsec).max().orElse(0);
    if (turns() && swing > 0) {
      all.add(
          new Treatment(
              "gears",
              Rung.MECHANICS,
              Map.of("swingArcsec", 2 * swing),
              playing -> playing.ra(playing.ra().without(Trouble.GEARS))));
    }
    reasons.put(Rung.MECHANICS, "neither play nor gears nor jolts stand out");
  }

  private boolean surelyLost() {
    return night.runs().stream().anyMatch(Treatments::surelyLost)
        || night.night().backlashArcsecAxis() != null
            && above(night.night().backlashArcsecAxis().dec());
  }

  private static boolean surelyLost(RunResult run) {
    return run.backlashArcsecAxis() != null && above(run.backlashArcsecAxis().dec())
        || run.stickingArcsecAxis() != null && above(run.stickingArcsecAxis().dec());
  }

  private static boolean above(Estimate width) {
    return width != null && width.lo95() > 0;
  }
}
