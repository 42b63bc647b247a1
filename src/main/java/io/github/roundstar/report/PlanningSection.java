package io.github.roundstar.report;

import io.github.roundstar.model.Sentences;
import io.github.roundstar.report.Page.Block;
import io.github.roundstar.report.Page.Cell;
import io.github.roundstar.report.Page.Column;
import io.github.roundstar.report.Page.Section;
import io.github.roundstar.report.Page.Table;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.report.words.Times;
import io.github.roundstar.results.LongestExposure;
import io.github.roundstar.results.LongestExposure.Length;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.Planning;
import io.github.roundstar.results.Planning.GuideExposure;
import io.github.roundstar.results.Planning.Recording;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** How to take the next night: how long to expose and to guide, and what to record. */
final class PlanningSection {
  private PlanningSection() {}

  /** The section; nothing where the night tells nothing of the next. */
  static Optional<Section> of(NightResult result) {
    Planning planning = result.planning();
    if (planning == null || planning.longestExposure() == null) {
      return Optional.empty();
    }
    LongestExposure longest = planning.longestExposure();
    List<String> sentences = new ArrayList<>();
    sentences.add("As the night was: " + words(longest.asItWas(), longest) + ".");
    if (longest.withSteps() != null) {
      sentences.add("With the steps above: " + words(longest.withSteps(), longest) + ".");
    }
    sentences.add(
        "Round means: "
            + Numbers.percent(longest.roundShare())
            + " of the exposures of a length have an elongation of "
            + Numbers.fixed(longest.elongationLimit(), 2)
            + " or less, in the middle of the field and in its worst corner where that is known.");
    sentences.add(
        "Lengths of "
            + Times.shortPeriod(longest.playedFromSeconds())
            + " to "
            + Times.shortPeriod(longest.playedToSeconds())
            + " were played; "
            + longest.because()
            + ".");
    if (planning.guideExposure() != null) {
      sentences.add(guide(planning.guideExposure()));
    }
    List<Block> blocks = new ArrayList<>();
    blocks.add(Block.text(sentences.toArray(String[]::new)));
    if (!planning.recordNext().isEmpty()) {
      blocks.add(record(planning.recordNext()));
    }
    return Optional.of(new Section("planning", heading(longest), blocks));
  }

  private static String heading(LongestExposure longest) {
    Length now = longest.asItWas();
    return switch (now.stays()) {
      case Length.LONGER ->
          "Exposures of "
              + Times.shortPeriod(longest.playedToSeconds())
              + " stay round, as long as this night can tell";
      case Length.SHORTER ->
          "Not even exposures of "
              + Times.shortPeriod(longest.playedFromSeconds())
              + " stayed round";
      default -> "Exposures of up to " + Times.shortPeriod(now.seconds()) + " stay round";
    };
  }

  /** {@code exposures stay round up to 84 s (60 s .. 2 min)}. */
  static String words(Length length, LongestExposure played) {
    String low =
        length.lowSeconds() == null
            ? "less than " + Times.shortPeriod(played.playedFromSeconds())
            : Times.shortPeriod(length.lowSeconds());
    String high =
        length.highSeconds() == null
            ? "more than " + Times.shortPeriod(played.playedToSeconds())
            : Times.shortPeriod(length.highSeconds());
    String interval = " (" + low + " .. " + high + ")";
    return switch (length.stays()) {
      case Length.LONGER ->
          "exposures stay round for longer than "
              + Times.shortPeriod(played.playedToSeconds())
              + (length.lowSeconds() != null && length.lowSeconds() >= played.playedToSeconds()
                  ? ""
                  : ", surely for " + low);
      case Length.SHORTER ->
          "exposures of "
              + Times.shortPeriod(played.playedFromSeconds())
              + " do not stay round"
              + (length.highSeconds() != null && length.highSeconds() <= played.playedFromSeconds()
                  ? ""
                  : interval);
      default -> "exposures stay round up to " + Times.shortPeriod(length.seconds()) + interval;
    };
  }

  private static String guide(GuideExposure guide) {
    boolean same = guide.seconds() == guide.nowSeconds();
    String now = Times.shortPeriod(guide.seconds());
    return (same
            ? "Guide exposures of " + now + ", as they are, move the star least, or nearly so"
            : "Guide exposures of "
                + now
                + " instead of "
                + Times.shortPeriod(guide.nowSeconds())
                + " move the star least")
        + (guide.lowSeconds() < guide.highSeconds()
            ? "; from "
                + Times.shortPeriod(guide.lowSeconds())
                + " to "
                + Times.shortPeriod(guide.highSeconds())
                + " none is surely worse."
            : "; every other length that was played is surely worse.")
        + " Played: "
        + Sentences.list(guide.playedSeconds().stream().map(Times::shortPeriod).toList())
        + ".";
  }

  private static Block record(List<Recording> recordings) {
    List<List<Cell>> rows = new ArrayList<>();
    for (Recording recording : recordings) {
      rows.add(
          List.of(
              Cell.of(recording.text()),
              Cell.of(recording.figure()),
              recording.halfWidthNow() == null
                  ? Cell.NOT_KNOWN
                  : Cell.of("\u00b1" + Numbers.coarse(recording.halfWidthNow())),
              Cell.of("\u00b1" + Numbers.coarse(recording.halfWidthThen())),
              Cell.of(recording.unit()),
              Cell.of(recording.how())));
    }
    return Block.text("The decision is not sure. What would settle it, the least trouble first:")
        .with(
            new Table(
                "What to record next",
                List.of(
                    Column.words("record"),
                    Column.words("narrows"),
                    Column.numbers("from", ""),
                    Column.numbers("to about", ""),
                    Column.words("unit"),
                    Column.words("worked out by")),
                rows));
  }
}
