package io.github.roundstar.dialects;

import java.util.Random;

/**
 * An invented night of guiding by a small closed loop, as it happened: offsets in arcsec, east and
 * north positive; pulses in ms, positive when the mount is pushed east or north, which makes the
 * offset fall; a frame's pulse was computed from that frame's offset.
 *
 * <p>The mount drifts, swings with its worm and wanders; the air moves the star; a proportional
 * guider with a dead zone answers. Written for the dialects alone, so that it shares nothing with
 * what it tests.
 */
final class Night {
  final int size;
  final int runs;
  final double cadenceSeconds;
  final double exposureSeconds;
  final double declinationDegrees;
  final double guideRate;
  double arcsecPerPixel;
  final double gain;
  final boolean tubeWest;

  /** Seconds since the night's first frame, middle of the exposure. */
  final double[] seconds;

  final double[] raArcsec;
  final double[] decArcsec;
  final long[] raPulseMillis;
  final long[] decPulseMillis;
  final boolean[] lost;
  final boolean[] dither;
  final boolean[] settling;
  final int[] run;
  final double[] snr;
  final double[] flux;

  /**
   * Makes a night.
   *
   * @param random where all chance comes from
   * @param runs number of runs
   * @param dithers whether the set point moves now and then
   * @param worm whether the drive has a worm that swings
   */
  Night(Random random, int runs, boolean dithers, boolean worm) {
    this.runs = runs;
    size = 150 + (int) (1350 * Math.pow(random.nextDouble(), 2));
    cadenceSeconds = new double[] {2, 2.5, 3, 3.2, 4, 4.5, 5}[random.nextInt(7)];
    exposureSeconds = cadenceSeconds - (random.nextBoolean() ? 0.5 : 1);
    declinationDegrees = Math.round((random.nextDouble() * 75 - 15) * 10) / 10.0;
    guideRate = new double[] {0.4, 0.5, 0.75, 0.9}[random.nextInt(4)];
    arcsecPerPixel = Math.round((1.3 + 3.5 * random.nextDouble()) * 100) / 100.0;
    gain = 0.4 + Math.round(random.nextDouble() * 9) * 0.05;
    tubeWest = random.nextBoolean();
    seconds = new double[size];
    raArcsec = new double[size];
    decArcsec = new double[size];
    raPulseMillis = new long[size];
    decPulseMillis = new long[size];
    lost = new boolean[size];
    dither = new boolean[size];
    settling = new boolean[size];
    run = new int[size];
    snr = new double[size];
    flux = new double[size];

    double raPerMilli = 15.041 * guideRate * Math.cos(Math.toRadians(declinationDegrees)) / 1000;
    double decPerMilli = 15.041 * guideRate / 1000;
    double seeing = 0.15 + 0.25 * random.nextDouble();
    double wormArcsec = worm ? 2 + 5 * random.nextDouble() : 0;
    double wormSeconds = 240 + 400 * random.nextDouble();
    double wormPhase = random.nextDouble() * 2 * Math.PI;
    double raDrift = (random.nextDouble() - 0.5) * 0.02;
    double decDrift = (random.nextDouble() - 0.5) * 0.03;
    double wander = 0.02 + 0.04 * random.nextDouble();
    double deadArcsec = 0.08 + 0.15 * random.nextDouble();
    double brightness = 4000 + random.nextInt(60000);
    int ditherEvery = 40 + random.nextInt(80);
    double time = 0;
    double ra = 0;
    double dec = 0;
    double pendingRa = 0;
    double pendingDec = 0;
    double lastWorm = Double.NaN;
    int quiet = 0;
    boolean waiting = false;
    int lostLeft = 0;
    int longLoss = size / 3 + random.nextInt(size / 3);
    for (int i = 0; i < size; i++) {
      int r = 1 + (int) ((long) i * runs / size);
      run[i] = r;
      boolean first = i == 0 || run[i - 1] != r;
      if (i > 0) {
        time += cadenceSeconds + 0.05 * random.nextGaussian() + (random.nextInt(80) == 0 ? 0.4 : 0);
      }
      if (first) {
        if (i > 0) {
          time += 240 + random.nextInt(900);
        }
        ra = 0.3 * random.nextGaussian();
        dec = 0.3 * random.nextGaussian();
        pendingRa = 0;
        pendingDec = 0;
        lastWorm = Double.NaN;
        waiting = false;
      }
      seconds[i] = time;
      double w = wormArcsec * Math.sin(2 * Math.PI * time / wormSeconds + wormPhase);
      if (!Double.isNaN(lastWorm)) {
        double dt = i > 0 ? time - seconds[i - 1] : 0;
        ra += w - lastWorm + raDrift * dt + wander * random.nextGaussian();
        dec += decDrift * dt + wander * random.nextGaussian();
      }
      lastWorm = w;
      ra -= pendingRa * raPerMilli;
      dec -= pendingDec * decPerMilli;
      if (dithers
          && !first
          && i % ditherEvery == ditherEvery - 1
          && lostLeft == 0
          && i != longLoss) {
        dither[i] = true;
        double angle = random.nextDouble() * 2 * Math.PI;
        double step = 3 + 4 * random.nextDouble();
        ra -= step * Math.cos(angle);
        dec -= step * Math.sin(angle);
        waiting = true;
        quiet = 0;
      }
      if (lostLeft == 0 && !first && !dither[i] && random.nextInt(60) == 0) {
        lostLeft = 1;
      }
      if (i == longLoss && !first && !dither[i]) {
        lostLeft = 6 + random.nextInt(10);
      }
      double bright = brightness * (1 + 0.05 * random.nextGaussian());
      flux[i] = Math.round(bright);
      snr[i] = Math.round(Math.sqrt(bright) / 4 * 10) / 10.0;
      pendingRa = 0;
      pendingDec = 0;
      if (lostLeft > 0) {
        lostLeft--;
        lost[i] = true;
        raArcsec[i] = Double.NaN;
        decArcsec[i] = Double.NaN;
        settling[i] = waiting;
        continue;
      }
      raArcsec[i] = ra + seeing * random.nextGaussian();
      decArcsec[i] = dec + seeing * random.nextGaussian();
      if (waiting) {
        settling[i] = true;
        quiet = Math.hypot(raArcsec[i], decArcsec[i]) < 1.2 ? quiet + 1 : 0;
        waiting = quiet < 3 && i < size - 1;
      }
      raPulseMillis[i] = answer(raArcsec[i], deadArcsec, raPerMilli);
      decPulseMillis[i] = answer(decArcsec[i], 1.5 * deadArcsec, decPerMilli);
      pendingRa = raPulseMillis[i];
      pendingDec = decPulseMillis[i];
    }
  }

  private long answer(double offsetArcsec, double deadArcsec, double arcsecPerMilli) {
    if (Math.abs(offsetArcsec) < deadArcsec) {
      return 0;
    }
    return Math.max(-1500, Math.min(1500, Math.round(gain * offsetArcsec / arcsecPerMilli)));
  }
}
