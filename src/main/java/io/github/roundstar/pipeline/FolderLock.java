package io.github.roundstar.pipeline;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.UUID;

/**
 * Keeps a second process from choosing a name in an output folder while this one does. The lock
 * lies in the folder for temporary files, so that the user's folder holds results only; where it
 * cannot be had, the work goes on without: files are still moved into place whole.
 */
final class FolderLock implements AutoCloseable {
  private final FileChannel channel;

  private FolderLock(FileChannel channel) {
    this.channel = channel;
  }

  /** Waits for the lock of a folder, which need not exist yet. */
  static FolderLock of(Path folder) {
    String place = folder.toAbsolutePath().normalize().toString();
    UUID name = UUID.nameUUIDFromBytes(place.getBytes(StandardCharsets.UTF_8));
    Path file = Path.of(System.getProperty("java.io.tmpdir"), "roundstar-" + name + ".lock");
    FileChannel channel = null;
    try {
      channel = FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
      channel.lock();
    } catch (IOException e) {
      // Another user's lock, a full or read-only disk: then without.
    }
    return new FolderLock(channel);
  }

  @Override
  public void close() {
    try {
      if (channel != null) {
        channel.close();
      }
    } catch (IOException e) {
      // The operating system frees it at the end of the process.
    }
  }
}
