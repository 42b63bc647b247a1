package io.github.roundstar.formats;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Numbers read as {@link Double#parseDouble} reads them, to the last bit, or not at all. */
class DecimalTextTest {
  private static double parse(String text) {
    byte[] padded = ("9" + text + "9").getBytes(US_ASCII);
    return DecimalText.parse(padded, 1, padded.length - 1);
  }

  @Tag("identity")
  @ParameterizedTest
  @ValueSource(
      strings = {
        "0",
        "-0",
        "+1",
        "1.",
        ".5",
        "-.25",
        "0.1",
        "123456.789",
        "9007199254740993",
        "0.1000000000000000055511151231257827",
        "123456789012345678",
        "1e3",
        "1E-3",
        "2.5e+10",
        "000000000000000000000000000001",
        "4.9e-324",
        "1e999",
        "0.000000000000000000000000000012"
      })
  void agreesWithTheLibrary(String text) {
    assertThat(parse(text)).isEqualTo(Double.parseDouble(text));
  }

  @Tag("identity")
  @Test
  void agreesWithTheLibraryOnRandomNumbers() {
    Random random = new Random(11);
    for (int i = 0; i < 20_000; i++) {
      double value = (random.nextDouble() - 0.5) * Math.pow(10, random.nextInt(12) - 4);
      String fixed = String.format(Locale.ROOT, "%." + random.nextInt(12) + "f", value);
      assertThat(parse(fixed)).as(fixed).isEqualTo(Double.parseDouble(fixed));
      String shortest = Double.toString(value);
      assertThat(parse(shortest)).as(shortest).isEqualTo(value);
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"inf", "Inf", "INFINITY", "+inf"})
  void readsInfinity(String text) {
    assertThat(parse(text)).isEqualTo(Double.POSITIVE_INFINITY);
    assertThat(parse("-inf")).isEqualTo(Double.NEGATIVE_INFINITY);
  }

  @ParameterizedTest
  @ValueSource(strings = {"nan", "NaN", "-NAN"})
  void tellsNanFromText(String text) {
    byte[] bytes = text.getBytes(US_ASCII);
    assertThat(DecimalText.parse(bytes, 0, bytes.length)).isNaN();
    assertThat(DecimalText.isNan(bytes, 0, bytes.length)).isTrue();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "abc", "1d", "1f", "0x10", "1,5", "1 5", "--1", "+", "-", ".", "1e", "1e+", "1.2.3", "e5",
        "infin", "nano", "1_000", "1e5x"
      })
  void refusesEverythingElse(String text) {
    byte[] bytes = text.getBytes(US_ASCII);
    assertThat(DecimalText.parse(bytes, 0, bytes.length)).isNaN();
    assertThat(DecimalText.isNan(bytes, 0, bytes.length)).isFalse();
  }
}
