package io.github.roundstar.report;

import io.github.roundstar.model.Sentences;
import io.github.roundstar.report.Page.Block;
import io.github.roundstar.report.Page.Cell;
import io.github.roundstar.report.Page.Column;
import io.github.roundstar.report.Page.Section;
import io.github.roundstar.report.Page.Table;
import io.github.roundstar.report.words.Clock;
import io.github.roundstar.results.Flip;
import io.github.roundstar.results.Flip.Change;
import io.github.roundstar.results.NightResult;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;

/** The figures of both sides of the pier and what surely changed when the mount went over. */
final class FlipSection {
  /** A figure with its name, its unit and how it is read. */
  private record Figure(String name, String unit, Function<Flip, Change> change) {}

  private static final List<Figure> FIGURES =
      List.of(
          new Figure("RMS in RA", "arcsec", Flip::raRmsArcsec),
          new Figure("RMS in Dec", "arcsec", Flip::decRmsArcsec),
          new Figure("noise in RA", "arcsec", Flip::raNoiseArcsec),
          new Figure("noise in Dec", "arcsec", Flip::decNoiseArcsec),
          new Figure("drift in RA", "arcsec/min", Flip::raDriftArcsecPerMinuteSky),
          new Figure("drift in Dec", "arcsec/min", Flip::decDriftArcsecPerMinuteSky),
          new Figure("response in RA", "arcsec/s", Flip::raResponseArcsecPerSecondAxis),
          new Figure("response in Dec", "arcsec/s", Flip::decResponseArcsecPerSecondAxis));

  private FlipSection() {}

  /** The section; nothing of a night without a flip that tells anything. */
  static Optional<Section> of(NightResult result, Clock clock) {
    List<Flip> flips =
        result.night().pointings() == null ? List.of() : result.night().pointings().flips();
    List<Block> blocks = new ArrayList<>();
    List<String> changed = new ArrayList<>();
    boolean explained = false;
    for (Flip flip : flips) {
      List<Figure> known =
          FIGURES.stream().filter(figure -> figure.change().apply(flip) != null).toList();
      if (!known.isEmpty()) {
        List<String> sure = sure(flip, known);
        boolean drifts = sure.stream().anyMatch(FlipSection::drift);
        explained |= drifts && axisExplains(result);
        sure.stream()
            .filter(name -> !(drift(name) && axisExplains(result)))
            .filter(name -> !changed.contains(name))
            .forEach(changed::add);
        blocks.add(
            Block.text(sentences(flip, sure, result).toArray(String[]::new))
                .with(table(flip, known, clock)));
      }
    }
    return blocks.isEmpty()
        ? Optional.empty()
        : Optional.of(new Section("flip", heading(changed, explained, blocks.size()), blocks));
  }

  private static boolean drift(String name) {
    return name.startsWith("drift");
  }

  private static boolean axisExplains(NightResult result) {
    return result.polarAxis() != null && Boolean.TRUE.equals(result.polarAxis().consistent());
  }

  private static String heading(List<String> changed, boolean explained, int flips) {
    String where = flips == 1 ? "At the flip" : "At the " + flips + " flips";
    return changed.isEmpty()
        ? where
            + (explained
                ? " nothing changed that the polar axis does not explain"
                : " nothing changed that this night can tell")
        : where + " changed: " + Sentences.list(changed);
  }

  private static List<String> sure(Flip flip, List<Figure> known) {
    return known.stream()
        .filter(figure -> figure.change().apply(flip).sure())
        .map(Figure::name)
        .toList();
  }

  private static List<String> sentences(Flip flip, List<String> sure, NightResult result) {
    List<String> sentences = new ArrayList<>();
    sentences.add(
        sure.isEmpty()
            ? "Every interval of a change holds no change."
            : Sentences.capital(Sentences.list(sure))
                + (sure.size() == 1
                    ? " surely changed."
                    : " surely changed, all together at 95 %."));
    if (!flip.sameTarget()) {
      sentences.add("Another field was looked at after it, so a change may be the field's.");
    }
    if (sure.contains("drift in RA") || sure.contains("drift in Dec")) {
      sentences.add(axis(result.polarAxis() == null ? null : result.polarAxis().consistent()));
    }
    return sentences;
  }

  private static String axis(Boolean explained) {
    if (explained == null) {
      return "A polar axis that is off makes drifts change with the hour angle too.";
    }
    return explained
        ? "The polar axis explains the drifts on both sides: that change is not the flip's."
        : "No polar axis explains the drifts on both sides: something bends or slips as the"
            + " tube goes over.";
  }

  private static Table table(Flip flip, List<Figure> known, Clock clock) {
    String when =
        flip.utc() == null
            ? "Before run " + flip.run()
            : clock.both(Instant.parse(flip.utc())) + " " + clock.name();
    return new Table(
        when
            + ", the tube goes to the "
            + flip.to().name().toLowerCase(Locale.ROOT)
            + "; changes of RMS and noise beside what they do by themselves, all intervals of a"
            + " change together at 95 %",
        List.of(
            Column.words("figure"),
            Column.numbers("before", ""),
            Column.numbers("after", ""),
            Column.numbers("change", ""),
            Column.words("verdict")),
        known.stream().map(figure -> row(figure, figure.change().apply(flip))).toList());
  }

  private static List<Cell> row(Figure figure, Change change) {
    boolean factor = change.same() == 1;
    Cell plain = Cell.of(change.change());
    return List.of(
        Cell.of(figure.name() + ", " + figure.unit()),
        Cell.of(change.before()),
        Cell.of(change.after()),
        factor ? new Cell("\u00d7\u00a0" + plain.text(), plain.quiet()) : plain,
        Cell.of(verdict(change, factor)));
  }

  private static String verdict(Change change, boolean factor) {
    if (!change.sure()) {
      return "no change told";
    }
    return factor ? (change.grew() ? "grew" : "fell") : "changed";
  }
}
