package io.github.roundstar.formats;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.yaml.snakeyaml.DumperOptions;
import org.yaml.snakeyaml.Yaml;

/**
 * Writes ECSV 1.0 tables with commas: a YAML header in comments, one line of names, rows. Lines end
 * in LF. In columns of texts a text is a {@link SpreadsheetText}.
 *
 * @see "Astropy Proposal for Enhancement 6, Enhanced Character Separated Values table format"
 */
public final class EcsvWriter {
  private static final int WIDEST_HEADER_LINE = 110;

  private static final CSVFormat ROWS = CSVFormat.DEFAULT.builder().setRecordSeparator("\n").get();

  private final Appendable out;
  private final List<Column> columns;

  /**
   * A column.
   *
   * @param name its name
   * @param datatype such as {@code float64}, {@code int64}, {@code string}
   * @param unit its unit; empty for none
   */
  public record Column(String name, String datatype, String unit) {}

  /**
   * Writes the header at once.
   *
   * @param out where to; stays open
   * @param columns the columns in order
   * @param meta header keys in order; values are text, whole numbers, {@code BigDecimal}, lists and
   *     maps of these
   */
  public EcsvWriter(Appendable out, List<Column> columns, Map<String, Object> meta)
      throws IOException {
    this.out = out;
    this.columns = List.copyOf(columns);
    out.append("# %ECSV 1.0\n# ---\n");
    for (String line : header(columns, meta).split("\n")) {
      out.append("# ").append(line).append('\n');
    }
    ROWS.printRecord(out, columns.stream().map(Column::name).toArray());
  }

  private static String header(List<Column> columns, Map<String, Object> meta) {
    List<Map<String, Object>> datatypes = new ArrayList<>();
    for (Column column : columns) {
      Map<String, Object> entry = new LinkedHashMap<>();
      entry.put("name", column.name());
      if (!column.unit().isEmpty()) {
        entry.put("unit", column.unit());
      }
      entry.put("datatype", column.datatype());
      datatypes.add(entry);
    }
    Map<String, Object> header = new LinkedHashMap<>();
    header.put("delimiter", ",");
    header.put("datatype", datatypes);
    header.put("meta", meta);
    header.put("schema", "astropy-2.0");
    DumperOptions options = new DumperOptions();
    options.setDefaultFlowStyle(DumperOptions.FlowStyle.AUTO);
    options.setWidth(WIDEST_HEADER_LINE);
    options.setLineBreak(DumperOptions.LineBreak.UNIX);
    return new Yaml(options).dump(header);
  }

  /** Writes a row; an empty text is a missing value. */
  public void row(List<String> values) throws IOException {
    if (values.size() != columns.size()) {
      throw new IllegalArgumentException(
          values.size() + " values for " + columns.size() + " columns");
    }
    Object[] cells = new Object[values.size()];
    for (int i = 0; i < cells.length; i++) {
      boolean text = columns.get(i).datatype().equals("string");
      cells[i] = text ? SpreadsheetText.of(values.get(i)) : values.get(i);
    }
    ROWS.printRecord(out, cells);
  }
}
