package io.github.roundstar.formats;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.apache.commons.csv.QuoteMode;

/**
 * One row of a delimited table, taken apart in place: the next row overwrites it. A row is one
 * line, so that a quote left open by a power failure costs that row and no other.
 *
 * <p>A row without quotes is cut at its delimiters by a plain loop, three times as fast as a
 * general parser; every other row is left to Commons CSV. An empty field, quoted or not, is a
 * missing value. Spaces around a field do not belong to it; with the space as delimiter, several
 * count as one.
 */
public final class Row {
  private final byte delimiter;
  private final int[] starts;
  private final int[] ends;
  private final CSVFormat quoting;
  private byte[] bytes;
  private int size;
  private long line;
  private LineFault fault;
  private int wrong;

  Row(char delimiter, int columns) {
    this.delimiter = (byte) delimiter;
    this.starts = new int[columns];
    this.ends = new int[columns];
    // In this mode an unquoted empty field reads as null, a quoted one as an empty text.
    this.quoting =
        CSVFormat.DEFAULT
            .builder()
            .setDelimiter(delimiter)
            .setIgnoreSurroundingSpaces(delimiter != ' ')
            .setNullString("")
            .setQuoteMode(QuoteMode.ALL_NON_NULL)
            .get();
  }

  void take(TextSource source) {
    line = source.lineNumber();
    fault = source.fault().orElse(null);
    bytes = source.buffer();
    size = 0;
    wrong = -1;
    if (fault == null && !split(source.from(), source.to())) {
      splitQuoted(new String(bytes, source.from(), source.to() - source.from(), UTF_8));
    }
  }

  /** Cuts at the delimiters; false if there is a quote other than an empty pair. */
  private boolean split(int from, int to) {
    boolean bySpace = delimiter == ' ';
    int at = from;
    while (true) {
      while (at < to && bytes[at] == ' ') {
        at++;
      }
      if (bySpace && at == to) {
        return true;
      }
      int start = at;
      int quotes = 0;
      while (at < to && bytes[at] != delimiter) {
        quotes += bytes[at] == '"' ? 1 : 0;
        at++;
      }
      int end = at;
      while (end > start && bytes[end - 1] == ' ') {
        end--;
      }
      if (quotes > 0) {
        if (quotes != 2 || end - start != 2) {
          return false;
        }
        end = start;
      }
      add(start, end);
      if (at == to) {
        return true;
      }
      at++;
    }
  }

  private void splitQuoted(String text) {
    size = 0;
    List<CSVRecord> records;
    try (CSVParser parser = CSVParser.parse(new StringReader(text), quoting)) {
      records = parser.getRecords();
    } catch (IOException | UncheckedIOException e) {
      records = List.of();
    }
    if (records.size() != 1) {
      fault = LineFault.OPEN_QUOTE;
      return;
    }
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    for (String field : records.get(0)) {
      if (delimiter != ' ' || field != null) {
        byte[] encoded = field == null ? new byte[0] : field.strip().getBytes(UTF_8);
        add(all.size(), all.size() + encoded.length);
        all.writeBytes(encoded);
      }
    }
    bytes = all.toByteArray();
  }

  private void add(int start, int end) {
    if (size < starts.length) {
      starts[size] = start;
      ends[size] = end;
    }
    size++;
  }

  /** Line of the row in the unpacked text, from 1. */
  public long line() {
    return line;
  }

  /** What makes the whole row unreadable; then it has no fields. */
  public Optional<LineFault> fault() {
    return Optional.ofNullable(fault);
  }

  /** Number of fields, which may be more or fewer than the table has columns. */
  public int size() {
    return size;
  }

  /** Whether a field is empty or absent; a negative index stands for a column the table lacks. */
  public boolean isEmpty(int field) {
    return field < 0 || field >= Math.min(size, starts.length) || starts[field] == ends[field];
  }

  /** The field as text; empty where {@link #isEmpty}. */
  public String text(int field) {
    return isEmpty(field)
        ? ""
        : new String(bytes, starts[field], ends[field] - starts[field], UTF_8);
  }

  /**
   * The field as a decimal number with a point, whatever the locale; infinite for {@code inf}, NaN
   * for {@code nan} and where {@link #isEmpty}. NaN, too, for anything else, which {@link
   * #wrongField} remembers.
   */
  public double number(int field) {
    if (isEmpty(field)) {
      return Double.NaN;
    }
    double value = DecimalText.parse(bytes, starts[field], ends[field]);
    if (Double.isNaN(value) && !DecimalText.isNan(bytes, starts[field], ends[field])) {
      markWrong(field);
    }
    return value;
  }

  /**
   * The field as ISO 8601 date and time in nanoseconds since 1970-01-01T00:00Z; without an offset
   * it counts as UTC. {@code Long.MIN_VALUE} where it is empty, and for anything else, which {@link
   * #wrongField} remembers.
   */
  public long epochNanos(int field) {
    if (isEmpty(field)) {
      return Long.MIN_VALUE;
    }
    long value = IsoTime.epochNanos(bytes, starts[field], ends[field]);
    if (value == Long.MIN_VALUE) {
      markWrong(field);
    }
    return value;
  }

  private void markWrong(int field) {
    if (wrong < 0) {
      wrong = field;
    }
  }

  /** The first field of this row that was asked for as what it is not; negative if none was. */
  public int wrongField() {
    return wrong;
  }
}
