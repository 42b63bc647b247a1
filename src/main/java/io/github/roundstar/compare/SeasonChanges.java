package io.github.roundstar.compare;

import io.github.roundstar.results.ComparedFigure;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.SeasonChange;
import io.github.roundstar.signal.RankTest;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** At every change: the nights since the one before against those until the next. */
final class SeasonChanges {
  /** Fewer nights a side cannot come out below 5 % in a rank test. */
  private static final int LEAST_RANKED = 4;

  private SeasonChanges() {}

  /** Of every telescope with nights on both sides; of the first where none has. */
  static List<SeasonChange> of(
      List<Telescope> telescopes, List<MountChange> changes, Instant first) {
    List<List<SeasonChange>> all =
        telescopes.stream().map(telescope -> of(telescope, changes, first)).toList();
    List<SeasonChange> found = new ArrayList<>();
    for (int i = 0; i < changes.size(); i++) {
      int at = i;
      List<SeasonChange> told =
          all.stream().map(list -> list.get(at)).filter(c -> !c.figures().isEmpty()).toList();
      found.addAll(told.isEmpty() ? List.of(all.get(0).get(i)) : told);
    }
    return found;
  }

  private static List<SeasonChange> of(
      Telescope telescope, List<MountChange> changes, Instant first) {
    List<DatedNight> nights = telescope.nights();
    List<MountChange> ordered =
        changes.stream().sorted(Comparator.comparing(MountChange::date)).toList();
    List<SeasonChange> found = new ArrayList<>();
    for (int i = 0; i < ordered.size(); i++) {
      MountChange change = ordered.get(i);
      MountChange earlier = i == 0 ? null : ordered.get(i - 1);
      MountChange later = i + 1 == ordered.size() ? null : ordered.get(i + 1);
      List<NightResult> before =
          DatedNight.results(
              nights.stream()
                  .filter(night -> night.evening().isBefore(change.date()))
                  .filter(night -> earlier == null || !night.evening().isBefore(earlier.date()))
                  .toList());
      List<NightResult> after =
          DatedNight.results(
              nights.stream()
                  .filter(night -> !night.evening().isBefore(change.date()))
                  .filter(night -> later == null || night.evening().isBefore(later.date()))
                  .toList());
      found.add(change(change, telescope.name(), first, before, after));
    }
    return found;
  }

  private static SeasonChange change(
      MountChange change,
      String telescope,
      Instant first,
      List<NightResult> before,
      List<NightResult> after) {
    double days = SeasonTrends.days(first, change);
    if (before.isEmpty() || after.isEmpty()) {
      return new SeasonChange(
          change.date().toString(),
          change.what(),
          telescope,
          days,
          before.size(),
          after.size(),
          "Nothing to compare: no night lies "
              + (before.isEmpty() ? "before it." : "after it yet."),
          List.of(),
          List.of());
    }
    PairTests tests = new PairTests(before, after);
    List<ComparedFigure> compared = tests.compared();
    return new SeasonChange(
        change.date().toString(),
        change.what(),
        telescope,
        days,
        before.size(),
        after.size(),
        Summary.of(compared),
        compared,
        ranks(before, after, tests.air(), compared));
  }

  private static List<SeasonChange.Rank> ranks(
      List<NightResult> before,
      List<NightResult> after,
      EqualAir air,
      List<ComparedFigure> compared) {
    List<String> keys = compared.stream().map(ComparedFigure::key).toList();
    List<SeasonChange.Rank> ranks = new ArrayList<>();
    for (Figure figure : PairTests.figures(before, after, air)) {
      double[] one = PairTests.sample(figure, before).values();
      double[] other = PairTests.sample(figure, after).values();
      boolean enough = Math.min(one.length, other.length) >= LEAST_RANKED;
      if (enough && keys.contains(figure.key())) {
        ranks.add(new SeasonChange.Rank(figure.key(), RankTest.between(one, other).probability()));
      }
    }
    return ranks;
  }
}
