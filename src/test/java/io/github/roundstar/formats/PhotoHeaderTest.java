package io.github.roundstar.formats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

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
}
