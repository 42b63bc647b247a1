package io.github.roundstar.fuzz;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.ingest.UnusableInputException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Pattern;

/** Runs a reader, which may refuse its input, but only in one clear sentence. */
final class Refusal {
  static final String FILE = "input.bin";
  private static final Pattern SENTENCE = Pattern.compile("(?s)input\\.bin:(?: |[0-9]+: )?.+: .+");

  /** A reader of a file. */
  interface Reading {
    void of(Path file) throws IOException, FormatException, UnusableInputException;
  }

  /** A reader of bytes. */
  interface Parsing {
    void run() throws FormatException, UnusableInputException, IOException;
  }

  private static Path folder;

  private Refusal() {}

  /** Gives the bytes to a reader as a file. */
  static void orReads(byte[] input, Reading reading) {
    try {
      if (folder == null) {
        folder = folder();
      }
      Path file = Files.write(folder.resolve(FILE), input);
      orReads(() -> reading.of(file));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A folder of its own, in memory where the machine has such a place. */
  static Path folder() throws IOException {
    Path memory = Path.of("/dev/shm");
    Path made =
        Files.isWritable(memory)
            ? Files.createTempDirectory(memory, "roundstar-fuzz")
            : Files.createTempDirectory("roundstar-fuzz");
    made.toFile().deleteOnExit();
    made.resolve(FILE).toFile().deleteOnExit();
    return made;
  }

  /** Runs a reader of bytes that calls its input {@link #FILE}. */
  static void orReads(Parsing parsing) {
    try {
      parsing.run();
    } catch (FormatException | UnusableInputException e) {
      if (!SENTENCE.matcher(e.getMessage()).matches()) {
        throw new AssertionError("no sentence that names place and remedy: " + e.getMessage(), e);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
