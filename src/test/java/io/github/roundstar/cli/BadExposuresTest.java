package io.github.roundstar.cli;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.formats.FitsWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Every bad exposure of a folder is named and counted, and the good ones are judged all the same.
 */
class BadExposuresTest {
  private static final int WIDTH = 300;
  private static final int HEIGHT = 240;
  private static final String SCENARIO =
      """
      [night]
      seed = 9
      cadence_s = 3
      [noise]
      white_arcsec = 0.3
      [dither]
      every_min = 11
      size_arcsec = 6
      [[run]]
      duration_min = 20
      [exposures]
      seconds = 150
      width_px = 300
      height_px = 240
      clock_offset_s = %s
      """;

  @TempDir Path folder;
  private Path frames;

  @BeforeEach
  void prepare() {
    frames = folder.resolve("frames");
  }

  private void simulate(String clockOffset) throws IOException {
    Path scenario = folder.resolve("night.toml");
    Files.writeString(scenario, String.format(java.util.Locale.ROOT, SCENARIO, clockOffset));
    Ran.of(
            "simulate",
            scenario.toString(),
            "--out",
            folder.resolve("night.ecsv").toString(),
            "--frames",
            frames.toString())
        .endsWith(0);
  }

  private Ran analyze() {
    return Ran.of(
        "analyze",
        "--exposures",
        frames.toString(),
        "--out",
        folder.resolve("reports").toString(),
        folder.resolve("night.ecsv").toString());
  }

  private void image(String name, String start, float[] stars) throws IOException {
    Random random = new Random(name.hashCode());
    float[] pixels = stars.clone();
    for (int i = 0; i < pixels.length; i++) {
      pixels[i] += (float) (800 + 15 * random.nextGaussian());
    }
    Map<String, Object> keywords = new LinkedHashMap<>();
    if (!start.isEmpty()) {
      keywords.put("DATE-OBS", start);
    }
    keywords.put("EXPTIME", 300);
    try (OutputStream out = Files.newOutputStream(frames.resolve(name))) {
      FitsWriter.write(out, WIDTH, pixels, keywords);
    }
  }

  private static float[] hotPixels() {
    float[] pixels = new float[WIDTH * HEIGHT];
    for (int i = 0; i < 150; i++) {
      pixels[(i * 7919) % pixels.length] += 4000;
    }
    return pixels;
  }

  /** Stars drawn out to lines of 40 pixels. */
  private static float[] lines() {
    float[] pixels = new float[WIDTH * HEIGHT];
    for (int star = 0; star < 9; star++) {
      int left = 40 + star % 3 * 90;
      int middle = 60 + star / 3 * 55;
      for (int x = left; x < left + 40; x++) {
        for (int dy = -5; dy <= 5; dy++) {
          pixels[(middle + dy) * WIDTH + x] += (float) (900 * Math.exp(-dy * dy / 5.0));
        }
      }
    }
    return pixels;
  }

  private static float[] round() {
    float[] pixels = new float[WIDTH * HEIGHT];
    for (int star = 0; star < 12; star++) {
      for (int i = 0; i < 21 * 21; i++) {
        int dx = i % 21 - 10;
        int dy = i / 21 - 10;
        int at = (40 + star / 4 * 70 + dy) * WIDTH + 40 + star % 4 * 70 + dx;
        pixels[at] += (float) (3000 * Math.exp(-(dx * dx + dy * dy) / 6.0));
      }
    }
    return pixels;
  }

  @Test
  void eachIsNamedAndTheRestGoesOn() throws IOException {
    simulate("0");
    Files.writeString(frames.resolve("no-fits.fits"), "no image");
    byte[] good = Files.readAllBytes(frames.resolve("exposure-002.fits"));
    Files.write(frames.resolve("short.fits"), Arrays.copyOf(good, good.length / 2));
    Files.write(frames.resolve("twin.fits"), good);
    image("empty.fits", "2026-01-01T20:00:01", new float[WIDTH * HEIGHT]);
    image("hot.fits", "2026-01-01T20:00:02", hotPixels());
    image("lines.fits", "2026-01-01T20:00:03", lines());
    image("outside.fits", "2026-01-01T23:30:00", round());
    image("undated.fits", "", new float[WIDTH * HEIGHT]);
    Ran ran = analyze();
    ran.endsWith(3);
    assertThat(ran.err())
        .contains("no-fits.fits: is no FITS file: ")
        .contains("short.fits: ends before its last pixel: ")
        .contains("twin.fits: starts at the same time as exposure-002.fits: ")
        .contains("empty.fits: no star that could be measured: ")
        .contains("hot.fits: no star that could be measured; left out: ")
        .contains("undated.fits: tells no start");
    Map<String, String> verdicts = verdicts();
    assertThat(verdicts.get("exposure-002.fits")).isEqualTo("round");
    assertThat(verdicts.get("outside.fits")).isEqualTo("not covered");
    assertThat(verdicts.get("lines.fits")).isEqualTo("trailed");
    assertThat(verdicts)
        .doesNotContainKeys(
            "no-fits.fits", "short.fits", "twin.fits", "undated.fits", "empty.fits", "hot.fits");
    String page = Files.readString(folder.resolve("reports/2026-01-01.html"));
    assertThat(page).contains("6 files could not be used; the others were.");
    assertThat(page).contains("hot.fits: no star");
  }

  @ParameterizedTest
  @CsvSource({"3600, a time zone or summer time of 1.0 h", "-86400, a wrong date by one day"})
  void wrongClockIsRecognisedAndSaid(String offset, String words) throws IOException {
    simulate(offset);
    analyze().endsWith(0);
    assertThat(Files.readString(folder.resolve("reports/2026-01-01.html")))
        .contains(words.replaceAll("(?<=\\d) (?=h$)", "\u00a0"));
    assertThat(verdicts().values()).hasSizeGreaterThan(3).containsOnly("round");
    assertThat(
            Files.readString(
                folder.resolve("reports/2026-01-01.exposures.csv"), StandardCharsets.UTF_8))
        .contains("exposure-001.fits,round,,2026-01-01T20:");
  }

  private Map<String, String> verdicts() throws IOException {
    Map<String, String> verdicts = new LinkedHashMap<>();
    for (String line : Files.readAllLines(folder.resolve("reports/2026-01-01.exposures.csv"))) {
      String[] fields = line.split(",");
      verdicts.put(fields[0], fields[1]);
    }
    verdicts.remove("file");
    return verdicts;
  }
}
