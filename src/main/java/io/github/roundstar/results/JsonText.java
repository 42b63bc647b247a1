package io.github.roundstar.results;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import java.io.ByteArrayOutputStream;
import java.io.IOException;

/**
 * Records as JSON and back: UTF-8, keys in the order of the records, numbers with eight significant
 * digits, so that the last bits of another processor's arithmetic do not show.
 */
final class JsonText {
  private JsonText() {}

  /** The document, ending in a line feed. */
  static byte[] write(Object document) {
    DefaultIndenter lineFeed = new DefaultIndenter(" ", "\n");
    DefaultPrettyPrinter printer =
        new DefaultPrettyPrinter()
            .withObjectIndenter(lineFeed)
            .withArrayIndenter(DefaultPrettyPrinter.FixedSpaceIndenter.instance)
            .withSeparators(
                Separators.createDefaultInstance()
                    .withObjectFieldValueSpacing(Separators.Spacing.AFTER));
    ByteArrayOutputStream json = new ByteArrayOutputStream();
    try (JsonGenerator out = new JsonFactory().createGenerator(json)) {
      out.setPrettyPrinter(printer);
      new RecordWriter(out).write(document);
    } catch (IOException e) {
      throw new IllegalStateException("a result record that is not JSON", e);
    }
    json.write('\n');
    return json.toByteArray();
  }

  /**
   * Reads a document; keys it does not know are ignored.
   *
   * @throws IOException if it is not JSON or not such a document
   */
  static <T extends Record> T read(byte[] json, Class<T> type) throws IOException {
    return RecordReader.read(json, type);
  }
}
