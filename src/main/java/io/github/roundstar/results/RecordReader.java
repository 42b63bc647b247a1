package io.github.roundstar.results;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/**
 * Reads what {@link RecordWriter} writes. A mapper takes half a second of its own start before the
 * first result is read. Keys that a record does not know are passed over; what is missing is null,
 * or 0 where there is no null.
 */
final class RecordReader {
  private static final JsonFactory JSON = new JsonFactory();

  private final Map<Class<?>, Shape> shapes = new HashMap<>();
  private final Map<Class<?>, List<String>> leftOut;

  /** A record's components by name, and how it is made. */
  private record Shape(
      Map<String, Integer> places, RecordComponent[] components, Constructor<?> constructor) {}

  private RecordReader(Map<Class<?>, List<String>> leftOut) {
    this.leftOut = leftOut;
  }

  /**
   * Reads a document.
   *
   * @throws IOException if it is not JSON or not such a document
   */
  static <T extends Record> T read(byte[] json, Class<T> type) throws IOException {
    try (JsonParser in = JSON.createParser(json)) {
      in.nextToken();
      return type.cast(new RecordReader(Map.of()).value(in, type));
    }
  }

  /**
   * Reads a document without some of its keys and no farther than to the last of the others, which
   * costs less.
   *
   * @param leftOut keys of records that are passed over; a list is then empty
   * @throws IOException if that far it is not JSON, or not such a document
   */
  static <T extends Record> T without(
      byte[] json, Class<T> type, Map<Class<?>, List<String>> leftOut) throws IOException {
    try (JsonParser in = JSON.createParser(json)) {
      if (in.nextToken() != JsonToken.START_OBJECT) {
        throw new IOException("not an object");
      }
      return type.cast(new RecordReader(leftOut).record(in, type, true));
    }
  }

  private Object value(JsonParser in, Type type) throws IOException {
    if (in.currentToken() == null) {
      throw new IOException("the document ends too early");
    }
    if (type instanceof ParameterizedType generic) {
      return in.currentToken() == JsonToken.VALUE_NULL
          ? null
          : generic.getRawType() == List.class ? list(in, generic) : map(in, generic);
    }
    Class<?> plain = (Class<?>) type;
    if (in.currentToken() == JsonToken.VALUE_NULL) {
      return missing(plain);
    }
    if (plain.isRecord()) {
      expect(in, JsonToken.START_OBJECT);
      return record(in, plain, false);
    }
    return scalar(in, plain);
  }

  private static Object scalar(JsonParser in, Class<?> type) throws IOException {
    if (type == String.class) {
      expect(in, JsonToken.VALUE_STRING);
      return in.getText();
    }
    if (type == boolean.class || type == Boolean.class) {
      return in.getBooleanValue();
    }
    if (type == int.class || type == Integer.class) {
      return in.getIntValue();
    }
    if (type == long.class || type == Long.class) {
      return in.getLongValue();
    }
    if (type == double.class || type == Double.class) {
      double number = in.currentToken().isNumeric() ? in.getDoubleValue() : Double.NaN;
      if (!Double.isFinite(number)) {
        throw new IOException("not a finite number: " + in.getText());
      }
      return number;
    }
    if (type.isEnum()) {
      expect(in, JsonToken.VALUE_STRING);
      String name = in.getText().toUpperCase(Locale.ROOT).replace('-', '_');
      return Arrays.stream(type.getEnumConstants())
          .filter(constant -> ((Enum<?>) constant).name().equals(name))
          .findFirst()
          .orElseThrow(() -> new IOException("unknown word " + name));
    }
    throw new IOException("nothing of JSON is a " + type.getName());
  }

  private static void expect(JsonParser in, JsonToken token) throws IOException {
    if (in.currentToken() != token) {
      throw new IOException("found " + in.currentToken() + " where " + token + " belongs");
    }
  }

  private static Object missing(Class<?> type) {
    if (type == int.class) {
      return 0;
    }
    if (type == long.class) {
      return 0L;
    }
    if (type == double.class) {
      return 0.0;
    }
    return type == boolean.class ? Boolean.FALSE : null;
  }

  private List<Object> list(JsonParser in, ParameterizedType type) throws IOException {
    expect(in, JsonToken.START_ARRAY);
    List<Object> list = new ArrayList<>();
    while (in.nextToken() != JsonToken.END_ARRAY) {
      list.add(value(in, type.getActualTypeArguments()[0]));
    }
    return list;
  }

  private Map<String, Object> map(JsonParser in, ParameterizedType type) throws IOException {
    expect(in, JsonToken.START_OBJECT);
    Map<String, Object> map = new TreeMap<>(); // of any order that a record asks for
    while (in.nextToken() != JsonToken.END_OBJECT) {
      String key = in.currentName();
      in.nextToken();
      map.put(key, value(in, type.getActualTypeArguments()[1]));
    }
    return map;
  }

  /**
   * A record.
   *
   * @param asFarAsNeeded whether to leave off once all that it wants has been read
   */
  private Object record(JsonParser in, Class<?> type, boolean asFarAsNeeded) throws IOException {
    Shape shape = shapes.computeIfAbsent(type, RecordReader::shape);
    List<String> without = leftOut.getOrDefault(type, List.of());
    Object[] values = new Object[shape.components().length];
    for (int i = 0; i < values.length; i++) {
      boolean list = shape.components()[i].getType() == List.class;
      boolean out = without.contains(shape.components()[i].getName());
      values[i] = list && out ? List.of() : missing(shape.components()[i].getType());
    }
    int wanted = values.length - without.size();
    int known = 0;
    while ((!asFarAsNeeded || known < wanted) && in.nextToken() != JsonToken.END_OBJECT) {
      String key = in.currentName();
      in.nextToken();
      Integer place = without.contains(key) ? null : shape.places().get(key);
      if (place == null) {
        in.skipChildren();
      } else {
        values[place] = value(in, shape.components()[place].getGenericType());
        known++;
      }
    }
    try {
      return shape.constructor().newInstance(values);
    } catch (InvocationTargetException e) {
      throw new IOException("not a " + type.getSimpleName(), e.getCause());
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException("a record that cannot be made: " + type, e);
    }
  }

  private static Shape shape(Class<?> type) {
    RecordComponent[] components = type.getRecordComponents();
    Map<String, Integer> places = new HashMap<>();
    Class<?>[] types = new Class<?>[components.length];
    for (int i = 0; i < components.length; i++) {
      places.put(components[i].getName(), i);
      types[i] = components[i].getType();
    }
    try {
      Constructor<?> constructor = type.getDeclaredConstructor(types);
      constructor.setAccessible(true);
      return new Shape(places, components, constructor);
    } catch (NoSuchMethodException e) {
      throw new IllegalStateException("a record without its constructor: " + type, e);
    }
  }
}
