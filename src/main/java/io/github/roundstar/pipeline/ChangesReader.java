package io.github.roundstar.pipeline;

import io.github.roundstar.compare.MountChange;
import io.github.roundstar.formats.DelimitedTable;
import io.github.roundstar.formats.FormatException;
import io.github.roundstar.formats.TableColumn;
import io.github.roundstar.formats.TomlTable;
import java.io.IOException;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/**
 * Reads the dates of work on the mount: TOML with one {@code [[change]]} each, or a table with the
 * columns {@code date} and {@code what}.
 */
final class ChangesReader {
  private static final int MOST = 200;
  private static final String DATE = "date";
  private static final String WHAT = "what";
  private static final String REMEDY = "write it as \"2026-10-22\"";

  private ChangesReader() {}

  /**
   * The changes in order of their dates.
   *
   * @throws FormatException if the file cannot be used
   */
  static List<MountChange> read(Path file) throws FormatException {
    try {
      List<MountChange> changes =
          file.toString().toLowerCase(Locale.ROOT).endsWith(".toml") ? toml(file) : table(file);
      if (changes.size() > MOST) {
        throw new FormatException(
            name(file), 0, "more than " + MOST + " changes", "keep those that matter");
      }
      changes.sort(Comparator.comparing(MountChange::date));
      return changes;
    } catch (IOException e) {
      throw FormatException.unreadable(file, e);
    }
  }

  private static List<MountChange> toml(Path file) throws IOException, FormatException {
    TomlTable root = TomlTable.read(file);
    List<MountChange> changes = new ArrayList<>();
    for (TomlTable change : root.tables("change")) {
      String date = change.text(DATE).orElse("");
      try {
        changes.add(new MountChange(LocalDate.parse(date), change.text(WHAT).orElse("")));
      } catch (DateTimeException e) {
        throw change.fault(DATE, "found \"" + date + "\", expected a date", REMEDY);
      }
    }
    root.finish();
    return changes;
  }

  private static List<MountChange> table(Path file) throws IOException, FormatException {
    List<MountChange> changes = new ArrayList<>();
    try (DelimitedTable table = DelimitedTable.open(file)) {
      List<String> names = table.columns().stream().map(TableColumn::name).toList();
      int date = names.indexOf(DATE);
      int what = names.indexOf(WHAT);
      if (date < 0 || what < 0) {
        throw new FormatException(
            name(file), 1, "no columns date and what", "begin with the line date,what");
      }
      while (table.next()) {
        boolean whole = table.row().fault().isEmpty();
        String text = whole ? table.row().text(date) : "";
        try {
          changes.add(new MountChange(LocalDate.parse(text), table.row().text(what)));
        } catch (DateTimeException e) {
          throw new FormatException(
              name(file),
              table.row().line(),
              whole ? "found \"" + text + "\", expected a date" : "a row of another length",
              "write a row as 2026-10-22,worm adjusted");
        }
      }
    }
    return changes;
  }

  private static String name(Path file) {
    return String.valueOf(file.getFileName());
  }
}
