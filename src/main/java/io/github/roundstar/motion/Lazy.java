package io.github.roundstar.motion;

import java.util.function.Supplier;

/** A value that is worked out when first asked for; by two threads at once, twice the same. */
final class Lazy<T> {
  private final Supplier<T> work;
  private volatile T known;

  /** Of work that takes long, and never gives null. */
  Lazy(Supplier<T> work) {
    this.work = work;
  }

  T get() {
    T value = known;
    if (value == null) {
      value = work.get();
      known = value;
    }
    return value;
  }
}
