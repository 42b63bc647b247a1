package io.github.roundstar.pipeline;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.results.AxisScatter;
import io.github.roundstar.results.NightJson;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.RunResult;
import io.github.roundstar.simulate.GuideTableWriter;
import io.github.roundstar.simulate.ScenarioReader;
import io.github.roundstar.simulate.Simulation;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What is done to a log changes in the result exactly what it should and nothing else: every test
 * compares the whole JSON tree with that of the log as it was, but for the places it names.
 */
@Tag("identity")
class MetamorphicTest {
  private static final ObjectMapper MAPPER = new ObjectMapper();
  private static final Path EQUIPMENT = Path.of("sample-logs/equipment.toml");

  /** What names the file itself; it always changes. */
  private static final String FILE = "/inputs/*/(file|sha256|bytes)";

  /** Fits are iterated until they settle to 1e-10; offsets moved by a constant round anew. */
  private static final double ROUNDING = 2e-7;

  /**
   * The search for wander stops within 1e-4 of the logarithm of its share; where exactly is a
   * matter of rounding, and these figures hang on it to first order.
   */
  private static final String FROM_WANDER =
      ".*/(lo95|hi95|falseAlarm|detectable/[^/]+)|/polarAxis/.*";

  private static final double WANDER_ROUNDING = 1e-5;

  @TempDir Path folder;
  private int calls;

  private record Change(JsonNode before, JsonNode after) {}

  /** A night of two runs with dithers, worm and drift; offsets in arcsec with three decimals. */
  private static String night(int seed) throws Exception {
    String scenario =
        """
        [night]
        seed = SEED
        start = "2026-10-08T20:10:00+02:00"
        latitude_deg = 47
        guide_exposure_s = 2
        guide_scale = 2
        [polar_axis]
        azimuth_arcmin = 12
        [mount]
        guide_rate = 0.5
        worm_teeth = 180
        ra_wander_arcsec_per_root_s = 0.01
        dec_wander_arcsec_per_root_s = 0.01
        [[mount.harmonic]]
        order = 1
        amplitude_arcsec = 4
        [noise]
        white_arcsec = 0.4
        [loop.ra]
        gain = 0.6
        deadband_arcsec = 0.15
        [loop.dec]
        gain = 0.5
        deadband_arcsec = 0.3
        [dither]
        every_min = 12
        size_arcsec = 5
        settle_arcsec = 1.5
        [[run]]
        duration_min = 40
        declination_deg = 30
        hour_angle_h = -2
        pier_side = "west"
        [[run]]
        duration_min = 25
        declination_deg = 10
        hour_angle_h = 1
        pier_side = "east"
        """
            .replace("SEED", Integer.toString(seed));
    StringBuilder log = new StringBuilder();
    GuideTableWriter.write(Simulation.run(ScenarioReader.parse("night", scenario)), log);
    return log.toString();
  }

  private String log;

  @BeforeEach
  void noCalls() {
    calls = 0;
  }

  private AnalysisOutcome analyse(Path... logs) throws Exception {
    AnalysisOutcome outcome =
        Analysis.run(
            new AnalysisJob(
                Stream.of(logs).map(Path::toString).toList(),
                Optional.of(EQUIPMENT),
                Optional.empty(),
                folder.resolve("out" + calls++),
                Optional.empty(),
                true,
                "test"));
    assertThat(outcome.unusable()).isEmpty();
    assertThat(outcome.faults()).isEmpty();
    assertThat(outcome.nights()).hasSize(1);
    return outcome;
  }

  private NightResult result(String text) throws Exception {
    Path file = Files.write(folder.resolve("night.ecsv"), text.getBytes(UTF_8));
    AnalysisOutcome outcome = analyse(file);
    assertThat(outcome.warnings()).isEmpty();
    return outcome.nights().get(0).result();
  }

  private static JsonNode tree(NightResult result) throws IOException {
    return MAPPER.readTree(NightJson.write(result));
  }

  /** All places where two documents differ by more than rounding. */
  private static Map<String, Change> changes(NightResult before, NightResult after)
      throws IOException {
    Map<String, Change> changes = new TreeMap<>();
    compare("", tree(before), tree(after), changes);
    return changes;
  }

