package io.github.roundstar.formats;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import org.apache.commons.csv.CSVFormat;

/**
 * Writes plain CSV for spreadsheets and scripts: commas, one line of names, LF. A text is a {@link
 * SpreadsheetText}.
 */
public final class CsvWriter {
  private static final CSVFormat ROWS = CSVFormat.RFC4180.builder().setRecordSeparator("\n").get();

  private final Appendable out;

  /** Writes the line of names. */
  public CsvWriter(Appendable out, List<String> names) throws IOException {
    this.out = out;
    ROWS.printRecord(out, names.toArray());
  }

  /** Writes a row: null is empty, numbers have six digits, anything else is text. */
  public void row(List<?> values) throws IOException {
    ROWS.printRecord(out, values.stream().map(CsvWriter::cell).toArray());
  }

  private static String cell(Object value) {
    if (value == null) {
      return "";
    }
    if (value instanceof Number number) {
      return number instanceof Integer || number instanceof Long
          ? number.toString()
          : plain(number.doubleValue());
    }
    return SpreadsheetText.of(value.toString());
  }

  private static String plain(double value) {
    return new java.math.BigDecimal(String.format(Locale.ROOT, "%.6g", value))
        .stripTrailingZeros()
        .toPlainString();
  }
}
