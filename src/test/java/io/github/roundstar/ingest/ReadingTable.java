package io.github.roundstar.ingest;

import io.github.roundstar.dialects.Dialect;
import io.github.roundstar.dialects.DialectLog;
import io.github.roundstar.dialects.Obstacle;
import io.github.roundstar.dialects.OpenFact;
import io.github.roundstar.dialects.Phrases.Half;
import io.github.roundstar.dialects.Phrases.Hand;
import io.github.roundstar.ingest.layout.Decision;
import io.github.roundstar.ingest.layout.Inference;
import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.Frames;
import io.github.roundstar.model.GuideLog;
import io.github.roundstar.model.GuideRun;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Collectors;
import org.apache.commons.math3.stat.regression.SimpleRegression;

/**
 * How often logs of invented dialects are read without a question, asked about, refused or misread,
 * as a table by obstacle. The dialects come with their truth, and from words that another hand took
 * from dictionaries.
 */
public final class ReadingTable {
  /** Figures that differ by more than this share from those of the guide table are wrong. */
  private static final double MOST_OFF = 0.03;

  /** What became of a log. */
  public enum Outcome {
    /** Figures are those of the guide table, and nothing was asked. */
    READ("read"),
    /** What only the user knows was asked. */
    ASKED_RIGHTLY("asked rightly"),
    /** Something was asked that the log tells. */
    ASKED_NEEDLESSLY("asked needlessly"),
    /** Nothing could be worked out. */
    REFUSED("refused"),
    /** It is no log of guiding, and that was said. */
    REFUSED_RIGHTLY("refused rightly"),
    /** Figures are wrong without a word. */
    MISREAD("misread");

    private final String word;

    Outcome(String word) {
      this.word = word;
    }
  }

  /**
   * The outcome of one log.
   *
   * @param log the log
   * @param outcome what became of it
   * @param detail the questions, the refusal, or which figures are off
   */
  public record Read(DialectLog log, Outcome outcome, String detail) {}

  private ReadingTable() {}

  /** Reads one log. */
  public static Read read(Path folder, DialectLog log) throws IOException {
    try {
      return outcome(folder, log);
    } catch (RuntimeException e) {
      throw new IllegalStateException(log.toString(), e);
    }
  }

  private static Read outcome(Path folder, DialectLog log) throws IOException {
    Path file = Files.write(folder.resolve("dialect.log"), log.bytes());
    try {
      List<Decision> open = List.of();
      if (!LogReader.isGuideTable(file)) {
        Inference inference = InferredLog.infer(file);
        open = inference.open();
      }
      if (!open.isEmpty()) {
        String questions = open.stream().map(Decision::line).collect(Collectors.joining("; "));
        boolean rightly =
            !log.answerable() && !log.notGuiding() && open.size() <= log.openFacts().size();
        boolean beside =
            !log.notGuiding()
                && log.openFacts().contains(OpenFact.DATE_ORDER)
                && open.stream().allMatch(d -> d.about().equals("date_order"));
        return new Read(
            log, rightly || beside ? Outcome.ASKED_RIGHTLY : Outcome.ASKED_NEEDLESSLY, questions);
      }
      GuideLog found = LogReader.read(file, Optional.empty());
      if (log.notGuiding()) {
        return new Read(log, Outcome.MISREAD, "taken for a log of guiding");
      }
      Path table =
          Files.writeString(folder.resolve("dialect.ecsv"), log.truth().get().guideTable());
      String off = differences(found, GuideTableReader.read(table), log);
      return new Read(log, off.isEmpty() ? Outcome.READ : Outcome.MISREAD, off);
    } catch (UnusableInputException e) {
      Outcome outcome = log.notGuiding() ? Outcome.REFUSED_RIGHTLY : Outcome.REFUSED;
      return new Read(log, outcome, e.getMessage());
    }
  }

