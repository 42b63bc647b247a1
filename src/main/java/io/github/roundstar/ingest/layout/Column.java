package io.github.roundstar.ingest.layout;

import io.github.roundstar.signal.Quantile;
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
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The fields of one column of a sample: what its name, its unit and the text say of it, and what
 * its values look like.
 */
final class Column {
  private static final int MOST_WORDS = 40;
  private static final Pattern UNIT_BEHIND =
      Pattern.compile(
          "(?:[\\[({/_,.: -]|\\bin )\\s*([^\\[\\](){}/_,: ]+(?: [^\\[\\](){}/_,: ]+){0,2})\\s*[\\])}]?$");

  /** Capitals that stand for declination, where the article would be in small letters. */
  private static final Pattern DE = Pattern.compile("(?<![A-Z])DE(?![A-Z])");

  /** Its place from 1; among the fields without a key where rows tell keys. */
  final int place;

  final String name;
  final boolean byName;
  final List<String> cells;

  /** The values, NaN where there is none; signed where letters in the fields tell directions. */
  final double[] numbers;

  /** Texts that are no numbers. */
  final Set<String> words = new TreeSet<>();

  final int filled;
  final int numeric;

  /** Letters in front of or behind numbers, and how often. */
  final Map<String, Integer> letters = new LinkedHashMap<>();

