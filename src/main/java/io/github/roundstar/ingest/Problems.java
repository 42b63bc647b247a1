package io.github.roundstar.ingest;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.model.RepeatedLines;
import io.github.roundstar.model.SourceFile;
import io.github.roundstar.model.UnusableRow;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Supplier;

/** Collects what is wrong with a file that can still be used: all of it counted, a part kept. */
final class Problems {
  private static final int MOST_KINDS = 50;

  private final String file;
  private final SortedMap<String, Integer> byReason = new TreeMap<>();
  private final List<UnusableRow> first = new ArrayList<>();
  private final Map<String, Kind> warnings = new LinkedHashMap<>();
  private int moreWarnings;

  /** Warnings that differ in numbers only. */
  private static final class Kind {
    final List<String> told = new ArrayList<>();
    String lastWhat;
    String remedy;
    int more;
  }

  Problems(String file) {
    this.file = file;
  }

  /** Counts a row; {@code what} is asked for only while rows are still kept. */
  void unusable(long line, RowProblem problem, Supplier<String> what) {
    byReason.merge(problem.kind(), 1, Integer::sum);
    if (first.size() < SourceFile.FIRST_UNUSABLE) {
      first.add(new UnusableRow(line, what.get() + ": " + problem.remedy()));
    }
  }

  /** Line 0 stands for the whole file; after the third of a kind the others are counted. */
  void warn(long line, String what, String remedy) {
    String name = RepeatedLines.kind(what);
    if (!warnings.containsKey(name) && warnings.size() == MOST_KINDS) {
      moreWarnings++;
      return;
    }
    Kind kind = warnings.computeIfAbsent(name, any -> new Kind());
    if (kind.told.size() < RepeatedLines.TOLD) {
      kind.told.add(FormatException.located(file, line, what, remedy));
    } else {
      kind.more++;
      kind.lastWhat = "line " + line + ": " + what;
      kind.remedy = remedy;
    }
  }

  SortedMap<String, Integer> byReason() {
    return byReason;
  }

  List<UnusableRow> first() {
    return first;
  }

  List<String> warnings() {
    List<String> all = new ArrayList<>();
    for (Kind kind : warnings.values()) {
      all.addAll(kind.told);
      if (kind.more > 0) {
        all.add(
            FormatException.located(
                file,
                0,
                String.format(
                    Locale.ROOT, "and %,d more, the last in %s", kind.more, kind.lastWhat),
                kind.remedy));
      }
    }
    if (moreWarnings > 0) {
      all.add(
          FormatException.located(
              file, 0, moreWarnings + " more warnings", "mend the first ones and read again"));
    }
    return all;
  }
}
