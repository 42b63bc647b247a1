package io.github.roundstar.simulate;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.formats.TomlTable;
import io.github.roundstar.model.PierSide;
import io.github.roundstar.sky.SiderealTime;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * The {@code [[run]]} tables of a scenario. A run that names no star stays on the last one: its
 * declination holds and its hour angle has gone on with the sky, as after a meridian flip.
 */
final class RunKeys {
  private static final double DEFAULT_MINUTES = 120;
  private static final double DEFAULT_DECLINATION = 30;
  private static final double DEFAULT_HOUR_ANGLE = -1;

  private RunKeys() {}

  static List<RunPlan> read(TomlTable root, Scenario.Evening evening) throws FormatException {
    List<RunPlan> runs = new ArrayList<>();
    for (TomlTable run : root.tables("run")) {
      runs.add(run(run, evening, runs.isEmpty() ? before(0) : runs.get(runs.size() - 1)));
    }
    return runs.isEmpty() ? List.of(before(DEFAULT_MINUTES)) : runs;
  }

  /** What the first run follows: nothing, on the default star. */
  private static RunPlan before(double minutes) {
    return new RunPlan(
        0,
        minutes,
        DEFAULT_DECLINATION,
        DEFAULT_HOUR_ANGLE,
        PierSide.WEST,
        true,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        false);
  }

  private static RunPlan run(TomlTable run, Scenario.Evening evening, RunPlan last)
      throws FormatException {
    double earliest = last.startMinutes() + last.durationMinutes();
    double start = run.number("start_min", earliest, 2000).orElse(earliest);
    double hourAngle = hourAngle(run, evening, last, start);
    String side = run.choice("pier_side", "east", "west").orElse(hourAngle < 0 ? "west" : "east");
    return new RunPlan(
        start,
        run.number("duration_min", 0.1, 2000).orElse(DEFAULT_MINUTES),
        run.number("declination_deg", -89, 89).orElse(last.declinationDegrees()),
        hourAngle,
        PierSide.valueOf(side.toUpperCase(Locale.ROOT)),
        run.flag("guided").orElse(true),
        run.number("worm_phase_rad", -10, 10),
        run.number("play", -1, 1),
        run.flag("hot_pixel").orElse(false));
  }

  private static double hourAngle(
      TomlTable run, Scenario.Evening evening, RunPlan last, double startMinutes)
      throws FormatException {
    OptionalDouble hourAngle = run.number("hour_angle_h", -12, 12);
    OptionalDouble rightAscension = run.number("right_ascension_h", 0, 24);
    if (hourAngle.isPresent() && rightAscension.isPresent()) {
      throw run.fault("right_ascension_h", "given beside hour_angle_h", "keep one of the two");
    }
    if (rightAscension.isPresent()) {
      Instant start = evening.start().plusMillis((long) Math.rint(startMinutes * 60_000));
      return SiderealTime.hourAngleHours(
          start, evening.longitudeDegrees(), rightAscension.getAsDouble());
    }
    double goneOn = last.star((startMinutes - last.startMinutes()) * 60).hourAngleDegrees() / 15;
    return hourAngle.orElse(goneOn > 12 ? goneOn - 24 : goneOn);
  }
}
