package io.github.roundstar.diagnosis;

import io.github.roundstar.ingest.EquipmentReader;
import io.github.roundstar.ingest.GuideTableReader;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.motion.AxisKnowledge;
import io.github.roundstar.motion.MountKnowledge;
import io.github.roundstar.motion.posterior.Figure;
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

/**
 * Figures against the truth of other worlds: nights of a second simulator that shares nothing with
 * the estimators. Counted over all nights of a world. Not a test: a program.
 */
public final class OtherWorldsTable {
  private OtherWorldsTable() {}

  /** One figure in one world. */
  private static final class Column {
    int nights;
    int told;
    int held;
    final List<Double> errors = new ArrayList<>();
    final StringBuilder missed = new StringBuilder();

    void add(Optional<Estimate> estimate, double truth, double scale, long seed, double learned) {
      nights++;
      if (estimate.isPresent()) {
        told++;
        boolean holds = estimate.get().covers(truth);
        held += holds ? 1 : 0;
        errors.add(Math.abs(estimate.get().value() - truth) / scale);
        if (!holds) {
          missed.append(
              String.format(
                  Locale.ROOT,
                  " %d:%.4g[%.4g,%.4g]/%.4g",
                  seed,
                  estimate.get().value(),
                  estimate.get().lo95(),
                  estimate.get().hi95(),
                  truth));
        }
      }
    }

    double median() {
      double[] sorted = errors.stream().mapToDouble(e -> e).sorted().toArray();
      return sorted.length == 0 ? Double.NaN : sorted[sorted.length / 2];
    }

    double worst() {
      return errors.stream().mapToDouble(e -> e).max().orElse(Double.NaN);
    }
  }

  private static void add(
      Map<String, Column> columns,
      String name,
      Optional<Figure> figure,
      double truth,
      double scale,
      long seed) {
    columns
        .computeIfAbsent(name, n -> new Column())
        .add(
            figure.map(Figure::estimate),
            truth,
            scale,
            seed,
            figure.map(Figure::learned).orElse(0.0));
  }

  /**
   * Plays and judges.
   *
   * @param arguments nights of each world; first seed; begin of the worlds' names (default all)
   */
  public static void main(String[] arguments) throws Exception {
    int nights = Integer.parseInt(arguments[0]);
    int first = Integer.parseInt(arguments[1]);
    String begin = arguments.length > 2 ? arguments[2] : "";
    Map<String, int[]> pooled = new LinkedHashMap<>();
    for (World world : World.values()) {
      if (!Stream.of(begin.split(",")).anyMatch(world.name()::startsWith)) {
        continue;
      }
      Map<String, Column> columns = new LinkedHashMap<>();
      long began = System.nanoTime();
      for (int seed = first; seed < first + nights; seed++) {
        judge(world.night(seed), columns);
      }
      System.out.printf("%s (%.1f s)%n", world, (System.nanoTime() - began) / 1e9);
      columns.forEach(
          (name, c) -> {
            System.out.printf(
                Locale.ROOT,
                "  %-12s told %d held %d of %d, median error %.4f, worst %.4f %s%n",
                name,
                c.told,
                c.held,
                c.nights,
                c.median(),
                c.worst(),
                c.missed);
            int[] sums = pooled.computeIfAbsent(name, n -> new int[3]);
            sums[0] += c.nights;
            sums[1] += c.told;
            sums[2] += c.held;
          });
    }
    pooled.forEach(
        (name, s) ->
            System.out.printf("POOLED %-12s told %d held %d of %d%n", name, s[1], s[2], s[0]));
  }

  private static void judge(WorldNight night, Map<String, Column> columns) throws Exception {
    Path log = Files.createTempFile("night", ".ecsv");
    Path equipmentFile = Files.createTempFile("equipment", ".toml");
    Files.writeString(log, night.guideTable(WorldNight.Precision.ROUNDED), StandardCharsets.UTF_8);
    Files.writeString(equipmentFile, night.equipment(), StandardCharsets.UTF_8);
    List<GuideRun> runs = GuideTableReader.read(log).runs();
    Equipment equipment = EquipmentReader.read(equipmentFile);
    Files.delete(log);
    Files.delete(equipmentFile);
    MountKnowledge known = MountKnowledge.of(runs, equipment);
    Truth truth = night.truth();
    long seed = night.seed();
    Optional<AxisKnowledge> ra = known.ra().value();
    add(
        columns,
        "RA response",
        ra.map(AxisKnowledge::responseArcsecPerSecondAxis),
        truth.ra().meanArcsecPerSecond(),
        truth.ra().meanArcsecPerSecond(),
        seed);
    double worm = truth.gears().get(0).periodSeconds();
    double amplitude = truth.wormAmplitudeArcsecAxis();
    Optional<Integer> family = ra.flatMap(k -> k.nearest(worm, 0.2));
    if (amplitude > 0) {
      add(
          columns,
          "amplitude",
          family.map(f -> ra.get().amplitudeArcsecAxis(f)),
          amplitude,
          amplitude,
          seed);
      add(columns, "period", family.map(f -> ra.get().periodSeconds(f)), worm, worm, seed);
    }
    int longest = longest(runs);
    GuideRun run = runs.get(longest);
    Truth.Run of = truth.runs().get(longest);
    Truth.Axes steady = of.steadyDriftArcsecPerMinuteSky();
    Truth.Axes bend = of.bendArcsecPerMinuteSky();
    Truth.Axes drift =
        truth.inLoggedAxes(new Truth.Axes(steady.ra() + bend.ra(), steady.dec() + bend.dec()));
    add(
        columns,
        "RA drift",
        ra.flatMap(k -> k.driftArcsecPerMinuteSky(run.id())),
        drift.ra(),
        1,
        seed);
    add(
        columns,
        "RA noise",
        ra.map(AxisKnowledge::noiseArcsec),
        truth.noiseArcsec().ra(),
        truth.noiseArcsec().ra(),
        seed);
    Optional<AxisKnowledge> dec = known.dec().get(longest).value();
    add(
        columns,
        "Dec response",
        dec.map(AxisKnowledge::responseArcsecPerSecondAxis),
        truth.dec().meanArcsecPerSecond(),
        truth.dec().meanArcsecPerSecond(),
        seed);
    add(
        columns,
        "Dec drift",
        dec.flatMap(k -> k.driftArcsecPerMinuteSky(run.id())),
        drift.dec(),
        1,
        seed);
    add(
        columns,
        "Dec noise",
        dec.map(AxisKnowledge::noiseArcsec),
        of.noiseArcsec().dec(),
        of.noiseArcsec().dec(),
        seed);
    if (truth.decStickArcsec() > 0) {
      add(
          columns,
          "sticking",
          dec.flatMap(AxisKnowledge::stickingArcsecAxis),
          truth.decStickArcsec(),
          1,
          seed);
    } else {
      add(
          columns,
          "play",
          dec.flatMap(AxisKnowledge::playArcsecAxis),
          truth.decPlayArcsec(),
          1,
          seed);
    }
  }

  private static int longest(List<GuideRun> runs) {
    return Stream.iterate(0, i -> i + 1)
        .limit(runs.size())
        .max(Comparator.comparingInt(i -> runs.get(i).frames().size()))
        .orElseThrow();
  }
}
