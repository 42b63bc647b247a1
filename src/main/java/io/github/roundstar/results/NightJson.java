package io.github.roundstar.results;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * A night's result as JSON and back: UTF-8, keys in the order of the records, numbers with eight
 * significant digits.
 */
public final class NightJson {
  /** Of a night; other files take their names from it, so it holds no folder. */
  private static final Pattern NAME = Pattern.compile("[0-9a-z+-]{1,100}");

  private NightJson() {}

  /** The document, ending in a line feed. */
  public static byte[] write(NightResult result) {
    return JsonText.write(result);
  }

  /**
   * Reads a document; keys it does not know are ignored.
   *
   * @throws IOException if it is not JSON or not a night's result
   */
  public static NightResult read(byte[] json) throws IOException {
    return checked(JsonText.read(json, NightResult.class));
  }

  private static NightResult checked(NightResult result) throws IOException {
    if (result == null
        || !NightResult.SCHEMA.equals(result.schema())
        || result.night() == null
        || !NAME.matcher(String.valueOf(result.night().date())).matches()) {
      throw new IOException("not a document of schema " + NightResult.SCHEMA);
    }
    return result;
  }

  /** The result as it would be read back: with the digits that are written and no more. */
  public static NightResult asWritten(NightResult result) {
    try {
      return read(write(result));
    } catch (IOException e) {
      throw new IllegalStateException("a result that cannot be read back", e);
    }
  }

  /**
   * Reads what other nights are compared with, without what only the night's own page needs; much
   * quicker than {@link #read}.
   *
   * @throws IOException if it is not JSON or not a night's result
   */
  public static NightResult readForOthers(byte[] json) throws IOException {
    return checked(RecordReader.without(json, NightResult.class, OWN_PAGE));
  }

  /** What only a night's own page needs. */
  private static final Map<Class<?>, List<String>> OWN_PAGE =
      Map.of(
          NightResult.class,
          List.of(
              "exposures",
              "replay",
              "findings",
              "verdict",
              "steps",
              "kept",
              "usual",
              "notComputed",
              "methods",
              "faults"),
          RunResult.class,
          List.of("periodic", "budget", "settling"),
          Rung.class,
          List.of("cures", "alone"));

  private record Hash(String sha256) {}

  private record Hashes(String schema, List<Hash> inputs) {}

  /**
   * Hashes of the logs that a document was made of; much quicker than {@link #read}.
   *
   * @throws IOException if it is not JSON or not a night's result
   */
  public static Set<String> inputHashes(byte[] json) throws IOException {
    Hashes hashes = RecordReader.read(json, Hashes.class);
    if (hashes == null
        || !NightResult.SCHEMA.equals(hashes.schema())
        || hashes.inputs() == null
        || hashes.inputs().contains(null)) {
      throw new IOException("not a document of schema " + NightResult.SCHEMA);
    }
    return hashes.inputs().stream().map(Hash::sha256).collect(Collectors.toSet());
  }

  private record SchemaOnly(String schema) {}

  /**
   * The name of a document's schema; empty when it gives none.
   *
   * @throws IOException if it is not JSON
   */
  public static Optional<String> schema(byte[] json) throws IOException {
    return Optional.ofNullable(RecordReader.read(json, SchemaOnly.class)).map(SchemaOnly::schema);
  }
}
