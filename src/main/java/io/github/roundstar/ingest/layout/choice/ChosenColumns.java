package io.github.roundstar.ingest.layout.choice;

import io.github.roundstar.ingest.layout.ColumnRule;
import io.github.roundstar.ingest.layout.Decision;
import io.github.roundstar.ingest.layout.LayoutText;
import io.github.roundstar.ingest.layout.Meaning;
import io.github.roundstar.ingest.layout.Setting;
import io.github.roundstar.ingest.layout.SettingRule;
import io.github.roundstar.ingest.layout.evidence.Codes;
import io.github.roundstar.ingest.layout.evidence.Column;
import io.github.roundstar.ingest.layout.evidence.PulseColumns;
import io.github.roundstar.ingest.layout.text.Numbers;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/**
 * The columns that were chosen: what speaks for them, what is asked, and the rules that find them.
 */
final class ChosenColumns {
  private final ColumnChoice choices;
  private final List<ColumnChoice.Choice> all;
  private final ColumnChoice.Choice choice;
  private final List<Decision> decisions;

  /**
   * Takes the first of some choices.
   *
   * @param all choices, the best first
   */
  ChosenColumns(ColumnChoice choices, List<ColumnChoice.Choice> all, List<Decision> decisions) {
    this.choices = choices;
    this.all = all;
    this.choice = all.get(0);
    this.decisions = decisions;
  }

  void take(List<SettingRule> settings, Map<Meaning, Column> found) {
    boolean camera = choice.camera();
    Column one = choice.offsets()[0];
    Column two = choice.offsets()[1];
    if (one.isPlace()) {
      found.put(Meaning.X_PLACE, one);
      found.put(Meaning.Y_PLACE, two);
      if (one.setPoint().isPresent() && two.setPoint().isPresent()) {
        found.put(Meaning.X_SET, one.setPoint().get());
        found.put(Meaning.Y_SET, two.setPoint().get());
      } else if (SettingLines.told(settings, Setting.SET_X)) {
        decisions.add(Decision.certain("set point", "told by a line", "the star's places less it"));
      } else {
        decisions.add(
            Decision.noted(
                "set point",
                "taken as the place right after each move",
                "the log tells where the star stood, but not where it should be, so mean offsets"
                    + " are not known",
                "[[setting]]\nmeans = \"set-x\"\nvalue = \"512.3\"   # and set-y"));
      }
    } else {
      found.put(camera ? Meaning.X_OFFSET : Meaning.RA_OFFSET, one);
      found.put(camera ? Meaning.Y_OFFSET : Meaning.DEC_OFFSET, two);
      one.letterColumn().ifPresent(column -> found.put(Meaning.RA_OFFSET_LETTER, column));
      two.letterColumn().ifPresent(column -> found.put(Meaning.DEC_OFFSET_LETTER, column));
    }
    for (int axis = 0; axis < choice.pulses().length; axis++) {
      boolean dec = axis == 1;
      PulseColumns p = choice.pulses()[axis];
      if (p.apart()) {
        found.put(dec ? Meaning.NORTH_PULSE : Meaning.EAST_PULSE, p.main());
        found.put(dec ? Meaning.SOUTH_PULSE : Meaning.WEST_PULSE, p.beside().orElseThrow());
      } else {
        found.put(dec ? Meaning.DEC_PULSE : Meaning.RA_PULSE, p.main());
        p.beside().ifPresent(c -> found.put(dec ? Meaning.DEC_LETTER : Meaning.RA_LETTER, c));
      }
    }
  }

  /** Says why these columns were chosen, and asks where others come close. */
  void explain() {
    Optional<ColumnChoice.Choice> rival = choices.rival(all);
    boolean asked = false;
    for (int axis = 0; axis < 2; axis++) {
      Meaning offset =
          choice.camera()
              ? axis == 0 ? Meaning.X_OFFSET : Meaning.Y_OFFSET
              : axis == 0 ? Meaning.RA_OFFSET : Meaning.DEC_OFFSET;
      int at = axis;
      Column column = choice.offsets()[axis];
      Column other = rival.map(r -> r.offsets()[0]).orElse(column);
      other = axis == 1 ? rival.map(r -> r.offsets()[1]).orElse(column) : other;
      char letter = choice.camera() ? "xy".charAt(axis) : "rd".charAt(axis);
      if (other != column && !asked) {
        asked = true;
        decisions.add(
            Decision.open(
                offset.word(),
                column.called() + " and " + other.called() + " may both mean it",
                LayoutText.column(column.rule(offset)).strip()
                    + "\n# or\n"
                    + LayoutText.column(other.rule(offset)).strip()));
      } else if (!column.isPlace() && choices.speaksAgainst(column, letter) && !asked) {
        asked = true;
        decisions.add(
            Decision.open(
                offset.word(),
                column.called() + " follows from the pulses alone, and its name speaks against it",
                LayoutText.column(column.rule(offset)).strip()));
      } else {
        decisions.add(
            Decision.certain(offset.word(), column.called(), choices.why(column, letter))
                .before(runnerUp(c -> c.offsets()[at].called())));
      }
    }
    for (int axis = 0; axis < choice.pulses().length; axis++) {
      Meaning pulse = axis == 0 ? Meaning.RA_PULSE : Meaning.DEC_PULSE;
      PulseColumns p = choice.pulses()[axis];
      int at = axis;
      Optional<PulseColumns> other =
          rival
              .filter(r -> r.hasPulses())
              .map(r -> r.pulses()[at])
              .filter(r -> r.main() != p.main());
      if (other.isPresent() && !asked) {
        asked = true;
        decisions.add(
            Decision.open(
                pulse.word(),
                p.called() + " and " + other.get().called() + " may both mean it",
                LayoutText.column(p.main().rule(pulse)).strip()
                    + "\n# or\n"
                    + LayoutText.column(other.get().main().rule(pulse)).strip()));
      } else {
        decisions.add(
            Decision.certain(pulse.word(), p.called(), choices.why(choice, axis))
                .before(runnerUp(c -> c.hasPulses() ? c.pulses()[at].called() : "no pulses")));
      }
    }
    if (rival.isPresent() && !asked) {
      askForRest(rival.get());
    }
  }

