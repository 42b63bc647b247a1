package io.github.roundstar.ingest;

/** What the {@code event} column may say of a row. */
enum GuideEvent {
  NONE,
  SETTLING,
  LOST,
  IDLE,
  DITHER,
  FLIP,
  NOTE,
  UNKNOWN;

  static final String NOTE_MARK = "note:";

  static GuideEvent of(String text) {
    return switch (text) {
      case "" -> NONE;
      case "settling" -> SETTLING;
      case "lost" -> LOST;
      case "idle" -> IDLE;
      case "dither" -> DITHER;
      case "flip" -> FLIP;
      default -> text.startsWith(NOTE_MARK) ? NOTE : UNKNOWN;
    };
  }
}
