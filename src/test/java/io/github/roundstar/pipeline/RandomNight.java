package io.github.roundstar.pipeline;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.Frames;
import io.github.roundstar.simulate.ExposureTableWriter;
import io.github.roundstar.simulate.Exposures;
import io.github.roundstar.simulate.FrameRenderer;
import io.github.roundstar.simulate.ScenarioReader;
import io.github.roundstar.simulate.SimulatedExposure;
import io.github.roundstar.simulate.SimulatedNight;
import io.github.roundstar.simulate.SimulatedRun;
import io.github.roundstar.simulate.Simulation;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;

/**
 * A night of any kind that a user may bring, drawn at random: nothing is round, even or complete.
 * The same seed gives the same night.
 *
 * @param log guide table
 * @param equipment equipment file, whole or in part
 * @param exposures list of exposures, which fits the night, half fits or does not
 */
record RandomNight(String log, Optional<String> equipment, Optional<String> exposures) {
  /** More frames than that only take longer; the short cadences then get short nights. */
  private static final int USUAL_MOST_FRAMES = 600;

  private static final int SOMETIMES_MOST_FRAMES = 40_000;

  static RandomNight of(long seed) throws IOException {
    return new Draw(seed).night();
  }

  /** As {@link #of}, on an evening so many days after the first. */
  static RandomNight of(long seed, int day) throws IOException {
    Draw draw = new Draw(seed);
    draw.start = draw.start.plus(Duration.ofDays(day));
    return draw.night();
  }

