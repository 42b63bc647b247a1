package io.github.roundstar.ingest.layout.choice;

import io.github.roundstar.ingest.layout.Setting;
import io.github.roundstar.ingest.layout.SettingRule;
import io.github.roundstar.ingest.layout.evidence.Codes;
import io.github.roundstar.ingest.layout.evidence.Column;
import io.github.roundstar.ingest.layout.evidence.LogSentences;
import io.github.roundstar.ingest.layout.evidence.PulseColumns;
import io.github.roundstar.ingest.layout.evidence.Relation;
import io.github.roundstar.model.PierSide;
import io.github.roundstar.signal.Quantile;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Chooses, jointly, the columns of the offsets and of the pulses that answer them. Each piece of
 * evidence - a name, a unit, the look of the values, a relation in the data - adds to a total, none
 * decides alone, and the best total wins; what comes close and gives other figures is a rival.
 */
final class ColumnChoice {
  /** Rivals as near as this, in the units of the evidence below, are asked about. */
  private static final double CLEAR_MARGIN = 1.5;

  private static final double NAMED_AXIS = 4;
  private static final double OTHER_AXIS = -8;
  private static final double KIND = 2.5;
  private static final double OTHER_KIND = -5;
  private static final double UNIT = 2;
  private static final double LOOK = 1;

  /** What a pulse that follows its offset exactly is worth. */
  private static final double RELATION = 6;

  /** Rounding leaves as much of a pulse unexplained. */
  private static final double LEAST_LEFT = 0.01;

  private static final int MOST_CANDIDATES = 8;
  private static final int FEWEST_PULSES = 8;

  /** Columns that are multiples of each other are copies. */
  private static final double COPY = 0.9995;

  private static final Set<String> DISTANCES = Set.of("px", "arcsec", "mas", "arcmin");

  /** Explained share of what nothing but a pulse can follow. */
  private static final double FOLLOWS = 0.9;

  private final List<Column> columns;
  private final LogSentences text;
  private final List<Optional<PierSide>> sides;
  private final List<Optional<PierSide>> distinctSides;
  private final List<PulseColumns> pulses;
  private final Map<String, Double> relations = new HashMap<>();
  private final Map<Column, Map<Character, Double>> offsetWorths = new IdentityHashMap<>();
  private final Map<PulseColumns, Map<Character, Double>> pulseWorths = new IdentityHashMap<>();

  /**
   * What was chosen.
   *
   * @param offsets of right ascension and declination, or along the camera's axes
   * @param camera whether they lie along the camera's axes
   * @param pulses of right ascension and declination; empty where the log has none
   * @param lag 0 where a row's pulse answers its own offset, 1 where that of the row before
   * @param total the sum of the evidence
   */
  record Choice(Column[] offsets, boolean camera, PulseColumns[] pulses, int lag, double total) {
    boolean hasPulses() {
      return pulses.length == 2;
    }
  }

  ColumnChoice(List<Column> columns, LogSentences text, List<Optional<PierSide>> sides) {
    this.columns = new ArrayList<>(columns);
    this.columns.addAll(signedByOthers(columns, text));
    this.text = text;
    this.sides = sides;
    this.distinctSides = sides.stream().distinct().toList();
    this.pulses = PulseColumns.among(columns, text);
  }

  /** Sizes of offsets, each with the word for its direction in the next column but one. */
  private static List<Column> signedByOthers(List<Column> columns, LogSentences text) {
    List<Column> signed = new ArrayList<>();
    for (int i = 0; i < columns.size(); i++) {
      Column sizes = columns.get(i);
      boolean distance = !sizes.isWhole() || DISTANCES.contains(sizes.unit());
      if (sizes.isNumeric() && sizes.isOneSided() && !sizes.isConstant() && distance) {
        for (int j = Math.max(0, i - 1); j < Math.min(columns.size(), i + 3); j++) {
          Column letters = columns.get(j);
          Set<String> values = PulseColumns.codeValues(letters);
          if (j != i && !values.isEmpty() && letters.numeric == 0) {
            Codes.of(values, text, false).ifPresent(c -> signed.add(sizes.signedBy(letters, c)));
          }
        }
      }
    }
    return signed;
  }

  private static boolean shareLetters(Column a, PulseColumns p) {
    return a.letterColumn().filter(p::uses).isPresent()
        || p.main().place == a.place && p.main().name.equals(a.name);
  }

