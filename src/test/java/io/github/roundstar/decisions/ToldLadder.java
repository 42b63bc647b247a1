package io.github.roundstar.decisions;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.github.roundstar.worlds.Cure;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** The ladder as a night's JSON tells it. */
final class ToldLadder {
  private static final ObjectMapper MAPPER = new ObjectMapper();

  /** A number with its interval; NaN where the JSON has none. */
  record Told(double value, double low, double high) {
    static Told of(JsonNode node) {
      return new Told(
          node.path("value").asDouble(Double.NaN),
          first(node, "low", "lo95"),
          first(node, "high", "hi95"));
    }

    private static double first(JsonNode node, String one, String other) {
      return node.has(one) ? node.get(one).asDouble() : node.path(other).asDouble(Double.NaN);
    }

    boolean holds(double truth) {
      return low <= truth && truth <= high;
    }
  }

  /** One step of the ladder. */
  record Step(
      Rung rung,
      boolean offered,
      String reason,
      List<Change> cures,
      int units,
      String unitKind,
      Told round,
      double meetsNeed) {}

  /** One thing changed. */
  record Change(String code, Map<String, Double> numbers) {
    /** What it is changed to, of this unit or of any. */
    OptionalDouble to(String... keys) {
      for (String key : keys) {
        if (numbers.containsKey(key)) {
          return OptionalDouble.of(numbers.get(key));
        }
      }
      return numbers.entrySet().stream()
          .filter(e -> e.getKey().startsWith("to") && !e.getKey().startsWith("toCadence"))
          .mapToDouble(Map.Entry::getValue)
          .findFirst();
    }

    /** The number of this name. */
    OptionalDouble only(String key) {
      return numbers.containsKey(key)
          ? OptionalDouble.of(numbers.get(key))
          : OptionalDouble.empty();
    }

    /** The change of a gain, where both values are told; else the first number that is. */
    double way() {
      return numbers.containsKey("fromGain") && numbers.containsKey("toGain")
          ? Math.signum(numbers.get("toGain") - numbers.get("fromGain"))
          : from().isPresent() && to().isPresent()
              ? Math.signum(to().getAsDouble() - from().getAsDouble())
              : 0;
    }

    OptionalDouble from() {
      return numbers.entrySet().stream()
          .filter(e -> e.getKey().startsWith("from"))
          .mapToDouble(Map.Entry::getValue)
          .findFirst();
    }
  }

  private final JsonNode json;
  private final Map<Rung, Step> steps = new EnumMap<>(Rung.class);

  private ToldLadder(JsonNode json) {
    this.json = json;
    for (JsonNode node : json.path("ladder")) {
      Rung.of(node.path("rung").asText()).ifPresent(rung -> steps.put(rung, step(rung, node)));
    }
  }

  static ToldLadder read(Path file) throws IOException {
    return new ToldLadder(MAPPER.readTree(Files.readAllBytes(file)));
  }

  static ToldLadder parse(String text) throws IOException {
    return new ToldLadder(MAPPER.readTree(text));
  }

  private static Step step(Rung rung, JsonNode node) {
    List<Change> cures = new ArrayList<>();
    for (JsonNode cure : node.path("cures")) {
      Map<String, Double> numbers = new java.util.TreeMap<>();
      for (Map.Entry<String, JsonNode> number : cure.path("numbers").properties()) {
        if (number.getValue().isNumber()) {
          numbers.put(number.getKey(), number.getValue().asDouble());
        }
      }
      cures.add(new Change(cure.path("cure").asText(), numbers));
    }
    return new Step(
        rung,
        node.path("offered").asBoolean(),
        node.path("reason").isTextual() ? node.path("reason").asText() : "",
        cures,
        node.path("units").asInt(),
        node.path("unitKind").asText(),
        Told.of(node.path("round")),
        node.path("meetsNeed").asDouble(Double.NaN));
  }

