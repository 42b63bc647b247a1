package io.github.roundstar.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Two processes on one output folder: one after the other, also where the first is killed. */
@Timeout(60)
class FolderLockTest {
  @TempDir Path temporary;
  @TempDir Path nights;
  private final List<Process> started = new ArrayList<>();

  @AfterEach
  void stopAll() {
    started.forEach(Process::destroyForcibly);
  }

  /** Takes the lock of a folder, says so, and keeps it until its input ends. */
  @SuppressWarnings("try") // the lock is held, not used
  public static void main(String[] folder) throws IOException {
    try (FolderLock lock = FolderLock.of(Path.of(folder[0]))) {
      System.out.println("held");
      System.in.read();
    }
  }

  private Process start(Path folder) throws IOException {
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Djava.io.tmpdir=" + temporary,
                "-cp",
                "target/classes" + File.pathSeparator + "target/test-classes",
                FolderLockTest.class.getName(),
                folder.toString())
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    started.add(process);
    return process;
  }

  private static CompletableFuture<String> said(Process process) {
    BufferedReader out = process.inputReader();
    return CompletableFuture.supplyAsync(
        () -> {
          try {
            return out.readLine();
          } catch (IOException e) {
            throw new UncheckedIOException(e);
          }
        });
  }

  @Test
  void theSecondWaitsUntilTheFirstIsKilledAndOtherFoldersDoNot() throws Exception {
    Process first = start(nights);
    assertThat(said(first).get()).isEqualTo("held");
    CompletableFuture<String> second = said(start(nights));
    Process other = start(nights.resolve("other"));
    assertThat(said(other).get()).isEqualTo("held");
    assertThat(second.isDone()).isFalse();

    first.destroyForcibly();
    assertThat(second.get()).isEqualTo("held");
  }

  @Test
  void theSecondWaitsUntilTheFirstIsDone() throws Exception {
    Process first = start(nights);
    assertThat(said(first).get()).isEqualTo("held");
    CompletableFuture<String> second = said(start(nights));
    assertThat(said(start(nights.resolve("other"))).get()).isEqualTo("held");
    assertThat(second.isDone()).isFalse();

    first.getOutputStream().close();
    assertThat(second.get()).isEqualTo("held");
    assertThat(first.waitFor(20, TimeUnit.SECONDS)).isTrue();
  }

  @Test
  void anyNumberOfFoldersLeaveOneEmptyFile() throws Exception {
    for (int folder = 0; folder < 3; folder++) {
      Process process = start(nights.resolve("night " + folder));
      assertThat(said(process).get()).isEqualTo("held");
      process.getOutputStream().close();
      assertThat(process.waitFor(20, TimeUnit.SECONDS)).isTrue();
    }
    try (Stream<Path> left = Files.list(temporary)) {
      assertThat(left.toList()).singleElement().satisfies(file -> assertThat(file).isEmptyFile());
    }
    assertThat(nights).isEmptyDirectory();
  }
}