  /** The figures that are off; empty where all are right. */
  private static String differences(GuideLog found, GuideLog table, DialectLog log) {
    Map<String, Double> ours = figures(found);
    Map<String, Double> theirs = figures(table);
    List<String> off = new ArrayList<>();
    theirs.forEach(
        (name, value) -> {
          double mine = ours.get(name);
          boolean undirected =
              name.startsWith("ra ") && !log.truth().get().raSignTold()
                  || name.startsWith("dec ") && !log.truth().get().decSignTold();
          double a = undirected ? Math.abs(mine) : mine;
          double b = undirected ? Math.abs(value) : value;
          double floor = name.contains("mean") ? 0.02 : 1e-9;
          if (Math.abs(a - b) > MOST_OFF * Math.abs(b) + floor) {
            off.add(String.format(Locale.ROOT, "%s %.4g for %.4g", name, mine, value));
          }
        });
    for (int axis = 0; axis < 2; axis++) {
      boolean told = axis == 0 ? log.truth().get().raSignTold() : log.truth().get().decSignTold();
      if (told && along(found, table, axis) < 0) {
        off.add(axis == 0 ? "ra sense" : "dec sense");
      }
    }
    return String.join(", ", off);
  }

  /**
   * Sum of the products of offsets in frames of the same place, each less the mean of its run,
   * since places without a set point have no mean; negative if they are reversed.
   */
  private static double along(GuideLog one, GuideLog other, int axis) {
    double sum = 0;
    for (int r = 0; r < Math.min(one.runs().size(), other.runs().size()); r++) {
      Frames a = one.runs().get(r).frames();
      Frames b = other.runs().get(r).frames();
      SimpleRegression pairs = new SimpleRegression();
      for (int i = 0; i < a.size() && a.size() == b.size(); i++) {
        if (Double.isFinite(offset(a, i, axis) * offset(b, i, axis))) {
          pairs.addData(offset(a, i, axis), offset(b, i, axis));
        }
      }
      sum += pairs.getN() > 2 ? pairs.getSumOfCrossProducts() : 0;
    }
    return sum;
  }

  private static Map<String, Double> figures(GuideLog log) {
    Map<String, Double> figures = new TreeMap<>();
    int used = 0;
    double hours = 0;
    double[] squares = new double[2];
    double[] sent = new double[2];
    double[] answer = new double[2];
    double[] slope = new double[2];
    for (GuideRun run : log.runs()) {
      Frames frames = run.frames();
      hours += (frames.timeSeconds(frames.size() - 1) - frames.timeSeconds(0)) / 3600;
      for (int axis = 0; axis < 2; axis++) {
        double mean = 0;
        double n = 0;
        for (int i = 0; i < frames.size(); i++) {
          if (frames.state(i) == FrameState.USED) {
            mean += offset(frames, i, axis);
            n++;
          }
        }
        mean /= Math.max(1, n);
        used += axis == 0 ? n : 0;
        for (int i = 0; i < frames.size(); i++) {
          double pulse = axis == 0 ? frames.raPulseMillis(i) : frames.decPulseMillis(i);
          if (frames.state(i) == FrameState.USED) {
            double away = offset(frames, i, axis) - mean;
            squares[axis] += away * away;
            slope[axis] += away * (i - frames.size() / 2.0);
            answer[axis] += Double.isNaN(pulse) ? 0 : away * pulse;
          }
          sent[axis] += Double.isNaN(pulse) ? 0 : Math.abs(pulse);
        }
      }
    }
    figures.put("used frames", (double) used);
    figures.put("hours", hours);
    for (int axis = 0; axis < 2; axis++) {
      String word = axis == 0 ? "ra " : "dec ";
      figures.put(word + "rms", Math.sqrt(squares[axis] / Math.max(1, used)));
      figures.put(word + "sent", sent[axis]);
      figures.put((axis == 0 ? "answer ra" : "answer dec"), answer[axis]);
    }
    return figures;
  }

  private static double offset(Frames frames, int i, int axis) {
    return axis == 0 ? frames.raArcsec(i) : frames.decArcsec(i);
  }

  /**
   * Prints rows of the table.
   *
   * @param arguments {@code alone}, how many logs of each obstacle; or {@code words}, {@code third}
   *     or {@code fourth} (whose words or phrases), the half of the phrases, how many logs, the
   *     first seed
   */
  public static void main(String[] arguments) throws IOException {
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    String hand = arguments[0].toUpperCase(Locale.ROOT);
    if (hand.equals("ALONE")) {
      out.print(eachAlone(Integer.parseInt(arguments[1])));
    } else {
      Half half = Half.valueOf(arguments[1].toUpperCase(Locale.ROOT));
      int logs = Integer.parseInt(arguments[2]);
      long first = Long.parseLong(arguments[3]);
      out.print(counted(hand, half, logs, first));
    }
  }

