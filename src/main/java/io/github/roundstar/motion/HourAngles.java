package io.github.roundstar.motion;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.sky.SiderealTime;
import java.time.Duration;
import java.time.Instant;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The hour angle of a run: as the log declares it, or by time, longitude and right ascension where
 * it does not. Where it tells both and they differ, one of them is wrong and there is no saying
 * which: no hour angle then.
 */
public final class HourAngles {
  private static final Instant J2000 = Instant.parse("2000-01-01T12:00:00Z");
  private static final double SECONDS_PER_YEAR = 365.25 * 86_400;

  /** Hour angles to a tenth of an hour, times to the minute. */
  private static final double ROUNDING_HOURS = 0.06;

  /**
   * Precession of right ascension, 3.07 s + 1.34 s tan(dec) a year at most, since a log need not
   * say of which equinox it is: Meeus, Astronomical Algorithms, 2nd ed., chapter 21.
   */
  private static final double PRECESSION_SECONDS = 3.07;

  private static final double PRECESSION_SECONDS_BY_TANGENT = 1.34;

  private HourAngles() {}

  /** Hour angle at the run's first frame [h, -12..12]; or why there is none. */
  public static Answer<Double> of(GuideRun run, Equipment equipment) {
    OptionalDouble declared = run.pointing().hourAngleHours();
    Optional<Instant> at = begin(run);
    OptionalDouble rightAscension = run.pointing().rightAscensionHours();
    OptionalDouble longitude = equipment.longitudeDegrees(run.pointing());
    if (at.isEmpty() || rightAscension.isEmpty() || longitude.isEmpty()) {
      return declared.isPresent()
          ? Answer.of(declared.getAsDouble())
          : Answer.none("the log does not tell: add hour_angle to its header");
    }
    double east = longitude.getAsDouble();
    double star = rightAscension.getAsDouble();
    double computed = SiderealTime.hourAngleHours(at.get(), east, star);
    if (declared.isEmpty()) {
      return Answer.of(computed);
    }
    double allowed = allowed(at.get(), run.pointing().declinationDegrees());
    double hours = declared.getAsDouble();
    if (apart(hours, computed) <= allowed) {
      return Answer.of(hours);
    }
    double otherSide = SiderealTime.hourAngleHours(at.get(), -east, star);
    return Answer.none(
        String.format(
            Locale.ROOT,
            "hour_angle is %.1f h away from what time, longitude and right ascension give: %s",
            apart(hours, computed),
            meaning(hours, computed, apart(hours, otherSide) <= allowed, allowed)));
  }

  private static String meaning(
      double declared, double computed, boolean longitudeTurned, double allowed) {
    double clock = Math.rint(2 * apart(declared, computed)) / 2;
    if (apart(declared, -computed) <= allowed) {
      return "its sign seems to be wrong, west of the meridian is positive";
    }
    if (longitudeTurned) {
      return "the longitude's sign seems to be wrong, east is positive";
    }
    if (clock > 0 && Math.abs(apart(declared, computed) - clock) <= allowed) {
      return String.format(
          Locale.ROOT, "the log's clock seems to be %.1f h off, check its offset from UTC", clock);
    }
    return "check all four, one is wrong";
  }

  private static double allowed(Instant at, OptionalDouble declinationDegrees) {
    double years = Math.abs(Duration.between(J2000, at).toSeconds()) / SECONDS_PER_YEAR;
    double tangent = Math.abs(Math.tan(Math.toRadians(declinationDegrees.orElse(0))));
    double seconds = PRECESSION_SECONDS + PRECESSION_SECONDS_BY_TANGENT * tangent;
    return ROUNDING_HOURS + years * seconds / 3600;
  }

  /** Distance of two hour angles [h, 0..12]. */
  private static double apart(double hours, double others) {
    double distance = Math.abs(hours - others) % 24;
    return Math.min(distance, 24 - distance);
  }

  private static Optional<Instant> begin(GuideRun run) {
    return run.frames().size() == 0 ? Optional.empty() : run.instantAt(run.frames().timeSeconds(0));
  }
}
