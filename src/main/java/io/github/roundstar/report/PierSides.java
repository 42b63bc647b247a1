package io.github.roundstar.report;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.PierSide;
import io.github.roundstar.report.Page.Cell;
import io.github.roundstar.report.Page.Column;
import io.github.roundstar.report.Page.Table;
import io.github.roundstar.results.NoiseFloor;
import io.github.roundstar.results.RunResult;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;

/** Noise and scatter of both sides of the pier, one beside the other. */
final class PierSides {
  private record Figure(String name, Function<RunResult, Double> arcsec) {}

  private static final List<Figure> FIGURES =
      List.of(
          new Figure("noise floor, RA", run -> floor(run, NoiseFloor::ra)),
          new Figure("noise floor, Dec", run -> floor(run, NoiseFloor::dec)),
          new Figure("RMS, RA", run -> run.guided() == null ? null : run.guided().ra().rmsArcsec()),
          new Figure(
              "RMS, Dec", run -> run.guided() == null ? null : run.guided().dec().rmsArcsec()));

  private PierSides() {}

  /** The table; nothing unless there are runs on both sides. */
  static Optional<Table> table(List<RunResult> runs) {
    List<PierSide> sides =
        runs.stream().map(RunResult::pierSide).filter(Objects::nonNull).distinct().toList();
    if (sides.size() < 2) {
      return Optional.empty();
    }
    List<Column> columns = new ArrayList<>(List.of(Column.words("figure")));
    for (PierSide side : sides) {
      columns.add(Column.numbers("tube " + side.name().toLowerCase(Locale.ROOT), "arcsec"));
    }
    List<List<Cell>> rows = new ArrayList<>();
    for (Figure figure : FIGURES) {
      List<Cell> row = new ArrayList<>(List.of(Cell.of(figure.name())));
      for (PierSide side : sides) {
        row.add(
            Cell.of(
                together(runs.stream().filter(run -> run.pierSide() == side).toList(), figure)));
      }
      rows.add(row);
    }
    return Optional.of(new Table("Before and after the flip", columns, rows));
  }

  /** Root mean square over the runs, each as long as it lasted; null when no run has the figure. */
  private static Double together(List<RunResult> runs, Figure figure) {
    double squares = 0;
    double seconds = 0;
    for (RunResult run : runs) {
      Double value = figure.arcsec().apply(run);
      if (value != null) {
        squares += run.durationSeconds() * value * value;
        seconds += run.durationSeconds();
      }
    }
    return seconds > 0 ? Math.sqrt(squares / seconds) : null;
  }

  private static Double floor(RunResult run, Function<NoiseFloor, Estimate> axis) {
    return Optional.ofNullable(run.noiseFloorArcsec()).map(axis).map(Estimate::value).orElse(null);
  }
}