  /** Images of the first exposures of a night that has some. */
  static List<Path> images(long seed, int most, Path folder) throws IOException {
    SimulatedNight night = new Draw(seed).simulated();
    List<Path> images = new ArrayList<>();
    if (night.scenario().exposures().isPresent()) {
      for (SimulatedExposure exposure : Exposures.of(night).stream().limit(most).toList()) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        FrameRenderer.write(night, exposure, bytes);
        images.add(Files.write(folder.resolve(seed + "-" + exposure.file()), bytes.toByteArray()));
      }
    }
    return images;
  }

  private static final class Draw {
    private final long seed;
    private final Random random;
    private final double cadence;
    private final double minutes;
    private final int runs;
    private final double latitude;
    private final double declination;
    private Instant start;

    Draw(long seed) {
      this.seed = seed;
      random = new Random(seed);
      random.nextInt();
      cadence = logUniform(0.3, 60);
      int mostFrames = oneIn(200) ? SOMETIMES_MOST_FRAMES : USUAL_MOST_FRAMES;
      minutes = Math.min(logUniform(3, 720), mostFrames * cadence / 60);
      runs = random.nextInt(3) == 0 ? 2 + random.nextInt(5) : 1;
      latitude = between(-65, 65);
      declination = oneIn(3) ? between(-85, 85) : between(-40, 60);
      start =
          Instant.parse("2026-10-03T18:00:00Z")
              .plusMillis((long) (random.nextDouble() * 21_600_000));
    }

    private RandomNight night() throws IOException {
      SimulatedNight night = simulated();
      Optional<String> list = Optional.empty();
      if (night.scenario().exposures().isPresent()) {
        List<SimulatedExposure> taken = Exposures.of(night);
        if (!taken.isEmpty()) {
          StringBuilder text = new StringBuilder();
          ExposureTableWriter.write(night, taken, text);
          list = Optional.of(text.toString());
        }
      }
      return new RandomNight(log(night), equipment(), list);
    }

    private SimulatedNight simulated() {
      String scenario = scenario();
      boolean air = random.nextBoolean();
      try {
        return Simulation.run(
            ScenarioReader.parse("night", scenario + (air ? "[air]\npressure_hpa = 931\n" : "")));
      } catch (FormatException e) {
        // A star too low for refraction is played without air.
        try {
          return Simulation.run(ScenarioReader.parse("night", scenario));
        } catch (FormatException wrong) {
          throw new IllegalStateException("seed " + seed, wrong);
        }
      }
    }

    private String scenario() {
      StringBuilder toml = new StringBuilder();
      toml.append("[night]\nseed = ").append(Math.floorMod(seed, 1_000_000_007L)).append('\n');
      key(toml, "cadence_s", cadence);
      key(toml, "guide_exposure_s", cadence * between(0.2, 1));
      key(toml, "latitude_deg", latitude);
      key(toml, "longitude_deg", between(-180, 180));
      toml.append("start = \"").append(start).append("\"\n");
      toml.append("[polar_axis]\n");
      key(toml, "azimuth_arcmin", signed(logUniform(0.1, 100)));
      key(toml, "altitude_arcmin", signed(logUniform(0.1, 100)));
      toml.append("[noise]\n");
      key(toml, "white_arcsec", oneIn(6) ? 0 : between(0, 2));
      mount(toml);
      loop(toml);
      sky(toml);
      double each = minutes / runs;
      for (int r = 0; r < runs; r++) {
        toml.append("[[run]]\n");
        key(toml, "duration_min", Math.max(0.2, each));
        if (r == 0 || oneIn(2)) {
          key(toml, "declination_deg", r == 0 ? declination : between(-85, 85));
          key(toml, "hour_angle_h", between(-6, 6));
        }
        if (oneIn(3)) {
          toml.append("pier_side = \"").append(oneIn(2) ? "east" : "west").append("\"\n");
        }
        toml.append("guided = ").append(!oneIn(8)).append('\n');
        toml.append("hot_pixel = ").append(oneIn(25)).append('\n');
      }
      return toml.toString();
    }

    private void mount(StringBuilder toml) {
      toml.append("[mount]\n");
      key(toml, "guide_rate", logUniform(0.1, 1));
      key(toml, "worm_period_s", logUniform(60, 1000));
      key(toml, "dec_backlash_arcsec", oneIn(2) ? 0 : between(0, 30));
      key(toml, "ra_backlash_arcsec", oneIn(5) ? between(0, 10) : 0);
      key(toml, "dec_stiction_arcsec", oneIn(6) ? between(0, 5) : 0);
      key(toml, "ra_wander_arcsec_per_root_s", oneIn(4) ? 0 : logUniform(0.003, 0.3));
      key(toml, "dec_wander_arcsec_per_root_s", oneIn(4) ? 0 : logUniform(0.003, 0.3));
      for (String way : List.of("east", "west", "north", "south")) {
        key(toml, "response_" + way, oneIn(3) ? between(0.3, 2) : between(0.9, 1.1));
      }
      key(toml, "dec_flexure_arcsec_per_min", oneIn(4) ? signed(between(0, 2)) : 0);
      key(toml, "camera_angle_deg", oneIn(4) ? between(-40, 40) : 0);
      key(toml, "worm_unsteadiness", oneIn(3) ? between(0, 1) : 0);
      for (int order = 1; order <= random.nextInt(4); order++) {
        toml.append("[[mount.harmonic]]\norder = ").append(order).append('\n');
        key(toml, "amplitude_arcsec", logUniform(0.05, 20));
        key(toml, "phase_rad", between(-3, 3));
      }
      if (oneIn(4)) {
        toml.append("[[mount.gear]]\n");
        key(toml, "period_s", logUniform(5, 500));
        key(toml, "amplitude_arcsec", logUniform(0.05, 5));
      }
    }

    private void loop(StringBuilder toml) {
      toml.append("[loop]\n");
      key(toml, "pulse_limit_ms", Math.max(1, Math.min(999 * cadence, logUniform(50, 5000))));
      String[] ways = {"both", "both", "both", "north", "south", "off"};
      toml.append("dec_direction = \"").append(ways[random.nextInt(6)]).append("\"\n");
      toml.append("pulse_row = \"").append(oneIn(4) ? "next" : "same").append("\"\n");
      for (String axis : List.of("ra", "dec")) {
        toml.append("[loop.").append(axis).append("]\n");
        key(toml, "gain", between(0, oneIn(5) ? 2 : 1));
        key(toml, "deadband_arcsec", oneIn(2) ? 0 : between(0, 1));
        toml.append("delay_frames = ").append(oneIn(8) ? 1 + random.nextInt(3) : 0).append('\n');
      }
      if (oneIn(2)) {
        toml.append("[dither]\n");
        key(toml, "every_min", logUniform(0.5, 60));
        key(toml, "size_arcsec", oneIn(4) ? between(20, 300) : between(0, 15));
        toml.append("logs_shift = ").append(oneIn(2)).append('\n');
        toml.append("logs_settling = ").append(oneIn(2)).append('\n');
      }
    }

    private void sky(StringBuilder toml) {
      if (oneIn(2)) {
        toml.append("[seeing]\n");
        key(toml, "fwhm_arcsec", between(0.8, 6));
      }
      if (oneIn(4)) {
        toml.append("[gusts]\n");
        key(toml, "per_hour", logUniform(0.5, 60));
        key(toml, "amplitude_arcsec", logUniform(0.5, 50));
      }
      if (oneIn(4)) {
        toml.append("[clouds]\n");
        key(toml, "per_hour", logUniform(0.5, 20));
        key(toml, "minutes", logUniform(0.1, 30));
        key(toml, "depth", between(0.5, 1));
      }
      if (oneIn(6)) {
        toml.append("[[star_switch]]\n");
        key(toml, "at_min", between(0, minutes));
        key(toml, "ra_arcsec", between(-60, 60));
        key(toml, "dec_arcsec", between(-60, 60));
      }
      if (oneIn(4)) {
        toml.append("[exposures]\n");
        key(toml, "seconds", Math.min(logUniform(5, 1200), Math.max(5, minutes * 15)));
        key(
            toml,
            "clock_offset_s",
            oneIn(3) ? signed(between(0, 60 * minutes)) : signed(between(0, 20)));
        toml.append("stars = 5\n");
      }
    }

    private Optional<String> equipment() {
      if (oneIn(3)) {
        return Optional.empty();
      }
      StringBuilder toml = new StringBuilder();
      if (oneIn(2)) {
        toml.append("[site]\n");
        key(toml, "latitude_deg", latitude);
        if (oneIn(2)) {
          key(toml, "longitude_deg", between(-180, 180));
        }
      }
      toml.append("[mount]\n");
      if (oneIn(2)) {
        key(toml, "worm_period_s", logUniform(60, 1000));
      }
      if (oneIn(2)) {
        key(toml, "guide_rate", logUniform(0.1, 1));
      }
      if (oneIn(3)) {
        toml.append("drive = \"strain-wave\"\n");
      }
      if (oneIn(2)) {
        toml.append("[guide]\nfocal_length_mm = 240\npixel_um = 3.75\n");
        if (oneIn(2)) {
          toml.append("aperture_mm = 60\n");
        }
        if (oneIn(2)) {
          key(toml, "star_x_arcmin", between(-60, 60));
          key(toml, "star_y_arcmin", between(-60, 60));
        }
      }
      if (oneIn(2)) {
        toml.append("[imaging]\nfocal_length_mm = 800\npixel_um = 3.8\n");
        if (oneIn(2)) {
          toml.append("width_px = 6000\nheight_px = 4000\n");
          key(toml, "exposure_s", logUniform(5, 1800));
        }
      }
      if (oneIn(3)) {
        toml.append("[limits]\n");
        key(toml, "elongation", between(1.02, 2));
        key(toml, "rms_arcsec", between(0.1, 5));
      }
      return Optional.of(toml.toString());
    }

    /** The log, with what no simulated camera has: uneven times, lost frames, missing columns. */
    private String log(SimulatedNight night) {
      boolean pulses = !oneIn(8);
      boolean oneWay = oneIn(8);
      boolean still = oneIn(25);
      boolean named = !oneIn(4);
      boolean events = !oneIn(5);
      boolean severalRuns = night.runs().size() > 1;
      double lost = oneIn(3) ? between(0, oneIn(3) ? 0.95 : 0.4) : 0;
      double jitter = oneIn(6) ? 0 : cadence * between(0, 0.45);
      double dropped = oneIn(3) ? between(0, 0.3) : 0;
      int decimals = oneIn(8) ? 1 : 3;
      StringBuilder text = new StringBuilder("# %ECSV 1.0\n# ---\n# delimiter: ','\n# datatype:\n");
      text.append(
          "# - {name: run, datatype: int64}\n# - {name: time, unit: s, datatype: float64}\n");
      for (String offset : List.of("ra_offset", "dec_offset")) {
        text.append("# - {name: ").append(offset).append(", unit: arcsec, datatype: float64}\n");
      }
      if (pulses) {
        text.append("# - {name: ra_pulse, unit: ms, datatype: int64}\n");
        text.append("# - {name: dec_pulse, unit: ms, datatype: int64}\n");
      }
      text.append(
          "# - {name: snr, datatype: float64}\n# - {name: event, datatype: string}\n# meta:\n");
      if (!oneIn(8)) {
        text.append("#   start: '").append(start).append("'\n");
      }
      meta(text, night, named);
      text.append("run,time,ra_offset,dec_offset,");
      text.append(pulses ? "ra_pulse,dec_pulse," : "").append("snr,event\n");
      for (SimulatedRun run : night.runs()) {
        Frames frames = run.log().frames();
        Instant begun = run.log().start().orElseThrow();
        double shift = Duration.between(start, begun).toMillis() / 1000.0;
        for (int i = 0; i < frames.size(); i++) {
          if (random.nextDouble() < dropped) {
            continue;
          }
          FrameState state = frames.state(i);
          boolean seen = state != FrameState.LOST && random.nextDouble() >= lost;
          double time = shift + frames.timeSeconds(i) + jitter * (random.nextDouble() - 0.5);
          text.append(run.truth().id()).append(',').append(number(time, 3)).append(',');
          text.append(seen ? number(still ? 0.25 : frames.raArcsec(i), decimals) : "").append(',');
          text.append(seen ? number(still ? 0.25 : frames.decArcsec(i), decimals) : "").append(',');
          if (pulses) {
            double ra = frames.raPulseMillis(i);
            double dec = frames.decPulseMillis(i);
            text.append(number(oneWay ? Math.max(0, ra) : ra, 0)).append(',');
            text.append(number(oneWay ? Math.min(0, dec) : dec, 0)).append(',');
          }
          text.append(number(frames.snr(i), 1)).append(',');
          text.append(events ? event(state) : "").append('\n');
        }
      }
      return text.toString();
    }

    private void meta(StringBuilder text, SimulatedNight night, boolean named) {
      if (named && oneIn(2)) {
        text.append("#   site_latitude: ").append(number(latitude, 2)).append('\n');
      }
      if (!oneIn(3)) {
        double rate = night.scenario().mount().guideRateSidereal();
        text.append("#   guide_rate: ").append(number(rate * (oneIn(5) ? 2 : 1), 4)).append('\n');
      }
      if (!oneIn(3)) {
        double exposure = night.scenario().evening().exposureSeconds();
        text.append("#   guide_exposure: ").append(number(exposure, 4)).append('\n');
      }
      if (night.scenario().loop().loggedInNextRow() && oneIn(2)) {
        text.append("#   pulse_row: next\n");
      }
      if (named) {
        text.append("#   runs:\n");
        for (SimulatedRun run : night.runs()) {
          text.append("#   - {run: ").append(run.truth().id());
          text.append(", declination: ").append(number(run.truth().declinationDegrees(), 2));
          if (oneIn(2)) {
            text.append(", hour_angle: ").append(number(run.truth().hourAngleHours(), 2));
          }
          if (oneIn(2)) {
            String side = run.truth().pierSide().name().toLowerCase(Locale.ROOT);
            text.append(", pier_side: ").append(side);
          }
          text.append("}\n");
        }
      }
    }

    private static String event(FrameState state) {
      return switch (state) {
        case DITHER -> "dither";
        case SETTLING -> "settling";
        case LOST -> "lost";
        case IDLE -> "idle";
        case USED, REJECTED -> "";
      };
    }

    private boolean oneIn(int n) {
      return random.nextInt(n) == 0;
    }

    private double between(double from, double to) {
      return from + (to - from) * random.nextDouble();
    }

    private double logUniform(double from, double to) {
      return from * Math.pow(to / from, random.nextDouble());
    }

    private double signed(double value) {
      return random.nextBoolean() ? value : -value;
    }

    private static void key(StringBuilder toml, String key, double value) {
      toml.append(key).append(" = ").append(String.format(Locale.ROOT, "%.6f", value)).append('\n');
    }

    private static String number(double value, int decimals) {
      return String.format(Locale.ROOT, "%." + decimals + "f", value);
    }
  }
}
