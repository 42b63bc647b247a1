package io.github.roundstar.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;

/**
 * Figures of which the same is to be said.
 *
 * @param names their plain names; one that concerns single runs only says which
 * @param text what is said
 */
record FigureGroup(List<String> names, String text) {
  /** Stands for the night as a whole among the numbers of runs. */
  private static final int NIGHT = -1;

  /** Stands for every run, or for a figure that belongs to no run. */
  private static final int EVERY = 0;

  /** Groups entries by their text, in order of first mention. */
  static <T> List<FigureGroup> of(
      List<T> entries, Function<T, String> pointer, Function<T, String> text) {
    Map<String, Map<String, Set<Integer>>> runsByName = new LinkedHashMap<>();
    for (T entry : entries) {
      String figure = pointer.apply(entry);
      int run = FigureNames.ofNight(figure) ? NIGHT : FigureNames.run(figure).orElse(EVERY);
      runsByName
          .computeIfAbsent(text.apply(entry), key -> new LinkedHashMap<>())
          .computeIfAbsent(FigureNames.of(figure), key -> new TreeSet<>())
          .add(run);
    }
    List<FigureGroup> groups = new ArrayList<>();
    runsByName.forEach(
        (said, names) -> {
          List<String> worded = new ArrayList<>();
          names.forEach((name, runs) -> worded.add(name + which(runs)));
          groups.add(new FigureGroup(List.copyOf(worded), said));
        });
    return groups;
  }

  private static String which(Set<Integer> runs) {
    if (runs.contains(EVERY)) {
      return "";
    }
    String night = runs.contains(NIGHT) ? " over the night" : "";
    List<String> numbers = runs.stream().filter(run -> run != NIGHT).map(String::valueOf).toList();
    if (numbers.isEmpty()) {
      return night;
    }
    return night + (numbers.size() == 1 ? " (run " : " (runs ") + String.join(", ", numbers) + ")";
  }
}
