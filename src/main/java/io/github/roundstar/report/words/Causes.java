package io.github.roundstar.report.words;

/** Causes of a budget's parts, as people call them. */
public final class Causes {
  private static final String PERIODIC = "periodic:";

  private Causes() {}

  /** What it counts as beside other causes: all periods of a gear train are one. */
  public static String kind(String cause) {
    return cause.startsWith(PERIODIC) ? "periodic error" : of(cause);
  }

  /** The name; a cause this version does not know stands for itself. */
  public static String of(String cause) {
    if (cause.startsWith(PERIODIC)) {
      return "periodic error, " + Sources.of(cause.substring(PERIODIC.length()));
    }
    return switch (cause) {
      case "steady-offset" -> "steady offset";
      case "drift-lag" -> "lag behind the drift";
      case "deadband" -> "deadband and limits of the loop";
      case "remainder" -> "not explained";
      default -> cause;
    };
  }
}
