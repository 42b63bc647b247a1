package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.ingest.EquipmentReader;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.GuidingMode;
import io.github.roundstar.model.RowCounts;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.results.AxisDrift;
import io.github.roundstar.results.AxisLoopResult;
import io.github.roundstar.results.AxisScatter;
import io.github.roundstar.results.Backlash;
import io.github.roundstar.results.BesideAxis;
import io.github.roundstar.results.Budget;
import io.github.roundstar.results.BudgetPart;
import io.github.roundstar.results.Component;
import io.github.roundstar.results.DecResponse;
import io.github.roundstar.results.Detectable;
import io.github.roundstar.results.Event;
import io.github.roundstar.results.Exposure;
import io.github.roundstar.results.Faults;
import io.github.roundstar.results.Finding;
import io.github.roundstar.results.Guided;
import io.github.roundstar.results.Level;
import io.github.roundstar.results.Loop;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.NightSummary;
import io.github.roundstar.results.NoiseFloor;
import io.github.roundstar.results.NotComputed;
import io.github.roundstar.results.Periodic;
import io.github.roundstar.results.PolarAxis;
import io.github.roundstar.results.RaResponse;
import io.github.roundstar.results.Replay;
import io.github.roundstar.results.Response;
import io.github.roundstar.results.RunResult;
import io.github.roundstar.results.Settling;
import io.github.roundstar.results.Sticking;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Figures of an invented night, written by hand: one run of two hours, sound in every way until a
 * test says otherwise. Budget parts are given as trailing mean squares.
 */
final class MadeUpNight {
  /** Mean square of the noise in each axis [arcsec^2]. */
  static final double NOISE = 0.16;

  private static final double DECLARED = 7.52;

  private final Map<Axis, Map<String, Double>> budget = new EnumMap<>(Axis.class);
  private final Map<Axis, AxisLoopResult> loops = new EnumMap<>(Axis.class);
  private final Map<Axis, Estimate> noise = new EnumMap<>(Axis.class);
  private final List<Exposure> exposures = new ArrayList<>();
  private final List<Replay> replay = new ArrayList<>();
  private final List<Event> events = new ArrayList<>();
  private final List<NotComputed> reasons = new ArrayList<>();
  private boolean budgetKnown = true;
  private boolean exposuresKnown;
  private PolarAxis polarAxis;
  private Periodic periodic = new Periodic(null, null, null, null, List.of(), detectable());
  private Estimate play = about(0.3, 0.1);
  private Estimate sticking;
  private Estimate raDrift = about(0.1, 0.05);
  private Settling settling = new Settling(10, 10.0, 14.0, 0.03);
  private Response response = response(about(1, 0.03), about(1, 0.03), about(0, 1));
  private RowCounts counts = new RowCounts(2300, 60, 0, 10, 0, 0, 0, 0);
  private double seconds = 7200;
  private double rmsScale = 1;
  private MadeUpLadder ladder;
  private String equipment = "[sky]\nseeing_fwhm_arcsec = 2.5\n";

  private MadeUpNight() {
    for (Axis axis : Axis.values()) {
      budget.put(axis, new LinkedHashMap<>(Map.of("noise", NOISE)));
      loops.put(axis, loop(0.6, 0.05, 0));
      noise.put(axis, about(0.27, 0.01));
    }
  }

  static MadeUpNight sound() {
    return new MadeUpNight();
  }

  static Estimate about(double value, double half) {
    return Estimate.symmetric(value, half);
  }

  MadeUpNight part(Axis axis, String cause, double trailingArcsec2) {
    budget.get(axis).put(cause, trailingArcsec2);
    return this;
  }

  MadeUpNight withoutBudget(String because) {
    budgetKnown = false;
    reasons.add(new NotComputed("/runs/*/budget", because));
    return this;
  }

  MadeUpNight because(String figure, String why) {
    reasons.add(new NotComputed(figure, why));
    return this;
  }

  MadeUpNight gain(Axis axis, double gain, double half, double lag1) {
    loops.put(axis, loop(gain, half, lag1));
    return this;
  }

  MadeUpNight withoutLoop() {
    loops.clear();
    return this;
  }

  MadeUpNight replay(Axis axis, double gain, double motionRms) {
    String name = axis.name().toLowerCase(java.util.Locale.ROOT);
    boolean current = replay.stream().noneMatch(row -> row.axis().equals(name));
    replay.add(row(name, gain, motionRms, current, false, 0));
    return this;
  }

  private static Replay row(
      String axis, double gain, double rms, boolean current, boolean best, double less) {
    Estimate saved = Estimate.symmetric(less, current ? 0 : 0.05 * rms);
    return new Replay(axis, gain, 0.1, 3, rms * 1.2, rms, false, current, best, saved);
  }

  /** The first row of an axis is the setting in use; the one with the least motion is the best. */
  private List<Replay> marked() {
    return replay.stream().map(this::marked).toList();
  }

