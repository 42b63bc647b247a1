package io.github.roundstar.report;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.GuidingMode;
import io.github.roundstar.model.PierSide;
import io.github.roundstar.model.RowCounts;
import io.github.roundstar.model.UnusableRow;
import io.github.roundstar.results.AxisDrift;
import io.github.roundstar.results.AxisScatter;
import io.github.roundstar.results.Backlash;
import io.github.roundstar.results.Component;
import io.github.roundstar.results.DecResponse;
import io.github.roundstar.results.Decision;
import io.github.roundstar.results.Detectable;
import io.github.roundstar.results.Finding;
import io.github.roundstar.results.Guided;
import io.github.roundstar.results.Input;
import io.github.roundstar.results.Judgement;
import io.github.roundstar.results.Level;
import io.github.roundstar.results.Mark;
import io.github.roundstar.results.Method;
import io.github.roundstar.results.NightEvidence;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.NightSummary;
import io.github.roundstar.results.NoiseFloor;
import io.github.roundstar.results.NotComputed;
import io.github.roundstar.results.OffsetCloud;
import io.github.roundstar.results.Periodic;
import io.github.roundstar.results.Polyline;
import io.github.roundstar.results.RaResponse;
import io.github.roundstar.results.Response;
import io.github.roundstar.results.RunResult;
import io.github.roundstar.results.Settling;
import io.github.roundstar.results.Unusable;
import io.github.roundstar.results.Verdict;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;

/** An invented night: figures made up to look like those of a worm-driven mount; no analysis. */
final class SampleNight {
  private static final Instant START = Instant.parse("2026-03-14T19:42:10Z");

  private final int runs;
  private final double runSeconds;
  private final boolean dated;
  private final String mountName;
  private final String noteText;
  private final String badRow;
  private final String gear;

  private SampleNight(
      int runs, double runSeconds, boolean dated, String mount, String note, String badRow) {
    this.runs = runs;
    this.runSeconds = runSeconds;
    this.dated = dated;
    this.mountName = mount;
    this.noteText = note;
    this.badRow = badRow;
    this.gear = mount.startsWith("Garden") ? "unlabelled" : "gear:" + mount;
  }

  static SampleNight twoHours() {
    return new SampleNight(
        2,
        3600,
        true,
        "Garden pier mount",
        "wind picked up",
        "ra_offset: found '1,84', expected a number such as 1.84: correct the field");
  }

  static SampleNight tenHours() {
    SampleNight two = twoHours();
    return new SampleNight(5, 7200, true, two.mountName, two.noteText, two.badRow);
  }

  SampleNight undated() {
    return new SampleNight(runs, runSeconds, false, mountName, noteText, badRow);
  }

  /** The same text wherever a log or an equipment file could bring one in. */
  SampleNight saying(String text) {
    return new SampleNight(runs, runSeconds, dated, text, text, text);
  }

  NightEvidence evidence() {
    SampleSeries series = new SampleSeries(runs, runSeconds);
    return new NightEvidence(
        Optional.of(mountName),
        OptionalDouble.of(1.21),
        series.timeline(noteText),
        new OffsetCloud(series.cloud(), (int) (runs * runSeconds / 2.5), 0.52, 0.36, 78),
        series.raMotion(),
        series.decMotion(),
        Optional.of(series.spectrum(components(gear))),
        Optional.of(series.worm()),
        Optional.empty(),
        List.of());
  }

  NightResult result() {
    List<RunResult> all = new ArrayList<>();
    for (int i = 0; i < runs; i++) {
      all.add(run(i));
    }
    int frames = all.stream().mapToInt(RunResult::frames).sum();
    double end = runs * runSeconds + (runs - 1) * SampleSeries.GAP_SECONDS;
    return new NightResult(
        NightResult.SCHEMA,
        "0.1.0",
        List.of(input(all)),
        new NightSummary(
            dated ? "2026-03-14" : "undated-1f2e3d4c",
            dated ? START.toString() : null,
            dated ? START.plusSeconds((long) end).toString() : null,
            runs,
            frames,
            runs * runSeconds / 3600,
            guided(1),
            drift(),
            response(),
            new NoiseFloor(Estimate.symmetric(0.31, 0.02), Estimate.symmetric(0.29, 0.02), 0.12),
            periodic(),
            new Backlash(Estimate.symmetric(2.9, 0.4), null),
            null,
            new Settling(runs * 5, 11.0, 19.5, 0.08),
            null),
        all,
        null,
        null,
        List.of(),
        null,
        null,
        null,
        List.of(
            new NotComputed("/polarAxis", "needs two pointings an hour and more apart"),
            new NotComputed("/runs/*/backlashArcsecAxis/ra", "the RA gear never reverses"),
            new NotComputed("/findings", "this version does not judge yet")),
        List.of(
            new Method("/runs/*/guided", "about the run's own mean, divisor n, nothing clipped"),
            new Method(
                "/runs/*/periodic",
                "harmonics fitted together with wander and noise; interval from the likelihood")),
        List.of());
  }

  static List<Component> components(String gear) {
    return List.of(
        new Component(
            Estimate.symmetric(479.1, 0.6),
            Estimate.symmetric(5.62, 0.21),
            0.4,
            1e-9,
            "worm",
            false),
        new Component(
            Estimate.symmetric(239.6, 0.4),
            Estimate.symmetric(1.31, 0.12),
            1.9,
            2e-4,
            "worm/2",
            false),
        new Component(
            Estimate.symmetric(122.9, 0.5),
            Estimate.symmetric(0.62, 0.11),
            2.2,
            0.0031,
            gear,
            false));
  }

