package io.github.roundstar.ingest.layout;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.regex.Pattern;

/** Finds which column means what, by its name, its unit and the look of its values. */
final class ColumnMeanings {
  private static final Pattern LETTERED =
      Pattern.compile("(?:[EWNSewns][a-z]* ?[0-9.,]+|[0-9.,]+ ?[EWNSewns])");
  private static final Set<String> LETTERS =
      Set.of("e", "w", "n", "s", "east", "west", "north", "south", "-");
  private static final double MOSTLY = 0.98;

  private final List<ColumnData> columns;
  private final List<Decision> decisions;
  private final Map<Meaning, ColumnData> found = new EnumMap<>(Meaning.class);

  ColumnMeanings(List<ColumnData> columns, List<Decision> decisions) {
    this.columns = columns;
    this.decisions = decisions;
  }

  /** The columns by meaning. */
  Map<Meaning, ColumnData> find() {
    findTime();
    List<ColumnData> nameless = new ArrayList<>();
    for (ColumnData column : columns) {
      if (!found.containsValue(column)) {
        Meaning meaning = meaning(column);
        if (meaning == Meaning.X_OFFSET && new NameWords(column.name).axis() == ' ') {
          nameless.add(column);
        } else if (meaning != Meaning.NOTHING) {
          take(meaning, column);
        }
      }
    }
    boolean none =
        !found.containsKey(Meaning.RA_OFFSET)
            && !found.containsKey(Meaning.DEC_OFFSET)
            && !found.containsKey(Meaning.X_OFFSET)
            && !found.containsKey(Meaning.Y_OFFSET);
    if (none && nameless.size() >= 2) {
      take(Meaning.X_OFFSET, nameless.get(0));
      take(Meaning.Y_OFFSET, nameless.get(1));
    }
    dropHalfPulses();
    return found;
  }

  private void take(Meaning meaning, ColumnData column) {
    ColumnData earlier = found.putIfAbsent(meaning, column);
    if (earlier != null) {
      decisions.add(
          Decision.open(
              meaning.word(),
              earlier.called() + " and " + column.called() + " may both mean it",
              LayoutText.column(rule(earlier, meaning)).strip()
                  + "\n# or\n"
                  + LayoutText.column(rule(column, meaning)).strip()));
    }
  }

  static ColumnRule rule(ColumnData column, Meaning meaning) {
    return new ColumnRule(
        column.name.isEmpty() ? Optional.empty() : Optional.of(column.name),
        column.name.isEmpty() ? OptionalInt.of(column.index + 1) : OptionalInt.empty(),
        meaning,
        Optional.empty(),
        Optional.empty(),
        false,
        List.of());
  }

  private void findTime() {
    for (ColumnData column : columns) {
      boolean date =
          column.cells.stream()
              .filter(cell -> !cell.isEmpty())
              .limit(20)
              .allMatch(ColumnMeanings::isDate);
      if (date && column.filled > 0 && !column.isNumeric() && !found.containsKey(Meaning.DATE)) {
        found.put(Meaning.DATE, column);
      } else if (isClock(column) && !found.containsKey(Meaning.TIME)) {
        found.put(Meaning.TIME, column);
      }
    }
    for (ColumnData column : columns) {
      boolean steady = column.isNumeric() && column.rising() >= MOSTLY && column.step() > 0;
      NameWords words = new NameWords(column.name);
      if (steady && (words.isTime() || column.name.isEmpty())) {
        found.putIfAbsent(Meaning.TIME, column);
      } else if (words.isTime() && !words.isRun() && column.isNumeric() && words.axis() == ' ') {
        decisions.add(
            Decision.open(
                column.called(),
                "its name speaks of time, but its values do not rise steadily",
                "[[column]]\nname = \"...\"   # the column that holds the time\nmeans = \"time\""));
      }
    }
  }

  private static boolean isDate(String cell) {
    ClockText dayFirst = ClockText.of(cell, TimeForm.DateOrder.DMY);
    ClockText monthFirst = ClockText.of(cell, TimeForm.DateOrder.MDY);
    return dayFirst.time().isEmpty() && dayFirst.date().or(monthFirst::date).isPresent();
  }

  static boolean isClock(ColumnData column) {
    return column.filled > 0
        && column.cells.stream()
            .filter(cell -> !cell.isEmpty())
            .limit(20)
            .allMatch(cell -> ClockText.of(cell, TimeForm.DateOrder.YMD).time().isPresent());
  }

