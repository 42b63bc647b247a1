package io.github.roundstar.dialects;

import java.io.ByteArrayOutputStream;
import java.nio.charset.Charset;

/** Characters to the bytes of a file. */
final class ByteForm {
  private ByteForm() {}

  static byte[] bytes(String text, String charset, boolean mark) {
    byte[] body = text.getBytes(Charset.forName(charset));
    if (!mark) {
      return body;
    }
    byte[] head =
        switch (charset) {
          case "UTF-16LE" -> new byte[] {(byte) 0xff, (byte) 0xfe};
          case "UTF-16BE" -> new byte[] {(byte) 0xfe, (byte) 0xff};
          default -> new byte[] {(byte) 0xef, (byte) 0xbb, (byte) 0xbf};
        };
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(head);
    out.writeBytes(body);
    return out.toByteArray();
  }
}
