package io.github.roundstar.simulate;

import java.util.List;

/** A motion along one axis [arcsec] over the seconds of a run, known exactly. */
interface Curve {
  /** Mean over a time, as an exposure sees it [arcsec]. */
  double mean(double from, double to);

  /** The sum of curves. */
  static Curve sum(List<Curve> parts) {
    List<Curve> fixed = List.copyOf(parts);
    return (from, to) -> {
      double sum = 0;
      for (Curve part : fixed) {
        sum += part.mean(from, to);
      }
      return sum;
    };
  }

  /** amplitude &middot; sin(2 pi t / period + phase). */
  static Curve sinusoid(double amplitude, double periodSeconds, double phaseRadians) {
    double turn = 2 * Math.PI / periodSeconds;
    return (from, to) -> {
      double half = turn * (to - from) / 2;
      double smear = half == 0 ? 1 : StrictMath.sin(half) / half;
      return amplitude * smear * StrictMath.sin(turn * (from + to) / 2 + phaseRadians);
    };
  }

  /** A steady drift. */
  static Curve ramp(double arcsecPerMinute) {
    return (from, to) -> arcsecPerMinute / 60 * (from + to) / 2;
  }

  /** A lasting shift. */
  static Curve step(double atSeconds, double arcsec) {
    return (from, to) -> arcsec * Math.max(0, Math.min(to - from, to - atSeconds)) / (to - from);
  }

  /** A lasting shift that builds up evenly over {@code seconds}. */
  static Curve slide(double atSeconds, double seconds, double arcsec) {
    return (from, to) ->
        arcsec * (slid(to - atSeconds, seconds) - slid(from - atSeconds, seconds)) / (to - from);
  }

  private static double slid(double since, double seconds) {
    double inside = Math.max(0, Math.min(seconds, since));
    return inside * inside / (2 * seconds) + Math.max(0, since - seconds);
  }

  /** A passing shift: arcsec &middot; sin&sup2;(pi t / seconds) and back to zero. */
  static Curve swing(double atSeconds, double seconds, double arcsec) {
    return (from, to) ->
        arcsec * (swept(to - atSeconds, seconds) - swept(from - atSeconds, seconds)) / (to - from);
  }

  private static double swept(double since, double seconds) {
    double inside = Math.max(0, Math.min(seconds, since));
    return inside / 2 - seconds / (4 * Math.PI) * StrictMath.sin(2 * Math.PI * inside / seconds);
  }
}
