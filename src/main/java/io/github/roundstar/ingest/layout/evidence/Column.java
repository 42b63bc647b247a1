package io.github.roundstar.ingest.layout.evidence;

import io.github.roundstar.ingest.layout.ColumnRule;
import io.github.roundstar.ingest.layout.Direction;
import io.github.roundstar.ingest.layout.Meaning;
import io.github.roundstar.ingest.layout.text.LetteredNumber;
import io.github.roundstar.ingest.layout.text.Look;
import io.github.roundstar.ingest.layout.text.Numbers;
import io.github.roundstar.ingest.layout.text.TableHead;
import io.github.roundstar.ingest.layout.text.Words;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.DoublePredicate;
import java.util.regex.Pattern;

/**
 * The fields of one column of a sample: what its name, its unit and the text say of it, and what
 * its values look like.
 */
public final class Column {
  private static final int MOST_WORDS = 40;

  /** A table has no more words for a value that is missing. */
  private static final int MOST_MISSING = 3;

  /** Capitals that stand for declination, where the article would be in small letters. */
  private static final Pattern DE = Pattern.compile("(?<![A-Z])DE(?![A-Z])");

  /** Its place from 1; among the fields without a key where rows tell keys. */
  public final int place;

  public final String name;
  final boolean byName;
  public final List<String> cells;

  /** The values, NaN where there is none; signed where letters in the fields tell directions. */
  public final double[] numbers;

  /** Texts that are no numbers. */
  public final Set<String> words = new TreeSet<>();

  final int filled;
  public final int numeric;

  /** Letters in front of or behind numbers, and how often. */
  final Map<String, Integer> letters = new LinkedHashMap<>();

  private final List<Words> said = new ArrayList<>();
  private final Words named;
  private static final String SENTENCE = "a sentence";
  private static final String TEXT = "the text";

  private String unit;
  private String unitFrom = "";
  private Optional<Direction> positive = Optional.empty();
  private String positiveFrom = "";

  Column(
      int place,
      String name,
      boolean byName,
      String unitBeside,
      List<String> cells,
      boolean decimalComma) {
    this.place = place;
    this.name = name;
    this.byName = byName;
    this.cells = cells;
    this.numbers = new double[cells.size()];
    int some = 0;
    int good = 0;
    Set<String> units = new HashSet<>();
    boolean compass = cells.stream().anyMatch(Column::endsAsNorth);
    for (int i = 0; i < numbers.length; i++) {
      String cell = cells.get(i);
      boolean south =
          compass && !cell.isEmpty() && "sSzZ".indexOf(cell.charAt(cell.length() - 1)) >= 0;
      numbers[i] = south ? Double.NaN : Numbers.of(cell, decimalComma).orElse(Double.NaN);
      if (Double.isNaN(numbers[i])) {
        boolean none = Numbers.isNoValue(cell);
        some += none ? 0 : 1;
        boolean lettered = !none && takeLettered(i, cell, decimalComma, units);
        good += lettered ? 1 : 0;
        if (!lettered && !cell.isEmpty() && words.size() < MOST_WORDS) {
          words.add(cell);
        }
      } else {
        some++;
        good++;
        if (units.size() < 2 && !Character.isDigit(cell.charAt(cell.length() - 1))) {
          Words.unit(cell.substring(Math.max(0, Numbers.unitAt(cell)))).ifPresent(units::add);
        }
      }
    }
    filled = some;
    numeric = good;
    this.unit = "";
    ColumnName parted = ColumnName.of(TableHead.withoutMark(name).strip());
    this.named = Words.of(parted.bare());
    if (!unitBeside.isEmpty()) {
      takeUnit(unitBeside, "the line of units");
    }
    parted.unit().ifPresent(found -> takeUnit(found, "its name"));
    if (units.size() == 1) {
      takeUnit(units.iterator().next(), "the fields");
    }
  }