  /** The best choice, and the best of the rivals that give other figures, if one comes close. */
  List<Choice> best() {
    List<Choice> all = new ArrayList<>();
    for (boolean camera : new boolean[] {false, true}) {
      List<Column> first = candidates(camera ? 'x' : 'r');
      List<Column> second = candidates(camera ? 'y' : 'd');
      List<PulseColumns> ra = pulseCandidates('r');
      List<PulseColumns> dec = pulseCandidates('d');
      for (Column a : first) {
        for (Column b : second) {
          if (a != b && isPair(a, b)) {
            withPulses(a, b, camera, ra, dec, all);
          }
        }
      }
    }
    all.sort(Comparator.comparingDouble((Choice choice) -> -choice.total));
    return all;
  }

  /** Offsets of one table come in one unit. */
  private static boolean isPair(Column a, Column b) {
    boolean letters = a.letterColumn().isPresent() == b.letterColumn().isPresent();
    return a.isPlace() == b.isPlace() && letters && isOneUnit(a, b);
  }

  private static boolean isOneUnit(Column a, Column b) {
    return a.unit().isEmpty() || b.unit().isEmpty() || a.unit().equals(b.unit());
  }

  /** The best rival that gives other figures; empty if none comes close. */
  Optional<Choice> rival(List<Choice> all) {
    Choice best = all.get(0);
    return all.stream()
        .skip(1)
        .filter(choice -> choice.total > best.total - CLEAR_MARGIN || followsAlone(best, choice))
        .filter(choice -> !isSame(best, choice))
        .findFirst();
  }

  /** Whether the best has no pulses, but two columns follow its offsets as only pulses do. */
  private boolean followsAlone(Choice best, Choice other) {
    boolean candidate = !best.hasPulses() && other.hasPulses() && other.camera == best.camera;
    if (!candidate || other.offsets[0] != best.offsets[0] || other.offsets[1] != best.offsets[1]) {
      return false;
    }
    for (int axis = 0; axis < 2; axis++) {
      PulseColumns p = other.pulses[axis];
      double share =
          squared(p, best.offsets[axis], other.lag)
              + (best.camera ? squared(p, best.offsets[1 - axis], other.lag) : 0);
      boolean sent = p.sent() >= FEWEST_PULSES && p.sent() < 0.97 * p.series().length;
      boolean like = p.main().has("offset") || DISTANCES.contains(p.main().unit());
      if (!sent || share < FOLLOWS || like || isCopyOfPulse(p, best.offsets[axis])) {
        return false;
      }
    }
    return true;
  }

  /** Whether figures come out the same: the same columns, or exact multiples of them. */
  private boolean isSame(Choice one, Choice other) {
    if (one.camera != other.camera || one.hasPulses() != other.hasPulses()) {
      return false;
    }
    for (int axis = 0; axis < 2; axis++) {
      if (!isCopy(one.offsets[axis].numbers, other.offsets[axis].numbers)) {
        return false;
      }
      if (one.hasPulses() && !isCopy(one.pulses[axis].series(), other.pulses[axis].series())) {
        return false;
      }
    }
    return true;
  }

  private static boolean isCopy(double[] one, double[] other) {
    return one == other || Math.abs(Relation.correlation(one, other, 0, i -> true)) > COPY;
  }

  /** The scale, where the same offsets stand in pixels and in arcseconds. */
  Optional<SettingRule> scale(Choice choice) {
    Column own = choice.offsets[0];
    boolean pixels = own.unit().equals("px");
    for (Column other : columns) {
      boolean pair = other.unit().equals(pixels ? "arcsec" : "px") && other.isNumeric();
      boolean told = pixels || own.unit().equals("arcsec");
      if (pair && told && !own.isPlace() && isCopy(own.numbers, other.numbers)) {
        double[] px = pixels ? own.numbers : other.numbers;
        double[] arcsec = pixels ? other.numbers : own.numbers;
        double ap = 0;
        double pp = 0;
        for (int i = 0; i < px.length; i++) {
          boolean both = Double.isFinite(px[i]) && Double.isFinite(arcsec[i]);
          ap += both ? px[i] * arcsec[i] : 0;
          pp += both ? px[i] * px[i] : 0;
        }
        String value = String.format(Locale.ROOT, "%.4f", ap / pp);
        return Optional.of(
            new SettingRule(
                Setting.SCALE, Optional.empty(), Optional.of(value), Optional.of("arcsec/px")));
      }
    }
    return Optional.empty();
  }

