package io.github.roundstar.report;

import io.github.roundstar.report.Page.Block;
import io.github.roundstar.report.Page.Cell;
import io.github.roundstar.report.Page.Column;
import io.github.roundstar.report.Page.Section;
import io.github.roundstar.report.Page.Table;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.Exposure;
import io.github.roundstar.results.ExposureCounts;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.Pointings;
import io.github.roundstar.results.Target;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** The fields of a night beside each other, where there is more than one. */
final class FieldsSection {
  private static final List<Column> COLUMNS =
      List.of(
          Column.words("field"),
          Column.words("runs"),
          Column.numbers("altitude", "deg"),
          Column.numbers("RMS, RA", "arcsec"),
          Column.numbers("RMS, Dec", "arcsec"),
          Column.numbers("drift, RA", "arcsec/min"),
          Column.numbers("drift, Dec", "arcsec/min"),
          Column.numbers("round exposures", ""));

  /** Runs that are named one by one. */
  private static final int MOST_NAMED = 6;

  /** What a page that keeps the site back rounds altitudes to [deg]. */
  private static final double COARSE_DEGREES = 5;

  private FieldsSection() {}

  /** The section; nothing of a night with one field. */
  static Optional<Section> of(NightResult result, SiteDetail site) {
    Pointings pointings = result.night().pointings();
    if (pointings == null || pointings.targets().size() < 2) {
      return Optional.empty();
    }
    List<List<Cell>> rows = new ArrayList<>();
    pointings.targets().forEach(target -> rows.add(row(target, result, site)));
    return Optional.of(
        new Section(
            "fields",
            "Field by field",
            List.of(
                Block.text(
                        "Each field has its own star and height, so that a difference between"
                            + " fields need not be the mount's.",
                        "RMS about the mean of each run; drift of the mount without guiding, east"
                            + " and north positive.")
                    .with(new Table("", COLUMNS, rows).withoutEmptyColumns()))));
  }

  private static List<Cell> row(Target target, NightResult result, SiteDetail site) {
    return List.of(
        new Cell(String.valueOf(target.number()), place(target)),
        Cell.of(runs(target.runs())),
        altitude(target, site),
        Cell.of(target.raRmsArcsec()),
        Cell.of(target.decRmsArcsec()),
        Cell.of(target.driftArcsecPerMinuteSky().ra()),
        Cell.of(target.driftArcsecPerMinuteSky().dec()),
        round(target.exposuresOf(result)));
  }

  private static String place(Target target) {
    List<String> parts = new ArrayList<>();
    if (target.rightAscensionHours() != null) {
      parts.add("RA\u00a0" + Numbers.fixed(target.rightAscensionHours(), 2) + "\u00a0h");
    }
    if (target.declinationDeg() != null) {
      parts.add("Dec\u00a0" + Numbers.fixed(target.declinationDeg(), 1) + "\u00a0deg");
    }
    return parts.isEmpty() ? "" : "(" + String.join(", ", parts) + ")";
  }

  private static String runs(List<Integer> runs) {
    String named =
        runs.stream().limit(MOST_NAMED).map(String::valueOf).collect(Collectors.joining(", "));
    return runs.size() > MOST_NAMED
        ? named + " and " + (runs.size() - MOST_NAMED) + " more"
        : named;
  }

  private static Cell altitude(Target target, SiteDetail site) {
    if (target.leastAltitudeDeg() == null) {
      return Cell.NOT_KNOWN;
    }
    double step = site == SiteDetail.FULL ? 1 : COARSE_DEGREES;
    String least = Numbers.fixed(step * Math.rint(target.leastAltitudeDeg() / step), 0);
    String most = Numbers.fixed(step * Math.rint(target.mostAltitudeDeg() / step), 0);
    return Cell.of(least.equals(most) ? least : least + " to " + most);
  }

  private static Cell round(List<Exposure> exposures) {
    if (exposures.isEmpty()) {
      return Cell.NONE;
    }
    ExposureCounts counts = ExposureCounts.of(exposures);
    return Cell.of(Numbers.count(counts.round()) + " of " + Numbers.count(counts.all()));
  }
}
