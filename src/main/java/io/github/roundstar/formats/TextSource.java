package io.github.roundstar.formats;

import java.io.Closeable;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipException;

/**
 * The lines of a text file, plain or gzip (told by its first two bytes), one at a time and never
 * all in memory. Lines end with LF or CRLF, neither of which belongs to the line. The hash and the
 * size of the file as it lies on disk are taken in the same pass.
 *
 * <p>A line with a fault ({@link LineFault}) is handed out like any other, so that the caller can
 * count it; {@link #line()} refuses it.
 */
public final class TextSource implements Closeable {
  /** Longest line [bytes]; longer ones are cut and marked {@link LineFault#TOO_LONG}. */
  public static final int LONGEST_LINE = 64 * 1024;

  /** Most text a file may hold once unpacked [bytes]. */
  public static final long LARGEST_TEXT = 2L << 30;

  private static final int BLOCK = 128 * 1024;

  private final String file;
  private final HashedInput raw;
  private final InputStream text;
  private final CharsetDecoder decoder = StandardCharsets.UTF_8.newDecoder();
  private final byte[] buffer = new byte[LONGEST_LINE + BLOCK];
  private int position;
  private int limit;
  private long unpacked;
  private boolean ended;
  private boolean again;
  private String damage;

  private int from;
  private int to;
  private long lineNumber;
  private LineFault fault;

  private TextSource(String file, HashedInput raw, TextEncoding encoding) throws IOException {
    this.file = file;
    this.raw = raw;
    this.text = encoding.asUtf8(unpack(raw));
    skipByteOrderMark();
  }

  /** Opens a file; its first line is read by the first {@link #next()}. */
  public static TextSource open(Path path) throws IOException {
    return open(path, TextEncoding.UTF_8);
  }

  /** Opens a file in another encoding, in which a CR alone ends a line as well. */
  public static TextSource open(Path path, TextEncoding encoding) throws IOException {
    return open(String.valueOf(path.getFileName()), Files.newInputStream(path), encoding);
  }

  /**
   * Reads a stream, which is closed with this source.
   *
   * @param file name for messages, without folders
   */
  public static TextSource open(String file, InputStream in, TextEncoding encoding)
      throws IOException {
    try {
      return new TextSource(file, new HashedInput(in), encoding);
    } catch (IOException | RuntimeException e) {
      in.close();
      throw e;
    }
  }

  /** The first bytes of a file, unpacked; fewer where it is shorter or damaged. */
  public static byte[] head(Path path, int count) throws IOException {
    try (TextSource source = open(path)) {
      while (source.limit < Math.min(count, source.buffer.length) && source.fill()) {
        continue;
      }
      return Arrays.copyOf(source.buffer, Math.min(count, source.limit));
    }
  }

  private InputStream unpack(HashedInput in) throws IOException {
    if (!in.startsWith(0x1F, 0x8B)) {
      return in;
    }
    try {
      return new GZIPInputStream(in, BLOCK);
    } catch (EOFException | ZipException e) {
      damage = "the gzip data are damaged";
      return InputStream.nullInputStream();
    }
  }

  private void skipByteOrderMark() throws IOException {
    while (limit < 3 && fill()) {
      continue;
    }
    if (limit >= 3
        && buffer[0] == (byte) 0xEF
        && buffer[1] == (byte) 0xBB
        && buffer[2] == (byte) 0xBF) {
      position = 3;
    }
  }

  /**
   * Goes to the next line.
   *
   * @return false at the end
   * @throws FormatException if the file holds more text than {@link #LARGEST_TEXT}
   */
  public boolean next() throws IOException, FormatException {
    if (again) {
      again = false;
      return true;
    }
    if (position == limit && !refill()) {
      return false;
    }
    lineNumber++;
    scanLine();
    return true;
  }

  /** Lets the next call of {@link #next()} hand out the current line once more. */
  public void unread() {
    again = true;
  }

