package io.github.roundstar.ingest.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Writes a layout as the TOML that {@link LayoutFile} reads. */
public final class LayoutText {
  /** Key of a file in which something is still asked; {@link LayoutFile} refuses it. */
  public static final String UNANSWERED = "unanswered";

  private final StringBuilder out = new StringBuilder();

  private LayoutText() {}

  /** The file's text. */
  public static String of(Layout layout) {
    LayoutText text = new LayoutText();
    text.text(layout.text());
    text.runs(layout.runs());
    text.time(layout.time());
    if (layout.pulseInNextRow()) {
      text.table("[pulses]");
      text.put("row", "next");
    }
    text.camera(layout.camera());
    layout.columns().forEach(rule -> text.line(column(rule)));
    layout.settings().forEach(text::setting);
    layout.events().forEach(text::event);
    return text.out.toString();
  }

  /**
   * The file's text with the evidence as comments. While something is open, it cannot be read as a
   * layout, so that no question is passed over.
   */
  public static String of(Inference inference) {
    LayoutText text = new LayoutText();
    for (Decision decision : inference.decisions()) {
      text.comment(decision.line());
      if (!decision.ask().isEmpty()) {
        decision.ask().lines().forEach(line -> text.comment("    " + line));
      }
    }
    if (!inference.isCertain()) {
      text.put(
          UNANSWERED,
          String.join("; ", inference.open().stream().map(Decision::about).distinct().toList()));
      text.put(
          PastedAnswers.WAITS_FOR,
          PastedAnswers.waitsFor(of(inference.layout()), inference.open()));
    }
    text.comment("The columns of the log, with their first values:");
    inference.samples().forEach(sample -> text.comment("    " + sample));
    return text.out + "\n" + of(inference.layout());
  }

  /** How rows are parted into fields, as lines of a file. */
  public static String shape(
      Delimiter delimiter, List<Integer> widths, Optional<LinePattern> names) {
    LayoutText text = new LayoutText();
    text.put("delimiter", word(delimiter));
    if (!widths.isEmpty()) {
      text.line("widths = " + widths);
    }
    text.pattern("names", names);
    return text.out.toString();
  }

  private void comment(String text) {
    line("# " + text.replaceAll("\\p{Cntrl}", " "));
  }

  private void text(TextShape text) {
    table("[text]");
    put("encoding", LayoutFile.encodingWord(text.encoding()));
    put("delimiter", word(text.delimiter()));
    if (!text.widths().isEmpty()) {
      line("widths = " + text.widths());
    }
    put("decimal", text.decimalComma() ? "comma" : "point");
    pattern("remark", text.remark());
    pattern("names", text.names());
    pattern("rows", text.rows());
    pattern("lead", text.lead());
    pattern("joins", text.joins());
  }

  private void runs(RunMarks runs) {
    if (runs.begins().isPresent() || runs.ends().isPresent() || runs.restart()) {
      table("[runs]");
      pattern("begins", runs.begins());
      pattern("ends", runs.ends());
      if (runs.restart()) {
        line("restart = true");
      }
    }
    for (RunMarks.Block block : runs.leftOut()) {
      table("[[leave_out]]");
      pattern("from", Optional.of(block.from()));
      pattern("to", block.to());
    }
  }

  private void time(TimeForm time) {
    table("[time]");
    put("form", time.kind().word());
    if (!time.kind().isElapsed() || time.order() != TimeForm.DateOrder.YMD) {
      put("date_order", word(time.order()));
    }
    time.utcOffset().ifPresent(offset -> put("utc_offset", offset.getId()));
    time.mark().ifPresent(mark -> put("mark", mark));
    time.stepSeconds().ifPresent(step -> line("step_s = " + step));
  }

  private void camera(CameraAxes camera) {
    if (camera.raDegrees().isPresent() || camera.pierSide().isPresent()) {
      table("[camera]");
      camera.raDegrees().ifPresent(deg -> line(number("ra_deg", deg)));
      camera.decDegrees().ifPresent(deg -> line(number("dec_deg", deg)));
      camera.pierSide().ifPresent(side -> put("pier_side", word(side)));
    }
  }

  private static String number(String key, double value) {
    return String.format(Locale.ROOT, "%s = %.2f", key, value);
  }

  /** One column as it stands in the file, ready to be pasted. */
  public static String column(ColumnRule rule) {
    List<String> lines = new ArrayList<>(List.of("", "[[column]]"));
    rule.name().ifPresent(name -> lines.add("name = " + quoted(name)));
    rule.at().ifPresent(at -> lines.add("at = " + at));
    lines.add("means = " + quoted(rule.means().word()));
    rule.unit().ifPresent(unit -> lines.add("unit = " + quoted(unit)));
    rule.positive().ifPresent(to -> lines.add("positive = " + quoted(to.word())));
    if (rule.turnsWithPier()) {
      lines.add("turns_with_pier = true");
    }
    words(lines, "missing", rule.missing());
    words(lines, "toward", rule.toward());
    words(lines, "away", rule.away());
    return String.join("\n", lines);
  }

  private static void words(List<String> lines, String key, List<String> words) {
    if (!words.isEmpty()) {
      lines.add(key + " = " + quoted(String.join("|", words)));
    }
  }

  private void setting(SettingRule rule) {
    table("[[setting]]");
    put("means", rule.means().word());
    pattern("line", rule.line());
    rule.value().ifPresent(value -> put("value", value));
    rule.unit().ifPresent(unit -> put("unit", unit));
  }

  private void event(EventRule rule) {
    table("[[event]]");
    put("means", rule.means().word());
    pattern("line", rule.line());
    if (!rule.words().isEmpty()) {
      put("words", String.join("|", rule.words()));
    }
  }

  private void table(String head) {
    line(out.length() == 0 ? head : "\n" + head);
  }

  private void put(String key, String value) {
    line(key + " = " + quoted(value));
  }

  private void pattern(String key, Optional<LinePattern> pattern) {
    pattern.ifPresent(
        p -> {
          String text = p.expression();
          boolean literal = text.indexOf('\'') < 0 && text.chars().noneMatch(c -> c < ' ');
          line(key + " = " + (literal ? "'" + text + "'" : quoted(text)));
        });
  }

  /** A text as a TOML basic string. */
  private static String quoted(String text) {
    StringBuilder all = new StringBuilder("\"");
    for (char c : text.toCharArray()) {
      if (c == '"' || c == '\\') {
        all.append('\\').append(c);
      } else if (c < ' ' || c == 0x7F) {
        all.append(String.format(Locale.ROOT, "\\u%04X", (int) c));
      } else {
        all.append(c);
      }
    }
    return all.append('"').toString();
  }

  private static String word(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private void line(String text) {
    out.append(text).append('\n');
  }
}
