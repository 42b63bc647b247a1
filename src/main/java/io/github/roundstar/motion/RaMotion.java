package io.github.roundstar.motion;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.GuideRun;
import java.util.List;
import java.util.Optional;

/**
 * A run's motion in right ascension with the corrections taken out, and what was found in it.
 *
 * @param run the motion: pulses push as declared or, where that is off, as measured
 * @param quiet the same without its jolts
 * @param periodic drift and periodic error of the quiet motion
 * @param response what was measured; nothing without pulses or with too few frames
 */
public record RaMotion(
    AxisRun run, AxisRun quiet, Answer<PeriodicError> periodic, Optional<Response> response) {
  /**
   * Takes the corrections out as declared, finds the sinusoids, measures the response beside them,
   * and takes the corrections out again with it.
   *
   * @param cosine cosine of the declination; 1 to stay on the sky
   */
  public static Answer<RaMotion> of(
      GuideRun guideRun, Equipment equipment, double cosine, Gears gears) {
    return Reconstruction.of(guideRun, Axis.RA, equipment)
        .map(made -> of(AxisRun.of(guideRun, made.sky(), cosine), gears));
  }

  private static RaMotion of(AxisRun plain, Gears gears) {
    Answer<PeriodicError> told = PeriodicError.of(List.of(plain), gears);
    AxisRun declared =
        told.value().map(found -> SlowSwing.beside(plain, found.families())).orElse(plain);
    Answer<PeriodicError> whole =
        declared == plain ? told : PeriodicError.of(List.of(declared), gears);
    Optional<Response> first =
        whole.value().flatMap(found -> SlowSwing.response(declared, found.families()));
    if (first.isEmpty() || first.get().quiet().jolts().isEmpty()) {
      AxisRun run = first.map(response -> response.applied(declared)).orElse(declared);
      return new RaMotion(
          run, run, run.responseMeasured() ? PeriodicError.of(List.of(run), gears) : whole, first);
    }
    return jolted(declared, whole.value().orElseThrow(), first.get(), gears);
  }

  /** Jolts hide small sinusoids, which then pass for wander, and pulses for their answer. */
  private static RaMotion jolted(
      AxisRun declared, PeriodicError whole, Response first, Gears gears) {
    Answer<PeriodicError> quiet = PeriodicError.of(List.of(declared.without(first.quiet())), gears);
    Response response =
        quiet
            .value()
            .filter(found -> !sameGears(found.families(), whole.families()))
            .flatMap(found -> SlowSwing.response(declared, found.families()))
            .orElse(first);
    AxisRun run = response.applied(declared);
    AxisRun left = run.without(response.quiet());
    return new RaMotion(
        run,
        left,
        response == first && !run.responseMeasured()
            ? quiet
            : PeriodicError.of(List.of(left), gears),
        Optional.of(response));
  }

  private static boolean sameGears(List<Family> some, List<Family> others) {
    return some.stream()
        .map(Family::harmonics)
        .toList()
        .equals(others.stream().map(Family::harmonics).toList());
  }
}
