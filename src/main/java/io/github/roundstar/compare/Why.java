package io.github.roundstar.compare;

import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.NotComputed;
import java.util.Comparator;

/** Why a night's result does not give a figure. */
final class Why {
  private Why() {}

  /** The reason for the figure or for what holds it, as the result gives it. */
  static String missing(NightResult result, String pointer) {
    return result.notComputed().stream()
        .filter(gap -> pointer.startsWith(gap.figure()))
        .max(Comparator.comparingInt(gap -> gap.figure().length()))
        .map(NotComputed::because)
        .orElse("the result does not give it");
  }
}