  /** Finds the end of the line at {@link #position}, noting NUL and bytes beyond ASCII. */
  private void scanLine() throws IOException, FormatException {
    from = position;
    int at = position;
    boolean nul = false;
    boolean cut = false;
    int signs = 0;
    while (true) {
      while (at < limit && buffer[at] != '\n') {
        byte b = buffer[at++];
        signs |= b;
        nul |= b == 0;
      }
      if (at < limit || ended) {
        break;
      }
      if (at - from > LONGEST_LINE) {
        cut = true;
        at = from;
      }
      int kept = at - from;
      System.arraycopy(buffer, from, buffer, 0, kept);
      from = 0;
      position = at = limit = kept;
      refill();
    }
    to = at;
    position = Math.min(at + 1, limit);
    if (to > from && buffer[to - 1] == '\r') {
      to--;
    }
    fault = faultOf(nul, cut || to - from > LONGEST_LINE, signs < 0);
  }

  private LineFault faultOf(boolean nul, boolean tooLong, boolean beyondAscii) {
    if (nul) {
      return LineFault.NUL_BYTE;
    }
    if (tooLong) {
      return LineFault.TOO_LONG;
    }
    return beyondAscii && decoded().isEmpty() ? LineFault.NOT_UTF8 : null;
  }

  /** Reads on after the bytes that are kept; false at the end. */
  private boolean refill() throws IOException, FormatException {
    if (position == limit && limit > LONGEST_LINE + 1) {
      position = limit = 0;
    }
    boolean more = fill();
    if (unpacked > LARGEST_TEXT) {
      throw new FormatException(
          file,
          lineNumber,
          "more than " + LARGEST_TEXT + " bytes of text",
          "split the file, one night to a file");
    }
    return more;
  }

  private boolean fill() throws IOException {
    int before = limit;
    while (!ended && limit == before) {
      int count = readText();
      if (count < 0) {
        ended = true;
      } else {
        limit += count;
        unpacked += count;
      }
    }
    return limit > before;
  }

  private int readText() throws IOException {
    try {
      return text.read(buffer, limit, buffer.length - limit);
    } catch (EOFException e) {
      damage = "the gzip data end too early";
    } catch (ZipException e) {
      damage = "the gzip data are damaged";
    }
    return -1;
  }

  /** The file's name, without folders. */
  public String file() {
    return file;
  }

  /** Number of the current line in the unpacked text, from 1. */
  public long lineNumber() {
    return lineNumber;
  }

  /** What makes the current line unreadable as text. */
  public Optional<LineFault> fault() {
    return Optional.ofNullable(fault);
  }

  /**
   * The current line as text.
   *
   * @throws FormatException if it has a fault
   */
  public String line() throws FormatException {
    if (fault != null) {
      throw new FormatException(file, lineNumber, fault.what(), fault.remedy());
    }
    return decoded().orElseThrow();
  }

  private Optional<String> decoded() {
    try {
      return Optional.of(decoder.decode(ByteBuffer.wrap(buffer, from, to - from)).toString());
    } catch (CharacterCodingException e) {
      return Optional.empty();
    }
  }

  /**
   * Reads what is left and tells what broke off the unpacking, if anything did: the lines up to
   * there are good.
   */
  public Optional<String> damage() throws IOException {
    raw.drain();
    return Optional.ofNullable(damage);
  }

  /** SHA-256 of the whole file as it lies on disk, lower-case hex. */
  public String sha256() throws IOException {
    return raw.sha256();
  }

  /** Size of the whole file as it lies on disk. */
  public long bytes() throws IOException {
    raw.drain();
    return raw.count();
  }

  /** The current line's bytes are {@code bytes()[from()]} up to, not including, {@code to()}. */
  byte[] buffer() {
    return buffer;
  }

  int from() {
    return from;
  }

  int to() {
    return to;
  }

  @Override
  public void close() throws IOException {
    raw.close();
  }
}
