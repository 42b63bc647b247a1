package io.github.roundstar.motion;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.GuideRun;
import java.util.List;
import java.util.Optional;

/**
 * A run's motion in right ascension with the corrections taken out as the mount answered them.
 *
 * @param run the motion: pulses push as declared or, where that is off, as measured
 * @param periodic drift and periodic error of that motion
 * @param response what was measured; nothing without pulses or with too few frames
 */
public record RaMotion(AxisRun run, Answer<PeriodicError> periodic, Optional<Response> response) {
  /**
   * Takes the corrections out as declared, finds the sinusoids, measures the response beside them,
   * and takes the corrections out again with it.
   *
   * @param cosine cosine of the declination; 1 to stay on the sky
   */
  public static Answer<RaMotion> of(
      GuideRun guideRun, Equipment equipment, double cosine, Gears gears) {
    return Reconstruction.of(guideRun, Axis.RA, equipment)
        .map(
            made -> {
              AxisRun declared = AxisRun.of(guideRun, made.sky(), cosine);
              Answer<PeriodicError> periodic = PeriodicError.of(List.of(declared), gears);
              Optional<Response> response =
                  periodic.value().flatMap(found -> Response.of(declared, found.families()));
              AxisRun run = response.map(r -> r.applied(declared)).orElse(declared);
              return new RaMotion(
                  run,
                  run.responseMeasured() ? PeriodicError.of(List.of(run), gears) : periodic,
                  response);
            });
  }
}
