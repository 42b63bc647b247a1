package io.github.roundstar.ingest.layout;

/**
 * One thing that was worked out about a log.
 *
 * @param about what it is about
 * @param chosen what was decided
 * @param because the evidence
 * @param runnerUp what comes next, and why it comes second; empty where nothing was weighed
 * @param sure how sure it is
 * @param ask layout lines from which the user chooses, ready to be pasted; empty if nothing is
 *     asked
 */
public record Decision(
    String about, String chosen, String because, String runnerUp, Sureness sure, String ask) {
  /** How sure a decision is. */
  public enum Sureness {
    /** The log says it, or allows nothing else. */
    CERTAIN,
    /** Not known, but no figure comes out wrong: it is missing, or only a label depends on it. */
    NOTED,
    /** Not known, and figures depend on it. */
    OPEN
  }

  public static Decision certain(String about, String chosen, String because) {
    return new Decision(about, chosen, because, "", Sureness.CERTAIN, "");
  }

  public static Decision noted(String about, String chosen, String because, String ask) {
    return new Decision(about, chosen, because, "", Sureness.NOTED, ask);
  }

  public static Decision open(String about, String because, String ask) {
    return new Decision(about, "not known", because, "", Sureness.OPEN, ask);
  }

  /** The same with what came second. */
  public Decision before(String second) {
    return new Decision(about, chosen, because, second, sure, ask);
  }

  /** One line for people. */
  public String line() {
    String word =
        switch (sure) {
          case CERTAIN -> "certain";
          case NOTED -> "not known, no figure comes out wrong by it";
          case OPEN -> "not known";
        };
    String second = runnerUp.isEmpty() ? "" : "; runner-up: " + runnerUp;
    return about + ": " + chosen + " (" + word + "): " + because + second;
  }
}
