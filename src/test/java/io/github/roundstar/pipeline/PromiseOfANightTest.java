package io.github.roundstar.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.results.NightJson;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.PromiseKept;
import io.github.roundstar.results.Usual;
import io.github.roundstar.simulate.GuideTableWriter;
import io.github.roundstar.simulate.ScenarioReader;
import io.github.roundstar.simulate.Simulation;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The whole way: a simulated night with a fault, its steps, and a later night of the same mount on
 * which they were taken or not. What counts as an earlier night hangs on logs and dates alone, so
 * that the order of work, later nights and a second call change no byte.
 */
@Tag("identity")
class PromiseOfANightTest {
  private static final Path EQUIPMENT = Path.of("sample-logs/equipment.toml");

  /** Of this test's nights; each failure prints it. */
  private static final long SEED = 20_261_201;

  @TempDir Path folder;

  /** A night of the same invented mount, whose worm is out of true. */
  private record Plan(
      String date, double gain, double wormArcsec, double noiseArcsec, int minutes) {
    Plan(String date, double gain, double wormArcsec, double noiseArcsec) {
      this(date, gain, wormArcsec, noiseArcsec, 120);
    }

    Path log(Path folder, long seed) throws Exception {
      String text =
          Files.readString(Path.of("sample-logs/strong-periodic-error.scenario.toml"))
              .replaceFirst("seed = \\d+", "seed = " + seed)
              .replaceFirst("start = \"[0-9-]+T", "start = \"" + date + "T")
              .replaceFirst("gain = 0.4", "gain = " + gain)
              .replace("amplitude_arcsec = 6.0", "amplitude_arcsec = " + wormArcsec)
              .replace("duration_min = 120", "duration_min = " + minutes)
              .replace("white_arcsec = 0.28", "white_arcsec = " + noiseArcsec);
      Path scenario = Files.writeString(folder.resolve(date + ".scenario.toml"), text);
      StringBuilder log = new StringBuilder();
      GuideTableWriter.write(Simulation.run(ScenarioReader.read(scenario)), log);
      return Files.writeString(folder.resolve("night-" + date + ".ecsv"), log);
    }
  }

  private static final Plan FAULT = new Plan("2026-10-11", 0.4, 6, 0.28);

  private static AnalysisOutcome analysed(Path out, Path... logs) throws Exception {
    return Analysis.run(
        new AnalysisJob(
            Stream.of(logs).map(Path::toString).toList(),
            Optional.of(EQUIPMENT),
            Optional.empty(),
            out,
            Optional.empty(),
            true,
            "test"));
  }

  private static NightResult only(AnalysisOutcome outcome) {
    assertThat(outcome.faults()).isEmpty();
    return outcome.nights().get(outcome.nights().size() - 1).result();
  }

  private static Path[] logs(Path folder, long seed, Plan... plans) throws Exception {
    SplittableRandom seeds = new SplittableRandom(seed);
    List<Path> logs = new ArrayList<>();
    for (Plan plan : plans) {
      logs.add(plan.log(folder, seeds.nextInt(1_000_000)));
    }
    return logs.toArray(Path[]::new);
  }

  private PromiseKept after(Plan later, long seed) throws Exception {
    Path[] logs = logs(folder, seed, FAULT, later);
    Path out = folder.resolve("out");
    NightResult first = only(analysed(out, logs[0]));
    assertThat(first.steps()).as("seed %d", seed).isNotEmpty();
    assertThat(first.promised().cures()).hasSameSizeAs(first.steps());
    NightResult second = only(analysed(out, logs[1]));
    assertThat(second.kept()).as("seed %d", seed).isNotNull();
    assertThat(second.kept().night()).isEqualTo("2026-10-11");
    return second.kept();
  }

  @Test
  void theGainOnceRaisedKeepsWhatItPromised() throws Exception {
    PromiseKept kept = after(new Plan("2026-10-14", 0.8, 6, 0.28), SEED);
    assertThat(kept.word()).as("seed %d: %s", SEED, kept.text()).isEqualTo(PromiseKept.KEPT);
    assertThat(kept.steps().get(0).done()).isEqualTo(PromiseKept.Step.DONE);
  }

