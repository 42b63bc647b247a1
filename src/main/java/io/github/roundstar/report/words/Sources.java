package io.github.roundstar.report.words;

/** What a periodic component comes from, as people call it. */
public final class Sources {
  private static final String GEAR = "gear:";
  private static final int MOST = 40;

  private Sources() {}

  /** The gear's own name for {@code gear:NAME}, cut short when it is very long; else the source. */
  public static String of(String source) {
    String name = source.startsWith(GEAR) ? source.substring(GEAR.length()) : source;
    return name.length() > MOST ? name.substring(0, MOST - 1) + "\u2026" : name;
  }
}
