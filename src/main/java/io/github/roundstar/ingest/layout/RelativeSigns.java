package io.github.roundstar.ingest.layout;

import io.github.roundstar.model.PierSide;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The sign of a pulse against the offset that it answers, on each side of the pier. */
final class RelativeSigns {
  private final PulseSeries series;
  private final PulseQuestions questions;
  private final List<Decision> decisions;
  private final int lag;

  RelativeSigns(PulseSeries series, PulseQuestions questions, List<Decision> decisions, int lag) {
    this.series = series;
    this.questions = questions;
    this.decisions = decisions;
    this.lag = lag;
  }

  /** Sign of the pulse against its own axis's offset on each side of the pier; empty if unclear. */
  int[] bySide(double[] pulse, boolean dec) {
    List<Optional<PierSide>> all = series.sides();
    int[] signs = new int[all.size()];
    int known = 0;
    for (Optional<PierSide> side : all) {
      PulseAnswer answer = series.answer(pulse, lag, side);
      double own = PulseSeries.own(answer, dec);
      double other = PulseSeries.own(answer, !dec);
      int sign = own > 0 ? 1 : -1;
      if (series.changes(
          pulse,
          lag,
          side,
          part -> !PulseSeries.isOwn(part, dec) || sign * PulseSeries.own(part, dec) > 0)) {
        questions.openChange(PulseQuestions.word(dec) + " signs");
        return new int[0];
      }
      if (answer.share() < PulseSeries.ENOUGH_SHARE) {
        continue;
      }
      if (!PulseSeries.isOwn(answer, dec)) {
        decisions.add(
            Decision.open(
                PulseQuestions.word(dec) + " pulses",
                String.format(
                    Locale.ROOT,
                    "they follow the other axis's offset (%.3g against %.3g per unit): two columns"
                        + " may be swapped",
                    other,
                    own),
                LayoutText.column(series.offset(false).rule(Meaning.RA_OFFSET)).strip()
                    + "   # or dec-offset, and the other column ra-offset"));
        return new int[0];
      }
      signs[known++] = sign;
    }
    if (known < all.size()) {
      decisions.add(
          Decision.open(
              PulseQuestions.word(dec) + " signs",
              "too few pulses follow the offset for its sign to be told",
              questions.ask(
                  dec ? Meaning.DEC_OFFSET : Meaning.RA_OFFSET,
                  dec ? Direction.NORTH : Direction.EAST,
                  dec ? Direction.SOUTH : Direction.WEST)));
      return new int[0];
    }
    return signs;
  }
}