  /** Asks about a rival that differs in something else than its columns. */
  private void askForRest(ColumnChoice.Choice rival) {
    Column one = choice.offsets()[0];
    if (rival.camera() != choice.camera()) {
      decisions.add(
          Decision.open(
              "axes of the offsets",
              one.called() + " may run along right ascension or along the camera",
              LayoutText.column(one.rule(Meaning.RA_OFFSET)).strip()
                  + "   # or x-offset, and y-offset for the other"));
    } else if (!choice.hasPulses() || !rival.hasPulses()) {
      PulseColumns p = (choice.hasPulses() ? choice : rival).pulses()[0];
      decisions.add(
          Decision.open(
              "pulses",
              p.called() + " may hold pulses or not: names and numbers do not settle it",
              LayoutText.column(p.main().rule(Meaning.RA_PULSE)).strip() + "   # or nothing"));
    } else {
      String called = choice.pulses()[0].called() + " or " + rival.pulses()[0].called();
      decisions.add(
          Decision.open(
              "pulses",
              called + ": which column tells their way is not clear",
              LayoutText.column(choice.pulses()[0].main().rule(Meaning.RA_PULSE)).strip()));
    }
  }

  /** The best choice that differs in one part, and by how much less evidence it has. */
  private String runnerUp(Function<ColumnChoice.Choice, String> part) {
    return all.stream()
        .filter(other -> !part.apply(other).equals(part.apply(choice)))
        .findFirst()
        .map(
            other ->
                String.format(
                    Locale.ROOT,
                    "%s, by %.1f less",
                    part.apply(other),
                    choice.total() - other.total()))
        .orElse("no other column can be it");
  }

  /** Lengths of pulses of which nothing tells the way. */
  void askForDirections(List<Column> free) {
    List<Column> lengths =
        free.stream()
            .filter(c -> c.numeric > 0 && !c.isConstant() && c.largest() > 0)
            .filter(c -> c.nameHas("pulse") && !c.nameHas("statistic"))
            .toList();
    boolean named = !choice.hasPulses() && lengths.size() >= 2;
    if (!choice.hasPulses() && !named) {
      lengths = PulseColumns.turns(free, choice.offsets());
      lengths = lengths.isEmpty() ? PulseColumns.sizes(free, choice.offsets()) : lengths;
    }
    if (!choice.hasPulses() && !lengths.isEmpty()) {
      decisions.add(
          Decision.open(
              "direction of pulses",
              lengths.get(0).called()
                  + " and "
                  + lengths.get(lengths.size() - 1).called()
                  + " hold lengths, and nothing tells which way they went",
              LayoutText.column(lengths.get(0).rule(Meaning.RA_PULSE)).strip()
                  + "\nunit = \"ms\"\n# and the column that tells its way: means = \"ra-letter\""));
    }
  }

  ColumnRule rule(
      Meaning meaning, Column column, ColumnUnits units, PulseSigns signs, Set<String> sentinels) {
    ColumnRule bare = column.rule(meaning);
    boolean number =
        !meaning.units().isEmpty() || meaning == Meaning.SNR || meaning == Meaning.FLUX;
    List<String> missing = new ArrayList<>(sentinels);
    if (number) {
      column.words.stream()
          .filter(
              word ->
                  !word.isEmpty()
                      && (!Numbers.isNoValue(word) || word.equals("none") || word.startsWith("-")))
          .forEach(missing::add);
    }
    List<String> toward = List.of();
    List<String> away = List.of();
    for (int axis = 0; axis < choice.pulses().length; axis++) {
      PulseColumns p = choice.pulses()[axis];
      boolean against = signs.lettersAreOfTheStar(axis == 1);
      boolean codes = p.beside().isPresent() ? p.beside().get() == column : p.main() == column;
      if (codes && !p.apart() && (against || !isPlain(p))) {
        toward = against ? p.away() : p.toward();
        away = against ? p.toward() : p.away();
      }
    }
    boolean inField = meaning.isSigned() && !meaning.isPulse() && column.letterColumn().isEmpty();
    Optional<Codes> codes = inField ? column.codes() : Optional.empty();
    if (meaning == Meaning.RA_OFFSET_LETTER || meaning == Meaning.DEC_OFFSET_LETTER) {
      codes = choice.offsets()[meaning.isDec() ? 1 : 0].codes();
    }
    if (codes.isPresent()) {
      toward = List.copyOf(codes.get().toward());
      away = List.copyOf(codes.get().away());
    }
    return new ColumnRule(
        bare.name(),
        bare.at(),
        meaning,
        units.of(meaning),
        meaning.isSigned() ? signs.positive(meaning) : Optional.empty(),
        signs.turns(meaning),
        missing,
        toward,
        away);
  }

  /** Letters that a layout need not explain. */
  private static boolean isPlain(PulseColumns p) {
    String expected = p.axis() == 'd' ? "ns" : "ew";
    return p.known()
        && p.toward().stream().allMatch(c -> begins(c, expected.charAt(0)))
        && p.away().stream().allMatch(c -> begins(c, expected.charAt(1)));
  }

  private static boolean begins(String code, char letter) {
    return !code.isEmpty() && Character.toLowerCase(code.charAt(0)) == letter;
  }
}