  private Meaning meaning(ColumnData column) {
    NameWords words = new NameWords(column.name);
    Set<String> texts = column.words;
    boolean letters =
        !texts.isEmpty()
            && texts.stream().allMatch(t -> LETTERS.contains(t.toLowerCase(Locale.ROOT)));
    boolean sides = letters && texts.stream().anyMatch(t -> !t.equals("-"));
    if (sides && column.numeric == 0) {
      return has(texts, "e", "w") ? Meaning.RA_LETTER : Meaning.DEC_LETTER;
    }
    long lettered = texts.stream().filter(t -> LETTERED.matcher(t).matches()).count();
    if (lettered > 0 && lettered == texts.size()) {
      return has(texts, "e", "w") ? Meaning.RA_PULSE : Meaning.DEC_PULSE;
    }
    if (column.numeric == 0 || !column.isNumeric() && words.axis() == ' ') {
      boolean few = texts.size() <= 20 && !texts.isEmpty();
      return few && (words.isEvent() || column.name.isEmpty()) || few && known(texts)
          ? Meaning.EVENT
          : Meaning.NOTHING;
    }
    return numeric(column, words);
  }

  private static boolean known(Set<String> texts) {
    return texts.stream().anyMatch(text -> EventWords.of(text).isPresent());
  }

  private static boolean has(Set<String> texts, String... starts) {
    return texts.stream()
        .map(t -> t.toLowerCase(Locale.ROOT).replaceAll("[^a-z]", ""))
        .anyMatch(t -> !t.isEmpty() && List.of(starts).contains(t.substring(0, 1)));
  }

  private Meaning numeric(ColumnData column, NameWords words) {
    if (column.rising() >= MOSTLY && !words.isRun()) {
      return Meaning.NOTHING; // frames counted, or a second clock
    }
    char axis = words.axis();
    if (axis == ' ') {
      return withoutAxis(column, words);
    }
    boolean pulse = isPulse(column, words);
    boolean oneSided = column.share(v -> v >= 0) == 1;
    Optional<Direction> to = words.direction();
    if (words.isDither()) {
      return axis == 'r' ? Meaning.RA_DITHER : axis == 'd' ? Meaning.DEC_DITHER : Meaning.NOTHING;
    }
    if (pulse && oneSided && to.isPresent() && opposite(to.get())) {
      return switch (to.get()) {
        case EAST -> Meaning.EAST_PULSE;
        case WEST -> Meaning.WEST_PULSE;
        case NORTH -> Meaning.NORTH_PULSE;
        default -> Meaning.SOUTH_PULSE;
      };
    }
    return switch (axis) {
      case 'r' -> pulse ? Meaning.RA_PULSE : Meaning.RA_OFFSET;
      case 'd' -> pulse ? Meaning.DEC_PULSE : Meaning.DEC_OFFSET;
      case 'x' -> pulse ? Meaning.NOTHING : Meaning.X_OFFSET;
      default -> pulse ? Meaning.NOTHING : Meaning.Y_OFFSET;
    };
  }

  private Meaning withoutAxis(ColumnData column, NameWords words) {
    if (words.isSnr()) {
      return Meaning.SNR;
    }
    if (words.isFlux()) {
      return Meaning.FLUX;
    }
    if (words.isRun()) {
      return Meaning.RUN;
    }
    if (words.isEvent() && column.isWhole()) {
      return Meaning.EVENT;
    }
    boolean centred =
        column.name.isEmpty() && column.share(v -> v < 0) > 0.2 && column.share(v -> v > 0) > 0.2;
    return centred && !column.isWhole() ? Meaning.X_OFFSET : Meaning.NOTHING;
  }

  /** By its word, its unit, and else by its look: most frames need no pulse, or whole numbers. */
  private static boolean isPulse(ColumnData column, NameWords words) {
    if (words.isPulse() || column.unit.equals("ms") || column.unit.equals("s")) {
      return true;
    }
    if (words.isOffset() || !column.unit.isEmpty()) {
      return false;
    }
    return column.share(v -> v == 0) > 0.15
        || column.isWhole() && column.share(v -> Math.abs(v) >= 10) > 0.2;
  }

  private boolean opposite(Direction to) {
    Direction other =
        switch (to) {
          case EAST -> Direction.WEST;
          case WEST -> Direction.EAST;
          case NORTH -> Direction.SOUTH;
          default -> Direction.NORTH;
        };
    return columns.stream()
        .anyMatch(
            c ->
                new NameWords(c.name).direction().filter(other::equals).isPresent()
                    && isPulse(c, new NameWords(c.name)));
  }

  /** A letter without its length says nothing. */
  private void dropHalfPulses() {
    if (!found.containsKey(Meaning.RA_PULSE)) {
      found.remove(Meaning.RA_LETTER);
    }
    if (!found.containsKey(Meaning.DEC_PULSE)) {
      found.remove(Meaning.DEC_LETTER);
    }
  }
}
