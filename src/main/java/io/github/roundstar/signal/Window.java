package io.github.roundstar.signal;

/**
 * How samples are weighted before a transform.
 *
 * @see "Harris (1978), Proc. IEEE 66, 51"
 */
public enum Window {
  /** All alike: sharpest lines, most leakage. */
  RECTANGULAR {
    @Override
    double weight(int i, int n) {
      return 1;
    }
  },

  /** 0.5 - 0.5 cos(2&pi;i/n), the periodic form: little leakage, lines half as sharp. */
  HANN {
    @Override
    double weight(int i, int n) {
      return 0.5 - 0.5 * Math.cos(2 * Math.PI * i / n);
    }
  };

  abstract double weight(int i, int n);
}
