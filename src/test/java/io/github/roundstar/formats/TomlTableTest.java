package io.github.roundstar.formats;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.List;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every value has the asked kind and range, or a message with file, place and remedy. */
class TomlTableTest {
  private static TomlTable read(String text) throws FormatException {
    return TomlTable.read("equipment.toml", text.getBytes(UTF_8));
  }

  private static void refuses(ThrowingCallable call, String message) {
    assertThatThrownBy(call).isInstanceOf(FormatException.class).hasMessage(message);
  }

  @Test
  void readsEveryKindOfValue() throws FormatException {
    TomlTable root =
        read(
            """
            rate = 0.5
            count = 144
            whole = 7
            name = "bench"
            mirrored = true
            list = [1, 2.5]
            at = 2026-03-14T20:15:00+01:00
            [mount]
            drive = "worm"
            [[mount.gear]]
            period_s = 30.5
            [[mount.gear]]
            period_s = 61
            """);
    assertThat(root.number("rate", 0, 1)).hasValue(0.5);
    assertThat(root.integer("count", 1, 1000)).hasValue(144);
    assertThat(root.number("whole", 0, 10)).hasValue(7);
    assertThat(root.text("name")).hasValue("bench");
    assertThat(root.flag("mirrored")).hasValue(true);
    assertThat(root.numbers("list", 0, 9)).containsExactly(1.0, 2.5);
    assertThat(root.instant("at")).hasValue(Instant.parse("2026-03-14T19:15:00Z"));
    TomlTable mount = root.table("mount");
    assertThat(mount.choice("drive", "worm", "friction")).hasValue("worm");
    List<TomlTable> gears = mount.tables("gear");
    assertThat(gears).hasSize(2);
    assertThat(gears.get(0).number("period_s", 0, 99)).hasValue(30.5);
    assertThat(gears.get(1).number("period_s", 0, 99)).hasValue(61);
    root.finish();
  }

  @Test
  void absentKeysAreEmpty() throws FormatException {
    TomlTable root = read("");
    assertThat(root.number("a", 0, 1)).isEmpty();
    assertThat(root.integer("b", 0, 1)).isEmpty();
    assertThat(root.text("c")).isEmpty();
    assertThat(root.flag("d")).isEmpty();
    assertThat(root.choice("e", "x")).isEmpty();
    assertThat(root.numbers("f", 0, 1)).isEmpty();
    assertThat(root.instant("g")).isEmpty();
    assertThat(root.tables("h")).isEmpty();
    assertThat(root.table("i").table("j").number("k", 0, 1)).isEmpty();
    root.finish();
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '`',
      delimiter = '|',
      textBlock =
          """
          "fast" | found "fast", expected a number such as 0.5
          -1     | found -1, expected a number such as 0.5
          nan    | found "NaN", expected a number such as 0.5
          inf    | found "Infinity", expected a number such as 0.5
          true   | found true, expected a number such as 0.5
          [1]    | found [1], expected a number such as 0.5
          1e999999999 | found 1E+999999999, expected a number such as 0.5
          """)
  void wrongNumberNamesKeyAndRange(String value, String what) {
    refuses(
        () -> read("[mount]\nguide_rate = " + value).table("mount").number("guide_rate", 0, 10),
        "equipment.toml: mount.guide_rate: "
            + what
            + ": give a number from 0 to 10 without quotes, or remove the key");
  }

