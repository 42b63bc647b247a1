package io.github.roundstar.report;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.results.Faults;
import io.github.roundstar.results.NightResult;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Several nights on one page, each with its report and what to do. */
class IndexPageTest {
  private static final NightResult NIGHT = SampleNight.twoHours().judged();

  private final String page =
      IndexPage.render(
          List.of(
              new IndexPage.Entry(NIGHT, "one.html", new double[] {0.4, Double.NaN, 1.2}),
              new IndexPage.Entry(NIGHT, "a \"b\" <c>.html", new double[] {0.4, Double.NaN, 1.2})),
          List.of(),
          new Faults());

  @Test
  void everyNightIsLinkedWithItsVerdict() {
    assertThat(page)
        .contains("<a href=\"one.html\">", "2 nights ask for something to be done.")
        .containsSubsequence("work on the mount", "work on the mount")
        .contains("class=\"cards sortable\"", "aria-label=\"the night in a line\"");
  }

  @Test
  void aNightWithoutAReportIsNamedWithTheReason() {
    Faults faults = new Faults();
    faults.add("night 2026-03-15: its report", new ArithmeticException("divided by nothing"));
    String lost =
        IndexPage.render(
            List.of(new IndexPage.Entry(NIGHT, "one.html", new double[] {0.4, Double.NaN, 1.2})),
            List.of("2026-03-15"),
            faults);
    assertThat(lost)
        .contains("1 without a report by a fault of roundstar", "2 nights")
        .contains("Missing by a fault of roundstar itself: night 2026-03-15: its report.")
        .contains("--verbose")
        .containsSubsequence("2026-03-15", "No report, by a fault of roundstar.");
  }

  @Test
  void namesOfFilesStayText() {
    assertThat(page).contains("a &quot;b&quot; &lt;c&gt;.html").doesNotContain("<c>");
  }
}
