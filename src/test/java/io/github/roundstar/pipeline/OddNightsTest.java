package io.github.roundstar.pipeline;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.results.NightJson;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * However short, gappy, coarse or dull a log is, it gives a report and a JSON result whose figures
 * are finite or null, and never a fault. The logs are drawn at random from fixed seeds.
 */
class OddNightsTest {
  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(ints = {0, 20, 40, 60})
  void everyOddLogIsAnalysed(int firstSeed) throws Exception {
    for (int seed = firstSeed; seed < firstSeed + 20; seed++) {
      Random random = new Random(seed);
      analyse(log(random), random.nextBoolean());
    }
  }

  /** Of its frames so few are steady that they lie on a sinusoid to the last bit. */
  @Test
  void aStarHardlyEverSeenIsAnalysed() throws Exception {
    try (InputStream log = getClass().getResourceAsStream("star-hardly-seen.ecsv")) {
      analyse(new String(log.readAllBytes(), UTF_8), true);
    }
  }

  /** An even grid of the cadence over the whole span would not fit into the memory. */
  @Test
  void burstsOfFramesHoursApartAreAnalysed() throws Exception {
    Random random = new Random(5);
    StringBuilder text = new StringBuilder("time,ra_offset,dec_offset,ra_pulse,dec_pulse\n");
    for (int i = 0; i < 60; i++) {
      double seconds = 18_000 * (i / 3) + 0.001 * (i % 3);
      text.append(number(seconds, 1000)).append(',').append(number(random.nextGaussian(), 1000));
      text.append(',').append(number(random.nextGaussian(), 1000)).append(",0,0\n");
    }
    analyse(text.toString(), true);
  }

  private void analyse(String text, boolean withEquipment) throws Exception {
    Path log = Files.writeString(folder.resolve("odd.csv"), text, UTF_8);
    Optional<Path> equipment = Optional.of(Path.of("sample-logs/equipment.toml"));
    AnalysisOutcome outcome =
        Analysis.run(
            new AnalysisJob(
                List.of(log.toString()),
                equipment.filter(any -> withEquipment),
                Optional.empty(),
                folder.resolve("out"),
                Optional.empty(),
                true,
                "test"));
    assertThat(outcome.faults()).isEmpty();
    // No frame need be usable, but then it is said.
    assertThat(outcome.nights().size() + outcome.unusable().size()).isPositive();
    for (FinishedNight night : outcome.nights()) {
      assertThat(night.withoutCharts()).isEmpty();
      assertThat(NightJson.read(Files.readAllBytes(night.json())).night().frames())
          .isEqualTo(night.result().night().frames());
    }
  }

  private static String log(Random random) {
    boolean pulses = random.nextInt(4) > 0;
    boolean still = random.nextInt(4) == 0;
    double round = random.nextInt(3) == 0 ? 1 : 1000;
    double amplitude = random.nextInt(3) == 0 ? 0 : Math.exp(6 * random.nextGaussian() / 2);
    double[] cadences = {0.01, 0.5, 3, 3, 3, 600};
    double cadence = cadences[random.nextInt(cadences.length)];
    int size = random.nextInt(3) == 0 ? 1 + random.nextInt(20) : 1 + random.nextInt(400);
    int perRun = random.nextInt(3) == 0 ? 1 + random.nextInt(30) : 1000;
    double gapShare = random.nextInt(2) == 0 ? 0 : 0.1 * random.nextDouble();
    double lostShare = random.nextInt(2) == 0 ? 0 : random.nextDouble();
    StringBuilder text = new StringBuilder();
    text.append("# %ECSV 1.0\n# ---\n# delimiter: ','\n# datatype:\n");
    String[] names = {"time", "ra_offset", "dec_offset", "run", "event", "ra_pulse", "dec_pulse"};
    int columns = pulses ? 7 : 5;
    for (int c = 0; c < columns; c++) {
      text.append("# - {name: ").append(names[c]).append(", datatype: float64}\n");
    }
    text.append("# meta: {declination: ").append(random.nextInt(181) - 90);
    if (random.nextBoolean()) {
      text.append(", guide_rate: 0.5");
    }
    if (random.nextBoolean()) {
      text.append(", guide_exposure: ").append(cadence / 2);
    }
    if (random.nextBoolean()) {
      text.append(", start: '2026-10-08T20:00:00Z'");
    }
    text.append("}\n").append(String.join(",", List.of(names).subList(0, columns))).append('\n');
    double time = 0;
    for (int i = 0; i < size; i++) {
      time += cadence;
      if (random.nextDouble() < gapShare) {
        time += cadence * Math.exp(8 * random.nextDouble());
      }
      boolean lost = random.nextDouble() < lostShare;
      double ra = 0.4 * random.nextGaussian() + amplitude * Math.sin(i * 0.05);
      double dec = 0.4 * random.nextGaussian();
      text.append(number(time, 1000)).append(',');
      text.append(lost ? "" : still ? "0.5" : number(ra, round)).append(',');
      text.append(lost ? "" : still ? "0.5" : number(dec, round)).append(',');
      text.append(i / perRun).append(',');
      text.append(
          random.nextInt(30) == 0
              ? new String[] {"dither", "settling", "lost", "idle", "flip", "note: x"}
                  [random.nextInt(6)]
              : "");
      if (pulses) {
        text.append(',').append(still ? 0 : (int) (-ra * 60)).append(',');
        text.append(still ? 0 : (int) (-dec * 60));
      }
      text.append('\n');
    }
    return text.toString();
  }

  private static String number(double value, double round) {
    return String.format(Locale.ROOT, "%.3f", Math.rint(value * round) / round);
  }
}