  private RunResult run(int i) {
    int frames = (int) (runSeconds / 2.5);
    RowCounts counts = new RowCounts(frames - 61, 34, 12, 5, 6, 0, 2, i == 0 ? 2 : 0);
    return new RunResult(
        i + 1,
        dated
            ? START.plusSeconds((long) (i * (runSeconds + SampleSeries.GAP_SECONDS))).toString()
            : null,
        runSeconds,
        GuidingMode.GUIDED,
        frames,
        counts,
        2.5,
        3.88,
        31.4 - 8 * i,
        -2.1 + 1.4 * i,
        i == 0 ? PierSide.WEST : PierSide.EAST,
        guided(1 + 0.08 * i),
        drift(),
        response(),
        null,
        new NoiseFloor(Estimate.symmetric(0.31, 0.02), Estimate.symmetric(0.29, 0.02), 0.12),
        periodic(),
        new Backlash(Estimate.symmetric(2.9, 0.4), null),
        null,
        null,
        new Settling(5, 11.0, 19.5, 0.02),
        List.of());
  }

  private Input input(List<RunResult> all) {
    int rows = all.stream().mapToInt(run -> run.counts().rows()).sum();
    int used = all.stream().mapToInt(run -> run.counts().used()).sum();
    return new Input(
        "garden-pier.ecsv",
        "5f2c".repeat(16),
        184_223,
        "guide-table/ecsv",
        rows,
        used,
        new Unusable(
            2,
            new TreeMap<>(Map.of("not a number", 2)),
            List.of(new UnusableRow(412, badRow), new UnusableRow(12047, badRow))));
  }

  private static Guided guided(double factor) {
    return new Guided(
        new AxisScatter(0.51 * factor, 0.02, 2.31, 1.02 * factor, Estimate.symmetric(0.001, 0.004)),
        new AxisScatter(0.37 * factor, -0.05, 1.44, 0.74 * factor, Estimate.symmetric(0, 0.003)),
        0.63 * factor,
        1.17 * factor,
        1.44,
        78.0,
        0.52 * factor);
  }

  private static AxisDrift drift() {
    return new AxisDrift(Estimate.symmetric(-0.11, 0.16), Estimate.symmetric(0.412, 0.024));
  }

  private static Response response() {
    return new Response(
        new RaResponse(
            Estimate.symmetric(6.2, 0.3),
            Estimate.symmetric(7.3, 0.35),
            Estimate.symmetric(7.2, 0.5),
            Estimate.symmetric(7.4, 0.5),
            7.52),
        new DecResponse(
            Estimate.symmetric(7.1, 0.5),
            Estimate.symmetric(7.0, 0.6),
            Estimate.symmetric(7.2, 0.6),
            7.52),
        Estimate.symmetric(0.4, 0.9));
  }

  private Periodic periodic() {
    return new Periodic(
        Estimate.symmetric(11.8, 0.44),
        0.081,
        14.6,
        0.93,
        components(gear),
        new Detectable(478.7, 0.14));
  }

  /** The same night with an invented verdict and finding. */
  NightResult judged() {
    NightResult r = result();
    return new NightResult(
        r.schema(),
        r.version(),
        r.inputs(),
        r.night(),
        r.runs(),
        r.polarAxis(),
        r.seeing(),
        r.exposures(),
        r.replay(),
        List.of(
            new Finding(
                "dec-backlash",
                Level.FIX_FIRST,
                "The Dec gear has 2.9 arcsec of play",
                0.97,
                "Reversals take 2.9 (2.5 .. 3.3) arcsec.",
                List.of("Balance the tube.", "Mesh the Dec worm closer."),
                "Never mesh it so close that it binds.",
                0.41,
                0.38,
                12,
                0.9)),
        new Verdict(
            Decision.ADJUST_MOUNT,
            new Judgement(Level.FIX_FIRST, "The Dec gear has play."),
            new Judgement(Level.FINE, "The air was steady."),
            new Judgement(Level.WATCH, "The gain is a little high."),
            "Mesh the Dec worm: its play trails every third exposure."),
        r.notComputed(),
        r.methods(),
        List.of());
  }

  /** One frame, nothing known. */
  static NightResult sparseResult() {
    NotComputed unknown =
        new NotComputed("/runs/0/guided", "the only frame was lost, so no offset is known");
    return new NightResult(
        NightResult.SCHEMA,
        "0.1.0",
        List.of(),
        new NightSummary(
            "undated-00000000",
            null,
            null,
            1,
            1,
            0,
            null,
            null,
            null,
            null,
            null,
            null,
            null,
            null,
            null),
        List.of(
            new RunResult(
                1,
                null,
                0,
                GuidingMode.NO_PULSES,
                1,
                new RowCounts(0, 0, 1, 0, 0, 0, 0, 0),
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                List.of())),
        null,
        null,
        List.of(),
        null,
        null,
        null,
        List.of(
            unknown,
            new NotComputed("/night/guided", "no frame was used"),
            new NotComputed("/runs/*/periodic", "the log has no pulse columns"),
            new NotComputed("/runs/*/driftArcsecPerMinuteSky", "the log has no pulse columns")),
        List.of(),
        List.of());
  }

  static NightEvidence sparseEvidence() {
    return new NightEvidence(
        Optional.empty(),
        OptionalDouble.empty(),
        List.of(SampleSeries.emptyRun(List.of(new Mark(Mark.Kind.LOST, 0, 0, "")))),
        new OffsetCloud(Polyline.EMPTY, 0, 0, 0, 0),
        List.of(),
        List.of(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        List.of("night.csv: no start time: add start to the header"));
  }
}
