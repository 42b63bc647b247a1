package io.github.roundstar.results;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.deser.std.StdDeserializer;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import io.github.roundstar.model.GuidingMode;
import io.github.roundstar.model.PierSide;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Locale;

/**
 * Records as JSON and back: UTF-8, keys in the order of the records, numbers with eight significant
 * digits, so that the last bits of another processor's arithmetic do not show.
 */
final class JsonText {
  /** Reads; started only where something is read. */
  private static final class Mapper {
    static final ObjectMapper MAPPER = mapper();
  }

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
  static <T> T read(byte[] json, Class<T> type) throws IOException {
    return Mapper.MAPPER.readValue(json, type);
  }

  /**
   * A document as it is, bound to no record; a missing node when it is empty.
   *
   * @throws IOException if it is not JSON
   */
  static JsonNode tree(byte[] json) throws IOException {
    return Mapper.MAPPER.readTree(json);
  }

  private static ObjectMapper mapper() {
    SimpleModule module = new SimpleModule();
    module.addDeserializer(Double.class, new Finite(null));
    module.addDeserializer(double.class, new Finite(0.0));
    module.addDeserializer(GuidingMode.class, new UpperCase<>(GuidingMode.class));
    module.addDeserializer(PierSide.class, new UpperCase<>(PierSide.class));
    module.addDeserializer(Level.class, new UpperCase<>(Level.class));
    module.addDeserializer(Decision.class, new UpperCase<>(Decision.class));
    return JsonMapper.builder()
        .addModule(module)
        .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
        .build();
  }

  /** Numbers as JSON has them: none that is too large for a double, no word for infinity. */
  private static final class Finite extends StdDeserializer<Double> {
    private static final long serialVersionUID = 1;
    private final Double missing;

    Finite(Double missing) {
      super(Double.class);
      this.missing = missing;
    }

    @Override
    public Double deserialize(JsonParser in, DeserializationContext context) throws IOException {
      double value = in.currentToken().isNumeric() ? in.getDoubleValue() : Double.NaN;
      if (!Double.isFinite(value)) {
        throw new IOException("not a finite number: " + in.getText());
      }
      return value;
    }

    @Override
    public Double getNullValue(DeserializationContext context) {
      return missing;
    }

    @Override
    public Object getAbsentValue(DeserializationContext context) {
      return missing;
    }
  }

  /** Enum constants written as lower-case words joined by hyphens. */
  private static final class UpperCase<E extends Enum<E>> extends StdDeserializer<E> {
    private static final long serialVersionUID = 1;
    private final Class<E> type;

    UpperCase(Class<E> type) {
      super(type);
      this.type = type;
    }

    @Override
    public E deserialize(JsonParser in, DeserializationContext context) throws IOException {
      String name = in.getText().toUpperCase(Locale.ROOT).replace('-', '_');
      try {
        return Enum.valueOf(type, name);
      } catch (IllegalArgumentException e) {
        throw new IOException("unknown word " + in.getText(), e);
      }
    }
  }
}
