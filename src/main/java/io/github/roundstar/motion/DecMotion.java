package io.github.roundstar.motion;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.GuideRun;
import java.util.List;
import java.util.Optional;

/**
 * A run's motion in declination with the corrections taken out.
 *
 * @param run the motion: pulses pass the play where there certainly is one, or the axis that
 *     sticks, and push as declared or, where that is off, as measured
 * @param quiet the same without its jolts
 * @param backlash the play; nothing without pulses or with too few frames
 * @param alike the same as if both directions pushed alike, for pulses as declared: how unlike they
 *     are is then left to the fit, whose error it belongs to
 * @param sticking the axis that sticks; none unless it surely does
 * @param response what was measured behind the play, or behind the axis that sticks
 */
public record DecMotion(
    AxisRun run,
    AxisRun quiet,
    Optional<Backlash> backlash,
    Optional<Backlash> alike,
    Answer<Sticking> sticking,
    Optional<Response> response) {
  private static final String NO_PULSE =
      "no pulse was sent in declination, or too few frames were measured";

  /**
   * Profiles the play, tells it from sticking, measures the response behind it, and takes the
   * corrections out with both.
   */
  public static Answer<DecMotion> of(GuideRun guideRun, Equipment equipment) {
    return Reconstruction.of(guideRun, Axis.DEC, equipment)
        .map(
            made -> {
              AxisRun plain = AxisRun.of(guideRun, made.sky(), 1);
              Optional<Backlash> play = Backlash.of(made, plain);
              Answer<Sticking> sticking =
                  play.map(found -> Sticking.of(new PlayProfile(made, plain), found))
                      .orElseGet(() -> Answer.none(NO_PULSE));
              DecMotion found = again(made, plain, play, sticking);
              // Sticking must show beside the jolts that are found behind it, too.
              return sticking.value().isPresent() && found.sticking.value().isEmpty()
                  ? again(made, plain, play, found.sticking)
                  : found;
            });
  }

  /** Jolts pass for lost motion, and directions of unlike strength spoil its width. */
  private static DecMotion again(
      Reconstruction made, AxisRun plain, Optional<Backlash> play, Answer<Sticking> sticking) {
    DecMotion first = of(plain, play, play, sticking);
    Optional<JoltFree> quiet =
        first.response.map(Response::quiet).filter(q -> !q.jolts().isEmpty());
    DecMotion second = first;
    if (play.isPresent() && quiet.isPresent()) {
      PlayProfile profile = new PlayProfile(made, plain, quiet, 0);
      Backlash again = play.get().again(profile);
      second =
          of(
              plain,
              Optional.of(again),
              Optional.of(again),
              sticking.value().isPresent()
                  ? Sticking.of(profile, again)
                  : Answer.none(Sticking.because(sticking.because(), again)));
    }
    double unlikeness = second.sticking.value().isPresent() ? 0 : second.unlikeness();
    if (unlikeness == 0) {
      return second;
    }
    PlayProfile profile = new PlayProfile(made, plain, quiet, unlikeness);
    return of(
        plain,
        second.backlash.map(found -> found.orNear(profile)),
        second.backlash,
        second.sticking);
  }

  /** How unlike pulses north and south are behind a play that surely is there, as a share. */
  private double unlikeness() {
    return response
        .filter(r -> losesMotion() && r.informative())
        .map(r -> r.unlikeness() / r.both().orElseThrow().value())
        .orElse(0.0);
  }

  private static DecMotion of(
      AxisRun plain,
      Optional<Backlash> backlash,
      Optional<Backlash> alike,
      Answer<Sticking> sticking) {
    Optional<AxisRun> sticks = sticking.value().map(Sticking::run);
    AxisRun behind = sticks.or(() -> backlash.map(Backlash::run)).orElse(plain);
    Optional<Response> response =
        sticks.isPresent() || backlash.isEmpty()
            ? Response.of(behind, List.of())
            : Response.behind(backlash.get());
    AxisRun answering = response.map(r -> r.applied(behind)).orElse(behind);
    AxisRun run = answering.responseMeasured() ? answering : sticks.orElse(declared(plain, alike));
    return new DecMotion(
        run,
        response.map(r -> run.without(r.quiet())).orElse(run),
        backlash,
        alike,
        sticking,
        response);
  }

  /** What the likeliest axis loses, though it may be nothing. */
  LostMotion lost() {
    return sticking
        .value()
        .map(Sticking::lost)
        .or(() -> play().map(Backlash::lost))
        .orElse(LostMotion.NONE);
  }

  /** Motion behind that, pulses as declared. */
  AxisRun behind() {
    return sticking.value().map(Sticking::run).or(() -> play().map(Backlash::run)).orElse(run);
  }

  /** The play that goes with how pulses are taken to push. */
  private Optional<Backlash> play() {
    return run.responseMeasured() ? backlash : alike;
  }

  /** Whether motion surely is lost. */
  boolean losesMotion() {
    return sticking.value().isPresent()
        || backlash.filter(play -> play.declaredArcsec().lo95() > 0).isPresent();
  }

  /**
   * Pulses as declared, behind the play where there certainly is one. What they may push more than
   * declared still counts in full: the motor runs on inside the play, and where it stands there
   * decides when it moves the tube.
   */
  private static AxisRun declared(AxisRun plain, Optional<Backlash> alike) {
    return alike
        .filter(play -> play.declaredArcsec().lo95() > 0)
        .map(play -> plain.with(play.run().motion().withPushesOf(plain.motion())))
        .orElse(plain);
  }
}
