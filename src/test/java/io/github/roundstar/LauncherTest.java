package io.github.roundstar;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The launcher starts the Java it should with what it was given, wherever it lies and however it is
 * called. A small script stands for Java: it prints its arguments, one a line, and ends with code
 * 7.
 */
@DisabledOnOs(OS.WINDOWS)
class LauncherTest {
  @TempDir Path folder;
  private Path home;
  private Path launcher;

  @BeforeEach
  void unpack() throws IOException {
    home = folder.toRealPath().resolve("a b/roundstar");
    launcher = home.resolve("bin/roundstar");
    Files.createDirectories(launcher.getParent());
    Files.copy(Path.of("src/main/dist/bin/roundstar"), launcher);
  }

  @Test
  void argumentsAndExitCodePassUnchanged() throws Exception {
    Ran ran = run(launcher, java("17.0.15"), "analyze", "one two", "", "*", "--", "-x");

    assertThat(ran.arguments())
        .containsSubsequence(
            "-cp",
            classPath(),
            "io.github.roundstar.cli.Main",
            "analyze",
            "one two",
            "",
            "*",
            "--",
            "-x");
    assertThat(ran.exitCode()).isEqualTo(7);
  }

  @Test
  void logsDroppedOntoItAreOpened() throws Exception {
    Path log = Files.createFile(folder.toRealPath().resolve("a b/one two.log"));
    Map<String, String> desktop =
        Map.of(
            "PATH",
            System.getenv("PATH"),
            "JAVA_HOME",
            java("17.0.15").toString(),
            "DISPLAY",
            ":0");

    assertThat(start(launcher, desktop, log.toString()).arguments())
        .endsWith("io.github.roundstar.cli.Main", "--open", log.toString());
    assertThat(start(launcher, desktop, "analyze", log.toString()).arguments())
        .doesNotContain("--open");
    assertThat(run(launcher, java("17.0.15"), log.toString()).arguments()).doesNotContain("--open");
  }

  @Test
  void warningsOfTheJvmAreKeptFromStdout() throws Exception {
    assertThat(run(launcher, java("17.0.15")).arguments())
        .containsSubsequence("-Xlog:disable", "-Xlog:all=warning,cds*=off,class+path*=off:stderr");
  }

  @Test
  void folderIsFoundThroughAChainOfLinks() throws Exception {
    Path relative = Files.createSymbolicLink(folder.resolve("one"), Path.of("a b/roundstar/bin"));
    Path absolute = Files.createSymbolicLink(folder.resolve("two"), relative.resolve("roundstar"));
    Path last = Files.createSymbolicLink(folder.resolve("three"), Path.of("two"));

    assertThat(List.of(relative.resolve("roundstar"), absolute, last))
        .allSatisfy(
            link -> assertThat(run(link, java("17.0.15")).arguments()).contains(classPath()));
  }

  @Test
  void ownFontConfigurationIsPassedOnlyWhereThereIsOne() throws Exception {
    Path fonts = home.resolve("conf/fontconfig.properties");
    String option = "-Dsun.awt.fontconfig=" + fonts;

    assertThat(run(launcher, java("17.0.15")).arguments()).doesNotContain(option);
    Files.createDirectories(fonts.getParent());
    Files.createFile(fonts);
    assertThat(run(launcher, java("17.0.15")).arguments())
        .containsSubsequence(option, "io.github.roundstar.cli.Main");
  }

  @Test
  void jarsStandOnTheClassPathInAFixedOrderOwnJarFirst() throws Exception {
    Files.createDirectories(home.resolve("lib"));
    for (String jar : List.of("zebra.jar", "roundstar.jar", "ant.jar")) {
      Files.createFile(home.resolve("lib").resolve(jar));
    }

    assertThat(run(launcher, java("17.0.15")).arguments())
        .contains(
            Stream.of("roundstar.jar", "ant.jar", "zebra.jar")
                .map(jar -> home + "/lib/" + jar)
                .collect(Collectors.joining(":")));
  }

  @ParameterizedTest
  @ValueSource(strings = {"analyze", "layout", "tolerance", "stars", "--help"})
  void shortWorkStartsWithTheQuickCompiler(String command) throws Exception {
    assertThat(run(launcher, java("17.0.15"), "--verbose", command).arguments())
        .contains("-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1", "-XX:MaxNewSize=32m");
  }

  @ParameterizedTest
  @CsvSource({"analyze, true", "--help, true", "stars, false", "season, false"})
  void smallMethodsAloneAreCompiledIntoOthersWhereThatIsQuicker(String command, boolean given)
      throws Exception {
    assertThat(
            run(launcher, java("17.0.15"), command).arguments().contains("-XX:C1MaxInlineSize=20"))
        .isEqualTo(given);
  }

