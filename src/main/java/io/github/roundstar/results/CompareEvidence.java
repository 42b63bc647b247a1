package io.github.roundstar.results;

import io.github.roundstar.model.Estimate;
import java.util.List;

/**
 * What the charts of a comparison show; not part of the JSON.
 *
 * @param spectra amplitude at the axis against period, a line per night [s; arcsec]
 * @param turns one turn of the worm or strongest gear, brought to one phase, a line per night
 *     [share of a turn; arcsec at the axis]
 * @param turnSeconds length of that turn [s]; 0 without turns
 * @param drifts drift of the runs against hour angle
 * @param distances share of frames that lie within a distance of their mean place, a line per night
 *     [arcsec; 0 to 1]
 */
public record CompareEvidence(
    Sides spectra, Sides turns, double turnSeconds, List<RunDrift> drifts, Sides distances) {
  /** Copies the lists. */
  public CompareEvidence {
    drifts = List.copyOf(drifts);
  }

  /**
   * Lines of both sides.
   *
   * @param before nights before
   * @param after nights after
   */
  public record Sides(List<Polyline> before, List<Polyline> after) {
    /** Copies the lists. */
    public Sides {
      before = List.copyOf(before);
      after = List.copyOf(after);
    }

    /** Whether either side has no line. */
    public boolean lacksOne() {
      return before.isEmpty() || after.isEmpty();
    }
  }

  /**
   * Drift of one run.
   *
   * @param after whether the run belongs to the nights after
   * @param hourAngleHours hour angle at its middle [h, west positive]
   * @param raAxis east positive, at the axis [arcsec/min]; null when not known
   * @param dec north positive [arcsec/min]; null when not known
   */
  public record RunDrift(boolean after, double hourAngleHours, Estimate raAxis, Estimate dec) {}
}