  /** A number with an N behind it: in that column S is south, not seconds. */
  private static boolean endsAsNorth(String cell) {
    int last = cell.length() - 1;
    return last > 0
        && (cell.charAt(last) == 'N' || cell.charAt(last) == 'n')
        && (Character.isDigit(cell.charAt(last - 1)) || cell.charAt(last - 1) == ' ');
  }

  private Optional<Codes> codes = Optional.empty();

  /** Takes letters at the numbers for signs, where they can be told. */
  public void fold(LogSentences text) {
    codes = isLettered() ? Codes.of(letters.keySet(), text, true) : Optional.empty();
    if (codes.isPresent()) {
      Set<String> away = codes.get().away();
      for (int i = 0; i < numbers.length; i++) {
        if (away.contains(LetteredNumber.of(cells.get(i)).word())) {
          numbers[i] = -Math.abs(numbers[i]);
        }
      }
      changed();
    }
  }

  private Optional<Column> letterColumn = Optional.empty();

  /** The same column, its sizes signed by the codes in another. */
  public Column signedBy(Column letters, Codes meaning) {
    Column signed = new Column(this);
    signed.letterColumn = Optional.of(letters);
    signed.codes = Optional.of(meaning);
    for (int i = 0; i < numbers.length; i++) {
      signed.numbers[i] = meaning.away().contains(letters.cells.get(i)) ? -numbers[i] : numbers[i];
    }
    return signed;
  }

  private Column(Column other) {
    this.place = other.place;
    this.name = other.name;
    this.byName = other.byName;
    this.cells = other.cells;
    this.numbers = other.numbers.clone();
    this.words.addAll(other.words);
    this.filled = other.filled;
    this.numeric = other.numeric;
    this.said.addAll(other.said);
    this.named = other.named;
    this.unit = other.unit;
    this.unitFrom = other.unitFrom;
    this.positive = other.positive;
    this.positiveFrom = other.positiveFrom;
    this.axisOfPair = other.axisOfPair;
  }

  /** The column whose codes sign its sizes. */
  public Optional<Column> letterColumn() {
    return letterColumn;
  }

  private boolean tellsPlaces;
  private Optional<Column> setPoint = Optional.empty();

  /** Its numbers were places, and are offsets now, less those of another column if there is one. */
  void isPlaceLess(Optional<Column> set) {
    tellsPlaces = true;
    setPoint = set;
    changed();
  }

  /** Whether its fields tell places. */
  public boolean isPlace() {
    return tellsPlaces;
  }

  /** The column that tells the set point of its places. */
  public Optional<Column> setPoint() {
    return setPoint;
  }

  /** What the letters at its numbers stand for. */
  public Optional<Codes> codes() {
    return codes;
  }

  private boolean takeLettered(int i, String cell, boolean comma, Set<String> units) {
    if (Look.startsAsNumber(cell) && cell.indexOf(':') > 0) {
      return false; // a clock
    }
    LetteredNumber parts = LetteredNumber.of(cell);
    boolean digits = parts.word().chars().anyMatch(Character::isDigit);
    if (parts.number().isEmpty()
        || parts.word().isEmpty()
        || parts.word().length() > 12
        || digits) {
      return false;
    }
    double value = Numbers.of(parts.number(), comma).orElse(Double.NaN);
    if (Double.isNaN(value)) {
      return false;
    }
    if (letters.size() < MOST_WORDS) {
      letters.merge(parts.word(), 1, Integer::sum);
    }
    Numbers.unit(parts.number()).ifPresent(units::add);
    numbers[i] = value;
    return true;
  }

  private void takeUnit(String found, String from) {
    if (unit.isEmpty()) {
      unit = found;
      unitFrom = from;
    }
  }

  /** A unit that a sentence tells; one nearer to the column stands. */
  public void unitTold(String found) {
    takeUnit(found, SENTENCE);
  }

  /** The unit stands at the column, not only in a text that may speak of something else. */
  public boolean hasUnitOfItsOwn() {
    return !unit.isEmpty() && !unitFrom.equals(SENTENCE) && !unitFrom.equals(TEXT);
  }

  public String unit() {
    return unit;
  }

  public String unitFrom() {
    return unitFrom;
  }

