package io.github.roundstar.results;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Writes a tree of records as JSON. A mapper would take longer to look at some eighty kinds of
 * record than to write them, and a night is written once.
 */
final class RecordWriter {
  private static final MathContext DIGITS = new MathContext(8);

  private final JsonGenerator out;
  private final Map<Class<?>, RecordComponent[]> components = new HashMap<>();

  RecordWriter(JsonGenerator out) {
    this.out = out;
  }

  /**
   * Writes records, lists, maps from text, texts, enum constants as lower-case words joined by
   * hyphens, truth values, whole numbers, and doubles rounded to eight significant digits.
   *
   * @throws IOException if a number is not finite
   */
  void write(Object value) throws IOException {
    if (value == null) {
      out.writeNull();
    } else if (value instanceof Double number) {
      write(number.doubleValue());
    } else if (value instanceof Record record) {
      writeRecord(record);
    } else if (value instanceof List<?> list) {
      out.writeStartArray();
      for (Object element : list) {
        write(element);
      }
      out.writeEndArray();
    } else if (value instanceof Map<?, ?> map) {
      out.writeStartObject();
      for (Map.Entry<?, ?> entry : map.entrySet()) {
        out.writeFieldName((String) entry.getKey());
        write(entry.getValue());
      }
      out.writeEndObject();
    } else if (value instanceof String text) {
      out.writeString(text);
    } else if (value instanceof Enum<?> word) {
      out.writeString(word.name().toLowerCase(Locale.ROOT).replace('_', '-'));
    } else if (value instanceof Boolean truth) {
      out.writeBoolean(truth);
    } else if (value instanceof Integer || value instanceof Long) {
      out.writeNumber(((Number) value).longValue());
    } else {
      throw new IOException("no JSON for a " + value.getClass().getName());
    }
  }

  private void writeRecord(Record record) throws IOException {
    out.writeStartObject();
    for (RecordComponent component :
        components.computeIfAbsent(record.getClass(), Class::getRecordComponents)) {
      out.writeFieldName(component.getName());
      try {
        write(component.getAccessor().invoke(record));
      } catch (IllegalAccessException | InvocationTargetException e) {
        throw new IOException("a record that cannot be read: " + component, e);
      }
    }
    out.writeEndObject();
  }

  private void write(double number) throws IOException {
    if (!Double.isFinite(number)) {
      throw new IOException("not a finite number: " + number);
    }
    BigDecimal rounded = new BigDecimal(number).round(DIGITS).stripTrailingZeros();
    boolean plain = rounded.scale() <= 12 && rounded.precision() - rounded.scale() <= 12;
    out.writeNumber(plain ? rounded.toPlainString() : rounded.toString());
  }
}
