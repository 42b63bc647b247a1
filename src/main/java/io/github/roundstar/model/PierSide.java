package io.github.roundstar.model;

/** The side of the pier the tube is on; west normally looks east. */
public enum PierSide {
  EAST,
  WEST
}
