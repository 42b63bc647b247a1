package io.github.roundstar.diagnosis;

import io.github.roundstar.ingest.EquipmentReader;
import io.github.roundstar.ingest.GuideTableReader;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.motion.AxisKnowledge;
import io.github.roundstar.motion.AxisMotion;
import io.github.roundstar.motion.AxisNight;
import io.github.roundstar.motion.GuideRate;
import io.github.roundstar.motion.posterior.Figure;
import io.github.roundstar.signal.Quantile;
import io.github.roundstar.worlds.Truth;
import io.github.roundstar.worlds.World;
import io.github.roundstar.worlds.WorldNight;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.commons.math3.distribution.BinomialDistribution;

/**
 * Figures against the truth of other worlds: nights of a second simulator that shares nothing with
 * the estimators, as a table. All nights count, those too on which a figure was not told. Not a
 * test: a program that writes {@code reports/other-worlds.md}.
 */
public final class OtherWorldsTable {
  private static final String HEAD =
      """

      | figure | told | interval held | median error | largest error |
      |---|---|---|---|---|
      """;

  private OtherWorldsTable() {}

  /** One figure in one world, by one way of estimating it. */
  private static final class Column {
    int nights;
    int told;
    int held;
    final List<Double> errors = new ArrayList<>();

    void add(Optional<Estimate> estimate, double truth, double scale) {
      nights++;
      if (estimate.isPresent()) {
        told++;
        held += estimate.get().covers(truth) ? 1 : 0;
        errors.add(Math.abs(estimate.get().value() - truth) / scale);
      }
    }

    double median() {
      double[] sorted = errors.stream().mapToDouble(e -> e).sorted().toArray();
      return sorted.length == 0 ? Double.NaN : Quantile.median(sorted);
    }

    double worst() {
      return errors.stream().mapToDouble(e -> e).max().orElse(Double.NaN);
    }

    String text(String name) {
      return String.format(
          Locale.ROOT,
          "| %s | %d of %d | %d | %.4f | %.4f |%n",
          name,
          told,
          nights,
          held,
          median(),
          worst());
    }

    Column and(Column other) {
      Column both = new Column();
      both.nights = nights + other.nights;
      both.told = told + other.told;
      both.held = held + other.held;
      both.errors.addAll(errors);
      both.errors.addAll(other.errors);
      return both;
    }
  }

  private static void add(
      Map<String, Column> rows,
      String name,
      Optional<Estimate> estimate,
      double truth,
      double scale) {
    rows.computeIfAbsent(name, n -> new Column()).add(estimate, truth, scale);
  }

  /**
   * Plays and judges.
   *
   * @param arguments file to write; nights of each world (default 40); first seed (default 1);
   *     begins of the worlds' names, with commas (default all)
   */
  public static void main(String[] arguments) throws Exception {
    Path file = Path.of(arguments.length > 0 ? arguments[0] : "reports/other-worlds.md");
    int nights = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 40;
    int first = arguments.length > 2 ? Integer.parseInt(arguments[2]) : 1;
    String begins = arguments.length > 3 ? arguments[3] : "";
    StringBuilder text = new StringBuilder(introduction(nights, first));
    Map<String, Column> pooled = new LinkedHashMap<>();
    for (World world : World.values()) {
      if (Stream.of(begins.split(",", -1)).noneMatch(world.name()::startsWith)) {
        continue;
      }
      Map<String, Column> rows = new LinkedHashMap<>();
      for (int seed = first; seed < first + nights; seed++) {
        judge(world.night(seed), rows);
      }
      String title = world.name().toLowerCase(Locale.ROOT).replace('_', ' ');
      text.append("\n## ").append(title).append('\n').append(HEAD);
      rows.forEach(
          (name, row) -> {
            text.append(row.text(name));
            pooled.merge(name, row, Column::and);
          });
      Files.writeString(
          file, (text + pooled(pooled)).replace("\r\n", "\n"), StandardCharsets.UTF_8);
    }
  }

  /** All worlds together, beside what chance makes of 95 %. */
  private static String pooled(Map<String, Column> rows) {
    StringBuilder text =
        new StringBuilder("\n## all of them\n" + HEAD.replace("| told |", "| told (band) |"));
    rows.forEach(
        (name, row) -> {
          BinomialDistribution held = new BinomialDistribution(null, row.nights, 0.95);
          text.append(
              row.text(
                  String.format(
                      Locale.ROOT,
                      "%s (95 %% of the nights: %d to %d by chance)",
                      name,
                      held.inverseCumulativeProbability(0.025),
                      held.inverseCumulativeProbability(0.975))));
        });
    return text.toString();
  }

