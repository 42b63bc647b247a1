package io.github.roundstar.formats;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Text comes out line by line, the same whatever it was packed in, and no byte goes uncounted. */
class TextSourceTest {
  @TempDir Path folder;

  private TextSource open(byte[] bytes) throws IOException {
    return TextSource.open(Files.write(folder.resolve("night.log"), bytes));
  }

  private static byte[] gzip(byte[] bytes) throws IOException {
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    try (GZIPOutputStream out = new GZIPOutputStream(packed)) {
      out.write(bytes);
    }
    return packed.toByteArray();
  }

  private List<String> lines(byte[] bytes) throws IOException, FormatException {
    try (TextSource source = open(bytes)) {
      List<String> lines = new ArrayList<>();
      while (source.next()) {
        lines.add(source.line());
        assertThat(source.lineNumber()).isEqualTo(lines.size());
      }
      return lines;
    }
  }

  @Test
  void lineEndsAndByteOrderMarkDoNotMatter() throws Exception {
    List<String> expected = List.of("a", "", "Größe", "d");
    assertThat(lines("a\n\nGröße\nd".getBytes(UTF_8))).isEqualTo(expected);
    assertThat(lines("a\r\n\r\nGröße\r\nd\r\n".getBytes(UTF_8))).isEqualTo(expected);
    assertThat(lines("\uFEFFa\n\nGröße\nd\n".getBytes(UTF_8))).isEqualTo(expected);
    assertThat(lines(gzip("\uFEFFa\n\nGröße\nd\n".getBytes(UTF_8)))).isEqualTo(expected);
    assertThat(lines(new byte[0])).isEmpty();
    assertThat(lines("\n".getBytes(UTF_8))).containsExactly("");
  }

  @Tag("identity")
  @Test
  void linesOfAnyLengthSurviveTheBlocks() throws Exception {
    Random random = new Random(3);
    List<String> expected = new ArrayList<>();
    for (int i = 0; i < 200; i++) {
      expected.add("x".repeat(i % 7 == 0 ? TextSource.LONGEST_LINE - i : random.nextInt(5000)));
    }
    byte[] text = String.join("\n", expected).getBytes(UTF_8);
    assertThat(lines(text)).isEqualTo(expected);
    assertThat(lines(gzip(text))).isEqualTo(expected);
  }

  @Tag("identity")
  @Test
  void hashAndSizeAreThoseOfTheFileOnDisk() throws Exception {
    for (byte[] bytes :
        List.of("a\nb\n".repeat(99_999).getBytes(UTF_8), gzip("a\n".getBytes(UTF_8)))) {
      try (TextSource source = open(bytes)) {
        source.next();
        assertThat(source.bytes()).isEqualTo(bytes.length);
        assertThat(source.sha256())
            .isEqualTo(
                HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes)));
      }
    }
  }

  /** NIST CAVP, SHA256ShortMsg.rsp, Len = 0. */
  @Tag("published")
  @Test
  void hashOfNothing() throws Exception {
    try (TextSource source = open(new byte[0])) {
      assertThat(source.sha256())
          .isEqualTo("e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
    }
  }

  @Test
  void faultyLinesAreHandedOutWithTheirFault() throws Exception {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    bytes.writeBytes("good\nnul\0nul\n".getBytes(UTF_8));
    bytes.writeBytes(new byte[] {'b', (byte) 0xF6, 's', '\n'});
    bytes.writeBytes("y".repeat(3_000_000).getBytes(UTF_8));
    bytes.writeBytes("\ngood again".getBytes(UTF_8));
    try (TextSource source = open(bytes.toByteArray())) {
      List<String> seen = new ArrayList<>();
      while (source.next()) {
        seen.add(source.lineNumber() + " " + source.fault());
      }
      assertThat(seen)
          .containsExactly(
              "1 Optional.empty",
              "2 Optional[NUL_BYTE]",
              "3 Optional[NOT_UTF8]",
              "4 Optional[TOO_LONG]",
              "5 Optional.empty");
    }
  }

  @Test
  void aFaultyLineHasNoText() throws Exception {
    try (TextSource source = open("a\0b".getBytes(UTF_8))) {
      source.next();
      assertThatThrownBy(source::line)
          .isInstanceOf(FormatException.class)
          .hasMessageStartingWith("night.log:1: NUL byte: ");
    }
  }

  @Test
  void linesBeforeADamageAreKept() throws Exception {
    StringBuilder text = new StringBuilder();
    Random random = new Random(5);
    for (int i = 0; i < 50_000; i++) {
      text.append(random.nextInt()).append('\n');
    }
    byte[] packed = gzip(text.toString().getBytes(UTF_8));
    byte[] cut = Arrays.copyOf(packed, packed.length / 2);
    try (TextSource source = open(cut)) {
      int lines = 0;
      while (source.next()) {
        lines++;
      }
      assertThat(lines).isBetween(10_000, 40_000);
      assertThat(source.damage()).hasValue("the gzip data end too early");
      assertThat(source.bytes()).isEqualTo(cut.length);
    }
    packed[packed.length - 6] ^= 1;
    try (TextSource source = open(packed)) {
      while (source.next()) {
        continue;
      }
      assertThat(source.damage()).hasValue("the gzip data are damaged");
    }
    try (TextSource source = open(new byte[] {0x1F, (byte) 0x8B})) {
      assertThat(source.next()).isFalse();
      assertThat(source.damage()).isPresent();
    }
  }

  @Test
  void unreadHandsTheLineOutAgain() throws Exception {
    try (TextSource source = open("a\nb".getBytes(UTF_8))) {
      source.next();
      source.unread();
      assertThat(source.next()).isTrue();
      assertThat(source.line()).isEqualTo("a");
      assertThat(source.next()).isTrue();
      assertThat(source.line()).isEqualTo("b");
    }
  }
}