  /** The word behind a field may be its unit. */
  void unitBehind(String word) {
    Words.unit(word).ifPresent(found -> takeUnit(found, "the word behind it"));
  }

  /** Further words that speak of it: a legend, or the word in front of it. */
  void describe(String text) {
    said.add(Words.of(text));
    if (unit.isEmpty()) {
      ColumnName.of(text.strip()).unit().ifPresent(found -> takeUnit(found, TEXT));
    }
  }

  /** Where a positive value points, as a sentence tells it. */
  void positiveTold(Direction to, String from) {
    if (positive.isEmpty()) {
      positive = Optional.of(to);
      positiveFrom = from;
    }
  }

  private final Set<String> elsewhere = new TreeSet<>();

  /** A value in a row that is not looked at further. */
  void holdsElsewhere(String cell) {
    if (numeric == 0 && !cell.isEmpty() && elsewhere.size() <= MOST_WORDS) {
      elsewhere.add(cell);
      words.add(cell);
    } else if (numeric > 0 && words.size() < MOST_MISSING && isBareWord(cell)) {
      words.add(cell); // a star that was not measured
    }
  }

  private static boolean isBareWord(String cell) {
    return !cell.isEmpty()
        && cell.length() <= 12
        && !Numbers.isNoValue(cell)
        && cell.chars().noneMatch(Character::isDigit);
  }

  /** Words that stand only in rows that are not looked at further. */
  public Set<String> elsewhere() {
    return elsewhere;
  }

  private boolean codesTold;

  /** A line with its name explains its values one by one. */
  void codesTold() {
    codesTold = true;
  }

  public boolean hasCodesTold() {
    return codesTold;
  }

  String positiveFrom() {
    return positiveFrom;
  }

  public boolean has(String concept) {
    return named.has(concept) || said.stream().anyMatch(words -> words.has(concept));
  }

  public boolean nameHas(String concept) {
    return named.has(concept);
  }

  public boolean hasAny(String... concepts) {
    return Arrays.stream(concepts).anyMatch(this::has);
  }

  public Words named() {
    return named;
  }

  public boolean isNameless() {
    return named.isEmpty() && said.isEmpty();
  }

  /** The direction of positive values: as a sentence tells, else as the name does. */
  public Optional<Direction> direction(boolean eastIsO) {
    Optional<Direction> lettered =
        codes
            .filter(Codes::known)
            .map(known -> known.axis() == 'd' ? Direction.NORTH : Direction.EAST);
    return lettered.or(() -> positive).or(() -> nameDirection(eastIsO));
  }

  /** The direction that the name, or else the text, points to. */
  Optional<Direction> nameDirection(boolean eastIsO) {
    Optional<Direction> own = named.direction(eastIsO);
    return own.isPresent() || !named.isEmpty() && named.hasAny("ra", "dec", "x", "y")
        ? own
        : said.stream().flatMap(words -> words.direction(eastIsO).stream()).findFirst();
  }

  /** 'r' for right ascension, 'd' for declination, 'x', 'y', or ' ' for none. */
  public char axis(boolean eastIsO) {
    char own = named.axis(eastIsO);
    own = own == ' ' && DE.matcher(name).find() ? 'd' : own;
    own = own == ' ' ? axisOfPair : own;
    boolean camera = own == 'x' || own == 'y';
    own = camera ? codes.filter(Codes::known).map(Codes::axis).orElse(own) : own; // E is no x
    own = own == ' ' ? codes.map(Codes::axis).orElse(' ') : own;
    for (int i = 0; i < said.size() && own == ' '; i++) {
      own = said.get(i).axis(eastIsO);
    }
    return own;
  }

  private char axisOfPair = ' ';

  /** Takes an axis that the numbers tell. */
  void takeAxis(char axis) {
    axisOfPair = axis;
  }

