package io.github.roundstar.pipeline;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Logs that may have a night in common, so that each group can be worked out by itself. */
final class LogGroups {
  private final Map<Path, Path> parents = new TreeMap<>();
  private final Map<String, Path> firstOfNight = new HashMap<>();

  /** A log with the names of its nights. */
  void add(Path log, Collection<String> nights) {
    parents.put(log, log);
    for (String night : nights) {
      Path other = firstOfNight.putIfAbsent(night, log);
      if (other != null) {
        Path one = root(other);
        Path two = root(log);
        // The smaller path leads, so that the order of the logs does not matter.
        if (one.compareTo(two) < 0) {
          parents.put(two, one);
        } else {
          parents.put(one, two);
        }
      }
    }
  }

  /** The groups in order of their first path. */
  List<List<Path>> all() {
    Map<Path, List<Path>> groups = new TreeMap<>();
    for (Path log : parents.keySet()) {
      groups.computeIfAbsent(root(log), any -> new ArrayList<>()).add(log);
    }
    return List.copyOf(groups.values());
  }

  private Path root(Path log) {
    Path at = log;
    while (!parents.get(at).equals(at)) {
      at = parents.get(at);
    }
    return at;
  }
}
