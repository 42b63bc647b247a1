package io.github.roundstar.decisions;

import io.github.roundstar.decisions.Judged.Grade;
import io.github.roundstar.worlds.Kind;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Function;
import java.util.stream.Stream;
import org.apache.commons.math3.stat.interval.ClopperPearsonInterval;
import org.apache.commons.math3.stat.interval.ConfidenceInterval;

/**
 * Decisions against the truth of the second simulator, so many nights of every kind, as a table.
 * Every night counts, those too on which the tool cannot tell. Not a test: a program that writes
 * {@code reports/decisions.md} and prints the nights that were not right.
 */
public final class DecisionTable {
  private static final String HEAD =
      """

      | kind | nights | right | harmless neighbour | falls short | too cheap | too dear | cannot tell | no answer | made worse | as it was: interval held | cure: interval held | led back |
      |---|---|---|---|---|---|---|---|---|---|---|---|---|
      """;

  private DecisionTable() {}

  /** Counts of some nights. */
  private static final class Tally {
    int nights;
    int failed;
    int worse;
    final Map<Grade, Integer> grades = new EnumMap<>(Grade.class);
    int[] asItWas = new int[2];
    int[] named = new int[2];
    int[] back = new int[2];

    void add(Optional<DecisionNight> night) {
      nights++;
      if (night.isEmpty()) {
        failed++;
        return;
      }
      grades.merge(night.get().judged().grade(), 1, Integer::sum);
      worse += night.get().worse() ? 1 : 0;
      count(asItWas, night.get().asItWasHeld());
      count(named, night.get().namedHeld());
      count(back, night.get().back());
    }

    private static void count(int[] into, Optional<Boolean> held) {
      into[0] += held.isPresent() && held.get() ? 1 : 0;
      into[1] += held.isPresent() ? 1 : 0;
    }

    int of(Grade grade) {
      return grades.getOrDefault(grade, 0);
    }

    void add(Tally other) {
      nights += other.nights;
      failed += other.failed;
      worse += other.worse;
      other.grades.forEach((grade, n) -> grades.merge(grade, n, Integer::sum));
      for (int i = 0; i < 2; i++) {
        asItWas[i] += other.asItWas[i];
        named[i] += other.named[i];
        back[i] += other.back[i];
      }
    }

    String row(String name) {
      return String.format(
          Locale.ROOT,
          "| %s | %d | %d | %d | %d | %d | %d | %d | %d | %d | %d of %d | %d of %d | %d of %d |%n",
          name,
          nights,
          of(Grade.RIGHT),
          of(Grade.NEIGHBOUR),
          of(Grade.FALLS_SHORT),
          of(Grade.TOO_CHEAP),
          of(Grade.TOO_DEAR),
          of(Grade.CANNOT_TELL),
          failed,
          worse,
          asItWas[0],
          asItWas[1],
          named[0],
          named[1],
          back[0],
          back[1]);
    }
  }

  /**
   * Plays and judges.
   *
   * @param arguments file to write; nights of each kind (default 100); first seed (default 1);
   *     begins of the kinds' names, with commas (default all)
   */
  public static void main(String[] arguments) throws Exception {
    Locale.setDefault(Locale.ROOT);
    System.setProperty("java.awt.headless", "true");
    Path file = Path.of(arguments.length > 0 ? arguments[0] : "reports/decisions.md");
    int nights = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 100;
    int first = arguments.length > 2 ? Integer.parseInt(arguments[2]) : 1;
    String begins = arguments.length > 3 ? arguments[3] : "";
    StringBuilder text = new StringBuilder(introduction(nights, first)).append(HEAD);
    Tally all = new Tally();
    for (Kind kind : Kind.values()) {
      if (Stream.of(begins.split(",", -1)).noneMatch(kind.name()::startsWith)) {
        continue;
      }
      Tally tally = new Tally();
      for (Optional<DecisionNight> night : play(kind, first, nights)) {
        tally.add(night);
        night
            .filter(n -> n.judged().grade() != Grade.RIGHT || n.back().orElse(false))
            .ifPresent(n -> System.out.println(n.line()));
      }
      all.add(tally);
      text.append(tally.row(kind.name().toLowerCase(Locale.ROOT).replace('_', ' ')));
      System.out.print(tally.row(kind.name()));
      Files.writeString(
          file,
          (text + all.row("all") + pooled(all)).replace("\r\n", "\n"),
          StandardCharsets.UTF_8);
    }
  }

