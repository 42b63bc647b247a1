package io.github.roundstar.cli;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** {@code roundstar tolerance} answers without a log, with what it is given. */
class ToleranceCommandTest {
  /**
   * By hand: 206.265 x 3.8 / 750 = 1.045 arcsec; 2.5 / 2.3548 x sqrt(1.15^2 - 1) = 0.603. An even
   * trail of 2.01 arcsec has that elongation under a matched Gaussian weight, by NumPy on a grid of
   * 0.05 arcsec; plain moments would allow sqrt 12 times the RMS, 2.09. Hook's relation, as
   * Covington's handbook quotes it: trail = distance x turn of the sky x axis error, so 0.5225 /
   * (7536 x 0.021876) = 3.169e-3 rad = 10.9 arcmin. Common practice, no source: tracking of the
   * order of five arcseconds or better, tighter with focal length.
   */
  @Test
  @Tag("published")
  void opticsAnswerWithoutALog() {
    Ran ran =
        Ran.of(
            "tolerance",
            "--focal-length",
            "750",
            "--pixel",
            "3.8",
            "--seeing",
            "2.5",
            "--sensor",
            "6000x4000",
            "--exposure",
            "300",
            "--declination",
            "0");

    assertThat(ran.code()).isZero();
    assertThat(ran.err()).isEmpty();
    assertThat(ran.out())
        .contains("1.05 arcsec per pixel", "0.60 arcsec RMS", "2.0 arcsec over", "10.9 arcmin off");
  }

  @Test
  void optionsWinOverTheEquipmentFile() {
    Ran ran =
        Ran.of(
            "tolerance",
            "--equipment",
            "sample-logs/equipment.toml",
            "--focal-length",
            "1500",
            "--periodic-error",
            "6",
            "--ratio",
            "0.9",
            "--declination",
            "30");

    assertThat(ran.code()).isZero();
    assertThat(ran.out())
        .contains("0.52 arcsec per pixel", "any size", "s of exposure with this periodic error");
  }

  @Test
  void wrongNumbersAreNamed() {
    Ran ran = Ran.of("tolerance", "--sensor", "big", "--pixel", "3.8");

    assertThat(ran.code()).isEqualTo(2);
    assertThat(ran.err()).contains("--sensor: found 'big'");
    assertThat(Ran.of("tolerance", "--pixel", "-3").code()).isEqualTo(2);
    assertThat(Ran.of("tolerance", "--seeing", "3", "--declination", "90").err())
        .contains("--declination: 90.0 is outside");
  }

  @Test
  void whatIsMissingIsSaid() {
    Ran withoutOptics = Ran.of("tolerance", "--declination", "41").endsWith(2);
    assertThat(withoutOptics.err()).contains("--focal-length and --pixel, and --seeing");
    assertThat(withoutOptics.out()).isEmpty();
    assertThat(Ran.of("tolerance", "--seeing", "2.5").endsWith(0).out())
        .contains("not known: focal length and pixel size");
  }

  @Test
  void noDeclinationIsTakenForGranted() {
    Ran ran = Ran.of("tolerance", "--equipment", "sample-logs/equipment.toml").endsWith(2);
    assertThat(ran.out()).isEmpty();
    assertThat(ran.err())
        .contains("needs the declination of the field for the polar axis: add --declination");
    assertThat(
            Ran.of("tolerance", "--seeing", "3", "--periodic-error", "6", "--period", "480")
                .endsWith(2)
                .err())
        .contains("for the unguided exposure: add --declination");
  }

  @Test
  void whatCountsAsRoundIsSaidAndWhoseLimitItIs() {
    assertThat(Ran.of("tolerance", "--seeing", "2.5").endsWith(0).out())
        .contains("round        elongation of 1.15 or less, the tool's limit");
    assertThat(Ran.of("tolerance", "--seeing", "2.5", "--elongation", "1.1").endsWith(0).out())
        .contains("round        elongation of 1.10 or less, your limit");
  }
}
