package io.github.roundstar.formats;

import static java.nio.charset.StandardCharsets.ISO_8859_1;

import java.io.Closeable;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.logging.Level;
import java.util.logging.Logger;
import nom.tam.fits.BasicHDU;
import nom.tam.fits.Fits;
import nom.tam.fits.Header;
import nom.tam.fits.ImageHDU;
import nom.tam.image.compression.hdu.CompressedImageHDU;

/**
 * The first image of a FITS file: 8, 16 and 32-bit integers, floats and doubles, plain or
 * tile-compressed, with BZERO, BSCALE and BLANK applied. Of several planes the middle one is taken,
 * which in a colour image is green.
 *
 * @see "FITS Standard 4.0, sections 4.4.2 (BITPIX, BSCALE, BZERO, BLANK) and 10 (compression)"
 */
public final class FitsImage implements Closeable {
  /** Largest image that is read [pixels]. */
  public static final long MOST_PIXELS = 300_000_000L;

  private static final int MOST_UNITS = 64;
  private static final int BLOCK = 2880;
  private static final int CARD = 80;

  /** Most blocks of the first header; cameras need one or two, stacking programs some dozens. */
  static final int MOST_HEADER_BLOCKS = 1000;

  private static final int ROWS_AT_ONCE = 64;

  /** The library tells its worries to a logger, which would print them. */
  private static final Logger SILENCED = Logger.getLogger("nom.tam");

  static {
    SILENCED.setLevel(Level.OFF);
  }

  private final String file;
  private final Fits fits;
  private final FitsHeader header;
  private final BasicHDU<?> unit;
  private final int[] axes;

  private FitsImage(String file, Fits fits, long bytes) throws IOException, FormatException {
    this.file = file;
    this.fits = fits;
    List<Header> headers = new ArrayList<>();
    BasicHDU<?> found = null;
    for (int i = 0; i < MOST_UNITS && found == null; i++) {
      BasicHDU<?> next = fits.readHDU();
      if (next == null) {
        break;
      }
      headers.add(0, next.getHeader());
      found = holdsImage(next) ? next : null;
    }
    if (found == null) {
      throw new FormatException(file, 0, "holds no image", "name FITS files of the main camera");
    }
    unit = found;
    if (endOfData(found) > bytes) {
      throw truncated(file);
    }
    axes = axes(found);
    header = new FitsHeader(headers);
    if (width() < 1 || height() < 1 || (long) width() * height() > MOST_PIXELS) {
      throw new FormatException(
          file,
          0,
          "an image of " + width() + " x " + height() + " pixels",
          "give images of at most " + MOST_PIXELS + " pixels");
    }
  }

  /**
   * Where the unit's data end in the file, the padding behind them left out [bytes].
   *
   * @see "FITS Standard 4.0, section 4.4.1.2: |BITPIX| GCOUNT (PCOUNT + NAXIS1 NAXIS2 ...) bits"
   */
  private static long endOfData(BasicHDU<?> unit) {
    Header head = unit.getHeader();
    double values = 1;
    for (int axis = 1; axis <= head.getIntValue("NAXIS"); axis++) {
      values *= head.getLongValue("NAXIS" + axis);
    }
    double bytes =
        Math.abs(head.getIntValue("BITPIX"))
            / 8.0
            * head.getLongValue("GCOUNT", 1)
            * (head.getLongValue("PCOUNT", 0) + values);
    return unit.getFileOffset() + head.getSize() + (long) bytes;
  }

  private static boolean holdsImage(BasicHDU<?> unit) {
    boolean pixels = unit instanceof ImageHDU || unit instanceof CompressedImageHDU;
    int[] axes = pixels ? axes(unit) : null;
    return axes != null && axes.length >= 2;
  }

  /** Sizes, rows last but one and columns last; a packed image is not unpacked for it. */
  private static int[] axes(BasicHDU<?> unit) {
    if (!(unit instanceof CompressedImageHDU)) {
      return unit.getAxes();
    }
    int count = unit.getHeader().getIntValue("ZNAXIS");
    int[] axes = new int[Math.max(0, Math.min(count, 9))];
    for (int a = 0; a < axes.length; a++) {
      axes[axes.length - 1 - a] = unit.getHeader().getIntValue("ZNAXIS" + (a + 1));
    }
    return axes;
  }

  /**
   * Opens a file and reads its headers.
   *
   * @throws FormatException if it is no FITS file, holds no image, or ends before its last pixel
   */
  public static FitsImage open(Path path) throws IOException, FormatException {
    String file = String.valueOf(path.getFileName());
    checkHeader(file, path);
    try {
      Fits fits = new Fits(path.toFile());
      try {
        return new FitsImage(file, fits, Files.size(path));
      } catch (IOException | FormatException | RuntimeException e) {
        fits.close();
        throw e;
      }
    } catch (EOFException e) {
      throw truncated(file);
    } catch (RuntimeException e) {
      throw damaged(file, e);
    }
  }