  /** Nights in order of their seeds; nothing of a night that ended in a fault, which is printed. */
  private static List<Optional<DecisionNight>> play(Kind kind, int first, int nights)
      throws InterruptedException {
    // Threads of their own: the tool itself waits for work in the common pool.
    ExecutorService workers =
        Executors.newFixedThreadPool(Runtime.getRuntime().availableProcessors());
    try {
      List<Future<DecisionNight>> playing = new ArrayList<>();
      for (int i = 0; i < nights; i++) {
        long seed = first + i;
        playing.add(workers.submit(() -> DecisionNight.of(kind, seed)));
      }
      List<Optional<DecisionNight>> played = new ArrayList<>();
      for (int i = 0; i < nights; i++) {
        try {
          played.add(Optional.of(playing.get(i).get()));
        } catch (ExecutionException e) {
          System.out.println(kind + " seed " + (first + i) + ": " + e.getCause());
          e.getCause().printStackTrace(System.out);
          played.add(Optional.empty());
        }
      }
      return played;
    } finally {
      workers.shutdownNow();
    }
  }

  private static String pooled(Tally all) {
    return "\n| all kinds together | nights | share, with its 95 % interval |\n|---|---|---|\n"
        + share("decision right", all, t -> t.of(Grade.RIGHT), all.nights)
        + share(
            "right or a harmless neighbour",
            all,
            t -> t.of(Grade.RIGHT) + t.of(Grade.NEIGHBOUR),
            all.nights)
        + share("made worse by what was named", all, t -> t.worse, all.nights)
        + share("images as it was within the interval", all, t -> t.asItWas[0], all.asItWas[1])
        + share("images with the cure within the interval", all, t -> t.named[0], all.named[1])
        + share("settings made, then led back", all, t -> t.back[0], all.back[1]);
  }

  private static String share(String what, Tally all, Function<Tally, Integer> count, int of) {
    if (of == 0) {
      return String.format(Locale.ROOT, "| %s | 0 | - |%n", what);
    }
    int held = count.apply(all);
    ConfidenceInterval band =
        held == 0 || held == of
            ? new ConfidenceInterval(
                held == 0 ? 0 : Math.pow(0.025, 1.0 / of),
                held == 0 ? 1 - Math.pow(0.025, 1.0 / of) : 1,
                0.95)
            : new ClopperPearsonInterval().createInterval(of, held, 0.95);
    return String.format(
        Locale.ROOT,
        "| %s | %d of %d | %.1f %% (%.1f .. %.1f) |%n",
        what,
        held,
        of,
        100.0 * held / of,
        100 * band.getLowerBound(),
        100 * band.getUpperBound());
  }

  private static String introduction(int nights, int first) {
    return String.format(
        Locale.ROOT,
        """
        # How often the decision is right

        Written by `DecisionTable` (its command is in DEVELOPERS.md): %d nights of each kind of the second simulator, seeds from %d on,
        logs rounded as programs write them; a third of the nights come without a list of exposures, a third with their times, a third with
        measured shapes; nights whose trouble shows in images alone always have shapes. What is true of a night is found by playing it again with each
        rung's best cure; what the tool named is played too. The need is met where at least %.0f %% of the images are round: adaptive moments
        (Bernstein and Jarvis 2002) of seeing and true motion, in the middle and in the worst corner, at most 1.15 long by short unless the user set
        another limit. Kinds are named by their trouble, which is drawn from less to more than matters; a night may need nothing.

        *Right*: the cheapest rung that really meets the need, and the cure as named meets it. *Harmless neighbour*: one rung dearer, and the
        need is met; or one image more or less would have turned the answer. *Falls short*: the right rung, but the cure as named does not
        do. *Cannot tell*: no rung was decided on. *No answer*: the tool failed. *Made worse*: with what was named, fewer images are round
        than without. *Interval held*: the true count of round images lies in the
        interval of 95 %%; where the tool judged windows of its own, shares are compared to one window. *Led back*: of the nights with recommended settings,
        those that, played with them and analysed again, are told to turn one of them back.
        """,
        nights,
        first,
        100 * TrueLadder.NEEDED_SHARE);
  }
}
