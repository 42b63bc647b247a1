package io.github.roundstar.formats;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import org.apache.commons.csv.CSVFormat;

/**
 * Writes plain CSV for spreadsheets and scripts: commas, one line of names, LF. A text that a
 * spreadsheet would run as a formula gets an apostrophe before it.
 *
 * @see "OWASP, CSV Injection: cells that begin with an operator, an at sign, tab or carriage
 *     return"
 */
public final class CsvWriter {
  private static final CSVFormat ROWS = CSVFormat.RFC4180.builder().setRecordSeparator("\n").get();
  private static final String STARTS_FORMULA = "=+-@\t\r\n";

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
    String text = value.toString();
    return !text.isEmpty() && STARTS_FORMULA.indexOf(text.charAt(0)) >= 0 ? "'" + text : text;
  }

  private static String plain(double value) {
    return new java.math.BigDecimal(String.format(Locale.ROOT, "%.6g", value))
        .stripTrailingZeros()
        .toPlainString();
  }
}