  JsonNode json() {
    return json;
  }

  /** Whether there is a ladder at all. */
  boolean present() {
    return !steps.isEmpty();
  }

  Optional<Step> step(Rung rung) {
    return Optional.ofNullable(steps.get(rung));
  }

  List<Step> steps() {
    return List.copyOf(steps.values());
  }

  /** The rung that was decided on; nothing where the log cannot tell, or nothing is said. */
  Optional<Rung> decided() {
    JsonNode verdict = json.path("verdict");
    for (JsonNode node :
        List.of(
            verdict.path("rung"),
            verdict.path("decision").path("rung"),
            json.path("decision").path("rung"))) {
      if (node.isTextual()) {
        return Rung.of(node.asText());
      }
    }
    return Optional.empty();
  }

  /**
   * What is changed on a rung: its own cures on top of those of the cheaper ones. Shorter exposures
   * are no part of the way, and name all that they need.
   */
  List<Cure> climbed(Step to) {
    List<Cure> cures = new ArrayList<>();
    if (to.rung() != Rung.SHORTER_EXPOSURES) {
      for (Step step : steps.values()) {
        if (step.rung().compareTo(to.rung()) < 0 && step.rung() != Rung.SHORTER_EXPOSURES) {
          cures.addAll(played(step));
        }
      }
    }
    cures.addAll(played(to));
    return cures;
  }

  /** The rung's cures for the second simulator; cures that change nothing there are left out. */
  static List<Cure> played(Step step) {
    List<Cure> cures = new ArrayList<>();
    for (Change change : step.cures()) {
      switch (change.code()) {
        case "ra-gain" -> {
          change.only("toGain").ifPresent(to -> cures.add(Cure.raGain(to)));
          change.only("toDeadbandArcsec").ifPresent(to -> cures.add(Cure.raDeadband(to)));
        }
        case "dec-gain" -> {
          change.only("toGain").ifPresent(to -> cures.add(Cure.decGain(to)));
          change.only("toDeadbandArcsec").ifPresent(to -> cures.add(Cure.decDeadband(to)));
        }
        case "ra-deadband" -> change.to().ifPresent(to -> cures.add(Cure.raDeadband(to)));
        case "dec-deadband" -> change.to().ifPresent(to -> cures.add(Cure.decDeadband(to)));
        case "pulse-limit" -> change.to().ifPresent(to -> cures.add(Cure.pulseLimit(to)));
        case "guide-exposure" ->
            change
                .to("toSeconds")
                .ifPresent(
                    to -> {
                      Double cadence = change.numbers().get("toCadenceSeconds");
                      cures.add(
                          cadence == null
                              ? Cure.guideExposure(to)
                              : Cure.guideExposure(to, cadence));
                    });
        case "settling-wait" -> change.to().ifPresent(to -> cures.add(Cure.pauseAfterDither(to)));
        case "polar-axis" ->
            cures.add(
                Cure.polarAxisWithin(change.to("toArcmin").orElse(TrueLadder.ALIGNED_ARCMIN)));
        case "balance" -> cures.add(Cure.balanced());
        case "camera-angle" -> cures.add(Cure.cameraSquare());
        case "exposure-length" -> change.to().ifPresent(to -> cures.add(Cure.imageSeconds(to)));
        case "training" -> cures.add(Cure.wormTrained());
        case "play" -> cures.add(Cure.decPlay(0));
        case "sticking" -> cures.add(Cure.unstuck());
        case "gears" -> cures.add(Cure.periodicErrorTimes(0));
        case "jolts" -> cures.add(Cure.noGusts());
        case "flexure" -> cures.add(Cure.noBending());
        case "optics" -> cures.add(Cure.roundOptics());
        case "tracking-rate" -> cures.add(Cure.rateOfTheStars());
        default -> throw new IllegalArgumentException("unknown cure " + change.code());
      }
    }
    return cures;
  }
}
