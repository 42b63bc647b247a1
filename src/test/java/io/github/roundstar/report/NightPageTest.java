package io.github.roundstar.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import java.util.TimeZone;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/**
 * A night's page stands alone: it asks for nothing, runs its own script only, shows log text as
 * text, and is the same everywhere.
 */
class NightPageTest {
  private static String html;
  private static Document page;

  private final Locale locale = Locale.getDefault();
  private final TimeZone zone = TimeZone.getDefault();

  @BeforeAll
  static void render() throws Exception {
    html = html(SampleNight.twoHours());
    page = parsed(html);
  }

  @AfterEach
  void restore() {
    Locale.setDefault(locale);
    TimeZone.setDefault(zone);
  }

  @Test
  void policyAllowsOnlyItsOwnStyleBlockAndScript() throws Exception {

    assertThat(page.getElementsByTagName("style").getLength()).isOne();
    assertThat(html)
        .contains(
            "content=\"default-src &#39;none&#39;; style-src &#39;sha256-"
                + hash("style")
                + "&#39;; script-src &#39;sha256-"
                + hash("script")
                + "&#39;; base-uri &#39;none&#39;; form-action &#39;none&#39;\"");
  }

  /** Where rows were lost, the first screen says so, not a folded section alone. */
  @Test
  void rowsThatCouldNotBeReadAreToldBeforeTheTimeline() {
    String told = "2 rows of garden-pier.ecsv (less than 1\u00a0%) could not be read";
    assertThat(html).containsOnlyOnce(told);
    assertThat(html.indexOf(told)).isLessThan(html.indexOf("<svg"));
  }

  @Test
  void nothingIsAskedForAndOnlyTheOwnScriptRuns() {
    assertThat(html.replace("http://www.w3.org/2000/svg", ""))
        .containsOnlyOnce("<script")
        .doesNotContainIgnoringCase("http://", "https://", "javascript:", "url(", "src=")
        .doesNotContain(" th:", "<link", "<iframe");
  }

  @Test
  void noElementHasAStyleAttributeOrAHandler() {
    NodeList all = page.getElementsByTagName("*");
    for (int i = 0; i < all.getLength(); i++) {
      for (int k = 0; k < all.item(i).getAttributes().getLength(); k++) {
        assertThat(all.item(i).getAttributes().item(k).getNodeName()).doesNotMatch("style|on.*");
      }
    }
  }

  @Test
  void everyChartHasItsWordsAndIdsAreUnique() {
    NodeList charts = page.getElementsByTagName("svg");
    // The timeline comes in three forms, of which a screen shows one.
    assertThat(charts.getLength()).isEqualTo(8);
    for (int i = 0; i < charts.getLength(); i++) {
      Element chart = (Element) charts.item(i);
      assertThat(chart.getAttribute("role")).isEqualTo("img");
      assertThat(text(chart, "title")).isNotBlank();
      assertThat(text(chart, "desc")).hasSizeGreaterThan(40);
    }
    List<String> ids =
        Pattern.compile(" id=\"([^\"]+)\"").matcher(html).results().map(m -> m.group(1)).toList();
    assertThat(ids).doesNotHaveDuplicates();
  }

  @Test
  void coloursAreThePagesVariables() {
    Matcher colours = Pattern.compile(" (?:fill|stroke)=\"([^\"]*)\"").matcher(html);
    assertThat(colours.results().map(m -> m.group(1)).distinct())
        .allMatch(colour -> colour.equals("none") || colour.startsWith("var(--"));
  }

  @Test
  void textOfLogsStaysText() throws Exception {
    String nasty = "<script>alert('x')</script> & \"quoted\" <b style='x'>";

    String other = html(SampleNight.twoHours().saying(nasty));

    assertThat(other).containsOnlyOnce("<script").doesNotContain("<b style");
    Document parsed = parsed(other);
    assertThat(parsed.getElementsByTagName("header").item(0).getTextContent()).contains(nasty);
    assertThat(text(parsed.getDocumentElement(), "main")).contains(nasty);
    assertThat(elementsButLines(parsed)).isEqualTo(elementsButLines(page));
  }