  private static String introduction(int nights, int first) {
    return String.format(
        Locale.ROOT,
        """
        # Figures against the truth of other worlds

        Written by `OtherWorldsTable` (its command is in DEVELOPERS.md): %d nights of each world of the second simulator,
        seeds from %d on, logs rounded as programs write them. An interval of 95 %% is held where it holds the truth; nights
        on which a figure was not told count as not held. Errors are shares of the truth for response, amplitude, period
        and noise, arcsec/min for drift, arcsec for play and sticking. Response, amplitude, period and noise in right ascension are those of all
        runs together; drift and all of declination those of the run with most frames. An axis that sticks is told as
        play here: where it lets go in these worlds a rest stays wound up, which the model of sticking does not know.
        """,
        nights,
        first);
  }

  private static void judge(WorldNight night, Map<String, Column> rows) throws Exception {
    Path log = Files.createTempFile("night", ".ecsv");
    Path equipmentFile = Files.createTempFile("equipment", ".toml");
    Files.writeString(log, night.guideTable(WorldNight.Precision.ROUNDED), StandardCharsets.UTF_8);
    Files.writeString(equipmentFile, night.equipment(), StandardCharsets.UTF_8);
    List<GuideRun> runs = GuideTableReader.read(log).runs();
    Equipment equipment = EquipmentReader.read(equipmentFile);
    Files.delete(log);
    Files.delete(equipmentFile);
    AxisNight ofRa = AxisNight.ra(runs, equipment);
    AxisNight ofDec = AxisNight.dec(runs, equipment);
    int longest = longest(runs);
    GuideRun run = runs.get(longest);
    double declared = GuideRate.declaredAxis(run, equipment).value().orElseThrow();
    Truth truth = night.truth();
    Truth.Run of = truth.runs().get(longest);
    Optional<AxisMotion> ra = ofRa.runs().get(longest).value();
    Optional<AxisKnowledge> raKnown = ra.map(AxisMotion::known);
    double response = truth.ra().meanArcsecPerSecond();
    add(
        rows,
        "RA response",
        raKnown.map(k -> k.strength().times(declared).estimate()),
        response,
        response);
    double worm = truth.gears().get(0).periodSeconds();
    double amplitude = truth.wormAmplitudeArcsecAxis();
    if (amplitude > 0) {
      Optional<Integer> family = raKnown.flatMap(k -> k.nearest(worm, 0.2));
      add(
          rows,
          "worm amplitude",
          family.map(f -> raKnown.get().amplitudeArcsecAxis(f).estimate()),
          amplitude,
          amplitude);
      add(
          rows,
          "worm period",
          family.map(f -> raKnown.get().periodSeconds(f).estimate()),
          worm,
          worm);
    }
    Truth.Axes steady = of.steadyDriftArcsecPerMinuteSky();
    Truth.Axes bend = of.bendArcsecPerMinuteSky();
    Truth.Axes drift =
        truth.inLoggedAxes(new Truth.Axes(steady.ra() + bend.ra(), steady.dec() + bend.dec()));
    add(
        rows,
        "RA drift",
        raKnown.flatMap(k -> k.driftArcsecPerMinuteSky(run.id())).map(Figure::estimate),
        drift.ra(),
        1);
    double noise = truth.noiseArcsec().ra();
    add(rows, "RA noise", raKnown.map(k -> k.noiseArcsec().estimate()), noise, noise);
    Optional<AxisMotion> dec = ofDec.runs().get(longest).value();
    Optional<AxisKnowledge> decKnown = dec.map(AxisMotion::known);
    double decResponse = truth.dec().meanArcsecPerSecond();
    add(
        rows,
        "Dec response",
        decKnown.map(k -> k.strength().times(declared).estimate()),
        decResponse,
        decResponse);
    add(
        rows,
        "Dec drift",
        decKnown.flatMap(k -> k.driftArcsecPerMinuteSky(run.id())).map(Figure::estimate),
        drift.dec(),
        1);
    add(
        rows,
        "Dec noise",
        dec.map(AxisMotion::noiseArcsec),
        of.noiseArcsec().dec(),
        of.noiseArcsec().dec());
    boolean sticks = truth.decStickArcsec() > 0;
    add(
        rows,
        sticks ? "sticking" : "play",
        decKnown
            .flatMap(sticks ? AxisKnowledge::stickingArcsecAxis : AxisKnowledge::playArcsecAxis)
            .map(Figure::estimate),
        sticks ? truth.decStickArcsec() : truth.decPlayArcsec(),
        1);
  }

  private static int longest(List<GuideRun> runs) {
    return Stream.iterate(0, i -> i + 1)
        .limit(runs.size())
        .max(Comparator.comparingInt(i -> runs.get(i).frames().size()))
        .orElseThrow();
  }
}
