package io.github.roundstar.diagnosis;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.Night;
import io.github.roundstar.results.Component;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.RunResult;
import io.github.roundstar.simulate.RunTruth;
import io.github.roundstar.simulate.SimulatedNight;
import io.github.roundstar.simulate.SimulatedRun;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/** The rows of one case of {@link TruthTable}. */
final class TruthRows {
  private static final double WORM_ARCSEC = 6;
  private static final double WORM_SECONDS = 479;

  /** A sinusoid farther from the worm's period is another one. */
  private static final double NEAR = 0.2;

  /** Periods of all sinusoids that the mount has [s]. */
  private static final double[] THERE = {WORM_SECONDS, WORM_SECONDS / 2};

  /** A sinusoid within this share of one of them is that one. */
  private static final double SAME = 0.05;

  private static final double FALSE_ALARM_LIMIT = 0.01;

  /** Share of the nights that may tell no sinusoid that is not there: the design's 6 of 200. */
  private static final double NONE_FALSE = 0.97;

  private static final Set<String> JOLTS = Set.of("gust", "knock", "lasting-shift");

  private final TruthCase kind;
  private final double raNoiseArcsec;
  private final double decNoiseArcsec;
  private final Map<String, TruthColumn> columns = new LinkedHashMap<>();

  private TruthRows(TruthCase kind, List<SimulatedNight> nights) {
    this.kind = kind;
    this.raNoiseArcsec = noise(nights, RunTruth::ra);
    this.decNoiseArcsec = noise(nights, RunTruth::dec);
  }

  /** Plays so many nights of a case. */
  static List<TruthColumn> of(TruthCase kind, int nights) throws FormatException {
    List<SimulatedNight> played = new ArrayList<>();
    for (int seed = 1; seed <= nights; seed++) {
      played.add(kind.night(seed));
    }
    TruthRows rows = new TruthRows(kind, played);
    for (int seed = 1; seed <= nights; seed++) {
      rows.add(seed, played.get(seed - 1));
    }
    return List.copyOf(rows.columns.values());
  }

  /** What white errors were drawn from; where seeing adds to them, what those of all nights are. */
  private double noise(List<SimulatedNight> nights, Function<RunTruth, RunTruth.Axis> axis) {
    double square =
        nights.stream()
            .map(night -> axis.apply(night.runs().get(0).truth()))
            .mapToDouble(truth -> truth.noiseArcsec() * truth.noiseArcsec())
            .average()
            .orElseThrow();
    return kind.seeing() ? Math.sqrt(square) : kind.noiseArcsec();
  }

  private void add(int seed, SimulatedNight night) throws FormatException {
    SimulatedRun run = night.runs().get(0);
    NightResult result =
        NightAnalysis.of(
                new Night("truth", List.of(run.log()), List.of()), Equipment.UNKNOWN, "test", true)
            .result();
    RunResult found = result.runs().get(0);
    periodic(found);
    mount(found, run.truth());
    pulses(found, run.truth());
    if (!kind.turned()) {
      TruthLoop loop = new TruthLoop(kind, this::column);
      loop.budget(found, night);
      loop.replay(result, seed);
    }
    if (kind.gusty()) {
      jolts(found, run.truth());
    }
  }

  private void periodic(RunResult run) {
    List<Component> tones = run.periodic().components();
    Optional<Component> worm =
        tones.stream()
            .filter(tone -> off(tone, WORM_SECONDS) <= NEAR)
            .min(Comparator.comparingDouble(tone -> off(tone, WORM_SECONDS)));
    column("worm amplitude [arcsec]")
        .add(
            worm.map(Component::amplitudeArcsecAxis).orElse(null), WORM_ARCSEC, 0.05 * WORM_ARCSEC);
    column("worm period [s]")
        .add(worm.map(Component::periodSeconds).orElse(null), WORM_SECONDS, 0.003 * WORM_SECONDS);
    boolean invented =
        tones.stream()
            .filter(tone -> tone.falseAlarm() < FALSE_ALARM_LIMIT)
            .anyMatch(tone -> Arrays.stream(THERE).allMatch(period -> off(tone, period) > SAME));
    column("sinusoids that are not there [share of nights]")
        .within(NONE_FALSE)
        .add(invented ? 1 : 0, 0);
  }

