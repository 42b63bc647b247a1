package io.github.roundstar.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TimeZone;
import java.util.concurrent.TimeUnit;
import java.util.jar.JarOutputStream;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The same log gives the same bytes, report and JSON, whatever the locale, the time zone, the
 * fonts, the Java and how it is started.
 */
class SameBytesTest {
  private static final String LOG = "sample-logs/polar-drift.ecsv";
  private static final String EQUIPMENT = "sample-logs/equipment.toml";
  private static final Path OTHER_JDK = Path.of("/usr/lib/jvm/temurin-25-jdk-amd64");

  @TempDir static Path folder;
  private static List<Path> expected;
  private static String withoutEquipment;
  private final Locale locale = Locale.getDefault();
  private final TimeZone zone = TimeZone.getDefault();

  @BeforeAll
  static void analyseOnce() throws IOException {
    Ran.of("analyze", LOG, "--equipment", EQUIPMENT, "--out", folder.resolve("expected"))
        .endsWith(0);
    expected = files(folder.resolve("expected"));
    assertThat(expected).hasSize(3);
    withoutEquipment = Ran.of("analyze", LOG, "--out", folder.resolve("usual")).endsWith(0).out();
  }

  @AfterEach
  void putBack() {
    Locale.setDefault(locale);
    TimeZone.setDefault(zone);
  }

  private static List<Path> files(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.sorted().toList();
    }
  }

  private static void assertSame(Path out) throws IOException {
    List<Path> written = files(out);
    assertThat(written).extracting(Path::getFileName).isEqualTo(names());
    for (int i = 0; i < written.size(); i++) {
      assertThat(written.get(i)).hasSameBinaryContentAs(expected.get(i));
    }
  }

  private static List<Path> names() {
    return expected.stream().map(Path::getFileName).toList();
  }

  @ParameterizedTest
  @CsvSource({
    "de, Pacific/Apia",
    "tr, Asia/Kathmandu",
    "ar-EG, Pacific/Apia",
    "hi-IN-u-nu-deva, Asia/Kathmandu"
  })
  void localeAndTimeZoneDoNotMatter(String tag, String zoneName) throws IOException {
    Locale.setDefault(Locale.forLanguageTag(tag));
    TimeZone.setDefault(TimeZone.getTimeZone(zoneName));

    Path out = folder.resolve(tag);
    Ran.of("analyze", LOG, "--equipment", EQUIPMENT, "--out", out).endsWith(0);

    assertSame(out);
    Ran plain = Ran.of("analyze", LOG, "--out", folder.resolve("usual")).endsWith(0);
    assertThat(plain.out()).isEqualTo(withoutEquipment);
    Path log = folder.resolve(tag + ".ecsv");
    Ran.of("simulate", "sample-logs/polar-drift.scenario.toml", "--out", log).endsWith(0);
    assertThat(log).hasSameBinaryContentAs(Path.of(LOG));
  }

  @Test
  void anotherProcessWithoutFontsGivesTheSame() throws Exception {
    assertSame(run(Path.of(System.getProperty("java.home")), "own"));
  }

  @Test
  void anotherJavaGivesTheSame() throws Exception {
    assumeTrue(Files.isDirectory(OTHER_JDK), OTHER_JDK + " is not there");

    assertSame(run(OTHER_JDK, "other"));
  }

  /** As the launcher starts it, in a process that finds neither fonts nor a locale. */
  private static Path run(Path javaHome, String name) throws Exception {
    Path out = folder.resolve(name);
    List<String> command = new ArrayList<>();
    command.add(javaHome.resolve("bin/java").toString());
    command.addAll(List.of("-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1"));
    command.addAll(List.of("-cp", classPath(), Main.class.getName()));
    command.addAll(List.of("analyze", LOG, "--equipment", EQUIPMENT, "--out", out.toString()));
    command.add("--quiet");
    start(command, Map.of("FONTCONFIG_PATH", "/nonexistent", "LC_ALL", "tr_TR.UTF-8", "TZ", "NZ"));
    return out;
  }

  private static String classPath() throws IOException {
    String libraries = Files.readString(Path.of("target/runtime-classpath.txt")).strip();
    return Path.of("target/classes").toAbsolutePath() + File.pathSeparator + libraries;
  }

  private static void start(List<String> command, Map<String, String> environment)
      throws Exception {
    Path said = folder.resolve("said");
    ProcessBuilder builder =
        new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(said.toFile());
    builder.environment().clear();
    builder.environment().putAll(environment);
    Process process = builder.start();
    assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
    assertThat(process.exitValue()).as(Files.readString(said, UTF_8)).isZero();
    assertThat(Files.readAllLines(said)).hasSize(2);
  }

  /** The launcher among the classes of this build, since the distribution is packed later. */
  @ParameterizedTest(name = "{0} {1}")
  @CsvSource({"'', UTC", "tr_TR.UTF-8, Pacific/Apia", "de_DE.utf8, Asia/Kathmandu"})
  @DisabledOnOs(OS.WINDOWS)
  void theLauncherGivesTheSame(String tag, String zoneName) throws Exception {
    Path home = folder.resolve("Gerät ığ " + tag);
    Files.createDirectories(home.resolve("bin"));
    Files.createDirectories(home.resolve("lib"));
    Path launcher = home.resolve("bin/roundstar");
    Files.copy(Path.of("src/main/dist/bin/roundstar"), launcher);
    pack(Path.of("target/classes"), home.resolve("lib/roundstar.jar"));
    for (String jar :
        Files.readString(Path.of("target/runtime-classpath.txt"))
            .strip()
            .split(File.pathSeparator)) {
      Files.copy(Path.of(jar), home.resolve("lib").resolve(Path.of(jar).getFileName()));
    }
    Path log = Files.copy(Path.of(LOG), home.resolve(Path.of(LOG).getFileName()));
    Path out = home.resolve("çıktı für alle");

    start(
        List.of(
            "/bin/sh",
            launcher.toString(),
            "analyze",
            "--quiet",
            log.toString(),
            "--equipment",
            EQUIPMENT,
            "--out",
            out.toString()),
        Map.of(
            "PATH",
            System.getenv("PATH"),
            "JAVA_HOME",
            System.getProperty("java.home"),
            "LANG",
            tag,
            "TZ",
            zoneName,
            "FONTCONFIG_PATH",
            "/nonexistent"));

    assertSame(out);
  }

  private static void pack(Path classes, Path jar) throws IOException {
    try (JarOutputStream out = new JarOutputStream(Files.newOutputStream(jar));
        Stream<Path> files = Files.walk(classes)) {
      for (Path file : files.filter(Files::isRegularFile).sorted().toList()) {
        String name = classes.relativize(file).toString().replace(File.separatorChar, '/');
        out.putNextEntry(new ZipEntry(name));
        Files.copy(file, out);
      }
    }
  }
}
