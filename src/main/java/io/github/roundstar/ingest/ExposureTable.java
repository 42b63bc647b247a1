package io.github.roundstar.ingest;

import io.github.roundstar.formats.DelimitedTable;
import io.github.roundstar.formats.FormatException;
import io.github.roundstar.formats.IsoTime;
import io.github.roundstar.formats.Row;
import io.github.roundstar.formats.TableColumn;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.ExposureFrame;
import io.github.roundstar.model.ExposureFrame.CameraClock;
import io.github.roundstar.model.ExposureFrame.ListedShape;
import io.github.roundstar.model.ExposureFrame.Optics;
import io.github.roundstar.model.ExposureFrame.SkyShift;
import java.io.IOException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;

/**
 * Reads a list of exposures: ECSV or plain CSV with the columns {@code file, start, seconds} and,
 * if star shapes were measured elsewhere, {@code elongation, elongation_lo, elongation_hi} (95 %
 * interval), {@code fwhm} (arcsec), {@code angle} (position angle, deg), {@code shift_east,
 * shift_north, shift_error} (arcsec, since the exposure before), {@code corner_elongation,
 * corner_elongation_lo, corner_elongation_hi} (of the worst corner) and {@code pattern}. A start
 * without an offset is local time. A FITS file of that name beside the list is measured instead.
 */
final class ExposureTable {
  /** Most rows; more exposures than that are no night. */
  private static final int MOST_ROWS = 20_000;

  private enum Field {
    FILE,
    START,
    SECONDS,
    ELONGATION,
    ELONGATION_LO,
    ELONGATION_HI,
    FWHM,
    ANGLE,
    SHIFT_EAST,
    SHIFT_NORTH,
    SHIFT_ERROR,
    CORNER_ELONGATION,
    CORNER_ELONGATION_LO,
    CORNER_ELONGATION_HI,
    PATTERN;

    String key() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  private final DelimitedTable table;
  private final Path folder;
  private final Map<Field, Integer> places = new EnumMap<>(Field.class);

  private ExposureTable(DelimitedTable table, Path folder) throws FormatException {
    this.table = table;
    this.folder = folder;
    TreeSet<String> names = new TreeSet<>();
    for (Field field : Field.values()) {
      names.add(field.key());
    }
    for (int i = 0; i < table.columns().size(); i++) {
      TableColumn column = table.columns().get(i);
      if (!names.contains(column.name())) {
        throw UnknownColumn.of(table.file(), column, names);
      }
      places.put(Field.valueOf(column.name().toUpperCase(Locale.ROOT)), i);
    }
    for (Field needed : List.of(Field.FILE, Field.START, Field.SECONDS)) {
      if (!places.containsKey(needed)) {
        throw new FormatException(
            table.file(),
            table.lineNumber(),
            "no column " + needed.key(),
            "add the column; file, start and seconds are needed");
      }
    }
  }

  /**
   * Reads a list.
   *
   * @param problems where rows that cannot be used are named
   * @throws FormatException if it is no list of exposures
   */
  static List<ExposureFrame> read(Path path, List<String> problems)
      throws IOException, FormatException {
    List<ExposureFrame> frames = new ArrayList<>();
    try (DelimitedTable table = DelimitedTable.open(path)) {
      ExposureTable list = new ExposureTable(table, path.toAbsolutePath().getParent());
      while (table.next()) {
        if (frames.size() == MOST_ROWS) {
          throw new FormatException(
              table.file(), table.lineNumber(), "more than " + MOST_ROWS + " rows", "split it");
        }
        try {
          frames.add(list.frame(table.row()));
        } catch (FormatException e) {
          problems.add(e.getMessage());
        }
      }
    }
    return frames;
  }

