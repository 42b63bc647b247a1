package io.github.roundstar.pipeline;

import io.github.roundstar.ingest.LayoutReader;
import io.github.roundstar.ingest.LogReader;
import io.github.roundstar.ingest.UnusableInputException;
import io.github.roundstar.ingest.layout.Layout;
import io.github.roundstar.model.GuideLog;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/**
 * How logs that are no guide tables are laid out: all by the layout file that the user named, or
 * each by the one of its name beside it, {@code west.layout.toml} beside {@code west.log}; without
 * either the text itself must tell.
 */
final class Layouts {
  private final Optional<Layout> named;

  /**
   * Reads the file that the user named, if there is one.
   *
   * @throws UnusableInputException when it cannot be used
   */
  Layouts(Optional<Path> file) throws UnusableInputException {
    named = file.isPresent() ? Optional.of(LayoutReader.layout(file.get())) : Optional.empty();
  }

  /**
   * Reads a log.
   *
   * @throws UnusableInputException when it or its layout file cannot be used, or something about
   *     its layout must be asked
   */
  GuideLog read(Path log) throws UnusableInputException {
    Path beside = beside(log);
    return LogReader.read(
        log,
        named.isPresent() || !Files.isRegularFile(beside)
            ? named
            : Optional.of(LayoutReader.layout(beside)));
  }

  /** Where a log's own layout file would lie. */
  static Path beside(Path log) {
    String name = String.valueOf(log.getFileName()).replaceFirst("(?i)\\.gz$", "");
    int dot = name.lastIndexOf('.');
    return log.resolveSibling((dot < 0 ? name : name.substring(0, dot)) + ".layout.toml");
  }
}
