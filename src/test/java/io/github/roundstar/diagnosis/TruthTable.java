package io.github.roundstar.diagnosis;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.Night;
import io.github.roundstar.results.RunResult;
import io.github.roundstar.simulate.RunTruth;
import io.github.roundstar.simulate.ScenarioReader;
import io.github.roundstar.simulate.SimulatedRun;
import io.github.roundstar.simulate.Simulation;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * The bounds of the design's section 13 as a table: many simulated nights per case, each figure's
 * bias, its median and largest error, and how often its interval held the truth. Not a test: a
 * program that writes {@code reports/truth.md}.
 */
public final class TruthTable {
  private static final double DECLARED = 0.5 * 15.041067;

  /**
   * A kind of night.
   *
   * @param gain of both loops
   * @param noiseArcsec white noise of a frame
   * @param playArcsec backlash in declination
   */
  private record Case(
      String name, double gain, double noiseArcsec, double playArcsec, String more) {}

  private static final List<Case> CASES =
      List.of(
          new Case("quiet", 0.6, 0.45, 0, KnownTruthTest.WORM),
          new Case("low gain, noisy", 0.3, 0.8, 1, KnownTruthTest.WORM),
          new Case("high gain, calm", 0.9, 0.2, 4, KnownTruthTest.WORM),
          new Case(
              "gusts",
              0.6,
              0.45,
              0,
              KnownTruthTest.WORM + "[gusts]\nper_hour = 8\namplitude_arcsec = 4\n"),
          new Case(
              "camera turned", 0.6, 0.45, 1.5, "camera_angle_deg = 5\n" + KnownTruthTest.WORM));

  /** Errors of one figure over the nights of a case, and how often its interval held the truth. */
  private static final class Column {
    private final List<Double> errors = new ArrayList<>();
    private int nights;
    private int covered;

    void add(Estimate found, double truth) {
      nights++;
      if (found != null) {
        errors.add(found.value() - truth);
        covered += found.covers(truth) ? 1 : 0;
      }
    }

    String row(String name) {
      double[] sizes = errors.stream().mapToDouble(Math::abs).sorted().toArray();
      double bias = errors.stream().mapToDouble(e -> e).average().orElse(Double.NaN);
      return String.format(
          Locale.ROOT,
          "| %s | %d of %d | %+.4f | %.4f | %.4f | %d |%n",
          name,
          errors.size(),
          nights,
          bias,
          sizes.length == 0 ? Double.NaN : sizes[sizes.length / 2],
          sizes.length == 0 ? Double.NaN : sizes[sizes.length - 1],
          covered);
    }
  }

  private TruthTable() {}

  /**
   * Plays the nights and writes the table.
   *
   * @param arguments file to write, nights per case (default 100)
   */
  public static void main(String[] arguments) throws IOException, FormatException {
    Path file = Path.of(arguments.length > 0 ? arguments[0] : "reports/truth.md");
    int nights = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 100;
    StringBuilder text = new StringBuilder("# Figures against simulated truth\n\n");
    text.append("Runs of two hours, ").append(nights).append(" nights per case. Errors in the");
    text.append(" figure's unit; an interval of 95 % should hold the truth on 88 to 99 of 100.\n");
    for (Case kind : CASES) {
      text.append("\n## ").append(kind.name()).append("\n\n");
      text.append("| figure | given | bias | median error | largest error | interval held |\n");
      text.append("|---|---|---|---|---|---|\n");
      played(kind, nights).forEach((name, column) -> text.append(column.row(name)));
    }
    Files.writeString(file, text.toString().replace("\r\n", "\n"), StandardCharsets.UTF_8);
  }

  private static Map<String, Column> played(Case kind, int nights) throws FormatException {
    Map<String, Column> columns = new LinkedHashMap<>();
    for (int seed = 1; seed <= nights; seed++) {
      SimulatedRun run =
          Simulation.run(
                  ScenarioReader.parse(
                      kind.name(),
                      KnownTruthTest.scenario(seed, kind.gain(), kind.noiseArcsec(), 0.02)
                          + "dec_backlash_arcsec = "
                          + kind.playArcsec()
                          + "\n"
                          + kind.more()))
              .runs()
              .get(0);
      add(columns, kind, analysed(run), run.truth());
    }
    return columns;
  }

  private static RunResult analysed(SimulatedRun run) {
    return NightAnalysis.of(
            new Night("truth", List.of(run.log()), List.of()), Equipment.UNKNOWN, "test", true)
        .result()
        .runs()
        .get(0);
  }

  private static void add(Map<String, Column> columns, Case kind, RunResult run, RunTruth truth) {
    boolean worm = !run.periodic().components().isEmpty();
    column(columns, "worm amplitude [arcsec]")
        .add(worm ? run.periodic().components().get(0).amplitudeArcsecAxis() : null, 6);
    column(columns, "worm period [s]")
        .add(worm ? run.periodic().components().get(0).periodSeconds() : null, 479);
    column(columns, "RA drift [arcsec/min]")
        .add(run.driftArcsecPerMinuteSky().ra(), truth.ra().driftArcsecPerMinute());
    column(columns, "Dec drift [arcsec/min]")
        .add(run.driftArcsecPerMinuteSky().dec(), truth.dec().driftArcsecPerMinute());
    column(columns, "RA noise [arcsec]").add(run.noiseFloorArcsec().ra(), truth.ra().noiseArcsec());
    column(columns, "Dec noise [arcsec]")
        .add(run.noiseFloorArcsec().dec(), truth.dec().noiseArcsec());
    boolean ra = run.responseArcsecPerSecond().ra() != null;
    boolean dec = run.responseArcsecPerSecond().dec() != null;
    double turned = kind.more().startsWith("camera") ? Math.cos(Math.toRadians(5)) : 1;
    column(columns, "RA response [arcsec/s]")
        .add(ra ? run.responseArcsecPerSecond().ra().axis() : null, turned * DECLARED);
    column(columns, "Dec response [arcsec/s]")
        .add(dec ? run.responseArcsecPerSecond().dec().axis() : null, turned * DECLARED);
    column(columns, "Dec backlash [arcsec]").add(run.backlashArcsecAxis().dec(), kind.playArcsec());
    column(columns, "camera angle [deg]")
        .add(run.responseArcsecPerSecond().crossAxisDeg(), turned < 1 ? 5 : 0);
  }

  private static Column column(Map<String, Column> columns, String name) {
    return columns.computeIfAbsent(name, key -> new Column());
  }
}
