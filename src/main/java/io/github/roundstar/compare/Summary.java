package io.github.roundstar.compare;

import io.github.roundstar.results.ComparedFigure;
import java.util.List;

/** What came of a comparison in one sentence. */
final class Summary {
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

  private static List<ComparedFigure> with(List<ComparedFigure> figures, String verdict) {
    return figures.stream().filter(figure -> figure.verdict().equals(verdict)).toList();
  }

  /** The one listed first, which says most. */
  private static ComparedFigure lead(List<ComparedFigure> figures) {
    return figures.get(0);
  }

  private static String told(ComparedFigure figure) {
    return figure.name()
        + " went from "
        + Judge.shown(figure.before().value())
        + " to "
        + Judge.shown(figure.after().value())
        + " "
        + figure.unit();
  }
}
