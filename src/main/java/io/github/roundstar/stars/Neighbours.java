package io.github.roundstar.stars;

import java.util.ArrayList;
import java.util.List;

/** Segments sorted into cells, so that those near a place are found at once. */
final class Neighbours {
  private static final int CELL = 32;

  private final int columns;
  private final int rows;
  private final List<List<Segment>> cells = new ArrayList<>();

  Neighbours(int width, int height, List<Segment> segments) {
    columns = width / CELL + 1;
    rows = height / CELL + 1;
    for (int i = 0; i < columns * rows; i++) {
      cells.add(List.of());
    }
    for (Segment segment : segments) {
      int cell = (int) segment.y() / CELL * columns + (int) segment.x() / CELL;
      if (cells.get(cell).isEmpty()) {
        cells.set(cell, new ArrayList<>());
      }
      cells.get(cell).add(segment);
    }
  }

  /** Whether another segment with at least this share of the peak lies within reach [px]. */
  boolean nearby(Segment of, double reach, double share) {
    int fromX = Math.max(0, (int) (of.x() - reach) / CELL);
    int toX = Math.min(columns - 1, (int) (of.x() + reach) / CELL);
    int fromY = Math.max(0, (int) (of.y() - reach) / CELL);
    int toY = Math.min(rows - 1, (int) (of.y() + reach) / CELL);
    for (int r = fromY; r <= toY; r++) {
      for (int c = fromX; c <= toX; c++) {
        for (Segment other : cells.get(r * columns + c)) {
          boolean near = Math.hypot(other.x() - of.x(), other.y() - of.y()) < reach;
          if (other != of && near && other.peak() > share * of.peak()) {
            return true;
          }
        }
      }
    }
    return false;
  }
}