  private void withPulses(
      Column a,
      Column b,
      boolean camera,
      List<PulseColumns> ra,
      List<PulseColumns> dec,
      List<Choice> all) {
    double own = offsetWorth(a, camera ? 'x' : 'r') + offsetWorth(b, camera ? 'y' : 'd');
    own -= camera ? 2 * LOOK : 0; // a turned camera needs more to be true than offsets on the sky
    own += camera && text.isCameraTurned() ? KIND : 0;
    own += inOrder(a, b) ? UNIT : 0;
    Column[] offsets = {a, b};
    all.add(new Choice(offsets, camera, new PulseColumns[0], 0, own));
    for (PulseColumns p : ra) {
      for (PulseColumns q : dec) {
        boolean distinct = !p.uses(q.main()) && !q.uses(p.main()) && isUnlike(p, q);
        boolean apart =
            !shareLetters(a, p)
                && !shareLetters(a, q)
                && !shareLetters(b, p)
                && !shareLetters(b, q);
        if (distinct && apart && !p.uses(a) && !p.uses(b) && !q.uses(a) && !q.uses(b)) {
          double worth = own + pulseWorth(p, 'r') + pulseWorth(q, 'd');
          worth += inOrder(p.main(), q.main()) ? UNIT : 0;
          for (int lag = 0; lag < 2; lag++) {
            double relation = relation(p, a, b, camera, lag) + relation(q, b, a, camera, lag);
            all.add(
                new Choice(
                    offsets, camera, new PulseColumns[] {p, q}, lag, worth + relation - 0.2 * lag));
          }
        }
      }
    }
  }

  /** Whether a sentence says that the axes stand in this order. */
  private boolean inOrder(Column ra, Column dec) {
    return text.raFirst()
        .filter(first -> first == columns.indexOf(ra) < columns.indexOf(dec))
        .isPresent();
  }

  private static boolean isUnlike(PulseColumns p, PulseColumns q) {
    return p.beside().isEmpty() || q.beside().isEmpty() || p.beside().get() != q.beside().get();
  }

  /** How far a pulse follows the offset that it should follow, and not the other. */
  private double relation(PulseColumns p, Column own, Column other, boolean camera, int lag) {
    if (p.sent() < FEWEST_PULSES) {
      return 0;
    }
    double mine = squared(p, own, lag);
    double theirs = squared(p, other, lag);
    if (isCopyOfPulse(p, own) || isCopyOfOffset(p, own)) {
      return OTHER_AXIS;
    }
    if (camera) {
      return evidence(Math.min(1, mine + theirs)) - RELATION / 3;
    }
    return evidence(mine) - Math.max(0, evidence(theirs) - evidence(mine)) - RELATION / 3;
  }

  /** What is left unexplained tells, and not what is explained: a copy explains much as well. */
  private static double evidence(double squared) {
    return Math.min(RELATION, -RELATION / 4 * Math.log(1 - Math.min(1, squared) + LEAST_LEFT));
  }

  /** An exact multiple of a pulse, zero where it is zero, is a copy of it and no offset. */
  private boolean isCopyOfPulse(PulseColumns p, Column offset) {
    if (squared(p, offset, 0) < COPY * COPY) {
      return false;
    }
    int zeros = 0;
    int both = 0;
    for (int i = 0; i < p.series().length; i++) {
      zeros += p.series()[i] == 0 ? 1 : 0;
      both += p.series()[i] == 0 && offset.numbers[i] == 0 ? 1 : 0;
    }
    return zeros > FEWEST_PULSES && both > 0.9 * zeros;
  }

  /** The same offset in another unit follows it exactly, and is no pulse. */
  private boolean isCopyOfOffset(PulseColumns p, Column offset) {
    boolean pulse = p.main().hasAny("pulse", "length");
    boolean like = p.main().has("offset") || DISTANCES.contains(p.main().unit());
    return like && !pulse && squared(p, offset, 0) >= COPY * COPY;
  }

  private double squared(PulseColumns p, Column offset, int lag) {
    String key = pulses.indexOf(p) + " " + columns.indexOf(offset) + " " + lag;
    return relations.computeIfAbsent(
        key,
        any -> {
          double sum = 0;
          double rows = 0;
          for (Optional<PierSide> side : distinctSides) {
            int count = 0;
            for (int i = 0; i < p.series().length; i++) {
              count += sides.get(i).equals(side) && p.series()[i] != 0 ? 1 : 0;
            }
            double r =
                Relation.correlation(
                    p.series(),
                    offset.numbers,
                    lag,
                    i -> p.series()[i] != 0 && sides.get(i).equals(side));
            sum += count * r * r;
            rows += count;
          }
          return rows == 0 ? 0 : sum / rows;
        });
  }