  private ExposureFrame frame(Row row) throws FormatException {
    if (row.fault().isPresent()) {
      throw fault(row, row.fault().get().what(), row.fault().get().remedy());
    }
    if (row.size() != table.columns().size()) {
      throw fault(
          row,
          row.size() + " fields for " + table.columns().size() + " columns",
          "give every row as many fields as there are columns");
    }
    String file = text(row, Field.FILE).orElse("exposure at " + text(row, Field.START).orElse("?"));
    String start = text(row, Field.START).orElse("");
    Optional<Instant> zoned = IsoTime.withOffset(start).map(t -> t.toInstant());
    Optional<Instant> at = zoned.or(() -> FitsTime.instant(start));
    if (at.isEmpty()) {
      throw fault(
          row,
          "start: found '" + start + "', expected a date and time such as 2026-03-14T20:15:00Z",
          "correct the field");
    }
    OptionalDouble seconds = number(row, Field.SECONDS);
    if (seconds.isEmpty() || !(seconds.getAsDouble() > 0)) {
      throw fault(row, "seconds: not a number above 0", "give the exposure time in seconds");
    }
    Optional<Path> image = beside(file).filter(ExposureReader::isFitsFile);
    return new ExposureFrame(
        file,
        at.get(),
        zoned.isPresent() ? CameraClock.UTC : CameraClock.LOCAL,
        seconds.getAsDouble(),
        Optics.UNKNOWN,
        image.isPresent() ? Optional.empty() : listed(row),
        image);
  }

  /** The place of that name beside the list, whatever folder the list names. */
  private Optional<Path> beside(String file) {
    try {
      return Optional.ofNullable(Path.of(file).getFileName()).map(folder::resolve);
    } catch (InvalidPathException e) {
      return Optional.empty(); // a text that no file can be called
    }
  }

  private Optional<ListedShape> listed(Row row) throws FormatException {
    Optional<Estimate> elongation =
        elongation(row, Field.ELONGATION, Field.ELONGATION_LO, Field.ELONGATION_HI);
    if (elongation.isEmpty()) {
      return Optional.empty();
    }
    OptionalDouble east = number(row, Field.SHIFT_EAST);
    OptionalDouble north = number(row, Field.SHIFT_NORTH);
    Optional<SkyShift> shift =
        east.isPresent() && north.isPresent()
            ? Optional.of(
                new SkyShift(
                    east.getAsDouble(),
                    north.getAsDouble(),
                    Math.abs(number(row, Field.SHIFT_ERROR).orElse(0.1))))
            : Optional.empty();
    return Optional.of(
        new ListedShape(
            elongation.get(),
            number(row, Field.FWHM),
            number(row, Field.ANGLE),
            shift,
            elongation(
                row,
                Field.CORNER_ELONGATION,
                Field.CORNER_ELONGATION_LO,
                Field.CORNER_ELONGATION_HI),
            text(row, Field.PATTERN)));
  }

  private Optional<Estimate> elongation(Row row, Field field, Field from, Field to)
      throws FormatException {
    OptionalDouble found = number(row, field);
    if (found.isEmpty()) {
      return Optional.empty();
    }
    double value = found.getAsDouble();
    double low = number(row, from).orElse(value);
    double high = number(row, to).orElse(value);
    if (!(value >= 1 && low >= 1 && low <= value && value <= high)) {
      throw fault(
          row,
          field.key() + ": " + low + " .. " + value + " .. " + high + " is no interval above 1",
          "give long axis over short, with its interval around it");
    }
    return Optional.of(new Estimate(value, low, high));
  }

  private Optional<String> text(Row row, Field field) {
    int at = places.getOrDefault(field, -1);
    return row.isEmpty(at) ? Optional.empty() : Optional.of(row.text(at).strip());
  }

  private OptionalDouble number(Row row, Field field) throws FormatException {
    int at = places.getOrDefault(field, -1);
    if (row.isEmpty(at)) {
      return OptionalDouble.empty();
    }
    double value = row.number(at);
    if (!Double.isFinite(value)) {
      throw fault(
          row,
          field.key() + ": found '" + row.text(at) + "', expected a number such as 1.2",
          "correct the field or leave it empty");
    }
    return OptionalDouble.of(value);
  }

  private FormatException fault(Row row, String what, String remedy) {
    return new FormatException(table.file(), row.line(), what, remedy);
  }
}
