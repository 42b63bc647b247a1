package io.github.roundstar.pipeline;

import io.github.roundstar.model.Night;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/** Nights worked on as many at a time as there are cores, and what came of each. */
final class NightBatch {
  private final List<Night> nights;
  private final Map<Night, Outcome> outcomes = Collections.synchronizedMap(new IdentityHashMap<>());

  private NightBatch(List<Night> nights) {
    this.nights = nights;
  }

  /** What came of a night. */
  private sealed interface Outcome {
    record Finished(FinishedNight night) implements Outcome {}

    record Unwritable(UnwritableOutputException exception) implements Outcome {}

    record Faulty(NightFault fault) implements Outcome {}

    record TooLong(String remedy) implements Outcome {}
  }

  /** What is done with a night. */
  interface Work {
    /** Finishes the night with this index. */
    FinishedNight of(int index) throws UnwritableOutputException;
  }

  /**
   * Finishes the nights.
   *
   * @throws UnwritableOutputException when the results of a night cannot be written
   */
  static NightBatch of(List<Night> nights, Work work, Progress progress)
      throws UnwritableOutputException {
    NightBatch batch = new NightBatch(nights);
    List<Integer> indices = IntStream.range(0, nights.size()).boxed().toList();
    AllCores.each(
        indices, i -> batch.outcomes.put(nights.get(i), outcome(nights.get(i), i, work)), progress);
    for (Outcome.Unwritable unwritable : batch.all(Outcome.Unwritable.class)) {
      throw unwritable.exception();
    }
    return batch;
  }

  private static Outcome outcome(Night night, int index, Work work) {
    try {
      return new Outcome.Finished(work.of(index));
    } catch (UnwritableOutputException e) {
      return new Outcome.Unwritable(e);
    } catch (RuntimeException e) {
      return new Outcome.Faulty(new NightFault(night.name(), e));
    } catch (OutOfMemoryError e) {
      return new Outcome.TooLong(Memory.exhaustedBy("night " + night.name()));
    }
  }

  /** Finished nights in the order of the nights. */
  List<FinishedNight> finished() {
    return all(Outcome.Finished.class).stream().map(Outcome.Finished::night).toList();
  }

  /** Nights that a fault of the tool stopped. */
  List<NightFault> faults() {
    return all(Outcome.Faulty.class).stream().map(Outcome.Faulty::fault).toList();
  }

  /** What the user is told of nights that do not fit into the memory. */
  List<String> tooLong() {
    return all(Outcome.TooLong.class).stream().map(Outcome.TooLong::remedy).toList();
  }

  private <T extends Outcome> List<T> all(Class<T> kind) {
    return nights.stream().map(outcomes::get).filter(kind::isInstance).map(kind::cast).toList();
  }
}
