package io.github.roundstar.motion;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.GuideRun;
import java.util.List;
import java.util.Optional;

/**
 * A run's motion in declination with the corrections taken out.
 *
 * @param run the motion: pulses pass the play where there certainly is one, and push as declared
 *     or, where that is off, as measured
 * @param quiet the same without its jolts
 * @param backlash the play; nothing without pulses or with too few frames
 * @param response what was measured behind the play
 */
public record DecMotion(
    AxisRun run, AxisRun quiet, Optional<Backlash> backlash, Optional<Response> response) {
  /**
   * Profiles the play, measures the response behind it, and takes the corrections out with both.
   */
  public static Answer<DecMotion> of(GuideRun guideRun, Equipment equipment) {
    return Reconstruction.of(guideRun, Axis.DEC, equipment)
        .map(
            made -> {
              AxisRun plain = AxisRun.of(guideRun, made.sky(), 1);
              DecMotion first = of(plain, Backlash.of(made, plain));
              Optional<JoltFree> quiet =
                  first.response.map(Response::quiet).filter(q -> !q.jolts().isEmpty());
              // Jolts pass for lost motion: the play is looked for again without them.
              return first.backlash.isEmpty() || quiet.isEmpty()
                  ? first
                  : of(plain, first.backlash.map(play -> play.without(quiet.get(), made, plain)));
            });
  }

  private static DecMotion of(AxisRun plain, Optional<Backlash> backlash) {
    AxisRun behind = backlash.map(Backlash::run).orElse(plain);
    Optional<Response> response =
        backlash.map(Response::behind).orElseGet(() -> Response.of(plain, List.of()));
    AxisRun answering = response.map(r -> r.applied(behind)).orElse(behind);
    AxisRun run = answering.responseMeasured() ? answering : declared(plain, backlash);
    return new DecMotion(
        run, response.map(r -> run.without(r.quiet())).orElse(run), backlash, response);
  }

  /**
   * Pulses as declared, behind the play where there certainly is one. What they may push more than
   * declared still counts in full: the motor runs on inside the play, and where it stands there
   * decides when it moves the tube.
   */
  private static AxisRun declared(AxisRun plain, Optional<Backlash> backlash) {
    return backlash
        .filter(play -> play.declaredArcsec().lo95() > 0)
        .map(play -> plain.with(play.run().motion().withPushesOf(plain.motion())))
        .orElse(plain);
  }
}
