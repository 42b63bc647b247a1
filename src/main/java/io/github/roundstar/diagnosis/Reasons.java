package io.github.roundstar.diagnosis;

import io.github.roundstar.motion.Answer;
import io.github.roundstar.results.Faults;
import io.github.roundstar.results.NotComputed;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import java.util.function.Supplier;

/** Collects why figures are missing while a result is being filled. */
final class Reasons {
  private record Gap(String figure, String because) {}

  private final int runs;
  private final Faults faults;
  private final Map<Gap, Set<Integer>> runsByGap = new LinkedHashMap<>();
  private final List<NotComputed> ofDocument = new ArrayList<>();

  Reasons(int runs, Faults faults) {
    this.runs = runs;
    this.faults = faults;
  }

  /** Notes reasons for figures below {@code prefix} of the document. */
  Scope below(String prefix) {
    return new Scope(
        prefix,
        faults,
        (figure, because) -> ofDocument.add(new NotComputed(prefix + figure, because)));
  }

  /** Notes reasons for figures of a run, by its index. */
  Scope ofRun(int index) {
    return new Scope(
        "/runs/" + index,
        faults,
        (figure, because) ->
            runsByGap.computeIfAbsent(new Gap(figure, because), gap -> new TreeSet<>()).add(index));
  }

  /**
   * Notes reasons for figures of the items of a list; one that holds wherever the figure is missing
   * is said once.
   *
   * @param missing for each item the reasons by figure, such as {@code /cause}
   */
  void ofItems(String list, List<Map<String, String>> missing) {
    Map<String, Set<String>> reasons = new LinkedHashMap<>();
    missing.forEach(
        item ->
            item.forEach(
                (figure, because) ->
                    reasons.computeIfAbsent(figure, f -> new TreeSet<>()).add(because)));
    reasons.forEach(
        (figure, different) -> {
          if (different.size() == 1) {
            below(list + "/*").note(figure, different.iterator().next());
            return;
          }
          for (int i = 0; i < missing.size(); i++) {
            if (missing.get(i).containsKey(figure)) {
              below(list + "/" + i).note(figure, missing.get(i).get(figure));
            }
          }
        });
  }

  /** All of them; a reason that holds for every run is said once. */
  List<NotComputed> all() {
    List<NotComputed> all = new ArrayList<>(ofDocument);
    runsByGap.forEach(
        (gap, indices) -> {
          if (indices.size() == runs) {
            all.add(new NotComputed("/runs/*" + gap.figure(), gap.because()));
          } else {
            indices.forEach(
                i -> all.add(new NotComputed("/runs/" + i + gap.figure(), gap.because())));
          }
        });
    return all;
  }

  /** A part of the document whose figures may be missing. */
  record Scope(String place, Faults faults, BiConsumer<String, String> notes) {
    /** Notes why a figure, such as {@code /periodic}, is missing. */
    void note(String figure, String because) {
      notes.accept(figure, because);
    }

    /**
     * What a figure's work gives; what stands for it, with the reason noted, after a fault in it.
     */
    <T> T part(String figure, Supplier<T> work, T without) {
      return faults.withinOrElse(
          place + figure,
          work,
          () -> {
            note(figure, Faults.BECAUSE);
            return without;
          });
    }

    /** The figure, or null with its reason noted. */
    <T> T orNull(String figure, Answer<T> answer) {
      if (answer.value().isEmpty()) {
        note(figure, answer.because());
      }
      return answer.value().orElse(null);
    }

    /** The value, or null with the reason noted. */
    <T> T orNull(String figure, Optional<T> value, String because) {
      return orNull(figure, value.map(Answer::of).orElseGet(() -> Answer.none(because)));
    }

    /** The number, or null with the reason noted. */
    Double orNull(String figure, OptionalDouble value, String because) {
      return orNull(figure, value.stream().boxed().findFirst(), because);
    }
  }
}
