package io.github.roundstar.formats;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.SocketTimeoutException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What cameras write by the Exif standard is read. */
class PhotoHeaderTest {
  @TempDir private Path temporary;

  /** Tags and types of CIPA DC-008 (Exif 2.32), written byte by byte. */
  @Tag("published")
  @Test
  void tagsOfTheStandardAreRead() throws IOException, FormatException {
    Path file = temporary.resolve("night.jpg");
    Files.write(
        file,
        new MadeUpPhoto()
            .text(0x9003, "2026:03:14 20:15:30")
            .text(0x9011, "+01:00")
            .text(0x9291, "25")
            .rational(0x829A, 601, 2)
            .rational(0x920A, 530, 1)
            .bytes());
    PhotoHeader header = PhotoHeader.read(file);
    assertThat(header.taken()).hasValue("2026:03:14 20:15:30.25");
    assertThat(header.offset()).hasValue("+01:00");
    assertThat(header.exposureSeconds()).hasValue(300.5);
    assertThat(header.focalLengthMillimetres()).hasValue(530);
  }

  @Test
  void missingTagsAreMissing() throws IOException, FormatException {
    Path file = temporary.resolve("night.jpg");
    Files.write(file, new MadeUpPhoto().rational(0x829A, 30, 0).bytes());
    PhotoHeader header = PhotoHeader.read(file);
    assertThat(header.taken()).isEmpty();
    assertThat(header.offset()).isEmpty();
    assertThat(header.exposureSeconds()).isEmpty();
  }

  @Test
  void otherFilesAreNamed() throws IOException {
    Path file = temporary.resolve("night.jpg");
    Files.writeString(file, "no photograph");
    assertThatThrownBy(() -> PhotoHeader.read(file))
        .isInstanceOf(FormatException.class)
        .hasMessageContaining("night.jpg: is no photograph that can be read: ");
  }

  /**
   * XMP is XML, and XML may name entities that lie elsewhere; nobody is asked for them. Here they
   * lie with a server of this test, to which a connection could not go unnoticed.
   *
   * @see "ISO 16684-1 (XMP), section 7; Adobe XMP Specification Part 3, 1.1.3: APP1 of JPEG"
   */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "<!DOCTYPE x [<!ENTITY e SYSTEM 'http://127.0.0.1:PORT/e'>]>",
        "<!DOCTYPE x SYSTEM 'http://127.0.0.1:PORT/x.dtd'>",
        "<!DOCTYPE x [<!ENTITY % p SYSTEM 'http://127.0.0.1:PORT/p'> %p;]>"
      })
  void entitiesOfItsXmpAreNotFetched(String doctype) throws IOException, FormatException {
    try (ServerSocket server = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      String xmp =
          "<?xml version='1.0'?>"
              + doctype.replace("PORT", Integer.toString(server.getLocalPort()))
              + "<x:xmpmeta xmlns:x='adobe:ns:meta/'><rdf:RDF"
              + " xmlns:rdf='http://www.w3.org/1999/02/22-rdf-syntax-ns#'><rdf:Description"
              + " xmlns:a='http://a.invalid/' a:b='c'>&e;</rdf:Description></rdf:RDF></x:xmpmeta>";
      byte[] segment = ("http://ns.adobe.com/xap/1.0/\0" + xmp).getBytes(ISO_8859_1);
      byte[] photo = new MadeUpPhoto().text(0x9003, "2026:03:14 20:15:30").bytes();
      ByteBuffer file = ByteBuffer.allocate(photo.length + segment.length + 4);
      file.putShort((short) 0xFFD8).putShort((short) 0xFFE1);
      file.putShort((short) (segment.length + 2)).put(segment).put(photo, 2, photo.length - 2);
      Path path = Files.write(temporary.resolve("night.jpg"), file.array());

      assertThat(PhotoHeader.read(path).taken()).hasValue("2026:03:14 20:15:30");

      server.setSoTimeout(50);
      assertThatThrownBy(server::accept).isInstanceOf(SocketTimeoutException.class);
    }
  }
}
