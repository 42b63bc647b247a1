package io.github.roundstar.pipeline;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.LongStream;

/**
 * Nights of any kind through the whole tool: each must end with a page and a JSON file that are
 * sound, and no fault of the tool. As a program: {@code RandomNights FIRST COUNT [TABLE]}.
 */
final class RandomNights {
  private RandomNights() {}

  /**
   * What came of some nights.
   *
   * @param nights how many were played
   * @param pages nights that ended with a page
   * @param refused logs without a row that could be used, told as such
   * @param failures seeds with what went wrong
   */
  record Tally(int nights, int pages, int refused, List<String> failures) {}

  static Tally play(long first, int count, Path folder) throws InterruptedException {
    // Threads of their own: the tool itself waits for work in the common pool.
    ExecutorService workers =
        Executors.newFixedThreadPool(Runtime.getRuntime().availableProcessors());
    try {
      List<Future<Integer>> playing =
          LongStream.range(first, first + count)
              .mapToObj(seed -> workers.submit(() -> one(seed, folder.resolve("night-" + seed))))
              .toList();
      int pages = 0;
      int refused = 0;
      List<String> failures = new ArrayList<>();
      for (int i = 0; i < count; i++) {
        try {
          int made = playing.get(i).get();
          pages += made > 0 ? 1 : 0;
          refused += made > 0 ? 0 : 1;
        } catch (ExecutionException e) {
          Throwable why = e.getCause();
          String by = why.getCause() == null ? "" : " by " + why.getCause();
          failures.add("seed " + (first + i) + ": " + why + by);
        }
      }
      return new Tally(count, pages, refused, failures);
    } finally {
      workers.shutdownNow();
    }
  }

  /** Analyses one night and checks what came of it; the number of its pages. */
  private static int one(long seed, Path folder) throws Exception {
    Files.createDirectories(folder);
    RandomNight night = RandomNight.of(seed);
    Path log = write(folder, "night.ecsv", night.log());
    AnalysisOutcome outcome =
        Analysis.run(
            new AnalysisJob(
                List.of(log.toString()),
                write(folder, "equipment.toml", night.equipment()),
                Optional.empty(),
                folder.resolve("out"),
                Optional.empty(),
                seed % 3 > 0,
                seed % 5 == 0,
                "test",
                write(folder, "exposures.ecsv", night.exposures())));
    if (!outcome.faults().isEmpty()) {
      throw new AssertionError(
          outcome.faults().get(0).told().toString(), outcome.faults().get(0).cause());
    }
    for (FinishedNight finished : outcome.nights()) {
      Soundness.check(finished.report(), finished.json(), "night");
    }
    if (outcome.nights().isEmpty() && outcome.unusable().isEmpty()) {
      throw new AssertionError("neither a page nor a reason");
    }
    delete(folder);
    return outcome.nights().size();
  }

  private static Optional<Path> write(Path folder, String name, Optional<String> text)
      throws IOException {
    return text.isPresent() ? Optional.of(write(folder, name, text.get())) : Optional.empty();
  }

  private static Path write(Path folder, String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text, UTF_8);
  }

  private static void delete(Path folder) throws IOException {
    List<Path> all = new ArrayList<>();
    try (var files = Files.walk(folder)) {
      files.forEach(all::add);
    }
    for (int i = all.size() - 1; i >= 0; i--) {
      Files.delete(all.get(i));
    }
  }

  /** Plays nights and prints what came of them. */
  public static void main(String[] arguments) throws IOException, InterruptedException {
    Locale.setDefault(Locale.ROOT);
    System.setProperty("java.awt.headless", "true");
    long first = Long.parseLong(arguments[0]);
    int count = Integer.parseInt(arguments[1]);
    Path folder = Files.createTempDirectory("random-nights");
    int pages = 0;
    int refused = 0;
    List<String> failures = new ArrayList<>();
    for (int done = 0; done < count; done += 500) {
      Tally tally = play(first + done, Math.min(500, count - done), folder);
      pages += tally.pages();
      refused += tally.refused();
      failures.addAll(tally.failures());
      tally.failures().forEach(System.out::println);
      System.out.printf(
          Locale.ROOT, "%d nights, %d faults%n", Math.min(count, done + 500), failures.size());
    }
    System.out.printf(
        Locale.ROOT,
        "| random nights, seeds %d to %d | %d | %d | %d | %d |%n",
        first,
        first + count - 1,
        count,
        pages,
        refused,
        failures.size());
  }
}
