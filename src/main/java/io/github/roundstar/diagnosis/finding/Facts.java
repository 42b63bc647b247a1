package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.NotComputed;
import java.util.Comparator;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Everything that findings are judged by.
 *
 * @param result the night's figures; its findings and verdict are not read
 * @param equipment what the user says of site, mount and optics
 * @param budget what the trailing is made of
 * @param exposures how the exposures came out
 * @param events what happened
 * @param pulses how pulses acted
 * @param axis where the mount's axis points
 * @param ladder what each cure would have done; nothing where the night was not played again
 */
record Facts(
    NightResult result,
    Equipment equipment,
    Optional<TrailingBudget> budget,
    Optional<ExposureTally> exposures,
    EventTally events,
    PulseReading pulses,
    Optional<AxisReading> axis,
    Optional<LadderReading> ladder) {

  static Facts of(NightResult result, Equipment equipment) {
    return new Facts(
        result,
        equipment,
        TrailingBudget.of(result),
        ExposureTally.of(result),
        EventTally.of(result),
        PulseReading.of(result),
        AxisReading.of(result),
        LadderReading.of(result));
  }

  /** How the loop of one axis behaved. */
  LoopReading loop(Axis axis) {
    return LoopReading.of(result, axis);
  }

  /** Radial RMS of the logged offsets [arcsec]; empty when no frame was usable. */
  Optional<Double> radialRmsArcsec() {
    return Optional.ofNullable(result.night().guided()).map(guided -> guided.rmsRadialArcsec());
  }

  int usedFrames() {
    return result.runs().stream().mapToInt(run -> run.counts().used()).sum();
  }

  double loggedSeconds() {
    return result.runs().stream().mapToDouble(run -> run.durationSeconds()).sum();
  }

  /**
   * The reason that the result gives for the first of these figures that it gives one for: for the
   * figure itself, for something it is part of, or for a part of it, in this order.
   */
  String because(String... pointers) {
    return Stream.of(pointers)
        .flatMap(this::reasons)
        .findFirst()
        .orElse("the figures for it are missing");
  }

  private Stream<String> reasons(String pointer) {
    String[] wanted = pointer.split("/");
    return result.notComputed().stream()
        .filter(reason -> related(reason.figure().split("/"), wanted))
        .sorted(Comparator.comparingInt(reason -> rank(reason.figure().split("/"), wanted)))
        .map(NotComputed::because);
  }

  private static int rank(String[] given, String[] wanted) {
    return given.length == wanted.length ? 0 : given.length < wanted.length ? 1 : 2;
  }

  /** Whether one pointer is the other or a part of it, a star standing for any index. */
  private static boolean related(String[] given, String[] wanted) {
    int least = Math.min(given.length, wanted.length);
    for (int i = 0; i < least; i++) {
      boolean same = given[i].equals(wanted[i]) || given[i].equals("*") || wanted[i].equals("*");
      if (!same) {
        return false;
      }
    }
    return least > 1;
  }
}
