package io.github.roundstar.ingest;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.formats.HeaderNode;
import io.github.roundstar.formats.NearestName;
import io.github.roundstar.model.SkySense;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Stream;

/** The header of a guide table: what holds for all runs, and what a run has of its own. */
final class HeaderMeta {
  private static final String RUN = "run";
  private static final String RUNS = "runs";

  private final String file;
  private final Values common;
  private final Map<Integer, Values> own = new TreeMap<>();
  private final Map<Integer, Long> lines = new TreeMap<>();

  /** Values by key; a run's own values come before the common ones. */
  record Values(Map<MetaKey, Object> given, SkySense sense) {
    Values(Map<MetaKey, Object> given) {
      this(given, SkySense.KNOWN);
    }

    OptionalDouble number(MetaKey key) {
      Object value = given.get(key);
      return value == null ? OptionalDouble.empty() : OptionalDouble.of((Double) value);
    }

    Optional<String> word(MetaKey key) {
      return Optional.ofNullable((String) given.get(key));
    }

    Optional<OffsetDateTime> start() {
      return Optional.ofNullable((OffsetDateTime) given.get(MetaKey.START));
    }

    private Values over(Values others) {
      Map<MetaKey, Object> all = new EnumMap<>(MetaKey.class);
      all.putAll(others.given);
      all.putAll(given);
      return new Values(all, sense);
    }
  }

  private HeaderMeta(String file, Values common) {
    this.file = file;
    this.common = common;
  }

  /**
   * Reads a header; unknown keys are warnings.
   *
   * @throws FormatException if a value is not what its key asks for
   */
  static HeaderMeta read(String file, HeaderNode meta, Problems problems) throws FormatException {
    HeaderMeta header = new HeaderMeta(file, values(file, meta, RUNS, problems));
    HeaderNode runs = meta.entries().get(RUNS);
    if (runs == null || runs.isNull()) {
      return header;
    }
    String remedy = "write runs: and below it one - {run: 1, declination: 41.5} for each run";
    if (runs.kind() != HeaderNode.Kind.LIST) {
      throw new FormatException(file, runs.line(), "runs is not a list", remedy);
    }
    for (HeaderNode entry : runs.items()) {
      HeaderNode number = entry.entries().get(RUN);
      if (number == null || !number.text().matches("[+-]?[0-9]{1,9}")) {
        throw new FormatException(
            file, entry.line(), "an entry of runs without a whole number run", remedy);
      }
      int run = Integer.parseInt(number.text());
      if (header.own.put(run, values(file, entry, RUN, problems)) != null) {
        throw new FormatException(
            file, entry.line(), "run " + run + " is described twice", "keep one entry per run");
      }
      header.lines.put(run, entry.line());
    }
    return header;
  }

  /** A header that is filled run by run. */
  static HeaderMeta empty(String file) {
    return new HeaderMeta(file, new Values(Map.of()));
  }

  /** Says what holds for a run, before its first row. */
  void describe(int run, Values values) {
    own.put(run, values);
  }

  private static Values values(String file, HeaderNode map, String besides, Problems problems)
      throws FormatException {
    Map<MetaKey, Object> given = new EnumMap<>(MetaKey.class);
    for (Map.Entry<String, HeaderNode> entry : map.entries().entrySet()) {
      Optional<MetaKey> key = MetaKey.of(entry.getKey());
      if (key.isPresent() && !entry.getValue().isNull()) {
        given.put(key.get(), key.get().parse(file, entry.getValue()));
      } else if (key.isEmpty() && !entry.getKey().equals(besides)) {
        problems.warn(
            entry.getValue().line(),
            "unknown key " + entry.getKey() + nearest(entry.getKey(), besides) + ", ignored",
            "correct the key or remove it");
      }
    }
    return new Values(given);
  }

  private static String nearest(String key, String besides) {
    List<String> known =
        Stream.concat(Stream.of(besides), Arrays.stream(MetaKey.values()).map(MetaKey::key))
            .toList();
    return NearestName.of(key, known).map(name -> ", the nearest known one is " + name).orElse("");
  }

  /** What holds for a run. */
  Values of(int run) {
    return own(run).over(common);
  }

  /** What is said of a run and of it alone. */
  Values own(int run) {
    return own.getOrDefault(run, new Values(Map.of()));
  }

  /** What holds for all runs. */
  Values common() {
    return common;
  }

  /** Runs with an entry of their own, and its line. */
  Map<Integer, Long> described() {
    return lines;
  }

  /** The own {@code start} of the lowest run that has one. */
  Optional<OffsetDateTime> firstStart() {
    return own.values().stream().flatMap(values -> values.start().stream()).findFirst();
  }

  /** The fault that a run lacks what others have. */
  FormatException noStart(int run) {
    return new FormatException(
        file,
        lines.getOrDefault(run, 0L),
        "run " + run + " has no start, but other runs have",
        "add start to meta, or to the entry of every run");
  }
}
