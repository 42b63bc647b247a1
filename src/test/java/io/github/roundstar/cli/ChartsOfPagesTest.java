package io.github.roundstar.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every chart of every kind of page says what it shows, in words and in numbers. */
class ChartsOfPagesTest {
  private static final Pattern FIGURE = Pattern.compile("(?s)<figure[^>]*>(.*?)</figure>");

  private static final Pattern NUMBERS =
      Pattern.compile("(?s)<details class=\"data\">.*<td>[^<]+</td>");
  private static final Pattern SECTION = Pattern.compile("(?=<section |<details id=)");

  @TempDir private static Path folder;

  @BeforeAll
  static void writePages() throws IOException {
    Path logs = Files.createDirectory(folder.resolve("logs"));
    for (String name :
        List.of(
            "before-worm-adjustment", "after-worm-adjustment", "polar-drift", "gusts-and-cloud")) {
      Files.copy(Path.of("sample-logs", name + ".ecsv"), logs.resolve(name + ".ecsv"));
    }
    Path equipment = Path.of("sample-logs", "equipment.toml");
    Ran.of("season", logs, "--equipment", equipment, "--out", folder).endsWith(0);
    Ran.of(
            "compare",
            "--before",
            folder.resolve("2026-10-20.json"),
            "--after",
            folder.resolve("2026-10-24.json"),
            "--out",
            folder)
        .endsWith(0);
  }

  @Test
  void everyChartHasTitleTextAndNumbers() throws IOException {
    List<Path> pages = pages();
    assertThat(pages).hasSize(6);
    for (Path page : pages) {
      String html = Files.readString(page);
      List<String> figures = FIGURE.matcher(html).results().map(found -> found.group(1)).toList();

      assertThat(figures).as("%s", page.getFileName()).isNotEmpty();
      assertThat(html.split("<svg [^>]*class=\"chart (?:wide|half|small)", -1))
          .hasSize(figures.size() + 1);
      assertThat(figures)
          .as("%s", page.getFileName())
          .allSatisfy(
              figure ->
                  assertThat(figure)
                      .containsPattern("<figcaption>[^<]{10,}</figcaption>")
                      .containsPattern("<title id=\"[^\"]+\">[^<]{10,}</title>")
                      .containsPattern("<desc id=\"[^\"]+\">[^<]{20,}</desc>"));
      assertThat(SECTION.split(html))
          .as("%s", page.getFileName())
          .allSatisfy(section -> assertThat(withoutNumbers(section)).isZero());
    }
  }

  /** Charts of a section with neither numbers of their own nor a table of the section beside. */
  private static long withoutNumbers(String section) {
    boolean table = FIGURE.matcher(section).replaceAll("").contains("<td");
    return FIGURE
        .matcher(section)
        .results()
        .filter(figure -> !table && !NUMBERS.matcher(figure.group(1)).find())
        .count();
  }

  @Test
  void numbersThatTheSectionsTableHasAreNotRepeated() throws IOException {
    String html = Files.readString(folder.resolve("2026-10-28.html"));

    assertThat(SECTION.split(html))
        .filteredOn(section -> section.contains("id=\"budget-t\""))
        .singleElement()
        .satisfies(
            section ->
                assertThat(section).containsOnlyOnce("<table").doesNotContain("class=\"data\""));
  }

  /**
   * Every open section of a cause, and what sums up, has a chart to look at; fields, flips and what
   * is usual are few numbers beside each other, in a table, and how to take the next night is a few
   * sentences.
   */
  @Test
  void everyCauseHasAChart() throws IOException {
    List<Path> nights =
        pages().stream().filter(p -> p.getFileName().toString().startsWith("2026")).toList();
    assertThat(nights).hasSize(4);
    for (Path page : nights) {
      assertThat(
              Pattern.compile("(?s)<section id=.*?</section>")
                  .matcher(Files.readString(page))
                  .results())
          .as("%s", page.getFileName())
          .allSatisfy(
              section ->
                  assertThat(section.group())
                      .contains(
                          section.group().matches("(?s)<section id=\"planning\".*")
                              ? "<p"
                              : section.group().matches("(?s)<section id=\"(fields|flip|usual)\".*")
                                  ? "<table"
                                  : "<svg"));
    }
  }

  @Test
  void everyFoldedSectionAndEveryContentsLinkHasItsPlace() throws IOException {
    for (Path page : pages()) {
      String html = Files.readString(page);

      assertThat(Pattern.compile("href=\"#([^\"]+)\"").matcher(html).results())
          .allSatisfy(link -> assertThat(html).containsOnlyOnce(" id=\"" + link.group(1) + "\""));
    }
  }

  private static List<Path> pages() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(file -> file.toString().endsWith(".html")).sorted().toList();
    }
  }
}
