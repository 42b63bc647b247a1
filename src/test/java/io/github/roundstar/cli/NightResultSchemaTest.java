package io.github.roundstar.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion.VersionFlag;
import io.github.roundstar.model.RowCounts;
import io.github.roundstar.pipeline.Analysis;
import io.github.roundstar.pipeline.AnalysisJob;
import io.github.roundstar.pipeline.AnalysisOutcome;
import io.github.roundstar.pipeline.FinishedNight;
import io.github.roundstar.results.Input;
import io.github.roundstar.results.NightJson;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.NotComputed;
import io.github.roundstar.results.RunResult;
import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The JSON of a night keeps to the published schema, says why each missing figure is missing, and
 * accounts for every row. Schema check: networknt json-schema-validator, JSON Schema 2020-12.
 */
class NightResultSchemaTest {
  private static final ObjectMapper MAPPER = new ObjectMapper();
  private static final Map<String, NightResult> NIGHTS = new LinkedHashMap<>();
  @TempDir static Path folder;

  /** The sample nights, with and without equipment, and nights that lack one thing or another. */
  @BeforeAll
  static void analyse() throws Exception {
    // SampleReportsTest holds these to what the code writes.
    try (Stream<Path> files = Files.list(Path.of("reports"))) {
      for (Path file : files.filter(f -> f.toString().endsWith(".json")).sorted().toList()) {
        NightResult night = NightJson.read(Files.readAllBytes(file));
        NIGHTS.put("sample " + night.night().date(), night);
      }
    }
    analyse("without equipment", Optional.empty(), "sample-logs/polar-drift.ecsv");
    String rows = GuideTables.rows(1, 0, 400);
    analyse("undated", Optional.empty(), log("undated.csv", GuideTables.NAMES + rows));
    analyse(
        "without pulses",
        Optional.empty(),
        log("open.csv", (GuideTables.NAMES + rows).replaceAll("(?m),[^,]*,[^,]*$", "")));
    analyse("one frame", Optional.empty(), log("one.csv", GuideTables.NAMES + "0,0,0,0,0\n"));
    analyse(
        "nothing to be had",
        Optional.empty(),
        log(
            "null.csv",
            "time,ra_offset,dec_offset,run,event\n0,1,1,1,\n3,,,2,lost\n6,,,2,\n9,0,0,2,dither\n"));
    String dated = GuideTables.header("start: '2026-10-08T20:00:00+02:00', declination: 20");
    analyse(
        "overlapping files",
        Optional.empty(),
        log("west.csv", dated + rows),
        log("east.csv", dated + GuideTables.rows(2, 10, 300)));
    analyse(
        "rows of every kind",
        Optional.empty(),
        log(
            "kinds.csv",
            "time,ra_offset,dec_offset,event\n"
                + "0,0,0,\n3,x,0,\n6,0\n9,inf,0,\n12,,,\n15,0,0,idle\n18,0,0,dither\n"
                + "21,0,0,settling\n24,1,0,\n24,1,0,\n27,0,0,note: cloud\n12,0,9,\n"));
    analyse(
        "near the pole",
        Optional.of("sample-logs/equipment.toml"),
        log("pole.csv", GuideTables.header("declination: 88, guide_rate: 0.5") + rows));
  }

  private static String log(String name, String text) throws IOException {
    return GuideTables.write(folder, name, text).toString();
  }

  private static void analyse(String name, Optional<String> equipment, String... logs)
      throws Exception {
    AnalysisOutcome outcome =
        Analysis.run(
            new AnalysisJob(
                List.of(logs),
                equipment.map(Path::of),
                Optional.empty(),
                folder.resolve(name),
                Optional.empty(),
                true,
                "test"));
    assertThat(outcome.unusable()).isEmpty();
    assertThat(outcome.faults()).isEmpty();
    for (FinishedNight night : outcome.nights()) {
      NIGHTS.put(name + " " + night.result().night().date(), night.result());
    }
  }

  static Stream<String> nights() {
    return NIGHTS.keySet().stream();
  }

  private static JsonNode tree(String name) throws IOException {
    return MAPPER.readTree(NightJson.write(NIGHTS.get(name)));
  }

  private static JsonSchema schema() throws IOException {
    try (InputStream in =
        NightResult.class.getResourceAsStream("/schema/roundstar.night-1.schema.json")) {
      return JsonSchemaFactory.getInstance(VersionFlag.V202012).getSchema(in);
    }
  }

  /** Calls for every value below a node, with its JSON Pointer. */
  private static void walk(String pointer, JsonNode node, BiConsumer<String, JsonNode> visit) {
    visit.accept(pointer, node);
    if (node.isArray()) {
      for (int i = 0; i < node.size(); i++) {
        walk(pointer + "/" + i, node.get(i), visit);
      }
    }
    node.properties().forEach(e -> walk(pointer + "/" + e.getKey(), e.getValue(), visit));
  }