  @ParameterizedTest
  @ValueSource(strings = {"season", "compare", "simulate"})
  void longWorkKeepsTheDefaultsOfTheJvm(String command) throws Exception {
    assertThat(run(launcher, java("17.0.15"), "--verbose", command).arguments())
        .doesNotContain("-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1", "-XX:MaxNewSize=32m");
  }

  @Test
  void manyFramesKeepTheDefaultsOfTheJvm() throws Exception {
    String[] frames = "stars a b c d e f g h i".split(" ");
    assertThat(run(launcher, java("17.0.15"), frames).arguments())
        .doesNotContain("-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1", "-XX:MaxNewSize=32m");
  }

  @Test
  void archiveOfClassesIsMadeAtTheFirstStartAndMappedFromThenOn() throws Exception {
    listClasses();
    Path cache = folder.resolve("cache");
    Path java = java("17.0.15");

    Ran first = start(launcher, caching(cache, java));
    Path archive = onlyFile(cache.resolve("roundstar"));
    FileTime made = Files.getLastModifiedTime(archive);
    Ran second = start(launcher, caching(cache, java));

    assertThat(archive.getFileName().toString()).matches("classes-\\d+-\\d+\\.jsa");
    assertThat(List.of(first, second))
        .allSatisfy(
            ran -> assertThat(ran.arguments()).contains("-XX:SharedArchiveFile=" + archive));
    assertThat(Files.getLastModifiedTime(onlyFile(cache.resolve("roundstar")))).isEqualTo(made);
  }

  @Test
  void anotherBuildReplacesTheArchive() throws Exception {
    listClasses();
    Path cache = folder.resolve("cache");
    start(launcher, caching(cache, java("17.0.15")));
    Path before = onlyFile(cache.resolve("roundstar"));

    Files.writeString(home.resolve("lib/roundstar.jar"), "a newer build");
    start(launcher, caching(cache, java("17.0.15")));

    assertThat(onlyFile(cache.resolve("roundstar"))).isNotEqualTo(before);
  }

  @Test
  void cacheThatCannotBeWrittenIsDoneWithout() throws Exception {
    listClasses();
    Path cache = Files.createFile(folder.resolve("no folder"));

    Ran ran = start(launcher, caching(cache, java("17.0.15")));

    assertThat(ran.exitCode()).isEqualTo(7);
    assertThat(ran.stderr()).isEmpty();
    assertThat(ran.arguments()).noneMatch(word -> word.startsWith("-XX:SharedArchiveFile"));
  }

  @Test
  void cacheThatGoesWhileTheArchiveIsMadeIsDoneWithout() throws Exception {
    listClasses();
    Path cache = folder.resolve("cache");

    Ran ran = start(launcher, caching(cache, failing("rm -r '" + cache + "'; exit 1")));

    assertThat(ran.exitCode()).isEqualTo(7);
    assertThat(ran.stderr()).isEmpty();
    assertThat(ran.arguments()).noneMatch(word -> word.startsWith("-XX:SharedArchiveFile"));
  }

  /** A Java that does this when asked for an archive. */
  private Path failing(String work) throws Exception {
    Path java = java("17.0.15");
    Files.writeString(
        java.resolve("bin/java"),
        """
        #!/bin/sh
        if [ "$1" = -Xshare:dump ]; then
          WORK
        fi
        printf '%s\\n' "$@"
        exit 7
        """
            .replace("WORK", work));
    return java;
  }

  /** Java's stand-in counts the attempts; the first build fails, a newer one may succeed. */
  @Test
  void failedArchiveIsNotTriedAgainByTheSameBuild() throws Exception {
    listClasses();
    Path cache = folder.resolve("cache");
    Path attempts = folder.resolve("attempts");
    Path java =
        failing("echo one more >>'" + attempts + "'; echo half >\"${3#*=}\"; echo broken; exit 1");

    Ran first = start(launcher, caching(cache, java));
    Path mark = onlyFile(cache.resolve("roundstar"));
    Ran second = start(launcher, caching(cache, java));

    assertThat(mark.getFileName().toString()).matches("classes-\\d+-\\d+\\.failed");
    assertThat(mark).isEmptyFile();
    assertThat(List.of(first, second))
        .allSatisfy(
            ran -> {
              assertThat(ran.exitCode()).isEqualTo(7);
              assertThat(ran.arguments()).doesNotContain("broken");
              assertThat(ran.arguments()).noneMatch(word -> word.startsWith("-XX:SharedArchive"));
            });
    assertThat(attempts).hasContent("one more");

    Files.writeString(home.resolve("lib/roundstar.jar"), "a newer build");
    start(launcher, caching(cache, java));

    assertThat(attempts).content().hasLineCount(2);
    assertThat(onlyFile(cache.resolve("roundstar"))).isNotEqualTo(mark);
  }

