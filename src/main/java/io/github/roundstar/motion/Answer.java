package io.github.roundstar.motion;

import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;

/**
 * A figure, or the reason why there is none.
 *
 * @param <T> type of the figure
 * @param value the figure
 * @param because the reason when there is none; empty otherwise
 */
public record Answer<T>(Optional<T> value, String because) {
  /** Checks that there is either a value or a reason. */
  public Answer {
    Objects.requireNonNull(value, "value");
    if (value.isPresent() == !because.isEmpty()) {
      throw new IllegalArgumentException("an answer has a value or a reason, not both: " + because);
    }
  }

  /** A figure. */
  public static <T> Answer<T> of(T value) {
    return new Answer<>(Optional.of(value), "");
  }

  /** No figure. */
  public static <T> Answer<T> none(String because) {
    return new Answer<>(Optional.empty(), because);
  }

  /** The figure in another form; the same reason when there is none. */
  public <U> Answer<U> map(Function<T, U> change) {
    return new Answer<>(value.map(change), because);
  }

  /** What follows from the figure, which may itself be missing. */
  public <U> Answer<U> then(Function<T, Answer<U>> next) {
    return value.map(next).orElseGet(() -> none(because));
  }
}
