package io.github.roundstar.ingest;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.model.SourceFile;
import io.github.roundstar.model.UnusableRow;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Supplier;

/** Collects what is wrong with a file that can still be used: all of it counted, a part kept. */
final class Problems {
  private static final int MOST_WARNINGS = 50;

  private final String file;
  private final SortedMap<String, Integer> byReason = new TreeMap<>();
  private final List<UnusableRow> first = new ArrayList<>();
  private final List<String> warnings = new ArrayList<>();
  private int moreWarnings;

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

  /** Line 0 stands for the whole file. */
  void warn(long line, String what, String remedy) {
    if (warnings.size() < MOST_WARNINGS) {
      warnings.add(FormatException.located(file, line, what, remedy));
    } else {
      moreWarnings++;
    }
  }

  SortedMap<String, Integer> byReason() {
    return byReason;
  }

  List<UnusableRow> first() {
    return first;
  }

  List<String> warnings() {
    List<String> all = new ArrayList<>(warnings);
    if (moreWarnings > 0) {
      all.add(
          FormatException.located(
              file, 0, moreWarnings + " more warnings", "mend the first ones and read again"));
    }
    return all;
  }
}
