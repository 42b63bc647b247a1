package io.github.roundstar.ingest.layout.choice;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.ingest.layout.CameraAxes;
import io.github.roundstar.ingest.layout.ColumnRule;
import io.github.roundstar.ingest.layout.Decision;
import io.github.roundstar.ingest.layout.Delimiter;
import io.github.roundstar.ingest.layout.Direction;
import io.github.roundstar.ingest.layout.EventRule;
import io.github.roundstar.ingest.layout.Inference;
import io.github.roundstar.ingest.layout.Layout;
import io.github.roundstar.ingest.layout.LayoutFile;
import io.github.roundstar.ingest.layout.LayoutText;
import io.github.roundstar.ingest.layout.LinePattern;
import io.github.roundstar.ingest.layout.Meaning;
import io.github.roundstar.ingest.layout.RunMarks;
import io.github.roundstar.ingest.layout.Setting;
import io.github.roundstar.ingest.layout.SettingRule;
import io.github.roundstar.ingest.layout.TextShape;
import io.github.roundstar.ingest.layout.TimeForm;
import io.github.roundstar.ingest.layout.evidence.Codes;
import io.github.roundstar.ingest.layout.evidence.Column;
import io.github.roundstar.ingest.layout.evidence.Columns;
import io.github.roundstar.ingest.layout.evidence.LogSentences;
import io.github.roundstar.ingest.layout.evidence.MissingValues;
import io.github.roundstar.ingest.layout.evidence.Places;
import io.github.roundstar.ingest.layout.evidence.RowTimes;
import io.github.roundstar.ingest.layout.text.LinePairs;
import io.github.roundstar.ingest.layout.text.LogSample;
import io.github.roundstar.ingest.layout.text.Numbers;
import io.github.roundstar.ingest.layout.text.OtherTables;
import io.github.roundstar.ingest.layout.text.RowShape;
import io.github.roundstar.ingest.layout.text.RunLines;
import io.github.roundstar.ingest.layout.text.TableHead;
import io.github.roundstar.ingest.layout.text.Words;
import io.github.roundstar.model.PierSide;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.IntStream;

/**
 * Works out from a log's text alone how it is laid out. Each decision carries its evidence; what
 * cannot be known is asked, never guessed.
 */
public final class LayoutInference {
  private static final int PREVIEW_ROWS = 5;

  /** A choice of columns that has less evidence than this is none. */
  private static final double LEAST_EVIDENCE = 3;

  private final LogSample sample;
  private final Optional<LinePattern> joins;
  private final List<String> lines;
  private final RowShape shape;
  private final TableHead head;
  private final Set<Integer> rowLike;
  private final List<RunMarks.Block> leftOut;
  private final List<Decision> decisions = new ArrayList<>();

  private LayoutInference(
      LogSample sample, Optional<LinePattern> joins, List<String> whole, RowShape all) {
    this.sample = sample;
    this.joins = joins;
    OtherTables others = new OtherTables(whole, all, decisions);
    this.leftOut = others.blocks();
    this.lines = others.linesLeft();
    RowShape left = leftOut.isEmpty() ? all : RowShape.of(lines).orElse(all);
    this.head = TableHead.of(lines, left);
    this.rowLike = new HashSet<>(left.rows());
    IntStream.range(0, lines.size())
        .filter(i -> left.hasItsKeys(lines.get(i)))
        .forEach(rowLike::add);
    this.shape = left.withRows(head.rowsInOrder(lines, left)).marked(lines);
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
    List<String> lines = sample.lines();
    Optional<LinePattern> joins =
        shape.get().delimiter() == Delimiter.JSON ? Optional.empty() : LinePairs.of(lines);
    Set<Delimiter> ways = new LinkedHashSet<>(List.of(shape.get().delimiter()));
    if (shape.get().delimiter() == Delimiter.COMMA) {
      ways.add(Delimiter.COMMA_BLANK);
    }
    ways.add(Delimiter.KEY_VALUE);
    for (Delimiter way : joins.isPresent() ? ways : Set.<Delimiter>of()) {
      List<String> joined = LinePairs.joined(lines, joins.get(), way.joint());
      Optional<RowShape> whole = RowShape.of(joined).filter(s -> reads(s, way));
      if (whole.filter(s -> s.delimiter().isKeyed() || s.size() > shape.get().size()).isPresent()) {
        return new LayoutInference(sample, joins, joined, whole.get()).infer();
      }
    }
    LayoutInference single = new LayoutInference(sample, Optional.empty(), lines, shape.get());
    joins.ifPresent(single::askForPairs);
    return single.infer();
  }