  private final List<Words> said = new ArrayList<>();
  private final Words named;
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
        if (!none) {
          good += takeLettered(i, cell, decimalComma, units) ? 1 : 0;
        }
        if (!cell.isEmpty() && words.size() < MOST_WORDS) {
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
    String bare = TableHead.withoutMark(name).strip();
    Optional<String> inName = unitOf(bare);
    this.named =
        Words.of(
            inName.isPresent() && unitLength > 0 && unitLength < bare.length()
                ? bare.substring(0, bare.length() - unitLength)
                : bare);
    if (!unitBeside.isEmpty()) {
      takeUnit(unitBeside, "the line of units");
    }
    inName.ifPresent(found -> takeUnit(found, "its name"));
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
  void fold(LogSentences text) {
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
  Column signedBy(Column letters, Codes meaning) {
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
  Optional<Column> letterColumn() {
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
  boolean isPlace() {
    return tellsPlaces;
  }

  /** The column that tells the set point of its places. */
  Optional<Column> setPoint() {
    return setPoint;
  }

  /** What the letters at its numbers stand for. */
  Optional<Codes> codes() {
    return codes;
  }

  private int unitLength;

  /** The unit at the end of a name. */
  private Optional<String> unitOf(String bare) {
    Matcher behind = UNIT_BEHIND.matcher(bare);
    for (int from = 0;
        behind.find(from) && behind.start() < bare.length();
        from = behind.start() + 1) {
      Optional<String> found = Words.unit(behind.group(1));
      if (found.isPresent()) {
        unitLength = bare.length() - behind.start();
        return found;
      }
    }
    List<String> tokens = Words.tokens(bare);
    for (int count = Math.min(3, tokens.size() - 1); count > 0; count--) {
      String last = String.join(" ", tokens.subList(tokens.size() - count, tokens.size()));
      Optional<String> found = last.length() > 1 ? Words.unit(last) : Optional.empty();
      if (found.isPresent()) {
        return found;
      }
    }
    if (bare.matches(".*[a-z]S")) {
      unitLength = 1;
      return Optional.of("s"); // a capital behind small letters begins a word
    }
    unitLength = bare.length();
    Optional<String> whole = Words.unit(bare).filter(u -> bare.length() > 1);
    if (whole.isPresent()) {
      return whole;
    }
    unitLength = 0;
    return Words.gluedUnit(bare.replaceFirst("^.*[^\\p{L}]", ""));
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
  void unitTold(String found) {
    takeUnit(found, "a sentence");
  }

  String unit() {
    return unit;
  }

  String unitFrom() {
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
      unitOf(text.strip()).ifPresent(found -> takeUnit(found, "the text"));
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
    }
  }

  /** Words that stand only in rows that are not looked at further. */
  Set<String> elsewhere() {
    return elsewhere;
  }

  private boolean codesTold;

  /** A line with its name explains its values one by one. */
  void codesTold() {
    codesTold = true;
  }

  boolean hasCodesTold() {
    return codesTold;
  }

  String positiveFrom() {
    return positiveFrom;
  }

  boolean has(String concept) {
    return named.has(concept) || said.stream().anyMatch(words -> words.has(concept));
  }

  boolean nameHas(String concept) {
    return named.has(concept);
  }

  boolean hasAny(String... concepts) {
    return Arrays.stream(concepts).anyMatch(this::has);
  }

  Words named() {
    return named;
  }

  boolean isNameless() {
    return named.isEmpty() && said.isEmpty();
  }

  /** The direction of positive values: as a sentence tells, else as the name does. */
  Optional<Direction> direction(boolean eastIsO) {
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
  char axis(boolean eastIsO) {
    char own = axis(named, eastIsO);
    own = own == ' ' && DE.matcher(name).find() ? 'd' : own;
    own = own == ' ' ? axisOfPair : own;
    boolean camera = own == 'x' || own == 'y';
    own = camera ? codes.filter(Codes::known).map(Codes::axis).orElse(own) : own; // E is no x
    own = own == ' ' ? codes.map(Codes::axis).orElse(' ') : own;
    for (int i = 0; i < said.size() && own == ' '; i++) {
      own = axis(said.get(i), eastIsO);
    }
    return own;
  }

  private char axisOfPair = ' ';

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

  private static char axis(Words words, boolean eastIsO) {
    boolean ra = words.has("ra");
    boolean dec = words.has("dec");
    if (ra != dec) {
      return ra ? 'r' : 'd';
    }
    if (words.has("x") != words.has("y") && !words.hasAny("statistic other")) {
      return words.has("x") ? 'x' : 'y';
    }
    Optional<Direction> to = words.direction(eastIsO);
    if (to.isPresent()) {
      return to.get() == Direction.EAST || to.get() == Direction.WEST ? 'r' : 'd';
    }
    boolean eastWest = words.has("east") && words.has("west");
    boolean northSouth = words.has("north") && words.has("south");
    return eastWest ? 'r' : northSouth ? 'd' : ' ';
  }

  /** Whether it holds numbers, but for some words that stand for a missing value. */
  boolean isNumeric() {
    return numeric > 0
        && numeric * 2 >= filled
        && (words.size() - letters.size() <= 3 || numeric * 10 >= filled * 9);
  }

  /** Whether most of its numbers carry a letter, or all but zeros do. */
  boolean isLettered() {
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

  /** Values looked at for what takes them all, such as a median. */
  private static final int LOOKED_AT = 4000;

  private double[] finite;
  private Looks looks;

  /** What its values look like, worked out once. */
  private record Looks(
      double median, double scatter, double step, double rising, double largest, boolean whole) {
    static Looks of(double[] all) {
      double[] values = all.length <= LOOKED_AT ? all : thinned(all);
      double median = values.length == 0 ? Double.NaN : Quantile.median(values);
      double[] away = Arrays.stream(values).map(v -> Math.abs(v - median)).toArray();
      double[] steps = new double[Math.max(0, Math.min(LOOKED_AT, all.length) - 1)];
      int up = 0;
      double largest = 0;
      boolean whole = all.length > 0;
      for (int i = 0; i < all.length; i++) {
        if (i > 0 && i <= steps.length) {
          steps[i - 1] = all[i] - all[i - 1];
        }
        up += i > 0 && all[i] > all[i - 1] ? 1 : 0;
        largest = Math.max(largest, Math.abs(all[i]));
        whole &= all[i] == Math.rint(all[i]);
      }
      return new Looks(
          median,
          away.length == 0 ? Double.NaN : 1.4826 * Quantile.median(away),
          steps.length == 0 ? Double.NaN : Quantile.median(steps),
          all.length < 2 ? 0 : up / (all.length - 1.0),
          largest,
          whole);
    }

    private static double[] thinned(double[] all) {
      double[] some = new double[LOOKED_AT];
      for (int i = 0; i < LOOKED_AT; i++) {
        some[i] = all[(int) ((long) i * all.length / LOOKED_AT)];
      }
      return some;
    }
  }

  private Looks looks() {
    if (looks == null) {
      looks = Looks.of(finite());
    }
    return looks;
  }

  /** The numbers were changed. */
  void changed() {
    finite = null;
    looks = null;
  }

  double[] finite() {
    if (finite == null) {
      finite = Arrays.stream(numbers).filter(Double::isFinite).toArray();
    }
    return finite;
  }

  double share(DoublePredicate test) {
    double[] values = finite();
    int count = 0;
    for (double value : values) {
      count += test.test(value) ? 1 : 0;
    }
    return values.length == 0 ? 0 : count / (double) values.length;
  }

  boolean isWhole() {
    return looks().whole;
  }

  boolean isOneSided() {
    return share(v -> v >= 0) == 1 || share(v -> v <= 0) == 1;
  }

  boolean isConstant() {
    double[] values = finite();
    return values.length > 0 && share(v -> v == values[0]) == 1;
  }

  private double secondsStep = Double.NaN;

  /** The time of a row, in whatever unit, of a column that tells times. */
  double seconds(int row) {
    if (numeric > 0 && isNumeric()) {
      return numbers[row];
    }
    ClockText read = ClockText.of(cells.get(row), TimeForm.DateOrder.DMY);
    return read.time().map(t -> (double) t.toSecondOfDay()).orElse(Double.NaN);
  }

  /** The usual step from row to row of {@link #seconds}. */
  double secondsStep() {
    if (Double.isNaN(secondsStep)) {
      int count = Math.min(200, cells.size() - 1);
      double[] steps = new double[Math.max(1, count)];
      for (int i = 0; i < count; i++) {
        steps[i] = seconds(i + 1) - seconds(i);
      }
      double[] forward = Arrays.stream(steps).filter(s -> s > 0).toArray();
      secondsStep = forward.length == 0 ? 1 : Quantile.median(forward);
    }
    return secondsStep;
  }

  /** Whether each number is one more than the number before. */
  boolean isCounter() {
    double[] values = finite();
    int ones = 0;
    for (int i = 1; i < values.length; i++) {
      ones += values[i] == values[i - 1] + 1 ? 1 : 0;
    }
    return ones >= 0.99 * (values.length - 1);
  }

  double largest() {
    return looks().largest;
  }

  double median() {
    return looks().median;
  }

  /** Median distance from the median, as a standard deviation. */
  double scatter() {
    return looks().scatter;
  }

  /** Median step from value to value. */
  double step() {
    return looks().step;
  }

  /** Share of steps that go up. */
  double rising() {
    return looks().rising;
  }

  /** The word that stands in all of its fields; empty if there is none. */
  String onlyWord() {
    boolean one = words.size() == 1 && numeric == 0;
    return one && cells.stream().allMatch(cell -> cell.equals(cells.get(0))) ? cells.get(0) : "";
  }

  /** The word that stands in all fields that are not empty; empty if there is none. */
  String unitWord() {
    return words.size() == 1 && numeric == 0 ? words.iterator().next() : "";
  }

  /** What it is called, and its first values. */
  String sample() {
    return called() + ": " + String.join(" | ", cells.subList(0, Math.min(5, cells.size())));
  }

  String called() {
    return name.isEmpty() ? "column " + place : "column " + name;
  }

  /** The rule that finds it again. */
  ColumnRule rule(Meaning meaning) {
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
