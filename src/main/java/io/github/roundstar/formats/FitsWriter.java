package io.github.roundstar.formats;

import java.io.IOException;
import java.io.OutputStream;
import java.util.Map;
import nom.tam.fits.Fits;
import nom.tam.fits.FitsException;
import nom.tam.fits.Header;
import nom.tam.fits.ImageData;
import nom.tam.fits.ImageHDU;
import nom.tam.util.FitsOutputStream;

/** Writes images of 16-bit unsigned integers, as cameras do: BITPIX 16 with BZERO 32768. */
public final class FitsWriter {
  private static final int UNSIGNED = 32768;
  private static final int LARGEST = 65535;

  private FitsWriter() {}

  /**
   * Writes an image.
   *
   * @param out where to; stays open
   * @param width pixels in a row
   * @param pixels row by row; rounded, and cut off at 0 and 65535 as a sensor would
   * @param keywords further keywords in order: text, or numbers
   */
  public static void write(
      OutputStream out, int width, float[] pixels, Map<String, Object> keywords)
      throws IOException {
    short[][] rows = new short[pixels.length / width][width];
    for (int i = 0; i < rows.length * width; i++) {
      long value = Math.max(0, Math.min(LARGEST, Math.round((double) pixels[i])));
      rows[i / width][i % width] = (short) (value - UNSIGNED);
    }
    try {
      ImageHDU image = ImageData.from(rows).toHDU();
      Header header = image.getHeader();
      header.addValue("BZERO", UNSIGNED, "unsigned 16-bit integers");
      header.addValue("BSCALE", 1, "");
      for (Map.Entry<String, Object> keyword : keywords.entrySet()) {
        if (keyword.getValue() instanceof Number number) {
          header.addValue(keyword.getKey(), number, "");
        } else {
          header.addValue(keyword.getKey(), keyword.getValue().toString(), "");
        }
      }
      Fits fits = new Fits();
      fits.addHDU(image);
      // The library's own comment tells the time of writing.
      header.findCard("SIMPLE").setComment("conforms to the FITS standard");
      FitsOutputStream stream = new FitsOutputStream(out);
      fits.write(stream);
      stream.flush();
      // Not closed: closing would close the caller's stream, and nothing else is held.
    } catch (FitsException e) {
      throw new IOException("cannot be written as FITS", e);
    }
  }
}