  @Test
  void theGainLeftAsItWasIsNotDone() throws Exception {
    PromiseKept kept = after(new Plan("2026-10-14", 0.4, 6, 0.28), SEED + 1);
    assertThat(kept.word())
        .as("seed %d: %s", SEED + 1, kept.text())
        .isEqualTo(PromiseKept.NOT_DONE);
    assertThat(kept.text()).contains("RA gain 0.40, not 0.");
  }

  @Test
  void theGainRaisedWhileTheWormGotWorseIsNotKeptAndTheWormIsNamed() throws Exception {
    PromiseKept kept = after(new Plan("2026-10-14", 0.8, 25, 0.28), SEED + 2);
    assertThat(kept.word())
        .as("seed %d: %s", SEED + 2, kept.text())
        .isEqualTo(PromiseKept.NOT_KEPT);
    assertThat(kept.text()).contains("done, but", "Meanwhile periodic error");
  }

  @Test
  void theGainRaisedUnderMuchWorseAirIsNotBlamed() throws Exception {
    PromiseKept kept = after(new Plan("2026-10-14", 0.8, 6, 0.9), SEED + 3);
    assertThat(kept.word())
        .as("seed %d: %s", SEED + 3, kept.text())
        .isIn(PromiseKept.CANNOT_TELL, PromiseKept.KEPT);
  }

  private static TreeMap<String, String> contents(Path out) throws Exception {
    TreeMap<String, String> contents = new TreeMap<>();
    try (Stream<Path> files = Files.list(out)) {
      for (Path file : files.filter(f -> !f.endsWith("nights.html")).toList()) {
        contents.put(String.valueOf(file.getFileName()), Files.readString(file));
      }
    }
    return contents;
  }

  /** Five short nights: all at once, all at once again, one by one, and the third again at last. */
  @Test
  void orderOfWorkAndLaterNightsChangeNoByte() throws Exception {
    Plan[] plans = new Plan[5];
    for (int i = 0; i < plans.length; i++) {
      plans[i] = new Plan("2026-10-" + (11 + i), i % 2 == 0 ? 0.4 : 0.8, 6, 0.28, 40);
    }
    Path[] logs = logs(folder, SEED + 4, plans);
    Path together = folder.resolve("together");
    analysed(together, logs);
    TreeMap<String, String> first = contents(together);
    NightResult last = NightJson.read(Files.readAllBytes(together.resolve("2026-10-15.json")));
    assertThat(last.usual().nights()).isEqualTo(4);
    assertThat(last.usual().figures())
        .extracting(Usual.Figure::key)
        .contains("round-share", "rms-radial", "periodic-peak-to-peak", "noise-floor");
    assertThat(last.kept().night()).isEqualTo("2026-10-13");

    analysed(together, logs);
    assertThat(contents(together)).as("again").isEqualTo(first);
    Path alone = folder.resolve("alone");
    for (Path log : logs) {
      analysed(alone, log);
    }
    assertThat(contents(alone)).as("one by one").isEqualTo(first);
    analysed(alone, logs[2]);
    assertThat(contents(alone)).as("the third again, later ones beside it").isEqualTo(first);
  }

  @Test
  void aDamagedResultCostsAWarningAndNoNight() throws Exception {
    Path[] logs = logs(folder, SEED + 5, FAULT, new Plan("2026-10-14", 0.8, 6, 0.28));
    Path out = folder.resolve("out");
    analysed(out, logs[0]);
    Files.writeString(out.resolve("2026-10-12.json"), "{\"schema\": \"roundstar.night/1\", \"ni");
    Files.writeString(out.resolve("2026-10-20.json"), "later, and so never looked at");
    Files.writeString(out.resolve("notes.json"), "the user's own, and so never looked at");
    AnalysisOutcome outcome = analysed(out, logs[1]);
    assertThat(outcome.warnings())
        .singleElement()
        .asString()
        .startsWith("2026-10-12.json: not a night's result that can be read");
    assertThat(only(outcome).kept().night()).isEqualTo("2026-10-11");
  }

  @Test
  void nightsOfAnotherMountAreNotTheUsersUsual() throws Exception {
    Path[] logs = logs(folder, SEED + 6, FAULT, new Plan("2026-10-14", 0.8, 6, 0.28));
    Path out = folder.resolve("out");
    analysed(out, logs[0]);
    Path json = out.resolve("2026-10-11.json");
    Files.writeString(json, Files.readString(json).replace("Larkfell 180", "Fenwick 90"));
    assertThat(only(analysed(out, logs[1])).kept()).isNull();
  }
}
