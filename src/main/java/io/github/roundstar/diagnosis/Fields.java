package io.github.roundstar.diagnosis;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.motion.HourAngles;
import io.github.roundstar.sky.SiderealRate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Which runs of a night looked at one field. A run whose log tells no place stays with the run
 * before it.
 *
 * @param runs for each field the indices of its runs, ascending; fields in order of their first run
 */
record Fields(List<List<Integer>> runs) {
  /** Guide stars of one field stand closer together than this [deg]. */
  private static final double SAME_DEGREES = 0.5;

  /** Declared hour angles are rounded to a tenth of an hour [h]. */
  private static final double SAME_HOUR_ANGLE = 0.15;

  /**
   * Where a run looked.
   *
   * @param declination [deg]
   * @param rightAscension as the log tells it [h]
   * @param fromHourAngle right ascension, but for a constant of the night, by the hour angle [h]
   */
  private record Place(
      OptionalDouble declination, OptionalDouble rightAscension, OptionalDouble fromHourAngle) {

    boolean known() {
      return declination.isPresent() || rightAscension.isPresent();
    }

    boolean same(Place other) {
      if (apart(declination, other.declination) > SAME_DEGREES) {
        return false;
      }
      return rightAscension.isPresent() && other.rightAscension.isPresent()
          ? aroundTheClock(rightAscension, other.rightAscension) <= SAME_DEGREES / 15
          : aroundTheClock(fromHourAngle, other.fromHourAngle) <= SAME_HOUR_ANGLE;
    }

    private static double apart(OptionalDouble one, OptionalDouble other) {
      return one.isEmpty() || other.isEmpty()
          ? 0
          : Math.abs(one.getAsDouble() - other.getAsDouble());
    }

    private static double aroundTheClock(OptionalDouble one, OptionalDouble other) {
      double apart = apart(one, other) % 24;
      return Math.min(apart, 24 - apart);
    }
  }

  /** Sorts the runs; a run without a frame belongs to no field. */
  static Fields of(List<GuideRun> runs, NightClock clock, Equipment equipment) {
    List<Place> places = new ArrayList<>();
    List<List<Integer>> fields = new ArrayList<>();
    // Without absolute times nobody knows what passed between two runs.
    boolean dated = clock.start().isPresent();
    int last = -1;
    for (int i = 0; i < runs.size(); i++) {
      if (runs.get(i).frames().size() == 0) {
        continue;
      }
      Place place = place(runs.get(i), dated, clock.shiftSeconds(i), equipment);
      int at = last;
      if (last < 0 || place.known()) {
        at = 0;
        while (at < places.size() && !places.get(at).same(place)) {
          at++;
        }
      }
      if (at == places.size()) {
        places.add(place);
        fields.add(new ArrayList<>());
      }
      fields.get(at).add(i);
      last = at;
    }
    return new Fields(fields.stream().map(List::copyOf).toList());
  }

  /** The field of a run; -1 for a run without a frame. */
  int of(int run) {
    for (int f = 0; f < runs.size(); f++) {
      if (runs.get(f).contains(run)) {
        return f;
      }
    }
    return -1;
  }

  private static Place place(GuideRun run, boolean dated, double shift, Equipment equipment) {
    double seconds = shift + run.frames().timeSeconds(0);
    Optional<Double> hours =
        dated ? HourAngles.of(run, equipment).value() : Optional.<Double>empty();
    return new Place(
        run.pointing().declinationDegrees(),
        run.pointing().rightAscensionHours(),
        hours
            .map(h -> OptionalDouble.of(seconds * SiderealRate.ARCSEC_PER_SECOND / 54_000 - h))
            .orElse(OptionalDouble.empty()));
  }
}
