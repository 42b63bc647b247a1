package io.github.roundstar.report;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.Sentences;
import io.github.roundstar.report.Page.Block;
import io.github.roundstar.report.Page.Cell;
import io.github.roundstar.report.Page.Column;
import io.github.roundstar.report.Page.KeyFigure;
import io.github.roundstar.report.Page.Listing;
import io.github.roundstar.report.Page.Section;
import io.github.roundstar.report.Page.Table;
import io.github.roundstar.report.chart.FootprintSheet;
import io.github.roundstar.report.words.Clock;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.report.words.Times;
import io.github.roundstar.results.Exposure;
import io.github.roundstar.results.ExposureCounts;
import io.github.roundstar.results.ExposureEvidence;
import io.github.roundstar.results.ExposureHours;
import io.github.roundstar.results.ExposureHours.Keep;
import io.github.roundstar.results.NightEvidence;
import io.github.roundstar.results.NightResult;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Which exposures trailed, and why. */
final class ExposureSection {
  private static final int MOST_ROWS = 400;
  private static final int MOST_PROBLEMS = 50;

  private ExposureSection() {}

  /** The section; nothing without exposures. */
  static Optional<Section> of(NightResult result, NightEvidence evidence, Charts charts) {
    if (result.exposures() == null || evidence.exposures().isEmpty()) {
      return Optional.empty();
    }
    ExposureEvidence shown = evidence.exposures().get();
    List<Block> blocks = new ArrayList<>();
    if (!result.exposures().isEmpty()) {
      Block sheet = Block.text(sentences(shown).toArray(String[]::new));
      blocks.add(
          Optional.ofNullable(
                  charts.of(
                      "the exposures",
                      () -> FootprintSheet.draw(result.exposures(), shown.arcsecPerPixel())))
              .map(sheet::with)
              .orElse(sheet));
      blocks.add(
          Block.text(evidence(result.exposures()).toArray(String[]::new))
              .with(table(result.exposures(), new Clock(evidence.localTime()))));
    }
    if (!result.exposures().isEmpty()) {
      blocks.add(toCopy(result.exposures()));
    }
    problems(shown.problems()).ifPresent(blocks::add);
    return Optional.of(
        new Section("exposures", heading(ExposureCounts.of(result.exposures())), blocks));
  }

  /** How many are round, for the first screen. */
  static Optional<KeyFigure> figure(NightResult result) {
    if (result.exposures() == null || result.exposures().isEmpty()) {
      return Optional.empty();
    }
    ExposureCounts counts = ExposureCounts.of(result.exposures());
    List<String> others = new ArrayList<>();
    counts
        .trailedByCause()
        .forEach((cause, n) -> others.add(Numbers.count(n) + " lost to " + plain(cause)));
    if (counts.borderline() > 0) {
      others.add(Numbers.count(counts.borderline()) + " borderline");
    }
    if (counts.notCovered() > 0) {
      others.add(Numbers.count(counts.notCovered()) + " not covered by the log");
    }
    return Optional.of(
        new KeyFigure(
            Numbers.count(counts.round()),
            "",
            "of " + Numbers.counted(counts.all(), "exposure", "exposures") + " round",
            others.isEmpty() ? "None trailed." : Sentences.whole(Sentences.list(others))));
  }

  private static String heading(ExposureCounts counts) {
    if (counts.all() == 0) {
      return "No exposure of this night could be used";
    }
    String head =
        Numbers.count(counts.round())
            + " of "
            + Numbers.counted(counts.all(), "exposure", "exposures")
            + (counts.round() == 1 ? " is round" : " are round");
    Optional<Map.Entry<String, Integer>> most =
        counts.trailedByCause().entrySet().stream().max(Map.Entry.comparingByValue());
    return most.map(
            cause ->
                head
                    + ", "
                    + Numbers.count(cause.getValue())
                    + (cause.getKey().equals("unknown")
                        ? " trailed without a cause that stands out"
                        : " lost to " + plain(cause.getKey())))
        .orElse(counts.round() == counts.all() ? head : head + ", none certainly trailed");
  }

  private static String plain(String cause) {
    return switch (cause) {
      case "unknown" -> "what cannot be told";
      case "polar-axis" -> "drift (polar axis)";
      case "dec-backlash" -> "backlash in Dec";
      case "star-lost" -> "a lost guide star";
      case "differential-refraction" -> "refraction between guide star and field";
      case "differential-flexure" -> "flexure between the cameras";
      default -> cause.replace('-', ' ');
    };
  }

  private static List<String> sentences(ExposureEvidence shown) {
    List<String> sentences = new ArrayList<>();
    sentences.add(
        "The limit of elongation is "
            + Numbers.fixed(shown.elongationLimit(), 2)
            + ". Round: the whole interval lies within it. Trailed: the whole interval lies beyond"
            + " it. Borderline: the interval reaches across.");
    sentences.add(Sentences.whole(shown.clock()));
    sentences.add(
        "Air and optics alone make stars "
            + Numbers.both(shown.roundFwhmArcsec())
            + " arcsec wide; this comes from "
            + shown.roundFrom()
            + ".");
    sentences.add(shown.scale());
    if (shown.flexureEastArcsecPerHour() != null) {
      sentences.add(
          "From exposure to exposure the two cameras move apart by "
              + Numbers.both(shown.flexureEastArcsecPerHour())
              + " arcsec/h east and "
              + Numbers.both(shown.flexureNorthArcsecPerHour())
              + " north, dithers and guiding taken out.");
    }
    return sentences;
  }