  @ParameterizedTest
  @ValueSource(strings = {"17", "17.0.15", "21-ea", "25.0.3"})
  void newEnoughJavaIsTaken(String version) throws Exception {
    assertThat(run(launcher, java(version)).exitCode()).isEqualTo(7);
  }

  @ParameterizedTest
  @ValueSource(strings = {"1.8.0_392", "11.0.22", "16"})
  void olderJavaIsRefusedWithItsVersion(String version) throws Exception {
    assertRefused(run(launcher, java(version)), "found Java " + version + ": install Java 17");
  }

  @Test
  void javaWithoutReleaseFileIsAsked() throws Exception {
    Path java = java("11.0.22");
    Files.delete(java.resolve("release"));

    assertRefused(run(launcher, java), "found Java 11.0.22");
  }

  @Test
  void javaHomeWithoutJavaIsRefused() throws Exception {
    assertRefused(run(launcher, folder), "JAVA_HOME: found no " + folder + "/bin/java");
  }

  @Test
  void missingJavaIsSaid() throws Exception {
    assertRefused(start(launcher, Map.of("PATH", folder.toString())), "found no java on PATH");
  }

  @Test
  void withoutJavaHomeTheJavaOnThePathIsStarted() throws Exception {
    String path = java("17.0.15").resolve("bin") + ":" + System.getenv("PATH");

    assertThat(start(launcher, Map.of("PATH", path)).exitCode()).isEqualTo(7);
  }

  /** The other launcher's checks are {@code src/test/windows/launcher.sh}. */
  @Test
  void commandFileHasTheLineEndsThatItsLabelsNeed() throws IOException {
    String file = Files.readString(Path.of("src/main/dist/bin/roundstar.cmd"));
    assertThat(file).contains(":word\r\n");
    assertThat(file.replace("\r\n", "")).doesNotContain("\n");
  }

  private static void assertRefused(Ran ran, String words) {
    assertThat(ran.stderr()).startsWith("roundstar: ").contains(words).hasLineCount(1);
    assertThat(ran.arguments()).isEmpty();
    assertThat(ran.exitCode()).isEqualTo(4);
  }

  private String classPath() {
    return home + "/lib/roundstar.jar:" + home + "/lib/*.jar";
  }

  private void listClasses() throws IOException {
    Files.createDirectories(home.resolve("lib"));
    Files.createFile(home.resolve("lib/roundstar.jar"));
    Files.createFile(home.resolve("lib/classes.lst"));
  }

  private static Map<String, String> caching(Path cache, Path javaHome) {
    return Map.of(
        "PATH",
        System.getenv("PATH"),
        "JAVA_HOME",
        javaHome.toString(),
        "XDG_CACHE_HOME",
        cache.toString());
  }

  private static Path onlyFile(Path of) throws IOException {
    try (Stream<Path> files = Files.list(of)) {
      List<Path> all = files.toList();
      assertThat(all).hasSize(1);
      return all.get(0);
    }
  }

  private Path java(String version) throws IOException {
    Path javaHome = folder.resolve("java " + version);
    Path program = javaHome.resolve("bin/java");
    Files.createDirectories(program.getParent());
    Files.writeString(javaHome.resolve("release"), "JAVA_VERSION=\"" + version + "\"\n");
    Files.writeString(
        program,
        """
        #!/bin/sh
        if [ "$1" = -version ]; then echo 'openjdk version "VERSION" 2024-01-16' >&2; exit; fi
        if [ "$1" = -Xshare:dump ]; then echo classes >"${3#*=}"; exit; fi
        printf '%s\\n' "$@"
        exit 7
        """
            .replace("VERSION", version));
    assertThat(program.toFile().setExecutable(true)).isTrue();
    return javaHome;
  }

  private Ran run(Path called, Path javaHome, String... arguments) throws Exception {
    Map<String, String> environment =
        Map.of("PATH", System.getenv("PATH"), "JAVA_HOME", javaHome.toString());
    return start(called, environment, arguments);
  }

  private Ran start(Path called, Map<String, String> environment, String... arguments)
      throws Exception {
    Path out = folder.resolve("out");
    Path err = folder.resolve("err");
    List<String> command =
        Stream.concat(Stream.of("/bin/sh", called.toString()), Stream.of(arguments)).toList();
    ProcessBuilder builder =
        new ProcessBuilder(command).redirectOutput(out.toFile()).redirectError(err.toFile());
    builder.environment().clear();
    builder.environment().putAll(environment);
    int exitCode = builder.start().waitFor();
    return new Ran(
        exitCode,
        Files.readAllLines(out, StandardCharsets.UTF_8),
        Files.readString(err, StandardCharsets.UTF_8));
  }

  private record Ran(int exitCode, List<String> arguments, String stderr) {}
}
