package io.github.roundstar.pipeline;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.UUID;
import java.util.concurrent.locks.ReentrantLock;

/**
 * Keeps a second process from choosing a name in an output folder while this one does. All folders
 * share one empty file in the folder for temporary files, each with a byte of its own, so that the
 * user's folder holds results only. Where the lock cannot be had, the work goes on without: files
 * are still moved into place whole.
 */
final class FolderLock implements AutoCloseable {
  /** The system's locks hold between processes; threads of this one wait here. */
  private static final ReentrantLock THREADS = new ReentrantLock();

  /** Stays open, since closing a file gives up every lock that the process has on it. */
  private static FileChannel file;

  private final FileLock lock;

  private FolderLock(FileLock lock) {
    this.lock = lock;
  }

  /** Waits for the lock of a folder, which need not exist yet. */
  static FolderLock of(Path folder) {
    THREADS.lock();
    FileLock lock = null;
    try {
      if (file == null || !file.isOpen()) {
        file = FileChannel.open(place(), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
      }
      lock = file.lock(byteOf(folder), 1, false);
    } catch (IOException e) {
      // A full or read-only disk: then without.
    }
    return new FolderLock(lock);
  }

  private static Path place() {
    String user = System.getProperty("user.name", "").replaceAll("[^A-Za-z0-9]", "_");
    return Path.of(System.getProperty("java.io.tmpdir"), "roundstar-" + user + ".lock");
  }

  /** A place in the file for a folder's name; two names meet in one by chance alone. */
  private static long byteOf(Path folder) {
    String name = folder.toAbsolutePath().normalize().toString();
    UUID hash = UUID.nameUUIDFromBytes(name.getBytes(StandardCharsets.UTF_8));
    return hash.getMostSignificantBits() & Long.MAX_VALUE >>> 1;
  }

  @Override
  public void close() {
    try {
      if (lock != null) {
        lock.release();
      }
    } catch (IOException e) {
      // The operating system frees it at the end of the process.
    } finally {
      THREADS.unlock();
    }
  }
}
