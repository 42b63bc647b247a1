package io.github.roundstar.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/** Shows a page to the user. */
interface Browser {
  /** Of a tool that shows nothing. */
  Browser NONE = page -> Optional.of("no browser here");

  /** The one that the desktop opens pages with. */
  Browser OF_THE_DESKTOP = Browser::start;

  /** How long a desktop may take to find out that it has no browser [s]. */
  int PATIENCE_SECONDS = 3;

  /**
   * Opens a page.
   *
   * @param page where it lies, from the root on
   * @return why it could not be opened; nothing when it could
   */
  Optional<String> open(Path page);

  private static Optional<String> start(Path page) {
    try {
      Process opener =
          new ProcessBuilder(command(System.getProperty("os.name"), page.toUri().toString()))
              .redirectErrorStream(true)
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .start();
      boolean ended = opener.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS);
      return ended && opener.exitValue() != 0
          ? Optional.of("the desktop has no browser")
          : Optional.empty();
    } catch (IOException e) {
      return Optional.of("there is no desktop here");
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return Optional.of("interrupted");
    }
  }

  /** What each kind of system opens a page with. */
  static List<String> command(String system, String page) {
    String name = system.toLowerCase(Locale.ROOT);
    if (name.startsWith("windows")) {
      return List.of("rundll32", "url.dll,FileProtocolHandler", page);
    }
    return List.of(name.startsWith("mac") ? "open" : "xdg-open", page);
  }
}
