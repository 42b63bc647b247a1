package io.github.roundstar.compare;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.GuidingMode;
import io.github.roundstar.model.PierSide;
import io.github.roundstar.model.RowCounts;
import io.github.roundstar.results.AxisDrift;
import io.github.roundstar.results.AxisScatter;
import io.github.roundstar.results.Backlash;
import io.github.roundstar.results.ComparisonBasis;
import io.github.roundstar.results.Component;
import io.github.roundstar.results.DecResponse;
import io.github.roundstar.results.Detectable;
import io.github.roundstar.results.Exposure;
import io.github.roundstar.results.Guided;
import io.github.roundstar.results.GuidedIntervals;
import io.github.roundstar.results.Input;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.NightSummary;
import io.github.roundstar.results.NoiseFloor;
import io.github.roundstar.results.Periodic;
import io.github.roundstar.results.PolarAxis;
import io.github.roundstar.results.RaResponse;
import io.github.roundstar.results.Response;
import io.github.roundstar.results.RunResult;
import io.github.roundstar.results.Unusable;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;

/**
 * Results of invented nights of one mount: figures as an analysis would give them, each off the
 * truth by what the night adds and by what its interval says.
 */
final class InventedNight {
  private final Random chance;
  private double worm = 5.8;
  private double gearScatter = 0.07;
  private double floor = 0.36;
  private double airScatter = 0.05;
  private double declination = 30;
  private double hourAngle = -1;
  private double cadence = 3;
  private double guideScale = 2.43;
  private double guideRate = 0.5;
  private double wormSeconds = 478.7;
  private String mount = "Larkfell 180";
  private String hemisphere = "north";
  private boolean polar = true;
  private boolean components = true;
  private String version = "0.1.0";
  private int number;

  InventedNight(long seed) {
    chance = new Random(seed);
  }

  InventedNight worm(double arcsec) {
    worm = arcsec;
    return this;
  }

  InventedNight gearScatter(double share) {
    gearScatter = share;
    return this;
  }

  InventedNight floor(double arcsec) {
    floor = arcsec;
    return this;
  }

  InventedNight declination(double deg) {
    declination = deg;
    return this;
  }

  InventedNight hourAngle(double hours) {
    hourAngle = hours;
    return this;
  }

  InventedNight cadence(double seconds) {
    cadence = seconds;
    return this;
  }

  InventedNight guideScale(double arcsecPerPixel) {
    guideScale = arcsecPerPixel;
    return this;
  }

  InventedNight guideRate(double sidereal) {
    guideRate = sidereal;
    return this;
  }

  InventedNight wormSeconds(double seconds) {
    wormSeconds = seconds;
    return this;
  }

  InventedNight mount(String name) {
    mount = name;
    return this;
  }

  InventedNight hemisphere(String name) {
    hemisphere = name;
    return this;
  }

  InventedNight withoutPolarAxis() {
    polar = false;
    return this;
  }

  InventedNight withoutComponents() {
    components = false;
    return this;
  }

  InventedNight version(String number) {
    version = number;
    return this;
  }

