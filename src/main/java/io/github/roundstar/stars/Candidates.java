package io.github.roundstar.stars;

import io.github.roundstar.signal.Stretch;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Sorts the bright segments of a plane into those that can be measured and the others. */
final class Candidates {
  /** More stars do not make the mean of an image any better. */
  private static final int MOST_STARS = 1500;

  /** A neighbour's saddle so many noises below the fainter peak is no noise. */
  private static final double SADDLE_SIGMAS = 4;

  /** Smoothing leaves this share of a pixel's noise: sqrt(36) / 16. */
  private static final double SMOOTHED_NOISE = 0.375;

  /** A second peak fainter than this share of the first moves no moment by much. */
  private static final double FAINT_SHARE = 0.03;

  /** Neighbours within so many widths of a star count as part of its blend. */
  private static final double NEAR_WIDTHS = 4;

  /** A star's neighbours hold at least this share of its peak, even at a FWHM of 1.5 pixels. */
  private static final double HOT_SHARE = 0.12;

  /** Pixels this close to the top make it flat. */
  private static final double TOP = 0.97;

  /** A pixel below this share of both its neighbours is a hole. */
  private static final double HOLE = 0.7;

  /** No round star's flat top is so long; a trailed star's is. */
  private static final double LINE_ELONGATION = 3;

  private final Plane plane;
  private final Background background;
  final List<Segment> kept = new ArrayList<>();
  final Map<Rejection, Integer> rejected = new EnumMap<>(Rejection.class);

  private Candidates(Plane plane, Background background) {
    this.plane = plane;
    this.background = background;
  }

  static Candidates of(Plane plane, Background background, List<Segment> segments) {
    Candidates sorted = new Candidates(plane, background);
    List<Segment> whole = new ArrayList<>();
    List<Segment> blends = new ArrayList<>();
    List<Segment> lines = new ArrayList<>();
    for (Segment segment : segments) {
      Optional<Rejection> fault = sorted.fault(segment);
      if (fault.equals(Optional.of(Rejection.SATURATED)) && line(segment)) {
        lines.add(segment);
      } else if (fault.isPresent()) {
        sorted.reject(fault.get());
      } else if (sorted.hasTwoPeaks(segment)) {
        blends.add(segment);
      } else {
        whole.add(segment);
      }
    }
    if (blends.size() > whole.size()) {
      // So many are no chance neighbours: the telescope jumped, and every star is double.
      whole.addAll(blends);
      whole.sort(Comparator.comparingInt(Segment::peakIndex));
      blends.clear();
    }
    if (lines.size() > whole.size()) {
      // So many are no bleeding columns: every star is a line, and a line's top is flat.
      whole.addAll(lines);
      whole.sort(Comparator.comparingInt(Segment::peakIndex));
      lines.clear();
    }
    lines.forEach(line -> sorted.reject(Rejection.SATURATED));
    blends.forEach(blend -> sorted.reject(Rejection.BLENDED));
    sorted.keep(whole, segments);
    return sorted;
  }

  private static boolean line(Segment segment) {
    Segment shape = segment.resolved();
    return Stretch.of(shape.xx(), shape.yy(), shape.xy()).elongation() > LINE_ELONGATION;
  }

  void reject(Rejection reason) {
    rejected.merge(reason, 1, Integer::sum);
  }

  private void keep(List<Segment> whole, List<Segment> all) {
    Neighbours neighbours = new Neighbours(plane.width(), plane.height(), all);
    for (Segment segment : whole) {
      double reach = NEAR_WIDTHS * Math.sqrt(segment.xx() + segment.yy());
      if (neighbours.nearby(segment, reach, FAINT_SHARE)) {
        reject(Rejection.BLENDED);
      } else {
        kept.add(segment);
      }
    }
    kept.sort(
        Comparator.comparingDouble((Segment s) -> -s.peak() * s.pixels().length)
            .thenComparingInt(Segment::peakIndex));
    if (kept.size() > MOST_STARS) {
      kept.subList(MOST_STARS, kept.size()).clear();
    }
  }

  private Optional<Rejection> fault(Segment segment) {
    double margin = 1 + 3 * Math.sqrt(Math.max(segment.xx(), segment.yy()));
    boolean nearEdge =
        segment.x() < margin
            || segment.y() < margin
            || segment.x() > plane.width() - 1 - margin
            || segment.y() > plane.height() - 1 - margin;
    if (segment.atEdge() || nearEdge) {
      return Optional.of(Rejection.AT_EDGE);
    }
    if (hot(segment)) {
      return Optional.of(Rejection.HOT_PIXEL);
    }
    return flat(segment) || holed(segment) ? Optional.of(Rejection.SATURATED) : Optional.empty();
  }

