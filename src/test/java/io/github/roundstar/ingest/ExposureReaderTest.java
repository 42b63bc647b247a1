package io.github.roundstar.ingest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.formats.FitsWriter;
import io.github.roundstar.formats.MadeUpPhoto;
import io.github.roundstar.model.ExposureFrame;
import io.github.roundstar.model.ExposureFrame.CameraClock;
import io.github.roundstar.model.ExposureFrame.RowOrder;
import io.github.roundstar.model.ExposureList;
import io.github.roundstar.model.PierSide;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Exposures are read from headers and lists; what cannot be used is named and the rest goes on. */
class ExposureReaderTest {
  @TempDir private Path folder;

  private void fits(String name, Map<String, Object> keywords) throws IOException {
    try (OutputStream out = Files.newOutputStream(folder.resolve(name))) {
      FitsWriter.write(out, 16, new float[256], keywords);
    }
  }

  private ExposureFrame only(Map<String, Object> keywords)
      throws IOException, UnusableInputException {
    fits("one.fits", keywords);
    ExposureList list = ExposureReader.read(folder);
    assertThat(list.problems()).isEmpty();
    return list.frames().get(0);
  }

  /** FITS standard 4.0, section 4.4.2.1: DATE-OBS is the start of the exposure; own example. */
  @Tag("identity")
  @Test
  void startAndDurationFollowTheStandard() throws IOException, UnusableInputException {
    Instant start = Instant.parse("2024-03-10T21:15:30.500Z");
    Map<String, Object> plain = Map.of("DATE-OBS", "2024-03-10T21:15:30.500", "EXPTIME", 300);
    assertThat(only(plain).start()).isEqualTo(start);
    assertThat(only(plain).seconds()).isEqualTo(300);
    assertThat(only(plain).clock()).isEqualTo(CameraClock.UTC);
    assertThat(only(Map.of("DATE-AVG", "2024-03-10T21:18:00.500", "XPOSURE", 300)).start())
        .isEqualTo(start);
    assertThat(only(Map.of("DATE-END", "2024-03-10T21:20:30.500", "TELAPSE", 300)).start())
        .isEqualTo(start);
    Instant byDays = only(Map.of("MJD-AVG", 60379.887505787, "XPOSURE", 300)).start();
    assertThat(Math.abs(byDays.toEpochMilli() - start.toEpochMilli())).isLessThan(2);
    assertThat(
            only(Map.of(
                    "DATE-OBS",
                    "2024-03-10T21:16:07.500",
                    "TIMESYS",
                    "TAI",
                    "XPOSURE",
                    5,
                    "TIMEUNIT",
                    "min"))
                .start())
        .isEqualTo(start);
  }

  @Test
  void commonKeywordsTellTheCamera() throws IOException, UnusableInputException {
    ExposureFrame frame =
        only(
            Map.of(
                "DATE-OBS",
                "2024-03-10T21:15:30",
                "EXPOSURE",
                120,
                "FOCALLEN",
                530,
                "XPIXSZ",
                3.76,
                "OBJCTRA",
                "05 34 32.0",
                "OBJCTDEC",
                "-05 23 28",
                "PIERSIDE",
                "WEST",
                "POSANGLE",
                12.5));
    assertThat(frame.optics().arcsecPerPixel().getAsDouble()).isCloseTo(1.4633125877, within(1e-8));
    assertThat(frame.optics().rightAscensionHours().getAsDouble())
        .isCloseTo(5.575556, within(1e-5));
    assertThat(frame.optics().declinationDegrees().getAsDouble())
        .isCloseTo(-5.391111, within(1e-5));
    assertThat(frame.optics().pierSide()).hasValue(PierSide.WEST);
    assertThat(frame.optics().upPositionAngleDegrees()).hasValue(12.5);
  }

