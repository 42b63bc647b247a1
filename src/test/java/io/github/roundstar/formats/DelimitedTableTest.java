package io.github.roundstar.formats;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Tables as ECSV 1.0 and plain CSV define them; every fault has a place and a remedy. */
class DelimitedTableTest {
  @TempDir Path folder;

  private DelimitedTable open(String text) throws IOException, FormatException {
    return DelimitedTable.open(Files.write(folder.resolve("t.ecsv"), text.getBytes(UTF_8)));
  }

  private List<List<String>> rows(String text) throws IOException, FormatException {
    try (DelimitedTable table = open(text)) {
      List<List<String>> rows = new ArrayList<>();
      while (table.next()) {
        List<String> fields = new ArrayList<>();
        for (int i = 0; i < table.row().size(); i++) {
          fields.add(table.row().text(i));
        }
        table.row().fault().ifPresent(fault -> fields.add(fault.name()));
        rows.add(fields);
      }
      return rows;
    }
  }

  private void refuses(String text, String start) {
    assertThatThrownBy(() -> open(text))
        .isInstanceOf(FormatException.class)
        .hasMessageStartingWith(start)
        .satisfies(e -> assertThat(((FormatException) e).remedy()).isNotBlank());
  }

  /**
   * The form that Astropy Proposal for Enhancement 6 (T. Aldcroft) defines, in the released
   * spelling, as astropy 5.2 reads it: delimiter comma, the last field of the last row missing.
   */
  @Tag("published")
  @Test
  void readsCommaSeparatedEcsv() throws Exception {
    String text =
        """
        # %ECSV 1.0
        # ---
        # datatype:
        # - {name: t, unit: s, datatype: float64}
        # - {name: ra, unit: arcsec, datatype: float64, description: 'RA offset on sky, + east'}
        # delimiter: ','
        # meta: !!omap
        # - {latitude_deg: 50.0}
        # schema: astropy-2.0
        t,ra
        0.0,0.12
        2.0,
        """;
    try (DelimitedTable table = open(text)) {
      assertThat(table.isEcsv()).isTrue();
      assertThat(table.columns()).extracting(TableColumn::name).containsExactly("t", "ra");
      assertThat(table.columns().get(1).unit()).hasValue("arcsec");
      assertThat(table.columns().get(1).line()).isEqualTo(5);
      HeaderNode latitude = table.meta().entries().get("latitude_deg");
      assertThat(latitude.text()).isEqualTo("50.0");
      assertThat(latitude.line()).isEqualTo(8);
      assertThat(table.unknownHeaderKeys()).isEmpty();
      assertThat(table.next()).isTrue();
      assertThat(table.row().line()).isEqualTo(11);
      assertThat(table.row().number(1)).isEqualTo(0.12);
      assertThat(table.next()).isTrue();
      assertThat(table.row().number(0)).isEqualTo(2);
      assertThat(table.row().isEmpty(1)).isTrue();
      assertThat(table.row().size()).isEqualTo(2);
      assertThat(table.next()).isFalse();
    }
  }

  /**
   * Space is the default delimiter, "" is missing, ## is a comment; before the dashes, too, where
   * other readers of the form refuse it.
   */
  @Tag("identity")
  @Test
  void readsSpaceSeparatedEcsv() throws Exception {
    String text =
        """
        # %ECSV 1.0
        ## made for a test
        # ---
        # datatype:
        # - {name: a, unit: m, datatype: int64, format: '%5.2f', description: column a}
        # - name: b
        #   datatype: string
        #   meta:
        #     column_meta: {a: 1, b: 2}
        # meta: {keywords: !!omap [{z: 1}, {a: null}], list: [1, two]}
        a b
        1 hello
        2   "two ""words"" here"
        ## a comment between the rows
        3 ""
        """;
    assertThat(rows(text))
        .containsExactly(
            List.of("1", "hello"), List.of("2", "two \"words\" here"), List.of("3", ""));
    try (DelimitedTable table = open(text)) {
      HeaderNode keywords = table.meta().entries().get("keywords");
      assertThat(keywords.entries().keySet()).containsExactly("z", "a");
      assertThat(keywords.entries().get("a").isNull()).isTrue();
      assertThat(table.meta().entries().get("list").items())
          .extracting(HeaderNode::text)
          .containsExactly("1", "two");
    }
  }

  @Test
  void readsPlainCsv() throws Exception {
    assertThat(rows("a,b\n1, 2 \n\n\"x, \"\"y\"\"\" , \"\"\n#no row\n3,\n"))
        .containsExactly(List.of("1", "2"), List.of("x, \"y\"", ""), List.of("3", ""));
  }

  @Test
  void anOpenQuoteCostsOneRow() throws Exception {
    assertThat(rows("a,b\n1,\"cut\n2,x\n3,\"a\"b\n4,in\"side\n"))
        .containsExactly(
            List.of("OPEN_QUOTE"),
            List.of("2", "x"),
            List.of("OPEN_QUOTE"),
            List.of("4", "in\"side"));
  }

  @Test
  void shortAndLongRowsTellTheirSize() throws Exception {
    try (DelimitedTable table = open("a,b\n1\n1,2,3,4\n")) {
      table.next();
      assertThat(table.row().size()).isEqualTo(1);
      assertThat(table.row().isEmpty(1)).isTrue();
      table.next();
      assertThat(table.row().size()).isEqualTo(4);
      assertThat(table.row().isEmpty(3)).isTrue();
      assertThat(table.row().isEmpty(-1)).isTrue();
    }
  }