  List<NightInput> nights(int count) {
    List<NightInput> nights = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      nights.add(next());
    }
    return nights;
  }

  /** Another night with the settings of now. */
  NightInput next() {
    number++;
    String date = String.format(Locale.ROOT, "2026-%02d-%02d", 1 + number / 28, 1 + number % 28);
    NightResult result =
        new NightResult(
            NightResult.SCHEMA,
            version,
            List.of(input(date)),
            summary(date),
            List.of(run(date)),
            polar ? polarAxis() : null,
            null,
            exposures(),
            null,
            null,
            null,
            List.of(),
            List.of(),
            List.of());
    return new NightInput(result, date + ".json", Optional.empty());
  }

  private Input input(String date) {
    String hash =
        String.format(Locale.ROOT, "%064x", Math.abs((date + chance.nextInt()).hashCode()));
    return new Input(
        date + ".ecsv",
        hash,
        1,
        "guide-table/ecsv",
        1,
        1,
        new Unusable(0, new TreeMap<>(), List.of()));
  }

  /** The truth of this night, read with an error that the interval states. */
  private Estimate read(double truth, double scatter, double error) {
    double night = truth + scatter * chance.nextGaussian();
    return Estimate.symmetric(night + error * chance.nextGaussian(), 1.96 * error);
  }

  private NightSummary summary(String date) {
    double noise = floor * (1 + airScatter * chance.nextGaussian());
    double raMotion = 0.09 * worm * (1 + gearScatter * chance.nextGaussian());
    double decMotion = 0.25 * (1 + 0.05 * chance.nextGaussian());
    double ra = Math.hypot(Math.sqrt(1.25) * noise, raMotion);
    double dec = Math.hypot(Math.sqrt(1.25) * noise, decMotion);
    Estimate raRms = read(ra, 0, 0.02 * ra);
    Estimate decRms = read(dec, 0, 0.02 * dec);
    double radial = Math.hypot(raRms.value(), decRms.value());
    double elongation = Math.max(ra, dec) / Math.min(ra, dec);
    return new NightSummary(
        date,
        date + "T20:00:00Z",
        date + "T22:00:00Z",
        1,
        2400,
        2,
        new Guided(
            new AxisScatter(raRms.value(), 0.0, 3 * ra, 2 * ra, null),
            new AxisScatter(decRms.value(), 0.0, 3 * dec, 2 * dec, null),
            radial,
            2 * radial,
            elongation,
            90.0,
            null),
        new AxisDrift(read(0.1, 0.05, 0.05), read(0.2, 0.05, 0.05)),
        null,
        new NoiseFloor(
            Estimate.symmetric(noise, 0.03 * noise), Estimate.symmetric(noise, 0.03 * noise), 0.0),
        periodic(),
        null,
        null,
        null,
        new ComparisonBasis(
            mount,
            1.05,
            hemisphere,
            new GuidedIntervals(
                raRms,
                decRms,
                Estimate.symmetric(radial, 0.03 * radial),
                Estimate.symmetric(elongation, 0.05))));
  }

  private Periodic periodic() {
    if (!components) {
      return new Periodic(null, null, null, null, List.of(), new Detectable(wormSeconds, 0.2));
    }
    double common = 1 + gearScatter * chance.nextGaussian();
    List<Component> parts = new ArrayList<>();
    double[] shares = {1, 0.41, 0.24};
    for (int i = 0; i < shares.length; i++) {
      double size = worm * shares[i] * common * (1 + 0.02 * chance.nextGaussian());
      parts.add(
          new Component(
              Estimate.symmetric(wormSeconds / (i + 1), 0.1),
              Estimate.symmetric(size, 0.12),
              0.5 * i,
              1e-12,
              i == 0 ? "worm" : "worm/" + (i + 1),
              false));
    }
    double peak = 2.5 * worm * common * (1 + 0.02 * chance.nextGaussian());
    return new Periodic(
        Estimate.symmetric(peak, 0.3),
        0.0115 * peak * (1 + 0.03 * chance.nextGaussian()),
        15.0,
        null,
        parts,
        new Detectable(wormSeconds, 0.2));
  }

  private RunResult run(String date) {
    double declared = guideRate * 15.041067;
    return new RunResult(
        1,
        date + "T20:00:00Z",
        7200,
        GuidingMode.GUIDED,
        2400,
        new RowCounts(2400, 0, 0, 0, 0, 0, 0, 0),
        cadence,
        guideScale,
        declination,
        hourAngle,
        PierSide.WEST,
        null,
        new AxisDrift(read(0.1, 0.08, 0.05), read(0.2, 0.08, 0.05)),
        new Response(
            new RaResponse(
                null, read(0.98 * declared, 0.01 * declared, 0.07), null, null, declared),
            new DecResponse(read(0.97 * declared, 0.01 * declared, 0.07), null, null, declared),
            null),
        null,
        null,
        null,
        new Backlash(read(1.5, 0.12, 0.06), null),
        null,
        null,
        null,
        List.of());
  }

  private PolarAxis polarAxis() {
    return new PolarAxis(
        read(1.8, 0.25, 0.2),
        read(-1.2, 0.25, 0.2),
        read(2.2, 0.25, 0.2),
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

  private List<Exposure> exposures() {
    List<Exposure> exposures = new ArrayList<>();
    double round = 0.8 + 0.08 * chance.nextGaussian();
    for (int i = 0; i < 20; i++) {
      exposures.add(
          new Exposure(
              null,
              null,
              300,
              1,
              null,
              null,
              null,
              null,
              null,
              null,
              null,
              chance.nextDouble() < round ? "round" : "trailed",
              null,
              null,
              null,
              null,
              null,
              null,
              null,
              null));
    }
    return exposures;
  }
}
