package io.github.roundstar.stars;

import io.github.roundstar.signal.Quantile;
import io.github.roundstar.signal.RobustScale;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * How far the stars moved on the sensor from one image to the next: the move on which most pairs of
 * bright stars agree, then the median over all stars that have a partner there.
 *
 * @param dxPixels along the rows [px]
 * @param dyPixels along the columns [px]
 * @param sigmaPixels standard error of either
 * @param pairs stars with a partner
 */
public record StarMatch(double dxPixels, double dyPixels, double sigmaPixels, int pairs) {
  private static final int BRIGHTEST = 50;
  private static final double TOLERANCE_PIXELS = 3;
  private static final int FEWEST_PAIRS = 5;

  /** Chance alone makes fewer of the bright stars agree on a move. */
  private static final double LEAST_SHARE = 0.3;

  /** The shift between two images of the same sensor; nothing when the stars do not agree. */
  public static Optional<StarMatch> of(List<Star> before, List<Star> after) {
    List<Star> one = brightest(before);
    List<Star> other = brightest(after);
    List<double[]> moves = new ArrayList<>();
    for (Star a : one) {
      for (Star b : other) {
        moves.add(new double[] {b.x() - a.x(), b.y() - a.y()});
      }
    }
    moves.sort(Comparator.comparingDouble(m -> m[0]));
    double[] best = mostAgreed(moves);
    if (best == null) {
      return Optional.empty();
    }
    return refined(one, other, best)
        .filter(
            match ->
                match.pairs >= FEWEST_PAIRS
                    && match.pairs >= LEAST_SHARE * Math.min(one.size(), other.size()));
  }

  private static double[] mostAgreed(List<double[]> moves) {
    double[] best = null;
    int most = 0;
    int from = 0;
    for (int i = 0; i < moves.size(); i++) {
      while (moves.get(from)[0] < moves.get(i)[0] - TOLERANCE_PIXELS) {
        from++;
      }
      int votes = 0;
      for (int j = from;
          j < moves.size() && moves.get(j)[0] <= moves.get(i)[0] + TOLERANCE_PIXELS;
          j++) {
        if (Math.abs(moves.get(j)[1] - moves.get(i)[1]) <= TOLERANCE_PIXELS) {
          votes++;
        }
      }
      if (votes > most) {
        most = votes;
        best = moves.get(i);
      }
    }
    return best;
  }

  private static Optional<StarMatch> refined(List<Star> one, List<Star> other, double[] move) {
    List<double[]> pairs = new ArrayList<>();
    for (Star a : one) {
      double[] nearest = null;
      for (Star b : other) {
        double[] off = {b.x() - a.x() - move[0], b.y() - a.y() - move[1]};
        boolean near = Math.hypot(off[0], off[1]) < 2 * TOLERANCE_PIXELS;
        if (near
            && (nearest == null
                || Math.hypot(off[0], off[1]) < Math.hypot(nearest[0], nearest[1]))) {
          nearest = off;
        }
      }
      if (nearest != null) {
        pairs.add(nearest);
      }
    }
    if (pairs.isEmpty()) {
      return Optional.empty();
    }
    double[] dx = pairs.stream().mapToDouble(p -> p[0]).toArray();
    double[] dy = pairs.stream().mapToDouble(p -> p[1]).toArray();
    double scatter = Math.max(RobustScale.of(dx), RobustScale.of(dy));
    return Optional.of(
        new StarMatch(
            move[0] + Quantile.median(dx),
            move[1] + Quantile.median(dy),
            1.2533 * Math.max(scatter, 0.01) / Math.sqrt(pairs.size()),
            pairs.size()));
  }

  private static List<Star> brightest(List<Star> stars) {
    return stars.stream()
        .sorted(Comparator.comparingDouble((Star s) -> -s.flux()))
        .limit(BRIGHTEST)
        .toList();
  }
}