  private static String eachAlone(int alone) throws IOException {
    StringBuilder out = new StringBuilder();
    out.append("\nEach obstacle alone, on a log that reads well otherwise, ").append(alone);
    out.append(" logs each:\n\n");
    out.append(
        "| obstacle | read | asked rightly | asked needlessly | refused | refused rightly | misread |\n");
    out.append("|---|---|---|---|---|---|---|\n");
    for (Obstacle obstacle : Obstacle.values()) {
      Map<Outcome, Integer> counts = new EnumMap<>(Outcome.class);
      List<DialectLogs> own = new ArrayList<>();
      for (int i = 1; i <= alone; i++) {
        int seed = i;
        own.add(() -> obstacle.alone(seed));
      }
      for (Read read : readAll(own)) {
        counts.merge(read.outcome(), 1, Integer::sum);
        tell(read);
      }
      out.append(row(obstacle.name().toLowerCase(Locale.ROOT).replace('_', ' '), counts));
    }
    return out.toString();
  }

  /** Two rows: all logs of some seeds, and those whose text holds the answer. */
  private static String counted(String hand, Half half, int dialects, long first)
      throws IOException {
    List<DialectLogs> wanted = new ArrayList<>();
    for (long seed = first; seed < first + dialects; seed++) {
      long own = seed;
      wanted.add(
          hand.equals("WORDS")
              ? () -> Dialect.of(own)
              : () -> Dialect.inPhrases(Hand.valueOf(hand), half, own));
    }
    Map<Outcome, Integer> all = new EnumMap<>(Outcome.class);
    int answerable = 0;
    Map<Outcome, Integer> ofAnswerable = new EnumMap<>(Outcome.class);
    for (Read read : readAll(wanted)) {
      all.merge(read.outcome(), 1, Integer::sum);
      if (read.log().answerable()) {
        answerable++;
        ofAnswerable.merge(read.outcome(), 1, Integer::sum);
      }
      tell(read);
    }
    String name =
        String.join(" ", hand, half.name(), "seeds", first + "", "to", (first + dialects - 1) + "");
    return row(name.toLowerCase(Locale.ROOT), all)
        + row(answerable + " of them whose text holds the answer", ofAnswerable);
  }

  /** A log, made when it is read. */
  private interface DialectLogs {
    DialectLog log();
  }

  /** Reads logs by all processors, in order. */
  private static List<Read> readAll(List<DialectLogs> logs) throws IOException {
    ExecutorService pool = Executors.newFixedThreadPool(Runtime.getRuntime().availableProcessors());
    try {
      List<Future<Read>> reads = new ArrayList<>();
      for (DialectLogs each : logs) {
        reads.add(
            pool.submit(
                () -> {
                  Path folder = Files.createTempDirectory("dialects");
                  Read read = read(folder, each.log());
                  for (String name : List.of("dialect.log", "dialect.ecsv")) {
                    Files.deleteIfExists(folder.resolve(name));
                  }
                  Files.delete(folder);
                  return read;
                }));
      }
      List<Read> all = new ArrayList<>();
      for (Future<Read> read : reads) {
        all.add(read.get());
      }
      return all;
    } catch (InterruptedException | ExecutionException e) {
      throw new IOException(e);
    } finally {
      pool.shutdownNow();
    }
  }

  private static void tell(Read read) {
    boolean well =
        read.outcome() == Outcome.READ
            || read.outcome() == Outcome.ASKED_RIGHTLY
            || read.outcome() == Outcome.REFUSED_RIGHTLY;
    if (!well) {
      new PrintStream(System.err, true, StandardCharsets.UTF_8)
          .println(read.outcome() + " " + read.log() + ": " + read.detail().replace('\n', ' '));
    }
  }

  private static String row(String name, Map<Outcome, Integer> counts) {
    StringBuilder row = new StringBuilder("| ").append(name);
    for (Outcome outcome :
        List.of(
            Outcome.READ,
            Outcome.ASKED_RIGHTLY,
            Outcome.ASKED_NEEDLESSLY,
            Outcome.REFUSED,
            Outcome.REFUSED_RIGHTLY,
            Outcome.MISREAD)) {
      row.append(" | ").append(counts.getOrDefault(outcome, 0));
    }
    return row.append(" |\n").toString();
  }
}