  private static double off(Component tone, double period) {
    return Math.abs(tone.periodSeconds().value() / period - 1);
  }

  private void mount(RunResult run, RunTruth truth) {
    column("RA drift [arcsec/min]")
        .add(run.driftArcsecPerMinuteSky().ra(), truth.ra().driftArcsecPerMinute(), Double.NaN);
    column("Dec drift [arcsec/min]")
        .add(run.driftArcsecPerMinuteSky().dec(), truth.dec().driftArcsecPerMinute(), Double.NaN);
    noise("RA noise [arcsec]", run.noiseFloorArcsec().ra(), raNoiseArcsec);
    noise("Dec noise [arcsec]", run.noiseFloorArcsec().dec(), decNoiseArcsec);
  }

  private void noise(String name, Estimate found, double truth) {
    TruthColumn column = column(name);
    if (kind.brief()) {
      column.boundShownOnly();
    }
    column.add(found, truth, kind.noiseBound() * truth);
  }

  private void pulses(RunResult run, RunTruth truth) {
    double turned = kind.turned() ? Math.cos(Math.toRadians(5)) : 1;
    double cosine = Math.cos(Math.toRadians(truth.declinationDegrees()));
    var ra = run.responseArcsecPerSecond().ra();
    var dec = run.responseArcsecPerSecond().dec();
    response("RA response [arcsec/s]", ra == null ? null : ra.axis(), turned / cosine, truth.ra());
    response("Dec response [arcsec/s]", dec == null ? null : dec.axis(), turned, truth.dec());
    double play = kind.playArcsec();
    TruthColumn backlash = column("Dec backlash [arcsec]");
    if (play == 0) {
      backlash.onBoundary();
    }
    backlash.add(run.backlashArcsecAxis().dec(), play, Math.max(0.4, 0.1 * play));
    Estimate angle = run.responseArcsecPerSecond().crossAxisDeg();
    column("camera angle [deg]").add(angle, kind.turned() ? 5 : 0, Double.NaN);
  }

  /** Against the mean of the two directions, from the sky to the axis by a factor. */
  private void response(String name, Estimate found, double factor, RunTruth.Axis truth) {
    double strength =
        factor
            * (truth.responsePositiveArcsecPerSecond() + truth.responseNegativeArcsecPerSecond())
            / 2;
    TruthColumn response = column(name);
    if (!kind.brief()) {
      response.atMost(0.015 * strength, kind.usual() ? 0.025 * strength : Double.POSITIVE_INFINITY);
    }
    response.add(found, strength, Double.NaN);
  }

  private void jolts(RunResult run, RunTruth truth) {
    int gusts = 0;
    int hits = 0;
    for (RunTruth.Event event : truth.events()) {
      if (event.size() >= 5 * Math.max(kind.noiseArcsec(), truth.ra().noiseArcsec())) {
        gusts++;
        hits +=
            run.events().stream()
                    .filter(e -> e.time() < event.timeSeconds() + 18)
                    .filter(e -> e.endTime() > event.timeSeconds() - 3)
                    .anyMatch(e -> JOLTS.contains(e.kind()))
                ? 1
                : 0;
      }
    }
    if (gusts > 0) {
      column("jolts found [share less 1]")
          .atMost(0.1, Double.POSITIVE_INFINITY)
          .add((double) hits / gusts - 1, Double.NaN);
    }
  }

  private TruthColumn column(String name) {
    return columns.computeIfAbsent(name, TruthColumn::new);
  }
}
