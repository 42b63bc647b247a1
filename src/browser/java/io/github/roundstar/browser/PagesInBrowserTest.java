package io.github.roundstar.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.results.Results;
import com.deque.html.axecore.selenium.AxeBuilder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Base64;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.PrintsPage;
import org.openqa.selenium.print.PrintOptions;

/**
 * Pages of every kind in a real browser: silent, alone, readable at every width and in every theme.
 *
 * <p>Accessibility is checked by axe-core with the rules of WCAG 2.2 level AA (W3C Recommendation
 * 2023), contrast among them.
 */
@Tag("browser")
class PagesInBrowserTest {
  @TempDir private static Path folder;

  private static List<Path> pages;
  private static Path night;
  private static final String UNFOLD =
      "document.querySelectorAll('main details').forEach(d => d.open = true)";

  private static Browser browser;

  @BeforeAll
  static void start() throws Exception {
    pages = Pages.write(folder);
    night = folder.resolve("2026-10-11.html").toAbsolutePath();
    browser = new Browser();
  }

  @AfterAll
  static void stop() {
    browser.close();
  }

  @Test
  void pageOfEveryKindIsThere() {
    assertThat(pages)
        .extracting(page -> page.getFileName().toString())
        .contains("2026-10-11.html", "2026-11-02.html", "nights.html", "season.html")
        .anyMatch(name -> name.startsWith("compare-"));
  }

