package io.github.roundstar.compare;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.GuidingMode;
import io.github.roundstar.model.PierSide;
import io.github.roundstar.model.RowCounts;
import io.github.roundstar.results.AxisLoopResult;
import io.github.roundstar.results.AxisScatter;
import io.github.roundstar.results.Backlash;
import io.github.roundstar.results.ComparisonBasis;
import io.github.roundstar.results.Cure;
import io.github.roundstar.results.Event;
import io.github.roundstar.results.Guided;
import io.github.roundstar.results.Input;
import io.github.roundstar.results.Loop;
import io.github.roundstar.results.Need;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.NightSummary;
import io.github.roundstar.results.NoiseFloor;
import io.github.roundstar.results.Periodic;
import io.github.roundstar.results.PolarAxis;
import io.github.roundstar.results.Promise;
import io.github.roundstar.results.Range;
import io.github.roundstar.results.RunResult;
import io.github.roundstar.results.Rung;
import io.github.roundstar.results.Unusable;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** A night of which every number is given, nothing drawn: what is worked out by hand can be. */
final class KnownNight {
  private static final Range NONE = new Range(0, 0, 0);

  private final String date;
  private double axisRms = Math.sqrt(0.5);
  private double floor = 0.3;
  private int round = 12;
  private int units = 24;
  private double unitSeconds = 300;
  private String unitKind = "windows";
  private Double declaredGain = 0.4;
  private double measuredGain = 0.4;
  private Estimate polar;
  private Estimate play;
  private Estimate swing;
  private String mount = "Larkfell 180";
  private double imagingScale = 1.05;
  private int jolts;
  private Promise promise;
  private Need need = new Need(Need.ELONGATION, 1.15, "tool", 0.9);

  KnownNight(String date) {
    this.date = date;
  }

  KnownNight radialRms(double arcsec) {
    axisRms = arcsec / Math.sqrt(2);
    return this;
  }

  KnownNight floor(double arcsec) {
    floor = arcsec;
    return this;
  }

  KnownNight round(int count, int of) {
    round = count;
    units = of;
    return this;
  }

  KnownNight unitSeconds(double seconds) {
    unitSeconds = seconds;
    return this;
  }

  KnownNight listed() {
    unitKind = "exposures";
    return this;
  }

  KnownNight gain(Double declared, double measured) {
    declaredGain = declared;
    measuredGain = measured;
    return this;
  }

  KnownNight polar(double arcmin, double half) {
    polar = Estimate.symmetric(arcmin, half);
    return this;
  }

  KnownNight play(double arcsec, double half) {
    play = Estimate.symmetric(arcsec, half);
    return this;
  }

  KnownNight swing(double arcsec, double half) {
    swing = Estimate.symmetric(arcsec, half);
    return this;
  }

  KnownNight mount(String name) {
    mount = name;
    return this;
  }

  KnownNight imagingScale(double arcsecPerPixel) {
    imagingScale = arcsecPerPixel;
    return this;
  }

  KnownNight jolts(int count) {
    jolts = count;
    return this;
  }

  KnownNight asksForRms(double limit) {
    need = new Need(Need.RADIAL_RMS, limit, "user", 1);
    return this;
  }

  /** What some steps bring: so many of the same windows round, and this RMS in the log. */
  KnownNight promises(int roundThen, double loggedRms, Cure... steps) {
    return promises(roundThen, units, unitSeconds, loggedRms, steps);
  }

  KnownNight promises(int roundThen, int of, double seconds, double loggedRms, Cure... steps) {
    promise =
        new Promise(
            List.of(steps), of, unitKind, seconds, sure(roundThen), NONE, NONE, sure(loggedRms), 1);
    return this;
  }

  static Cure cure(String code, Map<String, Double> numbers) {
    return new Cure(code, numbers, NONE, NONE, NONE, NONE, 1);
  }

  static Cure raGain(double from, double to) {
    return cure("ra-gain", Map.of("fromGain", from, "toGain", to));
  }

  private static Range sure(double value) {
    return new Range(value, value, value);
  }

  NightResult night() {
    double radial = axisRms * Math.sqrt(2);
    AxisScatter axis = new AxisScatter(axisRms, 0.0, 3 * axisRms, 2 * axisRms, null);
    return new NightResult(
        NightResult.SCHEMA,
        "0.1.0",
        List.of(
            new Input(
                date + ".ecsv",
                String.format(java.util.Locale.ROOT, "%064x", date.hashCode() & 0xffff_ffffL),
                1,
                "guide-table/ecsv",
                1,
                1,
                new Unusable(0, new TreeMap<>(), List.of()))),
        new NightSummary(
            date,
            date + "T20:00:00Z",
            date + "T22:00:00Z",
            1,
            2400,
            2,
            new Guided(axis, axis, radial, 2 * radial, 1.0, null, null),
            null,
            null,
            new NoiseFloor(Estimate.symmetric(floor, 0), Estimate.symmetric(floor, 0), 0.0),
            swing == null ? null : new Periodic(swing, null, null, null, List.of(), null),
            new Backlash(play, null),
            null,
            null,
            new ComparisonBasis(mount, imagingScale, "north", null)),
        List.of(run()),
        polar == null ? null : polarAxis(),
        null,
        null,
        null,
        null,
        null,
        null,
        need,
        List.of(asItWas(radial)),
        List.of(),
        promise,
        null,
        null,
        List.of(),
        List.of(),
        List.of());
  }

  private Rung asItWas(double radial) {
    return new Rung(
        Rung.AS_IT_WAS,
        true,
        null,
        List.of(),
        units,
        unitKind,
        unitSeconds,
        sure(round),
        NONE,
        NONE,
        sure(radial),
        NONE,
        null,
        0,
        null);
  }

  private RunResult run() {
    AxisLoopResult loop =
        new AxisLoopResult(
            Estimate.symmetric(measuredGain, 0.02),
            0.0,
            0,
            null,
            null,
            null,
            null,
            null,
            declaredGain,
            0.0,
            null);
    List<Event> events = new ArrayList<>();
    for (int i = 0; i < jolts; i++) {
      events.add(new Event(60 * i, "knock", 2.0, 60 * i, null));
    }
    return new RunResult(
        1,
        date + "T20:00:00Z",
        7200,
        GuidingMode.GUIDED,
        2400,
        new RowCounts(2400, 0, 0, 0, 0, 0, 0, 0),
        3.0,
        2.43,
        30.0,
        -1.0,
        PierSide.WEST,
        null,
        null,
        null,
        new Loop(loop, loop),
        null,
        null,
        null,
        null,
        null,
        null,
        events);
  }

  private PolarAxis polarAxis() {
    return new PolarAxis(
        null,
        null,
        polar,
        null,
        "two-pointings",
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
        null);
  }
}
