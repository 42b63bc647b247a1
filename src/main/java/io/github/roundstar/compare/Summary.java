package io.github.roundstar.compare;

import io.github.roundstar.results.ComparedFigure;
import io.github.roundstar.results.Decision;
import io.github.roundstar.results.NightResult;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What came of a comparison in one sentence. */
final class Summary {
  private static final int MOST_NAMES = 3;

  private Summary() {}

  static String of(List<ComparedFigure> figures) {
    List<ComparedFigure> mount = figures.stream().filter(f -> f.group().equals("mount")).toList();
    List<ComparedFigure> better = with(mount, ComparedFigure.BETTER);
    List<ComparedFigure> worse = with(mount, ComparedFigure.WORSE);
    if (mount.isEmpty()) {
      return "No figure of the mount could be compared.";
    }
    if (!better.isEmpty() && worse.isEmpty()) {
      return "The mount is better: " + told(lead(better)) + ".";
    }
    if (better.isEmpty() && !worse.isEmpty()) {
      return "The mount is worse: " + told(lead(worse)) + ".";
    }
    if (!better.isEmpty()) {
      return "The mount is better in one thing and worse in another: "
          + told(lead(better))
          + ", but "
          + told(lead(worse))
          + ".";
    }
    if (with(mount, ComparedFigure.CANNOT_TELL).isEmpty()) {
      return "The mount did not really change: every figure stayed inside its margin.";
    }
    return "Whether the mount changed cannot be told from these nights.";
  }

  /** Whether the nights after meet the need: what their own reports say. */
  static String need(List<NightResult> after) {
    List<NightResult> calm =
        after.stream()
            .filter(night -> night.verdict() != null)
            .filter(night -> night.verdict().decision() == Decision.LEAVE_ALONE)
            .toList();
    String nights = after.size() == 1 ? "the night after" : after.size() + " nights after";
    if (calm.size() == after.size()) {
      return "Does it meet your need now? Yes: "
          + nights
          + (after.size() == 1 ? " asks" : " ask")
          + " for nothing to be done.";
    }
    NightResult open =
        after.stream().filter(night -> !calm.contains(night)).reduce((one, last) -> last).get();
    String asks = open.verdict() == null ? "has no decision." : "says: " + open.verdict().summary();
    return after.size() == 1
        ? "Does it meet your need now? " + night(open) + asks
        : String.format(
            Locale.ROOT,
            "Does it meet your need now? %d of %s ask for nothing to be done. %s%s",
            calm.size(),
            nights,
            night(open),
            asks);
  }

  private static String night(NightResult night) {
    return "The night of " + night.night().date() + " ";
  }

  /** How many nights more would tell what is open; nothing where all is told. */
  static Optional<String> next(List<ComparedFigure> figures) {
    List<ComparedFigure> open =
        with(figures, ComparedFigure.CANNOT_TELL).stream()
            .filter(figure -> !figure.group().equals("air"))
            .toList();
    Optional<ComparedFigure> nearest =
        open.stream()
            .filter(figure -> figure.moreNights() != null)
            .min(Comparator.comparingInt(ComparedFigure::moreNights));
    if (open.isEmpty()) {
      return Optional.empty();
    }
    if (nearest.isEmpty()) {
      return Optional.of("No reasonable number of further nights would tell what is open.");
    }
    int least = nearest.get().moreNights();
    List<String> names =
        open.stream()
            .filter(figure -> figure.moreNights() != null && figure.moreNights() <= least + 1)
            .map(ComparedFigure::name)
            .limit(MOST_NAMES)
            .toList();
    return Optional.of(
        String.format(
            Locale.ROOT,
            "Record %d more night%s like these on each side: %s would then be told.",
            least,
            least == 1 ? "" : "s",
            String.join("; ", names)));
  }

  private static List<ComparedFigure> with(List<ComparedFigure> figures, String verdict) {
    return figures.stream().filter(figure -> figure.verdict().equals(verdict)).toList();
  }

  /** The one listed first, which says most. */
  private static ComparedFigure lead(List<ComparedFigure> figures) {
    return figures.get(0);
  }

  private static String told(ComparedFigure figure) {
    return figure.name() + " went from " + figure.fromTo();
  }
}
