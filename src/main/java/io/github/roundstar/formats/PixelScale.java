package io.github.roundstar.formats;

import java.util.OptionalDouble;

/**
 * From stored to physical pixel values: value = BZERO + BSCALE times stored.
 *
 * @param zero BZERO
 * @param scale BSCALE
 * @param blank stored integer that stands for no value; NaN when there is none
 */
record PixelScale(double zero, double scale, double blank) {
  static PixelScale of(FitsHeader header, int bitpix) {
    OptionalDouble blank = bitpix > 0 ? header.number("BLANK", "ZBLANK") : OptionalDouble.empty();
    return new PixelScale(
        header.number("BZERO").orElse(0),
        header.number("BSCALE").orElse(1),
        blank.orElse(Double.NaN));
  }

  /**
   * Converts stored values.
   *
   * @param stored a primitive array as FITS stores it
   * @param to where the physical values go
   * @param at index of the first one
   */
  void apply(Object stored, float[] to, int at) {
    if (stored instanceof short[] values) {
      for (int i = 0; i < values.length; i++) {
        to[at + i] = physical(values[i]);
      }
    } else if (stored instanceof byte[] values) {
      for (int i = 0; i < values.length; i++) {
        to[at + i] = physical(values[i] & 0xFF);
      }
    } else if (stored instanceof int[] values) {
      for (int i = 0; i < values.length; i++) {
        to[at + i] = physical(values[i]);
      }
    } else if (stored instanceof float[] values) {
      for (int i = 0; i < values.length; i++) {
        to[at + i] = physical(values[i]);
      }
    } else if (stored instanceof double[] values) {
      for (int i = 0; i < values.length; i++) {
        to[at + i] = physical(values[i]);
      }
    } else if (stored instanceof long[] values) {
      for (int i = 0; i < values.length; i++) {
        to[at + i] = physical(values[i]);
      }
    } else {
      throw new IllegalArgumentException("pixels of an unknown kind");
    }
  }

  private float physical(double value) {
    return value == blank ? Float.NaN : (float) (zero + scale * value);
  }
}
