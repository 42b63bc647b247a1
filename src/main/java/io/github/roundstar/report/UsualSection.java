package io.github.roundstar.report;

import io.github.roundstar.model.Decimals;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.Sentences;
import io.github.roundstar.report.Page.Block;
import io.github.roundstar.report.Page.Cell;
import io.github.roundstar.report.Page.Column;
import io.github.roundstar.report.Page.Section;
import io.github.roundstar.report.Page.Table;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.Usual;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The night beside the user's own earlier ones. */
final class UsualSection {
  private UsualSection() {}

  /** Nothing with few earlier nights. */
  static Optional<Section> of(NightResult result) {
    return Optional.ofNullable(result.usual())
        .map(
            usual ->
                new Section(
                    "usual",
                    heading(usual),
                    List.of(
                        Block.text(lead(usual))
                            .with(
                                new Table(
                                    "",
                                    List.of(
                                        Column.words("figure"),
                                        Column.numbers("this night", ""),
                                        Column.numbers("your usual", "half of your nights"),
                                        Column.words("")),
                                    usual.figures().stream().map(UsualSection::row).toList())))));
  }

  /** For the first screen: what is far off, each in a sentence. */
  static List<String> farOff(Usual usual) {
    List<String> sentences = new ArrayList<>();
    if (usual != null) {
      for (Usual.Figure figure : usual.figures()) {
        if (figure.farOff()) {
          sentences.add(
              "Not usual for you: "
                  + figure.name()
                  + " "
                  + (Numbers.fixed(figure.value().value(), decimals(figure)) + " " + figure.unit())
                      .strip()
                  + ", "
                  + figure.text()
                  + " (half of them "
                  + Numbers.interval(band(figure), decimals(figure))
                      .replaceAll("[()]", "")
                      .replace("..", "to")
                  + ").");
        }
      }
    }
    return sentences;
  }

  private static String heading(Usual usual) {
    List<String> worse = names(usual, Usual.WORSE);
    List<String> better = names(usual, Usual.BETTER);
    if (worse.isEmpty() && better.isEmpty()) {
      return "A night as usual for you";
    }
    List<String> parts = new ArrayList<>();
    if (!worse.isEmpty()) {
      parts.add("worse than usual in " + Sentences.list(worse));
    }
    if (!better.isEmpty()) {
      parts.add("better in " + Sentences.list(better));
    }
    return "Beside your other nights: " + String.join("; ", parts);
  }

  private static List<String> names(Usual usual, String word) {
    return usual.figures().stream()
        .filter(figure -> figure.word().equals(word))
        .map(Usual.Figure::name)
        .toList();
  }

  private static String lead(Usual usual) {
    return "Beside "
        + usual.nights()
        + " earlier nights with this mount and these optics, "
        + usual.from()
        + " to "
        + usual.to()
        + ". Drift depends on where the star stood.";
  }

  private static Estimate band(Usual.Figure figure) {
    return new Estimate(figure.median(), figure.lowerQuartile(), figure.upperQuartile());
  }

  /** Two at most: nobody's nights repeat to more. */
  private static int decimals(Usual.Figure figure) {
    return Math.min(2, Math.max(Decimals.of(figure.median()), Decimals.of(figure.value())));
  }

  private static List<Cell> row(Usual.Figure figure) {
    Estimate band = band(figure);
    int decimals = decimals(figure);
    return List.of(
        new Cell(Sentences.capital(figure.name()), figure.unit()),
        new Cell(
            Numbers.fixed(figure.value().value(), decimals),
            Numbers.interval(figure.value(), decimals)),
        new Cell(Numbers.fixed(band.value(), decimals), Numbers.interval(band, decimals)),
        Cell.of(figure.text()));
  }
}
