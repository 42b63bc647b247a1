package io.github.roundstar.ingest.layout;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.model.PierSide;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Works out from a log's text alone how it is laid out. Each decision carries its evidence; what
 * cannot be known is asked, never guessed.
 */
public final class LayoutInference {
  private static final int PREVIEW_ROWS = 5;

  private final LogSample sample;
  private final List<String> lines;
  private final RowShape shape;
  private final TableHead head;
  private final List<RunMarks.Block> leftOut;
  private final List<Decision> decisions = new ArrayList<>();

  private LayoutInference(LogSample sample, RowShape all) {
    this.sample = sample;
    OtherTables others = new OtherTables(sample.lines(), all, decisions);
    this.leftOut = others.blocks();
    this.lines = others.linesLeft();
    this.shape = leftOut.isEmpty() ? all : RowShape.of(lines).orElse(all);
    this.head = TableHead.of(lines, shape);
  }

  /**
   * Works out the layout of a log.
   *
   * @throws FormatException if it is no text log with rows of numbers
   */
  public static Inference of(Path log) throws IOException, FormatException {
    LogSample sample = LogSample.read(log);
    Optional<RowShape> shape = RowShape.of(sample.lines());
    if (shape.isEmpty()) {
      throw new FormatException(
          sample.file(),
          0,
          "no rows of numbers found in its first " + sample.lines().size() + " lines",
          "give a text log with one frame to a line");
    }
    return new LayoutInference(sample, shape.get()).infer();
  }

  private Inference infer() throws FormatException {
    decisions.add(
        Decision.certain(
            "delimiter",
            shape.delimiter().name().toLowerCase(Locale.ROOT),
            shape.rows().size() + " lines have " + shape.size() + " fields each"));
    List<ColumnData> columns = head.columns(lines, shape);
    Map<Meaning, ColumnData> found = new ColumnMeanings(columns, decisions).find();
    requireBasics(found);
    DoubtfulValues.ask(found, decisions);
    TimeForm time =
        new TimeGuess(head.others(), decisions)
            .of(found.get(Meaning.TIME), Optional.ofNullable(found.get(Meaning.DATE)));
    List<SettingRule> settings =
        new SettingWords(shape.decimalComma(), decisions).rules(head.others(), time);
    askForUtcOffset(time, settings);
    List<EventRule> events = new ArrayList<>(EventWords.lineRules(head.between(), decisions));
    if (found.containsKey(Meaning.EVENT)) {
      events.addAll(EventWords.rules(found.get(Meaning.EVENT), decisions));
    }
    PulseSigns signs =
        new PulseSigns(new PulseSeries(found, sides(settings), shape.decimalComma()), decisions);
    signs.find();
    ColumnUnits units = new ColumnUnits(found, settings, decisions);
    List<ColumnRule> rules = new ArrayList<>();
    found.forEach((meaning, column) -> rules.add(rule(meaning, column, units, signs)));
    Layout layout =
        new Layout(
            "inferred",
            new TextShape(
                sample.encoding(),
                shape.delimiter(),
                shape.widths(),
                shape.decimalComma(),
                head.remark(),
                head.names()),
            head.runs().without(leftOut),
            time,
            signs.inNextRow(),
            sided(signs, settings),
            rules,
            settings,
            events);
    return new Inference(layout, decisions, firstRows());
  }

  /** Where the hour angle follows from the clock, the clock's offset matters. */
  private void askForUtcOffset(TimeForm time, List<SettingRule> settings) {
    boolean follows =
        settings.stream().anyMatch(rule -> rule.means() == Setting.RIGHT_ASCENSION)
            && settings.stream().anyMatch(rule -> rule.means() == Setting.LONGITUDE)
            && settings.stream().noneMatch(rule -> rule.means() == Setting.HOUR_ANGLE);
    boolean missing =
        decisions.removeIf(
            decision ->
                follows
                    && decision.about().equals("utc_offset")
                    && decision.sure() == Decision.Sureness.NOTED);
    if (missing) {
      decisions.add(
          Decision.open(
              "utc_offset",
              "the hour angle follows from the clock, and no line tells the clock's offset from UTC"
                  + " (form "
                  + time.kind().word()
                  + ")",
              "[time]\nutc_offset = \"+00:00\""));
    }
  }

  private CameraAxes sided(PulseSigns signs, List<SettingRule> settings) {
    CameraAxes camera = signs.camera();
    boolean turns = false;
    for (Meaning meaning : Meaning.values()) {
      turns |= signs.turns(meaning);
    }
    return turns
        ? new CameraAxes(camera.raDegrees(), camera.decDegrees(), sides(settings).get(0))
        : camera;
  }

  private void requireBasics(Map<Meaning, ColumnData> found) throws FormatException {
    boolean sky = found.containsKey(Meaning.RA_OFFSET) && found.containsKey(Meaning.DEC_OFFSET);
    boolean camera = found.containsKey(Meaning.X_OFFSET) && found.containsKey(Meaning.Y_OFFSET);
    if (!found.containsKey(Meaning.TIME) || !sky && !camera) {
      throw new FormatException(
          sample.file(),
          head.nameLine() + 1,
          !found.containsKey(Meaning.TIME)
              ? "no column tells the time by its name and by rising steadily"
              : "no pair of columns tells the offsets of the star",
          "write a layout file with [[column]] means = \"time\", \"ra-offset\" and \"dec-offset\","
              + " see sample-logs/layouts");
    }
    if (sky) {
      found.remove(Meaning.X_OFFSET);
      found.remove(Meaning.Y_OFFSET);
    } else {
      found.remove(Meaning.RA_OFFSET);
      found.remove(Meaning.DEC_OFFSET);
    }
  }

  /** Side of the pier of each row, as lines between the rows tell it. */
  private List<Optional<PierSide>> sides(List<SettingRule> settings) {
    Optional<LinePattern> pattern =
        settings.stream()
            .filter(rule -> rule.means() == Setting.PIER_SIDE)
            .flatMap(rule -> rule.line().stream())
            .findFirst();
    List<Optional<PierSide>> sides = new ArrayList<>();
    Optional<PierSide> side = Optional.empty();
    Set<Integer> rows = new LinkedHashSet<>(shape.rows());
    for (int i = 0; i < lines.size(); i++) {
      if (rows.contains(i)) {
        sides.add(side);
      } else if (pattern.isPresent()) {
        Optional<String> value =
            pattern.get().find(lines.get(i)).flatMap(m -> LinePattern.group(m, "value"));
        if (value.isPresent()) {
          side = Optional.of(PierSide.valueOf(value.get().toUpperCase(Locale.ROOT)));
        }
      }
    }
    return sides;
  }

  private static ColumnRule rule(
      Meaning meaning, ColumnData column, ColumnUnits units, PulseSigns signs) {
    ColumnRule bare = ColumnMeanings.rule(column, meaning);
    boolean number =
        !meaning.units().isEmpty() || meaning == Meaning.SNR || meaning == Meaning.FLUX;
    boolean lettered = meaning.isPulse() && signs.positive(meaning).isEmpty();
    return new ColumnRule(
        bare.name(),
        bare.at(),
        meaning,
        units.of(meaning),
        meaning.isSigned() ? signs.positive(meaning) : Optional.empty(),
        signs.turns(meaning),
        number && !lettered ? List.copyOf(column.words) : List.of());
  }

  private List<List<String>> firstRows() {
    return shape.rows().stream().limit(PREVIEW_ROWS).map(i -> shape.cells(lines.get(i))).toList();
  }
}
