package io.github.roundstar.report;

import io.github.roundstar.report.Page.Block;
import io.github.roundstar.report.Page.Cell;
import io.github.roundstar.report.Page.Column;
import io.github.roundstar.report.Page.Section;
import io.github.roundstar.report.Page.Table;
import io.github.roundstar.report.chart.ReplayChart;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.Replay;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/** What other settings would have done with the same mount under the same air. */
final class ReplaySection {
  private static final List<Column> COLUMNS =
      List.of(
          Column.words("axis"),
          Column.words("setting"),
          Column.numbers("gain", ""),
          Column.numbers("deadband", "arcsec"),
          Column.numbers("a pulse every", "s"),
          Column.numbers("RMS in the log", "arcsec"),
          Column.numbers("RMS of the star's motion", "arcsec"),
          Column.numbers("less motion", "arcsec"));

  /** Less would not show in motions that are written with two decimals [arcsec]. */
  private static final double LEAST_LESS_ARCSEC = 0.005;

  /** A factor nearer to 1 is none. */
  private static final double SAME_GAIN = 0.05;

  private ReplaySection() {}

  static Section of(NightResult result, Charts charts) {
    List<Replay> rows = result.replay() == null ? List.of() : result.replay();
    if (rows.isEmpty()) {
      String reason = new Reasons(result.notComputed()).sentence("/replay");
      return new Section(
          "replay",
          "What other settings would have done cannot be told",
          List.of(Block.text(reason)));
    }
    List<String> sentences = new ArrayList<>();
    sentences.add(
        "The mount's motion and the noise of this night were guided again with other settings. The"
            + " log shows the star with the error of measuring it; the main camera sees its motion"
            + " only, so that is what the best setting makes least."
            + (result.need() != null && result.need().ofStars()
                ? " Motion counts within each exposure, as images see it."
                : ""));
    advice(sentences, rows, "ra", "RA");
    advice(sentences, rows, "dec", "Dec");
    sentences.add("Under other air, or with another star, the best setting will be another.");
    Block chart =
        Block.text(sentences.toArray(String[]::new))
            .with(charts.of("other settings", () -> ReplayChart.draw(rows)));
    Table table =
        new Table(
            "Present and best settings",
            COLUMNS,
            rows.stream().filter(r -> r.current() || r.best()).map(ReplaySection::row).toList());
    return new Section("replay", heading(rows), List.of(chart.with(table)));
  }

  private static String heading(List<Replay> rows) {
    List<String> parts = new ArrayList<>();
    best(rows, "ra").filter(ReplaySection::helps).ifPresent(r -> parts.add(words(r, "RA")));
    best(rows, "dec").filter(ReplaySection::helps).ifPresent(r -> parts.add(words(r, "Dec")));
    return parts.isEmpty()
        ? "No other setting would have kept the star stiller"
        : "The best settings would have taken away " + String.join(", ", parts);
  }

  private static String words(Replay row, String axis) {
    return Numbers.both(row.lessMotionArcsec()) + " arcsec RMS in " + axis;
  }

  private static boolean helps(Replay row) {
    return row.lessMotionArcsec() != null
        && row.lessMotionArcsec().lo95() > 0
        && row.lessMotionArcsec().value() >= LEAST_LESS_ARCSEC;
  }

  private static Optional<Replay> best(List<Replay> rows, String axis) {
    return find(rows, axis, r -> r.best() && !r.trained());
  }

  private static Optional<Replay> find(List<Replay> rows, String axis, Predicate<Replay> which) {
    return rows.stream().filter(r -> r.axis().equals(axis)).filter(which).findFirst();
  }

  private static void advice(List<String> sentences, List<Replay> rows, String axis, String name) {
    Optional<Replay> current = find(rows, axis, Replay::current);
    Optional<Replay> best = best(rows, axis);
    if (current.isEmpty() || best.isEmpty()) {
      sentences.add(name + ": no replay, see how the loop guided.");
      return;
    }
    sentences.add(
        helps(best.get())
            ? name
                + ": "
                + changes(current.get(), best.get())
                + " would have moved the star by "
                + Numbers.plain(best.get().predictedMotionRmsArcsec())
                + " instead of "
                + Numbers.plain(current.get().predictedMotionRmsArcsec())
                + " arcsec RMS."
                + factor(best.get().gain() / current.get().gain())
            : name + ": no other setting would have kept the star noticeably stiller.");
    find(rows, axis, r -> r.best() && r.trained())
        .filter(ReplaySection::helps)
        .ifPresent(
            trained ->
                sentences.add(
                    name
                        + ": with the periodic error trained out, "
                        + Numbers.plain(trained.predictedMotionRmsArcsec())
                        + " arcsec RMS at a gain of "
                        + Numbers.plain(trained.gain())
                        + "."));
  }

  /** What is set otherwise, as far as it shows. */
  private static String changes(Replay current, Replay best) {
    List<String> changes = new ArrayList<>();
    changed("gain", best.gain(), current.gain(), "").ifPresent(changes::add);
    changed("deadband", best.deadbandArcsec(), current.deadbandArcsec(), " arcsec")
        .ifPresent(changes::add);
    return changes.isEmpty() ? "other settings" : String.join(" and ", changes);
  }

  private static Optional<String> changed(String what, double best, double current, String unit) {
    String then = Numbers.plain(best);
    String now = Numbers.plain(current);
    return then.equals(now)
        ? Optional.empty()
        : Optional.of("a " + what + " of " + then + " instead of " + now + unit);
  }

  /** The gain by the log's figures is not what the program calls it, so its change is a factor. */
  private static String factor(double gains) {
    return Math.abs(gains - 1) < SAME_GAIN
        ? ""
        : " In the program, multiply the gain by " + Numbers.coarse(gains) + ".";
  }

  private static List<Cell> row(Replay row) {
    String setting = row.current() ? "present" : row.trained() ? "best, trained" : "best";
    return List.of(
        Cell.of(row.axis().equals("ra") ? "RA" : "Dec"),
        Cell.of(setting),
        Cell.of(Numbers.fixed(row.gain(), 2)),
        Cell.of(row.deadbandArcsec()),
        Cell.of(Numbers.fixed(row.cadenceSeconds(), 1)),
        Cell.of(row.predictedLoggedRmsArcsec()),
        Cell.of(row.predictedMotionRmsArcsec()),
        row.current() ? Cell.of("") : Cell.of(row.lessMotionArcsec()));
  }
}
