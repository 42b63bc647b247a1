package io.github.roundstar.results;

/** A comparison as JSON. */
public final class CompareJson {
  private CompareJson() {}

  /** The document, ending in a line feed. */
  public static byte[] write(CompareResult result) {
    return JsonText.write(result);
  }
}
