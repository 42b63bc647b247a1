package io.github.roundstar.signal;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** Numbers of a test resource, comma or line separated, comments from a hash to the line end. */
final class NumberFile {
  private NumberFile() {}

  static double[] read(String resource) {
    try (InputStream in = NumberFile.class.getResourceAsStream(resource)) {
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      return Arrays.stream(text.replaceAll("#.*", "").split("[,\\s]+"))
          .filter(number -> !number.isEmpty())
          .mapToDouble(Double::parseDouble)
          .toArray();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
