package io.github.roundstar.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/**
 * A disk that is full and a folder that takes no file: one clear message, exit code 2, and the
 * earlier report still whole. Neither needs permissions, which mean nothing to root.
 */
@DisabledOnOs(OS.WINDOWS)
class HinderedOutputTest {
  private static final String LOG = "sample-logs/polar-drift.ecsv";

  @TempDir Path folder;

  /**
   * The shell's limit on the size of a file, 32 KiB, stands for the end of the disk: the page is
   * cut off in the middle of a write, as there.
   */
  @Test
  void aFullDiskLeavesTheEarlierReportWhole() throws Exception {
    Path out = folder.resolve("out");
    Ran.of("analyze", "--quiet", LOG, "--out", out).endsWith(0);
    List<Path> earlier = files(out);
    byte[] report = Files.readAllBytes(earlier.get(0));

    Path said = folder.resolve("said");
    Process process =
        new ProcessBuilder(
                "/bin/sh",
                "-c",
                "ulimit -f 64 && exec \"$@\"",
                "sh",
                Path.of(System.getProperty("java.home"), "bin/java").toString(),
                "-XX:-UsePerfData",
                "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1",
                "-cp",
                Path.of("target/classes").toAbsolutePath()
                    + File.pathSeparator
                    + Files.readString(Path.of("target/runtime-classpath.txt")).strip(),
                Main.class.getName(),
                "analyze",
                LOG,
                "--out",
                out.toString())
            .redirectErrorStream(true)
            .redirectOutput(said.toFile())
            .start();
    assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();

    assertThat(Files.readString(said, UTF_8))
        .startsWith(earlier.get(0) + ": cannot be written (")
        .contains("check permissions and free space")
        .hasLineCount(1);
    assertThat(process.exitValue()).isEqualTo(2);
    assertThat(files(out)).isEqualTo(earlier);
    assertThat(earlier.get(0)).hasBinaryContent(report);
  }

  /** Not even root may make a file among the kernel's. */
  @Test
  void aFolderThatTakesNoFileIsNamed() {
    Path out = Path.of("/proc/self");
    assumeTrue(Files.isDirectory(out), "needs the proc file system of Linux");
    for (String[] words :
        new String[][] {
          {"analyze", LOG},
          {"compare", "--before", "reports/2026-10-20.json", "--after", "reports/2026-10-24.json"},
        }) {
      Ran ran = Ran.of(Stream.concat(Stream.of(words), Stream.of("--out", out)).toArray());

      ran.endsWith(2).saysOnly("/proc/self/");
      assertThat(ran.err()).contains(": cannot be written (").contains("--out");
      assertThat(ran.out()).isEmpty();
    }
  }

  private static List<Path> files(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.sorted().toList();
    }
  }
}