  private boolean hot(Segment segment) {
    int x = segment.peakIndex() % plane.width();
    int y = segment.peakIndex() / plane.width();
    int step = plane.sampling() == Sampling.ALL ? 1 : 2;
    double peak = 0;
    int px = x;
    int py = y;
    for (int dy = -1; dy <= 1; dy++) {
      for (int dx = -1; dx <= 1; dx++) {
        if (plane.sampling().takes(x + dx, y + dy) && plane.at(x + dx, y + dy) > peak) {
          peak = plane.at(x + dx, y + dy);
          px = x + dx;
          py = y + dy;
        }
      }
    }
    double ring = 0;
    int n = 0;
    for (int dy = -1; dy <= 1; dy++) {
      for (int dx = -1; dx <= 1; dx++) {
        int nx = px + dx;
        int ny = py + dy;
        boolean inside = nx >= 0 && ny >= 0 && nx < plane.width() && ny < plane.height();
        if (inside && (dx != 0 || dy != 0) && plane.sampling().takes(nx, ny)) {
          ring += plane.at(nx, ny);
          n++;
        }
      }
    }
    // The four nearest greens of a mosaic lie at the corners, farther out than the mean of eight.
    return n > 0 && ring / n < HOT_SHARE / step * peak;
  }

  private boolean flat(Segment segment) {
    double top = 0;
    for (int at : segment.pixels()) {
      top = Math.max(top, value(at));
    }
    int count = 0;
    for (int at : segment.pixels()) {
      if (value(at) >= TOP * top) {
        count++;
      }
    }
    double noise = background.noise((int) segment.x(), (int) segment.y());
    double area = Math.sqrt(Math.max(0, segment.xx() * segment.yy() - segment.xy() * segment.xy()));
    // A faint star's top is flat by noise alone; a Gaussian has 0.19 area within 3 % of its top.
    return top * (1 - TOP) > 2 * noise && count >= 4 + 0.6 * area;
  }

  /** Whether a bright pixel lies well below both pixels beside it, which no star image allows. */
  private boolean holed(Segment segment) {
    int step = plane.sampling() == Sampling.ALL ? 1 : 2;
    double noise = background.noise((int) segment.x(), (int) segment.y());
    for (int at : segment.pixels()) {
      int x = at % plane.width();
      int y = at / plane.width();
      boolean inside =
          x >= step && y >= step && x < plane.width() - step && y < plane.height() - step;
      if (!inside || !plane.sampling().takes(x, y)) {
        continue;
      }
      double across = Math.min(plane.at(x - step, y), plane.at(x + step, y));
      double along = Math.min(plane.at(x, y - step), plane.at(x, y + step));
      double beside = Math.max(across, along);
      boolean clear = beside - plane.at(x, y) > 10 * noise;
      if (clear && plane.at(x, y) < HOLE * beside && beside > segment.peak() / 2) {
        return true;
      }
    }
    return false;
  }

  private double value(int at) {
    return plane.at(at % plane.width(), at / plane.width());
  }

  /** Whether a saddle clearly below both parts two peaks of the smoothed segment. */
  private boolean hasTwoPeaks(Segment segment) {
    double noise = SMOOTHED_NOISE * background.noise((int) segment.x(), (int) segment.y());
    int x0 = segment.peakIndex() % plane.width();
    int y0 = segment.peakIndex() / plane.width();
    for (int at : segment.pixels()) {
      int x = at % plane.width();
      int y = at / plane.width();
      if (Math.hypot(x - x0, y - y0) < 2 || !localPeak(x, y)) {
        continue;
      }
      double height = Segments.smoothed(plane, x, y);
      double saddle = lowestBetween(x0, y0, x, y);
      boolean clear = height - saddle > Math.max(SADDLE_SIGMAS * noise, 0.1 * height);
      if (clear && height > FAINT_SHARE * segment.peak()) {
        return true;
      }
    }
    return false;
  }

  private boolean localPeak(int x, int y) {
    double here = Segments.smoothed(plane, x, y);
    for (int dy = -1; dy <= 1; dy++) {
      for (int dx = -1; dx <= 1; dx++) {
        boolean other = dx != 0 || dy != 0;
        if (other && Segments.smoothed(plane, x + dx, y + dy) > here) {
          return false;
        }
      }
    }
    return true;
  }

  private double lowestBetween(int x0, int y0, int x1, int y1) {
    int steps = Math.max(Math.abs(x1 - x0), Math.abs(y1 - y0));
    double lowest = Double.POSITIVE_INFINITY;
    for (int s = 0; s <= steps; s++) {
      int x = x0 + Math.round((float) s * (x1 - x0) / steps);
      int y = y0 + Math.round((float) s * (y1 - y0) / steps);
      lowest = Math.min(lowest, Segments.smoothed(plane, x, y));
    }
    return lowest;
  }
}
