package io.github.roundstar.ingest.layout;

import io.github.roundstar.model.PierSide;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Works out how the camera lies on the sky: the directions in which pulses answer the offsets. */
final class CameraAngle {
  private static final double RIGHT_ANGLE_WITHIN = 10;
  private static final double SAME_WITHIN = 45;

  private final PulseSeries series;
  private final PulseQuestions questions;
  private final Map<Meaning, Direction> positive;
  private final int lag;

  CameraAngle(
      PulseSeries series, PulseQuestions questions, Map<Meaning, Direction> positive, int lag) {
    this.series = series;
    this.questions = questions;
    this.positive = positive;
    this.lag = lag;
  }

  /** The camera on the sky; empty where it must be asked. */
  Optional<CameraAxes> find(double[][] pulses) {
    List<Optional<PierSide>> all = series.sides();
    double[] ra = new double[all.size()];
    double[] dec = new double[all.size()];
    for (int s = 0; s < all.size(); s++) {
      Optional<PierSide> side = all.get(s);
      PulseAnswer a = series.answer(pulses[0], lag, side);
      PulseAnswer b = series.answer(pulses[1], lag, side);
      ra[s] = a.degrees();
      dec[s] = b.degrees();
      boolean right =
          Math.abs(Math.abs(turn(dec[s] - ra[s])) - 90) < RIGHT_ANGLE_WITHIN
              && a.share() >= PulseSeries.ENOUGH_SHARE
              && b.share() >= PulseSeries.ENOUGH_SHARE;
      if (!right) {
        questions.openCamera("the directions of the two axes' pulses are not at a right angle");
        return Optional.empty();
      }
      squareUp(ra, dec, s, a.rows(), b.rows());
      double raWhole = ra[s];
      double decWhole = dec[s];
      if (series.changes(
              pulses[0], lag, side, p -> Math.abs(turn(p.degrees() - raWhole)) < SAME_WITHIN)
          || series.changes(
              pulses[1], lag, side, p -> Math.abs(turn(p.degrees() - decWhole)) < SAME_WITHIN)) {
        questions.openChange("camera angle");
        return Optional.empty();
      }
    }
    boolean turns = all.size() > 1 && Math.abs(turn(ra[1] - ra[0])) > 90;
    boolean sameElse =
        all.size() < 2
            || Math.abs(turn(ra[1] - ra[0] - (turns ? 180 : 0))) < RIGHT_ANGLE_WITHIN
                && Math.abs(turn(dec[1] - dec[0] - (turns ? 180 : 0))) < RIGHT_ANGLE_WITHIN;
    if (!sameElse || all.size() > 2 || turns && all.get(0).isEmpty()) {
      questions.openCamera("the camera lies differently on the two sides of the pier");
      return Optional.empty();
    }
    CameraAxes found = finish(ra[0], dec[0], turns ? all.get(0) : Optional.empty());
    return Optional.of(series.told().filter(told -> agree(told, found)).orElse(found));
  }

  /** What a sentence tells is exact; the pulses tell the angle to some degrees. */
  private static boolean agree(CameraAxes told, CameraAxes found) {
    return found.pierSide().isEmpty()
        && Math.abs(turn(told.raDegrees().getAsDouble() - found.raDegrees().getAsDouble()))
            < SAME_WITHIN / 3
        && Math.abs(turn(told.decDegrees().getAsDouble() - found.decDegrees().getAsDouble()))
            < SAME_WITHIN / 3;
  }

  /** Both axes' directions turned to an exact right angle, weighted by their pulses. */
  private static void squareUp(double[] ra, double[] dec, int s, int raRows, int decRows) {
    double parity = turn(dec[s] - ra[s]) > 0 ? 90 : -90;
    double apart = turn(dec[s] - parity - ra[s]);
    ra[s] += apart * decRows / (raRows + decRows);
    dec[s] = ra[s] + parity;
  }

  private CameraAxes finish(double raFound, double decFound, Optional<PierSide> side) {
    double ra = raFound;
    double dec = decFound;
    for (boolean north : new boolean[] {false, true}) {
      Meaning signed = north ? Meaning.DEC_PULSE : Meaning.RA_PULSE;
      Optional<Direction> push =
          series.hasLetters(north) ? Optional.empty() : series.namedPulse(north);
      if (push.isPresent()) {
        positive.put(signed, push.get());
        ra += !north && push.get().sign() < 0 ? 180 : 0;
        dec += north && push.get().sign() < 0 ? 180 : 0;
      } else if (!series.hasLetters(north)) {
        positive.put(signed, Direction.ONE_WAY);
        questions.noteSense(north);
      }
    }
    questions
        .decisions()
        .add(
            Decision.certain(
                "camera angle",
                String.format(
                    Locale.ROOT,
                    "right ascension at %.2f deg, declination at %.2f deg%s",
                    turn(ra),
                    turn(dec),
                    side.isPresent() ? ", turned by 180 deg on the other side of the pier" : ""),
                "the pulses follow the offsets in these directions"));
    return new CameraAxes(OptionalDouble.of(turn(ra)), OptionalDouble.of(turn(dec)), side);
  }

  /** An angle in (-180, 180]. */
  private static double turn(double degrees) {
    double turned = degrees % 360;
    return turned > 180 ? turned - 360 : turned <= -180 ? turned + 360 : turned;
  }
}