  private Replay marked(Replay row) {
    List<Replay> axis = replay.stream().filter(other -> other.axis().equals(row.axis())).toList();
    double least = axis.stream().mapToDouble(Replay::predictedMotionRmsArcsec).min().orElseThrow();
    double rms = row.predictedMotionRmsArcsec();
    double less = axis.get(0).predictedMotionRmsArcsec() - rms;
    return row(row.axis(), row.gain(), rms, row.current(), rms == least, less);
  }

  MadeUpNight noise(Axis axis, double arcsec, double half) {
    noise.put(axis, about(arcsec, half));
    return this;
  }

  MadeUpNight withoutNoise() {
    noise.clear();
    return this;
  }

  MadeUpNight worm(double amplitude, double half) {
    return component("worm", amplitude, half, 1e-6, false);
  }

  MadeUpNight component(
      String source, double amplitude, double half, double falseAlarm, boolean alias) {
    Component component =
        new Component(about(479, 0.5), about(amplitude, half), 0.0, falseAlarm, source, alias);
    periodic =
        new Periodic(
            about(2 * amplitude, 2 * half), 0.1, 15.0, 0.9, List.of(component), detectable());
    return this;
  }

  MadeUpNight periodic(Periodic figures) {
    periodic = figures;
    return this;
  }

  MadeUpNight sticking(Estimate arcsec) {
    sticking = arcsec;
    play = null;
    return this;
  }

  MadeUpNight play(Estimate arcsec) {
    play = arcsec;
    return this;
  }

  MadeUpNight raDrift(Estimate arcsecPerMinute) {
    raDrift = arcsecPerMinute;
    return this;
  }

  /** Two pointings whose drifts are those of an axis, or one that cannot be tested. */
  MadeUpNight axis(Estimate totalArcmin, Double cornerTrailArcsec, String basis) {
    Boolean tested = basis.equals("two-pointings") ? true : null;
    return axis(totalArcmin, cornerTrailArcsec, basis, tested, null);
  }

  MadeUpNight axis(
      Estimate totalArcmin,
      Double cornerTrailArcsec,
      String basis,
      Boolean consistent,
      BesideAxis beside) {
    polarAxis =
        new PolarAxis(
            totalArcmin,
            about(0, 1),
            totalArcmin,
            null,
            basis,
            0.01,
            300.0,
            cornerTrailArcsec,
            null,
            null,
            null,
            null,
            consistent,
            consistent == null ? null : 0.5,
            beside,
            null,
            null,
            null);
    return this;
  }

  MadeUpNight pulses(Estimate ra, Estimate dec) {
    response = response(ra, dec, about(0, 1));
    return this;
  }

  MadeUpNight crossAxis(Estimate degrees) {
    response = response(about(1, 0.03), about(1, 0.03), degrees);
    return this;
  }

  MadeUpNight eastWest(Estimate east, Estimate west) {
    RaResponse ra = response.ra();
    response =
        new Response(
            new RaResponse(
                ra.sky(), ra.axis(), east.times(DECLARED), west.times(DECLARED), ra.declaredAxis()),
            response.dec(),
            response.crossAxisDeg());
    return this;
  }

  MadeUpNight northSouth(Estimate north, Estimate south) {
    DecResponse dec = response.dec();
    response =
        new Response(
            response.ra(),
            new DecResponse(
                dec.axis(), north.times(DECLARED), south.times(DECLARED), dec.declaredAxis()),
            response.crossAxisDeg());
    return this;
  }

  MadeUpNight withoutResponse(String because) {
    response = new Response(null, null, null);
    return because("/runs/*/responseArcsecPerSecond/ra", because);
  }

  MadeUpNight withoutRaResponse(String because) {
    response = new Response(null, response.dec(), response.crossAxisDeg());
    return because("/runs/*/responseArcsecPerSecond/ra", because);
  }

  MadeUpNight settling(int dithers, Double median, Double p90, double hours) {
    settling = new Settling(dithers, median, p90, hours);
    return this;
  }

  MadeUpNight events(String kind, int count, Double size) {
    for (int i = 0; i < count; i++) {
      events.add(new Event(60.0 * (i + 1), kind, size, 60.0 * (i + 1), null));
    }
    return this;
  }

  MadeUpNight frames(int used, int lost) {
    counts = new RowCounts(used, 60, lost, 10, 0, 0, 0, 0);
    return this;
  }

  MadeUpNight seconds(double duration) {
    seconds = duration;
    return this;
  }

  /** So many round exposures and so many trailed by a cause, each measured in the image. */
  MadeUpNight exposures(int round, int trailed, String cause) {
    return exposures(round, trailed, cause, about(1.1, 0.02));
  }

