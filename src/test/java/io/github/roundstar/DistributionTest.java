package io.github.roundstar;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Everything shipped that others wrote is in the table of licences, with its text beside it. */
class DistributionTest {
  private static final Path LICENSES = Path.of("src/main/dist/licenses");
  private static final Path TABLE = LICENSES.resolve("THIRD-PARTY.md");

  /** Written by the build before the tests: what it copies into the distribution. */
  private static final Path SHIPPED = Path.of("target/runtime-classpath.txt");

  private static final Pattern LINK = Pattern.compile("]\\(([^)]+)\\)");

  @Test
  void tableNamesEveryShippedLibraryAndNoOther() throws IOException {
    assertThat(artifactsOfTable().filter(name -> !name.endsWith(".ttf")))
        .containsExactlyInAnyOrderElementsOf(shippedArtifacts());
  }

  @Test
  void tableNamesEveryFontAndNoOther() throws IOException {
    assertThat(artifactsOfTable().filter(name -> name.endsWith(".ttf")))
        .containsExactlyInAnyOrderElementsOf(
            fileNames(Path.of("src/main/resources")).filter(n -> n.endsWith(".ttf")).toList());
  }

  @Test
  void everyRowNamesATextThatIsThere() throws IOException {
    assertThat(rows())
        .allSatisfy(
            row ->
                assertThat(links(row))
                    .isNotEmpty()
                    .allSatisfy(text -> assertThat(textNamed(text)).isNotEmptyFile()));
  }

  @Test
  void everyTextBelongsToARow() throws IOException {
    assertThat(rows().flatMap(row -> links(row).stream()))
        .containsAll(fileNames(LICENSES).filter(n -> n.endsWith(".txt")).toList());
  }

  @Test
  void versionIsFilledInByTheBuild() throws IOException {
    try (InputStream version = getClass().getResourceAsStream("cli/version.txt")) {
      assertThat(version).asString(StandardCharsets.UTF_8).matches("\\d+\\.\\d+\\.\\d+\\n");
    }
  }

  private static Stream<String> rows() throws IOException {
    return Files.readAllLines(TABLE).stream().filter(line -> line.startsWith("| ")).skip(1);
  }

  private static Stream<String> artifactsOfTable() throws IOException {
    return rows().map(row -> row.split("\\|")[1].strip());
  }

  private static List<String> links(String row) {
    return LINK.matcher(row).results().map((MatchResult link) -> link.group(1)).toList();
  }

  /** In the distribution, LICENSE lies one folder up; in the sources, at the top. */
  private static Path textNamed(String link) {
    return link.equals("../LICENSE") ? Path.of("LICENSE") : LICENSES.resolve(link);
  }

  /** A Maven repository keeps a jar under artifact/version/. */
  private static List<String> shippedArtifacts() throws IOException {
    return Stream.of(Files.readString(SHIPPED).strip().split(File.pathSeparator))
        .map(jar -> Path.of(jar).getParent().getParent().getFileName().toString())
        .toList();
  }

  private static Stream<String> fileNames(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      return files.map(file -> file.getFileName().toString()).toList().stream();
    }
  }
}
