package io.github.roundstar.diagnosis;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.simulate.ScenarioReader;
import io.github.roundstar.simulate.SimulatedNight;
import io.github.roundstar.simulate.Simulation;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;

/**
 * A kind of night for {@link TruthTable}: two and a half hours, cadence 2.5 s, the worm and the
 * wander of the design's section 13.
 *
 * @param gain of both loops
 * @param noiseArcsec white noise of a frame
 * @param playArcsec backlash in declination
 * @param deadbandArcsec of both loops
 * @param minutes length of the run
 * @param more further keys of {@code [mount]}, then further tables
 * @param noiseBound share that the noise floor may be off
 */
record TruthCase(
    String name,
    double gain,
    double noiseArcsec,
    double playArcsec,
    double deadbandArcsec,
    int minutes,
    String more,
    double noiseBound) {
  private static final double WHITE = 0.05;
  private static final double COLOURED = 0.15;

  /** One standard deviation of a direction's response about the declared one. */
  private static final double UNLIKE = 0.03;

  private static final String DECLARED = "response_east = 1.000\nresponse_west = 1.000\n";
  private static final List<String> DIRECTIONS = List.of("east", "west", "north", "south");

  /** Whether seeing colours the errors. */
  boolean seeing() {
    return noiseBound == COLOURED;
  }

  static List<TruthCase> all() {
    List<TruthCase> all = new ArrayList<>();
    for (double gain : new double[] {0.2, 0.6, 1.2}) {
      for (double noise : new double[] {0.1, 0.5, 1.5}) {
        all.add(
            new TruthCase(
                "gain " + gain + ", noise " + noise + " arcsec, play 1.5 arcsec",
                gain,
                noise,
                1.5,
                0.1,
                150,
                "",
                WHITE));
      }
    }
    all.add(new TruthCase("no play", 0.6, 0.45, 0, 0.1, 150, "", WHITE));
    all.add(new TruthCase("play 4 arcsec", 0.6, 0.3, 4, 0.1, 150, "", WHITE));
    all.add(new TruthCase("deadband 1 arcsec, play 3 arcsec", 0.6, 0.3, 3, 1, 150, "", WHITE));
    all.add(new TruthCase("one and a half turns of the worm", 0.6, 0.45, 0, 0.1, 12, "", WHITE));
    all.add(new TruthCase("two turns of the worm", 0.6, 0.45, 0, 0.1, 16, "", WHITE));
    all.add(new TruthCase("two and a half turns of the worm", 0.6, 0.45, 0, 0.1, 20, "", WHITE));
    all.add(new TruthCase("gusts, 8 an hour", 0.6, 0.45, 1.5, 0.1, 150, gusts(8, 4), WHITE));
    all.add(new TruthCase("gusts, 20 an hour", 0.6, 0.3, 0, 0.1, 150, gusts(20, 5), WHITE));
    all.add(
        new TruthCase(
            "camera turned by 5 degrees",
            0.6,
            0.45,
            1.5,
            0.1,
            150,
            "camera_angle_deg = 5\n",
            WHITE));
    all.add(
        new TruthCase(
            "coloured seeing",
            0.6,
            0.2,
            0,
            0.1,
            150,
            "[seeing]\nfwhm_arcsec = 3\naperture_mm = 60\nwind_m_per_s = 4\nouter_scale_m = 25\n",
            COLOURED));
    return all;
  }

  private static String gusts(int perHour, int arcsec) {
    return "[gusts]\nper_hour = " + perHour + "\namplitude_arcsec = " + arcsec + "\n";
  }

  /** Whether noise and gain are those that the design's section 13 speaks of. */
  boolean usual() {
    return noiseArcsec >= 0.2 && noiseArcsec <= 0.8 && gain >= 0.3 && gain <= 0.9;
  }

  boolean turned() {
    return more.startsWith("camera");
  }

  boolean gusty() {
    return more.startsWith("[gusts]");
  }

  /** Whether the run is shorter than those that the design's section 13 speaks of. */
  boolean brief() {
    return minutes < 150;
  }

  /** Whether the run holds fewer than three turns of the worm. */
  boolean wormUnresolved() {
    return minutes * 60 < 3 * 479;
  }

  /** A night. */
  SimulatedNight night(int seed) throws FormatException {
    return night(seed, gain, gain);
  }

  /** The night with other gains of the two loops, the same in everything else. */
  SimulatedNight night(int seed, double raGain, double decGain) throws FormatException {
    String scenario =
        KnownTruthTest.scenario(seed, raGain, noiseArcsec, 0)
            .replace(decLoop(raGain), decLoop(decGain))
            .replace(DECLARED, response(seed))
            .replace("cadence_s = 3.0", "cadence_s = 2.5")
            .replace("duration_min = 120", "duration_min = " + minutes)
            .replace("deadband_arcsec = 0.1", "deadband_arcsec = " + deadbandArcsec);
    String tables = more.startsWith("[") ? more : "";
    String keys = more.startsWith("[") ? "" : more;
    return Simulation.run(
        ScenarioReader.parse(
            name,
            scenario
                + keys
                + "dec_backlash_arcsec = "
                + playArcsec
                + "\n"
                + KnownTruthTest.WORM
                + tables));
  }

  private static String decLoop(double gain) {
    return String.format(Locale.ROOT, "[loop.dec]\ngain = %.2f", gain);
  }

  /** How each direction of this night's mount answers, whatever the case and the gain. */
  private static String response(int seed) {
    SplittableRandom random = new SplittableRandom(seed);
    StringBuilder keys = new StringBuilder();
    for (String direction : DIRECTIONS) {
      // Box and Muller (1958), Ann. Math. Stat. 29, 610.
      double radius = StrictMath.sqrt(-2 * StrictMath.log(1 - random.nextDouble()));
      double normal = radius * StrictMath.cos(2 * Math.PI * random.nextDouble());
      keys.append(
          String.format(Locale.ROOT, "response_%s = %.5f%n", direction, 1 + UNLIKE * normal));
    }
    return keys.toString();
  }
}
