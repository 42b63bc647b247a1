package io.github.roundstar.report;

import io.github.roundstar.model.Sentences;
import io.github.roundstar.report.Page.Block;
import io.github.roundstar.report.Page.Cell;
import io.github.roundstar.report.Page.Column;
import io.github.roundstar.report.Page.Section;
import io.github.roundstar.report.Page.Table;
import io.github.roundstar.report.words.Clock;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.Input;
import io.github.roundstar.results.Mark;
import io.github.roundstar.results.Method;
import io.github.roundstar.results.NightEvidence;
import io.github.roundstar.results.NightResult;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What most readers skip: notes, files, missing figures, methods, glossary. */
final class FoldedSections {
  private static final int MOST_NOTES = 200;

  private FoldedSections() {}

  static List<Section> of(NightResult result, NightEvidence evidence) {
    List<Section> sections = new ArrayList<>();
    FindingSections.others(result).ifPresent(sections::add);
    notes(result, evidence, sections);
    MoreFigures.table(result)
        .ifPresent(
            table ->
                sections.add(
                    new Section(
                        "more", "More figures, run by run", List.of(Block.text().with(table)))));
    sections.add(MissingFigures.section(result));
    sections.add(methods(result));
    sections.add(files(result));
    sections.add(Glossary.section());
    return sections;
  }

  private static void notes(NightResult result, NightEvidence evidence, List<Section> sections) {
    List<Mark> worded =
        evidence.timeline().stream()
            .flatMap(run -> run.marks().stream())
            .filter(mark -> !mark.text().isEmpty())
            .toList();
    if (worded.isEmpty()) {
      return;
    }
    Clock clock = new Clock(evidence.localTime());
    String startUtc = result.night().startUtc();
    List<Mark> shown = worded.subList(0, Math.min(MOST_NOTES, worded.size()));
    Table table =
        new Table(
            shown.size() < worded.size() ? "The first " + MOST_NOTES : "",
            List.of(
                Column.numbers(
                    "time", startUtc == null ? "min since the first frame" : clock.name()),
                Column.words("kind"),
                Column.words("text")),
            shown.stream().map(mark -> row(mark, startUtc, clock)).toList());
    sections.add(new Section("notes", "Notes on the timeline", List.of(Block.text().with(table))));
  }

  private static List<Cell> row(Mark mark, String startUtc, Clock clock) {
    Cell time =
        startUtc == null
            ? Cell.of(Numbers.fixed(mark.startSeconds() / 60, 1))
            : Cell.of(
                Instant.parse(startUtc).plusMillis(Math.round(mark.startSeconds() * 1000)), clock);
    return List.of(
        time, Cell.of(mark.kind().name().toLowerCase(Locale.ROOT)), Cell.of(mark.text()));
  }

  private static Section methods(NightResult result) {
    Table table =
        new Table(
            "",
            List.of(Column.words("figure"), Column.words("how value and interval were made")),
            FigureGroup.of(result.methods(), Method::figure, Method::how).stream()
                .map(
                    group ->
                        List.of(
                            Cell.of(Sentences.capital(String.join("; ", group.names()))),
                            Cell.of(group.text())))
                .toList());
    return new Section("methods", "How each figure was made", List.of(Block.text().with(table)));
  }

  private static Section files(NightResult result) {
    Table table =
        new Table(
            "",
            List.of(
                Column.files("file"),
                Column.words("layout"),
                Column.numbers("rows", ""),
                Column.numbers("used", ""),
                Column.numbers("unusable", ""),
                Column.numbers("size", "bytes"),
                Column.words("SHA-256 begins")),
            result.inputs().stream().map(FoldedSections::row).toList());
    return new Section("files", "Files read", List.of(Block.text().with(table)));
  }

  private static List<Cell> row(Input input) {
    return List.of(
        Cell.of(input.file()),
        Cell.of(input.layout()),
        Cell.count(input.rows()),
        Cell.count(input.used()),
        Cell.count(input.unusable().count()),
        Cell.count(input.bytes()),
        Cell.of(input.sha256().substring(0, Math.min(16, input.sha256().length()))));
  }
}
