package io.github.roundstar.ingest.layout;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.formats.TextEncoding;
import io.github.roundstar.formats.TomlTable;
import io.github.roundstar.ingest.layout.TimeForm.DateOrder;
import io.github.roundstar.model.PierSide;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;

/** Reads layout files (TOML). Unknown keys are errors that name the nearest known key. */
public final class LayoutFile {
  private LayoutFile() {}

  /**
   * Reads a file.
   *
   * @throws FormatException if it is no TOML, a key is unknown, a value wrong, or something that
   *     every log needs is missing
   */
  public static Layout read(Path path) throws IOException, FormatException {
    try (InputStream in = Files.newInputStream(path)) {
      byte[] bytes = in.readNBytes(TomlTable.LARGEST_FILE + 1);
      return read(String.valueOf(path.getFileName()), bytes);
    }
  }

  /**
   * Reads the bytes of a file.
   *
   * @param file name for messages, without folders
   */
  public static Layout read(String file, byte[] bytes) throws FormatException {
    return layout(TomlTable.read(file, PastedAnswers.merged(bytes)));
  }

  private static Layout layout(TomlTable file) throws FormatException {
    Optional<String> unanswered = file.text(LayoutText.UNANSWERED);
    if (unanswered.isPresent()) {
      throw file.fault(
          LayoutText.UNANSWERED,
          unanswered.get(),
          "paste an answer to what the comments ask anywhere into the file, or write it where it"
              + " belongs and remove this key");
    }
    file.text(PastedAnswers.WAITS_FOR);
    TextShape text = text(file.table("text"));
    Layout layout =
        new Layout(
            file.file(),
            text,
            runs(file),
            time(file.table("time")),
            file.table("pulses").choice("row", "same", "next").filter("next"::equals).isPresent(),
            camera(file.table("camera")),
            columns(file.tables("column")),
            settings(file.tables("setting")),
            events(file.tables("event")));
    file.finish();
    LayoutNeeds.require(layout, file);
    return layout;
  }

  private static TextShape text(TomlTable text) throws FormatException {
    List<Integer> widths = new ArrayList<>();
    for (double width : text.numbers("widths", 1, 1000)) {
      widths.add((int) width);
    }
    Delimiter delimiter =
        choice(text, "delimiter", Delimiter.values(), LayoutFile::word).orElse(Delimiter.COMMA);
    if (widths.isEmpty() == (delimiter == Delimiter.FIXED)) {
      throw text.fault(
          "widths",
          "belongs to delimiter = \"fixed\" and is needed with it",
          "write delimiter = \"fixed\" and widths = [8, 10, 10]");
    }
    return new TextShape(
        choice(
                text,
                "encoding",
                new TextEncoding[] {
                  TextEncoding.UTF_8_CR, TextEncoding.LATIN_1, TextEncoding.UTF_16
                },
                LayoutFile::encodingWord)
            .orElse(TextEncoding.UTF_8_CR),
        delimiter,
        widths,
        text.choice("decimal", "point", "comma").filter("comma"::equals).isPresent(),
        pattern(text, "remark"),
        pattern(text, "names"),
        pattern(text, "rows"),
        pattern(text, "lead"),
        pattern(text, "joins"));
  }

  public static String encodingWord(TextEncoding encoding) {
    return encoding == TextEncoding.UTF_8_CR ? TextEncoding.UTF_8.word() : encoding.word();
  }

  private static RunMarks runs(TomlTable file) throws FormatException {
    TomlTable runs = file.table("runs");
    List<RunMarks.Block> blocks = new ArrayList<>();
    for (TomlTable block : file.tables("leave_out")) {
      blocks.add(new RunMarks.Block(needed(block, "from"), pattern(block, "to")));
    }
    return new RunMarks(
        pattern(runs, "begins"), pattern(runs, "ends"), runs.flag("restart").orElse(false), blocks);
  }

  private static TimeForm time(TomlTable time) throws FormatException {
    return new TimeForm(
        choice(time, "form", TimeForm.Kind.values(), LayoutFile::word)
            .orElse(TimeForm.Kind.ELAPSED_S),
        choice(time, "date_order", DateOrder.values(), LayoutFile::word).orElse(DateOrder.YMD),
        offset(time),
        time.choice("mark", "start", "middle", "end"),
        time.number("step_s", 0.01, 600));
  }

