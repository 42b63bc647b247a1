package io.github.roundstar.formats;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.TreeMap;

/**
 * The smallest JPEG with an Exif segment and no picture: SOI, APP1 with a TIFF block of two
 * directories, EOI.
 *
 * @see "CIPA DC-008 (Exif 2.32), section 4: APP1, IFD0, Exif IFD; TIFF 6.0, section 2"
 */
public final class MadeUpPhoto {
  private static final int ENTRY = 12;
  private static final int EXIF_DIRECTORY = 8 + 2 + ENTRY + 4;
  private static final int TEXT = 2;
  private static final int LONG = 4;
  private static final int RATIONAL = 5;

  private record Field(int type, int count, byte[] value) {}

  private final Map<Integer, Field> fields = new TreeMap<>();

  /** Adds text. */
  public MadeUpPhoto text(int tag, String text) {
    byte[] value = (text + "\0").getBytes(StandardCharsets.US_ASCII);
    fields.put(tag, new Field(TEXT, value.length, value));
    return this;
  }

  /** Adds a ratio of integers. */
  public MadeUpPhoto rational(int tag, int over, int under) {
    byte[] value = ByteBuffer.allocate(8).putInt(over).putInt(under).array();
    fields.put(tag, new Field(RATIONAL, 1, value));
    return this;
  }

  /** The file. */
  public byte[] bytes() {
    ByteBuffer tiff = ByteBuffer.allocate(4096);
    tiff.put("MM".getBytes(StandardCharsets.US_ASCII)).putShort((short) 42).putInt(8);
    tiff.putShort((short) 1);
    entry(tiff, 0x8769, LONG, 1).putInt(EXIF_DIRECTORY);
    tiff.putInt(0);
    tiff.putShort((short) fields.size());
    int values = EXIF_DIRECTORY + 2 + ENTRY * fields.size() + 4;
    ByteArrayOutputStream far = new ByteArrayOutputStream();
    fields.forEach(
        (tag, field) -> {
          entry(tiff, tag, field.type, field.count);
          if (field.value.length > 4) {
            tiff.putInt(values + far.size());
            far.writeBytes(field.value);
          } else {
            tiff.put(ByteBuffer.allocate(4).put(field.value).array());
          }
        });
    tiff.putInt(0).put(far.toByteArray());
    byte[] block = new byte[tiff.position()];
    tiff.flip().get(block);
    ByteBuffer file = ByteBuffer.allocate(block.length + 14);
    file.putShort((short) 0xFFD8).putShort((short) 0xFFE1).putShort((short) (block.length + 8));
    file.put("Exif\0\0".getBytes(StandardCharsets.US_ASCII)).put(block).putShort((short) 0xFFD9);
    return file.array();
  }

  private static ByteBuffer entry(ByteBuffer tiff, int tag, int type, int count) {
    return tiff.putShort((short) tag).putShort((short) type).putInt(count);
  }
}
