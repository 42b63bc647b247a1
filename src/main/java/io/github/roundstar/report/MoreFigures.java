package io.github.roundstar.report;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.report.Page.Cell;
import io.github.roundstar.report.Page.Column;
import io.github.roundstar.report.Page.Table;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.RunResult;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** Figures of every run that no section shows; a column without any value is left out. */
final class MoreFigures {
  private record Kind(Column column, Function<RunResult, Object> value) {
    /** The figure, or null when it or what holds it is null. */
    Object of(RunResult run) {
      return value.apply(run);
    }
  }

  private static final List<Kind> KINDS =
      List.of(
          kind("cadence", "s", RunResult::cadenceSeconds),
          kind("guide scale", "arcsec/pixel", RunResult::guideScaleArcsecPerPixel),
          kind(
              "RA response, axis",
              "arcsec/s",
              run ->
                  run.responseArcsecPerSecond() == null
                          || run.responseArcsecPerSecond().ra() == null
                      ? null
                      : run.responseArcsecPerSecond().ra().axis()),
          kind(
              "Dec response",
              "arcsec/s",
              run ->
                  run.responseArcsecPerSecond() == null
                          || run.responseArcsecPerSecond().dec() == null
                      ? null
                      : run.responseArcsecPerSecond().dec().axis()),
          kind(
              "noise floor, RA",
              "arcsec",
              run -> run.noiseFloorArcsec() == null ? null : run.noiseFloorArcsec().ra()),
          kind(
              "noise floor, Dec",
              "arcsec",
              run -> run.noiseFloorArcsec() == null ? null : run.noiseFloorArcsec().dec()),
          kind(
              "backlash, Dec",
              "arcsec",
              run -> run.backlashArcsecAxis() == null ? null : run.backlashArcsecAxis().dec()),
          kind(
              "sticking, Dec",
              "arcsec",
              run -> run.stickingArcsecAxis() == null ? null : run.stickingArcsecAxis().dec()),
          kind(
              "median settling",
              "s",
              run -> run.settling() == null ? null : run.settling().medianSeconds()));

  private MoreFigures() {}

  /** The table; empty when there is nothing to show. */
  static Optional<Table> table(NightResult result) {
    List<Kind> shown =
        KINDS.stream()
            .filter(kind -> result.runs().stream().anyMatch(run -> kind.of(run) != null))
            .toList();
    if (shown.isEmpty()) {
      return Optional.empty();
    }
    List<Column> columns = new ArrayList<>();
    columns.add(Column.numbers("run", ""));
    shown.forEach(kind -> columns.add(kind.column()));
    return Optional.of(
        new Table("", columns, result.runs().stream().map(run -> row(run, shown)).toList()));
  }

  private static List<Cell> row(RunResult run, List<Kind> shown) {
    List<Cell> cells = new ArrayList<>();
    cells.add(Cell.count(run.id()));
    for (Kind kind : shown) {
      Object value = kind.of(run);
      cells.add(value instanceof Estimate e ? Cell.of(e) : Cell.of((Double) value));
    }
    return cells;
  }

  private static Kind kind(String name, String unit, Function<RunResult, Object> value) {
    return new Kind(Column.numbers(name, unit), value);
  }
}