  @Test
  void aFieldOfTheWrongKindIsRemembered() throws Exception {
    try (DelimitedTable table = open("a,b,c\n1,x,y\nnan,2,\n")) {
      table.next();
      assertThat(table.row().number(0)).isEqualTo(1);
      assertThat(table.row().wrongField()).isNegative();
      assertThat(table.row().number(1)).isNaN();
      assertThat(table.row().epochNanos(2)).isEqualTo(Long.MIN_VALUE);
      assertThat(table.row().wrongField()).isEqualTo(1);
      table.next();
      assertThat(table.row().number(0)).isNaN();
      assertThat(table.row().number(2)).isNaN();
      assertThat(table.row().wrongField()).isNegative();
    }
  }

  private static String ecsv(String... yaml) {
    return "# %ECSV 1.0\n# " + String.join("\n# ", yaml) + "\na\n1\n";
  }

  private static final String A = "datatype: [{name: a, datatype: int64}]";

  @Test
  void keysThatEcsvDoesNotDefineAreListed() throws Exception {
    try (DelimitedTable table = open(ecsv(A, "mta: {b: 1}"))) {
      assertThat(table.unknownHeaderKeys()).hasSize(1);
      assertThat(table.unknownHeaderKeys().get(0).text()).isEqualTo("mta");
      assertThat(table.unknownHeaderKeys().get(0).line()).isEqualTo(3);
    }
  }

  @Test
  void tagsConstructNothing() throws Exception {
    try (DelimitedTable table =
        open(ecsv(A, "meta: {b: !!java.net.URL [x], c: !!int 'q', d: !local z}"))) {
      assertThat(table.meta().entries().get("b").items().get(0).text()).isEqualTo("x");
      assertThat(table.meta().entries().get("c").text()).isEqualTo("q");
      assertThat(table.meta().entries().get("d").text()).isEqualTo("z");
    }
  }

  @Test
  void brokenHeadersNameTheLine() {
    refuses("", "t.ecsv: the file is empty: ");
    refuses("\n \n", "t.ecsv: the file is empty: ");
    refuses("# %ECSV 2.0\n", "t.ecsv:1: found a line that begins with #, expected # %ECSV 1.0");
    refuses("# a note\na,b\n", "t.ecsv:1: found a line that begins with #");
    refuses(ecsv("delimiter: ','"), "t.ecsv:2: no list datatype: ");
    refuses(ecsv("datatype: []"), "t.ecsv:2: no list datatype: ");
    refuses(ecsv(A, "delimiter: ;"), "t.ecsv:3: found delimiter ';', expected ',' or ' ': ");
    refuses(ecsv(A, "meta: text"), "t.ecsv:3: meta is not a map: ");
    refuses(ecsv(A, "meta: {b: 1, b: 2}"), "t.ecsv:3: YAML: the key b is given twice: ");
    refuses(ecsv(A, "meta: {b: &x 1, c: *x}"), "t.ecsv:3: YAML: an alias (*name): ");
    refuses(ecsv(A, "meta: &x {b: *x}"), "t.ecsv:3: YAML: ");
    refuses(ecsv(A, "meta: !!omap", "- {b: 1, c: 2}"), "t.ecsv:4: YAML: an entry of an !!omap");
    refuses(ecsv(A, "meta: {? [1]: 2}"), "t.ecsv:3: YAML: a key that is not a word: ");
    refuses(ecsv(A, "meta: {b: [1}"), "t.ecsv:3: YAML: ");
    refuses(ecsv(A, "\tmeta: 1"), "t.ecsv:3: YAML: ");
    refuses(ecsv("- a"), "t.ecsv:2: the header is not a map: ");
    refuses(ecsv("datatype: [{name: a}]"), "t.ecsv:2: a column without name or datatype: ");
    refuses(
        ecsv("datatype: [{name: a, datatype: real}]"),
        "t.ecsv:2: column a: unknown datatype 'real'");
    refuses("# %ECSV 1.0\n#a\n", "t.ecsv:2: found # without a space");
    refuses(
        "# %ECSV 1.0\n# " + A + "\n", "t.ecsv:2: the file ends before the line of column names: ");
    refuses(
        "# %ECSV 1.0\n# " + A + "\nb\n1\n",
        "t.ecsv:3: found the columns [b], but the header declares [a]: ");
    refuses("a,b,a\n", "t.ecsv:1: the column a is there twice: ");
    refuses("a,\0\n", "t.ecsv:1: NUL byte: ");
    refuses("a,\"b\n", "t.ecsv:1: quote that is not closed: ");
    refuses("a,".repeat(1001) + "b\n", "t.ecsv:1: 1002 columns: ");
  }

  @ParameterizedTest
  @CsvSource({"20, true", "10, false"})
  void depthIsLimited(int depth, boolean refused) throws Exception {
    String text = ecsv(A, "meta: {b: " + "[".repeat(depth) + "]".repeat(depth) + "}");
    if (refused) {
      refuses(text, "t.ecsv:");
    } else {
      open(text).close();
    }
  }

  @Test
  void headerIsCutOffBeforeYamlSeesIt() {
    refuses(ecsv(A, ("meta:\n# " + " ".repeat(1000)).repeat(70)), "t.ecsv:");
    assertThatThrownBy(() -> open("# %ECSV 1.0\n" + ("# " + "x".repeat(990) + "\n").repeat(70)))
        .hasMessageStartingWith("t.ecsv:68: the header is larger than 65536 bytes: ");
  }
}
