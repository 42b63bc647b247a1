package io.github.roundstar.results;

import java.io.IOException;

/** A season as JSON and back. */
public final class SeasonJson {
  private SeasonJson() {}

  /** The document, ending in a line feed. */
  public static byte[] write(SeasonResult result) {
    return JsonText.write(result);
  }

  /**
   * Reads a document; keys it does not know are ignored.
   *
   * @throws IOException if it is not JSON or not a season
   */
  public static SeasonResult read(byte[] json) throws IOException {
    SeasonResult result = JsonText.read(json, SeasonResult.class);
    if (result == null || !SeasonResult.SCHEMA.equals(result.schema())) {
      throw new IOException("not a document of schema " + SeasonResult.SCHEMA);
    }
    return result;
  }
}
