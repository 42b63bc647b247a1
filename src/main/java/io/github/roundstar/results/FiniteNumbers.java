package io.github.roundstar.results;

import java.lang.reflect.Constructor;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;

/**
 * A result without the numbers that JSON does not have. A number that is not finite is a fault of
 * the tool: it becomes null, and where its record cannot be without it, that record does.
 */
public final class FiniteNumbers {
  private final Faults faults;

  private FiniteNumbers(Faults faults) {
    this.faults = faults;
  }

  /**
   * The result as JSON can hold it.
   *
   * @param faults hears of what was taken out, by its JSON Pointer
   */
  public static NightResult of(NightResult result, Faults faults) {
    NightResult finite = (NightResult) new FiniteNumbers(faults).record("", result);
    return Objects.requireNonNull(finite, "a night without its own record");
  }

  private Object value(String pointer, Object value) {
    if (value instanceof Double number && !Double.isFinite(number)) {
      faults.add(pointer, new ArithmeticException("not a finite number: " + number));
      return null;
    }
    if (value instanceof Record record) {
      return record(pointer, record);
    }
    if (value instanceof List<?> list) {
      List<Object> finite = new ArrayList<>();
      for (int i = 0; i < list.size(); i++) {
        Object element = value(pointer + "/" + i, list.get(i));
        if (element != null) {
          finite.add(element);
        }
      }
      return finite;
    }
    return value;
  }

  /** Null where a number that must be there is not. */
  private Record record(String pointer, Record record) {
    RecordComponent[] components = record.getClass().getRecordComponents();
    Class<?>[] types =
        Arrays.stream(components).map(RecordComponent::getType).toArray(Class<?>[]::new);
    Object[] values = new Object[components.length];
    try {
      boolean whole = true;
      for (int i = 0; i < components.length; i++) {
        Object value = components[i].getAccessor().invoke(record);
        values[i] = value(pointer + "/" + components[i].getName(), value);
        whole &= values[i] != null || value == null || !types[i].isPrimitive();
      }
      Constructor<? extends Record> constructor = record.getClass().getDeclaredConstructor(types);
      return whole ? constructor.newInstance(values) : null;
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException("a record that cannot be made anew: " + pointer, e);
    }
  }
}
