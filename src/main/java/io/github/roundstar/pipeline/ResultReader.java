package io.github.roundstar.pipeline;

import io.github.roundstar.compare.NightInput;
import io.github.roundstar.formats.FormatException;
import io.github.roundstar.results.NightJson;
import io.github.roundstar.results.NightResult;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** Reads earlier JSON results of nights. */
final class ResultReader {
  /** No night's result comes near it [bytes]. */
  private static final long LARGEST = 32L << 20;

  private static final String OURS = "roundstar.";
  private static final String NIGHT = "roundstar.night/";

  private ResultReader() {}

  /**
   * The night of a file; nothing when it holds another document of ours, or cannot be used.
   *
   * @param unusable where the reason goes in the latter case
   * @param noticed where goes what was done about it
   */
  static Optional<NightInput> read(
      Path file, String version, List<String> unusable, List<String> noticed) {
    String name = String.valueOf(file.getFileName());
    try {
      byte[] json = bytes(file);
      String schema = NightJson.schema(json).orElse("");
      if (schema.startsWith(NIGHT) && !schema.equals(NightResult.SCHEMA)) {
        unusable.add(
            FormatException.located(
                name,
                0,
                "written by a newer version of roundstar (" + schema + "), so it was left out",
                "update roundstar, or give the log itself"));
        return Optional.empty();
      }
      if (schema.startsWith(OURS) && !schema.startsWith(NIGHT)) {
        return Optional.empty();
      }
      NightResult result = NightJson.read(json);
      if (isNewer(result.version(), version)) {
        noticed.add(
            name
                + " was written by roundstar "
                + result.version()
                + ", which is newer than this one: the figures that this one knows were used.");
      }
      return Optional.of(new NightInput(result, name, Optional.empty()));
    } catch (NoSuchFileException e) {
      unusable.add(FormatException.located(name, 0, "no such file", "check the path"));
    } catch (IOException e) {
      unusable.add(
          FormatException.located(
              name, 0, "not a night's result that can be read", "analyse the log again"));
    }
    return Optional.empty();
  }

  /**
   * What a file holds.
   *
   * @throws IOException if it cannot be read, or is too large for a night's result
   */
  static byte[] bytes(Path file) throws IOException {
    if (Files.size(file) > LARGEST) {
      throw new IOException("too large");
    }
    return Files.readAllBytes(file);
  }

  /** Whether one version of numbers between points is later than another. */
  static boolean isNewer(String version, String than) {
    String[] one = String.valueOf(version).split("\\.");
    String[] other = than.split("\\.");
    for (int i = 0; i < Math.max(one.length, other.length); i++) {
      int difference = number(one, i) - number(other, i);
      if (difference != 0) {
        return difference > 0;
      }
    }
    return false;
  }

  private static int number(String[] parts, int i) {
    return i < parts.length && parts[i].matches("\\d{1,6}") ? Integer.parseInt(parts[i]) : 0;
  }
}
