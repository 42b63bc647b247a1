package io.github.roundstar.ingest;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.model.PierSide;
import io.github.roundstar.model.Pointing;
import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * Begins runs with what the header says of them. What it does not say of a run is carried on: the
 * pier side from the run before, changed by a flip; the hour angle from the run before, by the
 * sky's turn in between, unless another right ascension is told.
 */
final class RunStarter {
  private static final int ONLY_RUN = 1;
  private static final HeaderMeta.Values NOTHING = new HeaderMeta.Values(Map.of());

  private final String file;
  private final ColumnTable columns;
  private final HeaderMeta meta;
  private final RunClock clock;
  private final Problems problems;
  private final Set<Integer> seen = new HashSet<>();
  private Optional<Integer> number = Optional.empty();
  private Optional<PierSide> side = Optional.empty();
  private OptionalDouble hourAngle = OptionalDouble.empty();
  private double startSeconds;
  private boolean exposureWanted;

  RunStarter(String file, ColumnTable columns, HeaderMeta meta, RunClock clock, Problems problems) {
    this.file = file;
    this.columns = columns;
    this.meta = meta;
    this.clock = clock;
    this.problems = problems;
  }

  /** Whether a row with this number, if any, belongs to another run than the current. */
  boolean isOtherRun(Optional<Integer> rowNumber) {
    return number.isEmpty() || rowNumber.isPresent() && !rowNumber.get().equals(number.get());
  }

  /** The number of the run that a row belongs to. */
  int numberOf(Optional<Integer> rowNumber) {
    return rowNumber.orElseGet(() -> number.orElse(ONLY_RUN));
  }

  /** Begins a run with its first row. */
  RunBuilder start(TableRow row, double fileSeconds, boolean flip) throws FormatException {
    boolean first = number.isEmpty();
    boolean other = isOtherRun(row.run);
    number = Optional.of(numberOf(row.run));
    seen.add(number.get());
    HeaderMeta.Values own = meta.own(number.get());
    HeaderMeta.Values values = meta.of(number.get());
    requireScale(values);
    side = pierSide(other ? own : NOTHING, first, flip);
    hourAngle = hourAngle(other ? own : NOTHING, first, fileSeconds);
    startSeconds = fileSeconds;
    Pointing pointing =
        new Pointing(
            values.number(MetaKey.DECLINATION),
            hourAngle,
            side,
            values.number(MetaKey.SITE_LATITUDE),
            values.number(MetaKey.RIGHT_ASCENSION),
            values.number(MetaKey.SITE_LONGITUDE));
    double middle = middle(values);
    Optional<Instant> start = clock.instantAt(fileSeconds + middle);
    return new RunBuilder(
        columns, values, pointing, start, start.isPresent() ? fileSeconds : -middle);
  }

  private void requireScale(HeaderMeta.Values values) throws FormatException {
    if (values.number(MetaKey.GUIDE_SCALE).isPresent()) {
      return;
    }
    for (GuideColumn column :
        List.of(
            GuideColumn.RA_OFFSET,
            GuideColumn.DEC_OFFSET,
            GuideColumn.DITHER_RA,
            GuideColumn.DITHER_DEC)) {
      if (columns.has(column) && Double.isNaN(columns.factor(column))) {
        throw new FormatException(
            file,
            columns.line(column),
            "column " + column.key() + " is in pix, but the header has no guide_scale",
            "add guide_scale, in arcsec per logged pixel, to meta");
      }
    }
  }

  private Optional<PierSide> pierSide(HeaderMeta.Values own, boolean first, boolean flip) {
    Optional<String> said = own.word(MetaKey.PIER_SIDE);
    if (said.isEmpty() && first) {
      said = meta.common().word(MetaKey.PIER_SIDE);
    }
    if (said.isPresent()) {
      return said.map(word -> PierSide.valueOf(word.toUpperCase(Locale.ROOT)));
    }
    return flip ? side.map(s -> s == PierSide.EAST ? PierSide.WEST : PierSide.EAST) : side;
  }

  private OptionalDouble hourAngle(HeaderMeta.Values own, boolean first, double fileSeconds) {
    OptionalDouble said = own.number(MetaKey.HOUR_ANGLE);
    if (said.isEmpty() && first) {
      said = meta.common().number(MetaKey.HOUR_ANGLE);
    }
    double elapsed = fileSeconds - startSeconds;
    boolean otherStar = own.number(MetaKey.RIGHT_ASCENSION).isPresent();
    if (said.isPresent() || hourAngle.isEmpty() || elapsed < 0 || otherStar) {
      return said;
    }
    return OptionalDouble.of(HourAngle.later(hourAngle.getAsDouble(), elapsed));
  }

  /** From the logged time to the middle of the exposure [s]. */
  private double middle(HeaderMeta.Values values) {
    String mark = values.word(MetaKey.TIME_MARK).orElse("middle");
    OptionalDouble exposure = values.number(MetaKey.GUIDE_EXPOSURE);
    if (!mark.equals("middle") && exposure.isEmpty() && !exposureWanted) {
      exposureWanted = true;
      problems.warn(
          0,
          "time_mark is " + mark + ", but without guide_exposure the times stay as logged",
          "add guide_exposure, in seconds, to meta");
    }
    double half = exposure.orElse(0) / 2;
    return switch (mark) {
      case "start" -> half;
      case "end" -> -half;
      default -> 0;
    };
  }

  /** Warns of what the header says about runs that the rows do not have. */
  void warnOfRunsNotSeen() {
    meta.described()
        .forEach(
            (run, line) -> {
              if (!seen.contains(run)) {
                problems.warn(
                    line,
                    "the header describes run " + run + ", but no row belongs to it",
                    "correct the number, or remove the entry");
              }
            });
  }
}
