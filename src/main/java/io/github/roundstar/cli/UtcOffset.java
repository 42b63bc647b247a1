package io.github.roundstar.cli;

import java.time.DateTimeException;
import java.time.ZoneOffset;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads an offset such as +01:00. */
final class UtcOffset implements ITypeConverter<ZoneOffset> {
  @Override
  public ZoneOffset convert(String text) {
    try {
      return ZoneOffset.of(text);
    } catch (DateTimeException e) {
      throw new TypeConversionException("'" + text + "' is not an offset such as +01:00");
    }
  }
}
