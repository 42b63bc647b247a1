package io.github.roundstar.ingest.layout;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.DoublePredicate;

/** The fields of one column of a sample: its name and unit, and what its values look like. */
final class ColumnData {
  private static final int MOST_WORDS = 40;

  final int index;
  final String name;
  final String unit;
  final List<String> cells;
  final double[] numbers;
  final Set<String> words = new TreeSet<>();
  final int filled;
  final int numeric;

  ColumnData(int index, String name, String unit, List<String> cells, boolean decimalComma) {
    this.index = index;
    this.name = name;
    this.unit = unit;
    this.cells = cells;
    this.numbers = new double[cells.size()];
    int some = 0;
    int good = 0;
    for (int i = 0; i < numbers.length; i++) {
      String cell = cells.get(i);
      numbers[i] = Numbers.of(cell, decimalComma).orElse(Double.NaN);
      some += cell.isEmpty() ? 0 : 1;
      good += Double.isNaN(numbers[i]) ? 0 : 1;
      if (Double.isNaN(numbers[i]) && !cell.isEmpty() && words.size() < MOST_WORDS) {
        words.add(cell);
      }
    }
    filled = some;
    numeric = good;
  }

  /** Whether it holds numbers, but for a word or two that stand for a missing value. */
  boolean isNumeric() {
    return numeric > 0 && numeric * 10 >= filled * 5 && words.size() <= 2;
  }

  double[] finite() {
    return Arrays.stream(numbers).filter(Double::isFinite).toArray();
  }

  double share(DoublePredicate test) {
    double[] values = finite();
    return values.length == 0
        ? 0
        : Arrays.stream(values).filter(test).count() / (double) values.length;
  }

  boolean isWhole() {
    return share(v -> v == Math.rint(v)) == 1;
  }

  /** Median step from value to value. */
  double step() {
    double[] values = finite();
    List<Double> steps = new ArrayList<>();
    for (int i = 1; i < values.length; i++) {
      steps.add(values[i] - values[i - 1]);
    }
    steps.sort(null);
    return steps.isEmpty() ? Double.NaN : steps.get(steps.size() / 2);
  }

  /** Share of steps that go up. */
  double rising() {
    double[] values = finite();
    int up = 0;
    for (int i = 1; i < values.length; i++) {
      up += values[i] > values[i - 1] ? 1 : 0;
    }
    return values.length < 2 ? 0 : up / (values.length - 1.0);
  }

  String called() {
    return name.isEmpty() ? "column " + (index + 1) : "column " + name;
  }
}
