package io.github.roundstar.ingest;

import java.util.Locale;
import java.util.Map;

/** The columns of a guide table, and what each of them measures. */
enum GuideColumn {
  TIME(Quantity.TIME),
  UTC(Quantity.NONE),
  RA_OFFSET(Quantity.ANGLE),
  DEC_OFFSET(Quantity.ANGLE),
  RUN(Quantity.NONE),
  RA_PULSE(Quantity.PULSE),
  DEC_PULSE(Quantity.PULSE),
  SNR(Quantity.RATIO),
  FLUX(Quantity.FLUX),
  DITHER_RA(Quantity.ANGLE),
  DITHER_DEC(Quantity.ANGLE),
  EVENT(Quantity.NONE);

  private final Quantity quantity;

  GuideColumn(Quantity quantity) {
    this.quantity = quantity;
  }

  String key() {
    return name().toLowerCase(Locale.ROOT);
  }

  Quantity quantity() {
    return quantity;
  }

  /**
   * What a column measures: its units with their factors into the model's, and the largest value
   * that can be meant (a generation, half the sky, hours of pulse).
   */
  enum Quantity {
    NONE("", 1e9, Map.of()),
    TIME("s", 1e9, Map.of("s", 1.0, "min", 60.0, "ms", 1e-3)),
    /** NaN: only the run's {@code guide_scale} can tell. */
    ANGLE("arcsec", 648_000, Map.of("arcsec", 1.0, "pix", Double.NaN)),
    PULSE("ms", 1e7, Map.of("ms", 1.0, "s", 1000.0, "min", 60_000.0)),
    RATIO("", 1e15, Map.of("-", 1.0)),
    FLUX("", 1e15, Map.of("adu", 1.0));

    private final String assumedUnit;
    private final double largest;
    private final Map<String, Double> factors;

    Quantity(String assumedUnit, double largest, Map<String, Double> factors) {
      this.assumedUnit = assumedUnit;
      this.largest = largest;
      this.factors = factors;
    }

    /** The unit assumed where none is given; empty where none is needed. */
    String assumedUnit() {
      return assumedUnit;
    }

    double largest() {
      return largest;
    }

    Map<String, Double> factors() {
      return factors;
    }
  }
}
