package io.github.roundstar.ingest.layout;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.ingest.layout.choice.LayoutInference;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Answers pasted anywhere into a layout file with questions. */
@Tag("identity")
class PastedAnswersTest {
  private static final String WRITTEN =
      """
      unanswered = "scale; pulse row"
      waits_for = "setting scale 0; pulses 1"

      [time]
      form = "unix-s"

      [pulses]
      row = "next"

      [[column]]
      at = 1
      means = "time"

      [[column]]
      at = 2
      means = "ra-offset"
      unit = "px"
      positive = "east"

      [[column]]
      at = 3
      means = "dec-offset"
      unit = "px"
      positive = "north"
      """;
  private static final String SCALE = "[[setting]]\nmeans = \"scale\"\nvalue = \"1.85\"\n";
  private static final String ROW = "[pulses]\nrow = \"same\"\n";

  @TempDir Path folder;

  private static Layout read(String text) throws FormatException {
    return LayoutFile.read("a.toml", text.getBytes(UTF_8));
  }

  @Test
  void fileIsReadOnceEveryAnswerIsThere() throws Exception {
    Layout layout = read(WRITTEN + "\n" + SCALE + ROW);

    assertThat(layout.pulseInNextRow()).isFalse();
    assertThat(layout.settings()).extracting(SettingRule::means).containsExactly(Setting.SCALE);
  }

  @Test
  void answersMayStandInTheMiddle() throws Exception {
    String text = WRITTEN.replace("[[column]]\nat = 3", ROW + SCALE + "\n[[column]]\nat = 3");

    assertThat(read(text).pulseInNextRow()).isFalse();
  }

  @Test
  void oneAnswerOfTwoIsNotEnough() {
    assertThatThrownBy(() -> read(WRITTEN + SCALE))
        .isInstanceOf(FormatException.class)
        .hasMessageContaining("scale; pulse row");
  }

  @Test
  void columnThatIsAnsweredKeepsWhatElseIsKnownOfIt() throws Exception {
    String asked = WRITTEN.replace("setting scale 0; pulses 1", "column ra-offset 1");
    String answer = "[[column]]\nat = 2\nmeans = \"ra-offset\"\nunit = \"arcsec\"\n";

    Layout layout =
        read(
            asked.replace(
                    "unit = \"px\"\npositive = \"north\"",
                    "unit = \"arcsec\"\npositive = \"north\"")
                + answer);

    ColumnRule ra =
        layout.columns().stream().filter(c -> c.means() == Meaning.RA_OFFSET).findFirst().get();
    assertThat(ra.unit()).contains("arcsec");
    assertThat(ra.positive()).contains(Direction.EAST);
  }

  @Test
  void tablesThatStandTwiceStayAMistakeWhereNothingWasAsked() {
    String text = WRITTEN.replaceAll("(?m)^(unanswered|waits_for).*\n", "");

    assertThatThrownBy(() -> read(text + ROW)).isInstanceOf(FormatException.class);
  }

  @Test
  void linesThatAreAskedForAnswerWhenTheyArePastedAsTheyAre() throws Exception {
    Path log = Path.of("sample-logs/layouts/loft.log");
    Inference inference = LayoutInference.of(log);
    StringBuilder text = new StringBuilder(LayoutText.of(inference));
    inference.open().forEach(decision -> text.append('\n').append(decision.ask()).append('\n'));
    Path file = Files.writeString(folder.resolve("loft.toml"), text);

    assertThat(inference.open()).isNotEmpty();
    assertThat(LayoutFile.read(file).columns()).isNotEmpty();
  }
}