  /**
   * Looks for the first header's end before the library reads it, which keeps all of it in memory.
   * The library would unpack a packed file as well, however large it gets.
   *
   * @see "FITS Standard 4.0, sections 3.3.1 and 4.4.1: blocks of 36 cards of 80 bytes, END last"
   */
  private static void checkHeader(String file, Path path) throws IOException, FormatException {
    try (InputStream in = Files.newInputStream(path)) {
      byte[] block = in.readNBytes(BLOCK);
      if (block.length > 1 && block[0] == 0x1F && block[1] == (byte) 0x8B) {
        throw new FormatException(file, 0, "is packed by gzip", "unpack it first");
      }
      if (!new String(block, ISO_8859_1).startsWith("SIMPLE  =")) {
        throw notFits(file);
      }
      for (int i = 0; block.length == BLOCK && !ends(block); i++) {
        if (i == MOST_HEADER_BLOCKS) {
          throw new FormatException(
              file,
              0,
              "a header of more than " + MOST_HEADER_BLOCKS + " blocks",
              "save the image again without its history");
        }
        block = in.readNBytes(BLOCK);
      }
    }
  }

  private static boolean ends(byte[] block) {
    for (int card = 0; card < block.length; card += CARD) {
      if (new String(block, card, Math.min(8, block.length - card), ISO_8859_1)
          .equals("END     ")) {
        return true;
      }
    }
    return false;
  }

  /** Keywords. */
  public FitsHeader header() {
    return header;
  }

  /** Pixels in a row. */
  public int width() {
    return axes[axes.length - 1];
  }

  /** Rows. */
  public int height() {
    return axes[axes.length - 2];
  }

  /**
   * Physical values row by row, the first row of the file first; NaN where blank.
   *
   * @throws FormatException if the pixels end too early or are damaged
   */
  public float[] pixels() throws IOException, FormatException {
    float[] pixels = new float[width() * height()];
    try {
      if (unit instanceof CompressedImageHDU packed) {
        ImageHDU image = packed.asImageHDU();
        copyKernel(image.getKernel(), pixels, scale(image));
      } else {
        ImageHDU image = (ImageHDU) unit;
        if (!rowsReadable(image, pixels)) {
          copyKernel(image.getKernel(), pixels, scale(image));
        }
      }
      return pixels;
    } catch (EOFException e) {
      throw truncated(file);
    } catch (IOException | RuntimeException e) {
      throw endsTooEarly(e) ? truncated(file) : damaged(file, e);
    }
  }

  private static PixelScale scale(ImageHDU image) {
    return PixelScale.of(
        new FitsHeader(List.of(image.getHeader())), image.getHeader().getIntValue("BITPIX"));
  }

  /** Reads plain pixels in strips, so that no second copy of the image is held. */
  private boolean rowsReadable(ImageHDU image, float[] pixels) throws IOException {
    if (!image.getData().isDeferred()) {
      return false;
    }
    PixelScale scale = scale(image);
    int[] corner = new int[axes.length];
    int[] size = new int[axes.length];
    for (int a = 0; a < axes.length - 2; a++) {
      corner[a] = axes[a] / 2;
      size[a] = 1;
    }
    size[axes.length - 1] = width();
    for (int row = 0; row < height(); row += ROWS_AT_ONCE) {
      corner[axes.length - 2] = row;
      size[axes.length - 2] = Math.min(ROWS_AT_ONCE, height() - row);
      scale.apply(image.getTiler().getTile(corner, size), pixels, row * width());
    }
    return true;
  }

  private void copyKernel(Object kernel, float[] pixels, PixelScale scale) throws IOException {
    Object plane = kernel;
    for (int a = 0; a < axes.length - 2; a++) {
      plane = ((Object[]) plane)[axes[a] / 2];
    }
    if (!(plane instanceof Object[] rows) || rows.length != height()) {
      throw new EOFException("no rows");
    }
    for (int row = 0; row < rows.length; row++) {
      scale.apply(rows[row], pixels, row * width());
    }
  }

  private static boolean endsTooEarly(Throwable e) {
    for (Throwable at = e; at != null; at = at.getCause()) {
      if (at instanceof EOFException) {
        return true;
      }
    }
    return false;
  }

  private static FormatException notFits(String file) {
    return new FormatException(
        file, 0, "is no FITS file", "give files as the camera program wrote them, with SIMPLE = T");
  }

  private static FormatException truncated(String file) {
    return new FormatException(
        file, 0, "ends before its last pixel", "copy the file again from the camera's computer");
  }

  private static FormatException damaged(String file, Exception cause) {
    FormatException fault =
        new FormatException(
            file, 0, "cannot be read as FITS", "copy the file again, or leave it out");
    fault.initCause(cause);
    return fault;
  }

  @Override
  public void close() throws IOException {
    fits.close();
  }
}