  /** Takes the axis from a column whose name differs in nothing but the word for its own axis. */
  void pairWith(List<Column> others) {
    List<String> own = named.tokens();
    for (Column other : others) {
      List<String> theirs = other.named.tokens();
      int differing = 0;
      boolean sky = true;
      char pair = ' ';
      for (int i = 0; own.size() > 1 && theirs.size() == own.size() && i < own.size(); i++) {
        if (!own.get(i).equals(theirs.get(i))) {
          Words word = Words.of(theirs.get(i));
          pair = word.has("ra") ? 'd' : word.has("dec") ? 'r' : ' ';
          sky &= !Words.of(own.get(i)).hasAny("ra", "dec", "x", "y", "other", "statistic");
          differing++;
        }
      }
      if (differing == 1 && sky && pair != ' ') {
        axisOfPair = pair;
      }
    }
  }

  /** Whether it holds numbers, but for some words that stand for a missing value. */
  public boolean isNumeric() {
    return numeric > 0
        && numeric * 2 >= filled
        && (words.size() <= 3 || numeric * 10 >= filled * 9);
  }

  /** Whether most of its numbers carry a letter, or all but zeros do. */
  public boolean isLettered() {
    int lettered = letters.values().stream().mapToInt(Integer::intValue).sum();
    return lettered > 0 && letters.size() <= 6 && lettered * 2 > nonZero();
  }

  private int nonZero() {
    int count = 0;
    for (double value : numbers) {
      count += value != 0 && !Double.isNaN(value) ? 1 : 0;
    }
    return count;
  }

  private double[] finite;
  private NumberLooks looks;

  private NumberLooks looks() {
    if (looks == null) {
      looks = NumberLooks.of(finite());
    }
    return looks;
  }

  /** The numbers were changed. */
  void changed() {
    finite = null;
    looks = null;
  }

  public double[] finite() {
    if (finite == null) {
      finite = Arrays.stream(numbers).filter(Double::isFinite).toArray();
    }
    return finite;
  }

  public double share(DoublePredicate test) {
    double[] values = finite();
    int count = 0;
    for (double value : values) {
      count += test.test(value) ? 1 : 0;
    }
    return values.length == 0 ? 0 : count / (double) values.length;
  }

  public boolean isWhole() {
    return looks().whole();
  }

  public boolean isOneSided() {
    return share(v -> v >= 0) == 1 || share(v -> v <= 0) == 1;
  }

  public boolean isConstant() {
    double[] values = finite();
    return values.length > 0 && share(v -> v == values[0]) == 1;
  }

  /** Whether each number is one more than the number before. */
  public boolean isCounter() {
    double[] values = finite();
    int ones = 0;
    for (int i = 1; i < values.length; i++) {
      ones += values[i] == values[i - 1] + 1 ? 1 : 0;
    }
    return ones >= 0.99 * (values.length - 1);
  }

  public double largest() {
    return looks().largest();
  }

  public double median() {
    return looks().median();
  }

  /** Median distance from the median, as a standard deviation. */
  public double scatter() {
    return looks().scatter();
  }

  /** Median step from value to value. */
  public double step() {
    return looks().step();
  }

  /** Share of steps that go up. */
  public double rising() {
    return looks().rising();
  }

  /** The word that stands in all of its fields; empty if there is none. */
  public String onlyWord() {
    boolean one = words.size() == 1 && numeric == 0;
    return one && cells.stream().allMatch(cell -> cell.equals(cells.get(0))) ? cells.get(0) : "";
  }

  /** The word that stands in all fields that are not empty; empty if there is none. */
  String unitWord() {
    return words.size() == 1 && numeric == 0 ? words.iterator().next() : "";
  }

  /** What it is called, and its first values. */
  public String sample() {
    return called() + ": " + String.join(" | ", cells.subList(0, Math.min(5, cells.size())));
  }

  public String called() {
    return name.isEmpty() ? "column " + place : "column " + name;
  }

  /** The rule that finds it again. */
  public ColumnRule rule(Meaning meaning) {
    return new ColumnRule(
        byName ? Optional.of(name) : Optional.empty(),
        byName ? OptionalInt.empty() : OptionalInt.of(place),
        meaning,
        Optional.empty(),
        Optional.empty(),
        false,
        List.of());
  }
}