  private List<Column> candidates(char axis) {
    return columns.stream()
        .filter(column -> column.isNumeric() && !column.isConstant())
        .filter(column -> offsetWorth(column, axis) > OTHER_AXIS)
        .sorted(Comparator.comparingDouble((Column column) -> -offsetWorth(column, axis)))
        .limit(MOST_CANDIDATES)
        .toList();
  }

  private List<PulseColumns> pulseCandidates(char axis) {
    return pulses.stream()
        .filter(p -> pulseWorth(p, axis) > OTHER_AXIS / 2)
        .sorted(Comparator.comparingDouble((PulseColumns p) -> -pulseWorth(p, axis)))
        .limit(MOST_CANDIDATES)
        .toList();
  }

  private double axisWorth(char found, char axis) {
    return found == axis ? NAMED_AXIS : found == ' ' ? 0 : OTHER_AXIS;
  }

  /** What names, units and looks say for an offset along an axis. */
  /** Places lie along the camera, whatever their axes are called. */
  private static char cameraAxis(char found) {
    return found == 'r' ? 'x' : found == 'd' ? 'y' : found;
  }

  private double offsetWorth(Column column, char axis) {
    return offsetWorths
        .computeIfAbsent(column, any -> new HashMap<>())
        .computeIfAbsent(axis, any -> weighOffset(column, axis));
  }

  /** A shift that is there in nearly every row is the star's, and no move of the set point. */
  static boolean isShift(Column column) {
    return column.has("dither")
        && column.share(v -> v != 0) * column.finite().length > 0.5 * column.cells.size();
  }

  private double weighOffset(Column column, char axis) {
    char told = column.axis(text.eastIsO());
    double worth = axisWorth(column.isPlace() ? cameraAxis(told) : told, axis);
    boolean fromSetPoint = column.nameHas("distance") && column.nameHas("set point");
    boolean offset = column.has("offset") || isShift(column) || fromSetPoint;
    worth += offset ? KIND : 0;
    worth += column.has("pulse") ? offset && !column.nameHas("pulse") ? -LOOK : OTHER_KIND : 0;
    worth += column.has("statistic") ? OTHER_KIND - LOOK : 0;
    worth += column.nameHas("place") && !column.nameHas("offset") && !column.isPlace() ? -KIND : 0;
    worth -= column.isPlace() ? KIND : 0;
    boolean setPoint = column.nameHas("set point") && !column.nameHas("offset");
    worth += setPoint && !fromSetPoint ? OTHER_KIND : 0;
    worth += column.nameHas("distance") && !fromSetPoint ? -LOOK : 0;
    worth += column.has("dither") && !isShift(column) ? OTHER_KIND : 0;
    worth += column.hasAny("snr", "flux", "frame", "run") && !offset ? OTHER_KIND : 0;
    worth += column.has("other") && !offset ? OTHER_KIND : 0;
    worth += column.hasAny("length", "sense") && !offset ? -KIND : 0;
    worth +=
        switch (column.unit()) {
          case "arcsec", "mas" -> UNIT;
          case "px" -> UNIT - LOOK / 4; // of copies those that need no scale
          case "arcmin" -> UNIT / 2;
          case "ms", "s", "us", "min" -> OTHER_KIND;
          default -> 0;
        };
    boolean both = column.share(v -> v < 0) > 0.08 && column.share(v -> v > 0) > 0.08;
    worth += both ? LOOK : -KIND;
    worth -= column.isLettered() && !offset ? KIND : 0; // letters are more often at pulses
    worth += column.rising() > 0.95 ? OTHER_KIND : 0;
    worth += column.share(v -> v == 0) > 0.4 ? -KIND : 0;
    worth += column.isWhole() && column.largest() > 20 ? -LOOK : 0;
    double scatter = column.scatter();
    worth += scatter > 0 && Math.abs(column.median()) > 5 * scatter ? -KIND : 0;
    return worth;
  }

