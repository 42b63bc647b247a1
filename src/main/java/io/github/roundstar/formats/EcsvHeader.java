package io.github.roundstar.formats;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Header of an ECSV 1.0 file: the line {@code # %ECSV 1.0}, then YAML behind {@code # } up to the
 * first other line. Lines that begin with {@code ##} are comments.
 *
 * @param delimiter comma or space
 * @param columns columns in order
 * @param meta the table's own data; an empty map where there are none
 * @param unknown keys of the header that ECSV does not define
 * @see "T. Aldcroft, Astropy Proposal for Enhancement 6: Enhanced Character Separated Values"
 */
record EcsvHeader(
    char delimiter, List<TableColumn> columns, HeaderNode meta, List<HeaderNode> unknown) {
  private static final String FIRST_LINE = "# %ECSV 1.0";
  private static final int LARGEST = 64 * 1024;
  private static final Set<String> DATATYPES =
      Set.of(
          "bool",
          "int8",
          "int16",
          "int32",
          "int64",
          "uint8",
          "uint16",
          "uint32",
          "uint64",
          "float16",
          "float32",
          "float64",
          "float128",
          "string");

  /** Reads on from the current line, which is the first, and leaves the column line unread. */
  static EcsvHeader read(TextSource source) throws IOException, FormatException {
    if (!source.line().stripTrailing().equals(FIRST_LINE)) {
      throw new FormatException(
          source.file(),
          source.lineNumber(),
          "found a line that begins with #, expected " + FIRST_LINE + " or the column names",
          "make it the line " + FIRST_LINE + ", or begin the file with the column names");
    }
    long firstLine = source.lineNumber() + 1;
    HeaderNode root = YamlTree.read(source.file(), firstLine, yaml(source));
    return new Reader(source.file(), root).header();
  }

  private static String yaml(TextSource source) throws IOException, FormatException {
    StringBuilder yaml = new StringBuilder();
    while (source.next()) {
      String line = source.line();
      if (!line.isBlank() && !line.startsWith("#")) {
        source.unread();
        break;
      }
      boolean comment = line.isBlank() || line.startsWith("##") || line.equals("#");
      if (!comment && !line.startsWith("# ")) {
        throw new FormatException(
            source.file(),
            source.lineNumber(),
            "found # without a space behind it in the header",
            "begin header lines with # and a space, comments with ##");
      }
      yaml.append(comment ? "" : line.substring(2)).append('\n');
      if (yaml.length() > LARGEST) {
        throw new FormatException(
            source.file(),
            source.lineNumber(),
            "the header is larger than " + LARGEST + " bytes",
            "check that each row is on a line without #, and shorten the header");
      }
    }
    return yaml.toString();
  }

  private record Reader(String file, HeaderNode root) {
    EcsvHeader header() throws FormatException {
      if (root.kind() != HeaderNode.Kind.MAP) {
        throw fault(root, "the header is not a map", "write delimiter:, datatype: and meta:");
      }
      HeaderNode meta = root.entries().get("meta");
      if (meta == null || meta.isNull()) {
        meta = HeaderNode.map(root.line(), Map.of());
      } else if (meta.kind() != HeaderNode.Kind.MAP) {
        throw fault(
            meta, "meta is not a map", "write meta: and below it - {key: value} or key: value");
      }
      List<HeaderNode> unknown = new ArrayList<>();
      root.entries()
          .forEach(
              (key, node) -> {
                if (!Set.of("delimiter", "datatype", "meta", "schema").contains(key)) {
                  unknown.add(HeaderNode.text(node.line(), key));
                }
              });
      return new EcsvHeader(delimiter(), columns(), meta, List.copyOf(unknown));
    }

    private char delimiter() throws FormatException {
      HeaderNode node = root.entries().get("delimiter");
      if (node == null) {
        return ' ';
      }
      if (!node.text().equals(",") && !node.text().equals(" ")) {
        throw fault(
            node,
            "found delimiter '" + node.text() + "', expected ',' or ' '",
            "separate the fields with commas and write delimiter: ','");
      }
      return node.text().charAt(0);
    }

    private List<TableColumn> columns() throws FormatException {
      HeaderNode list = root.entries().get("datatype");
      String remedy = "describe each column as - {name: time, unit: s, datatype: float64}";
      if (list == null || list.kind() != HeaderNode.Kind.LIST || list.items().isEmpty()) {
        throw fault(list == null ? root : list, "no list datatype: in the header", remedy);
      }
      List<TableColumn> columns = new ArrayList<>();
      for (HeaderNode item : list.items()) {
        HeaderNode name = item.entries().get("name");
        HeaderNode type = item.entries().get("datatype");
        if (name == null || type == null || name.text().isEmpty()) {
          throw fault(item, "a column without name or datatype", remedy);
        }
        if (!DATATYPES.contains(type.text())) {
          throw fault(
              type,
              "column " + name.text() + ": unknown datatype '" + type.text() + "'",
              "use float64, int64, string or another datatype of ECSV 1.0");
        }
        Optional<String> unit =
            Optional.ofNullable(item.entries().get("unit"))
                .filter(node -> !node.isNull())
                .map(HeaderNode::text);
        columns.add(new TableColumn(name.text(), unit, item.line()));
      }
      return List.copyOf(columns);
    }

    private FormatException fault(HeaderNode node, String what, String remedy) {
      return new FormatException(file, node.line(), what, remedy);
    }
  }
}
