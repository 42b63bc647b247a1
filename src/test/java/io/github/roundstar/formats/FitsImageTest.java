package io.github.roundstar.formats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.zip.GZIPOutputStream;
import nom.tam.fits.Fits;
import nom.tam.fits.ImageData;
import nom.tam.fits.ImageHDU;
import nom.tam.image.compression.hdu.CompressedImageHDU;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Images of every kind of pixel that FITS knows come back as physical values. */
class FitsImageTest {
  @TempDir private Path temporary;

  private float[] read(Object rows, Map<String, Double> keywords)
      throws IOException, FormatException {
    Path file = temporary.resolve("image.fits");
    ImageHDU image = ImageData.from(rows).toHDU();
    for (Map.Entry<String, Double> keyword : keywords.entrySet()) {
      image.getHeader().addValue(keyword.getKey(), keyword.getValue(), "");
    }
    try (Fits fits = new Fits()) {
      fits.addHDU(image);
      fits.write(new File(file.toString()));
    }
    try (FitsImage opened = FitsImage.open(file)) {
      assertThat(opened.width()).isEqualTo(3);
      assertThat(opened.height()).isEqualTo(2);
      return opened.pixels();
    }
  }

  @Test
  void integersAndFloatsAreRead() throws IOException, FormatException {
    assertThat(read(new byte[][] {{1, 2, (byte) 200}, {4, 5, 6}}, Map.of()))
        .containsExactly(1, 2, 200, 4, 5, 6);
    assertThat(
            read(
                new short[][] {{-32768, 0, 32767}, {1, 2, 3}},
                Map.of("BZERO", 32768.0, "BSCALE", 1.0)))
        .containsExactly(0, 32768, 65535, 32769, 32770, 32771);
    assertThat(read(new int[][] {{1, 2, 3}, {-4, 5, 600000}}, Map.of("BSCALE", 0.5)))
        .containsExactly(0.5f, 1, 1.5f, -2, 2.5f, 300000);
    assertThat(read(new float[][] {{1.5f, 2, 3}, {4, 5, Float.NaN}}, Map.of()))
        .containsExactly(1.5f, 2, 3, 4, 5, Float.NaN);
    assertThat(read(new double[][] {{1.5, 2, 3}, {4, 5, 6}}, Map.of()))
        .containsExactly(1.5f, 2, 3, 4, 5, 6);
  }

  @Test
  void ofThreeColoursTheMiddleOneIsTaken() throws IOException, FormatException {
    float[] pixels =
        read(
            new short[][][] {
              {{1, 1, 1}, {1, 1, 1}}, {{2, 3, 4}, {5, 6, 7}}, {{9, 9, 9}, {9, 9, 9}}
            },
            Map.of());
    assertThat(pixels).containsExactly(2, 3, 4, 5, 6, 7);
  }

  @Test
  void tileCompressedImagesAreUnpacked() throws IOException, FormatException {
    short[][] rows = new short[64][64];
    for (int i = 0; i < 64 * 64; i++) {
      rows[i / 64][i % 64] = (short) (i % 251 - 100);
    }
    ImageHDU image = ImageData.from(rows).toHDU();
    image.getHeader().addValue("BZERO", 1000, "");
    CompressedImageHDU packed = CompressedImageHDU.fromImageHDU(image, -1, 8);
    packed.setCompressAlgorithm("RICE_1");
    packed.compress();
    Path file = temporary.resolve("packed.fits.fz");
    try (Fits fits = new Fits()) {
      fits.addHDU(packed);
      fits.write(new File(file.toString()));
    }
    try (FitsImage opened = FitsImage.open(file)) {
      assertThat(opened.width()).isEqualTo(64);
      float[] pixels = opened.pixels();
      assertThat(pixels[0]).isEqualTo(900);
      assertThat(pixels[100]).isEqualTo(1000);
      assertThat(pixels[64 * 64 - 1]).isEqualTo(900 + (64 * 64 - 1) % 251);
    }
  }

  @Test
  void writtenImagesComeBack() throws IOException, FormatException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    FitsWriter.write(
        out,
        2,
        new float[] {-5, 100.4f, 65000, 99999},
        Map.of("OBJECT", "a 'name'", "EXPTIME", 30));
    Path file = temporary.resolve("written.fits");
    Files.write(file, out.toByteArray());
    try (FitsImage opened = FitsImage.open(file)) {
      assertThat(opened.pixels()).containsExactly(0, 100, 65000, 65535);
      assertThat(opened.header().text("OBJECT")).hasValue("a 'name'");
      assertThat(opened.header().number("EXPTIME")).hasValue(30);
    }
  }

  @Test
  void otherFilesAreNamed() throws IOException {
    Path text = temporary.resolve("notes.fits");
    Files.writeString(text, "no image");
    assertThatThrownBy(() -> FitsImage.open(text))
        .isInstanceOf(FormatException.class)
        .hasMessageContaining("notes.fits: is no FITS file: ");
  }

  @Test
  void truncatedFilesAreNamed() throws IOException, FormatException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    FitsWriter.write(out, 200, new float[200 * 100], Map.of());
    Path file = temporary.resolve("cut.fits");
    Files.write(file, Arrays.copyOf(out.toByteArray(), 9000));
    assertThatThrownBy(
            () -> {
              try (FitsImage image = FitsImage.open(file)) {
                image.pixels();
              }
            })
        .isInstanceOf(FormatException.class)
        .hasMessageContaining("cut.fits: ends before its last pixel: ");
  }

  @Test
  void packedFilesAreRefusedBeforeTheyAreUnpacked() throws IOException {
    Path file = temporary.resolve("image.fits");
    try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(file))) {
      FitsWriter.write(out, 200, new float[200 * 100], Map.of());
    }
    assertThatThrownBy(() -> FitsImage.open(file))
        .isInstanceOf(FormatException.class)
        .hasMessage("image.fits: is packed by gzip: unpack it first");
  }

  @Test
  void headersWithoutEndAreRefused() throws IOException {
    Path file = temporary.resolve("long.fits");
    String card = "COMMENT" + " ".repeat(73);
    String first = "SIMPLE  =                    T" + " ".repeat(50);
    Files.writeString(file, first + card.repeat(36 * (FitsImage.MOST_HEADER_BLOCKS + 2)));
    assertThatThrownBy(() -> FitsImage.open(file))
        .isInstanceOf(FormatException.class)
        .hasMessageStartingWith("long.fits: a header of more than 1000 blocks: ");
    Files.writeString(file, first + card.repeat(36));
    assertThatThrownBy(() -> FitsImage.open(file)).isInstanceOf(FormatException.class);
  }

  @Test
  void imagesTooLargeForAnyCameraAreRefused() throws IOException {
    Path file = temporary.resolve("large.fits");
    StringBuilder header = new StringBuilder();
    for (String card :
        new String[] {
          "SIMPLE  =                    T",
          "BITPIX  =                   16",
          "NAXIS   =                    2",
          "NAXIS1  =           2000000000",
          "NAXIS2  =           2000000000",
          "END"
        }) {
      header.append(card).append(" ".repeat(80 - card.length()));
    }
    Files.writeString(file, header + " ".repeat(2880 - header.length()));
    assertThatThrownBy(() -> FitsImage.open(file))
        .isInstanceOf(FormatException.class)
        .hasMessageStartingWith("large.fits: ");
  }
}
