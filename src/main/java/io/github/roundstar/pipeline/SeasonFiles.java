package io.github.roundstar.pipeline;

import io.github.roundstar.formats.FormatException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.PathMatcher;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;

/** Finds the logs below a folder and knows them by their content. */
final class SeasonFiles {
  private static final int CHUNK = 1 << 16;

  private SeasonFiles() {}

  /**
   * Every log below a folder, but for what lies in the folder of the results, in order of their
   * paths.
   *
   * @throws FormatException when the folder cannot be read
   */
  static List<Path> below(Path folder, Path out) throws FormatException {
    PathMatcher logs = FileSystems.getDefault().getPathMatcher("glob:" + LogFiles.LOG_NAMES);
    Path results = out.toAbsolutePath().normalize();
    List<Path> found = new ArrayList<>();
    try (Stream<Path> files = Files.walk(folder)) {
      files
          .filter(Files::isRegularFile)
          .filter(file -> logs.matches(file.getFileName()))
          .filter(file -> !results.equals(file.toAbsolutePath().normalize().getParent()))
          .sorted()
          .forEach(found::add);
    } catch (IOException | java.io.UncheckedIOException e) {
      throw new FormatException(
          folder.toString(), 0, "the folder cannot be read", "check the path and its permissions");
    }
    return found;
  }

  /** Hash of a file's bytes as they lie on disk. */
  static String sha256(Path file) throws IOException {
    MessageDigest digest = digest();
    try (InputStream in = Files.newInputStream(file)) {
      byte[] chunk = new byte[CHUNK];
      for (int n = in.read(chunk); n >= 0; n = in.read(chunk)) {
        digest.update(chunk, 0, n);
      }
    }
    return HexFormat.of().formatHex(digest.digest());
  }

  static MessageDigest digest() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