  @Test
  void worldCoordinatesTellScaleAndDirection() throws IOException, UnusableInputException {
    double scale = 1.2 / 3600;
    double turn = Math.toRadians(30);
    ExposureFrame frame =
        only(
            Map.of(
                "DATE-OBS", "2024-03-10T21:15:30",
                "EXPTIME", 120,
                "CTYPE1", "RA---TAN",
                "CD1_1", -scale * Math.cos(turn),
                "CD1_2", scale * Math.sin(turn),
                "CD2_1", scale * Math.sin(turn),
                "CD2_2", scale * Math.cos(turn)));
    assertThat(frame.optics().arcsecPerPixel().getAsDouble()).isCloseTo(1.2, within(1e-9));
    assertThat(frame.optics().upPositionAngleDegrees().getAsDouble()).isCloseTo(30, within(1e-9));
    assertThat(frame.optics().mirrored()).hasValue(false);
  }

  /** ROWORDER: common practice, no source. World coordinates speak of stored rows anyway. */
  @Test
  void orderOfRowsIsRead() throws IOException, UnusableInputException {
    Map<String, Object> shown = new HashMap<>(Map.of("DATE-OBS", "2024-03-10T21:15:30"));
    shown.put("EXPTIME", 120);
    assertThat(only(shown).optics().rows()).isEqualTo(RowOrder.BOTTOM_UP);
    shown.put("ROWORDER", "TOP-DOWN");
    assertThat(only(shown).optics().rows()).isEqualTo(RowOrder.TOP_DOWN);
    shown.putAll(Map.of("CTYPE1", "RA---TAN", "CDELT1", -0.001, "CDELT2", 0.001));
    assertThat(only(shown).optics().rows()).isEqualTo(RowOrder.BOTTOM_UP);
  }

  @Test
  void truncatedImageDoesNotHideTheGoodOneOfItsStart() throws IOException, UnusableInputException {
    Map<String, Object> keywords = Map.of("DATE-OBS", "2024-03-10T21:15:30", "EXPTIME", 120);
    fits("a.fits", keywords);
    fits("b.fits", keywords);
    byte[] whole = Files.readAllBytes(folder.resolve("a.fits"));
    Files.write(folder.resolve("a.fits"), Arrays.copyOf(whole, 2880 + 511));
    ExposureList list = ExposureReader.read(folder);
    assertThat(list.frames()).extracting(ExposureFrame::file).containsExactly("b.fits");
    assertThat(list.problems()).hasSize(1);
    assertThat(list.problems().get(0)).startsWith("a.fits: ends before its last pixel: ");
  }

  @Test
  void missingPaddingBehindTheLastPixelIsForgiven() throws IOException, UnusableInputException {
    fits("a.fits", Map.of("DATE-OBS", "2024-03-10T21:15:30", "EXPTIME", 120));
    byte[] whole = Files.readAllBytes(folder.resolve("a.fits"));
    Files.write(folder.resolve("a.fits"), Arrays.copyOf(whole, 2880 + 512));
    assertThat(ExposureReader.read(folder).frames()).hasSize(1);
  }

  @Test
  void photographsTellTheirStartByTheirOwnClock() throws IOException, UnusableInputException {
    MadeUpPhoto photo =
        new MadeUpPhoto().text(0x9003, "2026:03:14 20:15:30").rational(0x829A, 300, 1);
    Files.write(folder.resolve("local.jpg"), photo.bytes());
    Files.write(folder.resolve("zoned.jpg"), photo.text(0x9011, "+01:00").bytes());
    Files.write(folder.resolve("undated.jpg"), new MadeUpPhoto().rational(0x829A, 9, 1).bytes());
    Files.write(
        folder.resolve("unending.jpg"),
        new MadeUpPhoto().text(0x9003, "2026:03:14 21:15:30").bytes());
    ExposureList list = ExposureReader.read(folder);
    assertThat(list.frames()).hasSize(2);
    assertThat(list.frames().get(0).start()).isEqualTo(Instant.parse("2026-03-14T19:15:30Z"));
    assertThat(list.frames().get(0).clock()).isEqualTo(CameraClock.UTC);
    assertThat(list.frames().get(1).start()).isEqualTo(Instant.parse("2026-03-14T20:15:30Z"));
    assertThat(list.frames().get(1).clock()).isEqualTo(CameraClock.LOCAL);
    assertThat(list.frames()).allMatch(frame -> frame.seconds() == 300);
    assertThat(String.join("\n", list.problems()))
        .contains("undated.jpg: tells no DateTimeOriginal")
        .contains("unending.jpg: tells no ExposureTime");
  }

