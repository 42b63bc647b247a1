package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.results.Event;
import io.github.roundstar.results.NightResult;
import java.util.Arrays;
import java.util.List;

/** What happened in the night, counted by kind. */
public final class EventTally {
  static final String GUST = "gust";
  static final String KNOCK = "knock";
  static final String LASTING_SHIFT = "lasting-shift";
  static final String CLOUD = "cloud";
  static final String STUCK_STAR = "stuck-star";

  private static final String[] JOLTS = {GUST, KNOCK, LASTING_SHIFT};

  private final List<Event> events;

  private EventTally(List<Event> events) {
    this.events = events;
  }

  public static EventTally of(NightResult night) {
    return new EventTally(night.runs().stream().flatMap(run -> run.events().stream()).toList());
  }

  /** Number of events of some kinds. */
  public int count(String... kinds) {
    return (int) events.stream().filter(event -> isOne(event, kinds)).count();
  }

  /** Number of jolts of every kind. */
  public int jolts() {
    return count(JOLTS);
  }

  /** Largest jolt [arcsec]; 0 without any of known size. */
  double largestJoltArcsec() {
    return sizes(JOLTS).max().orElse(0);
  }

  /** Whether most of the jolts' summed squares are gusts, which come and go without a trace. */
  public boolean mostlyGusts() {
    return 2 * squares(GUST) > squares(JOLTS);
  }

  private double squares(String... kinds) {
    return sizes(kinds).map(size -> size * size).sum();
  }

  private java.util.stream.DoubleStream sizes(String... kinds) {
    return events.stream()
        .filter(event -> isOne(event, kinds) && event.sizeArcsec() != null)
        .mapToDouble(Event::sizeArcsec);
  }

  private static boolean isOne(Event event, String... kinds) {
    return Arrays.asList(kinds).contains(event.kind());
  }
}
