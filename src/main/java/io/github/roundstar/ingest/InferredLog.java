package io.github.roundstar.ingest;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.ingest.layout.Decision;
import io.github.roundstar.ingest.layout.Inference;
import io.github.roundstar.ingest.layout.Layout;
import io.github.roundstar.ingest.layout.LayoutFile;
import io.github.roundstar.ingest.layout.LayoutText;
import io.github.roundstar.ingest.layout.Meaning;
import io.github.roundstar.ingest.layout.choice.LayoutInference;
import io.github.roundstar.model.GuideLog;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Logs read by a layout that was worked out from their text. */
public final class InferredLog {
  private InferredLog() {}

  /**
   * Works out the layout of a log.
   *
   * @throws UnusableInputException if it is no text log with rows of numbers
   */
  public static Inference infer(Path log) throws UnusableInputException {
    try {
      return LayoutInference.of(log);
    } catch (FormatException e) {
      throw new UnusableInputException(e);
    } catch (IOException e) {
      throw new UnusableInputException(log, e);
    }
  }

  /**
   * A layout file to be completed by hand.
   *
   * @throws UnusableInputException if it is no text
   */
  public static String sketch(Path log) throws UnusableInputException {
    try {
      return LayoutInference.sketch(log);
    } catch (FormatException e) {
      throw new UnusableInputException(e);
    } catch (IOException e) {
      throw new UnusableInputException(log, e);
    }
  }

  /**
   * The log as a worked-out layout reads it.
   *
   * @throws UnusableInputException with what does not hang together
   */
  public static GuideLog read(Path log, Inference inference) throws UnusableInputException {
    try {
      // What is used is what the written file says, so that both are one.
      byte[] written = LayoutText.of(inference.layout()).getBytes(StandardCharsets.UTF_8);
      Layout layout = LayoutFile.read("inferred", written);
      return Gate.passed(LayoutReader.read(log, layout), layout);
    } catch (FormatException e) {
      throw new UnusableInputException(e);
    }
  }

  /** What a log was taken for, in a few words. */
  private static String takenFor(Inference inference) {
    List<String> columns =
        inference.layout().columns().stream()
            .filter(column -> column.means().isSigned() || column.means() == Meaning.TIME)
            .map(
                column ->
                    column.means().word()
                        + " from "
                        + column.called()
                        + column.unit().map(unit -> " [" + unit + "]").orElse("")
                        + column.positive().map(to -> " " + to.word() + " positive").orElse(""))
            .toList();
    return String.join(", ", columns);
  }

  /**
   * Reads a log if every decision that a figure depends on is certain, and says so.
   *
   * @throws UnusableInputException with the open questions, or with what does not hang together
   */
  public static GuideLog readIfCertain(Path log, Inference inference)
      throws UnusableInputException {
    String file = String.valueOf(log.getFileName());
    if (!inference.isCertain()) {
      throw new UnusableInputException(questions(file, inference.open()));
    }
    GuideLog read = read(log, inference);
    return new GuideLog(
        read.source(), read.utcOffset(), read.runs(), warnings(file, inference, read));
  }

  private static List<String> warnings(String file, Inference inference, GuideLog read) {
    List<String> all = new ArrayList<>();
    all.add(
        FormatException.located(
            file,
            0,
            "its layout was worked out from the text, "
                + inference.decisions().size()
                + " decisions",
            "look at them with roundstar layout " + file));
    all.add(
        FormatException.located(
            file,
            0,
            "it was taken for: " + takenFor(inference),
            "if that is wrong, write the layout with roundstar layout "
                + file
                + " --out FILE, correct it, and give it with --layout"));
    for (Decision decision : inference.noted()) {
      all.add(
          FormatException.located(
              file,
              0,
              decision.about() + " " + decision.chosen() + ": " + decision.because(),
              decision.ask().isEmpty()
                  ? "nothing to mend unless the log can hold more"
                  : "give a layout file with " + decision.ask().replace("\n", " ")));
    }
    all.addAll(read.warnings());
    return all;
  }

  private static FormatException questions(String file, List<Decision> open) {
    StringBuilder lines = new StringBuilder();
    for (Decision decision : open) {
      lines
          .append("\n\n# ")
          .append(decision.about())
          .append(": ")
          .append(decision.because())
          .append('\n')
          .append(decision.ask());
    }
    return new FormatException(
        file,
        0,
        "its layout cannot be worked out without an answer to "
            + open.size()
            + (open.size() == 1 ? " question" : " questions"),
        "write the layout with roundstar layout "
            + file
            + " --out FILE, correct these lines in it, and give it with --layout:"
            + lines);
  }
}