  private static Optional<ZoneOffset> offset(TomlTable time) throws FormatException {
    Optional<String> text = time.text("utc_offset");
    try {
      return text.map(ZoneOffset::of);
    } catch (DateTimeException e) {
      throw time.fault(
          "utc_offset", "found \"" + text.get() + "\"", "write it as \"+01:00\" or \"Z\"");
    }
  }

  private static CameraAxes camera(TomlTable camera) throws FormatException {
    return new CameraAxes(
        camera.number("ra_deg", -360, 360),
        camera.number("dec_deg", -360, 360),
        choice(camera, "pier_side", PierSide.values(), LayoutFile::word));
  }

  private static List<ColumnRule> columns(List<TomlTable> tables) throws FormatException {
    List<ColumnRule> columns = new ArrayList<>();
    for (TomlTable table : tables) {
      Optional<String> name = table.text("name");
      OptionalInt at = table.integer("at", 1, 1000);
      if (name.isPresent() == at.isPresent()) {
        throw table.fault(
            "name",
            "a column is told by its name or by its place",
            "keep one of name = \"...\" and at = 3");
      }
      Meaning means =
          choice(table, "means", Meaning.values(), Meaning::word)
              .orElseThrow(() -> missing(table, "means", "ra-offset"));
      columns.add(
          new ColumnRule(
              name,
              at,
              means,
              unit(table, List.copyOf(means.units())),
              choice(table, "positive", Direction.values(), Direction::word),
              table.flag("turns_with_pier").orElse(false),
              texts(table, "missing"),
              texts(table, "toward"),
              texts(table, "away")));
    }
    return columns;
  }

  private static Optional<String> unit(TomlTable table, List<String> units) throws FormatException {
    return table.choice("unit", units.stream().sorted().toArray(String[]::new));
  }

  private static List<SettingRule> settings(List<TomlTable> tables) throws FormatException {
    List<SettingRule> settings = new ArrayList<>();
    for (TomlTable table : tables) {
      Setting means =
          choice(table, "means", Setting.values(), Setting::word)
              .orElseThrow(() -> missing(table, "means", "scale"));
      Optional<LinePattern> line = pattern(table, "line");
      Optional<String> value = table.text("value");
      if (line.isPresent() == value.isPresent()) {
        throw table.fault(
            "line",
            "a setting stands in a line of the log or has its value here",
            "keep one of line = '...(?<value>...)' and value = \"...\"");
      }
      if (line.isPresent() && !line.get().names("value")) {
        throw table.fault(
            "line",
            "no group (?<value>...) in the pattern",
            "put (?<value> and ) around what is the value");
      }
      settings.add(new SettingRule(means, line, value, unit(table, means.units())));
    }
    return settings;
  }

  private static List<EventRule> events(List<TomlTable> tables) throws FormatException {
    List<EventRule> events = new ArrayList<>();
    for (TomlTable table : tables) {
      EventRule.Kind means =
          choice(table, "means", EventRule.Kind.values(), EventRule.Kind::word)
              .orElseThrow(() -> missing(table, "means", "dither"));
      events.add(new EventRule(means, pattern(table, "line"), texts(table, "words")));
    }
    return events;
  }

  private static FormatException missing(TomlTable table, String key, String example) {
    return table.fault(key, "missing", "write " + key + " = \"" + example + "\"");
  }

  private static List<String> texts(TomlTable table, String key) throws FormatException {
    List<String> words = new ArrayList<>();
    Optional<String> all = table.text(key);
    all.ifPresent(text -> words.addAll(Arrays.asList(text.split("\\|", -1))));
    return words;
  }

  private static LinePattern needed(TomlTable table, String key) throws FormatException {
    Optional<LinePattern> pattern = pattern(table, key);
    return pattern.orElseThrow(() -> missing(table, key, "^-- trial"));
  }

  private static Optional<LinePattern> pattern(TomlTable table, String key) throws FormatException {
    Optional<String> text = table.text(key);
    try {
      return text.map(LinePattern::of);
    } catch (IllegalArgumentException e) {
      throw table.fault(
          key, e.getMessage(), "write a regular expression, in single quotes: '^# begin'");
    }
  }

  private static <E> Optional<E> choice(
      TomlTable table, String key, E[] values, Function<E, String> word) throws FormatException {
    Optional<String> found =
        table.choice(key, Arrays.stream(values).map(word).toArray(String[]::new));
    return found.flatMap(
        text -> Arrays.stream(values).filter(v -> word.apply(v).equals(text)).findFirst());
  }

  private static String word(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