  private static boolean matches(String pattern, String pointer) {
    String[] wanted = pattern.split("/");
    String[] given = pointer.split("/");
    if (wanted.length != given.length) {
      return false;
    }
    for (int i = 0; i < wanted.length; i++) {
      if (!wanted[i].equals(given[i]) && !wanted[i].equals("*")) {
        return false;
      }
    }
    return true;
  }

  @ParameterizedTest
  @MethodSource("nights")
  void everyNightKeepsToTheSchema(String name) throws IOException {
    assertThat(schema().validate(tree(name))).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("nights")
  void everyMissingFigureHasAReason(String name) throws IOException {
    List<String> missing = new ArrayList<>();
    walk(
        "",
        tree(name),
        (pointer, node) -> {
          if (node.isNull()) {
            missing.add(pointer);
          }
        });
    List<String> unexplained =
        missing.stream()
            .filter(
                pointer ->
                    NIGHTS.get(name).notComputed().stream()
                        .noneMatch(reason -> matches(reason.figure(), pointer)))
            .toList();
    assertThat(unexplained).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("nights")
  void reasonsAreGivenOnceAndForMissingFiguresOnly(String name) throws IOException {
    List<NotComputed> reasons = NIGHTS.get(name).notComputed();

    assertThat(reasons).extracting(NotComputed::figure).doesNotHaveDuplicates();
    JsonNode tree = tree(name);
    for (NotComputed reason : reasons) {
      assertThat(reason.because()).isNotBlank().doesNotContain("null", "NaN");
      assertThat(places(tree, reason.figure())).as(reason.figure()).anyMatch(JsonNode::isNull);
    }
  }

  @ParameterizedTest
  @MethodSource("nights")
  void methodsNameFiguresThatThereAre(String name) throws IOException {
    JsonNode schema = MAPPER.readTree(schema().getSchemaNode().toString());
    NIGHTS
        .get(name)
        .methods()
        .forEach(method -> assertThat(known(schema, method.figure())).as(method.figure()).isTrue());
  }

  private static List<JsonNode> places(JsonNode tree, String pattern) {
    List<JsonNode> places = new ArrayList<>();
    walk(
        "",
        tree,
        (pointer, node) -> {
          if (matches(pattern, pointer)) {
            places.add(node);
          }
        });
    return places;
  }

  /** Whether the schema has a figure, so that a method may be told of one that is null. */
  private static boolean known(JsonNode schema, String pointer) {
    List<JsonNode> at = List.of(schema);
    for (String step : pointer.substring(1).split("/")) {
      List<JsonNode> next = new ArrayList<>();
      for (JsonNode node : at) {
        JsonNode here = resolved(schema, node);
        if (step.equals("*") && here.has("items")) {
          next.add(here.get("items"));
        } else if (step.equals("*")) {
          here.path("properties").elements().forEachRemaining(next::add);
        } else if (here.path("properties").has(step)) {
          next.add(here.get("properties").get(step));
        }
      }
      at = next;
    }
    return !at.isEmpty();
  }

  private static JsonNode resolved(JsonNode schema, JsonNode node) {
    return node.has("$ref") ? schema.at(node.get("$ref").asText().substring(1)) : node;
  }

  @ParameterizedTest
  @MethodSource("nights")
  void numbersHaveAtMostEightDigitsAndAreFinite(String name) throws IOException {
    walk(
        "",
        MAPPER
            .reader()
            .with(com.fasterxml.jackson.databind.DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
            .readTree(NightJson.write(NIGHTS.get(name))),
        (pointer, node) -> {
          if (node.isBigDecimal()) {
            BigDecimal value = node.decimalValue().stripTrailingZeros();
            assertThat(value.precision()).as(pointer).isLessThanOrEqualTo(8);
          }
        });
  }

  /** The order of the design's table of the document. */
  @ParameterizedTest
  @MethodSource("nights")
  void keysComeInTheOrderOfTheContract(String name) throws IOException {
    assertOrder(
        tree(name),
        "schema version inputs night runs polarAxis seeing exposures replay planning findings verdict need"
            + " ladder steps promised kept usual notComputed methods faults");
    assertOrder(
        tree(name).get("night"),
        "date startUtc endUtc runs frames guidedHours guided driftArcsecPerMinuteSky"
            + " responseArcsecPerSecond noiseFloorArcsec periodic backlashArcsecAxis"
            + " stickingArcsecAxis settling"
            + " comparison learned pointings");
    for (JsonNode run : tree(name).get("runs")) {
      assertOrder(
          run,
          "id startUtc durationSeconds mode frames counts cadenceSeconds guideScaleArcsecPerPixel"
              + " declinationDeg hourAngleHours pierSide guided driftArcsecPerMinuteSky"
              + " responseArcsecPerSecond loop noiseFloorArcsec periodic backlashArcsecAxis"
              + " stickingArcsecAxis budget"
              + " settling events");
      assertOrder(run.get("counts"), "used settling lost dither idle duplicate rejected unusable");
    }
  }

  private static void assertOrder(JsonNode node, String keys) {
    List<String> found = new ArrayList<>();
    for (Iterator<String> names = node.fieldNames(); names.hasNext(); ) {
      found.add(names.next());
    }
    assertThat(found).containsExactly(keys.split(" "));
  }

  @ParameterizedTest
  @MethodSource("nights")
  void whatIsReadBackWritesTheSameBytes(String name) throws IOException {
    byte[] json = NightJson.write(NIGHTS.get(name));
    NightResult read = NightJson.read(json);

    assertThat(NightJson.write(read)).isEqualTo(json);
    assertThat(NightJson.read(NightJson.write(read))).isEqualTo(read);
  }

  @ParameterizedTest
  @MethodSource("nights")
  void everyRowIsAccountedFor(String name) {
    NightResult result = NIGHTS.get(name);
    RowCounts total =
        result.runs().stream().map(RunResult::counts).reduce(RowCounts.NONE, RowCounts::plus);

    assertThat(result.inputs().stream().mapToInt(Input::rows).sum()).isEqualTo(total.rows());
    assertThat(result.inputs().stream().mapToInt(Input::used).sum()).isEqualTo(total.used());
    assertThat(result.inputs().stream().mapToInt(input -> input.unusable().count()).sum())
        .isEqualTo(total.unusable());
    for (Input input : result.inputs()) {
      assertThat(input.unusable().byReason().values().stream().mapToInt(n -> n).sum())
          .isEqualTo(input.unusable().count());
    }
    for (RunResult run : result.runs()) {
      assertThat(run.counts().rows() - run.counts().duplicate() - run.counts().unusable())
          .isEqualTo(run.frames());
    }
    assertThat(result.night().frames())
        .isEqualTo(result.runs().stream().mapToInt(RunResult::frames).sum());
    assertThat(result.night().runs()).isEqualTo(result.runs().size());
  }

  @Test
  void keysOfALaterVersionAreIgnored() throws IOException {
    NightResult result = NIGHTS.values().iterator().next();
    String json = new String(NightJson.write(result), UTF_8);
    String later =
        json.replace("\"version\":", "\"weather\": {\"clear\": true},\n \"version\":")
            .replace("\"rmsArcsec\":", "\"colour\": [1, null],\n \"rmsArcsec\":");

    assertThat(later).isNotEqualTo(json);
    assertThat(NightJson.write(NightJson.read(later.getBytes(UTF_8))))
        .isEqualTo(json.getBytes(UTF_8));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        " ",
        "null",
        "{}",
        "[]",
        "42",
        "\"text\"",
        "{\"schema\": \"roundstar.night/1\"",
        "{\"schema\": \"roundstar.night/1\"}",
        "{\"schema\": \"roundstar.night/2\", \"inputs\": [], \"runs\": [], \"notComputed\": [],"
            + " \"methods\": []}",
        "{\"schema\": \"roundstar.night/1\", \"inputs\": [null], \"runs\": [], \"notComputed\": [],"
            + " \"methods\": []}",
        "{\"schema\": \"roundstar.night/1\", \"inputs\": 3}",
        "{\"schema\": \"roundstar.night/1\", \"runs\": [{\"mode\": \"sideways\"}]}",
        "<html></html>"
      })
  void aDocumentThatIsNoNightIsRefused(String text) {
    assertThatThrownBy(() -> NightJson.read(text.getBytes(UTF_8))).isInstanceOf(IOException.class);
  }

  @Test
  void aDocumentCutShortAnywhereIsRefused() {
    byte[] json = NightJson.write(NIGHTS.values().iterator().next());
    for (int length = 0; length < json.length - 3; length += 97) {
      byte[] cut = java.util.Arrays.copyOf(json, length);
      assertThatThrownBy(() -> NightJson.read(cut)).isInstanceOf(IOException.class);
    }
  }

  @Test
  void writtenFilesAreWhatTheCodecGives() throws IOException {
    Path json = folder.resolve("without equipment/2026-10-15.json");

    assertThat(Files.readAllBytes(json))
        .isEqualTo(NightJson.write(NIGHTS.get("without equipment 2026-10-15")));
  }
}
