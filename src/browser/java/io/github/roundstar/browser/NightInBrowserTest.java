package io.github.roundstar.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.results.Results;
import com.deque.html.axecore.selenium.AxeBuilder;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;

/**
 * The sample reports in a real browser: silent, alone, readable at every width and in every theme.
 *
 * <p>Accessibility is checked by axe-core with the rules of WCAG 2.2 level AA (W3C Recommendation
 * 2023), contrast among them.
 */
@Tag("browser")
class NightInBrowserTest {
  private static final Path SAMPLE = Path.of("reports/2026-10-11.html").toAbsolutePath();

  private static Browser browser;

  @BeforeAll
  static void start() {
    browser = new Browser();
  }

  @AfterAll
  static void stop() {
    browser.close();
  }

  static Stream<Path> samples() throws IOException {
    try (Stream<Path> files = Files.list(Path.of("reports"))) {
      return files
          .filter(file -> file.toString().endsWith(".html"))
          .map(Path::toAbsolutePath)
          .sorted()
          .toList()
          .stream();
    }
  }

  @ParameterizedTest
  @MethodSource("samples")
  void pageIsSilentAndAsksForNothing(Path page) {
    browser.open(page, 1440);

    assertThat(browser.messages()).isEmpty();
    assertThat(browser.requests()).containsExactly(page.toUri().toString());
  }

  @ParameterizedTest
  @ValueSource(ints = {320, 768, 1440, 3840})
  void pageNeverScrollsSideways(int width) throws IOException {
    for (Path page : samples().toList()) {
      browser.open(page, width);

      assertThat(browser.script("return document.documentElement.scrollWidth"))
          .as("%s at %d px", page.getFileName(), width)
          .isEqualTo((long) width);
    }
  }

  @ParameterizedTest
  @CsvSource({"light, 'rgb(250, 249, 246)'", "dark, 'rgb(19, 21, 24)'", "red, 'rgb(0, 0, 0)'"})
  void themeIsTakenAndRemembered(String theme, String paper) {
    browser.open(SAMPLE, 1440);
    browser.theme(theme);
    String chosen = paper();
    browser.open(SAMPLE, 1440);

    assertThat(List.of(chosen, paper())).containsOnly(paper);
    assertThat(browser.messages()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"light", "dark", "red"})
  void axeFindsNoViolation(String theme) throws IOException {
    for (Path page : samples().toList()) {
      browser.open(page, 1440);
      browser.theme(theme);
      browser.script("document.querySelectorAll('details').forEach(d => d.open = true)");
      Results results =
          new AxeBuilder()
              .withTags(List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"))
              .analyze(browser.driver());

      assertThat(results.getViolations())
          .as("%s in %s", page.getFileName(), theme)
          .extracting(rule -> rule.getId() + ": " + rule.getNodes())
          .isEmpty();
    }
  }

  @Test
  void dimRedGivesNoGreenAndNoBlueLight() {
    browser.open(SAMPLE, 1440);
    browser.theme("red");

    assertThat(
            browser.script(
                """
                const seen = new Set();
                for (const e of document.querySelectorAll('body,body *')) {
                  const s = getComputedStyle(e);
                  for (const p of ['color','backgroundColor','fill','stroke','borderTopColor','borderLeftColor']) {
                    const m = /rgba?\\((\\d+), (\\d+), (\\d+)(?:, ([\\d.]+))?/.exec(s[p]);
                    if (m && m[4] !== '0' && (+m[2] || +m[3])) seen.add(e.tagName + ' ' + p + ' ' + s[p]);
                  }
                }
                return [...seen].join('; ')"""))
        .isEqualTo("");
  }

  @Test
  void timelineStretchesAndTellsValues() {
    browser.open(SAMPLE, 1440);
    browser.driver().findElement(By.cssSelector("[data-zoom='2']")).click();

    assertThat(
            (Boolean)
                browser.script(
                    """
                    const f = document.querySelector('#timeline .scroll');
                    return f.scrollWidth > 1.7 * f.clientWidth && f.scrollLeft > 100
                        && document.documentElement.scrollWidth === innerWidth"""))
        .isTrue();
    browser.driver().findElement(By.cssSelector("#timeline .scroll")).sendKeys(Keys.ARROW_RIGHT);
    assertThat(browser.driver().findElement(By.tagName("output")).getText())
        .matches("\\d\\d:\\d\\d:\\d\\d UTC: RA .*, Dec .*");
    assertThat(browser.messages()).isEmpty();
  }

  private static String paper() {
    return (String) browser.script("return getComputedStyle(document.body).backgroundColor");
  }
}
