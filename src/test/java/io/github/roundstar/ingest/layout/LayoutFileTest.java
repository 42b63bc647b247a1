package io.github.roundstar.ingest.layout;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.roundstar.formats.FormatException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** A layout file is read exactly or refused with the place and the way to mend it. */
class LayoutFileTest {
  private static final String COLUMNS =
      """
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

  private static Layout read(String text) throws FormatException {
    return LayoutFile.read("a.toml", text.getBytes(UTF_8));
  }

  @ParameterizedTest
  @EnumSource
  void whatIsWrittenReadsTheSame(InventedLog invented) throws Exception {
    Layout layout = read(invented.layout());

    assertThat(read(LayoutText.of(layout))).isEqualTo(layout);
  }

  @Test
  void quotedTextsReadBack() throws Exception {
    Layout layout = read(COLUMNS.replace("at = 1", "name = \"a\\\"b\\\\c\\td\""));

    assertThat(read(LayoutText.of(layout))).isEqualTo(layout);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "positive = \"east\"|positiv = \"east\"|nearest known one is positive",
        "positive = \"east\"|positive = \"north\"|points along the other axis",
        "unit = \"px\"|unit = \"feet\"|expected one of \"arcmin\", \"arcsec\", \"mas\", \"px\"",
        "means = \"time\"|means = \"dec-offset\"|no column means the time",
        "at = 1|name = \"t\"\\nat = 1|by its name or by its place",
      })
  void wrongEntryIsRefusedWithItsRemedy(String good, String bad, String message) {
    String text = COLUMNS.replaceFirst(good, bad.replace("\\n", "\n"));

    assertThatThrownBy(() -> read(text))
        .isInstanceOf(FormatException.class)
        .hasMessageStartingWith("a.toml:")
        .hasMessageContaining(message);
  }

  @Test
  void unitAndDirectionAreNeverGuessed() {
    assertThatThrownBy(() -> read(COLUMNS.replaceFirst("unit = \"px\"\n", "")))
        .hasMessageContaining("column 2 has no unit: add unit = \"px\" or \"arcsec\"");
    assertThatThrownBy(() -> read(COLUMNS.replaceFirst("positive = \"east\"\n", "")))
        .hasMessageContaining("add positive = \"east\" or \"west\"");
  }

  @Test
  void namedAndNamelessDirectionsOfAnAxisDoNotMix() {
    String pulse =
        "[[column]]\nat = 4\nmeans = \"ra-pulse\"\nunit = \"ms\"\npositive = \"one-way\"\n";

    assertThatThrownBy(() -> read(COLUMNS + pulse)).hasMessageContaining("replacing one-way");
  }

  @Test
  void deeplyNestedFileIsRefused() {
    assertThatThrownBy(() -> read("a = " + "[".repeat(5000) + "]".repeat(5000)))
        .isInstanceOf(FormatException.class)
        .hasMessageContaining("nested more than 16 deep");
  }
}
