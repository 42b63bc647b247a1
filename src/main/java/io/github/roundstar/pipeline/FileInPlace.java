package io.github.roundstar.pipeline;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/**
 * Writes a file so that its name never shows half of it: under a temporary name beside it, then
 * moved.
 */
public final class FileInPlace {
  private FileInPlace() {}

  /**
   * Writes or replaces a file; makes its folder when missing.
   *
   * @throws UnwritableOutputException when that fails; an earlier file is then still whole
   */
  public static void write(Path target, byte[] bytes) throws UnwritableOutputException {
    Path part =
        target.resolveSibling(
            "." + target.getFileName() + "." + ProcessHandle.current().pid() + ".part");
    try {
      Path folder = target.getParent();
      if (folder != null) {
        Files.createDirectories(folder);
      }
      try {
        Files.write(
            part,
            bytes,
            StandardOpenOption.CREATE,
            StandardOpenOption.TRUNCATE_EXISTING,
            StandardOpenOption.WRITE);
        Files.move(
            part, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
      } finally {
        Files.deleteIfExists(part);
      }
    } catch (IOException e) {
      throw new UnwritableOutputException(target, e);
    }
  }
}