  /** Of each cause, what spoke for it in its first exposure. */
  private static List<String> evidence(List<Exposure> exposures) {
    List<String> causes = new ArrayList<>();
    List<String> sentences = new ArrayList<>();
    for (int i = 0; i < exposures.size(); i++) {
      Exposure e = exposures.get(i);
      boolean fresh = e.cause() != null && !causes.contains(e.cause());
      if (fresh && e.evidence() != null) {
        causes.add(e.cause());
        sentences.add(
            Sentences.whole(plain(e.cause()) + ", as in no. " + (i + 1) + ": " + e.evidence()));
      }
    }
    return sentences;
  }

  private static Table table(List<Exposure> exposures, Clock clock) {
    List<Exposure> shown = exposures.subList(0, Math.min(MOST_ROWS, exposures.size()));
    List<List<Cell>> rows = new ArrayList<>();
    for (int i = 0; i < shown.size(); i++) {
      rows.add(row(i + 1, shown.get(i), clock));
    }
    return new Table(
            shown.size() < exposures.size()
                ? "The first " + MOST_ROWS + " exposures; the others are in the CSV file"
                : "Exposures; position angles run from north through east",
            List.of(
                Column.numbers("no.", ""),
                Column.files("file"),
                Column.numbers("start", clock.name()),
                Column.words("verdict"),
                Column.words("cause"),
                Column.numbers("elon\u00adgation, log", ""),
                Column.numbers("elon\u00adgation, measured", ""),
                Column.numbers("worst corner, log", ""),
                Column.numbers("worst corner, measured", ""),
                Column.numbers("angle, log", "deg"),
                Column.numbers("angle, measured", "deg"),
                Column.numbers("FWHM", "arcsec")),
            rows)
        .withoutEmptyColumns();
  }

  private static List<Cell> row(int number, Exposure e, Clock clock) {
    return List.of(
        Cell.count(number),
        Cell.of(e.file()),
        Cell.of(Instant.parse(e.startUtc()), clock),
        Cell.of(e.verdict()),
        Cell.of(e.cause() == null ? "" : plain(e.cause())),
        elongation(e.predictedElongation()),
        elongation(e.measuredElongation()),
        corner(e.predictedCornerElongation(), e.predictedElongation()),
        corner(e.measuredCornerElongation(), e.measuredElongation()),
        angle(e.predictedAngleDeg()),
        angle(e.measuredAngleDeg()),
        Cell.of(e.measuredFwhmArcsec()));
  }

  /** Two decimals: the eye sees no hundredth of an elongation. */
  private static Cell elongation(Estimate shape) {
    return shape == null
        ? Cell.NOT_KNOWN
        : new Cell(
            Numbers.fixed(shape.value(), 2),
            "(" + Numbers.fixed(shape.lo95(), 2) + " .. " + Numbers.fixed(shape.hi95(), 2) + ")");
  }

  /** Nothing where the worst corner is as the middle, so that no figure stands twice. */
  private static Cell corner(Estimate worst, Estimate middle) {
    return worst != null && worst.equals(middle) ? Cell.NONE : elongation(worst);
  }

  private static Cell angle(Double degrees) {
    return degrees == null ? Cell.NOT_KNOWN : Cell.of(Numbers.fixed(degrees, 0));
  }

  /** Which to keep and which to throw away, as plain text. */
  private static Block toCopy(List<Exposure> exposures) {
    ExposureHours hours = ExposureHours.of(exposures);
    List<String> lost = new ArrayList<>();
    hours
        .discardByCause()
        .forEach((cause, h) -> lost.add(Times.duration(3600 * h) + " to " + plain(cause)));
    StringBuilder text = new StringBuilder();
    for (Keep keep : Keep.values()) {
      List<Exposure> these = exposures.stream().filter(e -> Keep.of(e) == keep).toList();
      if (!these.isEmpty()) {
        text.append(text.length() == 0 ? "" : "\n")
            .append("# ")
            .append(keep.word())
            .append(": ")
            .append(these.size())
            .append('\n');
        these.stream().limit(MOST_ROWS).forEach(e -> text.append(line(e)).append('\n'));
        if (these.size() > MOST_ROWS) {
          text.append("# ")
              .append(these.size() - MOST_ROWS)
              .append(" more stand in the CSV file\n");
        }
      }
    }
    return Block.text(
            "Kept "
                + Times.duration(3600 * hours.keep())
                + ", lost "
                + (lost.isEmpty() ? "nothing" : Sentences.list(lost))
                + (hours.borderline() > 0
                    ? "; " + Times.duration(3600 * hours.borderline()) + " borderline: look at them"
                    : "")
                + ".",
            "The same stands beside this page, under the page's name with .exposures.csv in place of"
                + " .html. Keep is round, discard is trailed, by the rule above.")
        .with(new Listing("List to copy", text.toString()));
  }

  /**
   * Name, start and cause, set apart by tabs. A name that a spreadsheet would run as a formula, or
   * a command take for an option, is told with the folder it lies in.
   */
  private static String line(Exposure e) {
    String name = e.file().replaceAll("\\p{Cntrl}", " ");
    boolean runs = !name.isEmpty() && "=+-@".indexOf(name.charAt(0)) >= 0;
    String cause = Keep.of(e) == Keep.DISCARD && e.cause() != null ? "\t" + plain(e.cause()) : "";
    return (runs ? "./" : "") + name + "\t" + e.startUtc() + cause;
  }

  private static Optional<Block> problems(List<String> problems) {
    if (problems.isEmpty()) {
      return Optional.empty();
    }
    List<List<Cell>> rows =
        problems.stream().limit(MOST_PROBLEMS).map(text -> List.of(Cell.of(text))).toList();
    return Optional.of(
        Block.text(
                Numbers.counted(problems.size(), "file", "files")
                    + " could not be used; the others were.")
            .with(new Table("", List.of(Column.words("what and how to mend it")), rows)));
  }
}
