package io.github.roundstar.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import picocli.CommandLine.IVersionProvider;

/** The tool's version, as the build wrote it into a resource. */
final class Version implements IVersionProvider {
  @Override
  public String[] getVersion() {
    return new String[] {"roundstar " + number()};
  }

  static String number() {
    try (InputStream in = Version.class.getResourceAsStream("version.txt")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8).strip();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
