package io.github.roundstar.diagnosis;

import io.github.roundstar.ingest.EquipmentReader;
import io.github.roundstar.ingest.GuideTableReader;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.motion.AxisKnowledge;
import io.github.roundstar.motion.CosDec;
import io.github.roundstar.motion.DecMotion;
import io.github.roundstar.motion.GuideRate;
import io.github.roundstar.motion.MountKnowledge;
import io.github.roundstar.motion.RaMotion;
import io.github.roundstar.motion.Response;
import io.github.roundstar.motion.Tone;
import io.github.roundstar.motion.posterior.Figure;
import io.github.roundstar.results.Faults;
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

      | figure | told | interval held | median error | largest error | chain: told | chain: held | chain: median error |
      |---|---|---|---|---|---|---|---|
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

  /** The same figure by the posterior and by the chain of estimators. */
  private static final class Row {
    Column posterior = new Column();
    Column chain = new Column();

    String text(String name) {
      return String.format(
          Locale.ROOT,
          "| %s | %d of %d | %d | %.4f | %.4f | %d | %d | %.4f |%n",
          name,
          posterior.told,
          posterior.nights,
          posterior.held,
          posterior.median(),
          posterior.worst(),
          chain.told,
          chain.held,
          chain.median());
    }

    void add(Row other) {
      posterior = posterior.and(other.posterior);
      chain = chain.and(other.chain);
    }
  }

  private static void add(
      Map<String, Row> rows,
      String name,
      Optional<Figure> figure,
      Optional<Estimate> chain,
      double truth,
      double scale) {
    Row row = rows.computeIfAbsent(name, n -> new Row());
    row.posterior.add(figure.map(Figure::estimate), truth, scale);
    row.chain.add(chain, truth, scale);
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
    Map<String, Row> pooled = new LinkedHashMap<>();
    for (World world : World.values()) {
      if (Stream.of(begins.split(",", -1)).noneMatch(world.name()::startsWith)) {
        continue;
      }
      Map<String, Row> rows = new LinkedHashMap<>();
      for (int seed = first; seed < first + nights; seed++) {
        judge(world.night(seed), rows);
      }
      String title = world.name().toLowerCase(Locale.ROOT).replace('_', ' ');
      text.append("\n## ").append(title).append('\n').append(HEAD);
      rows.forEach(
          (name, row) -> {
            text.append(row.text(name));
            pooled.computeIfAbsent(name, n -> new Row()).add(row);
          });
      Files.writeString(
          file, (text + pooled(pooled)).replace("\r\n", "\n"), StandardCharsets.UTF_8);
    }
  }

  /** All worlds together, beside what chance makes of 95 %. */
  private static String pooled(Map<String, Row> rows) {
    StringBuilder text =
        new StringBuilder("\n## all of them\n" + HEAD.replace("| told |", "| told (band) |"));
    rows.forEach(
        (name, row) -> {
          BinomialDistribution held = new BinomialDistribution(null, row.posterior.nights, 0.95);
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
        runs together; drift and all of declination those of the run with most frames. "Chain" is the chain of estimators that
        reports are made with today, on that same run.
        """,
        nights,
        first);
  }

  private static void judge(WorldNight night, Map<String, Row> rows) throws Exception {
    Path log = Files.createTempFile("night", ".ecsv");
    Path equipmentFile = Files.createTempFile("equipment", ".toml");
    Files.writeString(log, night.guideTable(WorldNight.Precision.ROUNDED), StandardCharsets.UTF_8);
    Files.writeString(equipmentFile, night.equipment(), StandardCharsets.UTF_8);
    List<GuideRun> runs = GuideTableReader.read(log).runs();
    Equipment equipment = EquipmentReader.read(equipmentFile);
    Files.delete(log);
    Files.delete(equipmentFile);
    MountKnowledge known = MountKnowledge.of(runs, equipment);
    int longest = longest(runs);
    GuideRun run = runs.get(longest);
    RunStudy chain = RunStudy.of(run, equipment, "/runs/0", new Faults());
    double declared = GuideRate.declaredAxis(run, equipment).value().orElseThrow();
    Truth truth = night.truth();
    Truth.Run of = truth.runs().get(longest);
    Optional<AxisKnowledge> ra = known.ra().value();
    Optional<Response> raChain = chain.ra().value().flatMap(RaMotion::response);
    double response = truth.ra().meanArcsecPerSecond();
    add(
        rows,
        "RA response",
        ra.map(AxisKnowledge::responseArcsecPerSecondAxis),
        raChain.filter(Response::informative).flatMap(Response::both).map(r -> r.times(declared)),
        response,
        response);
    double worm = truth.gears().get(0).periodSeconds();
    double amplitude = truth.wormAmplitudeArcsecAxis();
    if (amplitude > 0) {
      Optional<Integer> family = ra.flatMap(k -> k.nearest(worm, 0.2));
      Optional<Tone> tone =
          chain.periodicAtAxis().value().stream()
              .flatMap(found -> found.tones().stream())
              .filter(t -> Math.abs(t.periodSeconds().value() / worm - 1) < 0.2)
              .findFirst();
      add(
          rows,
          "worm amplitude",
          family.map(f -> ra.get().amplitudeArcsecAxis(f)),
          tone.map(Tone::amplitudeArcsecAxis),
          amplitude,
          amplitude);
      add(
          rows,
          "worm period",
          family.map(f -> ra.get().periodSeconds(f)),
          tone.map(Tone::periodSeconds),
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
        ra.flatMap(k -> k.driftArcsecPerMinuteSky(run.id())),
        chain.raDriftSky().value(),
        drift.ra(),
        1);
    double noise = truth.noiseArcsec().ra();
    add(
        rows,
        "RA noise",
        ra.map(AxisKnowledge::noiseArcsec),
        raChain
            .flatMap(Response::noiseArcsec)
            .map(n -> n.times(CosDec.of(run).value().orElse(1.0))),
        noise,
        noise);
    Optional<AxisKnowledge> dec = known.dec().get(longest).value();
    Optional<Response> decChain = chain.dec().value().flatMap(DecMotion::response);
    double decResponse = truth.dec().meanArcsecPerSecond();
    add(
        rows,
        "Dec response",
        dec.map(AxisKnowledge::responseArcsecPerSecondAxis),
        decChain.filter(Response::informative).flatMap(Response::both).map(r -> r.times(declared)),
        decResponse,
        decResponse);
    add(
        rows,
        "Dec drift",
        dec.flatMap(k -> k.driftArcsecPerMinuteSky(run.id())),
        chain.decDrift().value(),
        drift.dec(),
        1);
    add(
        rows,
        "Dec noise",
        dec.map(AxisKnowledge::noiseArcsec),
        decChain.flatMap(Response::noiseArcsec),
        of.noiseArcsec().dec(),
        of.noiseArcsec().dec());
    boolean sticks = truth.decStickArcsec() > 0;
    add(
        rows,
        sticks ? "sticking" : "play",
        dec.flatMap(sticks ? AxisKnowledge::stickingArcsecAxis : AxisKnowledge::playArcsecAxis),
        decChain
            .filter(Response::informative)
            .flatMap(
                r ->
                    sticks
                        ? chain
                            .dec()
                            .then(DecMotion::sticking)
                            .value()
                            .flatMap(s -> r.both().map(s::arcsec))
                        : chain
                            .dec()
                            .value()
                            .flatMap(DecMotion::backlash)
                            .flatMap(b -> b.arcsec(r))),
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