  @ParameterizedTest
  @CsvSource({
    "de, Europe/Berlin",
    "tr, Asia/Istanbul",
    "ar-EG, Africa/Cairo",
    "hi-IN-u-nu-deva, Asia/Kolkata"
  })
  void bytesAreTheSameInEveryLocaleAndZone(String tag, String zoneId) {
    Locale.setDefault(Locale.forLanguageTag(tag));
    TimeZone.setDefault(TimeZone.getTimeZone(zoneId));

    assertThat(html(SampleNight.twoHours())).isEqualTo(html);
  }

  @Test
  void missingFiguresComeWithTheirReason() throws Exception {
    String sparse =
        NightPage.render(SampleNight.sparseResult(), SampleNight.sparseEvidence()).html();

    assertThat(text(parsed(sparse).getDocumentElement(), "main"))
        .contains("not known", "Radial RMS. No frame was used.", "no usable frames")
        .contains("Periodic error, drift in Dec and drift in RA. The log has no pulse columns.")
        .contains("Periodic error cannot be told", "Drift cannot be told")
        .doesNotContain("null", "NaN");
  }

  @Test
  void verdictLeadsAndFindingsComeFirst() throws Exception {
    SampleNight night = SampleNight.twoHours();
    Document judged = parsed(NightPage.render(night.judged(), night.evidence()).html());

    assertThat(text(judged.getDocumentElement(), "h1")).startsWith("Mesh the Dec worm");
    assertThat(text(judged.getDocumentElement(), "header"))
        .contains("Mount: Fix first", "Air: Fine", "Settings: Watch", "The air was steady.");
    assertThat(text(judged.getDocumentElement(), "h2"))
        .isEqualTo("The Dec gear has 2.9 arcsec of play");
    assertThat(text((Element) judged.getElementsByTagName("section").item(1), "ol"))
        .contains("Balance", "Mesh");
  }

  @Test
  void undatedNightCountsMinutes() {
    assertThat(html(SampleNight.twoHours().undated()))
        .contains("minutes since the first frame")
        .doesNotContain("UTC</text>");
  }

  @Test
  void sizesStayInBounds() {
    assertThat(html.getBytes(StandardCharsets.UTF_8)).hasSizeLessThan(600_000);
    assertThat(html(SampleNight.tenHours()).getBytes(StandardCharsets.UTF_8))
        .hasSizeLessThan(1_500_000);
  }

  @Test
  void machineWithoutFontsGetsThePageWithoutCharts(@TempDir Path folder) throws Exception {
    Path broken = Files.createFile(folder.resolve("fontconfig.properties"));
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Djava.awt.headless=true",
                "-Dsun.awt.fontconfig=" + broken,
                "-cp",
                System.getProperty(
                    "surefire.test.class.path", System.getProperty("java.class.path")),
                RenderSample.class.getName(),
                folder.toString())
            .redirectOutput(new File(folder.toFile(), "out"))
            .redirectError(new File(folder.toFile(), "err"))
            .start();

    assertThat(process.waitFor()).isZero();
    assertThat(Files.readString(folder.resolve("two-hours.html")))
        .contains("Charts are left out because", "fontconfig", "Star motion, run by run")
        .doesNotContain("<svg");
  }

  /** A longer label may be tied to its peak by a line. */
  private static int elementsButLines(Document of) {
    return of.getElementsByTagName("*").getLength() - of.getElementsByTagName("line").getLength();
  }

  private static String html(SampleNight night) {
    return NightPage.render(night.result(), night.evidence()).html();
  }

  private static String text(Element within, String tag) {
    return within.getElementsByTagName(tag).item(0).getTextContent();
  }

  /** The page is written so that an XML parser can read it too. */
  /** All but the script is XML too. */
  private static Document parsed(String page) throws Exception {
    String markup = page.replace(between(page, "<script>", "</script>"), "");
    return DocumentBuilderFactory.newInstance()
        .newDocumentBuilder()
        .parse(new InputSource(new StringReader(markup)));
  }

  private static String hash(String element) throws Exception {
    byte[] text =
        between(html, "<" + element + ">", "</" + element + ">").getBytes(StandardCharsets.UTF_8);
    return Base64.getEncoder().encodeToString(MessageDigest.getInstance("SHA-256").digest(text));
  }

  private static String between(String page, String open, String close) {
    int start = page.indexOf(open) + open.length();
    return page.substring(start, page.indexOf(close, start));
  }
}
