package io.github.roundstar.cli;

import io.github.roundstar.results.Level;
import java.util.List;
import java.util.Locale;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a level such as worth-fixing. */
final class FailOn implements ITypeConverter<Level> {
  private static final List<Level> LEVELS =
      List.of(Level.FIX_FIRST, Level.WORTH_FIXING, Level.WATCH);

  @Override
  public Level convert(String text) {
    return LEVELS.stream()
        .filter(level -> word(level).equals(text))
        .findFirst()
        .orElseThrow(
            () ->
                new TypeConversionException(
                    "'" + text + "' is not a level: give fix-first, worth-fixing or watch"));
  }

  private static String word(Level level) {
    return level.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
