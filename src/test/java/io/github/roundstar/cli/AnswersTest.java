package io.github.roundstar.cli;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.ingest.layout.Decision;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Questions about a log, asked on a terminal. */
@Tag("identity")
class AnswersTest {
  private static final Decision ROW =
      new Decision(
          "pulse row",
          "not known",
          "both rows fit",
          "",
          Decision.Sureness.OPEN,
          "[pulses]\nrow = \"same\"   # or \"next\"");
  private static final Decision SCALE =
      new Decision(
          "scale",
          "not known",
          "no line tells the scale",
          "",
          Decision.Sureness.OPEN,
          "[[setting]]\nmeans = \"scale\"\nvalue = \"1.85\"   # arcsec per logged pixel");

  private final List<String> said = new ArrayList<>();

  private Optional<String> answers(String... typed) {
    Iterator<String> lines = List.of(typed).iterator();
    return Answers.ask(List.of(ROW, SCALE), said::add, () -> lines.hasNext() ? lines.next() : null);
  }

  @Test
  void numberChoosesAnAnswerAndAValueReplacesTheOneShown() {
    assertThat(answers("2", "2.41"))
        .hasValue(
            "[pulses]\nrow = \"next\"\n\n[[setting]]\nmeans = \"scale\"\nvalue = \"2.41\"\n\n");
    assertThat(said).contains("1) [pulses], row = \"same\"", "2) [pulses], row = \"next\"");
  }

  @Test
  void whatIsLeftOpenStaysOpen() {
    assertThat(answers("1", "")).isEmpty();
    assertThat(answers("7")).isEmpty();
    assertThat(answers("1")).as("the end of input").isEmpty();
  }

  @Test
  void nothingIsAskedWhereInputOrOutputIsPiped() {
    assertThat(System.console()).as("builds run without a terminal").isNull();
    assertThat(Answers.onTerminal(List.of(ROW))).isEmpty();
  }

  /** Both axes' unit is one question: the line stands twice, and each answer is offered once. */
  @Test
  void anAnswerThatStandsInTwoColumnsIsOfferedOnce() {
    String line = "unit = \"arcsec\"   # or \"px\"\n";
    assertThat(Answers.choices("at = 2\n" + line + "at = 3\n" + line))
        .containsExactly(
            "at = 2\nunit = \"arcsec\"\nat = 3\nunit = \"arcsec\"\n",
            "at = 2\nunit = \"px\"\nat = 3\nunit = \"px\"\n");
  }
}
