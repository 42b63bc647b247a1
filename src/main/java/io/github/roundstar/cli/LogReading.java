package io.github.roundstar.cli;

import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.Optional;
import picocli.CommandLine.Option;

/** How logs are read and where results go: options of every command that analyses nights. */
final class LogReading {
  @Option(
      names = "--layout",
      paramLabel = "FILE",
      description = "TOML file that tells how the logs are laid out, if they are no guide tables.")
  private Path layout;

  @Option(
      names = "--utc-offset",
      paramLabel = "OFFSET",
      converter = UtcOffset.class,
      description =
          "Offset of the logs' clocks from UTC, such as +01:00, instead of what their headers say.")
  private ZoneOffset utcOffset;

  @Option(
      names = "--out",
      paramLabel = "FOLDER",
      defaultValue = "reports",
      description = "Where the results go (default: ${DEFAULT-VALUE}).")
  private Path out;

  @Option(names = "--open", description = "Open the page in the browser when it is written.")
  private boolean open;

  Optional<Path> layout() {
    return Optional.ofNullable(layout);
  }

  Optional<ZoneOffset> utcOffset() {
    return Optional.ofNullable(utcOffset);
  }

  boolean open() {
    return open;
  }

  Path out() {
    return out;
  }
}
