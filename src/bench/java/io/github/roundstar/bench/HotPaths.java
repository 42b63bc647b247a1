package io.github.roundstar.bench;

import io.github.roundstar.diagnosis.NightAnalysis;
import io.github.roundstar.ingest.LogReader;
import io.github.roundstar.ingest.NightGrouping;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.GuideLog;
import io.github.roundstar.model.Night;
import io.github.roundstar.signal.FrequencyGrid;
import io.github.roundstar.signal.Periodogram;
import io.github.roundstar.signal.Series;
import io.github.roundstar.signal.WanderNoise;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/** Milliseconds per call, warm, of the paths that a night of 18,000 frames goes through. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class HotPaths {
  private static final int FRAMES = 18_000;
  private static final double CADENCE_SECONDS = 2;

  private Path log;
  private Night night;
  private double[] seconds;
  private double[] arcsec;
  private boolean[] starts;
  private FrequencyGrid grid;

  /** Writes a log of a worm, wander and noise, in an invented scenario. */
  @Setup
  public void prepare() throws Exception {
    SplittableRandom random = new SplittableRandom(18);
    seconds = new double[FRAMES];
    arcsec = new double[FRAMES];
    starts = new boolean[FRAMES];
    starts[0] = true;
    StringBuilder text = new StringBuilder("time,ra_offset,dec_offset,ra_pulse,dec_pulse\n");
    double wander = 0;
    for (int i = 0; i < FRAMES; i++) {
      seconds[i] = i * CADENCE_SECONDS;
      wander += 0.02 * random.nextGaussian();
      arcsec[i] =
          3 * Math.sin(2 * Math.PI * seconds[i] / 479) + wander + 0.4 * random.nextGaussian();
      text.append(seconds[i]).append(',').append(arcsec[i]).append(',').append(wander);
      text.append(",0,0\n");
    }
    log = Files.createTempFile("hot-paths", ".csv");
    Files.writeString(log, text);
    GuideLog read = LogReader.read(log, Optional.empty());
    night =
        NightGrouping.group(List.of(read), OptionalDouble.empty(), Optional.empty())
            .nights()
            .get(0);
    grid = FrequencyGrid.between(1 / (FRAMES * CADENCE_SECONDS), 0.25 / CADENCE_SECONDS, 16_384);
  }

  /** Removes the log. */
  @TearDown
  public void remove() throws IOException {
    Files.deleteIfExists(log);
  }

  /** Rows of a guide table to frames. */
  @Benchmark
  public GuideLog parse() throws Exception {
    return LogReader.read(log, Optional.empty());
  }

  /** Power of 16,384 frequencies. */
  @Benchmark
  public Periodogram periodogram() {
    return Periodogram.of(Series.of(seconds, arcsec), grid);
  }

  /** Wander and noise by restricted maximum likelihood. */
  @Benchmark
  public Optional<WanderNoise> stateSpaceFit() {
    return WanderNoise.fit(seconds, starts, arcsec, new double[0][]);
  }

  /** All figures of a night without guiding. */
  @Benchmark
  public NightAnalysis wholeNight() {
    return NightAnalysis.of(night, Equipment.UNKNOWN, "bench", true);
  }
}
