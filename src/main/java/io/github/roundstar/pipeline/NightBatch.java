package io.github.roundstar.pipeline;

import io.github.roundstar.model.Night;
import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/** Nights worked on as many at a time as there are cores, and what came of each. */
final class NightBatch {
  private final List<Night> nights;
  private final Map<Night, Object> outcomes = Collections.synchronizedMap(new IdentityHashMap<>());

  private NightBatch(List<Night> nights) {
    this.nights = nights;
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
    for (UnwritableOutputException unwritable : batch.all(UnwritableOutputException.class)) {
      throw unwritable;
    }
    return batch;
  }

  private static Object outcome(Night night, int index, Work work) {
    try {
      return work.of(index);
    } catch (UnwritableOutputException e) {
      return e;
    } catch (RuntimeException e) {
      return new NightFault(night.name(), e);
    } catch (OutOfMemoryError e) {
      return Memory.exhaustedBy("night " + night.name());
    }
  }

  /** Finished nights in the order of the nights. */
  List<FinishedNight> finished() {
    return all(FinishedNight.class);
  }

  /** Nights that a fault of the tool stopped. */
  List<NightFault> faults() {
    return all(NightFault.class);
  }

  /** What the user is told of nights that do not fit into the memory. */
  List<String> tooLong() {
    return all(String.class);
  }

  private <T> List<T> all(Class<T> kind) {
    List<T> all = new ArrayList<>();
    for (Night night : nights) {
      if (kind.isInstance(outcomes.get(night))) {
        all.add(kind.cast(outcomes.get(night)));
      }
    }
    return all;
  }
}