  /** Whether lines joined in one way are parted again. */
  private static boolean reads(RowShape shape, Delimiter way) {
    return shape.delimiter().joint().equals(way.joint())
        || way == Delimiter.COMMA_BLANK && shape.delimiter() == Delimiter.COMMA;
  }

  private void askForPairs(LinePattern second) {
    decisions.add(
        Decision.open(
            "lines of a frame",
            "two kinds of lines take turns, and only one of them could be parted into fields",
            "[text]\njoins = '"
                + second.expression()
                + "'   # lines that continue the one before"));
  }

  /**
   * A layout file to be completed by hand, for a log of which no layout can be worked out: every
   * column with its first values, as far as the lines can be parted into fields.
   */
  public static String sketch(Path log) throws IOException, FormatException {
    LogSample sample = LogSample.read(log);
    Optional<RowShape> shape = RowShape.of(sample.lines());
    StringBuilder text = new StringBuilder();
    text.append("# Say what each column means: at least time and the two offsets; see\n");
    text.append("# sample-logs/layouts/README.md. Then remove the next line.\n");
    text.append(LayoutText.UNANSWERED).append(" = \"which columns tell time and offsets\"\n\n");
    text.append("[text]\n");
    text.append("encoding = \"").append(LayoutFile.encodingWord(sample.encoding())).append("\"\n");
    if (shape.isEmpty()) {
      return text.append("delimiter = \"comma\"\n\n[time]\nform = \"date-time\"\n").toString();
    }
    TableHead head = TableHead.of(sample.lines(), shape.get());
    text.append(LayoutText.shape(shape.get().delimiter(), shape.get().widths(), head.names()));
    text.append("decimal = \"").append(shape.get().decimalComma() ? "comma" : "point");
    text.append("\"\n\n[time]\nform = \"date-time\"   # or elapsed-s, clock, unix-s, jd ...\n");
    for (Column column : Columns.of(head, sample.lines(), shape.get())) {
      text.append("\n# ").append(column.sample().replaceAll("\\p{Cntrl}", " "));
      text.append(LayoutText.column(column.rule(Meaning.NOTHING))).append('\n');
    }
    return text.toString();
  }

