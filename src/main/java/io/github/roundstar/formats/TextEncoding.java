package io.github.roundstar.formats;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.Charset;
import java.nio.charset.CharsetEncoder;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.Locale;

/** Encodings of a text log. */
public enum TextEncoding {
  /** UTF-8 with LF or CRLF; as it is, so that a wrong byte costs its line only. */
  UTF_8(StandardCharsets.UTF_8),
  /** UTF-8 in which a CR alone ends a line. */
  UTF_8_CR(StandardCharsets.UTF_8),
  /** ISO 8859-1. */
  LATIN_1(StandardCharsets.ISO_8859_1),
  /** UTF-16, big-endian unless a byte order mark says otherwise. */
  UTF_16(StandardCharsets.UTF_16);

  private final Charset charset;

  TextEncoding(Charset charset) {
    this.charset = charset;
  }

  /** UTF-16 where the first bytes are its byte order mark; else UTF-8 as it is. */
  public static TextEncoding ofMark(byte[] head) {
    boolean mark =
        head.length > 1 && (head[0] == -1 && head[1] == -2 || head[0] == -2 && head[1] == -1);
    return mark ? UTF_16 : UTF_8;
  }

  /** The characters of some bytes. */
  public String decoded(byte[] bytes) {
    return new String(bytes, charset);
  }

  /** The word for it, such as {@code latin-1}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  InputStream asUtf8(InputStream in) {
    return this == UTF_8 ? in : new Recoded(new InputStreamReader(in, charset));
  }

  /** Text turned into UTF-8, every CR that stands alone into LF. */
  private static final class Recoded extends InputStream {
    private final Reader in;
    private final CharBuffer chars = CharBuffer.allocate(8192);
    private final ByteBuffer bytes = ByteBuffer.allocate(3 * 8192 + 16);
    private final CharsetEncoder encoder =
        StandardCharsets.UTF_8
            .newEncoder()
            .onMalformedInput(CodingErrorAction.REPLACE)
            .onUnmappableCharacter(CodingErrorAction.REPLACE);
    private boolean afterReturn;
    private boolean ended;

    Recoded(Reader in) {
      this.in = in;
      bytes.flip();
    }

    @Override
    public int read() throws IOException {
      byte[] one = new byte[1];
      return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
    }

    @Override
    public int read(byte[] target, int offset, int length) throws IOException {
      while (!bytes.hasRemaining()) {
        if (ended) {
          return -1;
        }
        refill();
      }
      int count = Math.min(length, bytes.remaining());
      bytes.get(target, offset, count);
      return count;
    }

    private void refill() throws IOException {
      ended = in.read(chars) < 0;
      chars.flip();
      unifyLineEnds();
      bytes.clear();
      encoder.encode(chars, bytes, ended);
      bytes.flip();
      chars.compact();
    }

    /** CRLF and CR become LF; what was looked at before has no CR left. */
    private void unifyLineEnds() {
      int kept = chars.position();
      for (int i = chars.position(); i < chars.limit(); i++) {
        char c = chars.get(i);
        if (!(c == '\n' && afterReturn)) {
          chars.put(kept++, c == '\r' ? '\n' : c);
        }
        afterReturn = c == '\r';
      }
      chars.limit(kept);
    }
  }
}
