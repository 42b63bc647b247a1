package io.github.roundstar.pipeline;

import io.github.roundstar.model.Night;
import io.github.roundstar.results.Faults;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/** Nights worked on as many at a time as there are cores, and what came of each. */
final class NightBatch {
  private final List<Night> nights;
  private final Faults faults;
  private final Map<Night, Outcome> outcomes = Collections.synchronizedMap(new IdentityHashMap<>());

  private NightBatch(List<Night> nights, Faults faults) {
    this.nights = nights;
    this.faults = faults;
  }

  /** What came of a night. */
  private sealed interface Outcome {
    record Finished(FinishedNight night) implements Outcome {}

    record Unwritable(UnwritableOutputException exception) implements Outcome {}

    record Lost() implements Outcome {}

    record TooLong(String remedy) implements Outcome {}
  }

  /** What is done with a night. */
  interface Work {
    /** Finishes the night with this index; parts of it that a fault takes go into its faults. */
    FinishedNight of(int index, Faults ofNight) throws UnwritableOutputException;
  }

  /**
   * Finishes the nights.
   *
   * @param faults hears of nights, and of parts of nights, that a fault of the tool took
   * @throws UnwritableOutputException when the results of a night cannot be written
   */
  static NightBatch of(List<Night> nights, Work work, Progress progress, Faults faults)
      throws UnwritableOutputException {
    NightBatch batch = new NightBatch(nights, faults);
    List<Integer> indices = IntStream.range(0, nights.size()).boxed().toList();
    AllCores.each(
        indices,
        i -> batch.outcomes.put(nights.get(i), batch.outcome(nights.get(i), i, work)),
        progress);
    for (Outcome.Unwritable unwritable : batch.all(Outcome.Unwritable.class)) {
      throw unwritable.exception();
    }
    return batch;
  }

  private Outcome outcome(Night night, int index, Work work) {
    Faults ofNight = new Faults();
    try {
      FinishedNight finished = work.of(index, ofNight);
      faults.addAll("night " + night.name(), ofNight);
      return new Outcome.Finished(finished);
    } catch (UnwritableOutputException e) {
      return new Outcome.Unwritable(e);
    } catch (RuntimeException | StackOverflowError e) {
      faults.add(noReport(night), e);
      return new Outcome.Lost();
    } catch (OutOfMemoryError e) {
      return new Outcome.TooLong(Memory.exhaustedBy("night " + night.name()));
    }
  }

  /** Finished nights in the order of the nights. */
  List<FinishedNight> finished() {
    return all(Outcome.Finished.class).stream().map(Outcome.Finished::night).toList();
  }

  /** Names of nights that a fault of the tool took. */
  List<String> lost() {
    return nights.stream()
        .filter(night -> outcomes.get(night) instanceof Outcome.Lost)
        .map(Night::name)
        .toList();
  }

  /** Part that is missing where a fault took all of a night. */
  static String noReport(Night night) {
    return "night " + night.name() + ": its report";
  }

  /** What the user is told of nights that do not fit into the memory. */
  List<String> tooLong() {
    return all(Outcome.TooLong.class).stream().map(Outcome.TooLong::remedy).toList();
  }

  private <T extends Outcome> List<T> all(Class<T> kind) {
    return nights.stream().map(outcomes::get).filter(kind::isInstance).map(kind::cast).toList();
  }
}