  private Inference infer() throws FormatException {
    decisions.add(
        Decision.certain(
                "delimiter",
                shape.delimiter().word(),
                shape.rows().size() + " lines have " + shape.size() + " fields each")
            .before(shape.runnerUp()));
    head.reordered(lines, shape).ifPresent(line -> askForParts("order of columns", line));
    head.otherUnits(lines, shape).ifPresent(line -> askForParts("units of columns", line));
    noteLeftOut();
    List<Column> columns = Columns.of(head, lines, shape);
    boolean eastIsO = Codes.eastIsO(columns, head.others());
    LogSentences text = new LogSentences(head.header(), columns, eastIsO);
    columns.forEach(column -> column.fold(text));
    TimeGuess times = new TimeGuess(columns, head.others(), decisions);
    Map<Meaning, Column> found = new EnumMap<>(times.columns());
    requireTime(found);
    TimeForm time = times.form();
    List<SettingRule> settings =
        new SettingLines(shape.decimalComma(), eastIsO, decisions).rules(head.others(), time);
    askForUtcOffset(time, settings);
    Map<Column, Set<String>> missing = MissingValues.find(columns, text, decisions);
    List<Column> free = columns.stream().filter(c -> !found.containsValue(c)).toList();
    List<Optional<PierSide>> sides = sides(settings);
    Places.find(free, text);
    ColumnChoice choices = new ColumnChoice(free, text, sides);
    List<ColumnChoice.Choice> all = choices.best();
    requireOffsets(all);
    ColumnChoice.Choice choice = all.get(0);
    ChosenColumns chosen = new ChosenColumns(choices, all, decisions);
    chosen.explain();
    chosen.take(settings, found);
    chosen.askForDirections(free);
    ShownRows shown = new ShownRows(choice, found.get(Meaning.TIME));
    new SideColumns(free, text, shown, found, decisions).find();
    List<EventRule> events =
        new ArrayList<>(
            EventLines.lineRules(
                head.withoutNames(lines, shape), shape.rows(), rowLike, shown, decisions));
    if (found.containsKey(Meaning.EVENT)) {
      events.addAll(EventColumns.rules(found.get(Meaning.EVENT), text, shown, decisions));
    }
    Set<String> zeros =
        MissingValues.zeros(
            choice.offsets()[0],
            choice.offsets()[1],
            EventColumns.lost(found, events),
            Optional.ofNullable(found.getOrDefault(Meaning.SNR, found.get(Meaning.FLUX))),
            decisions);
    for (Column column : choice.offsets()) {
      Set<String> values = new LinkedHashSet<>(missing.getOrDefault(column, Set.of()));
      values.addAll(zeros);
      missing.put(column, values);
    }
    PulseSeries series = new PulseSeries(choice, sides, text);
    PulseSigns signs = new PulseSigns(series, decisions);
    signs.find();
    choices.scale(choice).filter(any -> !SettingLines.scaleTold(settings)).ifPresent(settings::add);
    ColumnUnits units = new ColumnUnits(numeric(found), text, settings, decisions);
    List<ColumnRule> rules = new ArrayList<>();
    found.forEach(
        (meaning, column) ->
            rules.add(
                chosen.rule(
                    meaning, column, units, signs, missing.getOrDefault(column, Set.of()))));
    Layout layout =
        new Layout(
            "inferred",
            new TextShape(
                sample.encoding(),
                shape.delimiter(),
                shape.widths(),
                shape.decimalComma(),
                head.remark(),
                head.names(),
                shape.marked(),
                shape.lead(),
                joins),
            runs(time, found.get(Meaning.TIME)).without(leftOut),
            time,
            signs.inNextRow(),
            sided(signs, settings),
            rules,
            settings,
            events);
    List<String> samples = columns.stream().map(Column::sample).toList();
    return new Inference(layout, decisions, firstRows(), samples);
  }

  /** Lines among the rows with as many fields and some numbers, such as totals, are told. */
  private void noteLeftOut() {
    List<String> out =
        IntStream.range(shape.rows().get(0), lines.size())
            .filter(i -> !rowLike.contains(i))
            .mapToObj(lines::get)
            .filter(line -> line.length() <= LinePattern.LONGEST_LINE && isNearlyRow(line))
            .toList();
    if (!out.isEmpty()) {
      decisions.add(
          Decision.noted(
              "lines left out",
              String.valueOf(out.size()),
              "they have as many fields as a row, but hold something else, such as "
                  + out.get(0).strip(),
              ""));
    }
  }

  private boolean isNearlyRow(String line) {
    boolean parted =
        !shape.delimiter().isKeyed()
            && shape.delimiter() != Delimiter.BLANKS
            && shape.widths().isEmpty();
    List<String> cells = parted ? shape.cells(line) : List.of();
    return cells.size() == shape.size()
        && cells.stream().filter(cell -> Numbers.of(cell, shape.decimalComma()).isPresent()).count()
            >= 2;
  }

  private void askForParts(String about, int line) {
    decisions.add(
        Decision.open(
            about,
            "line " + (line + 1) + " gives them otherwise than line " + (head.nameLine() + 1),
            "# cut the log before that line, and give each part its layout"));
  }

