package io.github.roundstar.results;

import java.util.Objects;

/**
 * Why a figure is null.
 *
 * @param figure JSON Pointer, * for every index
 * @param because the reason, and what would make it computable
 */
public record NotComputed(String figure, String because) {
  /** Checks that both are there. */
  public NotComputed {
    Objects.requireNonNull(figure, "figure");
    Objects.requireNonNull(because, "because");
  }

  /** The reason for figures that the contract has and this version does not work out. */
  public static final String NOT_YET = "this version of roundstar does not work it out";
}