  MadeUpNight exposures(int round, int trailed, String cause, Estimate measured) {
    exposuresKnown = true;
    for (int i = 0; i < round + trailed; i++) {
      exposures.add(
          new Exposure(
              "x" + exposures.size() + ".fits",
              null,
              300,
              1,
              about(1.1, 0.02),
              null,
              measured,
              null,
              null,
              null,
              null,
              i < round ? "round" : "trailed",
              i < round ? null : cause,
              null,
              null,
              null,
              null,
              null,
              null,
              null));
    }
    return this;
  }

  /** The logged RMS as so many times what the budget makes. */
  MadeUpNight rmsTimes(double factor) {
    rmsScale = factor;
    return this;
  }

  /** The night was played again. */
  MadeUpNight ladder(MadeUpLadder played) {
    ladder = played;
    return this;
  }

  MadeUpNight equipment(String toml) {
    equipment = toml;
    return this;
  }

  Facts facts() {
    return Facts.of(result(), equipment());
  }

  /** The finding, also where it is why the log cannot tell. */
  Finding judgedBy(Rule rule) {
    return Diagnosis.of(result(), equipment(), new Faults()).findings().stream()
        .filter(finding -> finding.code().equals(rule.code().word()))
        .findFirst()
        .orElseThrow();
  }

  Level levelBy(Rule rule) {
    return judgedBy(rule).level();
  }

  Diagnosis diagnosis() {
    return Diagnosis.of(result(), equipment(), new Faults());
  }

  Equipment equipment() {
    try {
      Path file = Files.createTempFile("equipment", ".toml");
      try {
        Files.write(file, equipment.getBytes(StandardCharsets.UTF_8));
        return EquipmentReader.read(file);
      } finally {
        Files.delete(file);
      }
    } catch (Exception e) {
      throw new IllegalStateException(e);
    }
  }

  NightResult result() {
    return ladder == null
        ? figures()
        : figures().withLadder(MadeUpLadder.need(), ladder.rungs(), "");
  }

  private NightResult figures() {
    double ra = rmsScale * Math.sqrt(sum(Axis.RA));
    double dec = rmsScale * Math.sqrt(sum(Axis.DEC));
    Guided guided =
        counts.used() == 0
            ? null
            : new Guided(
                new AxisScatter(ra, 0.0, 3 * ra, 2 * ra, null),
                new AxisScatter(dec, 0.0, 3 * dec, 2 * dec, null),
                Math.hypot(ra, dec),
                2 * Math.hypot(ra, dec),
                1.0,
                null,
                null);
    NoiseFloor floor = new NoiseFloor(noise.get(Axis.RA), noise.get(Axis.DEC), null);
    RunResult run = run(guided, floor);
    return new NightResult(
        NightResult.SCHEMA,
        "test",
        List.of(),
        new NightSummary(
            "2026-03-14",
            null,
            null,
            1,
            run.frames(),
            seconds / 3600,
            guided,
            new AxisDrift(raDrift, null),
            null,
            floor,
            periodic,
            new Backlash(play, null),
            new Sticking(sticking),
            settling,
            null),
        List.of(run),
        polarAxis,
        null,
        exposuresKnown ? exposures : null,
        replay.isEmpty() ? null : marked(),
        null,
        null,
        reasons,
        List.of(),
        List.of());
  }

  private RunResult run(Guided guided, NoiseFloor floor) {
    return new RunResult(
        1,
        null,
        seconds,
        GuidingMode.GUIDED,
        counts.rows(),
        counts,
        3.0,
        2.4,
        20.0,
        0.0,
        null,
        guided,
        new AxisDrift(raDrift, null),
        response,
        loops.isEmpty() ? null : new Loop(loops.get(Axis.RA), loops.get(Axis.DEC)),
        floor,
        periodic,
        new Backlash(play, null),
        new Sticking(sticking),
        budgetKnown
            ? new Budget(parts(Axis.RA), parts(Axis.DEC), sum(Axis.RA), sum(Axis.DEC))
            : null,
        settling,
        events);
  }

  private double sum(Axis axis) {
    return budget.get(axis).values().stream().mapToDouble(Double::doubleValue).sum();
  }

  private List<BudgetPart> parts(Axis axis) {
    double whole = sum(axis);
    return budget.get(axis).entrySet().stream()
        .map(part -> new BudgetPart(part.getKey(), part.getValue(), part.getValue() / whole))
        .toList();
  }

  private static AxisLoopResult loop(double gain, double half, double lag1) {
    return new AxisLoopResult(
        about(gain, half), 0.1, 0, lag1, 0.98, null, null, null, null, null, null);
  }

  private static Detectable detectable() {
    return new Detectable(479, 0.2);
  }

  private static Response response(Estimate ra, Estimate dec, Estimate crossAxisDeg) {
    return new Response(
        new RaResponse(
            ra.times(DECLARED),
            ra.times(DECLARED),
            ra.times(DECLARED),
            ra.times(DECLARED),
            DECLARED),
        new DecResponse(dec.times(DECLARED), dec.times(DECLARED), dec.times(DECLARED), DECLARED),
        crossAxisDeg);
  }
}
