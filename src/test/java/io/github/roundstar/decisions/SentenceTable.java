package io.github.roundstar.decisions;

import static java.nio.charset.StandardCharsets.UTF_8;

import io.github.roundstar.cli.Terminal;
import io.github.roundstar.pipeline.AnalysisOutcome;
import io.github.roundstar.pipeline.FinishedNight;
import io.github.roundstar.worlds.Kind;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Every sentence of page, terminal and index of random nights against their ladder. As a program:
 * {@code SentenceTable FIRST COUNT}; it prints what contradicts, with seeds. Two nights are played
 * of each seed, the second with the exposures of neither.
 */
public final class SentenceTable {
  private SentenceTable() {}

  /** A contradiction on a night. */
  record Found(long seed, String night, Contradictions check, String sentence) {
    @Override
    public String toString() {
      return "seed " + seed + " (" + night + ") " + check + ": " + sentence;
    }
  }

  /** The contradictions of so many seeds. */
  static List<Found> read(long first, int count) throws InterruptedException {
    // Threads of their own: the tool itself waits for work in the common pool.
    ExecutorService workers =
        Executors.newFixedThreadPool(Runtime.getRuntime().availableProcessors());
    try {
      List<Future<List<Found>>> reading = new ArrayList<>();
      for (int i = 0; i < count; i++) {
        long seed = first + i;
        reading.add(workers.submit(() -> of(seed)));
      }
      List<Found> found = new ArrayList<>();
      for (int i = 0; i < count; i++) {
        try {
          found.addAll(reading.get(i).get());
        } catch (ExecutionException e) {
          throw new AssertionError("seed " + (first + i), e.getCause());
        }
      }
      return found;
    } finally {
      workers.shutdownNow();
    }
  }

  private static List<Found> of(long seed) throws Exception {
    Kind kind = Kind.values()[(int) Math.floorMod(seed, (long) Kind.values().length)];
    Kind.Drawn drawn = kind.withAnyNeed(seed);
    Path folder = Files.createTempDirectory("sentences");
    try {
      AnalysisOutcome outcome =
          Analysed.run(List.of(drawn.night(), drawn.night().onDay(1)), drawn, folder);
      String index = Files.readString(outcome.index().orElseThrow(), UTF_8);
      List<Found> found = new ArrayList<>();
      for (FinishedNight night : outcome.nights()) {
        NightTexts texts =
            new NightTexts(
                ToldLadder.read(night.json()),
                Files.readString(night.report(), UTF_8),
                Terminal.of(night.result()),
                row(index, String.valueOf(night.report().getFileName())));
        for (Contradictions check : Contradictions.values()) {
          for (String sentence : check.in(texts)) {
            found.add(
                new Found(seed, drawn + ", " + night.result().night().date(), check, sentence));
          }
        }
      }
      return found;
    } finally {
      Analysed.delete(folder);
    }
  }

  /** The row of the index that links the page. */
  private static String row(String index, String page) {
    Matcher matcher =
        Pattern.compile("(?s)<tr>(?:(?!</tr>).)*href=\"" + Pattern.quote(page) + "\".*?</tr>")
            .matcher(index);
    if (!matcher.find()) {
      throw new AssertionError("no row of " + page);
    }
    return matcher.group();
  }

  /** Reads nights and prints what contradicts. */
  public static void main(String[] arguments) throws InterruptedException {
    Locale.setDefault(Locale.ROOT);
    System.setProperty("java.awt.headless", "true");
    long first = Long.parseLong(arguments[0]);
    int count = Integer.parseInt(arguments[1]);
    Map<Contradictions, Integer> all = new EnumMap<>(Contradictions.class);
    for (int done = 0; done < count; done += 50) {
      for (Found found : read(first + done, Math.min(50, count - done))) {
        // Three examples of each say enough.
        if (all.merge(found.check(), 1, Integer::sum) <= 3) {
          System.out.println(found);
        }
      }
    }
    System.out.printf(Locale.ROOT, "%d seeds from %d, two nights each: %s%n", count, first, all);
  }
}