  private static void compare(
      String pointer, JsonNode before, JsonNode after, Map<String, Change> changes) {
    if (before.isObject() && after.isObject() || before.isArray() && after.isArray()) {
      List<String> keys = new ArrayList<>();
      before.fieldNames().forEachRemaining(keys::add);
      for (int i = 0; i < before.size() && before.isArray(); i++) {
        keys.add(Integer.toString(i));
      }
      if (before.size() != after.size()) {
        changes.put(pointer + "/size", new Change(before, after));
      }
      for (String key : keys) {
        JsonNode one = before.isArray() ? before.get(Integer.parseInt(key)) : before.get(key);
        JsonNode other = after.isArray() ? after.path(Integer.parseInt(key)) : after.path(key);
        compare(pointer + "/" + key, one, other, changes);
      }
    } else if (!same(pointer, before, after)) {
      changes.put(pointer, new Change(before, after));
    }
  }

  private static boolean same(String pointer, JsonNode before, JsonNode after) {
    if (before.isNumber() && after.isNumber()) {
      double one = before.doubleValue();
      double other = after.doubleValue();
      double rounding = pointer.matches(FROM_WANDER) ? WANDER_ROUNDING : ROUNDING;
      return Math.abs(one - other) <= rounding * Math.max(1e-3, Math.abs(one));
    }
    return before.equals(after);
  }

  /** Fails if anything changed outside the given places ({@code *} stands for an index). */
  private static void assertNothingChangedBut(Map<String, Change> changes, String... places) {
    List<String> patterns = Stream.of(places).map(place -> place.replace("*", "[^/]+")).toList();
    Map<String, Change> others = new TreeMap<>(changes);
    others.keySet().removeIf(pointer -> patterns.stream().anyMatch(pointer::matches));
    assertThat(others).isEmpty();
  }

