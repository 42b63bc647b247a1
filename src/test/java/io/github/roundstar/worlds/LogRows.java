package io.github.roundstar.worlds;

import java.util.Arrays;

/** What the guiding program logs, unrounded; one row per frame. */
final class LogRows {
  int size;
  int[] run = new int[1024];
  double[] timeSeconds = new double[1024];
  double[] raOffset = new double[1024];
  double[] decOffset = new double[1024];
  double[] raPulseMs = new double[1024];
  double[] decPulseMs = new double[1024];
  double[] ditherEast = new double[1024];
  double[] ditherNorth = new double[1024];
  double[] signalToNoise = new double[1024];
  String[] event = new String[1024];

  void add(
      int inRun,
      double time,
      double east,
      double north,
      double raMs,
      double decMs,
      double shiftEast,
      double shiftNorth,
      double snr,
      String what) {
    if (size == run.length) {
      int room = 2 * size;
      run = Arrays.copyOf(run, room);
      timeSeconds = Arrays.copyOf(timeSeconds, room);
      raOffset = Arrays.copyOf(raOffset, room);
      decOffset = Arrays.copyOf(decOffset, room);
      raPulseMs = Arrays.copyOf(raPulseMs, room);
      decPulseMs = Arrays.copyOf(decPulseMs, room);
      ditherEast = Arrays.copyOf(ditherEast, room);
      ditherNorth = Arrays.copyOf(ditherNorth, room);
      signalToNoise = Arrays.copyOf(signalToNoise, room);
      event = Arrays.copyOf(event, room);
    }
    run[size] = inRun;
    timeSeconds[size] = time;
    raOffset[size] = east;
    decOffset[size] = north;
    raPulseMs[size] = raMs;
    decPulseMs[size] = decMs;
    ditherEast[size] = shiftEast;
    ditherNorth[size] = shiftNorth;
    signalToNoise[size] = snr;
    event[size++] = what;
  }
}
