package io.github.roundstar.compare;

import io.github.roundstar.model.Sentences;
import io.github.roundstar.results.ComparedFigure;
import io.github.roundstar.results.Faults;
import io.github.roundstar.results.Method;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.PromiseKept;
import io.github.roundstar.results.Rung;
import io.github.roundstar.results.SeasonChange;
import io.github.roundstar.results.SeasonNight;
import io.github.roundstar.results.SeasonResult;
import io.github.roundstar.results.Trend;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Nights along a season, with marks where the mount was worked on. */
public final class Season {
  private static final List<Method> METHODS =
      List.of(
          new Method(
              "trends",
              "Straight line through the nights by least squares, with a step at every change so"
                  + " that work on the mount does not look like a trend; a night counts once."
                  + " Intervals from Student's t, at the level at which Holm's method (1979) tests"
                  + " the slope beside all others, so that one of twenty seasons without any trend"
                  + " shows one. Drift is left out: it depends on where the star"
                  + " stands."),
          new Method(
              "changes",
              "The nights since the change before against those until the next, by the test that"
                  + " compare uses (Welch on night means, moderated; Holm over the figures). With"
                  + " four nights and more on either side the rank test of Mann and Whitney (1947)"
                  + " stands beside it, which assumes no distribution."));

  private Season() {}

  /** A night's result without what only its own page needs, so that a thousand take little room. */
  public static NightResult slim(NightResult night) {
    return new NightResult(
        night.schema(),
        night.version(),
        List.of(),
        night.night(),
        night.runs().stream().map(Slim::run).toList(),
        night.polarAxis(),
        night.seeing(),
        night.exposures(),
        null,
        null,
        null,
        null,
        night.need(),
        night.rung(Rung.AS_IT_WAS).map(List::of).orElse(null),
        null,
        night.promised(),
        null,
        null,
        night.notComputed(),
        List.of(),
        night.faults());
  }

  /**
   * The season.
   *
   * @param nights where each night's files lie, with its slim result, in any order
   * @param changes work on the mount
   * @param settingsSha256 hash of what else the results depend on
   * @param unusable inputs that could not be used
   * @param noticed what the reader should know
   * @param version version of the tool
   * @param lost names of nights that a fault of the tool took whole
   * @param faults what faults of the tool took so far; hears of trends and changes that they take
   */
  public static SeasonResult of(
      List<Filed> nights,
      List<MountChange> changes,
      String settingsSha256,
      List<String> unusable,
      List<String> noticed,
      String version,
      List<String> lost,
      Faults faults) {
    List<Filed> ordered =
        nights.stream()
            .sorted(
                Comparator.comparing((Filed filed) -> filed.night().night())
                    .thenComparing(filed -> filed.night().result()))
            .toList();
    List<DatedNight> dated =
        ordered.stream()
            .map(Filed::result)
            .filter(DatedNight::isDated)
            .map(DatedNight::of)
            .sorted(Comparator.comparing(DatedNight::start))
            .toList();
    List<DatedNight> whole =
        dated.stream()
            .filter(night -> night.result().night().guidedHours() >= OwnNights.LEAST_GUIDED_HOURS)
            .toList();
    List<Telescope> telescopes = Telescope.of(whole.isEmpty() ? dated : whole);
    List<String> all = new ArrayList<>(noticed);
    if (dated.size() < ordered.size()) {
      all.add(
          ordered.size()
              - dated.size()
              + " of the nights have no date, so they are listed but stand in no trend: add start"
              + " to their logs.");
    }
    if (!whole.isEmpty() && whole.size() < dated.size()) {
      all.add(
          dated.size()
              - whole.size()
              + " of the nights were guided for less than half an hour: they are listed but stand in"
              + " no trend.");
    }
    if (telescopes.size() > 1) {
      all.add(
          "Nights of different mounts or optics, shown apart: "
              + telescopes.stream()
                  .map(t -> t.name() + " (" + t.nights().size() + ")")
                  .collect(Collectors.joining("; "))
              + ".");
    }
    Instant first = dated.isEmpty() ? null : dated.get(0).start();
    List<SeasonChange> told =
        dated.isEmpty()
            ? List.of()
            : faults.within(
                "changes", () -> SeasonChanges.of(telescopes, changes, first), List.of());
    List<Trend> trends =
        dated.isEmpty()
            ? List.of()
            : faults.within("trends", () -> SeasonTrends.of(telescopes, changes, first), List.of());
    return new SeasonResult(
        SeasonResult.SCHEMA,
        version,
        settingsSha256,
        ordered.stream().map(Filed::night).toList(),
        summary(ordered.size(), lost, told, trends),
        trends,
        faults.within("promises", () -> promises(telescopes), List.of()),
        told,
        unusable,
        all,
        METHODS,
        faults.told());
  }

  /** Each night that promised something, on the next one of its telescope. */
  private static List<PromiseKept> promises(List<Telescope> telescopes) {
    List<PromiseKept> judged = new ArrayList<>();
    for (Telescope telescope : telescopes) {
      List<NightResult> nights = DatedNight.results(telescope.nights());
      for (int i = 0; i + 1 < nights.size(); i++) {
        PromiseJudge.of(nights.get(i), List.of(nights.get(i + 1))).ifPresent(judged::add);
      }
    }
    judged.sort(Comparator.comparing(PromiseKept::night));
    return judged;
  }

  /**
   * A night and where its files lie.
   *
   * @param night names of its files
   * @param result its figures
   */
  public record Filed(SeasonNight night, NightResult result) {}

  private static String summary(
      int nights, List<String> lost, List<SeasonChange> changes, List<Trend> trends) {
    String counted =
        (nights == 1 ? "One night. " : nights + " nights. ")
            + (lost.isEmpty()
                ? ""
                : "Lost to a fault of roundstar: " + String.join(", ", lost) + ". ");
    List<String> moving =
        trends.stream()
            .filter(trend -> trend.group().equals("mount"))
            .filter(trend -> trend.perMonth() != null && !trend.perMonth().covers(0))
            .map(t -> t.telescope().isEmpty() ? t.name() : t.name() + " (" + t.telescope() + ")")
            .toList();
    String work = changes.size() == 1 ? one(changes.get(0)) : counted(changes);
    return counted
        + work
        + (moving.isEmpty()
            ? "Between changes no figure of the mount moves for certain."
            : "Between changes these move: " + String.join("; ", moving) + ".");
  }

  private static String one(SeasonChange change) {
    String what = change.what().isEmpty() ? "change" : change.what();
    return Sentences.capital(what) + " on " + change.date() + ". " + change.summary() + " ";
  }

  private static String counted(List<SeasonChange> changes) {
    return changes.isEmpty()
        ? ""
        : String.format(
            Locale.ROOT,
            "Changes that made the mount better: %d of %d, worse: %d. ",
            count(changes, ComparedFigure.BETTER),
            changes.size(),
            count(changes, ComparedFigure.WORSE));
  }

  /** Changes after which a figure of the mount has the verdict. */
  private static long count(List<SeasonChange> changes, String verdict) {
    return changes.stream()
        .filter(
            change ->
                change.figures().stream()
                    .anyMatch(f -> f.group().equals("mount") && f.verdict().equals(verdict)))
        .count();
  }
}
