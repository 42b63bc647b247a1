package io.github.roundstar.ingest.layout;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.regex.PatternSyntaxException;

/**
 * A regular expression that is looked for in lines. The work on one line is bounded by counting the
 * characters that the expression looks at, so that no expression and no line can hang the reading;
 * lines longer than {@link #LONGEST_LINE} match nothing.
 */
public final class LinePattern {
  /** Longest line in which a pattern is looked for [characters]. */
  public static final int LONGEST_LINE = 4096;

  private static final int MOST_LOOKS = 1_000_000;

  private final Pattern pattern;

  private LinePattern(Pattern pattern) {
    this.pattern = pattern;
  }

  /**
   * Compiles an expression.
   *
   * @throws IllegalArgumentException saying what is wrong with it
   */
  public static LinePattern of(String expression) {
    try {
      return new LinePattern(Pattern.compile(expression));
    } catch (PatternSyntaxException e) {
      throw new IllegalArgumentException(e.getDescription(), e);
    } catch (StackOverflowError e) {
      throw new IllegalArgumentException("nested too deeply", e);
    }
  }

  /** The expression for a text as it stands. */
  public static String quoted(String text) {
    return text.replaceAll("[\\\\\\[\\](){}.*+?^$|]", "\\\\$0");
  }

  /**
   * Looks for the first match in a line.
   *
   * @throws TooSlowException if the expression takes more looks than a line may cost
   */
  public Optional<Matcher> find(String line) {
    if (line.length() > LONGEST_LINE) {
      return Optional.empty();
    }
    Matcher matcher = pattern.matcher(new Counted(line, new int[1]));
    try {
      return matcher.find() ? Optional.of(matcher) : Optional.empty();
    } catch (StackOverflowError e) {
      throw new TooSlowException(pattern.pattern());
    }
  }

  /** The text of a named group; empty where the expression has no such group or it is not there. */
  public static Optional<String> group(Matcher found, String name) {
    try {
      return Optional.ofNullable(found.group(name)).map(String::strip);
    } catch (IllegalArgumentException e) {
      return Optional.empty();
    }
  }

  /** Whether the expression names a group. */
  public boolean names(String group) {
    return pattern.pattern().contains("(?<" + group + ">");
  }

  /** The expression. */
  public String expression() {
    return pattern.pattern();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof LinePattern that && that.expression().equals(expression());
  }

  @Override
  public int hashCode() {
    return expression().hashCode();
  }

  @Override
  public String toString() {
    return expression();
  }

  /** A text that counts how often it is looked at. */
  private record Counted(String text, int[] looks) implements CharSequence {
    @Override
    public int length() {
      return text.length();
    }

    @Override
    public char charAt(int index) {
      if (++looks[0] > MOST_LOOKS) {
        throw new TooSlowException("of a pattern");
      }
      return text.charAt(index);
    }

    @Override
    public CharSequence subSequence(int start, int end) {
      return text.substring(start, end);
    }

    @Override
    public String toString() {
      return text;
    }
  }

  /** A pattern that looks at a line too often, as nested repetitions do. */
  public static final class TooSlowException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    TooSlowException(String expression) {
      super(
          "the pattern "
              + expression
              + " takes too many steps: avoid a repetition inside a repetition such as (a+)+");
    }
  }
}
