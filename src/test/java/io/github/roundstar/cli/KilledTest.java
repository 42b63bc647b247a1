package io.github.roundstar.cli;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.results.NightJson;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A process that is killed, or that meets another one in the same folder, leaves whole files only.
 */
class KilledTest {
  private static final String LOG = "sample-logs/polar-drift.ecsv";

  @TempDir Path out;

  private Process start(String log) throws IOException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin/java").toString());
    command.addAll(List.of("-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1"));
    command.addAll(
        List.of(
            "-cp",
            Path.of("target/classes").toAbsolutePath()
                + File.pathSeparator
                + Files.readString(Path.of("target/runtime-classpath.txt")).strip(),
            Main.class.getName()));
    command.addAll(List.of("analyze", "--quiet", log, "--out", out.toString()));
    return new ProcessBuilder(command)
        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
        .redirectError(ProcessBuilder.Redirect.DISCARD)
        .start();
  }

  private List<Path> visible() throws IOException {
    try (Stream<Path> files = Files.list(out)) {
      return files.filter(file -> !file.getFileName().toString().startsWith(".")).sorted().toList();
    }
  }

  private void assertAllWhole() throws IOException {
    for (Path file : visible()) {
      if (file.toString().endsWith(".json")) {
        assertThat(NightJson.read(Files.readAllBytes(file)).runs()).isNotEmpty();
      } else if (file.toString().endsWith(".html")) {
        assertThat(Files.readString(file)).endsWith("</html>\n");
      }
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {400, 900, 1300})
  void killedAnyTimeLeavesWholeFilesAndTheEarlierReport(int millis) throws Exception {
    Ran.of("analyze", "--quiet", LOG, "--out", out).endsWith(0);
    List<Path> earlier = visible();

    Process process = start(LOG);
    process.waitFor(millis, TimeUnit.MILLISECONDS);
    process.destroyForcibly().waitFor();

    assertThat(visible()).isEqualTo(earlier);
    assertAllWhole();
  }

  @Test
  void twoAtOnceLoseNoReport() throws Exception {
    Path one = Files.createDirectory(out.resolve("logs")).resolve("one.ecsv");
    Path two = one.resolveSibling("two.ecsv");
    Files.copy(Path.of(LOG), one);
    Files.writeString(
        two, Files.readString(one).lines().limit(1500).reduce("", (a, b) -> a + b + "\n"));

    List<Process> both = List.of(start(one.toString()), start(two.toString()));
    for (Process process : both) {
      assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
      assertThat(process.exitValue()).isZero();
    }

    assertThat(visible().stream().filter(file -> file.toString().endsWith(".html"))).hasSize(2);
    assertAllWhole();
  }

  @Test
  void whatAKilledProcessLeftLongAgoIsSwept() throws IOException {
    Path left = out.resolve(".2026-10-15.html.4711.part");
    Files.writeString(left, "half");
    Files.setLastModifiedTime(left, FileTime.from(Instant.parse("2020-01-01T00:00:00Z")));
    Path recent = out.resolve(".2026-10-15.html.4712.part");
    Files.writeString(recent, "another process at work");

    Ran.of("analyze", "--quiet", LOG, "--out", out).endsWith(0);

    assertThat(left).doesNotExist();
    assertThat(recent).exists();
  }
}
