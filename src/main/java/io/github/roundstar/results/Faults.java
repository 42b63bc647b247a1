package io.github.roundstar.results;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Supplier;

/**
 * Faults of the tool itself that were met while one night was worked out. Each costs the part in
 * which it happened and nothing else; each is told in the result, on the page and on the terminal.
 * Good for several threads.
 */
public final class Faults {
  /** Reason of a figure that a fault took. */
  public static final String BECAUSE = "a fault of roundstar in this figure";

  private final Consumer<String> before;
  private final List<Caught> caught = new ArrayList<>();

  /** None so far. */
  public Faults() {
    this(part -> {});
  }

  /**
   * None so far.
   *
   * @param before hears of each part before it is worked out; what it throws counts as the part's
   */
  public Faults(Consumer<String> before) {
    this.before = before;
  }

  /**
   * A part that a fault took.
   *
   * @param part figure, chart or section, for people
   * @param cause with its trace
   */
  public record Caught(String part, Throwable cause) {
    /** As the result tells it. */
    public Fault told() {
      String message = cause.getMessage() == null ? "" : ": " + cause.getMessage();
      String place =
          Arrays.stream(cause.getStackTrace())
              .filter(frame -> frame.getClassName().startsWith("io.github.roundstar"))
              .findFirst()
              .map(Caught::words)
              .orElse("");
      return new Fault(part, cause.getClass().getSimpleName() + place + message);
    }

    private static String words(StackTraceElement frame) {
      String name = frame.getClassName();
      String simple = name.substring(name.lastIndexOf('.') + 1);
      return " at " + simple + "." + frame.getMethodName() + ":" + frame.getLineNumber();
    }
  }

  /**
   * Works out a part.
   *
   * @param part its name, for people
   * @param without what stands in its place when a fault took it
   */
  public <T> T withinOrElse(String part, Supplier<T> work, Supplier<T> without) {
    try {
      before.accept(part);
      return work.get();
    } catch (RuntimeException | StackOverflowError e) {
      add(part, e);
      return without.get();
    }
  }

  /** As {@link #withinOrElse}, where what stands in its place costs nothing. */
  public <T> T within(String part, Supplier<T> work, T without) {
    return withinOrElse(part, work, () -> without);
  }

  /** Adds a fault that was caught elsewhere. */
  public synchronized void add(String part, Throwable cause) {
    caught.add(new Caught(part, cause));
  }

  /** Adds those met in a part of this work, such as one night of several. */
  public void addAll(String place, Faults others) {
    others.all().forEach(other -> add(place + ": " + other.part(), other.cause()));
  }

  /** All so far, by part, so that the order in which threads met them does not show. */
  public synchronized List<Caught> all() {
    return caught.stream()
        .sorted(Comparator.comparing(Caught::part).thenComparing(c -> c.told().what()))
        .toList();
  }

  /** All so far as the result tells them. */
  public List<Fault> told() {
    return all().stream().map(Caught::told).toList();
  }
}
