package io.github.roundstar.results;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.deser.std.StdDeserializer;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import io.github.roundstar.model.GuidingMode;
import io.github.roundstar.model.PierSide;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Arrays;
import java.util.Locale;

/**
 * Records as JSON and back: UTF-8, keys in the order of the records, numbers with eight significant
 * digits, so that the last bits of another processor's arithmetic do not show.
 */
final class JsonText {
  private static final MathContext DIGITS = new MathContext(8);
  private static final ObjectMapper MAPPER = mapper();

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
    try {
      byte[] json = MAPPER.writer(printer).writeValueAsBytes(document);
      byte[] withLineFeed = Arrays.copyOf(json, json.length + 1);
      withLineFeed[json.length] = '\n';
      return withLineFeed;
    } catch (IOException e) {
      throw new IllegalStateException("a result record that is not JSON", e);
    }
  }

  /**
   * Reads a document; keys it does not know are ignored.
   *
   * @throws IOException if it is not JSON or not such a document
   */
  static <T> T read(byte[] json, Class<T> type) throws IOException {
    return MAPPER.readValue(json, type);
  }

  /**
   * A document as it is, bound to no record; a missing node when it is empty.
   *
   * @throws IOException if it is not JSON
   */
  static JsonNode tree(byte[] json) throws IOException {
    return MAPPER.readTree(json);
  }

  private static ObjectMapper mapper() {
    SimpleModule module = new SimpleModule();
    module.addSerializer(Double.class, new Digits());
    module.addSerializer(double.class, new Digits());
    module.addSerializer(new LowerCase());
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

  private static final class Digits extends StdSerializer<Double> {
    private static final long serialVersionUID = 1;

    Digits() {
      super(Double.class);
    }

    @Override
    public void serialize(Double value, JsonGenerator out, SerializerProvider provider)
        throws IOException {
      if (!Double.isFinite(value)) {
        throw new IOException("not a finite number: " + value);
      }
      BigDecimal rounded = new BigDecimal(value).round(DIGITS).stripTrailingZeros();
      boolean plain = rounded.scale() <= 12 && rounded.precision() - rounded.scale() <= 12;
      out.writeNumber(plain ? rounded.toPlainString() : rounded.toString());
    }
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

  /** Enum constants as lower-case words joined by hyphens. */
  @SuppressWarnings("rawtypes")
  private static final class LowerCase extends StdSerializer<Enum> {
    private static final long serialVersionUID = 1;

    LowerCase() {
      super(Enum.class);
    }

    @Override
    public void serialize(Enum value, JsonGenerator out, SerializerProvider provider)
        throws IOException {
      out.writeString(value.name().toLowerCase(Locale.ROOT).replace('_', '-'));
    }
  }

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
