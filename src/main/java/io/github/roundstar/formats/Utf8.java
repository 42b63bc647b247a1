package io.github.roundstar.formats;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;

/** Strict UTF-8: a byte order mark is allowed, a byte that is not UTF-8 is a fault with a line. */
final class Utf8 {
  static final String REMEDY = "save the file as UTF-8";

  private Utf8() {}

  static String decode(String file, byte[] bytes) throws FormatException {
    ByteBuffer in = ByteBuffer.wrap(bytes);
    try {
      String text = StandardCharsets.UTF_8.newDecoder().decode(in).toString();
      return text.startsWith("\uFEFF") ? text.substring(1) : text;
    } catch (CharacterCodingException e) {
      throw fault(
          file, lineAt(bytes, in.position()), bytes[Math.min(in.position(), bytes.length - 1)]);
    }
  }

  static FormatException fault(String file, long line, byte found) {
    return new FormatException(
        file, line, String.format(Locale.ROOT, "byte 0x%02X is not UTF-8", found & 0xFF), REMEDY);
  }

  private static long lineAt(byte[] bytes, int end) {
    long line = 1;
    for (int i = 0; i < end; i++) {
      if (bytes[i] == '\n') {
        line++;
      }
    }
    return line;
  }
}
