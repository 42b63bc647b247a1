package io.github.roundstar.diagnosis;

import io.github.roundstar.formats.FormatException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * The bounds of the design's section 13 as a table: many simulated nights per case, each figure's
 * bias, its median and largest error, how often it kept its bound, how often its interval held the
 * truth, and whether that is what was asked. Not a test: a program that writes {@code
 * reports/truth.md}.
 */
public final class TruthTable {
  private static final String HEAD =
      """

      | figure | given | bias | median error | largest error | within bound | interval held | target |
      |---|---|---|---|---|---|---|---|
      """;

  private TruthTable() {}

  /**
   * Plays the nights and writes the table, again after every case.
   *
   * @param arguments file to write; nights per case (default 100); begin of the names of the cases
   *     to play (default all)
   */
  public static void main(String[] arguments) throws IOException, FormatException {
    Path file = Path.of(arguments.length > 0 ? arguments[0] : "reports/truth.md");
    int nights = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 100;
    String begin = arguments.length > 2 ? arguments[2] : "";
    StringBuilder text = new StringBuilder(introduction(nights));
    List<TruthColumn> rows = new ArrayList<>();
    for (TruthCase kind : TruthCase.all()) {
      if (kind.name().startsWith(begin)) {
        text.append("\n## ").append(kind.name()).append('\n').append(HEAD);
        for (TruthColumn row : TruthRows.of(kind, nights)) {
          text.append(row.row());
          rows.add(row);
        }
        Files.writeString(
            file, (text + summary(rows)).replace("\r\n", "\n"), StandardCharsets.UTF_8);
      }
    }
  }

  private static String summary(List<TruthColumn> rows) {
    List<TruthColumn> judged = rows.stream().filter(TruthColumn::judgedByInterval).toList();
    return String.format(
        Locale.ROOT,
        """

        %d of %d rows miss a target.

        %d of them have an interval that is judged, and %d of these miss by it. Chance alone, the nights of a row being
        independent, would make %.1f of them miss if every interval held the truth with a probability of 95 %%, %.1f at 97 %%.
        """,
        rows.stream().filter(TruthColumn::missed).count(),
        rows.size(),
        judged.size(),
        judged.stream().filter(TruthColumn::missedByInterval).count(),
        judged.stream().mapToDouble(row -> row.missesByChance(0.95)).sum(),
        judged.stream().mapToDouble(row -> row.missesByChance(0.97)).sum());
  }

  private static String introduction(int nights) {
    return """
    # Figures against simulated truth

    Written by `TruthTable` (its command is in DEVELOPERS.md), %d simulated nights per case. Unless a case says
    otherwise a night is one run of 2.5 hours, cadence 2.5 s, with a worm of 479 s and 6 arcsec, a wander of 0.02
    arcsec per root second in right ascension and half of that in declination, dithers every 12 minutes.

    Errors are in the figure's unit. "Given" counts the nights on which the log told the figure; on the others it is
    null with a reason. A bound is to be kept on 95 of 100 nights, an interval of 95 %% is to hold the truth on 88 to
    99 of 100. Where there is no play, an interval that ends at zero, since no play is less, holds the truth on 97.5 of 100
    if it is right (one side of a normal estimate is all on the bound: Self and Liang 1987, J. Am. Stat. Assoc. 82, 605,
    from memory): there it cannot be too wide, and only too few count.
    Bounds: worm 5 %% and 0.3 %% of its period; noise floor 5 %%, 15 %% with coloured seeing; response at most 1.5 %% off
    in the mean, and 2.5 %% in the median at noise 0.2 to 0.8 arcsec and gains of 0.3 to 0.9; backlash 10 %% or 0.4 arcsec; a part of the budget 15 %% + 0.01 arcsec^2;
    its remainder 10 %% of the whole; the night guided again at a gain of 0.3 and of 1.0, logged and true RMS, 10 %%
    (errors as a share); jolts: share of the gusts of five standard deviations that were found less 1, 0.1 in the mean.

    What counts as true:

    - **Response.** Pulses of a real mount do not push exactly as declared, and the intervals of drift and amplitude say
      so: 3 %% in either direction, one standard deviation. So each direction of each axis answers here with its declared
      speed times 1 + 0.03 x, x normal, drawn anew for every night (the same for the night guided again). The figure of an axis
      is the plain mean of its two directions, and so is its truth.
    - **Noise floor.** What a night's white errors were drawn from. With coloured seeing it is the standard deviation of
      the errors of all nights of the case together, about each night's own mean: an interval speaks of what the air makes,
      not of the one sample that the estimate was made from.
    - **Worm.** Of the sinusoids that were told, the one nearest to the worm's period; none within 20 %% of it is no worm
      that was told. "Sinusoids that are not there" are those of a false-alarm probability below 0.01 whose period is not
      within 5 %% of 479 or 239.5 s, all that the mount has. The row counts nights: a bias of 0.02 is two nights of 100. At most
      3 of 100 may have one.
    - **Guided again.** A row of the table of settings is one axis under other settings, the other guided as it was; so is
      the simulator's run that it is held against. With both gains changed the star comes to rest after a dither at another time,
      and other frames count: at a noise of 0.1 arcsec, where those first frames make much of the whole, the true RMS
      of a declination guided at 0.3 in place of 0.6 is then 4 %% smaller.
    - **One and a half to two and a half turns of the worm.** Fewer than three turns make no sinusoid. In the budget such a swing belongs to what moves
      slowly for no known reason, `wander`, and is looked for there. The bound of the noise floor is the design's for 2.5 hours; the 384
      frames of two turns tell a standard deviation to 4 or 5 %% (one standard error: 1 / sqrt(2 n) = 3.6 %% if nothing but noise were there), so that
      nobody keeps 5 %% on 95 of 100. The count stands in brackets and is not judged; whether the interval is right, is.
      Nor are the design's bounds on bias and median of the response judged: with one dither in the run a standard error is 3 to 5 %% of
      it where it is told at all; its interval is judged.
      The drift in right ascension is told beside a worm of any common period, each weighed by its likelihood.
    """
        .replace("%d", Integer.toString(nights))
        .replace("%%", "%");
  }
}
