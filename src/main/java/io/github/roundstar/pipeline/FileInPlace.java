package io.github.roundstar.pipeline;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Writes a file so that its name never shows half of it: under a temporary name beside it, then
 * moved.
 */
public final class FileInPlace {
  private static final String PART = ".part";

  /** No file takes so long to write. */
  private static final long SURELY_DEAD_MILLIS = 3_600_000;

  private FileInPlace() {}

  /**
   * Writes or replaces a file; makes its folder when missing.
   *
   * @throws UnwritableOutputException when that fails; an earlier file is then still whole
   */
  public static void write(Path target, byte[] bytes) throws UnwritableOutputException {
    write(Map.of(target, bytes));
  }

  /**
   * Writes or replaces files that belong together: none takes its place before all are written.
   *
   * @throws UnwritableOutputException when that fails; earlier files are then still whole
   */
  static void write(Map<Path, byte[]> files) throws UnwritableOutputException {
    Map<Path, Path> parts = new LinkedHashMap<>();
    Path at = null;
    try {
      try {
        for (Map.Entry<Path, byte[]> file : files.entrySet()) {
          at = file.getKey();
          parts.put(at, part(at));
          Files.write(parts.get(at), file.getValue());
        }
        for (Map.Entry<Path, Path> part : parts.entrySet()) {
          at = part.getKey();
          Files.move(
              part.getValue(),
              at,
              StandardCopyOption.ATOMIC_MOVE,
              StandardCopyOption.REPLACE_EXISTING);
        }
        for (Path target : parts.keySet()) {
          sweep(target);
        }
      } finally {
        for (Path part : parts.values()) {
          Files.deleteIfExists(part);
        }
      }
    } catch (IOException e) {
      throw new UnwritableOutputException(at, e);
    }
  }

  /** Removes what a killed process left of the same file, long enough ago to be surely dead. */
  private static void sweep(Path target) throws IOException {
    Path folder = target.toAbsolutePath().getParent();
    String start = "." + target.getFileName() + ".";
    long now = Files.getLastModifiedTime(target).toMillis();
    DirectoryStream.Filter<Path> left =
        file ->
            file.getFileName().toString().startsWith(start)
                && file.getFileName().toString().endsWith(PART)
                && now - Files.getLastModifiedTime(file).toMillis() > SURELY_DEAD_MILLIS;
    try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, left)) {
      for (Path file : files) {
        Files.deleteIfExists(file);
      }
    }
  }

  private static Path part(Path target) throws IOException {
    if (Files.isDirectory(target)) {
      throw new FileSystemException(target.toString(), null, "it is a folder");
    }
    Path folder = target.getParent();
    if (folder != null && !Files.isDirectory(folder)) {
      Files.createDirectories(folder);
    }
    long process = ProcessHandle.current().pid();
    return target.resolveSibling("." + target.getFileName() + "." + process + PART);
  }
}
