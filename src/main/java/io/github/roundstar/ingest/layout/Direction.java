package io.github.roundstar.ingest.layout;

import java.util.Locale;

/** Where a positive value points. */
public enum Direction {
  /** East on the sky. */
  EAST(1, true),
  /** West on the sky. */
  WEST(-1, true),
  /** North on the sky. */
  NORTH(1, true),
  /** South on the sky. */
  SOUTH(-1, true),
  /** One of the axis's two directions, of which the log does not tell the name. */
  ONE_WAY(1, false),
  /** Against {@link #ONE_WAY}. */
  OTHER_WAY(-1, false);

  private final int sign;
  private final boolean named;

  Direction(int sign, boolean named) {
    this.sign = sign;
    this.named = named;
  }

  /** 1 for east, north or one way, -1 for their opposites. */
  public int sign() {
    return sign;
  }

  /** Against it. */
  public Direction opposite() {
    return switch (this) {
      case EAST -> WEST;
      case WEST -> EAST;
      case NORTH -> SOUTH;
      case SOUTH -> NORTH;
      case ONE_WAY -> OTHER_WAY;
      case OTHER_WAY -> ONE_WAY;
    };
  }

  /** Whether it is a direction on the sky. */
  public boolean isNamed() {
    return named;
  }

  /** The word for it in a layout file. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
