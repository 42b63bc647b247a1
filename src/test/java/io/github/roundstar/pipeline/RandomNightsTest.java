package io.github.roundstar.pipeline;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.results.Faults;
import io.github.roundstar.results.SeasonNight;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Nights of any kind end with a page that is well formed and a JSON file that its schema accepts;
 * so do the seasons and comparisons that are made of them. {@link RandomNights} plays more of them.
 */
@Tag("identity")
@Tag("slow")
class RandomNightsTest {
  @TempDir Path folder;

  @Test
  void nightsOfAnyKindHaveAPageAndFigures() throws Exception {
    RandomNights.Tally tally = RandomNights.play(1, 500, folder);

    assertThat(tally.failures()).isEmpty();
    assertThat(tally.pages()).isGreaterThan(490);
  }

  /**
   * Offsets rounded to one value, or left the same; an exposure of a few guide frames; a search
   * that never ended.
   */
  @Timeout(60)
  @ParameterizedTest
  @ValueSource(longs = {77, 107, 250, 410, 594, 768, 1968, 6499, 13063})
  void nightsThatOnceHadAFaultHaveNone(long seed) throws Exception {
    assertThat(RandomNights.play(seed, 1, folder).failures()).isEmpty();
  }

  /**
   * The last of evenly spaced knots, span * (n - 1) / (n - 1), falls a rounding error short of the
   * span on a few nights in a hundred; a night ended without a report then.
   */
  @Test
  void fourHoursAtAnUnevenCadenceOfFifteenSecondsHaveAPolarAxis() throws Exception {
    List<String> logs =
        LongStream.range(0, 400)
            .mapToObj(UnevenNight::log)
            .filter(RandomNightsTest::knotFallsShort)
            .limit(3)
            .toList();
    assertThat(logs).hasSize(3);
    for (String log : logs) {
      AnalysisOutcome outcome = analyse(log, folder.resolve("uneven"));
      assertThat(outcome.faults()).isEmpty();
      assertThat(outcome.nights()).hasSize(1);
      assertThat(outcome.nights().get(0).result().polarAxis()).isNotNull();
    }
  }

  private static boolean knotFallsShort(String log) {
    String last = log.strip().substring(log.strip().lastIndexOf('\n') + 1);
    double span = Double.parseDouble(last.substring(0, last.indexOf(',')));
    double knots = Math.ceil(span / 120);
    return span * knots / knots < span;
  }

  @Test
  void seasonsAndComparisonsOfSuchNightsAreWhole() throws Exception {
    Path logs = Files.createDirectories(folder.resolve("logs"));
    for (int day = 0; day < 16; day++) {
      Files.writeString(logs.resolve("n" + day + ".ecsv"), RandomNight.of(9000 + day, day).log());
    }
    Path out = folder.resolve("season");
    SeasonJob job =
        new SeasonJob(
            logs,
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            out,
            Optional.empty(),
            "test");
    SeasonOutcome season = SeasonRun.run(job, Progress.SILENT);
    assertThat(season.faults()).isEmpty();
    Soundness.check(season.index(), season.json(), "season");
    assertThat(season.analysed()).isGreaterThanOrEqualTo(16);
    for (SeasonNight night : season.result().nights()) {
      Soundness.check(out.resolve(night.report()), out.resolve(night.result()), "night");
    }
    byte[] first = Files.readAllBytes(season.json());
    SeasonOutcome again = SeasonRun.run(job, Progress.SILENT);
    assertThat(again.analysed()).isZero();
    assertThat(again.json()).hasBinaryContent(first);

    for (int split : new int[] {1, 5, 15}) {
      List<String> all =
          season.result().nights().stream()
              .map(night -> out.resolve(night.result()).toString())
              .toList();
      CompareOutcome compared =
          Compare.run(
              new CompareJob(
                  all.subList(0, split),
                  all.subList(split, all.size()),
                  Optional.empty(),
                  Optional.empty(),
                  folder.resolve("compared"),
                  Optional.empty(),
                  "test"));
      assertThat(compared.faults()).isEmpty();
      Soundness.check(compared.report(), compared.json(), "compare");
    }
  }

  @Test
  void starsOfSuchNightsAreMeasuredOrRefused() throws Exception {
    List<Path> images = new ArrayList<>();
    for (long seed = 700; images.size() < 20; seed++) {
      images.addAll(RandomNight.images(seed, 3, folder));
    }
    // One is cut off, one is no image at all.
    byte[] whole = Files.readAllBytes(images.get(0));
    images.add(Files.write(folder.resolve("cut.fits"), Arrays.copyOf(whole, whole.length / 2)));
    images.add(Files.write(folder.resolve("empty.fits"), new byte[0]));
    Faults faults = new Faults();
    List<StarImages.Measured> measured = StarImages.measure(images, faults);

    assertThat(faults.all()).isEmpty();
    assertThat(measured).hasSize(images.size());
    assertThat(measured.subList(0, 20)).allMatch(image -> image.shape().isPresent());
    assertThat(measured.subList(20, measured.size()))
        .allMatch(image -> image.shape().isPresent() || !image.problem().isEmpty());
    StarTables.write(folder.resolve("stars"), measured);
  }

  private AnalysisOutcome analyse(String log, Path place) throws Exception {
    Files.createDirectories(place);
    Path file = Files.writeString(place.resolve("night.ecsv"), log, UTF_8);
    return Analysis.run(
        new AnalysisJob(
            List.of(file.toString()),
            Optional.empty(),
            Optional.empty(),
            place.resolve("out"),
            Optional.empty(),
            true,
            "test"));
  }
}