  /** Changes one column of every row that has a value in it. */
  private static String mapColumn(String log, String column, UnaryOperator<BigDecimal> change) {
    StringBuilder changed = new StringBuilder();
    int index = -1;
    for (String line : log.lines().toList()) {
      String[] fields = line.split(",", -1);
      if (index < 0 && !line.startsWith("#")) {
        index = List.of(fields).indexOf(column);
        assertThat(index).as(column).isNotNegative();
      } else if (index >= 0 && !fields[index].isEmpty()) {
        fields[index] = change.apply(new BigDecimal(fields[index])).toPlainString();
        line = String.join(",", fields);
      }
      changed.append(line).append('\n');
    }
    return changed.toString();
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2})
  void aConstantAddedToTheOffsetsChangesTheMeansOnly(int seed) throws Exception {
    log = night(seed);
    String moved = mapColumn(log, "ra_offset", value -> value.add(new BigDecimal("0.750")));
    moved = mapColumn(moved, "dec_offset", value -> value.subtract(new BigDecimal("1.250")));
    NightResult before = result(log);
    NightResult after = result(moved);

    // The budget is about the set point, and the same pulses now answer other offsets.
    assertNothingChangedBut(
        changes(before, after),
        FILE,
        "(/night|/runs/*)/guided/(ra|dec)/meanArcsec",
        "/runs/*/(loop|budget)/(ra|dec)/.+",
        "/(replay|ladder|steps|promised|planning)(/.+)?",
        "/(findings|verdict|notComputed)/.+");
    for (int r = 0; r < 2; r++) {
      assertThat(after.runs().get(r).guided().ra().meanArcsec())
          .isCloseTo(before.runs().get(r).guided().ra().meanArcsec() + 0.75, within(1e-9));
      assertThat(after.runs().get(r).guided().dec().meanArcsec())
          .isCloseTo(before.runs().get(r).guided().dec().meanArcsec() - 1.25, within(1e-9));
    }
    assertThat(after.night().guided().ra().meanArcsec())
        .isCloseTo(before.night().guided().ra().meanArcsec() + 0.75, within(1e-9));
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2})
  void anAxisTurnedRoundTurnsItsMeansDriftsAndPhasesOnly(int seed) throws Exception {
    log = night(seed);
    String turned = mapColumn(log, "ra_offset", BigDecimal::negate);
    turned = mapColumn(turned, "ra_pulse", BigDecimal::negate);
    turned = mapColumn(turned, "dither_ra", BigDecimal::negate);
    NightResult before = result(log);

    Map<String, Change> changes = changes(before, result(turned));
    // Other drifts in right ascension belong to another polar axis, or to none, which turns the
    // field otherwise, and are judged so.
    changes
        .keySet()
        .removeIf(
            pointer ->
                pointer.matches(
                    "/(polarAxis|findings|verdict|steps|promised|planning|notComputed|ladder/[2-7]"
                        + "|ladder/[01]/cornerElongation)(/.*)?"));

    assertNothingChangedBut(
        changes,
        FILE,
        "(/night|/runs/*)/guided/ra/meanArcsec",
        "/runs/*/guided/ra/driftArcsecPerMinute/(value|lo95|hi95)",
        "(/night|/runs/*)/driftArcsecPerMinuteSky/ra/(value|lo95|hi95)",
        "/night/pointings/targets/*/driftArcsecPerMinuteSky/ra/(value|lo95|hi95)",
        "/night/pointings/flips/*/raDriftArcsecPerMinuteSky/*/(value|lo95|hi95)",
        "(/night|/runs/*)/guided/positionAngleDeg",
        "(/night|/runs/*)/responseArcsecPerSecond/ra/(east|west)/(value|lo95|hi95)",
        "(/night|/runs/*)/responseArcsecPerSecond/crossAxisDeg/(value|lo95|hi95)",
        "(/night|/runs/*)/periodic/components/*/phaseRad");
    assertThat(changes.keySet())
        .contains("/night/driftArcsecPerMinuteSky/ra/value", "/runs/0/guided/ra/meanArcsec")
        .anyMatch(pointer -> pointer.endsWith("/phaseRad"));
    changes.forEach(
        (pointer, change) -> {
          double was = change.before().doubleValue();
          double is = change.after().doubleValue();
          if (pointer.contains("/responseArcsecPerSecond/ra/")) {
            // East and west change places.
            String other =
                pointer.contains("/east/")
                    ? pointer.replace("/east/", "/west/")
                    : pointer.replace("/west/", "/east/");
            assertThat(is)
                .as(pointer)
                .isCloseTo(changes.get(other).before().doubleValue(), within(1e-5));
          } else if (pointer.endsWith("/phaseRad")) {
            assertThat(Math.abs(is - was)).as(pointer).isCloseTo(Math.PI, within(1e-6));
          } else if (pointer.endsWith("/positionAngleDeg")) {
            assertThat(is).as(pointer).isCloseTo(180 - was, within(1e-5));
          } else if (pointer.endsWith("/value") || pointer.endsWith("/meanArcsec")) {
            assertThat(is).as(pointer).isCloseTo(-was, within(1e-6));
          }
        });
    assertIntervalsTurned(changes);
  }

  private static void assertIntervalsTurned(Map<String, Change> changes) {
    for (String pointer : changes.keySet()) {
      if (pointer.endsWith("/lo95") && !pointer.contains("/responseArcsecPerSecond/ra/")) {
        Change high = changes.get(pointer.replace("/lo95", "/hi95"));
        assertThat(changes.get(pointer).after().doubleValue())
            .as(pointer)
            .isCloseTo(-high.before().doubleValue(), within(1e-5));
      }
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2})
  void pixelsWithTheirScaleGiveTheSameFigures(int seed) throws Exception {
    log = night(seed);
    assertThat(log).contains("guide_scale: 2.0");
    UnaryOperator<BigDecimal> half = value -> value.divide(new BigDecimal(2));
    String pixels = mapColumn(mapColumn(log, "ra_offset", half), "dec_offset", half);
    pixels = pixels.replace("_offset, unit: arcsec", "_offset, unit: pix");

    assertNothingChangedBut(changes(result(log), result(pixels)), FILE);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2})
  void packingLineEndsAndTheMarkOfUtf8DoNotMatter(int seed) throws Exception {
    log = night(seed);
    NightResult before = result(log);
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    try (OutputStream out = new GZIPOutputStream(packed)) {
      out.write(log.getBytes(UTF_8));
    }
    Path gz = Files.write(folder.resolve("night.ecsv.gz"), packed.toByteArray());

    assertNothingChangedBut(changes(before, analyse(gz).nights().get(0).result()), FILE);
    assertNothingChangedBut(changes(before, result(log.replace("\n", "\r\n"))), FILE);
    assertNothingChangedBut(changes(before, result("\uFEFF" + log)), FILE);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2})
  void anHourLaterMovesTheInstantsOnly(int seed) throws Exception {
    log = night(seed);
    assertThat(log).contains("2026-10-08T18:10:00Z");
    NightResult before = result(log);

    Map<String, Change> changes =
        changes(before, result(log.replace("2026-10-08T18:", "2026-10-08T19:")));

    assertNothingChangedBut(
        changes,
        FILE,
        "/night/(startUtc|endUtc)",
        "/night/pointings/flips/*/utc",
        "/runs/*/startUtc");
    changes.forEach(
        (pointer, change) -> {
          if (pointer.matches(".*(Utc|/utc)")) {
            Instant was = Instant.parse(change.before().textValue());
            assertThat(Instant.parse(change.after().textValue()))
                .as(pointer)
                .isEqualTo(was.plus(Duration.ofHours(1)));
          }
        });
    assertThat(changes).containsKeys("/night/startUtc", "/night/endUtc", "/runs/0/startUtc");
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2})
  void anotherTimeZoneForTheSameInstantChangesNothing(int seed) throws Exception {
    log = night(seed);
    NightResult before = result(log);

    String zoned = log.replace("2026-10-08T18:10:00Z", "2026-10-08T23:55:00+05:45");
    assertThat(zoned).isNotEqualTo(log);
    assertNothingChangedBut(changes(before, result(zoned)), FILE);
  }

  /** The file's part from one row to before another, with the header as it is. */
  private static String part(String log, int from, int to) {
    List<String> lines = log.lines().toList();
    int header = 0;
    while (lines.get(header).startsWith("#")) {
      header++;
    }
    List<String> kept = new ArrayList<>(lines.subList(0, header + 1));
    List<String> rows = lines.subList(header + 1, lines.size());
    kept.addAll(rows.subList(from, Math.min(to, rows.size())));
    return String.join("\n", kept) + "\n";
  }

  private static double meanSquare(RunResult run, AxisScatter axis) {
    return run.counts().used() * (square(axis.rmsArcsec()) + square(axis.meanArcsec()));
  }

  private static double square(double value) {
    return value * value;
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2})
  void aRunCutInTwoKeepsItsRowsAndMovesTheMeansApartOnly(int seed) throws Exception {
    log = part(night(seed), 0, 800);
    log = log.replaceAll("(?s), runs: \\[.*?]", "").replaceAll("(?s)(- )?\\{run: 2.*?}", "");
    NightResult whole = result(log);
    Path first = Files.writeString(folder.resolve("a.ecsv"), part(log, 0, 400));
    Path second = Files.writeString(folder.resolve("b.ecsv"), part(log, 400, 800));

    NightResult split = analyse(second, first).nights().get(0).result();

    assertThat(whole.runs()).hasSize(1);
    assertThat(split.runs()).hasSize(2);
    assertThat(split.night().frames()).isEqualTo(whole.night().frames()).isEqualTo(800);
    assertThat(split.inputs().stream().mapToInt(input -> input.rows()).sum()).isEqualTo(800);
    assertThat(split.runs().get(0).counts().plus(split.runs().get(1).counts()))
        .isEqualTo(whole.runs().get(0).counts());
    RunResult run = whole.runs().get(0);
    double before = meanSquare(run, run.guided().ra());
    double after =
        split.runs().stream().mapToDouble(half -> meanSquare(half, half.guided().ra())).sum();
    assertThat(after).isCloseTo(before, within(1e-9 * before));
    double between =
        split.runs().stream()
                .mapToDouble(
                    half ->
                        half.counts().used()
                            * square(
                                half.guided().ra().meanArcsec() - run.guided().ra().meanArcsec()))
                .sum()
            / run.counts().used();
    assertThat(square(split.night().guided().ra().rmsArcsec()) + between)
        .isCloseTo(square(whole.night().guided().ra().rmsArcsec()), within(1e-9));
    assertOverlap(
        whole.night().driftArcsecPerMinuteSky().ra(), split.night().driftArcsecPerMinuteSky().ra());
    assertOverlap(
        whole.night().driftArcsecPerMinuteSky().dec(),
        split.night().driftArcsecPerMinuteSky().dec());
  }

  private static void assertOverlap(Estimate one, Estimate other) {
    assertThat(one.lo95()).isLessThanOrEqualTo(other.hi95());
    assertThat(other.lo95()).isLessThanOrEqualTo(one.hi95());
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2})
  void theOrderOfTheFilesAndAFileGivenTwiceDoNotMatter(int seed) throws Exception {
    log = night(seed);
    Path first = Files.writeString(folder.resolve("a.ecsv"), part(log, 0, 500));
    Path second = Files.writeString(folder.resolve("b.ecsv"), part(log, 500, 9999));
    Path copy = Files.copy(first, folder.resolve("c.ecsv"));

    FinishedNight expected = analyse(first, second).nights().get(0);
    for (AnalysisOutcome outcome :
        List.of(
            analyse(second, first), analyse(first, second, first), analyse(copy, second, first))) {
      FinishedNight night = outcome.nights().get(0);
      assertThat(night.json()).hasSameBinaryContentAs(expected.json());
      assertThat(night.report()).hasSameBinaryContentAs(expected.report());
    }
    assertThat(analyse(first, first, second).warnings())
        .isEqualTo(analyse(first, second).warnings());
    assertThat(analyse(copy, second, first).warnings())
        .contains("c.ecsv: the same bytes as a.ecsv, read once: give it once");
  }
}