  /** What names, units, codes and looks say for pulses of an axis. */
  private double pulseWorth(PulseColumns p, char axis) {
    return pulseWorths
        .computeIfAbsent(p, any -> new HashMap<>())
        .computeIfAbsent(axis, any -> weighPulse(p, axis));
  }

  private double weighPulse(PulseColumns p, char axis) {
    Column column = p.main();
    boolean eastIsO = text.eastIsO();
    char told = p.axis() != ' ' ? p.axis() : column.axis(eastIsO);
    told = told == ' ' && p.beside().isPresent() ? p.beside().get().axis(eastIsO) : told;
    double worth = axisWorth(told, axis);
    boolean pulse = column.has("pulse") || column.has("length");
    boolean codes = p.beside().isPresent() || column.isLettered();
    worth += pulse ? KIND : 0;
    worth += column.has("offset") && !pulse ? OTHER_KIND : 0;
    worth += column.has("statistic") ? OTHER_KIND : 0;
    worth += column.nameHas("place") || column.nameHas("set point") ? OTHER_KIND : 0;
    worth += column.hasAny("dither") ? OTHER_KIND : 0;
    worth += column.hasAny("snr", "flux", "frame", "run", "distance") && !pulse ? OTHER_KIND : 0;
    worth += column.has("other") && !pulse ? OTHER_KIND : 0;
    worth += codes ? KIND : 0;
    if (p.beside().isPresent() && !p.apart()) {
      Column letters = p.beside().get();
      worth += letters.has("sense") || letters.has("pulse") ? LOOK : 0;
      worth -= 0.3 * Math.abs(columns.indexOf(letters) - columns.indexOf(column));
      char one = column.axis(eastIsO);
      char other = letters.axis(eastIsO);
      worth += one != ' ' && other != ' ' && one != other ? OTHER_KIND : 0;
    }
    worth +=
        switch (column.unit()) {
          case "ms", "us" -> UNIT;
          case "s" -> UNIT / 2;
          case "arcsec", "px", "mas", "arcmin" -> pulse ? 0 : -UNIT;
          case "min" -> OTHER_KIND;
          default -> 0;
        };
    int rows = Math.max(1, p.series().length);
    int sent = p.sent();
    worth += sent < 0.97 * rows ? LOOK : 0;
    worth += column.isWhole() && column.largest() > 20 ? LOOK : 0;
    worth += sent == 0 && !pulse ? OTHER_KIND : 0;
    worth += isTooShort(p) ? -KIND : 0;
    worth += column.rising() > 0.95 ? OTHER_KIND : 0;
    return worth;
  }

  /** By the unit that is told, half of the pulses would be too short for a relay to close. */
  private boolean isTooShort(PulseColumns p) {
    String unit = p.main().unit().isEmpty() ? text.unit(true).orElse("") : p.main().unit();
    double perMilli = unit.equals("us") ? 1000 : unit.equals("ms") ? 1 : 0;
    double[] sizes =
        Arrays.stream(p.series()).map(Math::abs).filter(v -> v > 0 && v < 1e9).toArray();
    return sizes.length > 0 && Quantile.median(sizes) < 0.5 * perMilli;
  }

  /** Whether name, unit and looks together are rather against a column of offsets. */
  boolean speaksAgainst(Column column, char axis) {
    return offsetWorth(column, axis) < 0;
  }

  /** The evidence for a column of offsets, for people. */
  String why(Column column, char axis) {
    List<String> all = new ArrayList<>();
    if (!column.name.isEmpty()) {
      all.add("its name");
    } else if (!column.isNameless()) {
      all.add("the words beside it");
    }
    if (!column.unit().isEmpty()) {
      all.add("the unit " + column.unit() + " in " + column.unitFrom());
    }
    all.add(String.format(Locale.ROOT, "weight %.1f", offsetWorth(column, axis)));
    return String.join(", ", all);
  }

  /** How pulses follow the offsets, for people. */
  String why(Choice choice, int axis) {
    PulseColumns p = choice.pulses[axis];
    if (p.sent() < FEWEST_PULSES) {
      return "name and place; too few pulses for more";
    }
    return String.format(
        Locale.ROOT,
        "%d pulses, of which the offset of %s explains %.0f %%",
        p.sent(),
        choice.lag == 1 ? "the row before" : "the same row",
        100
            * Math.min(
                1,
                squared(p, choice.offsets[axis], choice.lag)
                    + (choice.camera ? squared(p, choice.offsets[1 - axis], choice.lag) : 0)));
  }
}