  @Test
  void otherWrongKindsNameTheKeyToo() {
    refuses(
        () -> read("n = 1.5").integer("n", 1, 9),
        "equipment.toml: n: found 1.5, expected a whole number such as 9:"
            + " give a whole number from 1 to 9 without quotes, or remove the key");
    refuses(
        () -> read("n = 99999999999").integer("n", 1, 9),
        "equipment.toml: n: found 99999999999, expected a whole number such as 9:"
            + " give a whole number from 1 to 9 without quotes, or remove the key");
    refuses(
        () -> read("n = 1").text("n"),
        "equipment.toml: n: found 1, expected text: put it in double quotes");
    refuses(
        () -> read("n = \"belt\"").choice("n", "worm", "friction"),
        "equipment.toml: n: found \"belt\", expected one of \"worm\", \"friction\":"
            + " use one of these words, or remove the key");
    refuses(
        () -> read("n = 1").flag("n"),
        "equipment.toml: n: found 1, expected true or false: write one of them without quotes");
    refuses(
        () -> read("n = 2026-03-14T20:15:00").instant("n"),
        "equipment.toml: n: found \"2026-03-14T20:15:00\", expected a date and time such as"
            + " 2026-03-14T20:15:00Z: write date, T, time and the offset from UTC");
    refuses(
        () -> read("n = 1").table("n"),
        "equipment.toml: n: found 1, expected a table: write it as [n]");
    refuses(
        () -> read("[a]\nn = 1").table("a").tables("n"),
        "equipment.toml: a.n: found 1, expected an array of tables: write each one as [[a.n]]");
    refuses(
        () -> read("n = [1, 12]").numbers("n", 1, 9),
        "equipment.toml: n: found 12, expected a number such as 1:"
            + " give a number from 1 to 9 without quotes, or remove the key");
  }

  @Test
  void unknownKeyNamesTheNearestKnownOne() throws FormatException {
    TomlTable root = read("[mount]\nguide_rte = 0.5");
    TomlTable mount = root.table("mount");
    mount.number("guide_rate", 0, 10);
    mount.text("name");
    refuses(
        root::finish,
        "equipment.toml: mount.guide_rte: unknown key, the nearest known one is guide_rate:"
            + " correct the key or remove it");
  }

  @Test
  void unknownTableIsRefused() throws FormatException {
    TomlTable root = read("[mnt]\nname = \"a\"");
    root.table("mount");
    refuses(
        root::finish,
        "equipment.toml: mnt: unknown key, the nearest known one is mount:"
            + " correct the key or remove it");
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '`',
      delimiter = '|',
      textBlock =
          """
          a = 1\\nb = tru\\n    | 2
          a = 1\\na = 2\\nb = 3 | 2
          a = 1\\na = 2         | 2
          a = 1 b = 2           | 1
          a = 1\\nb = "abc      | 2
          """)
  void syntaxErrorsHaveALine(String text, long line) {
    assertThatThrownBy(() -> read(text.replace("\\n", "\n")))
        .isInstanceOfSatisfying(
            FormatException.class,
            e -> {
              assertThat(e.line()).isEqualTo(line);
              assertThat(e).hasMessageStartingWith("equipment.toml:" + line + ": ");
              assertThat(e.remedy()).contains("key = value");
            });
  }

  @Test
  void byteOrderMarkIsAllowed() throws FormatException {
    assertThat(read("\uFEFFa = 1").integer("a", 0, 9)).hasValue(1);
  }

  @Test
  void otherEncodingsAreRefusedWithALine() {
    byte[] latin1 = "a = 1\nb = \"Größe\"".getBytes(ISO_8859_1);
    refuses(
        () -> TomlTable.read("equipment.toml", latin1),
        "equipment.toml:2: byte 0xF6 is not UTF-8: save the file as UTF-8");
  }

  @Test
  void oversizedFilesAreRefused() {
    byte[] large = "#".repeat(TomlTable.LARGEST_FILE + 1).getBytes(UTF_8);
    assertThatThrownBy(() -> TomlTable.read("equipment.toml", large))
        .isInstanceOf(FormatException.class)
        .hasMessageStartingWith("equipment.toml: larger than 262144 bytes: ");
  }

  @Test
  void deepNestingIsRefused() {
    for (String text :
        List.of(
            "a = " + "[".repeat(5000) + "]".repeat(5000),
            "a" + ".a".repeat(5000) + " = 1",
            "[a" + ".a".repeat(100_000) + "]",
            "a = " + "{a=".repeat(5000) + "1" + "}".repeat(5000))) {
      assertThatThrownBy(() -> read(text))
          .isInstanceOf(FormatException.class)
          .hasMessageStartingWith("equipment.toml: nested more than 16 deep: ");
    }
  }
}