  /**
   * Runs by the lines that tell them, else by those that stand where the clock leaps; elapsed times
   * that begin anew begin a run, where no line does.
   */
  private RunMarks runs(TimeForm time, Column column) {
    RunMarks marks = head.runs();
    RowTimes times = new RowTimes(column);
    boolean told = marks.begins().isPresent() || marks.ends().isPresent();
    if (!told || RunLines.cutsSeamless(marks, head.names(), lines, shape.rows(), times::isLate)) {
      marks = RunLines.atLeaps(head.withoutNames(lines, shape), shape.rows(), times::leapsBefore);
    }
    return time.kind().isElapsed() && marks.begins().isEmpty()
        ? new RunMarks(marks.begins(), marks.ends(), true, marks.leftOut())
        : marks;
  }

  private static Map<Meaning, Column> numeric(Map<Meaning, Column> found) {
    Map<Meaning, Column> numeric = new EnumMap<>(found);
    numeric.keySet().removeIf(meaning -> meaning.units().isEmpty());
    return numeric;
  }

  /** Where the hour angle follows from the clock, the clock's offset matters. */
  private void askForUtcOffset(TimeForm time, List<SettingRule> settings) {
    boolean follows =
        SettingLines.told(settings, Setting.RIGHT_ASCENSION)
            && SettingLines.told(settings, Setting.LONGITUDE)
            && !SettingLines.told(settings, Setting.HOUR_ANGLE);
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

  private void requireTime(Map<Meaning, Column> found) throws FormatException {
    if (!found.containsKey(Meaning.TIME)) {
      throw new FormatException(
          sample.file(),
          head.nameLine() + 1,
          "no column tells the time by its name and by rising steadily, of "
              + shape.rows().size()
              + " rows with "
              + shape.size()
              + " fields",
          "write a layout file with [[column]] means = \"time\", \"ra-offset\" and \"dec-offset\","
              + " see sample-logs/layouts");
    }
  }

  private void requireOffsets(List<ColumnChoice.Choice> all) throws FormatException {
    if (all.isEmpty() || all.get(0).total() < LEAST_EVIDENCE) {
      throw new FormatException(
          sample.file(),
          head.nameLine() + 1,
          "no pair of columns tells the offsets of the star: looked for two columns of numbers of"
              + " either sign, named as offsets in right ascension and declination or along x and"
              + " y, or followed by pulses",
          "write a layout file with [[column]] means = \"time\", \"ra-offset\" and \"dec-offset\","
              + " see sample-logs/layouts");
    }
  }

  /** Side of the pier of each row, as lines between the rows tell it. */
  private List<Optional<PierSide>> sides(List<SettingRule> settings) {
    List<LinePattern> patterns =
        settings.stream()
            .filter(rule -> rule.means() == Setting.PIER_SIDE)
            .flatMap(rule -> rule.line().stream())
            .toList();
    List<Optional<PierSide>> sides = new ArrayList<>();
    Optional<PierSide> side = Optional.empty();
    Set<Integer> rows = new HashSet<>(shape.rows());
    for (int i = 0; i < lines.size(); i++) {
      if (rows.contains(i)) {
        sides.add(side);
      } else {
        for (LinePattern pattern : patterns) {
          Optional<Direction> told =
              pattern
                  .find(lines.get(i))
                  .flatMap(m -> LinePattern.group(m, "value"))
                  .flatMap(text -> Words.direction(text));
          side =
              told.map(to -> to == Direction.EAST ? PierSide.EAST : PierSide.WEST)
                  .or(sideBefore(side));
        }
      }
    }
    return sides;
  }

  private static Supplier<Optional<PierSide>> sideBefore(Optional<PierSide> side) {
    return () -> side;
  }

  private List<List<String>> firstRows() {
    return shape.rows().stream().limit(PREVIEW_ROWS).map(i -> shape.cells(lines.get(i))).toList();
  }
}
