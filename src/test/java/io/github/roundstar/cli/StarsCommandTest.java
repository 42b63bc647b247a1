package io.github.roundstar.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** From frames of the main camera to star shapes, and to verdicts beside the guide log. */
class StarsCommandTest {
  private static final String SCENARIO =
      """
      [night]
      seed = 4
      cadence_s = 3
      [noise]
      white_arcsec = 0.3
      [[run]]
      duration_min = 40
      [exposures]
      seconds = 600
      elongation = 1.4
      angle_deg = 60
      position_angle_deg = 25
      width_px = 400
      height_px = 300
      """;

  @TempDir Path folder;

  @BeforeEach
  void takeFrames() throws IOException {
    Path scenario = folder.resolve("night.toml");
    Files.writeString(scenario, SCENARIO);
    Ran.of(
            "simulate",
            scenario.toString(),
            "--out",
            folder.resolve("night.ecsv").toString(),
            "--frames",
            folder.resolve("frames").toString(),
            "--exposures",
            folder.resolve("exposures.ecsv").toString())
        .endsWith(0);
  }

  @Test
  void starsArePrintedAndWritten() throws IOException {
    Path out = folder.resolve("shapes");
    Ran ran =
        Ran.of(
            "stars",
            "--out",
            out.toString(),
            folder.resolve("frames/exposure-001.fits").toString(),
            folder.resolve("missing.fits").toString());
    ran.endsWith(3);
    assertThat(ran.err()).contains("missing.fits: no such file: ");
    assertThat(ran.outLines().get(0)).startsWith("exposure-001.fits  ").contains("elongation 1.3");
    assertThat(Files.readString(out.resolve("images.ecsv"))).contains("exposure-001.fits,");
    assertThat(out.resolve("exposure-001.fits.stars.ecsv")).isNotEmptyFile();
  }

  @Test
  void folderStandsForItsImages() throws IOException {
    Files.writeString(folder.resolve("frames/list.csv"), "no image");

    Ran ran = Ran.of("stars", folder.resolve("frames")).endsWith(0);

    assertThat(ran.outLines()).hasSize(3).allMatch(line -> line.startsWith("exposure-00"));
    assertThat(Ran.of("stars", folder.resolve("none")).endsWith(3).err()).contains("no such file");
    Path empty = Files.createDirectory(folder.resolve("empty"));
    Ran.of("stars", empty).endsWith(3).saysOnly(empty + ": no image here: ");
  }

  @Test
  void exposuresAreJudgedBesideTheReport() throws IOException {
    Files.writeString(folder.resolve("frames/broken.fits"), "no image");
    Path out = folder.resolve("reports");
    Ran ran =
        Ran.of(
            "analyze",
            "--exposures",
            folder.resolve("frames").toString(),
            "--out",
            out.toString(),
            folder.resolve("night.ecsv").toString());
    ran.endsWith(3);
    assertThat(ran.err()).contains("broken.fits: is no FITS file: ");
    assertThat(String.join("\n", ran.outLines()))
        .contains("0 of 3 exposures round, 3 trailed (3 optics)");
    String csv = Files.readString(out.resolve("2026-01-01.exposures.csv"));
    assertThat(csv).contains("\nexposure-002.fits,trailed,optics,2026-01-01T");
    assertThat(Files.readString(out.resolve("2026-01-01.html")))
        .contains("0 of 3 exposures are round, 3 lost to optics")
        .contains("broken.fits: is no FITS file")
        .contains("Star footprints");
  }

  @Test
  void sameExposuresGiveTheSameBytes() throws IOException {
    byte[][] pages = new byte[2][];
    for (int i = 0; i < 2; i++) {
      Path out = folder.resolve("reports" + i);
      Ran.of(
              "analyze",
              "--exposures",
              folder.resolve("exposures.ecsv").toString(),
              "--out",
              out.toString(),
              folder.resolve("night.ecsv").toString())
          .endsWith(0);
      pages[i] = Files.readAllBytes(out.resolve("2026-01-01.html"));
    }
    assertThat(pages[0]).isEqualTo(pages[1]);
  }
}
