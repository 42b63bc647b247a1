package io.github.roundstar.simulate;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.formats.TomlTable;
import io.github.roundstar.model.DecDirection;
import java.util.Locale;

/** The {@code [loop]} and {@code [dither]} tables of a scenario. */
final class LoopKeys {
  private LoopKeys() {}

  static LoopPlan loop(TomlTable loop, Scenario.Evening evening) throws FormatException {
    double longest = evening.cadenceSeconds() * 1000;
    return new LoopPlan(
        axis(loop.table("ra")),
        axis(loop.table("dec")),
        loop.number("pulse_limit_ms", 1, longest).orElse(Math.min(1500, longest)),
        DecDirection.valueOf(
            loop.choice("dec_direction", "both", "north", "south", "off")
                .orElse("both")
                .toUpperCase(Locale.ROOT)),
        loop.choice("pulse_row", "same", "next").orElse("same").equals("next"));
  }

  private static LoopPlan.Axis axis(TomlTable axis) throws FormatException {
    return new LoopPlan.Axis(
        axis.number("gain", 0, 2).orElse(0.6),
        axis.number("deadband_arcsec", 0, 100).orElse(0),
        axis.number("minimum_pulse_ms", 0, 10_000).orElse(0),
        axis.integer("delay_frames", 0, 20).orElse(0));
  }

  static DitherPlan dither(TomlTable dither) throws FormatException {
    return new DitherPlan(
        dither.number("every_min", 0.1, 1000).orElse(12),
        dither.number("size_arcsec", 0, 1000).orElse(5),
        dither.flag("logs_shift").orElse(true),
        dither.flag("logs_settling").orElse(true),
        dither.number("settle_arcsec", 0.01, 100).orElse(1.5),
        dither.integer("settle_frames", 1, 100).orElse(3),
        dither.number("settle_limit_s", 0, 3600).orElse(60));
  }
}
