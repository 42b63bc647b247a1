package io.github.roundstar.cli;

import io.github.roundstar.ingest.layout.Decision;
import java.io.Console;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;

/**
 * Questions about a log, asked where a person sits: only when input and output both are a terminal,
 * so that nothing piped ever waits.
 */
final class Answers {
  private Answers() {}

  /** The answered lines; empty where nobody can be asked, or an answer was left out. */
  static Optional<String> onTerminal(List<Decision> open) {
    Console console = System.console(); // none where input or output is piped
    return console == null
        ? Optional.empty()
        : ask(open, console.writer()::println, console::readLine);
  }

  /**
   * Asks one question after the other.
   *
   * @param say prints a line
   * @param hear the next line typed; null at the end of input
   */
  static Optional<String> ask(List<Decision> open, Consumer<String> say, Supplier<String> hear) {
    StringBuilder all = new StringBuilder();
    for (Decision decision : open) {
      say.accept("");
      say.accept(plain(decision.about() + ": " + decision.because()));
      List<String> choices = choices(decision.ask());
      for (int i = 0; i < choices.size(); i++) {
        say.accept((i + 1) + ") " + plain(choices.get(i).replace("\n", ", ")));
      }
      say.accept(
          choices.size() > 1
              ? "Number of the answer (Enter: leave it open):"
              : "1 if it is so, or the value in place of the one shown (Enter: leave it open):");
      String typed = hear.get();
      Optional<String> answer = answer(choices, typed == null ? "" : typed.strip());
      if (answer.isEmpty()) {
        return Optional.empty();
      }
      all.append(answer.get()).append("\n\n");
    }
    return Optional.of(all.toString());
  }

  private static Optional<String> answer(List<String> choices, String typed) {
    for (int i = 0; i < choices.size(); i++) {
      if (typed.equals(String.valueOf(i + 1))) {
        return Optional.of(choices.get(i));
      }
    }
    boolean value = choices.size() == 1 && typed.matches("[+-]?[0-9]+(?:[.][0-9]+)?");
    return value
        ? Optional.of(choices.get(0).replaceAll("(value = \")[^\"]*\"", "$1" + typed + "\""))
        : Optional.empty();
  }

  /** The answers that layout lines with alternatives behind a comment sign allow. */
  static List<String> choices(String ask) {
    List<String> whole = List.of(ask.split("\n# or\n"));
    if (whole.size() > 1) {
      return whole;
    }
    List<String> choices = new ArrayList<>(List.of(ask.replaceAll(" *#[^\n]*", "")));
    for (String line : ask.split("\n")) {
      int comment = line.indexOf("# or ");
      if (comment > 0) {
        String key = line.substring(0, line.indexOf('=') + 1);
        for (String other : line.substring(comment + 5).split(", | or ")) {
          if (other.matches("\"[^\"]*\"")) {
            choices.add(ask.replace(line, key + " " + other).replaceAll(" *#[^\n]*", ""));
          }
        }
      }
    }
    return choices.stream().distinct().toList(); // columns that share a line share its answer
  }

  private static String plain(String text) {
    return text.replaceAll("\\p{Cntrl}", " ");
  }
}
