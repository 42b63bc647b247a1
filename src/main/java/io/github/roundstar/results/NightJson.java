package io.github.roundstar.results;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
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
    NightResult result = JsonText.read(json, NightResult.class);
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
   * Hashes of the logs that a document was made of; much quicker than {@link #read}.
   *
   * @throws IOException if it is not JSON or not a night's result
   */
  public static Set<String> inputHashes(byte[] json) throws IOException {
    JsonNode root = JsonText.tree(json);
    JsonNode inputs = root.path("inputs");
    if (!NightResult.SCHEMA.equals(root.path("schema").textValue()) || !inputs.isArray()) {
      throw new IOException("not a document of schema " + NightResult.SCHEMA);
    }
    return inputs.findValuesAsText("sha256").stream().collect(Collectors.toSet());
  }

  /**
   * The name of a document's schema; empty when it gives none.
   *
   * @throws IOException if it is not JSON
   */
  public static Optional<String> schema(byte[] json) throws IOException {
    return Optional.ofNullable(JsonText.tree(json).path("schema").textValue());
  }
}
