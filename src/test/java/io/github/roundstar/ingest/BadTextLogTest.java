package io.github.roundstar.ingest;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.roundstar.formats.TextSource;
import io.github.roundstar.ingest.layout.Inference;
import io.github.roundstar.ingest.layout.InventedLog;
import io.github.roundstar.ingest.layout.InventedNight;
import io.github.roundstar.ingest.layout.Layout;
import io.github.roundstar.ingest.layout.LayoutFile;
import io.github.roundstar.model.GuideLog;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Damaged, endless and mixed text logs: bounded, counted, and refused in one clear sentence. */
class BadTextLogTest {
  @TempDir Path folder;
  private byte[] crane;
  private Layout layout;

  @BeforeEach
  void write() throws Exception {
    crane = InventedLog.CRANE.bytes(InventedNight.play(3, 5));
    layout = LayoutFile.read("crane.toml", InventedLog.CRANE.layout().getBytes(UTF_8));
  }

  private GuideLog read(InputStream in) throws Exception {
    return LayoutReader.read("night.log", in, layout);
  }

  /** The same block of remarks again and again, beyond what a file may hold. */
  private static final class Endless extends InputStream {
    private final byte[] block = ("# " + "x".repeat(60_000) + "\n").getBytes(UTF_8);
    private int at;

    @Override
    public int read() {
      at = (at + 1) % block.length;
      return block[at];
    }

    @Override
    public int read(byte[] target, int offset, int length) {
      int count = Math.min(length, block.length - at);
      System.arraycopy(block, at, target, offset, count);
      at = (at + count) % block.length;
      return count;
    }
  }

  @Tag("long")
  @Test
  void endlessStreamIsRefused() {
    assertThatThrownBy(
            () -> read(new SequenceInputStream(new ByteArrayInputStream(crane), new Endless())))
        .isInstanceOf(UnusableInputException.class)
        .hasMessageContaining("more than " + TextSource.LARGEST_TEXT + " bytes of text");
  }

  /** Some mebibytes on disk that unpack to two gibibytes. */
  @Tag("long")
  @Test
  void packedFileThatUnpacksWithoutEndIsRefused() throws Exception {
    byte[] packed = packed("# " + "x".repeat(60_000) + "\n");

    assertThatThrownBy(() -> read(new ByteArrayInputStream(packed)))
        .isInstanceOf(UnusableInputException.class)
        .hasMessageContaining("more than " + TextSource.LARGEST_TEXT + " bytes of text");
  }

  /** Rows so short that their number ends it first. */
  @Tag("long")
  @Test
  void packedFileOfShortRowsIsRefused() throws Exception {
    byte[] packed = packed("0,0,0,0,0\n");

    assertThatThrownBy(() -> read(new ByteArrayInputStream(packed)))
        .isInstanceOf(UnusableInputException.class)
        .hasMessageContaining("more than 10000000 rows");
  }

  private byte[] packed(String row) throws IOException {
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    byte[] rows = row.repeat(1_000_000 / row.length()).getBytes(UTF_8);
    try (GZIPOutputStream out = new GZIPOutputStream(packed)) {
      out.write(crane);
      for (long written = 0; written <= TextSource.LARGEST_TEXT; written += rows.length) {
        out.write(rows);
      }
    }
    assertThat(packed.size()).isLessThan(16 << 20);
    return packed.toByteArray();
  }

  @Test
  void lineOfTenMegabytesCostsItselfOnly() throws Exception {
    String text = new String(crane, UTF_8) + "9".repeat(10_000_000) + "\n";

    GuideLog log = read(new ByteArrayInputStream(text.getBytes(UTF_8)));

    assertThat(log.source().unusableByReason()).containsOnlyKeys("line too long");
    assertThat(log.source().unusable()).isEqualTo(1);
  }

  @Test
  void logStillBeingWrittenLosesItsLastRowOnly() throws Exception {
    byte[] cut = Arrays.copyOf(crane, crane.length - 12);

    GuideLog log = read(new ByteArrayInputStream(cut));

    assertThat(log.source().unusable()).isEqualTo(1);
    assertThat(log.source().unusableByReason()).containsOnlyKeys("row cut short");
  }

  @Test
  void nightsWrittenIntoOneFileAreNightsOfTheirOwn() throws Exception {
    String second = new String(crane, UTF_8).replace("14.03.2026", "16.03.2026");

    GuideLog log =
        read(new ByteArrayInputStream((new String(crane, UTF_8) + second).getBytes(UTF_8)));
    Nights nights = NightGrouping.group(List.of(log), OptionalDouble.empty(), Optional.empty());

    assertThat(log.runs()).hasSize(4);
    assertThat(nights.nights())
        .extracting(night -> night.name())
        .containsExactly("2026-03-14", "2026-03-16");
  }

  /** Bytes changed at random: either the log still reads or it is refused, never anything else. */
  @Test
  void damagedBytesNeverEndInAFault() throws Exception {
    Random random = new Random(20);
    int read = 0;
    for (int i = 0; i < 150; i++) {
      InventedLog invented = InventedLog.values()[i % InventedLog.values().length];
      byte[] log = invented.bytes(InventedNight.play(3, 2));
      int changes = 1 + random.nextInt(40);
      for (int c = 0; c < changes; c++) {
        log[random.nextInt(log.length)] =
            (byte) (random.nextInt(6) == 0 ? random.nextInt() : 32 + random.nextInt(90));
      }
      Path file = Files.write(folder.resolve("damaged.log"), log);
      try {
        Inference found = InferredLog.infer(file);
        assertThat(found.decisions()).isNotEmpty();
        LayoutReader.read(file, LayoutFile.read("a.toml", invented.layout().getBytes(UTF_8)));
        read++;
      } catch (UnusableInputException e) {
        assertThat(e).hasMessageContaining("damaged.log");
      }
    }
    assertThat(read).isPositive();
  }
}
