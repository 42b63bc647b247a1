package io.github.roundstar.ingest.layout;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * How an event is told: by a line between the rows, which speaks of the rows after it, or by a word
 * in the event column, which speaks of its row.
 *
 * @param means which event
 * @param line pattern of the line
 * @param words words in the event column
 */
public record EventRule(Kind means, Optional<LinePattern> line, List<String> words) {
  /** Copies. */
  public EventRule {
    words = List.copyOf(words);
  }

  /** What may happen. */
  public enum Kind {
    /** Ordinary guiding; ends settling and idling. */
    GUIDING,
    /** The set point moves: the next row is the first against it. */
    DITHER,
    /** The star is on its way to a new set point. */
    SETTLING,
    /** The star was not measured; a line that tells it is a frame if it has a group time. */
    LOST,
    /** The loop is not at work. */
    IDLE,
    /** The telescope was turned to the other side of the pier. */
    FLIP,
    /** Anything else worth keeping. */
    NOTE;

    /** The word for it in a layout file. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }
}
