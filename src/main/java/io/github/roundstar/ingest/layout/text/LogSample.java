package io.github.roundstar.ingest.layout.text;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.formats.TextEncoding;
import io.github.roundstar.formats.TextSource;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * The beginning of a log, from which its layout is worked out: at most {@link #MOST_LINES} lines
 * and {@link #MOST_CHARACTERS} characters.
 *
 * @param file name for messages
 * @param encoding encoding of the file
 * @param lines its lines; faulty ones are left out
 */
public record LogSample(String file, TextEncoding encoding, List<String> lines) {
  static final int MOST_LINES = 20_000;
  static final int MOST_CHARACTERS = 4 << 20;
  private static final int HEAD = 64 * 1024;

  public static LogSample read(Path path) throws IOException, FormatException {
    String file = String.valueOf(path.getFileName());
    TextEncoding encoding = encoding(file, TextSource.head(path, HEAD));
    List<String> lines = new ArrayList<>();
    int characters = 0;
    try (TextSource source = TextSource.open(path, encoding)) {
      while (source.lineNumber() < MOST_LINES && characters < MOST_CHARACTERS && source.next()) {
        if (source.fault().isEmpty()) {
          lines.add(source.line());
          characters += source.line().length();
        }
      }
    }
    return new LogSample(file, encoding, List.copyOf(lines));
  }

  private static TextEncoding encoding(String file, byte[] head) throws FormatException {
    if (head.length == 0) {
      throw new FormatException(file, 0, "the file is empty", "give the log as it was written");
    }
    if (TextEncoding.ofMark(head) == TextEncoding.UTF_16) {
      return TextEncoding.UTF_16;
    }
    refuseOtherKinds(file, head);
    refuseEndlessLine(file, head);
    for (int length = head.length; length > Math.max(0, head.length - 4); length--) {
      try {
        StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(head, 0, length));
        return TextEncoding.UTF_8_CR;
      } catch (CharacterCodingException e) {
        continue; // a head, or a file, may be cut off within a character
      }
    }
    return TextEncoding.LATIN_1;
  }

  private static void refuseEndlessLine(String file, byte[] head) throws FormatException {
    for (byte b : head) {
      if (b == '\n' || b == '\r') {
        return;
      }
    }
    if (head.length == HEAD) {
      throw new FormatException(
          file,
          1,
          "a line longer than " + HEAD + " bytes",
          "check that this is a text log, one frame to a line");
    }
  }

  /** Text has next to no control characters; pictures, packed and office files are full of them. */
  private static void refuseOtherKinds(String file, byte[] head) throws FormatException {
    int odd = 0;
    for (byte b : head) {
      odd += b >= 0 && b < ' ' && b != '\t' && b != '\n' && b != '\r' && b != '\f' ? 1 : 0;
    }
    boolean packed = head.length > 3 && head[0] == 'P' && head[1] == 'K' && head[2] < ' ';
    if (packed || odd * 200L > head.length) {
      throw new FormatException(
          file,
          0,
          packed ? "a packed or office file, not a text log" : "not a text log",
          "give the text log of the guiding program, or save the sheet as CSV");
    }
  }
}