  @Test
  void pageIsSilentAndAsksForNothing() {
    for (Path page : pages) {
      browser.open(page, 1440);

      assertThat(browser.messages()).as("%s", page.getFileName()).isEmpty();
      assertThat(browser.requests()).containsExactly(page.toUri().toString());
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {320, 768, 1440, 3840})
  void pageNeverScrollsSideways(int width) {
    for (Path page : pages) {
      browser.open(page, width);
      browser.script(UNFOLD);

      assertThat(browser.script("return document.documentElement.scrollWidth"))
          .as("%s at %d px", page.getFileName(), width)
          .isEqualTo((long) width);
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {320, 768, 1440})
  void chartThatScrollsSaysSoAndNoOther(int width) {
    browser.open(night, width);
    browser.script(UNFOLD);

    assertThat(
            browser.script(
                """
                return [...document.querySelectorAll('figure')].filter(f => {
                  const box = f.querySelector('.scroll');
                  const hint = f.querySelector('.sideways');
                  const said = hint !== null && getComputedStyle(hint).display === 'block';
                  return box.tabIndex !== 0 || said !== box.scrollWidth > box.clientWidth + 1;
                }).map(f => f.querySelector('figcaption').textContent).join('; ')"""))
        .isEqualTo("");
  }

  /** Charts, tables and tables of numbers, opened one and all. */
  @ParameterizedTest
  @ValueSource(ints = {320, 768, 1024, 1440})
  void nothingIsWiderThanItsPlaceWithoutSayingSo(int width) {
    for (Path page : pages) {
      browser.open(page, width);
      browser.script("document.querySelectorAll('details').forEach(d => d.open = true)");

      assertThat(
              browser.script(
                  """
                  return [...document.querySelectorAll('main .scroll')].filter(box => {
                    const shown = box.getClientRects().length > 0;
                    const figure = box.closest('figure');
                    const before = box.previousElementSibling;
                    const hint = figure && !box.closest('.data')
                        ? figure.querySelector('.sideways')
                        : before && before.matches('.sideways,.hint') ? before : null;
                    const said = hint !== null && getComputedStyle(hint).display === 'block';
                    return shown && box.scrollWidth > box.clientWidth + 1 && !said;
                  }).map(box => box.textContent.slice(0, 60) + ' '
                      + box.scrollWidth + '>' + box.clientWidth).join('; ')"""))
          .as("%s at %d px", page.getFileName(), width)
          .isEqualTo("");
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {320, 768, 1440})
  void noIntervalBreaksOverTwoLines(int width) {
    for (Path page : pages) {
      browser.open(page, width);
      browser.script(UNFOLD);

      assertThat(
              browser.script(
                  """
                  const broken = [];
                  const walk = document.createTreeWalker(
                      document.querySelector('main'), NodeFilter.SHOW_TEXT);
                  for (let node; (node = walk.nextNode()); ) {
                    if (node.parentElement.closest('svg,script,style')) continue;
                    const interval = /\\([^()]*\\.\\.[^()]*\\)/g;
                    for (let found; (found = interval.exec(node.data)); ) {
                      const range = document.createRange();
                      range.setStart(node, found.index);
                      range.setEnd(node, found.index + found[0].length);
                      const lines = new Set([...range.getClientRects()]
                          .filter(r => r.width > 1).map(r => Math.round(r.top)));
                      if (lines.size > 1) broken.push(found[0]);
                    }
                  }
                  return broken.join('; ')"""))
          .as("%s at %d px", page.getFileName(), width)
          .isEqualTo("");
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {1104, 1440})
  void evidenceStandsBesideItsChart(int width) {
    for (Path page : pages) {
      browser.open(page, width);
      browser.script(UNFOLD);

      assertThat(
              browser.script(
                  """
                  return [...document.querySelectorAll('.beside')]
                      .filter(b => b.querySelector(':scope>.said')).filter(b => {
                    const chart = b.querySelector('figure').getBoundingClientRect();
                    const said = b.querySelector(':scope>.said').getBoundingClientRect();
                    return said.left < chart.right || said.top > chart.top + 40;
                  }).map(b => b.querySelector('figcaption').textContent).join('; ')"""))
          .as("%s at %d px", page.getFileName(), width)
          .isEqualTo("");
    }
  }

  /** In whatever font the machine has: Debian's default is wider than the one charts count on. */
  @ParameterizedTest
  @ValueSource(ints = {320, 768, 1440})
  void wordsOfAChartStayInsideItAndApart(int width) {
    for (Path page : pages) {
      browser.open(page, width);
      browser.script(UNFOLD);

      assertThat(
              browser.script(
                  """
                  const wrong = [];
                  for (const svg of document.querySelectorAll('main svg.chart')) {
                    if (!svg.getClientRects().length) continue;
                    const view = svg.viewBox.baseVal;
                    const words = [...svg.querySelectorAll('text')]
                        .map(t => ({box: t.getBBox(), text: t.textContent}));
                    words.forEach((w, i) => {
                      const b = w.box;
                      if (b.x < -1 || b.x + b.width > view.width + 1 || b.y + b.height > view.height + 3)
                        wrong.push('outside: ' + w.text);
                      words.slice(0, i).forEach(o => {
                        const across = Math.min(b.x + b.width, o.box.x + o.box.width)
                            - Math.max(b.x, o.box.x);
                        const down = Math.min(b.y + b.height, o.box.y + o.box.height)
                            - Math.max(b.y, o.box.y);
                        if (across > 2 && down > 4) wrong.push(w.text + ' on ' + o.text);
                      });
                    });
                  }
                  return wrong.join('; ')"""))
          .as("%s at %d px", page.getFileName(), width)
          .isEqualTo("");
    }
  }

  @ParameterizedTest
  @CsvSource({"320, narrow", "768, medium", "1440, wide"})
  void timelineHasAFormThatFitsEveryScreen(int width, String form) {
    browser.open(night, width);

    assertThat(
            browser.script(
                """
                const box = document.querySelector('#timeline .scroll');
                const seen = [...box.querySelectorAll('svg')].filter(s => s.getClientRects().length);
                return seen.length + ' ' + seen[0].classList[1] + ' '
                    + (box.scrollWidth <= box.clientWidth) + ' '
                    + (seen[0].getBoundingClientRect().width / seen[0].viewBox.baseVal.width > 0.85)"""))
        .isEqualTo("1 " + form + " true true");
  }

  @ParameterizedTest
  @CsvSource({"light, 'rgb(250, 249, 246)'", "dark, 'rgb(19, 21, 24)'", "red, 'rgb(0, 0, 0)'"})
  void themeIsTakenAndRemembered(String theme, String paper) {
    browser.open(night, 1440);
    browser.theme(theme);
    String chosen = paper();
    browser.open(night, 1440);

    assertThat(List.of(chosen, paper())).containsOnly(paper);
    assertThat(browser.messages()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"light", "dark", "red"})
  void axeFindsNoViolation(String theme) {
    for (Path page : pages) {
      browser.open(page, 1440);
      browser.theme(theme);
      browser.script(UNFOLD);
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
    browser.open(night, 1440);
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
    browser.open(night, 1440);
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
        .matches("\\d\\d:\\d\\d:\\d\\d UTC \\(\\d\\d:\\d\\d:\\d\\d\\): RA .*, Dec .*");
    assertThat(browser.messages()).isEmpty();
  }

  @Test
  void linkToAFoldedSectionOpensItEvenTwice() {
    browser.open(night, 1440);
    assertThat(open("star")).isFalse();
    follow("star");
    assertThat(open("star")).isTrue();

    browser.driver().findElement(By.cssSelector("#star>summary")).click();
    assertThat(open("star")).isFalse();
    follow("star");
    assertThat(open("star")).isTrue();
    assertThat(browser.script("return document.querySelector('.contents details').open"))
        .isEqualTo(false);
  }

  @Test
  void addressWithAnAnchorOpensItsSection() {
    browser.open(night, 1440);
    browser.driver().get(night.toUri() + "#words");
    browser.driver().navigate().refresh();

    assertThat(open("words")).isTrue();
    assertThat(open("files")).isFalse();
  }

  /** What is folded stays on the screen; a page object of a PDF is {@code /Type /Page}. */
  @Test
  void aNightPrintsOnSixPagesAtMost() {
    for (Path page : pages) {
      if (page.getFileName().toString().matches("\\d{4}-\\d\\d-\\d\\d\\.html")) {
        browser.open(page, 1440);
        String pdf = ((PrintsPage) browser.driver()).print(new PrintOptions()).getContent();
        String text = new String(Base64.getDecoder().decode(pdf), StandardCharsets.ISO_8859_1);

        assertThat(text.split("/Type */Page\\b", -1).length - 1)
            .as("%s", page.getFileName())
            .isBetween(1, 6);
      }
    }
  }

  @Test
  void nightsAreSortedByTheColumnThatIsPressed() {
    browser.open(folder.resolve("nights.html").toAbsolutePath(), 1440);
    String press =
        "[...document.querySelectorAll('.sortable th')].find(h => h.textContent.includes('radial"
            + " RMS')).querySelector('button').click()";
    String column =
        "const c = [...document.querySelectorAll('.sortable th')].findIndex(h =>"
            + " h.textContent.includes('radial RMS')); return [...document.querySelectorAll("
            + "'.sortable tbody tr')].map(r => parseFloat(r.cells[c].textContent)).join(' ')";
    browser.script(press);
    List<Double> upwards =
        Stream.of(((String) browser.script(column)).split(" ")).map(Double::valueOf).toList();
    browser.script(press);
    List<Double> downwards =
        Stream.of(((String) browser.script(column)).split(" ")).map(Double::valueOf).toList();

    assertThat(upwards).hasSizeGreaterThan(1).isSorted();
    assertThat(downwards).isSortedAccordingTo(Comparator.reverseOrder());
    assertThat(browser.messages()).isEmpty();
  }

  @Test
  void everyStopOfTheTabKeyShowsWhereItIs() {
    browser.open(night, 1440);
    for (int i = 0; i < 25; i++) {
      browser.driver().switchTo().activeElement().sendKeys(Keys.TAB);

      assertThat((String) browser.script(FOCUS)).as("stop %d", i).matches(".* [1-9][\\d.]*px");
    }
  }

  private static final String FOCUS =
      """
      const e = document.activeElement;
      const s = getComputedStyle(e);
      return e.tagName + ' ' + (s.outlineStyle === 'none' ? '0px' : s.outlineWidth)""";

  private static void follow(String id) {
    browser.driver().findElement(By.cssSelector(".contents summary")).click();
    browser.driver().findElement(By.cssSelector(".contents a[href='#" + id + "']")).click();
  }

  private static Boolean open(String id) {
    return (Boolean) browser.script("return document.getElementById('" + id + "').open");
  }

  private static String paper() {
    return (String) browser.script("return getComputedStyle(document.body).backgroundColor");
  }
}
