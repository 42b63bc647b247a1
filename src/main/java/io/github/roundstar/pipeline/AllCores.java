package io.github.roundstar.pipeline;

import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;

/** Does the same with many things, as many at a time as there are cores. */
final class AllCores {
  private AllCores() {}

  /**
   * Returns when all are done.
   *
   * @param things what to do it with
   * @param action throws nothing that is expected; what it throws is thrown here
   * @param progress hears after each
   */
  static <T> void each(List<T> things, Consumer<T> action, Progress progress) {
    ExecutorService workers =
        Executors.newFixedThreadPool(Runtime.getRuntime().availableProcessors());
    AtomicInteger done = new AtomicInteger();
    try {
      List<Future<?>> futures =
          things.stream()
              .<Future<?>>map(
                  thing ->
                      workers.submit(
                          () -> {
                            action.accept(thing);
                            synchronized (progress) {
                              progress.at(done.incrementAndGet(), things.size());
                            }
                          }))
              .toList();
      for (Future<?> future : futures) {
        future.get();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("interrupted", e);
    } catch (ExecutionException e) {
      throw new IllegalStateException(e.getCause());
    } finally {
      workers.shutdownNow();
    }
  }
}