  /** 4 um at 400 mm: 206.265 x 4 / 400; 6350 pixels an inch are 2500 a centimetre. */
  @Test
  void photographsTellTheirScaleByTheFocalPlane() throws IOException, UnusableInputException {
    MadeUpPhoto photo =
        new MadeUpPhoto()
            .text(0x9003, "2026:03:14 20:15:30")
            .rational(0x829A, 300, 1)
            .rational(0x920A, 400, 1)
            .rational(0xA20E, 6350, 1);
    Files.write(folder.resolve("inch.jpg"), photo.bytes());
    ExposureFrame.Optics optics = ExposureReader.read(folder).frames().get(0).optics();
    assertThat(optics.arcsecPerPixel().getAsDouble()).isCloseTo(2.06265, within(1e-4));
    assertThat(optics.scaleFrom()).isEqualTo(ExposureFrame.ScaleFrom.EXIF);
  }

  @Test
  void whatCannotBeUsedIsNamed() throws IOException, UnusableInputException {
    fits("a.fits", Map.of("DATE-OBS", "2024-03-10T21:15:30", "EXPTIME", 120));
    fits("b.fits", Map.of("DATE-OBS", "2024-03-10T21:15:30", "EXPTIME", 120));
    fits("c.fits", Map.of("EXPTIME", 120));
    fits("d.fits", Map.of("DATE-OBS", "2024-03-10T22:15:30"));
    Files.writeString(folder.resolve("e.fits"), "no image");
    Files.writeString(folder.resolve("f.jpg"), "no photograph");
    Files.writeString(folder.resolve("notes.txt"), "left alone");
    ExposureList list = ExposureReader.read(folder);
    assertThat(list.frames()).extracting(ExposureFrame::file).containsExactly("a.fits");
    assertThat(list.problems()).hasSize(5).allMatch(p -> p.split(": ").length >= 3);
    assertThat(String.join("\n", list.problems()))
        .contains("b.fits: starts at the same time as a.fits")
        .contains("c.fits: tells no start")
        .contains("d.fits: tells no exposure time")
        .contains("e.fits: is no FITS file")
        .contains("f.jpg: is no photograph");
  }

  @Test
  void listsAreRead() throws IOException, UnusableInputException {
    Path list = folder.resolve("list.csv");
    Files.writeString(
        list,
        """
        file,start,seconds,elongation,elongation_lo,elongation_hi,fwhm,angle
        one,2026-03-14T20:15:00+01:00,300,1.2,1.15,1.25,2.5,40
        two,2026-03-14T20:25:00,300,,,,,
        three,yesterday,300,,,,,
        four,2026-03-14T20:35:00,0,,,,,
        """);
    ExposureList read = ExposureReader.read(list);
    assertThat(read.frames()).hasSize(2);
    assertThat(read.frames().get(0).start()).isEqualTo(Instant.parse("2026-03-14T19:15:00Z"));
    assertThat(read.frames().get(0).listed().orElseThrow().elongation().hi95()).isEqualTo(1.25);
    assertThat(read.frames().get(1).clock()).isEqualTo(CameraClock.LOCAL);
    assertThat(read.problems()).hasSize(2);
    assertThat(read.problems().get(0)).startsWith("list.csv:4: start: found 'yesterday'");
  }

  @Test
  void folderWithoutImagesIsRefused() {
    assertThatThrownBy(() -> ExposureReader.read(folder))
        .isInstanceOf(UnusableInputException.class)
        .hasMessageContaining("holds no image");
  }
}
